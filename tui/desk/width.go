package desk

import (
	"strings"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

// width is how many columns harmless text takes. It is ansi.StringWidth, which looks for runes that melt into one picture: to
// measure what the screens are made of without that takes a fifth off a key's time.
func width(text string) int {
	n := 0
	for i := 0; i < len(text); {
		if c := text[i]; ' ' <= c && c <= '~' {
			n++
			i++
			continue
		}
		if strings.HasPrefix(text[i:], "\x1b[") {
			end := strings.IndexByte(text[i:], 'm') // harmless: no sequence is in it that sets no colours
			if end < 0 {
				return ansi.StringWidth(text)
			}
			i += end + 1
			continue
		}
		r, size := utf8.DecodeRuneInString(text[i:])
		if !OneColumn(r) {
			return ansi.StringWidth(text)
		}
		n++
		i += size
	}
	return n
}

// OneColumn says of the runes that are met most beside plain text's whether they take one column whatever stands beside them:
// European letters and signs, dashes, quotation marks and daggers, arrows, signs of mathematics, and what plans and frames are drawn
// with. Other scripts' letters may melt into one another.
func OneColumn(r rune) bool {
	switch {
	case r < 0x300:
		return 0xa1 <= r && r != 0xad
	case r < 0x2500:
		return 0x2010 <= r && r <= 0x2027 || 0x2030 <= r && r <= 0x205e || 0x2190 <= r && r <= 0x22ff
	}
	return r < 0x25fd || 0x2800 <= r && r < 0x2900
}
