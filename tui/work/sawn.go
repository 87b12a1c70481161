package work

import (
	"reflect"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// Where the hole came out is read from below as the pilot hole is: what the tape should say there is told after it was read, or it
// would be copied.

// sawnSlots are the two readings of the hole as it was sawn.
func sawnSlots() form.Slots { return form.Slots{sawnSlot("x", survey.X), sawnSlot("y", survey.Y)} }

func sawnSlot(key string, axis survey.Axis) form.Slot {
	return form.Slot{
		Field: form.Field{Key: key, Unit: "mm", Big: true},
		Get:   func(s desk.State) string { return sawnText(&s.Job, axis) },
		Set:   func(j vehicles.Job, text string) (vehicles.Job, error) { return setSawn(j, axis, text) },
		Say:   func(f *form.Field, s desk.State) { saySawn(f, axis, s) },
	}
}

// sawnText is what was read along an axis, "" where the hole is as planned there. What a file says without a reading is its place.
func sawnText(j *vehicles.Job, axis survey.Axis) string {
	made := j.BuiltOtherwise().Cut
	switch {
	case made == nil:
		return ""
	case made.Sawn[axis].Text != "":
		return made.Sawn[axis].Text
	case made.At[axis] != j.Cut.At[axis]:
		return survey.Exact(made.At[axis])
	}
	return ""
}

// setSawn puts a reading into the job as it was built; blank is as planned.
func setSawn(j vehicles.Job, axis survey.Axis, text string) (vehicles.Job, error) {
	var reading survey.Reading
	if text != "" {
		var err error
		if reading, err = survey.Typed(text, axis); err != nil {
			return j, err
		}
		if reading.Start == survey.On {
			return j, j.Datum.NothingBefore()
		}
	}
	cut, built := j.ReadSawn(*j.AsBuilt().Cut, axis, reading), j.BuiltOtherwise()
	if built.Cut = &cut; reflect.DeepEqual(cut, *j.Cut) {
		built.Cut = nil
	}
	return j.WithBuilt(built), nil
}

// saySawn says how a reading is read, and once there is one what it comes to beside what was planned.
func saySawn(f *form.Field, axis survey.Axis, s desk.State) {
	ask := moving.PlaceAsks(s, "", "", "")[axis]
	if f.Label, f.Note, f.Blank = ask.Label, ask.Note, "as planned"; axis == survey.X {
		f.Heading = "Hole's centre, read from below"
	}
	if f.Text != "" {
		f.Note = cameOut(axis, s)
	}
}

// cameOut says where the hole is along an axis, what the tape would have said as planned, and how far off it is; "" while that can't be
// worked out.
func cameOut(axis survey.Axis, s desk.State) string {
	c, ok := compared(s)
	if !ok || c.fault != "" {
		return ""
	}
	u, is, was := s.Settings.Units, &c.built.Plan.Cut, c.planned.Plan.Cut.At
	off := is.At.Sub(was)
	at, sigma := desk.AtX(is.At.X, u), is.UX
	if axis == survey.Y {
		at, sigma, off.X = desk.Across(is.At.Y, s.Settings), is.UY, 0
	} else {
		off.Y = 0
	}
	text := at + " " + desk.PlusMinus95(sigma, u) + "; planned: " + readingAsPlanned(axis, was, s)
	if way := words.Way(off, s.Settings); way != "" {
		return text + ", it is " + way
	}
	return text + ", it is there"
}

// readingAsPlanned is what the tape should have said of a place along an axis, from where the hole was read.
func readingAsPlanned(axis survey.Axis, at geometry.Point, s desk.State) string {
	below, u := rules.ReadBelow(&s.Job, at), s.Settings.Units
	if axis == survey.X {
		return survey.Format(below.Bumper, u)
	}
	switch s.Job.BuiltOtherwise().Cut.Sawn[axis].Start {
	case survey.FromLeft:
		return "L " + survey.Format(below.Left, u)
	case survey.FromRight:
		return "R " + survey.Format(below.Right, u)
	}
	return survey.Format(at.Y, u)
}
