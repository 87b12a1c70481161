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
	Of         Subject
	Name       string // of the thing or the step that it is of; of any other table the table's
	Key        string // what of that differs; "" where all of it is there in one job only
	One, Other string // as the job files say it, "there" for a whole thing; "" where one has none
}

// Differences are the values in which two jobs differ, sorted by where they stand; none for jobs whose files are the
// same. A thing of a list that only one of them has is one difference.
func Differences(one, other Job) []Difference {
	a, b := saidBy(one), saidBy(other)
	for thing := range maps.Clone(a.things) {
		if _, both := b.things[thing]; both {
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
		if one, other := a.texts[where].text, b.texts[where].text; one != other {
			at := both[where]
			out = append(out, Difference{where, at.of, at.name, at.key, one, other})
		}
	}
	if len(out) == 0 && !bytes.Equal(one.Format(), other.Format()) {
		order := "the order of its things"
		out = []Difference{{Where: order, Name: order, One: "one", Other: "another"}}
	}
	return out
}

// sayings are what a job file says by where it says it, and the things of its lists that have a name.
type sayings struct {
	texts  map[string]fileValue
	things map[string]fileValue
}

// fileValue is a value that a job file has, and what it is of.
type fileValue struct {
	text, thing string // the thing is told by where it stands; "" for none
	of          Subject
	name, key   string
}

// under is what a key of it says.
func (s fileValue) under(key string) fileValue {
	switch {
	case s.key != "":
		key = s.key + ": " + key
	case s.of == OfOthers:
		s.of = subjectKept(key)
	}
	s.key = key
	return s
}

// item is what an item of it, as a list, says.
func (s fileValue) item(at string) fileValue {
	if s.key == "" {
		s.name += at
	} else {
		s.key += at
	}
	return s
}

// foldThings puts "there" in place of all that is said of the things.
func (s *sayings) foldThings() {
	maps.DeleteFunc(s.texts, func(_ string, said fileValue) bool {
		_, folded := s.things[said.thing]
		return folded
	})
	maps.Copy(s.texts, s.things)
}

func saidBy(j Job) *sayings {
	s := &sayings{map[string]fileValue{}, map[string]fileValue{}}
	var tables map[string]any
	if _, err := toml.Decode(string(j.Format()), &tables); err == nil { // what Format writes is TOML
		for key, v := range tables {
			s.add(key, fileValue{of: subjects[key], name: key}, v)
		}
	}
	return s
}

// add goes down into tables and lists of them.
func (s *sayings) add(where string, said fileValue, v any) {
	switch v := v.(type) {
	case map[string]any:
		for key := range v {
			s.add(where+": "+key, said.under(key), v[key])
		}
	case []map[string]any:
		for i, item := range v {
			s.addItem(where, said, i, item)
		}
	default:
		said.text = valueText(v)
		s.texts[where] = said
	}
}

// addItem goes down into one of a list: a thing, where it has a name and is not of another already.
func (s *sayings) addItem(where string, said fileValue, i int, item map[string]any) {
	name, ok := item["name"].(string)
	if !ok { // what is recorded of a step
		name, ok = item["step"].(string)
	}
	if !ok || said.thing != "" {
		at := fmt.Sprint(" ", i+1)
		s.add(where+at, said.item(at), item)
		return
	}
	at := " " + strconv.Quote(name)
	where += at
	if said.thing = where; said.key == "" {
		said.name = name
	} else {
		said.key += at
	}
	whole := said
	whole.text = "there"
	s.things[where] = whole
	s.add(where, said, item)
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
