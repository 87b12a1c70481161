package vehicles

import (
	"fmt"
	"strings"
	"unicode"
)

// tomlText is a TOML text on one line, in double quotes.
func tomlText(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range strings.ToValidUTF8(s, "\ufffd") {
		switch {
		case r == '"' || r == '\\':
			b.WriteRune('\\')
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r == '\t':
			b.WriteString(`\t`)
		default:
			b.WriteString(visible(r))
		}
	}
	b.WriteByte('"')
	return b.String()
}

// longText is a TOML text over several lines, which starts on the line behind its quotes.
func longText(s string) string {
	var b strings.Builder
	b.WriteString("\"\"\"\n")
	for _, r := range strings.ReplaceAll(escapeQuotes(strings.ToValidUTF8(s, "\ufffd")), "\r\n", "\\r\n") {
		if r == '\n' || r == '\t' {
			b.WriteRune(r)
			continue
		}
		b.WriteString(visible(r))
	}
	b.WriteString(`"""`)
	return b.String()
}

// escapeQuotes escapes backslashes, and the quotes that would end a text over several lines: each third one, and the last of the text.
func escapeQuotes(s string) string {
	s, last := strings.CutSuffix(strings.ReplaceAll(s, `\`, `\\`), `"`)
	s = strings.ReplaceAll(s, `"""`, `""\"`)
	if last {
		s += `\"`
	}
	return s
}

// visible is a rune as it may stand in a TOML text.
func visible(r rune) string {
	if unicode.IsControl(r) {
		return fmt.Sprintf(`\u%04X`, r)
	}
	return string(r)
}
