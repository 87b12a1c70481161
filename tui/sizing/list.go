package sizing

import (
	"strings"

	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// result is a row with one result: its form is that of its subject.
type result struct {
	topic  sizing.Topic
	row    sizing.Row
	head   string       // of its subject, at the first
	column desk.Figures // of all results
}

// ID says which result it is.
func (r result) ID() string { return string(r.topic) + ": " + r.row.Label }

// Fields are none: its subject has them.
func (r result) Fields(desk.State, map[string]string) []form.Field { return nil }

// Set changes nothing.
func (r result) Set(s desk.State, _ map[string]string) (vehicles.Job, form.Record, error) {
	return s.Job, r, nil
}

// Called is nothing that a refused text is kept under: those are kept under the card.
func (r result) Called(vehicles.Job) (of, name string) { return "", r.ID() }

// records are the rows: every result, subject by subject.
func records(s desk.State) (out []form.Record) {
	all := s.Sizes()
	c := column(all, s.Settings.Units)
	for _, subject := range all {
		for i, row := range subject.Rows {
			r := result{topic: subject.Topic, row: row, column: c}
			if i == 0 {
				r.head = subject.Title
			}
			out = append(out, r)
			if last := i == len(subject.Rows)-1; last && subject.Topic == sizing.Heat {
				out = append(out, another{})
			}
		}
	}
	return out
}

// opens is the form that a row opens: at the figure that the result wants most.
func opens(record form.Record, s desk.State) (form.Record, string) {
	switch r := record.(type) {
	case result:
		if r.row.Surface > 0 {
			return surface{r.row.Surface - 1}, ""
		}
		return card{r.topic}, fieldOf(r)
	case another:
		return surface{len(s.Job.Surfaces)}, ""
	}
	return record, ""
}

// another is the row that begins another surface.
type another struct{}

const (
	anotherText = "another surface: walls, roof, glass"
	anotherSays = "What heat goes out through: walls, roof and floor with their layers, glass, doors, ribs of bare steel, each with its area."
)

// ID says what it begins.
func (another) ID() string { return "another surface" }

// Fields are none: the surface has them.
func (another) Fields(desk.State, map[string]string) []form.Field { return nil }

// Set changes nothing.
func (a another) Set(s desk.State, _ map[string]string) (vehicles.Job, form.Record, error) {
	return s.Job, a, nil
}

// Called is nothing that a refused text is kept under.
func (a another) Called(vehicles.Job) (of, name string) { return "", a.ID() }

// goes is where the figures of a result are that have no form here.
func goes(record form.Record, s desk.State) (desk.Change, bool) {
	r, is := record.(result)
	switch {
	case is && r.topic == sizing.Saw:
		return desk.Change{Goto: "Place"}, true
	case is && r.topic == sizing.Fuel && s.Job.Fuel == nil:
		return desk.Change{Goto: "Runs"}, true
	}
	return desk.Change{}, false
}

// row is a result as the list has it.
func row(record form.Record, s desk.State) form.Row {
	r, is := record.(result)
	if !is {
		return form.Row{Text: anotherText}
	}
	out := form.Row{Head: r.head, Text: r.row.Label, Right: r.column.Write(words.Sized(r.row, s.Settings.Units)), Fault: r.row.Amiss != "", Value: r.row.Value.Set}
	if out.Fault {
		out.Right = "! " + out.Right
	}
	return out
}

// column is the column of results, in which the points stand under each other.
func column(all []sizing.Subject, u desk.Units) (c desk.Figures) {
	for _, subject := range all {
		for _, row := range subject.Rows {
			if row.Value.Set {
				c = c.With(words.Sized(row, u))
			}
		}
	}
	return c
}

// at is the result that the list is at.
func at(e entryscreen.Entry, s desk.State) (r result, ok bool) {
	all := records(s)
	if len(all) == 0 {
		return r, false
	}
	r, ok = all[max(0, min(e.At, len(all)-1))].(result)
	return r, ok
}

// beside paints how a result came about; rows is how many rows of w columns it needs.
func beside(e entryscreen.Entry, s desk.State, w, _ int) (text string, rows int) {
	r, ok := at(e, s)
	look := s.Settings.Styles()
	var out []string
	add := func(text string, paint desk.Style) {
		for _, line := range desk.Wrap(text, w-1) {
			out = append(out, " "+paint.Render(line))
		}
	}
	if !ok {
		add(anotherSays, look.Plain)
		return strings.Join(out, "\n"), len(out)
	}
	add(r.row.Label+": "+words.Sized(r.row, s.Settings.Units), look.Strong)
	paints := map[words.NoteOn]desk.Style{words.OnTrouble: look.Fault, words.OnLacking: look.Doubtful, words.OnMaking: look.Plain, words.OnSource: look.Faint}
	for _, note := range words.NotesOfSize(r.row) {
		add(note.Text, paints[note.On])
	}
	return strings.Join(out, "\n"), max(1, len(out))
}

// tells is how a result came about, which is in words anyway.
func tells(e entryscreen.Entry, s desk.State) []string {
	text, _ := beside(e, s, aloud.Unbroken, aloud.Unbroken)
	return aloud.Rows(strings.Split(text, "\n")...)
}
