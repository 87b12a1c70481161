package rules

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// Occasion is when in the work a caution is to be read.
type Occasion uint8

// The occasions, in the order of the work.
const (
	EveryTime Occasion = iota
	BeforeDrilling
	FittingHeater
	FirstRun
)

// Caution is one thing that the work can do to people or to the van. They are the trade's common practice (no source) but
// where they name one; the heater's own instructions come first.
type Caution struct {
	About, Say string
	Occasion   Occasion
	Fuel       bool               // of the heater's fuel: said where that is entered too
	User       string             // to whoever uses the heater, in their words; "" for what is the fitter's alone
	Brief      string             // of one that depends on the job: what is said wherever the job is worked on
	applies    func(*Result) bool // nil: to every job
}

// Cautions are all of them, in the order they are read.
func Cautions() []Caution { return cautions }

// CautionsFor are those of an occasion that apply to a judged job, what this job is in danger of first.
func CautionsFor(when Occasion, r *Result) (list []Caution) {
	for i := range cautions {
		if c := &cautions[i]; c.Occasion == when && c.AppliesTo(r) {
			list = append(list, *c)
		}
	}
	slices.SortStableFunc(list, func(a, b Caution) int {
		switch depends := a.applies != nil; {
		case depends == (b.applies != nil):
			return 0
		case depends:
			return -1
		}
		return 1
	})
	return list
}

// FuelCautions are those of the heater's fuel.
func FuelCautions() []Caution {
	return slices.DeleteFunc(slices.Clone(cautions), func(c Caution) bool { return !c.Fuel })
}

// Dangers say in a few words what about a judged job calls for a caution of its own, the worst first.
func Dangers(r *Result) (brief []string) {
	for i := range cautions {
		if c := &cautions[i]; c.applies != nil && c.applies(r) {
			brief = append(brief, c.Brief)
		}
	}
	return brief
}

// AppliesTo tells whether a caution applies to a judged job.
func (c *Caution) AppliesTo(r *Result) bool {
	return c.applies == nil || c.applies(r)
}

// What the cautions are about that stand with a step of the work, too.
const (
	AboutAll          = "Before all else"
	AboutMonoxide     = "Carbon monoxide"
	AboutStands       = "Holding the van up"
	AboutHighVoltage  = "High voltage"
	AboutPetrol       = "Petrol"
	AboutFire         = "Fire"
	AboutSeats        = "Seats and belts"
	AboutDrilling     = "Drilling"
	AboutSaw          = "Before the saw"
	AboutSwarf        = "Eyes, ears and swarf"
	AboutFuse         = "Fuse"
	AboutFuelLine     = "Fuel line"
	AboutRefuelling   = "Refuelling"
	AboutFirstRun     = "First run"
	AboutHotExhaust   = "Hot exhaust"
	AboutSwitchingOff = "Switching off"
)

// How near is near, in words.
var (
	lookRound = survey.InMM(vehicles.LookRound)
	soNear    = "within " + survey.InMMAndInches(vehicles.LookRound)
)

// What cautions have in common with what else is printed.
const (
	InstructionsAndCodeFirst = "The heater's own instructions and the local code come first"
	FuseAtTheBattery         = "at the battery, of the size that the heater's instructions give"
	HotLongAfter             = "for long after the heater was switched off"
	OffWhenRefuelled         = "heater off when the van is refuelled" // of the notice at the filler
)

var cautions = []Caution{
	{About: AboutAll, User: "The heater's own instructions come before this page.",
		Say: InstructionsAndCodeFirst + ", then this program; " +
			"licensed practice (gas, fuel, electrics) where law asks it."},
	{About: AboutMonoxide, User: "The exhaust kills without a smell. Have a carbon monoxide alarm to EN 50291-2 where people sleep, and test it as its instructions say. When it sounds: everybody out, then switch off.",
		Say: "The heater's exhaust kills without a smell: no joint of it inside the van, its outlet clear of every opening, and where people " +
			"sleep an alarm to EN 50291-2, tested as its instructions say."},
	{About: AboutStands, Say: "Work under it only on stands, on firm level ground, wheels chocked. It stands on the maker's points only, " +
		"and never on a jack alone."},
	{About: "What the program knows", Say: "It judges only what was entered: \"clear\" never means that nothing else is there."},

	{About: AboutHighVoltage, Occasion: BeforeDrilling, applies: highVoltageNear, Say: "A high-voltage cable or traction battery " + soNear + " of " +
		"the cut, of a hole or of a run: do not drill; trained people only.",
		Brief: "High voltage within " + lookRound + ": do not drill; trained people only."},
	{About: AboutPetrol, Occasion: BeforeDrilling, applies: petrolNear, Say: "A fuel tank " + soNear + " of the cut or of a hole, unless it is known to hold diesel, " +
		"is lowered and taken out before anything is drilled, or another place is chosen: its vapour lights at a spark.",
		Brief: "Fuel tank within " + lookRound + ", not known to hold diesel: lower it and take it out, or choose another place."},
	{About: AboutFire, User: "Keep a fire extinguisher at hand, by the door.",
		Occasion: BeforeDrilling, Say: "A fire extinguisher at hand, by the door and not behind the work, before anything is drilled, cut or lit."},
	{About: AboutSeats, Occasion: BeforeDrilling, Say: "Isolate the battery as the van's maker says, and wait as long as the maker says, before touching any wiring " +
		"of a seat or a belt: there are charges in it."},
	{About: AboutDrilling, Occasion: BeforeDrilling, Say: "Nobody under the van while anybody drills. Know what lies above and below the bit: tank, fuel and brake lines, " +
		"wiring, air lines, seat-belt mounts, double skins. A stop on the bit, and not only that, as stops slip: a board between bit and tank, " +
		"held by props and by nobody's hands."},
	{About: AboutSaw, Occasion: BeforeDrilling, Say: "Drill the pilot hole, take the bit out, and look again from below. Measure where the hole came out, enter " +
		"it, and read the checks afresh. Only then the saw."},
	{About: "Tank and brake lines", Occasion: BeforeDrilling, Say: "A line that is touched is a line to be replaced before the van moves. With petrol or its vapour about, no drilling, " +
		"no grinding, no lamp that is not made for it."},
	{About: AboutSwarf, Occasion: BeforeDrilling, Say: "Goggles, also for whoever looks up from below, and ear defenders. Hot swarf burns and rusts: catch it, sweep it up, " +
		"never by hand, and treat the cut edge against rust before the heater goes in."},

	{About: AboutFuse, Occasion: FittingHeater, Say: "The heater's supply has its fuse " + FuseAtTheBattery + "."},
	{About: AboutFuelLine, Occasion: FittingHeater, Fuel: true, Say: "No fuel joint inside the van: the line runs through in one piece."},
	{About: AboutRefuelling, User: "Switch the heater off before you refuel, and wait until it has stopped.",
		Occasion: FittingHeater, Fuel: true, Say: "The heater is off when the van is refuelled, and a notice at the filler says so, as UN Regulation No. 122 has it: its own text decides."},

	{About: AboutFirstRun, User: "Never run it in a garage, under an awning, over dry grass, or with snow or anything else before the outlet.",
		Occasion: FirstRun, Say: "In the open, doors shut, nobody inside until a carbon monoxide meter in there, read from outside, " +
			"stays at 0. Never under an awning, in a garage, over dry grass or with the outlet in snow."},
	{About: AboutHotExhaust, User: "The exhaust under the van burns whoever touches it, also " + HotLongAfter + ".",
		Occasion: FirstRun, Say: "Exhaust and muffler burn whoever touches them, also " + HotLongAfter + "."},
	{About: AboutSwitchingOff, User: "Switch it off at its own switch and let it run on until it has cooled. Never cut its power, except in a fire or a fuel leak: then pull the fuse and get out.",
		Occasion: FirstRun, Say: "At its own switch: it runs on until it has cooled. Never cut the power to stop it, except in a fire or " +
			"a fuel leak: then pull the fuse and get out."},
}

// highVoltageNear tells whether what carries high voltage, below the floor, inside it or on it, is as near to cut, holes or runs
// as one looks for things there.
func highVoltageNear(r *Result) bool {
	pipes := pipesOf(r)
	return r.anyNear(func(kind string, f geometry.Footprint) bool {
		return vehicles.PerilOf(kind) == vehicles.HighVoltage && min(nearHoles(r, f), nearRuns(pipes, f)) <= vehicles.LookRound
	})
}

// petrolNear tells whether a fuel tank that may hold petrol is so near to the cut or to a hole. Nobody can say what one above the
// floor holds.
func petrolNear(r *Result) bool {
	return r.anyNear(func(kind string, f geometry.Footprint) bool {
		return vehicles.KindOf(kind).Is(vehicles.VanTank) && nearHoles(r, f) <= vehicles.LookRound
	})
}

// anyNear tells whether anything below or above the floor is near, given its kind as the book asks for it and its footprint.
func (r *Result) anyNear(near func(kind string, f geometry.Footprint) bool) bool {
	for i := range r.Plan.Obstructions {
		if near(fuelled(&r.Job, i), r.Plan.Obstructions[i].Prism.Footprint) {
			return true
		}
	}
	for i := range r.Plan.Fittings {
		if near(r.Job.Fittings[i].Kind, r.Plan.Fittings[i].Prism.Footprint) {
			return true
		}
	}
	return false
}

// nearHoles is the plan distance, mm, from a footprint to the nearest of the cut's circle and the drilled holes; infinity
// without any.
func nearHoles(r *Result, f geometry.Footprint) float64 {
	gap := math.Inf(1)
	if r.Job.Cut != nil {
		gap = f.GapOnly(r.Plan.Cut.At) - r.Job.Cut.Across/2
	}
	for _, at := range Bolts(&r.Job, &r.Plan) {
		gap = min(gap, f.GapOnly(at)-r.Job.Heater.Bolt/2)
	}
	for _, at := range FuelHoles(&r.Job, &r.Plan) {
		gap = min(gap, f.GapOnly(at)-r.Job.Fuel.Supply.HoleAcross()/2)
	}
	return gap
}
