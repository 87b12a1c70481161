package vehicles

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// withExtra is a job file with this under [extra], as the TOML library writes it.
func withExtra(t require.TestingT, extra map[string]any) []byte {
	w := &writer{}
	w.Write(Job{Ref: "TL-09", Floor: Floor{Length: 3000, Width: 1700, Thickness: 20, Ground: 400}}.Format())
	w.extra(extra)
	return w.Bytes()
}

// extraRead is the job of such a file.
func extraRead(t require.TestingT, extra map[string]any) Job {
	job, err := ParseJob(withExtra(t, extra), "a.toml")
	require.NoError(t, err)
	return job
}

// What the screens write, as it has always been: lists of tables and of texts, a table of pairs.
func TestWhatTheScreensKeepStandsInTheFileAsEver(t *testing.T) {
	was := map[string]any{
		"unfinished obstruction":    []any{map[string]any{"name": "tank", "x0": "700"}, map[string]any{}},
		"unfinished opening":        []any{map[string]any{"kind": "door"}},
		"unfinished fitting":        []any{map[string]any{"top": "8\""}},
		"unfinished matching point": []any{map[string]any{"bx": "1"}},
		"refused": []map[string]any{
			{"of": "floor", "name": "floor", "field": "width", "label": "width", "text": "8x", "why": "no", "about": "length"},
			{"of": "floor", "field": "from"},
		},
		"guesses":      []any{"floor.width", "floor.from"},
		"tape held":    map[string]any{"below": "level", "side": "not said"},
		"looked round": map[string]any{"air line": []any{1200.0, -240.5}},
		"looked round runs": []any{
			map[string]any{"kinds": []any{"axle", "gas pipe"}, "exhaust": []any{[]any{1200.0, 240.0, 45.0}, []any{900.0, 240.5, 60.0}}},
			map[string]any{"kinds": []any{"wiring"}, "fuel": []any{[]any{1.0, 2.0, 3.0}}, "intake": []any{[]any{4.0, 5.0, 6.0}}},
		},
		"looked round outlet": []any{map[string]any{"kinds": []any{"door"}}},
		"else":                int64(7),
	}
	job := extraRead(t, was)
	assert.Equal(t, map[string]any{"else": int64(7)}, job.Extra)
	assert.Equal(t, List[Begun]{{Texts: map[string]string{"name": "tank", "x0": "700"}}, {}}, job.Unfinished.Obstructions)
	assert.Equal(t, List[Begun]{{Texts: map[string]string{"kind": "door"}}}, job.Unfinished.Openings)
	assert.Equal(t, List[Begun]{{Texts: map[string]string{"top": "8\""}}}, job.Unfinished.Fittings)
	assert.Equal(t, List[Begun]{{Texts: map[string]string{"bx": "1"}}}, job.Unfinished.Ties)
	assert.Equal(t, []Refusal{
		{Of: "floor", Name: "floor", Field: "width", Label: "width", Text: "8x", Why: "no", About: "length"}, {Of: "floor", Field: "from"},
	}, job.Refused())
	assert.Equal(t, []string{"floor.width", "floor.from"}, job.Guesses)
	assert.Equal(t, map[string]string{"below": HeldLevel, "side": NotSaid}, job.Held)
	assert.Equal(t, map[string][2]float64{"air line": {1200, -240.5}}, job.LookedAt)
	assert.Equal(t, List[Look]{
		{[]string{"axle", "gas pipe"}, [3]List[RunPoint]{ExhaustRun: {{1200, 240, 45}, {900, 240.5, 60}}}},
		{[]string{"wiring"}, [3]List[RunPoint]{FuelRun: {{1, 2, 3}}, IntakeRun: {{4, 5, 6}}}},
	}, job.RunLooks)
	assert.Equal(t, List[Look]{{Kinds: []string{"door"}}}, job.OpeningLooks)
	assert.Equal(t, string(withExtra(t, was)), string(job.Format()))
}

// What is of another shape under a name of ours stays where it was, whatever the screens put there since.
func TestWhatOthersKeepUnderANameOfOursStays(t *testing.T) {
	foreign := map[string]any{
		"unfinished opening": []any{map[string]any{"name": "a", "since": int64(3)}, int64(7), "x"},
		"unfinished fitting": "none",
		"refused":            int64(7),
		"guesses":            []any{"floor.from", "the weather", 1.5},
		"looked round":       map[string]any{"air line": []any{1.5, 2.5}, "brake line": "twice", "wiring": []any{1.5}},
		"looked round runs": []any{
			map[string]any{"kinds": []any{"axle"}, "exhaust": []any{[]any{1.5, 2.5}}}, map[string]any{"kinds": []any{"axle"}, "since": int64(3)},
			map[string]any{"kinds": []any{int64(1)}}, map[string]any{"kinds": []any{"axle"}, "fuel": []any{[]any{1.5, 2.5, math.Inf(1)}}}, int64(7),
		},
	}
	job := extraRead(t, foreign)
	assert.Equal(t, string(withExtra(t, foreign)), string(job.Format()))
	assert.Equal(t, map[string]any{
		"unfinished opening": []any{int64(7), "x"}, "unfinished fitting": "none", "refused": int64(7), "guesses": []any{"the weather", 1.5},
		"looked round": map[string]any{"brake line": "twice", "wiring": []any{1.5}}, "looked round runs": foreign["looked round runs"],
	}, job.Extra)
	assert.Equal(t, List[Begun]{{map[string]string{"name": "a"}, map[string]any{"since": int64(3)}}}, job.Unfinished.Openings)

	job.Cut = &Cut{At: [2]float64{1000, 0}, Across: 127}
	job = job.WithoutGuess("floor.from").WithLooked("wiring", true).WithLooked("air line", false).WithRefused([]Refusal{{Of: "floor"}})
	job.Unfinished.Fittings = job.Unfinished.Fittings.Insert(0, Begun{Texts: map[string]string{"top": "3"}})
	job.Unfinished.Openings = job.Unfinished.Openings.With(0, job.Unfinished.Openings[0].Saying(map[string]string{"since": "4"}))
	again, err := ParseJob(job.Format(), "a.toml")
	require.NoError(t, err)
	assert.Equal(t, string(job.Format()), string(again.Format()))
	assert.Equal(t, map[string]any{
		"unfinished opening":           []any{map[string]any{"since": "4", "since of others": int64(3)}, int64(7), "x"},
		"unfinished fitting":           []map[string]any{{"top": "3"}},
		"unfinished fitting of others": "none",
		"refused":                      []map[string]any{{"of": "floor"}},
		"refused of others":            int64(7),
		"guesses":                      []any{"the weather", 1.5},
		"looked round":                 map[string]any{"brake line": "twice", "wiring": []any{1000.0, 0.0}, "wiring of others": []any{1.5}},
		"looked round runs":            foreign["looked round runs"],
	}, again.allExtra())
}

func TestOfOthersHasItsOwnName(t *testing.T) {
	job := Job{}.Keeping("a", nil)
	assert.Nil(t, job.Extra)
	job.Extra = map[string]any{"a": 1, "a of others": 2, "a of others 2": 3}
	assert.Equal(t, map[string]any{"a": map[string]any{"b": 4}, "a of others": 2, "a of others 2": 3, "a of others 3": 1}, job.Keeping("a", map[string]any{"b": 4}).Extra)
}

// Whatever lies under our names is all there after reading and writing, and then stays as it is.
func TestNothingUnderOurNamesIsLost(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		extra := map[string]any{}
		for _, k := range ours {
			if rapid.Bool().Draw(rt, k.name) {
				extra[k.name] = anyShape(rt)
			}
		}
		job := extraRead(rt, extra)
		var decoded map[string]any
		require.NoError(rt, toml.Unmarshal(job.Format(), &decoded))
		now, _ := decoded["extra"].(map[string]any)
		if had, has := leaves("", extra), leaves("", now); !slices.Equal(had, has) {
			rt.Fatalf("had %q, has %q", had, has)
		}
		again, err := ParseJob(job.Format(), "a.toml")
		require.NoError(rt, err)
		require.Equal(rt, job, again)
		require.Equal(rt, string(job.Format()), string(again.Format()))
	})
}

// anyShape draws a value as ours or as somebody else's, or both in one.
func anyShape(t *rapid.T) any {
	text := rapid.SampledFrom([]any{"", "x", "floor.from", "floor.width", int64(3), 1.5, true, time.Date(2026, 11, 25, 10, 0, 0, 0, time.UTC)})
	table := rapid.Custom(func(t *rapid.T) any {
		return maps.Collect(maps.All(rapid.MapOfN(rapid.SampledFrom([]string{"of", "text", "why", "x0", "air line", "other"}), text, 0, 3).Draw(t, "table")))
	})
	pairs := rapid.Custom(func(t *rapid.T) any {
		pair := rapid.OneOf(rapid.Just[any]([]any{1.5, -2.0}), rapid.Just[any]([]any{1.5}), rapid.Just[any]([]any{1.5, "x"}), text)
		return maps.Collect(maps.All(rapid.MapOfN(rapid.SampledFrom([]string{"air line", "wiring", "bolt"}), pair, 0, 3).Draw(t, "pairs")))
	})
	list := rapid.Custom(func(t *rapid.T) any {
		return rapid.SliceOfN(rapid.OneOf(table, text), 0, 4).Draw(t, "list")
	})
	return rapid.OneOf(list, list, pairs, table, text).Draw(t, "value")
}

// leaves are the values within a value with the keys they stand under, sorted: where an item stands in its list does not count.
func leaves(at string, value any) []string {
	var out []string
	switch v := value.(type) {
	case map[string]any:
		for key, inner := range v {
			out = append(out, leaves(at+"/"+key, inner)...)
		}
		out = append(out, at+" table")
	case []map[string]any:
		for _, inner := range v {
			out = append(out, leaves(at+"/-", inner)...)
		}
	case []any:
		for _, inner := range v {
			out = append(out, leaves(at+"/-", inner)...)
		}
	default:
		out = append(out, fmt.Sprintf("%s=%v", at, v))
	}
	slices.Sort(out)
	return out
}
