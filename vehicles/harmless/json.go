package harmless

import (
	"fmt"
	"strings"
	"unicode/utf16"
)

// escape writes a rune as JSON (RFC 8259, section 7) spells it in ASCII: those above U+FFFF as two halves.
func escape(out *strings.Builder, r rune) {
	if high, low := utf16.EncodeRune(r); r > 0xffff {
		fmt.Fprintf(out, `\u%04x\u%04x`, high, low)
		return
	}
	fmt.Fprintf(out, `\u%04x`, r)
}
