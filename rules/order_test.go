package rules

import (
	"cmp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"bench.example/undermark/vehicles"
)

// worse is negative when p comes before q: foul, doubtful, clear, then what touches, then by weight, then by margin, those
// without one last.
func worse(p, q Finding) int {
	none := func(f *Finding) int {
		if f.Margin.Set {
			return 0
		}
		return 1
	}
	apart := func(f *Finding) int {
		if f.Verdict != Clear && f.Rule.Sense == Least && f.Rule.Unit == MM && f.Value <= 0 {
			return 0
		}
		return 1
	}
	return cmp.Or(int(q.Verdict)-int(p.Verdict), apart(&p)-apart(&q), int(q.Weight)-int(p.Weight), none(&p)-none(&q), cmp.Compare(p.Margin.Value, q.Margin.Value))
}

// The order is that of a stable sort of the findings themselves: those as bad as each other stay as they were.
func TestFindingsComeInTheOrderOfAStableSort(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := make([]Finding, rapid.IntRange(0, 60).Draw(t, "findings"))
		for i := range list {
			list[i].Verdict = Verdict(rapid.IntRange(-1, 1).Draw(t, "verdict"))
			list[i].Limit = &Limit{Rule: rapid.SampledFrom(allRules).Draw(t, "rule")}
			list[i].Weight = Weight(rapid.IntRange(1, 3).Draw(t, "weight"))
			list[i].Value = float64(rapid.IntRange(-3, 3).Draw(t, "value"))
			list[i].Sigma = float64(i) // tells them apart
			if rapid.IntRange(0, 4).Draw(t, "set") > 0 {
				list[i].Margin = vehicles.Some(float64(rapid.IntRange(-3, 3).Draw(t, "margin")))
			}
		}
		want := slices.Clone(list)
		slices.SortStableFunc(want, worse)
		sortWorst(list)
		assert.Equal(t, want, list)
	})
}

// What is asked of a kind is what the first book says that says anything of the rule: looked for here one by one.
func TestTheNearestBookThatSaysAnythingSpeaks(t *testing.T) {
	some := []*Rule{rulesByID()["cut.clearance"], rulesByID()["exhaust.outlet"], rulesByID()["exhaust.length"]}
	rapid.Check(t, func(t *rapid.T) {
		var books [][]Limit
		for range rapid.IntRange(1, 3).Draw(t, "books") {
			var limits []Limit
			for _, rule := range some {
				for _, kind := range append([]string{""}, rule.kinds()...) {
					if rapid.IntRange(0, 3).Draw(t, "says") == 0 {
						limits = append(limits, Limit{Rule: rule, Kind: kind, Value: vehicles.Some(float64(rapid.IntRange(0, 99).Draw(t, "value")))})
					}
				}
			}
			books = append(books, limits)
		}
		var book *Book
		for _, limits := range slices.Backward(books) {
			book = newBook(limits).Over(book)
		}
		for _, rule := range some {
			for _, kind := range append([]string{""}, rule.kinds()...) {
				want := slowest(books, rule, kind)
				assert.Equal(t, want, book.ofKinds(rule).of(kind).Value, "%s %s", rule.ID, kind)
				got, ok := book.Lookup(rule.ID, kind)
				assert.Equal(t, want.Set, ok)
				assert.Equal(t, want, got.Value)
			}
			assert.Equal(t, slowest(books, rule, ""), book.of(rule).Value)
		}
	})
}

// slowest looks through all limits of all books.
func slowest(books [][]Limit, rule *Rule, kind string) vehicles.Number {
	for _, limits := range books {
		for _, of := range []string{kind, ""} {
			for _, l := range limits {
				if l.Rule == rule && l.Kind == of {
					return l.Value
				}
			}
		}
	}
	return vehicles.Number{}
}

func TestTheListOfRulesIsEachBookKindByKind(t *testing.T) {
	listed := map[string]vehicles.Number{}
	workshop := newBook([]Limit{{Rule: rulesByID()["cut.clearance"], Value: vehicles.Some(33), Book: Workshop}}).Over(Builtin())
	for _, l := range workshop.Limits() {
		listed[l.Key()] = l.Value
		holds, ok := workshop.Lookup(l.ID, l.Kind)
		assert.True(t, ok, l.Key())
		assert.Equal(t, holds.Value, l.Value, l.Key())
		if l.Kind != "" {
			assert.Equal(t, l.Title+": "+l.Kind, l.Heading())
		}
	}
	assert.Equal(t, vehicles.Some(33), listed["cut.clearance"])
	assert.Equal(t, vehicles.Some(33), listed["cut.clearance.brake line"], "a nearer book's general value speaks for the kind")
	assert.NotContains(t, listed, "cut.clearance.other", "no book says anything of it by itself")
	assert.Len(t, listed, len(Builtin().Limits()))
}
