package ontop

import (
	"cmp"
	"math"
	"slices"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/features"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// A tape from below is held level, or it slopes from its hook to what it measures and every reading has to be corrected by that.
// Which of both is asked first: a drop of 0 is a sloping tape, too.

// How a tape is held.
const (
	level   = vehicles.HeldLevel
	sloping = "sloping"
)

// holding is how one of the tapes from below is held, and the drop that a sloping one needs.
type holding struct {
	tape                string // of vehicles.HeldTapes
	key, label, heading string
	drop                string // the key of its drop
	at                  func(j *vehicles.Job) *vehicles.Number
}

var holdings = []holding{
	{"below", "held", "tape is held", "From below", "hook_below", func(j *vehicles.Job) *vehicles.Number { return &j.Datum.HookBelow }},
	{"side", "side_held", "side tape", "", "side_below", func(j *vehicles.Job) *vehicles.Number { return &j.Datum.SideBelow }},
}

// open tells whether nobody has said how the tape is held. A job that was never asked is: once something is taped with no drop it is level.
func (h holding) open(j vehicles.Job) bool {
	how, asked := j.Held[h.tape]
	return !h.at(&j).Set && (how == vehicles.NotSaid || !asked && fresh(j))
}

// field is the question how it is held.
func (h holding) field(j vehicles.Job) form.Field {
	f := form.Field{Key: h.key, Label: h.label, Heading: h.heading, Text: level, Blank: vehicles.NotSaid, Choices: []form.Choice{{Letter: 'l', Name: level}, {Letter: 's', Name: sloping}}}
	switch {
	case h.at(&j).Set:
		f.Text = sloping
	case h.open(j):
		f.Text = ""
	}
	return f
}

// hooks are the values of where the tapes hook: the drops stand behind how the tapes are held, and only where they slope.
type hooks struct{ form.Slots }

// Fields are the fields, with the drops of those tapes that slope.
func (c hooks) Fields(s desk.State, held map[string]string) (out []form.Field) {
	for _, f := range c.Slots.Fields(s, held) {
		i := slices.IndexFunc(holdings, func(h holding) bool { return h.drop == f.Key })
		if i < 0 {
			out = append(out, f)
			continue
		}
		h := holdings[i]
		out = append(out, h.field(s.Job))
		_, typed := held[h.drop]
		if held[h.key] == sloping || typed || h.at(&s.Job).Set {
			out = append(out, f)
		}
	}
	return out
}

// Set returns the job with all these texts, or why it does not take them: a sloping tape needs its drop, a level one has none.
func (c hooks) Set(s desk.State, texts map[string]string) (vehicles.Job, error) {
	rest := map[string]string{}
	for key, text := range texts {
		rest[key] = text
	}
	for _, h := range holdings {
		_, typed := rest[h.drop]
		switch how := texts[h.key]; {
		case how == level:
			rest[h.drop] = ""
			s.Job = s.Job.WithHeld(h.tape, level)
		case typed && rest[h.drop] != "":
			s.Job = s.Job.WithHeld(h.tape, "") // its drop says so
		case typed, how == sloping && !typed && !h.at(&s.Job).Set:
			return s.Job, form.Fault{Key: h.drop, Why: "a sloping tape is corrected by this: how far below the lowest rib is its zero?"}
		}
		delete(rest, h.key)
	}
	return c.Slots.Set(s, rest)
}

// Notes say what the drop does to what is measured already.
func (h record) Notes(s desk.State) map[string]string {
	if h.card != hooksCard || !s.Job.Datum.HookBelow.Set && !s.Job.Datum.SideBelow.Set {
		return nil
	}
	note := features.Sloped(s)
	return map[string]string{"hook_below": note, "side_below": note}
}

// hook is a slot of the datum that may be left blank.
func hook(key, label, heading string, l vehicles.Limits, blank func(j vehicles.Job) string,
	at func(j *vehicles.Job) *vehicles.Number,
) form.Slot {
	f := form.Field{Key: key, Label: label, Unit: "mm", Heading: heading}
	return form.Optional(f, form.LengthIn(l), blank, at)
}

func says(text string) func(vehicles.Job) string { return func(vehicles.Job) string { return text } }

// mm says what holds when a field is blank.
func mm(of func(j *vehicles.Job) float64) func(vehicles.Job) string {
	return func(j vehicles.Job) string { return survey.Figure(of(&j)) + " when blank" }
}

var hookSlots = form.Slots{
	hook("hook_below", "hook's drop", "", vehicles.ALength, says("needed"),
		func(j *vehicles.Job) *vehicles.Number { return &j.Datum.HookBelow }),
	hook("left", "to left edge", "", vehicles.ASize, mm((*vehicles.Job).SideLeft),
		func(j *vehicles.Job) *vehicles.Number { return &j.Datum.Left }),
	hook("right", "to right edge", "", vehicles.ASize, mm((*vehicles.Job).SideRight),
		func(j *vehicles.Job) *vehicles.Number { return &j.Datum.Right }),
	hook("side_below", "side edge's drop", "", vehicles.ALength, says("needed"),
		func(j *vehicles.Job) *vehicles.Number { return &j.Datum.SideBelow }),
	hook("hook_above", "hook below floor", "From above", vehicles.ALength, says("0: level with it"),
		func(j *vehicles.Job) *vehicles.Number { return &j.Datum.HookAbove }),
	hook("shift_above", "zero lies forward", "", vehicles.ALength, says("0: above the other"),
		func(j *vehicles.Job) *vehicles.Number { return &j.Datum.ShiftAbove }),
	hook("above_left", "to left edge", "", vehicles.ASize, mm((*vehicles.Job).AboveLeft),
		func(j *vehicles.Job) *vehicles.Number { return &j.Datum.AboveLeft }),
	hook("above_right", "to right edge", "", vehicles.ASize, mm((*vehicles.Job).AboveRight),
		func(j *vehicles.Job) *vehicles.Number { return &j.Datum.AboveRight }),
	hook("side_above", "side edge below", "", vehicles.ALength, says("side tape held level"),
		func(j *vehicles.Job) *vehicles.Number { return &j.Datum.SideAbove }),
	hook("pins", "pins, each side", "", vehicles.ASize, mm((*vehicles.Job).Pins),
		func(j *vehicles.Job) *vehicles.Number { return &j.Datum.Pins }),
	pinsOn(),
	datumName(),
	form.Line(form.Field{Key: "edges_below", Label: "side edges below", Blank: vehicles.NotSaid, Pass: true}, func(j *vehicles.Job) *string { return &j.Datum.EdgesBelow }),
	form.Line(form.Field{Key: "edges_above", Label: "side edges on top", Blank: vehicles.NotSaid, Pass: true}, func(j *vehicles.Job) *string { return &j.Datum.EdgesAbove }),
}

// pinsOn is the slot for what the pins stand on.
func pinsOn() form.Slot {
	return form.Slot{
		Field: form.Field{Key: "pins_on", Label: "pins stand on", Pass: true, Choices: []form.Choice{{Letter: 'd', Name: theLine}, {Letter: 'b', Name: vehicles.Batten}}},
		Get:   func(s desk.State) string { return cmp.Or(s.Job.Datum.PinsOn, theLine) },
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			if j.Datum.PinsOn = text; text == theLine {
				j.Datum.PinsOn = ""
			}
			return j, nil
		},
	}
}

// theLine is what pins stand on when it takes them.
const theLine = "datum line"

// apart is how far the hooks below and above differ in height, mm.
func apart(j vehicles.Job) float64 {
	return math.Abs(j.Datum.HookBelow.Value + j.Floor.Thickness - j.Datum.HookAbove.Value)
}

// muchApart is the difference in height from which two hooks are hardly on one edge of the bumper, mm: common
// practice, no source.
const muchApart = 20

// askShift says whether the fitter must be asked if the two zeros stand above each other.
func askShift(j vehicles.Job) bool {
	return j.Datum.HookBelow.Set && apart(j) > muchApart && !j.Datum.ShiftAbove.Set
}
