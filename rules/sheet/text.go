package sheet

import (
	"strings"
	"unicode/utf8"

	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/vehicles/harmless"
)

// printable is a text as it is printed: what would steer or hide something, and letters that the font lacks, are boxes.
func printable(text string) string { return vector.Legible(harmless.Text(text)) }

// Text is a paragraph. Lines that end in it end on paper, too.
type Text struct {
	Words string
	Size  float64 // of the letters, mm; 0 for those of running text
	Bold  bool
}

func (t Text) lay(f *flow) {
	style := vector.Text{Size: t.Size, Bold: t.Bold}
	if style.Size == 0 {
		style.Size = body
	}
	for _, part := range strings.Split(t.Words, "\n") {
		rows := wrapped(part, style, f.wide)
		f.keep(len(rows), leading*style.Size)
		for _, row := range rows {
			f.row(row, style)
		}
	}
}

// keep has so many lines stay together, if they are few.
func (f *flow) keep(lines int, high float64) {
	few := 6
	if f.halves != nil { // a column is short, and its text goes on beside it
		few = 2
	}
	f.need(float64(min(lines, few)) * high)
}

// row writes one line at the left of the column.
func (f *flow) row(words string, style vector.Text) {
	high := leading * style.Size
	f.need(high)
	style.Words = words
	f.write(f.left, f.y+style.Size, style)
	f.y += high
}

// Named are texts below each other, each behind its name in bold.
type Named [][2]string

func (all Named) lay(f *flow) {
	for _, one := range all {
		f.named(one[0], one[1], 0, f.wide)
	}
}

// named writes words behind their name, in so far from the column's left and no wider than room.
func (f *flow) named(name, words string, in, room float64) {
	const after = 0.4 // mm
	bold, plain := vector.Text{Words: printable(name), Size: body, Bold: true}, vector.Text{Size: body}
	first := 0.0
	if name != "" {
		first = vector.WidthOf(bold) + 1.5
	}
	var rows []string
	if first <= room*0.75 {
		rows = behind(words, plain, room-first, room)
	} else { // a name that leaves no room stands alone
		for _, row := range wrapped(name, bold, room) {
			f.need(leading * body)
			bold.Words = row
			f.write(f.left+in, f.y+body, bold)
			f.y += leading * body
		}
		name, rows = "", wrapped(words, plain, room)
	}
	f.keep(len(rows), leading*body)
	for i, row := range rows {
		f.need(leading * body)
		x := f.left + in
		if i == 0 && name != "" {
			f.write(x, f.y+body, bold)
			x += first
		}
		plain.Words = row
		f.write(x, f.y+body, plain)
		f.y += leading * body
	}
	f.y += after
}

// List is texts below each other, each behind a dash.
type List []string

func (l List) lay(f *flow) {
	const in = 3.5
	style := vector.Text{Size: body}
	for _, item := range l {
		rows := wrapped(item, style, f.wide-in)
		f.keep(len(rows), leading*body)
		for i, row := range rows {
			f.need(leading * body)
			if i == 0 {
				f.write(f.left, f.y+body, vector.Text{Words: "–", Size: body})
			}
			style.Words = row
			f.write(f.left+in, f.y+body, style)
			f.y += leading * body
		}
		f.y += 0.6
	}
}

// wrapped breaks a text into lines no wider than width, at blanks where it has any, else between letters: nothing is lost. An empty text
// is one empty line.
func wrapped(text string, style vector.Text, width float64) []string {
	return behind(text, style, width, width)
}

// behind breaks a text whose first line has another width, as something stands before it.
func behind(text string, style vector.Text, width, rest float64) (rows []string) {
	measure := func(s string) float64 {
		style.Words = s
		return vector.WidthOf(style)
	}
	blank := measure(" ")
	row, at := "", 0.0
	done := func() { rows, row, at, width = append(rows, row), "", 0, rest }
	for _, word := range split(text) {
		w := measure(word)
		if row != "" && at+blank+w > width+rounding {
			done()
		}
		for row == "" && w > width+rounding {
			n := fitting(word, measure, width)
			row, word = word[:n], word[n:]
			done()
			w = measure(word)
		}
		if row != "" {
			row, at = row+" ", at+blank
		}
		row, at = row+word, at+w
	}
	return append(rows, row)
}

// rounding is what adding up letters may be off, mm.
const rounding = 1e-6

// split are a text's words. A blank that holds together what stands beside it parts none.
func split(text string) []string {
	return strings.FieldsFunc(printable(text), func(r rune) bool { return r == ' ' })
}

// fitting is how many bytes of a word fit a width: whole letters, at least one.
func fitting(word string, measure func(string) float64, width float64) (n int) {
	at := 0.0
	for i, r := range word {
		at += measure(string(r))
		if i > 0 && at > width {
			return i
		}
		n = i + utf8.RuneLen(r)
	}
	return n
}

// cut is what of a text fits a width in one line, with an ellipsis behind what is left out: only for what stands in full elsewhere.
func cut(text string, style vector.Text, width float64) string {
	measure := func(s string) float64 {
		style.Words = s
		return vector.WidthOf(style)
	}
	const more = "…"
	text = strings.Join(strings.Fields(printable(text)), " ")
	if measure(text) <= width {
		return text
	}
	return strings.TrimRight(text[:fitting(text, measure, width-measure(more))], " ") + more
}
