package things

import (
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// letters choose a kind with one key. Where the plan knows a kind by one letter, it is that one.
var letters = map[string]rune{
	"crossmember": 'c', "chassis rail": 'r', "floor rib": 'i', "brake line": 'b', "fuel line": 'f', "fuel tank": 'k',
	"wiring": 'w', "vehicle exhaust": 'e', "spare wheel": 's', "suspension": 'u', "driveshaft": 'd',
	"jacking point": 'j', "plastic part": 'p', "heat shield": 'l', "wheel arch": 'v', "double skin": 'x',
	"seat mount": 'm', "seat-belt mount": 'y', "reductant tank": 'q', "gas tank": 'g', "hand-brake cable": 'h',
	"air line": 'a', "tyre": 't', "body sill": 'z', "other": 'o',
	// of openings
	"door": 'd', "window": 'w', "vent": 'v', "floor drain": 'r', "fuel filler": 'f', "side step": 's',
	"cab air inlet": 'c', "body plug": 'p',
}

// KindLetter is the letter that chooses a kind.
func KindLetter(kind string) rune { return letters[kind] }

// kindChoices are the kinds of a list with their letters.
func (l List) kindChoices() []form.Choice {
	out := make([]form.Choice, len(l.Kinds()))
	for i, kind := range l.Kinds() {
		out[i] = form.Choice{Letter: letters[kind], Name: kind}
	}
	return out
}

// The words for the forms of a place, in the order of the forms.
var formWords = [...]string{vehicles.Box: "rectangle", vehicles.Piped: "line or pipe", vehicles.Disc: "round"}

var formChoices = []form.Choice{
	{Letter: 'r', Name: formWords[vehicles.Box]}, {Letter: 'l', Name: formWords[vehicles.Piped]},
	{Letter: 'o', Name: formWords[vehicles.Disc]},
}

// usualForm is the form that things of a kind mostly have.
func usualForm(kind string) vehicles.Form {
	switch kind {
	case "brake line", "fuel line", "wiring", "hand-brake cable", "air line", "vehicle exhaust", "driveshaft",
		"door", "window", "side step":
		return vehicles.Piped
	case "spare wheel", "jacking point", "floor drain", "fuel filler", "body plug", "seat mount", "seat-belt mount":
		return vehicles.Disc
	}
	return vehicles.Box
}

// formNamed returns the form of a word.
func formNamed(word string) (vehicles.Form, bool) {
	for i, w := range formWords {
		if w == word {
			return vehicles.Form(i), true
		}
	}
	return 0, false
}

// The words for whether a thing was measured on this van.
const (
	onThisVan    = "on this van"
	notConfirmed = "not confirmed"
)
