package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// The rules of what stands on the floor round the cut, and of the collar and the stubs through it.
var heaterRules = []*Rule{
	CollarThrough,
	{
		ID: "plate.on-floor", Unit: MM, Sense: Least, Weight: Kills, AtCut: true,
		Word:   "plate",
		Title:  "Mounting flange on the floor",
		Ask:    "The whole flange must lie on the floor.",
		Advice: moveOrTurn,
		short:  tooClose,
		check:  plateOnFloor,
		keep:   keeper{ThePlate, keepPlateOnFloor},
	},
	{
		ID: "plate.fitting", Unit: MM, Sense: Least, Weight: Kills, AtCut: true,
		Word:   "plate",
		Title:  "Mounting flange clear of fittings",
		Ask:    "Nothing that stands on the floor may stand on the flange.",
		Advice: moveOrTurn,
		short:  tooClose,
		check:  plateFittings,
		keep:   keeper{ThePlate, keepPlateClear},
	},
	{
		ID: "plate.swage", Unit: MM, Sense: Least, Weight: Kills, AtCut: true,
		Word:   "plate",
		Title:  "Mounting flange clear of swages",
		Ask:    "Over a swage the flange does not seal, and gas comes in. Flatten it, or pack it out: then say so.",
		Advice: "flatten or pack out the swage under the plate and its seal, or move the cut.",
		short:  tooClose,
		doubt:  "the plate lies on a swage: flatten or pack it out, then say so in the heater's form",
		check:  plateSwages,
		// No keep: it forbids no place, as a swage may be packed out, and on many floors they lie closer than the flange is wide.
	},
	{
		ID: "body.space", Unit: MM, Sense: Least, Weight: Damages, AtCut: true,
		Word:   "free space",
		Title:  "Free space round the heater's body",
		Ask:    "The space the heater's instructions ask for round the body must be free of fittings.",
		Advice: "move the cut, turn the heater, or shift the fitting.",
		short:  tooClose,
		check:  bodySpace,
		keep:   keeper{TheBody, keepBodyClear},
	},
	{
		ID: "stub.in-cut", Unit: MM, Sense: Least, Weight: Damages, ByKind: AStub, AtCut: true,
		Word:   "stub in the cut",
		named:  subjectNamed,
		Title:  "Stub inside the cut",
		Ask:    "The pipe must go down through the cut without touching its rim.",
		Advice: "check the stubs on the heater's own drawing and the width of the hole.",
		short:  shortfall{"%s mm too near the rim", true},
		check:  stubsInCut,
	},
	StubTimber,
}

// CollarThrough is what goes through the floor, and how far.
var CollarThrough = &Rule{
	ID: "stack.turret", Unit: MM, Sense: Least, Weight: Kills, AtCut: true,
	Word:   "collar through the floor",
	named:  wordAlone,
	Title:  "Collar reaches through the floor",
	Ask:    "The collar must come out below the lowest rib, so that the stubs and their seal are outside.",
	Advice: "use a deeper collar, or thin the floor round the hole as the heater's instructions allow.",
	short:  shortfall{words: "collar %s mm too short"},
	check:  collarThrough,
}

// Plate returns the mounting flange's outline where the heater will sit. Its corners are anticlockwise from front left.
func Plate(job vehicles.Job, plan vehicles.Plan) geometry.Footprint {
	h := job.Heater
	half := geometry.Point{X: h.Plate[0] / 2, Y: h.Plate[1] / 2}
	return geometry.NewRectangle(half.Scale(-1), half, 0).Moved(h.Yaw, plan.Cut.At)
}

// Body returns the heater's body where it will sit: from the finished floor up, and grown by the space kept free round
// it when spaced.
func Body(job vehicles.Job, plan vehicles.Plan, spaced bool) geometry.Prism {
	h := job.Heater
	at, half := geometry.Point{X: h.BodyAt[0], Y: h.BodyAt[1]}, geometry.Point{X: h.Body[0] / 2, Y: h.Body[1] / 2}
	low, high, top := at.Sub(half), at.Add(half), h.Body[2]
	if spaced {
		space := h.Kept()
		low = low.Sub(geometry.Point{X: space.Rear, Y: space.Sides})
		high = high.Add(geometry.Point{X: space.Front, Y: space.Sides})
		top += space.Top
	}
	return geometry.Prism{
		Footprint: geometry.NewRectangle(low, high, 0).Moved(h.Yaw, plan.Cut.At),
		Low:       job.Floor.Thickness, High: job.Floor.Thickness + top,
	}
}

func collarThrough(j *judge, r *Rule) {
	if h := j.job.Heater; h != nil && h.Turret.Set {
		j.plain(r, the(TheStack), the(TheFloor), h.Turret.Value-j.job.Floor.Thickness)
	}
}

// placed tells whether there is a heater and a cut to put it on.
func (j *judge) placed() bool { return j.job.Heater != nil && j.job.Cut != nil }

func plateOnFloor(j *judge, r *Rule) {
	if j.placed() {
		j.onFloor(r, the(ThePlate), j.theCut(), Plate(*j.job, *j.plan))
	}
}

func plateFittings(j *judge, r *Rule) {
	if !j.placed() {
		return
	}
	limit, plate := j.book.of(r), Plate(*j.job, *j.plan)
	for i := range j.plan.Fittings {
		if j.job.Fittings[i].Rise.From > 0 {
			continue
		}
		thing := &j.plan.Fittings[i]
		s := geometry.Between(plate, thing.Prism.Footprint)
		f := j.open(limit, the(ThePlate), j.fitting(i))
		f.Value = s.Gap
		f.flat(s.A, s.B)
		j.fromAbove(f, thing, s.B, s.N.At(0))
	}
}

func bodySpace(j *judge, r *Rule) {
	if !j.placed() {
		return
	}
	limit, body := j.book.of(r), Body(*j.job, *j.plan, true)
	for i := range j.plan.Fittings {
		if flush(&j.job.Fittings[i]) {
			continue
		}
		thing := &j.plan.Fittings[i]
		s := geometry.BoxGap(body, thing.Prism)
		f := j.open(limit, the(TheBody), j.fitting(i))
		f.Value = s.Gap
		f.between(s.A, s.B)
		j.fromAbove(f, thing, s.B.Plan(), s.N)
	}
}

// plateSwages judges the plate against what is pressed into the sheet under it.
func plateSwages(j *judge, r *Rule) {
	if !j.placed() || j.job.Heater.Packed {
		return
	}
	limit, plate := j.book.of(r), Plate(*j.job, *j.plan)
	for i := range j.plan.Obstructions {
		if !j.is(i, vehicles.InSheetMetal) {
			continue
		}
		thing := &j.plan.Obstructions[i]
		s := geometry.Between(plate, thing.Prism.Footprint)
		f := j.open(limit, the(ThePlate), j.obstruction(i))
		f.Value = s.Gap
		f.flat(s.A, s.B)
		why := j.spread(f, j.theCut(), thing, false, s.B, s.N.At(0))
		if j.close(f, why); why != 0 && f.Value < 0 && f.Required.Set {
			f.Why += "; " + r.doubt // which stays to be done when that reason is gone
		}
	}
}

func keepPlateOnFloor(j *judge, r *Rule) []keep {
	if j.job.Heater == nil {
		return nil
	}
	return j.keepOnFloor(r, Plate(*j.job, *j.plan))
}

func keepPlateClear(j *judge, r *Rule) (list []keep) {
	if j.job.Heater == nil {
		return nil
	}
	plate, need := j.atDatum(Plate(*j.job, *j.plan)), j.book.of(r).least()
	for i := range j.plan.Fittings {
		if f := &j.job.Fittings[i]; f.Rise.From <= 0 {
			list = append(list, carried(f.Name, &j.plan.Fittings[i], plate, need, level))
		}
	}
	return list
}

func keepBodyClear(j *judge, r *Rule) (list []keep) {
	if j.job.Heater == nil {
		return nil
	}
	body, need := Body(*j.job, *j.plan, true), j.book.of(r).least()
	outline := j.atDatum(body.Footprint)
	for i := range j.plan.Fittings {
		if flush(&j.job.Fittings[i]) {
			continue
		}
		thing := &j.plan.Fittings[i]
		lift := max(thing.Prism.Low-body.High, body.Low-thing.Prism.High)
		list = append(list, carried(j.job.Fittings[i].Name, thing, outline, need, lift))
	}
	return list
}

// fromAbove ends a finding between what goes with the cut and what was measured from above.
func (j *judge) fromAbove(f *Finding, thing *vehicles.Placed, q geometry.Point, n geometry.Point3) {
	j.close(f, j.spread(f, j.theCut(), thing, true, q, n))
}

func stubsInCut(j *judge, r *Rule) {
	if !j.placed() {
		return
	}
	limits, h, radius := j.book.ofKinds(r), j.job.Heater, j.job.Cut.Across/2
	stub := func(of Sort, at [2]float64, across float64) {
		f := j.open(limits.of(of.String()), the(of), the(TheCut))
		f.Value = radius - (math.Hypot(at[0], at[1]) + across/2)
		j.close(f, 0)
	}
	if run := j.job.Exhaust; run != nil {
		stub(TheExhaust, h.ExhaustStub, run.Across)
	}
	if run := j.job.Intake; run != nil {
		stub(TheIntake, h.IntakeStub, run.Across)
	}
	if run := j.job.Fuel; run != nil {
		stub(TheFuel, h.FuelStub, run.Across)
	}
}

// Toward says where something points that is turned by yaw, degrees, from the van's front to its left, with words for left and right: "to the
// front and left", the nearest of eight ways.
func Toward(yaw float64, left, right string) string {
	ways := [...]string{
		"to the front", "to the front and " + left, "to the " + left, "to the rear and " + left,
		"to the rear", "to the rear and " + right, "to the " + right, "to the front and " + right,
	}
	eighth := int(math.Round(geometry.WithinHalfTurn(yaw) / (360 / float64(len(ways)))))
	return ways[(eighth+len(ways))%len(ways)]
}
