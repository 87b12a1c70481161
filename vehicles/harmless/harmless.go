// Package harmless makes text that others wrote fit to be shown: it can't steer a terminal, hide, turn the reading
// direction, feign another line, or take other columns than the screens reckon with. What would is shown as a stand-in,
// one for each rune, so that it is seen that something is there. Everything else stays as it is.
//
// It is for text on its way to people, and for nothing else: jobs and their files keep what they were given. Every
// function here leaves what it has returned as it is, returns valid UTF-8, and takes no memory for text that is
// harmless already.
//
// Harmful are:
//   - bytes that are no UTF-8, controls (C0, DEL, C1), line and paragraph separators;
//   - what has no looks of its own: format characters (soft hyphens, zero-width blanks and joiners, marks of direction,
//     tags), fillers, variation selectors;
//   - what has no looks that are agreed on: private use, and what the language's Unicode tables don't know;
//   - what melts with its neighbour into one picture: letters of flags, skin tones. Terminals don't agree how many columns
//     such a picture takes, nor how many an emoji with joiners or selectors does: its parts are shown one by one;
//   - accents, vowel signs and the like without a letter to stand on, and the fifth and further ones on a letter.
//
// The joiners that a Persian or an Indic word is written with are no exception: to tell their use from their abuse takes
// the rules of each script, and the letters are read without them. Words of such scripts pass apart from that, though
// terminals don't agree on the columns of their joined letters.
package harmless

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Box stands for whatever is harmful and no control of ASCII. Like all stand-ins it takes one column everywhere.
const Box = '▯'

// pictures is where Unicode's own stand-ins for the controls of ASCII start; the last one is for DEL.
const (
	pictures     = '␀'
	pictureOfDel = '␡'
)

// mostMarks is how many accents and the like may stand on one letter: Vietnamese has two, Hebrew with all its points
// and a Tibetan stack seldom more than four. No source.
const mostMarks = 4

// Text makes a value harmless that is shown within one line.
func Text(s string) string { return replace(s, valueOnly, standIn) }

// Lines makes a text harmless whose line ends and tabs are the program's own. What others wrote has to go through Text
// before it is put there: otherwise it could feign a line.
func Lines(s string) string { return replace(s, ownLines, standIn) }

// Painted makes a picture harmless whose line ends and colours (SGR of ECMA-48) are the program's own. What others wrote
// has to go through Text before it is painted: otherwise it could have colours.
func Painted(s string) string { return replace(s, ownLines|ownColours, standIn) }

// PaintedWith is Painted for a picture that has more of the program's own: mine returns how much of that stands at the start of a
// text, bytes, and 0 where none does.
func PaintedWith(s string, mine func(s string) int) string {
	var out strings.Builder
	out.Grow(len(s))
	for {
		at, n := next(s, mine)
		out.WriteString(Painted(s[:at]))
		if n == 0 {
			return out.String()
		}
		out.WriteString(s[at : at+n])
		s = s[at+n:]
	}
}

// next is where the next of the program's own stands in a text and how long it is; with none, the text's end and 0.
func next(s string, mine func(s string) int) (at, n int) {
	for at = 0; at < len(s); at++ {
		if s[at] >= utf8.RuneSelf {
			if n = mine(s[at:]); n > 0 {
				return at, n
			}
		}
	}
	return at, 0
}

// JSON writes what is harmful in a text of JSON by its number, as \u and four hexadecimal figures (RFC 8259, section 7), which says the same to
// every reader. Bytes that are no UTF-8 become U+FFFD.
func JSON(s string) string { return replace(s, ownLines, escape) }

// own says what of a text is the program's.
type own uint8

const (
	valueOnly own = 0
	ownLines  own = 1 << iota
	ownColours
)

// replace puts what with writes in the place of every harmful rune.
func replace(s string, o own, with func(out *strings.Builder, r rune)) string {
	t := reader{own: o, marks: mostMarks}
	at := t.harmful(s, 0)
	if at == len(s) {
		return s
	}
	var out strings.Builder
	for done := 0; ; at = t.harmful(s, done) {
		out.WriteString(s[done:at])
		if at == len(s) {
			return out.String()
		}
		r, n := utf8.DecodeRuneInString(s[at:])
		with(&out, r)
		done = at + n
	}
}

// reader goes through a text rune by rune.
type reader struct {
	own   own
	marks int // what stands on the last letter; mostMarks where there is nothing to stand on
}

// harmful returns where the next harmful rune is from a place on, the text's end for none.
func (t *reader) harmful(s string, at int) int {
	for at < len(s) {
		if c := s[at]; ' ' <= c && c <= '~' {
			t.marks = 0
			at++
			continue
		}
		if drawn(s[at:]) {
			t.marks = 0
			at += len("─")
			continue
		}
		n, harmful := t.next(s[at:])
		if harmful {
			break
		}
		at += n
	}
	return at
}

// drawn tells whether s starts with one of the signs that plans and frames are drawn with, from U+2500 up to U+2900, which are most
// of a picture; the box that stands for something harmful among them has more to it.
func drawn(s string) bool {
	return len(s) >= 3 && s[0] == 0xe2 && 0x94 <= s[1] && s[1] < 0xa4 && s[2]&0xc0 == 0x80 && !(s[1] == 0x96 && s[2] == 0xaf)
}

// next returns the length of what s starts with, bytes: a rune, or a sequence that sets colours.
func (t *reader) next(s string) (n int, harmful bool) {
	switch c := s[0]; {
	case c == '\n' && t.own&ownLines != 0, c == '\t' && t.own&ownLines != 0 && t.own&ownColours == 0:
		t.marks = mostMarks
		return 1, false
	case c == '\x1b' && t.own&ownColours != 0:
		if n := sgr(s); n > 0 {
			return n, false
		}
	}
	r, n := utf8.DecodeRuneInString(s)
	switch k := kindOf(r); {
	case k == bad, r == utf8.RuneError && n == 1, k == joins && t.marks == mostMarks:
		t.marks = mostMarks
		return n, true
	case k == joins:
		t.marks++
	case r == Box, pictures <= r && r <= pictureOfDel:
		t.marks = mostMarks
	default:
		t.marks = 0
	}
	return n, false
}

// sgr is the length of the sequence that sets colours at the start of s, 0 for none.
func sgr(s string) int {
	if !strings.HasPrefix(s, "\x1b[") {
		return 0
	}
	for i := 2; i < len(s); i++ {
		switch c := s[i]; {
		case c == 'm':
			return i + 1
		case (c < '0' || c > '9') && c != ';' && c != ':':
			return 0
		}
	}
	return 0
}

// kind is what a rune is by itself.
type kind uint8

const (
	stands kind = iota
	joins       // shown on the rune before it: marks, the vowels and finals of a Korean syllable written in parts
	bad         // harmful wherever it is
)

func kindOf(r rune) kind {
	switch {
	case r < 0x300: // up to there Unicode has no gaps, no marks, and of formats the soft hyphen only
		if r < ' ' || 0x7f <= r && r < 0xa0 || r == 0xad {
			return bad
		}
		return stands
	case 0x2500 <= r && r < 0x2900: // the signs that plans and frames are drawn with: no gaps either
		return stands
	case 0x1f1e6 <= r && r <= 0x1f1ff, 0x1f3fb <= r && r <= 0x1f3ff: // letters of flags, skin tones
		return bad
	case !unicode.IsGraphic(r), unicode.In(r, unicode.Other_Default_Ignorable_Code_Point, unicode.Variation_Selector):
		return bad
	case 0x1160 <= r && r < 0x1200, 0xd7b0 <= r && r < 0xd800, unicode.Is(unicode.M, r):
		return joins
	}
	return stands
}

// standIn writes what people are shown in the place of a harmful rune.
func standIn(out *strings.Builder, r rune) {
	switch {
	case r < ' ':
		r += pictures
	case r == 0x7f:
		r = pictureOfDel
	default:
		r = Box
	}
	out.WriteRune(r)
}
