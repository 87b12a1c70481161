package ontop

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// card is one of the forms for what is there once.
type card uint8

const (
	floorCard card = iota
	hooksCard
	bowCard
	errorsCard
	heaterCard
)

// values are those of a card.
type values interface {
	// Fields are the fields; held are texts the job has not taken.
	Fields(s desk.State, held map[string]string) []form.Field
	Set(s desk.State, texts map[string]string) (vehicles.Job, error)
}

// cards are what each is called, for people and for undo, and its values.
var cards = [...]struct {
	id, text string
	values
}{
	floorCard:  {"floor", "Floor", floorSlots},
	hooksCard:  {"where the tape hooks", "Where the tape hooks", hooks{hookSlots}},
	bowCard:    {"bumper's bow", "Does the DATUM bow?", bow{}},
	errorsCard: {"how well it is measured", "How well it is measured", errorSlots()},
	heaterCard: {"heater", "Heater, and where it blows", heaterSlots},
}

// record is the form of a card.
type record struct{ card card }

// ID says which card it is.
func (h record) ID() string { return cards[h.card].id }

// Called is what refused texts of the card are kept under, and what it is called for people.
func (h record) Called(j vehicles.Job) (of, name string) {
	if h.card == bowCard && j.Datum.Named() {
		return h.ID(), "bow of the " + j.Datum.Called()
	}
	return h.ID(), h.ID()
}

// Fields are the card's fields.
func (h record) Fields(s desk.State, held map[string]string) []form.Field {
	fields := cards[h.card].values.Fields(s, held)
	guesses := s.Job.Guesses
	for i := range fields {
		fields[i].Guess = slices.Contains(guesses, h.fileKey(fields[i].Key))
	}
	return fields
}

// fileKey is what the job file calls a field of the floor.
func (h record) fileKey(key string) string { return cards[h.card].id + "." + key }

// Set puts texts into the job. They are no guesses then.
func (h record) Set(s desk.State, texts map[string]string) (vehicles.Job, form.Record, error) {
	job, err := cards[h.card].values.Set(s, texts)
	for key := range texts {
		if len(job.Guesses) > 0 {
			job = job.WithoutGuess(h.fileKey(key))
		}
	}
	return job, h, err
}

var floorSlots = form.Slots{
	fromDatum(),
	form.Required(form.Field{Key: "length", Label: "length"}, vehicles.ASize,
		func(j *vehicles.Job) *float64 { return &j.Floor.Length }),
	form.Required(form.Field{Key: "width", Label: "width"}, vehicles.ASize,
		func(j *vehicles.Job) *float64 { return &j.Floor.Width }),
	form.Required(form.Field{Key: "thickness", Label: "thickness"}, vehicles.ASize,
		func(j *vehicles.Job) *float64 { return &j.Floor.Thickness }),
	form.Required(form.Field{Key: "ground", Label: "down to ground"}, vehicles.ASize,
		func(j *vehicles.Job) *float64 { return &j.Floor.Ground }),
	deckSlot(),
	layersSlot(),
	skin("outline.left", "left", "The van's skin at the outlet's height", halfWidth, vehicles.ASize, func(j *vehicles.Job) *vehicles.Number { return &j.Floor.Outline.Left }),
	skin("outline.right", "right", "", halfWidth, vehicles.ASize, func(j *vehicles.Job) *vehicles.Number { return &j.Floor.Outline.Right }),
	skin("outline.rear", "rear end", "", rearEnd, vehicles.ALength, func(j *vehicles.Job) *vehicles.Number { return &j.Floor.Outline.Rear }),
}

// skin is the slot for one side of the van's outline. Enter passes it: most vans are as wide as their floor.
func skin(key, label, heading string, blank func(j vehicles.Job) string, l vehicles.Limits, at func(j *vehicles.Job) *vehicles.Number) form.Slot {
	slot := form.Optional(form.Field{Key: key, Label: label, Unit: "mm", Heading: heading, Pass: true}, form.LengthIn(l), blank, at)
	slot.Say = func(f *form.Field, s desk.State) {
		switch key {
		case "outline.left":
			f.Label = desk.Left(s.Settings)
		case "outline.right":
			f.Label = desk.Right(s.Settings)
		}
	}
	return slot
}

// halfWidth and rearEnd say what holds of the outline while nobody has said it.
func halfWidth(j vehicles.Job) string { return survey.Exact(j.Floor.Width / 2) }

func rearEnd(j vehicles.Job) string {
	if j.Datum.Named() {
		return vehicles.NotKnown
	}
	return "0"
}

// deckSlot is what carries the heater's plate.
func deckSlot() form.Slot {
	slot := known(form.Field{Key: "deck", Label: "deck"}, func(j *vehicles.Job) *string { return &j.Floor.Deck },
		form.Choice{Letter: 's', Name: vehicles.Steel}, form.Choice{Letter: 't', Name: vehicles.Timber})
	slot.Say = func(f *form.Field, s desk.State) {
		if s.Job.Floor.Deck == vehicles.Timber {
			f.Note = "takes " + rules.SteelPlates + "; Place says how wide it is cut back"
		}
	}
	return slot
}

// layersSlot is what may burn on the deck.
func layersSlot() form.Slot {
	slot := known(form.Field{Key: "layers", Label: "on the deck"}, func(j *vehicles.Job) *string { return &j.Floor.Layers },
		form.Choice{Letter: 'w', Name: vehicles.Wood}, form.Choice{Letter: 'o', Name: vehicles.NoLayers})
	slot.Say = func(f *form.Field, s desk.State) {
		if s.Job.Floor.Layers == vehicles.Wood {
			f.Note = "is cut back round the hole; Place says how wide"
		}
	}
	return slot
}

// known is a slot for one of a few words, or for what nobody knows yet. Enter passes it.
func known(f form.Field, at func(*vehicles.Job) *string, choices ...form.Choice) form.Slot {
	f.Pass, f.Choices = true, append(choices, form.Choice{Letter: 'n', Name: vehicles.NotKnown})
	return form.Slot{
		Field: f,
		Get:   func(s desk.State) string { return cmp.Or(*at(&s.Job), vehicles.NotKnown) },
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			if *at(&j) = text; text == vehicles.NotKnown {
				*at(&j) = ""
			}
			return j, nil
		},
	}
}

// fromDatum is the slot for where the floor begins.
func fromDatum() form.Slot {
	slot := form.Required(form.Field{Key: "from"}, vehicles.ALength, func(j *vehicles.Job) *float64 { return &j.Floor.From })
	slot.Say = func(f *form.Field, s desk.State) { f.Label = "from " + desk.Datum(&s.Job.Datum, shortDatum) }
	return slot
}

// shortDatum is how much of the datum's name there is room for in a label.
const shortDatum = 12

// datumName is the slot for what the line that x starts at is called.
func datumName() form.Slot {
	slot := form.Line(form.Field{Key: "name", Label: "x starts at", Blank: "rear bumper edge", Heading: "The datum line"},
		func(j *vehicles.Job) *string { return &j.Datum.Name })
	put := slot.Set
	slot.Set = func(j vehicles.Job, text string) (vehicles.Job, error) {
		if _, err := survey.Typed(text, survey.Y); err == nil {
			return j, errors.New("that is a reading: a name is wanted, like step of the sliding door")
		}
		return put(j, text)
	}
	return slot
}

// errorSlots are the frames' error and the tape's.
func errorSlots() form.Slots {
	frames := hook("frames", "two frames ±", "", vehicles.ADistance, mm((*vehicles.Job).Frames),
		func(j *vehicles.Job) *vehicles.Number { return &j.Datum.Frames })
	return append(form.Slots{frames}, entryscreen.Errors()...)
}

// fresh says whether nothing has been measured for the job yet.
func fresh(j vehicles.Job) bool { return len(j.Obstructions)+len(j.Openings)+len(j.Ties) == 0 }

// asks is what a card still asks for, in a few words; "" for nothing.
func (c card) asks(j vehicles.Job) string {
	switch {
	case c == floorCard && len(j.Guesses) == 1:
		return "? 1 guess: measure"
	case c == floorCard && len(j.Guesses) > 0:
		return fmt.Sprintf("? %d guesses: measure", len(j.Guesses))
	case c == hooksCard && askShift(j):
		return "? where the zeros are"
	case c == hooksCard && slices.ContainsFunc(holdings, func(h holding) bool { return h.open(j) }):
		return "? level or sloping"
	case c == bowCard && fresh(j) && len(j.Bow) == 0:
		return "? straight"
	case c == errorsCard && fresh(j):
		return "? how far off"
	case c == heaterCard && j.Heater == nil:
		return "none yet"
	}
	return ""
}
