package features

import (
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// kindChoices are the kinds of a list with their letters.
func (l List) kindChoices() []form.Choice {
	out := make([]form.Choice, len(l.Kinds()))
	for i, name := range l.Kinds() {
		out[i] = form.Choice{Letter: l.kind(name).Letter, Name: name}
	}
	return l.direFirst(out)
}

// direFirst has of kinds that share a letter the one with the worse peril first, in the place of the other: whoever presses a letter once and goes
// on has called a tyre a traction battery, and not the other way round.
func (l List) direFirst(choices []form.Choice) []form.Choice {
	for i := range choices {
		for k := i + 1; k < len(choices); k++ {
			if choices[k].Letter == choices[i].Letter && l.kind(choices[k].Name).Peril > l.kind(choices[i].Name).Peril {
				choices[i], choices[k] = choices[k], choices[i]
			}
		}
	}
	return choices
}

// kind is the kind of that name among those of the list.
func (l List) kind(name string) vehicles.Kind {
	if l == Openings {
		return vehicles.OpeningKindOf(name)
	}
	return vehicles.KindOf(name)
}

// The words for the shapes of a place, in the order of the shapes.
var shapeWords = [...]string{vehicles.Box: "rectangle", vehicles.Piped: "line or pipe", vehicles.Disc: "round"}

var shapeChoices = []form.Choice{
	{Letter: 'r', Name: shapeWords[vehicles.Box]}, {Letter: 'l', Name: shapeWords[vehicles.Piped]},
	{Letter: 'o', Name: shapeWords[vehicles.Disc]},
}

// shapeNamed returns the shape of a word.
func shapeNamed(word string) (vehicles.Shape, bool) {
	for i, w := range shapeWords {
		if w == word {
			return vehicles.Shape(i), true
		}
	}
	return 0, false
}

// onlyStands is what a fitting without a kind says.
const onlyStands = "only stands there"

// holdsChoices are what a fuel tank or line may hold.
var holdsChoices = []form.Choice{
	{Letter: 'p', Name: vehicles.Petrol}, {Letter: 'd', Name: vehicles.Diesel}, {Letter: 'n', Name: vehicles.NotKnown},
}

// The words for whether a thing was measured on this van.
const (
	onThisVan    = "on this van"
	notConfirmed = "not confirmed"
)
