package vehicles

import (
	"slices"
	"strings"
	"time"
)

// sub returns a table within this one, nil when it is not there or no table.
func (t *table) sub(key string, n need) *table {
	value, path, ok := t.take(key, n, "a table")
	if !ok {
		return nil
	}
	values, isTable := value.(map[string]any)
	if !isTable {
		t.r.fault(path, " is %s; it must be a table: [%s], or %s = { ... }", found(value), path, key)
		return nil
	}
	return &table{r: t.r, path: path, values: values}
}

// list returns the tables of a list of tables, [[key]], and notes their names.
func (t *table) list(key string) []*table {
	value, path, ok := t.take(key, optional, "")
	if !ok {
		return nil
	}
	var out []*table
	for i, item := range items(value) {
		values, isTable := item.(map[string]any)
		if !isTable {
			t.r.fault(path, " is %s; it must be tables, each under [[%s]]", found(value), key)
			return nil
		}
		name, _ := values["name"].(string)
		t.r.names[key] = append(t.r.names[key], name)
		out = append(out, &table{r: t.r, path: joinIndex(path, i), values: values})
	}
	return out
}

// items are the items of a list of any kind; what is no list is its own only item, and as a table it is no item.
func items(value any) []any {
	switch v := value.(type) {
	case []any:
		return v
	case []map[string]any:
		out := make([]any, len(v))
		for i := range v {
			out[i] = v[i]
		}
		return out
	}
	return []any{nil}
}

// unique reports names given twice within a list of tables.
func (r *reader) unique(key string) {
	first := map[string]int{}
	for i, name := range r.names[key] {
		if name == "" {
			continue
		}
		if j, twice := first[name]; twice {
			r.faults = append(r.faults, fault{
				key:  joinKey(joinIndex(key, i), "name"),
				text: " is used twice: give each " + key + " a name of its own; the first is on line ",
				also: joinKey(joinIndex(key, j), "name"),
			})
			continue
		}
		first[name] = i
	}
}

// localDate is how the library names the location of a date without a time.
const localDate = "date-local"

// date reads a TOML date without a time as YYYY-MM-DD.
func (t *table) date(key string) string {
	value, path, ok := t.take(key, optional, "")
	if !ok {
		return ""
	}
	d, isTime := value.(time.Time)
	if !isTime || d.Location().String() != localDate {
		t.wrong(path, value, "a date like 2026-11-25, without quotes and without a time")
		return ""
	}
	return d.Format(time.DateOnly)
}

// flags reads a table whose keys are among words, kinds of what, and whose values are true or false, nil when it is not there.
func (t *table) flags(key string, words []string, what string) map[string]bool {
	s := t.sub(key, optional)
	if s == nil {
		return nil
	}
	var out map[string]bool
	for _, word := range sortedKeys(s.values) {
		if !slices.Contains(words, word) {
			t.r.fault(joinKey(s.path, word), " is no kind of %s; %s", what, meant(Nearest(word, words), words))
			continue
		}
		out = put(out, word, s.flag(word, false))
	}
	return out
}

// ruleValues reads the table of this job's own rules, nil when it is not there. Which rules there are is for a Check to say.
func (t *table) ruleValues(key string) map[string]float64 {
	s := t.sub(key, optional)
	if s == nil {
		return nil
	}
	var out map[string]float64
	for _, rule := range sortedKeys(s.values) {
		if _, nested := s.values[rule].(map[string]any); nested {
			t.r.fault(joinKey(s.path, rule), ` is a table: a rule's name with points in it goes in quotes, "cut.reach" = 80`)
			continue
		}
		if value := s.number(rule, required, AFigure); value.Set {
			out = put(out, rule, value.Value)
		}
	}
	return out
}

// meant asks whether the hint was meant, and without one says what there is.
func meant(hint string, words []string) string {
	if hint != "" {
		return "did you mean " + quote(hint) + "?"
	}
	return "there are: " + strings.Join(words, ", ")
}

// RuleKey is the path of the key of one of a job's own rules, as a Fault has it.
func RuleKey(rule string) string { return joinKey("rules", rule) }

func put[V any](m map[string]V, key string, v V) map[string]V {
	if m == nil {
		m = map[string]V{}
	}
	m[key] = v
	return m
}
