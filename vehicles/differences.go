package vehicles

import (
	"bytes"
	"fmt"
	"maps"
	"strconv"
	"strings"
	"time"

	"bench.example/undermark/geometry/survey"
	"github.com/BurntSushi/toml"
)

// Difference is one value in which two jobs differ.
type Difference struct {
	Where      string // in words: obstruction "brake pipe": drop
	One, Other string // as the job files say it, "there" for a whole thing; "" where one has none
}

// Differences are the values in which two jobs differ, sorted by where they stand; none for jobs whose files are the
// same. A thing of a list that only one of them has is one difference.
func Differences(one, other Job) []Difference {
	a, b := saidBy(one), saidBy(other)
	for thing := range maps.Clone(a.things) {
		if b.things[thing] {
			delete(a.things, thing)
			delete(b.things, thing)
		}
	}
	a.foldThings()
	b.foldThings()
	both := maps.Clone(a.texts)
	maps.Copy(both, b.texts)
	var out []Difference
	for _, where := range sortedKeys(both) {
		if a.texts[where] != b.texts[where] {
			out = append(out, Difference{where, a.texts[where], b.texts[where]})
		}
	}
	if len(out) == 0 && !bytes.Equal(one.Format(), other.Format()) {
		out = []Difference{{Where: "the order of its things", One: "one", Other: "another"}}
	}
	return out
}

// sayings are what a job file says by where it says it, and the things of its lists that have a name.
type sayings struct {
	texts  map[string]string
	in     map[string]string // the thing that a text is in
	things map[string]bool
}

// foldThings puts "there" in place of all that is said of the things.
func (s *sayings) foldThings() {
	for where, thing := range s.in {
		if s.things[thing] {
			delete(s.texts, where)
		}
	}
	for thing := range s.things {
		s.texts[thing] = "there"
	}
}

func saidBy(j Job) *sayings {
	s := &sayings{map[string]string{}, map[string]string{}, map[string]bool{}}
	var tables map[string]any
	if _, err := toml.Decode(string(j.Format()), &tables); err == nil { // what Format writes is TOML
		for key, v := range tables {
			s.add(key, "", v)
		}
	}
	return s
}

// add goes down into tables and lists of them.
func (s *sayings) add(where, thing string, v any) {
	switch v := v.(type) {
	case map[string]any:
		for key := range v {
			s.add(where+": "+key, thing, v[key])
		}
	case []map[string]any:
		for i, item := range v {
			at, thing := fmt.Sprintf("%s %d", where, i+1), thing
			name, ok := item["name"].(string)
			if !ok { // what is recorded of a step
				name, ok = item["step"].(string)
			}
			if ok && thing == "" {
				at = where + " " + strconv.Quote(name)
				thing = at
				s.things[thing] = true
			}
			s.add(at, thing, item)
		}
	default:
		s.texts[where], s.in[where] = valueText(v), thing
	}
}

// timeText is a date, a time of a day or a moment as a job file has it: with a zone where it has one.
func timeText(v time.Time) string {
	switch v.Location().String() {
	case localDate:
		return v.Format(time.DateOnly)
	case localTime:
		return v.Format(momentForm)
	case "time-local": // as the library names it
		return v.Format("15:04:05.999999999")
	}
	return v.Format(time.RFC3339Nano)
}

// valueText is a value as a job file has it.
func valueText(v any) string {
	switch v := v.(type) {
	case []any:
		parts := make([]string, len(v))
		for i := range v {
			parts[i] = valueText(v[i])
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case string:
		return tomlText(v)
	case float64:
		return survey.Exact(v)
	case time.Time:
		return timeText(v)
	}
	return fmt.Sprint(v)
}
