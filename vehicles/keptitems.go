package vehicles

import (
	"maps"
	"math"
	"slices"
)

// takeItems takes what is ours from a list, item by item; what is not is returned, the whole value when nothing is ours.
func takeItems(value any, ours func(item any) bool) (rest any) {
	list := asList(value)
	others := slices.DeleteFunc(slices.Clone(list), ours)
	switch {
	case len(others) == len(list):
		return value
	case len(others) == 0:
		return nil
	}
	return others
}

func begun(name string, subject Subject, of func(*Unfinished) *List[Begun]) kept {
	take := func(j *Job, value any) any {
		return takeItems(value, func(item any) bool {
			table := asTable(item)
			if table == nil {
				return false
			}
			var b Begun
			for key, value := range table {
				if text, isText := value.(string); isText {
					b.Texts = put(b.Texts, key, text)
				} else {
					b.Others = put(b.Others, key, value)
				}
			}
			all := of(&j.Unfinished)
			*all = append(*all, b)
			return true
		})
	}
	give := func(j Job) any {
		return tablesOf(*of(&j.Unfinished), func(b Begun) map[string]any {
			table := map[string]any{}
			for key, text := range b.Texts {
				table[key] = text
			}
			return between(table, b.Others)
		})
	}
	return kept{name, subject, take, give}
}

// tablesOf is a list of tables for a file, nil when it has none.
func tablesOf[T any](list []T, table func(T) map[string]any) any {
	if len(list) == 0 {
		return nil
	}
	out := make([]map[string]any, len(list))
	for i := range list {
		out[i] = table(list[i])
	}
	return out
}

func takeRefusals(j *Job, value any) any {
	return takeItems(value, func(item any) bool {
		table := asTable(item)
		if table == nil {
			return false
		}
		var r Refusal
		others := maps.Clone(table)
		for _, e := range r.entries() {
			if *e.at, _ = table[e.key].(string); *e.at != "" {
				delete(others, e.key)
			}
		}
		if len(others) > 0 {
			r.Others = others
		}
		j.Refusals = append(j.Refusals, r)
		return true
	})
}

func giveRefusals(j Job) any {
	return tablesOf(j.Refusals, func(r Refusal) map[string]any {
		table := map[string]any{}
		for _, e := range r.entries() {
			if *e.at != "" {
				table[e.key] = *e.at
			}
		}
		return between(table, r.Others)
	})
}

func takeGuesses(j *Job, value any) any {
	return takeItems(value, func(item any) bool {
		key, isText := item.(string)
		if !isText || !slices.Contains(FloorKeys, key) {
			return false
		}
		j.Guesses = append(j.Guesses, key)
		return true
	})
}

func giveGuesses(j Job) any {
	if len(j.Guesses) == 0 {
		return nil
	}
	list := make([]any, len(j.Guesses))
	for i, key := range j.Guesses {
		list[i] = key
	}
	return list
}

func takeLooked(j *Job, value any) any {
	others := maps.Clone(asTable(value))
	for kind, value := range asTable(value) {
		if at, ok := asPoint(value); ok {
			j.LookedAt = put(j.LookedAt, kind, at)
			delete(others, kind)
		}
	}
	switch {
	case len(j.LookedAt) == 0:
		return value
	case len(others) == 0:
		return nil
	}
	return others
}

func giveLooked(j Job) any {
	if len(j.LookedAt) == 0 {
		return nil
	}
	places := map[string]any{}
	for kind, at := range j.LookedAt {
		places[kind] = []any{at[0] + 0, at[1] + 0} // a negative zero becomes a plain one, as it does when it is read
	}
	return places
}

// asPoint is the point of a list of two numbers.
func asPoint(value any) (at [2]float64, ok bool) {
	list, _ := value.([]any)
	if len(list) != 2 {
		return at, false
	}
	for i := range at {
		if at[i], ok = asNumber(list[i]); !ok || math.IsNaN(at[i]) {
			return at, false
		}
	}
	return at, true
}
