package vehicles

import "bench.example/undermark/geometry/scene"

// Kind is what the program knows of a kind of thing, all in one row.
type Kind struct {
	Name    string     // as the job file has it
	Code    string     // one or two letters on the plan; what is long and narrow has one, to fit across it
	Letter  rune       // chooses it with one key, pressed again for the next kind that has it; where the plan has one letter, that one
	Form    Form       // that its place mostly has
	Role    scene.Role // in the picture
	Movable bool       // may be moved or taken off to make room: what carries the van, brakes it or holds fuel stays. common practice, no source
	Added   bool       // beyond the kinds of the contract: other programs do not know it
}

// The kinds of job file format 1, in the order lists show them.
var (
	obstructionKinds = []Kind{
		{"crossmember", "C", 'c', Box, scene.Steel, false, false},
		{"chassis rail", "R", 'r', Box, scene.Steel, false, false},
		{"floor rib", "I", 'i', Box, scene.Steel, false, false},
		{"brake line", "B", 'b', Piped, scene.Lines, false, false},
		{"fuel line", "F", 'f', Piped, scene.Lines, false, false},
		{"fuel tank", "FT", 'k', Box, scene.Lines, false, false},
		{"wiring", "W", 'w', Piped, scene.Lines, true, false},
		{"vehicle exhaust", "E", 'e', Piped, scene.Hot, false, false},
		{"spare wheel", "S", 's', Disc, scene.Movable, true, false},
		{"suspension", "SU", 'u', Box, scene.Movable, false, false},
		{"driveshaft", "D", 'd', Piped, scene.Movable, false, false},
		{"jacking point", "J", 'j', Disc, scene.Steel, false, false},
		{"plastic part", "P", 'p', Box, scene.Movable, true, false},
		{"heat shield", "HS", 'l', Box, scene.Hot, false, false},
		{"wheel arch", "WA", 'v', Box, scene.Steel, false, false},
		{"double skin", "DS", 'x', Box, scene.Steel, false, false},
		{"seat mount", "SM", 'm', Disc, scene.Steel, false, false},
		{"seat-belt mount", "SB", 'y', Disc, scene.Steel, false, false},
		{"reductant tank", "RT", 'q', Box, scene.Lines, false, false},
		{"gas tank", "GT", 'g', Box, scene.Lines, false, false},
		{"hand-brake cable", "H", 'h', Piped, scene.Lines, false, false},
		{"air line", "A", 'a', Piped, scene.Lines, false, false},
		{"tyre", "T", 't', Box, scene.Movable, false, false},
		{"body sill", "BS", 'm', Box, scene.Steel, false, false},
		{"swage", "SW", 'z', Piped, scene.Pressed, false, false}, // pressed into the sheet, where a floor rib is welded on
		{"high-voltage cable", "V", 'v', Piped, scene.Lines, false, false},
		{"traction battery", "TB", 't', Box, scene.Lines, false, false},
		{"coolant pipe", "L", 'l', Piped, scene.Lines, false, false},
		{"gas pipe", "G", 'g', Piped, scene.Lines, false, false},
		{"water tank", "WT", 'q', Box, scene.Lines, false, false},
		{"catalyst", "CA", 'a', Box, scene.Hot, false, false},
		{Name: "tow bar", Code: "TW", Letter: 'j', Form: Box, Role: scene.Steel, Added: true},
		{Name: "wheel-sensor wire", Code: "N", Letter: 'n', Form: Piped, Role: scene.Lines, Added: true},
		{Name: "particulate filter", Code: "PF", Letter: 'p', Form: Box, Role: scene.Hot, Added: true},
		{Name: "axle", Code: "AX", Letter: 'x', Form: Box, Role: scene.Movable, Added: true},
		{"other", "O", 'o', Box, scene.Movable, false, false}, // what is unknown is taken for it: it stays the last
	}
	openingKinds = []Kind{
		{Name: "door", Letter: 'd', Form: Piped},
		{Name: "window", Letter: 'w', Form: Piped},
		{Name: "vent", Letter: 'v'},
		{Name: "floor drain", Letter: 'r', Form: Disc},
		{Name: "fuel filler", Letter: 'f', Form: Disc},
		{Name: "side step", Letter: 's', Form: Piped},
		{Name: "cab air inlet", Letter: 'c'},
		{Name: "body plug", Letter: 'p', Form: Disc},
		{Name: "gas locker vent", Letter: 'g'},
		{Name: "heater air inlet", Letter: 'h'},
		{Name: "tank breather", Letter: 't', Form: Disc},
		{Name: "roof vent", Letter: 'v'},
		{Name: "locker door", Letter: 'l', Form: Piped},
		{Name: "cable hole", Letter: 'c', Form: Disc},
		{Name: "other", Letter: 'o'},
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
func KindOf(name string) Kind { return kindIn(obstructionKinds, name) }

// OpeningKindOf is the kind of opening of that name, "other" for a name that none has.
func OpeningKindOf(name string) Kind { return kindIn(openingKinds, name) }

// UsualForm is the form that the place of a thing of that kind mostly has, an obstruction's or an opening's: no name stands
// for two kinds of different forms. Box for a name that none has.
func UsualForm(name string) Form {
	if k := KindOf(name); k.Name == name {
		return k.Form
	}
	return OpeningKindOf(name).Form
}

func kindIn(kinds []Kind, name string) Kind {
	for _, k := range kinds {
		if k.Name == name {
			return k
		}
	}
	return kinds[len(kinds)-1]
}
