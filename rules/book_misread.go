package rules

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"bench.example/undermark/vehicles"
)

// bookKeys are the keys of a [[rule]], and what their values must be.
var bookKeys = map[string]struct {
	says string
	is   func(value any) bool
}{
	"id": aText, "unit": aText, "sense": aText, "title": aText, "ask": aText, "source": aText,
	"value":   {"a number", isNumber},
	"kinds":   {"a table with a number for each kind", isNumber},
	"sources": {"a table with a text in quotes for each kind", isText},
}

var aText = struct {
	says string
	is   func(value any) bool
}{vehicles.AText, isText}

func isText(value any) bool {
	_, is := value.(string)
	return is
}

// isNumber says whether a value is a number that a book can hold: a whole one so large that it would be rounded is none.
func isNumber(value any) bool {
	whole, isWhole := value.(int64)
	_, is := value.(float64)
	return is || isWhole && int64(float64(whole)) == whole
}

// misread finds what in a book's file can't be read as a book: unknown keys and values of another type.
func misread(values map[string]any) (faults []vehicles.Fault) {
	for _, key := range slices.Sorted(maps.Keys(values)) {
		switch value := values[key]; key {
		case "format":
			if _, is := value.(int64); !is {
				faults = append(faults, vehicles.Fault{Key: key, Text: "format must be a whole number: this program reads format = 1"})
			}
		case "rule":
			faults = append(faults, misreadRules(value)...)
		default:
			faults = append(faults, vehicles.Fault{Key: vehicles.JoinKey("", key), Text: fmt.Sprintf("unknown key %q: a book has format = 1 and [[rule]] tables", key)})
		}
	}
	return faults
}

func misreadRules(value any) (faults []vehicles.Fault) {
	rules, are := value.([]map[string]any)
	if !are {
		return []vehicles.Fault{{Key: "rule", Text: "rules are a list of [[rule]] tables"}}
	}
	for i, rule := range rules {
		for _, key := range slices.Sorted(maps.Keys(rule)) {
			at, known := bookKeys[key]
			path := vehicles.JoinKey(fmt.Sprintf("rule[%d]", i), key)
			if !known {
				faults = append(faults, vehicles.Fault{Key: path, Text: fmt.Sprintf("unknown key %q: a rule has %s", key,
					strings.Join(slices.Sorted(maps.Keys(bookKeys)), ", "))})
				continue
			}
			if bad, wrong := mistyped(path, key, rule[key], at.is); wrong {
				faults = append(faults, vehicles.Fault{Key: bad, Text: key + " must be " + at.says})
			}
		}
	}
	return faults
}

// mistyped returns the path of what is of another type than a key's values are.
func mistyped(path, key string, value any, is func(any) bool) (bad string, wrong bool) {
	if key != "kinds" && key != "sources" {
		return path, !is(value)
	}
	table, isTable := value.(map[string]any)
	if !isTable {
		return path, true
	}
	for _, kind := range slices.Sorted(maps.Keys(table)) {
		if !is(table[kind]) {
			return vehicles.JoinKey(path, kind), true
		}
	}
	return path, false
}
