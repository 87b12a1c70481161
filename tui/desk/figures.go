package desk

import "strings"

// Figures is how wide a column of figures is in which the points stand under each other, and the signs in front of them. The
// zero value is a column of nothing.
type Figures struct{ sign, whole, rest, word int }

// FiguresOf is the column that holds all the texts: each a figure with what stands round it, "± 3.2", "≥ 60", "90.5°", `25 11/16"`,
// or a word.
func FiguresOf(texts ...string) Figures {
	var c Figures
	for _, text := range texts {
		c = c.With(text)
	}
	return c
}

// With is the column that holds text as well.
func (c Figures) With(text string) Figures {
	sign, whole, rest, isFigure := atPoint(text)
	if !isFigure {
		c.word = max(c.word, Width(text))
		return c
	}
	return Figures{max(c.sign, Width(sign)), max(c.whole, Width(whole)), max(c.rest, Width(rest)), c.word}
}

// RunsOn is the column in which text stands by its point, too, but runs on behind the column's end where it is longer: for one that nothing
// stands beside.
func (c Figures) RunsOn(text string) Figures {
	sign, whole, _, isFigure := atPoint(text)
	if !isFigure {
		return c.With(text)
	}
	return Figures{max(c.sign, Width(sign)), max(c.whole, Width(whole)), c.rest, c.word}
}

// Width is how many columns it takes.
func (c Figures) Width() int { return max(c.word, c.sign+c.whole+c.rest) }

// Write is text as it stands in the column, exactly as wide as that. What does not fit there is wider. A word ends before the
// point where there is room for it.
func (c Figures) Write(text string) string {
	sign, whole, rest, isFigure := atPoint(text)
	ends := c.rest
	if !isFigure && Width(text) > c.sign+c.whole {
		ends = 0
	}
	before := c.Width() - ends - Width(sign) - Width(whole)
	out := sign + blanks(before) + whole + rest
	return out + blanks(c.Width()-Width(out))
}

func blanks(n int) string { return strings.Repeat(" ", max(0, n)) }

// signs stand in front of a figure, each under the others.
var signs = [...]string{"± ", "≥ ", "≤ ", "at least ", "at most "}

// atPoint parts a text behind the whole number it begins with. Of a fraction alone nothing is whole, and a minus stands where the
// blank is behind a whole number.
func atPoint(text string) (sign, whole, rest string, isFigure bool) {
	for _, s := range signs {
		if strings.HasPrefix(text, s) {
			sign, text = s, text[len(s):]
			break
		}
	}
	from := strings.IndexAny(text, digits)
	if from < 0 {
		return "", text, "", false
	}
	to := from
	for to < len(text) && isDigit(text[to]) {
		to++
	}
	if to+1 < len(text) && text[to] == '/' && isDigit(text[to+1]) {
		if from == 0 {
			return sign, "", " " + text, true
		}
		return sign, text[:from-1], text[from-1:], true
	}
	return sign, text[:to], text[to:], true
}

const digits = "0123456789"

func isDigit(c byte) bool { return '0' <= c && c <= '9' }
