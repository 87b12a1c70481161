package rules

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
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
				if at := vehicles.KindIndex(kind); rule.ByKind == AnObstruction && at < len(vehicles.Kinds) {
					assert.Equal(t, want, book.ofEachKind(rule)[at].Value, "%s %s", rule.ID, kind)
				}
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

// Ranks are sorted as they compare, however near their margins are to one another.
func TestRanksAreSortedAsTheyCompare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		near := rapid.SampledFrom([]float64{-1e6, -12.5, math.Copysign(0, -1), 0, 1e-300, 0.1, 12.5, 40, 1e9}).Draw(t, "near")
		ranks := make([]rank, rapid.IntRange(0, 2*manyRanks).Draw(t, "ranks"))
		for i := range ranks {
			margin := near
			for range rapid.IntRange(0, 3).Draw(t, "steps") {
				margin = math.Nextafter(margin, math.Inf(1))
			}
			if rapid.IntRange(0, 3).Draw(t, "far") == 0 {
				margin = rapid.Float64Range(-1e9, 1e9).Draw(t, "margin")
			}
			ranks[i] = rank{group: int16(rapid.IntRange(0, 47).Draw(t, "group")), margin: margin, at: int32(i)}
		}
		want := slices.Clone(ranks)
		slices.SortFunc(want, rank.compare)
		require.Equal(t, want, sorted(ranks))
	})
}

// The highest group has room in a rough key.
func TestEveryGroupHasRoomInARoughKey(t *testing.T) {
	highest := rankOf(&Finding{Verdict: Clear, Limit: &Limit{Rule: cutClear}}, 0)
	require.Less(t, int(highest.group), 1<<groupBits)
	require.GreaterOrEqual(t, int(highest.group), 40)
}

// What is asked of boxes first, and of the cut before the runs, gives the list that asking each does.
func TestUnconfirmedIsWhatAskingEachSays(t *testing.T) {
	for _, runs := range []bool{false, true} {
		r, faults := Judge(crowded(200, runs), Builtin())
		require.Empty(t, faults)
		for i := range r.Plan.Obstructions {
			r.Plan.Obstructions[i].Measured = i%3 == 0
		}
		pipes := pipesOf(&r)
		for _, within := range []float64{0, 40, 300} {
			var want []int
			for i := range r.Plan.Obstructions {
				if o := &r.Plan.Obstructions[i]; !o.Measured && nearWork(&r, pipes, o.Prism.Footprint) <= within {
					want = append(want, i)
				}
			}
			require.True(t, len(want) > 0 || within < 300)
			require.Equal(t, want, Unconfirmed(r, within))
		}
	}
}

// nearWork is the plan distance, mm, from a footprint to the nearest of the cut's circle and the runs' pipes; minus
// infinity when there is none of them.
func nearWork(r *Result, pipes []geometry.Footprint, f geometry.Footprint) float64 {
	gap := nearRuns(pipes, f)
	if r.Job.Cut != nil {
		gap = min(gap, f.GapOnly(r.Plan.Cut.At)-r.Job.Cut.Across/2)
	}
	if math.IsInf(gap, 1) {
		return math.Inf(-1)
	}
	return gap
}
