package vehicles

import (
	"strconv"
	"strings"
)

// quoted reads a text in quotes of any kind and returns it; of one over several lines, nothing.
func (l *lines) quoted() string {
	quote := l.text[l.at : l.at+1]
	escapes := quote == `"`
	if l.skip(quote + quote + quote) {
		l.long(quote, escapes)
		return ""
	}
	start := l.at
	for l.at++; l.at < len(l.text) && l.text[l.at] != quote[0] && l.text[l.at] != '\n'; l.at++ {
		l.escape(escapes)
	}
	l.at = min(l.at, len(l.text)) // a backslash may be the last there is
	l.skip(quote)
	raw := l.text[start:l.at]
	if s, err := strconv.Unquote(raw); escapes && err == nil {
		return s
	}
	return strings.Trim(raw, quote)
}

// long skips to behind the three quotes that end a text over several lines; up to two more belong to the text.
func (l *lines) long(quote string, escapes bool) {
	start := l.line
	for l.at < len(l.text) {
		if l.skip(quote + quote + quote) {
			for i := 0; i < 2 && l.skip(quote); i++ {
			}
			return
		}
		l.escape(escapes)
		if l.at < len(l.text) {
			l.advance()
		}
	}
	l.open = start
}

// escape skips a backslash, so that what stands behind it is not taken for the end. TOML 1.0 knows no \e and no \x.
func (l *lines) escape(escapes bool) {
	if !escapes || l.text[l.at] != '\\' {
		return
	}
	l.at++
	if l.at < len(l.text) && (l.text[l.at] == 'e' || l.text[l.at] == 'x') {
		l.newer = append(l.newer, newer{l.line, `\` + l.text[l.at:l.at+1] + ` is no escape: write \u and four digits`})
	}
}

func (l *lines) advance() {
	if l.text[l.at] == '\n' {
		l.line++
	}
	l.at++
}

// space skips blanks, and line ends and comments too when asked to.
func (l *lines) space(ends bool) {
	for l.at < len(l.text) {
		switch c := l.text[l.at]; {
		case c == ' ' || c == '\t':
		case !ends:
			return
		case c == '\n' || c == '\r':
		case c == '#':
			if end := strings.IndexByte(l.text[l.at:], '\n'); end >= 0 {
				l.at += end
			} else {
				l.at = len(l.text) - 1
			}
		default:
			return
		}
		l.advance()
	}
}

func (l *lines) peek() byte {
	if l.at < len(l.text) {
		return l.text[l.at]
	}
	return 0
}

func (l *lines) skip(s string) bool {
	if !strings.HasPrefix(l.text[l.at:], s) {
		return false
	}
	l.at += len(s)
	return true
}

// AText is how a file has a text, for people.
const AText = "a text in quotes"
