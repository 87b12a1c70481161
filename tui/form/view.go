package form

import (
	"strings"
	"unicode"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles/harmless"
)

// View paints the form into h lines of exactly w columns, scrolled to the field that has the keys.
func (f Form) View(fields []Field, w, h int, look desk.Styles) string {
	f = f.looked(fields)
	lines := f.layout(fields, w)
	lines = lines[f.scroll(lines, fields, h):]
	cols := columnsOf(fields, w)
	out := make([]string, h)
	for y := range out {
		if y < len(lines) {
			out[y] = f.paint(lines[y], fields, cols, look)
		}
		out[y] = desk.FitPainted(out[y], w)
	}
	return strings.Join(out, "\n")
}

func (f Form) paint(l line, fields []Field, cols columns, look desk.Styles) string {
	said := look.Faint
	if l.fault {
		said = look.Fault
	}
	switch l.kind {
	case heading:
		return look.Title.Render(l.text)
	case remark:
		return strings.Repeat(" ", indent) + said.Render(l.text)
	case choices:
		return paintPicks(l.picks, fields[l.field], look)
	}
	own := f.paintRow(l, fields, cols, look)
	if l.beside == "" {
		return own
	}
	return own + strings.Repeat(" ", gap) + said.Render(l.beside)
}

// paintRow paints a field's own row up to where remarks stand.
func (f Form) paintRow(l line, fields []Field, cols columns, look desk.Styles) string {
	field := fields[l.field]
	texts := []Field{field}
	if l.second > 0 {
		texts = append(texts, fields[l.second])
	}
	on, fault, guess := false, false, false
	for _, t := range texts {
		_, bad := f.wrongAt(t)
		on, fault = on || f.key == t.Key, fault || bad || f.about[t.Key] != ""
		guess = guess || t.Guess
	}
	mark := "  "
	switch {
	case on:
		mark = look.Key.Render("▸ ")
	case fault:
		mark = look.Fault.Render("! ")
	case guess:
		mark = look.Fault.Render("? ")
	}
	label := desk.FitRow(field.Label, cols.label) + " "
	if on {
		label = look.Strong.Render(label)
	}
	text := f.paintText(field, f.key == field.Key, cols.text, look)
	if l.second > 0 {
		one, two := cols.halves()
		text = f.paintText(field, f.key == field.Key, one, look) + " " +
			f.paintText(texts[1], f.key == texts[1].Key, two, look)
	}
	return mark + label + text + " " + look.Faint.Render(desk.FitRow(field.Unit, cols.unit))
}

// halves are the widths of two texts in one row, a blank between them.
func (c columns) halves() (one, two int) { return (c.text - 1) / 2, c.text - 1 - (c.text-1)/2 }

// paintText paints the text of a field: what is being typed, what was refused, what the job has, or what a
// blank means.
func (f Form) paintText(field Field, on bool, w int, look desk.Styles) string {
	refused, bad := f.wrongAt(field)
	switch {
	case on && len(field.Choices) > 0:
		text := field.Text
		if bad {
			text = refused.text
		}
		if text == "" {
			text = field.Blank
		}
		return look.FieldOn.Render(desk.FitRow(text, w))
	case on:
		return f.input.paint(field.Blank, w, look)
	case bad:
		return look.Fault.Render(desk.FitRow(refused.text, w))
	case field.Text == "":
		return look.Faint.Render(desk.FitRow(field.Blank, w))
	}
	text := desk.Cut(field.Text, w)
	return look.Field.Render(text) + strings.Repeat(" ", w-desk.Width(text))
}

// paint paints the line with its cursor into w columns, scrolled so that the cursor shows: what is selected reversed,
// otherwise the cursor alone.
func (t typing) paint(blank string, w int, look desk.Styles) string {
	t.text = []rune(harmless.Text(string(t.text))) // as many runes as before
	pos, from := t.at, t.scrolled(w-2)
	before, under, after := string(t.text[from:pos]), " ", ""
	if pos < len(t.text) {
		end := pos + 1
		for end < len(t.text) && unicode.Is(unicode.M, t.text[end]) {
			end++ // the cursor is on a letter with its accents
		}
		under, after = string(t.text[pos:end]), string(t.text[end:])
	} else if len(t.text) == 0 {
		after = blank
	}
	if from > 0 && from < pos {
		before = "…" + string(t.text[from+1:pos])
	}
	after = desk.FitRow(after, max(0, w-desk.Width(before)-desk.Width(under)))
	switch {
	case t.all:
		return look.FieldOn.Render(before) + look.Field.Render(under+after)
	case len(t.text) == 0:
		return look.FieldOn.Render(under) + look.Faint.Render(after)
	}
	return look.Field.Render(before) + look.FieldOn.Render(under) + look.Field.Render(after)
}

func paintPicks(picks []pick, field Field, look desk.Styles) string {
	var out strings.Builder
	at := 0
	for _, p := range picks {
		out.WriteString(strings.Repeat(" ", p.from-at))
		name := look.Plain
		if p.choice.Name == field.Text {
			name = look.Here
		}
		out.WriteString(look.Key.Render(string(p.choice.Letter)) + " " + name.Render(p.choice.Name))
		at = p.to
	}
	return out.String()
}

// onGuess tells whether a tap at column x of a row is on what is said of a guess in the field that has the keys: it says what KeySo says.
func (f Form) onGuess(l line, fields []Field, w, x int) bool {
	if here := fields[l.field]; !here.Guess || here.Key != f.key || !f.input.all {
		return false
	}
	cols := columnsOf(fields, w)
	return l.kind == remark || l.kind == entry && l.beside != "" && x >= w-cols.beside
}

// nearPick is how many columns beside a choice still mean it: half of the gap between two.
const nearPick = gap / 2

// Tap answers a tap at column x of row y of a form painted into w columns and h rows: it gives the keys to the
// field there, or takes the choice there.
func (f Form) Tap(fields []Field, w, h, x, y int) (Form, Event) {
	f = f.looked(fields)
	lines := f.layout(fields, w)
	row := f.scroll(lines, fields, h) + y
	if y < 0 || y >= h || row >= len(lines) {
		return f, Event{}
	}
	l := lines[row]
	if f.onGuess(l, fields, w, x) {
		return f.measured(fields)
	}
	for _, p := range l.picks {
		if x >= p.from-nearPick && x < p.to+nearPick {
			return f, Event{Key: fields[l.field].Key, Text: p.choice.Name, Edited: true, Picked: true}
		}
	}
	if l.kind == entry {
		at := l.field
		cols := columnsOf(fields, w)
		one, _ := cols.halves()
		if l.second > 0 && x >= margin+cols.label+1+one {
			at = l.second
		}
		if f.key == fields[at].Key {
			return f.AtEnd(), Event{Key: f.key}
		}
		f = f.open(at, fields)
	}
	return f, Event{Key: f.key}
}
