package entryscreen

import (
	"strings"

	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/features"
	"bench.example/undermark/tui/form"
)

// Plain is what the screen says where nothing is drawn.
func (e Entry) Plain(s desk.State) desk.Plain {
	e = e.Synced(s)
	if e.Typing() {
		p := e.Editor.Plain(s)
		p.Here = append(append([]string{e.titled(s)}, e.tells(s)...), p.Here...)
		fields := p.All
		p.All = func() []string { return append(append([]string{e.titled(s)}, e.tells(s)...), fields()...) }
		return p
	}
	rows, all, here, _ := e.listed(s)
	p := desk.Plain{All: func() []string { return e.wholeList(s) }}
	p.Here = append(p.Here, e.warned(s)...)
	if len(rows) == 0 {
		p.Here = append(p.Here, e.spec.Empty)
	} else {
		p.Here = append(p.Here, e.row(rows[here], all[here], s)+"; "+aloud.Of(here, len(rows)))
		p.Here = append(p.Here, e.tells(s)...)
	}
	if record, ok := e.Here(s); ok { // a field that was just left is one of the row's
		of, _ := e.formOf(record, s)
		p.Came = e.Editor.Show(of).Plain(s).Came
	}
	return p
}

// titled is what stands above the form, as a line.
func (e Entry) titled(s desk.State) string {
	title, _, _ := strings.Cut(e.paintForm(s, aloud.Unbroken, 2), "\n")
	return aloud.Line(title)
}

// warned is what is wrong, as lines.
func (e Entry) warned(s desk.State) []string {
	if e.spec.Warn == nil {
		return nil
	}
	return e.spec.Warn(s)
}

// tells is what is told beside the form in words.
func (e Entry) tells(s desk.State) []string {
	if e.spec.Tells == nil {
		return nil
	}
	return e.spec.Tells(e, s)
}

// row is a row of the list as a line: with its kind, and what is missing or wrong.
func (e Entry) row(row form.Row, record form.Record, s desk.State) string {
	if say, fault := e.standing(record, s); say != "" {
		row.Right, row.Fault = say, fault
	}
	kind := ""
	if feature, isFeature := record.(features.Record); isFeature {
		_, kind = feature.Name(s.Job)
	}
	return row.Plain(kind)
}

// shownForm is the form of the row the keys act on, as it is shown under the list.
func (e Entry) shownForm(s desk.State) []string {
	record, ok := e.Here(s)
	if !ok {
		return nil
	}
	record, _ = e.formOf(record, s)
	fields := e.Editor.Show(record).Plain(s).All()
	if len(fields) == 0 {
		return nil
	}
	return append([]string{"Picked: " + e.titled(s)}, fields...)
}

// wholeList is the list with the readings of everything in it, and what stands beside and under it.
func (e Entry) wholeList(s desk.State) []string {
	lines := append([]string{e.spec.Title(s)}, e.warned(s)...)
	rows, all, _, _ := e.listed(s)
	if len(rows) == 0 {
		lines = append(lines, e.spec.Empty)
	}
	for i, record := range all {
		row := rows[i]
		if row.Head != "" && row.Text != "" {
			lines = append(lines, row.Head+":")
			row.Head = ""
		}
		lines = append(lines, e.row(row, record, s))
		lines = append(lines, aloud.Joined(e.Editor.Show(record).Brief(s, "name", "kind")...))
	}
	lines = append(lines, e.shownForm(s)...)
	lines = append(lines, e.tells(s)...)
	if e.spec.Under != nil && e.drawn(s, aloud.Unbroken, aloud.Unbroken) == 0 {
		lines = append(lines, aloud.Rows(e.spec.Under(e, s, aloud.Unbroken, aloud.Unbroken)...)...)
	}
	if e.spec.Around != nil {
		lines = append(lines, e.spec.Around(s)...)
	}
	return lines
}
