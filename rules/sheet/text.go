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
		for _, row := range wrapped(part, style, f.wide) {
			f.row(row, style)
		}
	}
}

// row writes one line at the left of the column.
func (f *flow) row(words string, style vector.Text) {
	high := leading * style.Size
	f.need(high)
	style.Words = words
	f.write(f.left, f.y+style.Size, style)
	f.y += high
}

// List is texts below each other, each behind a dash.
type List []string

func (l List) lay(f *flow) {
	const in = 3.5
	style := vector.Text{Size: body}
	for _, item := range l {
		for i, row := range wrapped(item, style, f.wide-in) {
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
		if row != "" && at+blank+w > width {
			done()
		}
		for row == "" && w > width {
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
