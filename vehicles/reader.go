package vehicles

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"
)

// fault is one thing wrong with a file: the path of the key, and what the line says behind the key's description.
// also is the path of a key whose line the text ends with.
type fault struct{ key, text, also string }

// reader collects what is wrong with the tables it hands out.
type reader struct {
	faults []fault
	more   int                 // faults beyond mostFaults, which are counted only
	names  map[string][]string // of the items of each list of tables
}

// mostFaults is how many faults of a file are collected: what is wrong more often than that is no job file, and words for each of its keys would take
// seconds and a gigabyte. The others are counted.
const mostFaults = 10_000

func (r *reader) full() bool { return len(r.faults) >= mostFaults }

func (r *reader) fault(key, format string, args ...any) {
	if r.full() {
		r.more++
		return
	}
	r.faults = append(r.faults, fault{key: key, text: fmt.Sprintf(format, args...)})
}

// table is a table of the file. It remembers which keys were asked for, so that done can name the unknown ones.
type table struct {
	r       *reader
	path    string
	values  map[string]any
	known   []string
	missing []fault
}

// need says whether a key must be there.
type need bool

const (
	required need = true
	optional need = false
)

// take returns a key's value and marks the key as known.
func (t *table) take(key string, n need, accepted string) (value any, path string, ok bool) {
	t.known = append(t.known, key)
	path = joinKey(t.path, key)
	if value, ok = t.values[key]; !ok && n == required {
		t.missing = append(t.missing, fault{key: path, text: " is missing: it must be " + accepted})
	}
	return value, path, ok
}

// has says whether the file has the key, without marking it as known.
func (t *table) has(key string) bool {
	_, ok := t.values[key]
	return ok
}

func (t *table) wrong(path string, value any, accepted string) {
	t.r.fault(path, " is %s; it must be %s", found(value), accepted)
}

// done reports the unknown keys and then the missing ones, but not those an unknown one was meant for: what was meant is not asked of faults
// that are only counted.
func (t *table) done() {
	for _, key := range sortedKeys(t.values) {
		if slices.Contains(t.known, key) {
			continue
		}
		if t.r.full() {
			t.r.more++
			continue
		}
		meant := t.meant(key)
		if meant == "" {
			t.r.fault(joinKey(t.path, key), " is an unknown key; known here: %s", strings.Join(unrepeated(t.known), ", "))
			continue
		}
		t.r.fault(joinKey(t.path, key), " is an unknown key; did you mean %s?", meant)
		t.missing = slices.DeleteFunc(t.missing, func(f fault) bool {
			return f.key == joinKey(t.path, meant) || (f.key == t.path && slices.Contains(placeKeys, meant))
		})
	}
	if t.r.full() {
		t.r.more += len(t.missing)
		return
	}
	t.r.faults = append(t.r.faults, t.missing...)
}

// others are words people use for a key of ours.
var others = map[string]string{
	"drop": "rise", "rise": "drop", "center": "centre", "diameter": "across", "width": "across", "type": "kind",
	"points": "path", "position": "at", "height": "drop", "rotation": "turn", "angle": "turn", "id": "name",
}

// meant is the known key that an unknown one was meant for, "" when there is none near.
func (t *table) meant(key string) string {
	free := t.free()
	if other := others[key]; slices.Contains(free, other) {
		return other
	}
	return Nearest(key, free)
}

// free are the known keys the file does not have; all known ones when it has them all.
func (t *table) free() []string {
	free := slices.DeleteFunc(slices.Clone(t.known), t.has)
	if len(free) == 0 {
		return t.known
	}
	return free
}

// number reads an integer or a float within limits.
func (t *table) number(key string, n need, l Limits) Number {
	value, path, ok := t.take(key, n, l.says)
	if !ok {
		return Number{}
	}
	v, ok := t.figure(path, value, l)
	return Number{v, ok}
}

// figure returns the number of a value, false when it is none or not within limits.
func (t *table) figure(path string, value any, l Limits) (float64, bool) {
	v, isNumber := asNumber(value)
	if !isNumber || math.IsNaN(v) || !l.hold(v) {
		t.wrong(path, value, l.says)
		return 0, false
	}
	return v, true
}

// count reads a whole number from 1 to most; counted says what there are most of.
func (t *table) count(key string, most int, counted string) int {
	accepted := fmt.Sprintf("a whole number from 1 to %d, one of its %s", most, counted)
	value, path, ok := t.take(key, required, accepted)
	if !ok {
		return 0
	}
	v, isNumber := asNumber(value)
	if !isNumber || v != math.Trunc(v) || v < 1 || v > float64(most) {
		t.wrong(path, value, accepted)
		return 0
	}
	return int(v)
}

// numbers reads a list of n numbers, of any number when n is 0. It is nil when the key is not there or wrong.
func (t *table) numbers(key string, n int, need need, l Limits) []float64 {
	accepted := fmt.Sprintf("a list of %d numbers, each %s", n, l.says)
	if n == 0 {
		accepted = "a list of numbers, each " + l.says
	}
	value, path, ok := t.take(key, need, accepted)
	if !ok {
		return nil
	}
	return t.figures(path, value, n, l, accepted)
}

// figures returns the numbers of a list, nil when it is none.
func (t *table) figures(path string, value any, n int, l Limits, accepted string) []float64 {
	list, isList := value.([]any)
	if !isList || (n > 0 && len(list) != n) {
		t.wrong(path, value, accepted)
		return nil
	}
	out := make([]float64, len(list))
	whole := true
	for i, v := range list {
		var ok bool
		out[i], ok = t.figure(joinIndex(path, i), v, l)
		whole = whole && ok
	}
	if !whole {
		return nil
	}
	return out
}

// textOfLine is what is accepted where a text may not break.
const textOfLine = "a text of one line in quotes"

// line reads a text of one line.
func (t *table) line(key string, n need) string {
	return t.text(key, n, textOfLine, func(r rune) bool { return unicode.IsControl(r) })
}

// text reads a text without the runes that are not allowed; a required one must say something.
func (t *table) text(key string, n need, accepted string, not func(rune) bool) string {
	value, path, ok := t.take(key, n, accepted)
	if !ok {
		return ""
	}
	s, isText := value.(string)
	if !isText || strings.ContainsFunc(s, not) || (n == required && strings.TrimSpace(s) == "") {
		t.wrong(path, value, accepted)
		return ""
	}
	return s
}

// fewWords are so few that an error names them all and does not guess.
const fewWords = 4

// choice reads one of the words.
func (t *table) choice(key string, n need, words []string) string {
	accepted := "one of: " + strings.Join(words, ", ")
	value, path, ok := t.take(key, n, accepted)
	if !ok {
		return ""
	}
	s, isText := value.(string)
	if isText && slices.Contains(words, s) {
		return s
	}
	if hint := Nearest(s, words); isText && hint != "" && len(words) > fewWords {
		t.r.fault(path, " is %s, which is not known; did you mean %q?", found(value), hint)
	} else {
		t.wrong(path, value, accepted)
	}
	return ""
}

// flag reads true or false.
func (t *table) flag(key string, missing bool) bool {
	value, path, ok := t.take(key, optional, "")
	if !ok {
		return missing
	}
	b, isFlag := value.(bool)
	if !isFlag {
		t.wrong(path, value, "true or false, without quotes")
	}
	return b
}

func asNumber(value any) (float64, bool) {
	switch v := value.(type) {
	case int64:
		return float64(v), true
	case float64:
		return v + 0, true // a negative zero becomes a plain one
	}
	return 0, false
}
