package entryscreen

import (
	"slices"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// TapeClass is the slot for the accuracy class of the tape.
func TapeClass() form.Slot {
	return form.Slot{
		Field: form.Field{
			Key: "class", Label: "tape's class",
			Choices: []form.Choice{{Letter: '1', Name: "I"}, {Letter: '2', Name: "II"}, {Letter: '3', Name: "III"}},
			Note:    "stands on the tape in a circle or an oval; II when nothing is known of it",
		},
		Get: func(s desk.State) string { return string(s.Job.SurveyTape().Class) },
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			if slices.Contains(vehicles.TapeClasses, text) {
				j.Tape.Class = text
			}
			return j, nil
		},
	}
}

// Errors are the slots for what a reading, a mark, a height and a turn may be off by.
func Errors() form.Slots {
	var none vehicles.Job
	usual := none.SurveyTape()
	slot := func(key, label, unit string, usual float64, at func(j *vehicles.Job) *vehicles.Number) form.Slot {
		return form.Optional(form.Field{Key: key, Label: label, Unit: unit}, errorOf,
			func(vehicles.Job) string { return survey.Exact(usual) + " when blank" }, at)
	}
	return form.Slots{
		slot("read", "reading ±", "mm", usual.Read, func(j *vehicles.Job) *vehicles.Number { return &j.Tape.Read }),
		slot("mark", "marking ±", "mm", usual.Mark, func(j *vehicles.Job) *vehicles.Number { return &j.Tape.Mark }),
		slot("height", "any height ±", "mm", usual.Height, func(j *vehicles.Job) *vehicles.Number { return &j.Tape.Height }),
		slot("turn", "any turn ±", "°", usual.Turn, func(j *vehicles.Job) *vehicles.Number { return &j.Tape.Turn }),
	}
}

// errorOf reads an error, with or without its sign.
func errorOf(text string) (float64, error) {
	return form.Length(strings.TrimLeft(text, "± "), vehicles.ADistance)
}
