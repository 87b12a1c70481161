package sizing

import (
	"slices"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// card is the form of a subject: the figures that its results rest on.
type card struct{ topic sizing.Topic }

// cards are the fields of each subject, and by result at which of them its form is opened.
var cards = map[sizing.Topic]struct {
	slots func(s desk.State) form.Slots
	at    map[sizing.ID]string
}{
	sizing.Floor:     {floorCard, floorAt},
	sizing.Fuel:      {fuelCard, fuelAt},
	sizing.Electrics: {always(slices.Concat(electricsSlots, wiringSlots)), electricsAt},
	sizing.Heat:      {always(heatSlots), heatAt},
	sizing.Duct:      {always(ductSlots), ductAt},
	sizing.Saw:       {always(nil), nil},
}

// always are fields that every job has.
func always(slots form.Slots) func(desk.State) form.Slots {
	return func(desk.State) form.Slots { return slots }
}

// ID says which subject it is of.
func (c card) ID() string { return string(c.topic) }

// Called is what refused texts are kept under: the floor's card on another screen is called floor, too.
func (c card) Called(vehicles.Job) (of, name string) { return "sizes: " + c.ID(), c.ID() }

// Fields are the subject's fields.
func (c card) Fields(s desk.State, held map[string]string) []form.Field {
	return cards[c.topic].slots(s).Fields(s, held)
}

// Set puts texts into the job.
func (c card) Set(s desk.State, texts map[string]string) (vehicles.Job, form.Record, error) {
	job, err := cards[c.topic].slots(s).Set(s, texts)
	return job, c, err
}

// fieldOf is the field at which a result's form is opened, "" for the first.
func fieldOf(r result) string { return cards[r.topic].at[r.row.ID] }

// figures are where a table's figures are in a job.
type figures func(j *vehicles.Job) []vehicles.Figure

// of is the figure of a key.
func (f figures) of(j *vehicles.Job, key string) vehicles.Figure {
	for _, figure := range f(j) {
		if figure.Key == key {
			return figure
		}
	}
	panic("no figure " + key) // a table of this package names one that is not there
}

// slot is a field for a figure; blank says what holds while nobody has said it.
func (f figures) slot(key, label, unit, note string, blank func(j vehicles.Job) string) form.Slot {
	read := func(text string) (float64, error) {
		if unit == "mm" {
			return form.Length(text, vehicles.ALength)
		}
		return form.Number(text)
	}
	slot := form.Optional(form.Field{Key: key, Label: label, Unit: unit, Note: note}, read, blank,
		func(j *vehicles.Job) *vehicles.Number { return f.of(j, key).At })
	put := slot.Set
	slot.Set = func(j vehicles.Job, text string) (vehicles.Job, error) {
		after, err := put(j, text)
		if figure := f.of(&after, key); err == nil && figure.At.Set {
			err = figure.Takes(figure.At.Value)
		}
		return after, err
	}
	return slot
}

// nobodySaid stands where nothing is, and nothing is taken in its place.
const nobodySaid = "nobody has said"

// notSaid is a blank that holds back results.
func notSaid(vehicles.Job) string { return nobodySaid }

// taken is a blank in whose place something usual is taken.
func taken(of func(s *sizing.Sizes) float64) func(vehicles.Job) string {
	return func(vehicles.Job) string { return survey.Exact(of(sizing.Usual())) + " taken" }
}
