package sizing

import (
	"errors"
	"fmt"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

var onMount = figures(func(j *vehicles.Job) []vehicles.Figure { return j.Mount.Figures() })

// mountSlots are how the heater stands on the floor.
var mountSlots = form.Slots{
	choice(form.Field{Key: "on", Label: "heater stands on", Choices: []form.Choice{{Letter: 's', Name: vehicles.OnSteel}, {Letter: 'l', Name: vehicles.OnLining}}},
		func(j *vehicles.Job) *string { return &j.Mount.On }),
	onMount.slot("plate", "its plate's metal", "mm", "", taken(func(s *sizing.Sizes) float64 { return s.Floor.Plate })),
	onMount.slot("bead", "bead of sealant", "mm", "how thick the string is", taken(func(s *sizing.Sizes) float64 { return s.Floor.Bead })),
}

// floorAt is at which field the form is opened for each result.
var floorAt = map[sizing.ID]string{
	sizing.Thickest: "layer0", sizing.Thinnest: "layer0", sizing.CollarNeeded: "on", sizing.CollarHas: "on", sizing.CollarToOrder: "on", sizing.Gives: "on", sizing.Screw: "plate", sizing.Bolt: "plate",
	sizing.Sealant: "bead", sizing.Cartridges: "bead", sizing.CutBack: "layer0",
}

// choice is a field for one of a few words, or for none.
func choice(f form.Field, at func(*vehicles.Job) *string) form.Slot {
	f.Choices = append(f.Choices, form.Choice{Letter: 'n', Name: vehicles.NotSaid})
	return form.Slot{
		Field: f,
		Get: func(s desk.State) string {
			if said := *at(&s.Job); said != "" {
				return said
			}
			return vehicles.NotSaid
		},
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			if *at(&j) = text; text == vehicles.NotSaid {
				*at(&j) = ""
			}
			return j, nil
		},
	}
}

// floorCard are the fields of the floor: what stands on it, its layers from the top down with a blank one behind them, the rest.
func floorCard(s desk.State) form.Slots {
	slots := append(form.Slots{}, mountSlots[0])
	for i := range len(s.Job.Stack) + 1 {
		slots = append(slots, layerSlot(i))
	}
	return append(slots, mountSlots[1:]...)
}

const layersNote = "a letter and mm: l lining, p ply, i insulation, s sheet, w swage"

// layerSlot is the field of a layer, or of the next one.
func layerSlot(i int) form.Slot {
	slot := form.Slot{Field: form.Field{Key: fmt.Sprintf("layer%d", i), Label: fmt.Sprintf("layer %d", i+1), Blank: "no more", Note: layersNote}}
	if i == 0 {
		slot.Heading = "Where it stands, from the top down"
	}
	slot.Get = func(s desk.State) string {
		if i < len(s.Job.Stack) {
			return layerText(s.Job.Stack[i])
		}
		return ""
	}
	slot.Set = func(j vehicles.Job, text string) (vehicles.Job, error) {
		switch {
		case text == "" && i < len(j.Stack):
			return j, errors.New(`needed; a "-" takes the layer out`)
		case text == "-" || text == "":
			j.Stack = j.Stack.Without(i)
			return j, nil
		}
		l, err := layerOf(text)
		switch {
		case err != nil:
			return j, err
		case i < len(j.Stack):
			j.Stack = j.Stack.With(i, l)
		default:
			j.Stack = j.Stack.Insert(len(j.Stack), l)
		}
		return j, nil
	}
	return slot
}

// layerText is a layer as it is typed: "ply 12, birch".
func layerText(l vehicles.Layer) string {
	text := l.Kind + " " + survey.Exact(l.Thick)
	if l.Name != "" {
		text += ", " + l.Name
	}
	return text
}

// layerLetters are the letters of the kinds, in their order.
const layerLetters = "lpisw"

// layerOf reads a layer as it is typed: what a kind begins with, or its letter; how thick; behind a comma its name.
func layerOf(text string) (l vehicles.Layer, err error) {
	text, l.Name, _ = strings.Cut(text, ",")
	l.Name = strings.TrimSpace(l.Name)
	text = strings.TrimSpace(text)
	at := strings.IndexAny(text, "0123456789.")
	if at < 0 {
		return l, errors.New("and how thick? Like ply 12")
	}
	word := strings.ToLower(strings.TrimSpace(text[:at]))
	for i, kind := range vehicles.LayerKinds {
		if word != "" && l.Kind == "" && (strings.HasPrefix(kind, word) || word == layerLetters[i:i+1]) {
			l.Kind = kind
		}
	}
	if word == "" || l.Kind == "" {
		return l, fmt.Errorf("which layer? %s: like ply 12", strings.Join(vehicles.LayerKinds, ", "))
	}
	l.Thick, err = form.Length(text[at:], vehicles.ASize)
	return l, err
}
