package form

import (
	"slices"

	"bench.example/undermark/tui/desk"
)

// line is one row of the form as it will be painted, and what a tap on it means.
type line struct {
	field  int
	second int // of a field's own row: the field behind it, 0 for none
	kind   kind
	text   string // of a heading, a remark or a row of choices
	beside string // of a field's first row: what stands right of its text
	fault  bool   // text or beside says what is wrong
	picks  []pick // of a row of choices
}

type kind uint8

const (
	heading kind = iota
	entry
	remark
	choices
)

// pick is a choice in a row of choices: the columns it covers, from and up to but not to.
type pick struct {
	from, to int
	choice   Choice
}

// columns are the widths the rows of a form share.
type columns struct{ label, text, unit, beside int }

const (
	margin    = 2   // columns in front of a label
	indent    = 2   // columns in front of a remark
	gap       = 2   // columns in front of a remark beside a field
	leastText = 10  // columns of a field's text
	mostText  = 24  // of readings and sizes
	longText  = 100 // of a form without units, which is one of words
	leastNote = 26  // columns that make room for a remark beside a field
	mostLines = 4   // rows of a remark
)

func columnsOf(fields []Field, w int) columns {
	var c columns
	for _, f := range fields {
		c.label = max(c.label, desk.Width(f.Label))
		c.unit = max(c.unit, desk.Width(f.Unit))
	}
	c.label = min(c.label, max(8, w*2/5, w-20))
	rest := w - margin - c.label - 1
	c.unit = min(c.unit, max(0, rest-leastText-1))
	c.text = min(mostText, max(1, rest-c.unit-1))
	if c.unit == 0 {
		c.text = min(longText, max(1, rest-1))
	}
	if c.beside = rest - c.text - 1 - c.unit - gap; c.beside < leastNote {
		c.beside = 0
	}
	return c
}

// layout lays the whole form out, however high it gets.
func (f Form) layout(fields []Field, w int) []line {
	cols := columnsOf(fields, w)
	var out []line
	for i, field := range fields {
		if field.Second {
			continue
		}
		if field.Heading != "" {
			out = append(out, line{field: i, kind: heading, text: field.Heading})
		}
		second := 0
		if i+1 < len(fields) && fields[i+1].Second {
			second = i + 1
		}
		out = append(out, f.rows(i, second, fields, cols, w)...)
	}
	return out
}

// rows are the rows of one field: its own, what is said of it and of the one in its row, its choices.
func (f Form) rows(i, second int, fields []Field, cols columns, w int) []line {
	own := line{field: i, second: second, kind: entry}
	out := []line{own}
	room := max(1, w-indent)
	if cols.beside > 0 {
		room = cols.beside
	}
	said := []int{i}
	if second > 0 {
		said = append(said, second)
	}
	for _, n := range said {
		say, fault := f.say(fields[n])
		for _, text := range wrap(say, room) {
			if cols.beside > 0 && out[0].beside == "" {
				out[0].beside, out[0].fault = text, fault
				continue
			}
			out = append(out, line{field: n, kind: remark, text: text, fault: fault})
		}
	}
	if f.key == fields[i].Key {
		out = append(out, choiceRows(i, fields[i].Choices, w)...)
	}
	return out
}

// say is what is to be said of a field, and whether it is a fault.
func (f Form) say(field Field) (text string, fault bool) {
	if w, bad := f.wrongAt(field); bad && f.growing(field.Key) {
		return "", false
	} else if bad {
		return "! " + w.why, true
	}
	if why := f.about[field.Key]; why != "" {
		return "! " + why, true
	}
	if field.Guess {
		return guess(f.key == field.Key), true
	}
	if f.key == field.Key {
		return field.Note + field.again(), false
	}
	return "", false
}

// guess is what is said of a value that nobody has measured.
func guess(on bool) string {
	if on {
		return "? a guess: type what you measure, or " + KeySo + " if you measured just that"
	}
	return "? a guess: not measured yet"
}

func wrap(text string, w int) []string {
	if text == "" {
		return nil
	}
	out := desk.Wrap(text, w)
	if len(out) > mostLines {
		out = out[:mostLines]
		out[mostLines-1] = desk.FitRow(out[mostLines-1]+" …", w)
	}
	return out
}

// chosenRow is which of the rows has the choice that is chosen, -1 for none.
func chosenRow(lines []line, fields []Field) int {
	return slices.IndexFunc(lines, func(l line) bool {
		return slices.ContainsFunc(l.picks, func(p pick) bool { return p.choice.Name == fields[l.field].Text })
	})
}

// choiceRows flow the choices into rows, each with its letter in front.
func choiceRows(field int, all []Choice, w int) []line {
	var out []line
	at := w
	for _, c := range all {
		wide := desk.Width(c.Name) + 2
		if at+wide > w {
			out = append(out, line{field: field, kind: choices})
			at = min(2*indent, max(0, w-wide))
		}
		last := &out[len(out)-1]
		last.picks = append(last.picks, pick{at, at + wide, c})
		at += wide + gap
	}
	return out
}

// scroll returns the first row to show so that the field with the keys is seen whole where that can be, and else what of its
// choices is chosen.
func (f Form) scroll(lines []line, fields []Field, h int) int {
	from, to := -1, 0
	for i, l := range lines {
		if f.key != "" && (l.field == f.at || l.kind == entry && l.second > 0 && l.second == f.at) {
			if from < 0 {
				from = i
			}
			to = i + 1
		}
	}
	if from < 0 || len(lines) <= h {
		return 0
	}
	top := from - max(0, (h-(to-from))/2)
	if chosen := chosenRow(lines[from:to], fields); chosen >= h {
		top = from + chosen - h + 1
	}
	return max(0, min(top, len(lines)-h))
}
