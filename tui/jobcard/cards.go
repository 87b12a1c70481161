package jobcard

import (
	"errors"
	"strings"
	"time"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/looks"
	"bench.example/undermark/vehicles"
)

// card is one of the forms for what is there once.
type card uint8

const (
	jobCard card = iota
	tapeCard
	showCard
	fuelCard
	wheelCard
)

// cards are what each is called, for people and for undo, and its values.
var cards = [...]struct {
	id, text string
	slots    form.Slots
}{
	jobCard:  {"job", "This job", jobSlots},
	tapeCard: {"tape", "The tape, and how well it is read", append(form.Slots{entryscreen.TapeClass()}, entryscreen.Errors()...)},
	showCard: {"how it is shown", "How it is shown", showSlots},
	fuelCard: {"fuel", "The fuel", fuelSlots},

	wheelCard: {"wheels", "The wheels", wheelSlots},
}

// there tells whether the job has what the card is of.
func (c card) there(j vehicles.Job) bool {
	switch c {
	case fuelCard:
		return j.Fuel != nil
	case wheelCard: // nothing else asks where they stand
		return j.RunChecks == vehicles.InFull || len(j.Wheels) > 0
	}
	return true
}

// cardRecord is the form of a card.
type cardRecord struct{ card card }

// ID says which card it is.
func (h cardRecord) ID() string { return cards[h.card].id }

// Fields are the card's fields.
func (h cardRecord) Fields(s desk.State, held map[string]string) []form.Field {
	if !h.card.there(s.Job) {
		return nil
	}
	fields := cards[h.card].slots.Fields(s, held)
	if h.card == showCard && s.Pixels.Shows() {
		fields = append(fields, form.Slots{planSlot}.Fields(s, held)...)
	}
	if h.card == showCard {
		fields = append(fields, form.Slots{paperSlot}.Fields(s, held)...)
	}
	return fields
}

// Set puts texts into the job.
func (h cardRecord) Set(s desk.State, texts map[string]string) (vehicles.Job, form.Record, error) {
	job, err := cards[h.card].slots.Set(s, texts)
	return job, h, err
}

// Settings puts a text into the workshop's settings.
func (h cardRecord) Settings(s desk.State, key, text string) (desk.Settings, bool) {
	set := s.Settings
	switch key {
	case "units":
		set.Units = desk.Millimetres
		if text == desk.Inches.String() {
			set.Units = desk.Inches
		}
	case "sides":
		for side := desk.LeftRight; side <= desk.NearsideRight; side++ {
			if desk.SideWords(side) == text {
				set.Nearside = side
			}
		}
	case "figures":
		set.Big = text == desk.FigureWords()[1]
	case "paper":
		set.Letter = text == desk.PaperWords()[1]
	case "look":
		set.Look, _ = looks.Parse(text)
	case "plan":
		set.Plan = desk.InPixels
		if text == desk.PlanWord(desk.InCells) {
			set.Plan = desk.InCells
		}
	default:
		return set, false
	}
	return set, true
}

// actRecord is the form of something to do: it has none.
type actRecord struct{ act act }

// ID says what it does.
func (h actRecord) ID() string { return acts[h.act].text }

// Fields are none.
func (h actRecord) Fields(desk.State, map[string]string) []form.Field { return nil }

// Set changes nothing.
func (h actRecord) Set(s desk.State, _ map[string]string) (vehicles.Job, form.Record, error) {
	return s.Job, h, nil
}

// line is a slot for a line of text.
func line(key, label, blank, note string, at func(j *vehicles.Job) *string) form.Slot {
	return form.Line(form.Field{Key: key, Label: label, Blank: blank, Note: note}, at)
}

var jobSlots = form.Slots{
	refSlot(),
	line("vehicle", "vehicle", "which van", "", func(j *vehicles.Job) *string { return &j.Vehicle }),
	line("fitter", "fitter", "who does it", "", func(j *vehicles.Job) *string { return &j.Fitter }),
	dateSlot(),
	notesSlot(),
	runsSlot(),
}

// How far the runs are asked, in words.
const (
	askedInFull = "in full"
	askedLess   = "as other programs ask"
)

// runsSlot is what the job's runs are held to.
func runsSlot() form.Slot {
	return form.Slot{
		Field: form.Field{
			Key: "runs", Label: "runs", Pass: true, Note: "in full: also driving wind, wheels, clips and what must be reached",
			Choices: []form.Choice{{Letter: 'f', Name: askedInFull}, {Letter: 'o', Name: askedLess}},
		},
		Get: func(s desk.State) string {
			if s.Job.RunChecks == vehicles.InFull {
				return askedInFull
			}
			return askedLess
		},
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			if j.RunChecks = ""; text == askedInFull {
				j.RunChecks = vehicles.InFull
			}
			return j, nil
		},
	}
}

func refSlot() form.Slot {
	slot := line("ref", "reference", "needed", "stands on every sheet", func(j *vehicles.Job) *string { return &j.Ref })
	put := slot.Set
	slot.Set = func(j vehicles.Job, text string) (vehicles.Job, error) {
		if text == "" {
			return j, errors.New("needed: it stands on every sheet")
		}
		return put(j, text)
	}
	return slot
}

func dateSlot() form.Slot {
	slot := line("date", "date", "like 2026-11-25", "", func(j *vehicles.Job) *string { return &j.Date })
	put := slot.Set
	slot.Set = func(j vehicles.Job, text string) (vehicles.Job, error) {
		if _, err := time.Parse(time.DateOnly, text); err != nil && text != "" {
			return j, form.ErrNoDate
		}
		return put(j, text)
	}
	return slot
}

func notesSlot() form.Slot {
	slot := line("notes", "notes", "none", form.NewLine+" stands for a new line", func(j *vehicles.Job) *string { return &j.Notes })
	get, put := slot.Get, slot.Set
	slot.Break = form.NewLine
	slot.Get = func(s desk.State) string { return strings.ReplaceAll(get(s), "\n", form.NewLine) }
	slot.Set = func(j vehicles.Job, text string) (vehicles.Job, error) {
		return put(j, strings.ReplaceAll(text, form.NewLine, "\n"))
	}
	return slot
}

var showSlots = form.Slots{
	setting("units", "lengths in", "", []form.Choice{{Letter: 'm', Name: desk.Millimetres.String()}, {Letter: 'i', Name: desk.Inches.String()}},
		func(s desk.State) string { return s.Settings.Units.String() }),
	setting("sides", "sides are", "", []form.Choice{
		{Letter: 'l', Name: desk.SideWords(desk.LeftRight)}, {Letter: 'n', Name: desk.SideWords(desk.NearsideLeft)},
		{Letter: 'r', Name: desk.SideWords(desk.NearsideRight)},
	}, func(s desk.State) string { return desk.SideWords(s.Settings.Nearside) }),
	setting("look", "look", "b goes on to the next one, on any screen", []form.Choice{
		{Letter: 'd', Name: looks.Dark.String()}, {Letter: 'l', Name: looks.Light.String()}, {Letter: 's', Name: looks.Sun.String()}, {Letter: 'n', Name: looks.Night.String()},
	}, func(s desk.State) string { return s.Settings.Look.String() }),
	setting("figures", "figures", "0 turns them on and off, on any screen", []form.Choice{{Letter: 'u', Name: desk.FigureWords()[0]}, {Letter: 'b', Name: desk.FigureWords()[1]}},
		func(s desk.State) string {
			if s.Settings.Big {
				return desk.FigureWords()[1]
			}
			return desk.FigureWords()[0]
		}),
}

// paperSlot comes last, behind what is of the screen.
var paperSlot = setting("paper", "paper", "of the printer", []form.Choice{{Letter: 'a', Name: desk.PaperWords()[0]}, {Letter: 'l', Name: desk.PaperWords()[1]}},
	func(s desk.State) string { return s.Settings.Paper() })

// planSlot is there where the terminal shows pictures: elsewhere it would change nothing.
var planSlot = setting("plan", "plan drawn in", "", []form.Choice{{Letter: 'p', Name: desk.PlanWord(desk.InPixels)}, {Letter: 'c', Name: desk.PlanWord(desk.InCells)}},
	func(s desk.State) string { return desk.PlanWord(s.Settings.Plan) })

// setting is a slot for one of the workshop's settings: cardRecord.Settings takes its text.
func setting(key, label, note string, choices []form.Choice, get func(s desk.State) string) form.Slot {
	return form.Slot{
		Field: form.Field{Key: key, Label: label, Note: note, Choices: choices}, Get: get,
		Set: func(j vehicles.Job, _ string) (vehicles.Job, error) { return j, nil },
	}
}
