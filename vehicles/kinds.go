package vehicles

import "bench.example/undermark/geometry/scene"

// Kind is what the program knows of a kind of thing, all in one row.
type Kind struct {
	Name   string     // as the job file has it
	Code   string     // one or two letters on the plan; what is long and narrow has one, to fit across it
	Letter rune       // chooses it with one key, pressed again for the next kind that has it; where the plan has one letter, that one
	Shape  Shape      // that its place mostly has
	Role   scene.Role // in the picture
	Traits Traits     // what is asked of it and not of others
	Peril  Peril      // of a fault with it
	Asks   string     // how to look for it, and what there is to fear, in a short line
}

// Peril is what every fault with a kind of thing can do, whatever rule it is of.
type Peril uint8

// The perils.
const (
	Usual       Peril = iota // no more than the rule says
	Deadly                   // kill: it holds what burns, or brakes the van
	HighVoltage              // kill whoever drills into it
)

// Landmark tells whether people find their way under a van by a kind, or must know where it is before all else.
func (k Kind) Landmark() bool {
	return k.Peril != Usual || k.Is(Waymark)
}

// DeadlyPipe tells whether a kind is a pipe or a wire that can kill if a saw meets it.
func (k Kind) DeadlyPipe() bool { return k.Peril != Usual && k.Shape == Piped }

// The kinds of job file format 1, in the order lists show them.
var (
	obstructionKinds = []Kind{
		{"crossmember", "C", 'c', Box, scene.Steel, Waymark | Hollow | BearsClips | TapedAsBeam, Usual, "Box section from rail to rail: knock, it sounds full."},
		{"chassis rail", "R", 'r', Box, scene.Rail, Waymark | Hollow | BearsClips | TapedAsRail, Usual, "Long box section on either side, front to rear."},
		{"floor rib", "I", 'i', Box, scene.Rib, BearsClips, Usual, "Welded on under the sheet: feel for the edges."},
		{"brake line", "B", 'b', Piped, scene.Lines, TapedAsPipe, Deadly, "Thin steel pipe, also on top of a rail: follow all of it."},
		{"fuel line", "F", 'f', Piped, scene.Lines, HoldsFuel | TapedAsPipe, Deadly, "Follow each pipe from tank to engine, also above a beam."},
		{"fuel tank", "FT", 'k', Box, scene.Lines, VanTank | HoldsFuel | HurtByHeat, Deadly, "Where do its straps and its filler run? Petrol or diesel?"},
		{"wiring", "W", 'w', Piped, scene.Lines, Movable | TapedAsPipe, Usual, "Sleeved looms, often on top of a beam: use a mirror."},
		{"vehicle exhaust", "E", 'e', Piped, scene.Hot, Waymark | GivesHeat, Usual, "Follow it from end to end; think of its heat, too."},
		{"spare wheel", "S", 's', Disc, scene.Movable, Movable | ComesDown, Usual, "Its cradle and winch, and the way it goes down."},
		{"suspension", "SU", 'u', Box, scene.Movable, Travels, Usual, "It comes up when the van is loaded: by how much?"},
		{"driveshaft", "D", 'd', Piped, scene.Movable, Travels, Usual, "It turns, and comes up with the axle."},
		{"jacking point", "J", 'j', Disc, scene.Steel, ComesDown, Usual, "Stiffened spots by the wheels: keep them free."},
		{"plastic part", "P", 'p', Box, scene.Movable, Movable | HurtByHeat, Usual, "Trays and covers: what is behind them?"},
		{"heat shield", "HS", 'l', Box, scene.Movable, 0, Usual, "Thin bright sheet: something hot is beside it."},
		{"wheel arch", "WA", 'v', Box, scene.Steel, Hollow, Usual, "Where does the sheet begin to curve down?"},
		{"double skin", "DS", 'x', Box, scene.Steel, Hollow, Usual, "Two sheets with a gap: knock, or look in by a plug."},
		{"seat mount", "SM", 'm', Disc, scene.Steel, HoldsSeat, Usual, "Bolts and plates of the seats, from below and above."},
		{"seat-belt mount", "SB", 'y', Disc, scene.Steel, HoldsSeat, Usual, "A large bolt on a thick plate: never weaken it."},
		{"reductant tank", "RT", 'q', Box, scene.Lines, HurtByHeat, Usual, "A second cap by the fuel filler? Find its tank and pipe."},
		{"gas tank", "GT", 'g', Box, scene.Lines, HoldsGas | HurtByHeat, Deadly, "A gas filler or label? Find tank and pipes: it can explode."},
		{"hand-brake cable", "H", 'h', Piped, scene.Lines, 0, Usual, "Have somebody pull the lever: what moves?"},
		{"air line", "A", 'a', Piped, scene.Lines, TapedAsPipe, Deadly, "Air brakes or air springs? Plastic pipes under pressure."},
		{"tyre", "T", 't', Box, scene.Movable, Travels | HurtByHeat, Usual, "At full lock and fully loaded: how near does it come?"},
		{"body sill", "BS", 'm', Box, scene.Rib, Hollow | BearsClips, Usual, "Box section along the edge, under the doors."},
		{"swage", "SW", 'z', Piped, scene.Pressed, InSheetMetal, Usual, "Pressed into the sheet, hollow from above: feel for it."}, // pressed into the sheet, where a floor rib is welded on
		{"high-voltage cable", "V", 'v', Piped, scene.Lines, 0, HighVoltage, "Orange cables? Do not drill; trained people only."},
		{"traction battery", "TB", 't', Box, scene.Lines, HurtByHeat, HighVoltage, "Electric or hybrid? Do not drill; trained people only."},
		{"coolant pipe", "L", 'l', Piped, scene.Lines, TapedAsPipe, Usual, "A heater or air conditioning in the rear? Follow its hoses."},
		{"gas pipe", "G", 'g', Piped, scene.Lines, HoldsGas | TapedAsPipe, Deadly, "A cooker or gas locker? Shut the bottle, follow its pipe."},
		{"water tank", "WT", 'q', Box, scene.Lines, HurtByHeat, Usual, "Fresh or waste water? Its hoses and taps, too."},
		{"catalyst", "CA", 'a', Box, scene.Hot, GivesHeat, Usual, "The thick part of the exhaust next to the engine: very hot."},
		{Name: "tow bar", Code: "TW", Letter: 'j', Shape: Box, Role: scene.Steel, Traits: Added | Hollow, Asks: "Its side arms run forward along the rails."},
		{Name: "wheel-sensor wire", Code: "N", Letter: 'n', Shape: Piped, Role: scene.Lines, Traits: Added, Peril: Deadly, Asks: "A thin wire from each wheel: the brakes need it."},
		{Name: "particulate filter", Code: "PF", Letter: 'p', Shape: Box, Role: scene.Hot, Traits: Added | GivesHeat, Asks: "It burns itself clean, far hotter than the pipe beside it."},
		{Name: "axle", Code: "AX", Letter: 'x', Shape: Box, Role: scene.Movable, Traits: Added | Travels, Asks: "It comes up when loaded: measure to its bump stop."},
		{"other", "O", 'o', Box, scene.Movable, 0, Usual, "What you cannot name you do not drill: find out first."}, // what is unknown is taken for it: it stays the last
	}
	openingKinds = []Kind{
		{Name: "door", Letter: 'd', Shape: Piped, Traits: HurtByHeat, Asks: "Every door and flap: where is its lower edge?"},
		{Name: "window", Letter: 'w', Shape: Piped, Asks: "Those that open, and hatches."},
		{Name: "vent", Letter: 'v', Asks: "Forced-air vents of the body, behind bumper and trim."},
		{Name: "floor drain", Letter: 'r', Shape: Disc, Asks: "Holes that let water out of floor and sills."},
		{Name: "fuel filler", Letter: 'f', Shape: Disc, Traits: SpillsFuel, Asks: "Its flap, and where spilt fuel runs down: vapour burns."},
		{Name: "side step", Letter: 's', Shape: Piped, Traits: HurtByHeat, Asks: "Its well is often open to the inside."},
		{Name: "cab air inlet", Letter: 'c', Asks: "Below the windscreen, and any lower down."},
		{Name: "body plug", Letter: 'p', Shape: Disc, Asks: "Rubber and plastic plugs in the sheet: is one missing?"},
		{Name: "gas locker vent", Letter: 'g', Asks: "The drop hole in the gas locker: gas sinks, and burns."},
		{Name: "heater air inlet", Letter: 'h', Asks: "Where does this heater, or another one, take its air?"},
		{Name: "tank breather", Letter: 't', Shape: Disc, Asks: "Where does the breather hose of each tank end? Vapour burns."},
		{Name: "roof vent", Letter: 'v', Asks: "Above the outlet: warm gas rises."},
		{Name: "locker door", Letter: 'l', Shape: Piped, Traits: HurtByHeat, Asks: "Outer lockers, on the other side too."},
		{Name: "cable hole", Letter: 'c', Shape: Disc, Asks: "Hook-up, solar, tow-bar socket: is it sealed?"},
		{Name: "other", Letter: 'o', Asks: "Any gap by which gas could get in."},
	}
)

// Kinds are the names of the kinds of obstruction, OpeningKinds those of the kinds of opening, in the order of lists.
var (
	Kinds        = namesOf(obstructionKinds)
	OpeningKinds = namesOf(openingKinds)
)

func namesOf(kinds []Kind) []string {
	names := make([]string, len(kinds))
	for i, k := range kinds {
		names[i] = k.Name
	}
	return names
}

// KindOf is the kind of obstruction of that name, the last one, "other", for a name that none has.
func KindOf(name string) Kind {
	return obstructionKinds[min(KindIndex(name), len(obstructionKinds)-1)]
}

// OpeningKindOf is the kind of opening of that name, "other" for a name that none has.
func OpeningKindOf(name string) Kind {
	for _, k := range openingKinds {
		if k.Name == name {
			return k
		}
	}
	return openingKinds[len(openingKinds)-1]
}

// UsualShape is the shape that the place of a thing of that kind mostly has, an obstruction's or an opening's: no name stands
// for two kinds of different shapes. Box for a name that none has.
func UsualShape(name string) Shape {
	if k := KindOf(name); k.Name == name {
		return k.Shape
	}
	return OpeningKindOf(name).Shape
}

// PerilOf is the peril of a kind of obstruction; Usual for a name that none has.
func PerilOf(kind string) Peril {
	if at := KindIndex(kind); at < len(obstructionKinds) {
		return obstructionKinds[at].Peril
	}
	return Usual
}

// KindIndex is where a kind of obstruction stands in Kinds; behind all of them for a name that none has.
func KindIndex(name string) int {
	if at, there := kindIndex[name]; there {
		return at
	}
	return len(obstructionKinds)
}

// kindIndex is a map, as judging asks it of every obstruction.
var kindIndex = func() map[string]int {
	at := make(map[string]int, len(obstructionKinds))
	for i := range obstructionKinds {
		at[obstructionKinds[i].Name] = i
	}
	return at
}()
