package words

import (
	"cmp"
	"maps"
	"slices"

	"bench.example/undermark/vehicles"
)

// unfinished says what became of the things of a list that are not whole yet, by the first that differs: what it is, and what was typed of it. what is a
// thing of that list.
func unfinished(what string, was, is vehicles.List[vehicles.Begun]) string {
	same := func() bool { return len(was) > 0 && len(is) > 0 }
	for same() && maps.Equal(was[len(was)-1].Texts, is[len(is)-1].Texts) { // the newest come first
		was, is = was[:len(was)-1], is[:len(is)-1]
	}
	for same() && maps.Equal(was[0].Texts, is[0].Texts) {
		was, is = was[1:], is[1:]
	}
	switch {
	case same():
		name := cmp.Or(begunName(is[0], ""), begunName(was[0], what))
		return name + ", unfinished" + typedIn(was[0].Texts, is[0].Texts)
	case len(is) > 0:
		return begunName(is[0], what) + " begun"
	case len(was) > 0:
		return begunName(was[0], what) + ", unfinished: gone"
	}
	return "unfinished " + what
}

// begunName is what an unfinished thing is called, as far as anybody said.
func begunName(b vehicles.Begun, what string) string {
	return cmp.Or(b.Texts["name"], b.Texts["kind"], what)
}

// typedIn is the first text that was typed, changed or taken out: ": 652", ": 652 taken out".
func typedIn(was, is map[string]string) string {
	for _, key := range slices.Sorted(maps.Keys(is)) {
		if is[key] != was[key] {
			return ": " + is[key]
		}
	}
	for _, key := range slices.Sorted(maps.Keys(was)) {
		if is[key] == "" {
			return ": " + was[key] + " taken out"
		}
	}
	return ""
}
