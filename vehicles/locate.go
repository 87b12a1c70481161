package vehicles

import "strings"

// lines finds the line of every key, table and list item of a text of TOML that has been accepted. The text is
// read once; what is not TOML gives lines that may be wrong, but never hangs or panics.
type lines struct {
	text  string
	at    int
	line  int
	of    map[string]int // path of a key: its line, from 1
	items map[string]int // path of a list of tables: how many [[headers]] it has had
	newer []newer        // what a later TOML than 1.0 accepts
	open  int            // the line of three quotes that are never closed, 0 for none
}

// newer is a use of TOML later than 1.0.
type newer struct {
	line int
	text string
}

func locate(text string) *lines {
	l := &lines{text: strings.TrimPrefix(text, "\ufeff"), line: 1, of: map[string]int{}, items: map[string]int{}}
	path := ""
	for l.space(true); l.at < len(l.text); l.space(true) {
		switch {
		case l.skip("[["):
			path = l.header(l.key(), true)
			l.skip("]]")
		case l.skip("["):
			path = l.header(l.key(), false)
			l.skip("]")
		default:
			l.pair(path)
		}
	}
	return l
}

// find returns the line of a key, or of the nearest thing around it that has one.
func (l *lines) find(path string) int {
	for ; path != ""; path = parentKey(path) {
		if line, ok := l.of[path]; ok {
			return line
		}
	}
	return 1
}

// mark notes the line of a path the first time it is seen.
func (l *lines) mark(path string) {
	if _, ok := l.of[path]; !ok {
		l.of[path] = l.line
	}
}

// header returns the path of a [table] or an item of [[tables]].
func (l *lines) header(keys []string, list bool) string {
	path := ""
	for i, key := range keys {
		path = joinKey(path, key)
		last := i == len(keys)-1
		l.mark(path)
		if list && last {
			l.items[path]++
		}
		if n := l.items[path]; n > 0 {
			path = joinIndex(path, n-1)
		}
		if last {
			l.of[path] = l.line
		}
	}
	return path
}

// pair reads key = value below path.
func (l *lines) pair(path string) {
	start := l.at
	for _, key := range l.key() {
		path = joinKey(path, key)
		l.mark(path)
	}
	l.space(false)
	if l.skip("=") {
		l.space(false)
		l.value(path)
	}
	if l.at == start {
		l.at++
	}
}

// key reads a dotted key.
func (l *lines) key() (keys []string) {
	for {
		l.space(false)
		switch l.peek() {
		case '"', '\'':
			keys = append(keys, l.quoted())
		default:
			end := strings.IndexFunc(l.text[l.at:], func(r rune) bool { return !strings.ContainsRune(bareKeyRunes, r) })
			if end < 0 {
				end = len(l.text) - l.at
			}
			keys = append(keys, l.text[l.at:l.at+end])
			l.at += end
		}
		l.space(false)
		if !l.skip(".") {
			return keys
		}
	}
}

const bareKeyRunes = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789_-"

func (l *lines) value(path string) {
	switch {
	case l.peek() == '"' || l.peek() == '\'':
		l.quoted()
	case l.skip("["):
		l.list(path)
	case l.skip("{"):
		l.inline(path)
	default:
		for l.at < len(l.text) && !strings.ContainsRune(",]}#\n", rune(l.text[l.at])) {
			l.at++
		}
	}
}

func (l *lines) list(path string) {
	for i := 0; ; i++ {
		l.space(true)
		start := l.at
		if l.at >= len(l.text) || l.skip("]") {
			return
		}
		item := joinIndex(path, i)
		l.of[item] = l.line
		l.value(item)
		l.space(true)
		l.skip(",")
		if l.at == start {
			l.at++
		}
	}
}

// inline reads an inline table. TOML 1.0 wants it on one line and without a comma at its end.
func (l *lines) inline(path string) {
	for comma := false; ; {
		line := l.line
		l.space(true)
		if l.line != line {
			l.newer = append(l.newer, newer{line, "a table in braces stays on one line: take out the line break, or write it as a [table]"})
		}
		start := l.at
		if l.at >= len(l.text) {
			return
		}
		if l.skip("}") {
			if comma {
				l.newer = append(l.newer, newer{l.line, "a comma stands before the closing brace: take it out"})
			}
			return
		}
		if comma = l.skip(","); !comma {
			l.pair(path)
		}
		if l.at == start {
			l.at++
		}
	}
}
