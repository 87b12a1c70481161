package vehicles

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Which values under our names are ours, to the last item: what is ours comes into the job, the rest stays where it is.
func TestWhatIsOursUnderEachName(t *testing.T) {
	point := []any{1.0, 2.0, 3.0}
	look := func(more map[string]any) map[string]any {
		table := map[string]any{"kinds": []any{"axle"}, "exhaust": []any{point}}
		for key, value := range more {
			table[key] = value
		}
		return table
	}
	of := func(items ...any) []any { return append([]any{}, items...) }
	for _, c := range []struct {
		name  string
		value any
		rest  any // nil: all of it is ours
		took  func(Job) int
	}{
		{"unfinished obstruction", of(map[string]any{"name": "a"}), nil, func(j Job) int { return len(j.Unfinished.Obstructions) }},
		{"unfinished opening", of(map[string]any{}, "a word", int64(3)), of("a word", int64(3)), func(j Job) int { return len(j.Unfinished.Openings) }},
		{"unfinished fitting", "a word", "a word", func(j Job) int { return len(j.Unfinished.Fittings) }},
		{"unfinished matching point", of(of()), of(of()), func(j Job) int { return len(j.Unfinished.Ties) }},
		{"refused", of(map[string]any{"text": "8x"}, true), of(true), func(j Job) int { return len(j.Refusals) }},
		{"guesses", of("floor.width", "floor.colour", int64(1)), of("floor.colour", int64(1)), func(j Job) int { return len(j.Guesses) }},
		{"guesses", map[string]any{"floor.width": true}, map[string]any{"floor.width": true}, func(j Job) int { return len(j.Guesses) }},
		{"tape held", map[string]any{"below": "level", "side": "not said"}, nil, func(j Job) int { return len(j.Held) }},
		{"tape held", map[string]any{"below": "level", "side": "by hand", "on top": 7}, map[string]any{"side": "by hand", "on top": 7}, func(j Job) int { return len(j.Held) }},
		{"looked round", map[string]any{"axle": of(1.0, int64(2))}, nil, func(j Job) int { return len(j.LookedAt) }},
		{"looked round", map[string]any{"axle": of(1.0, 2.0), "a": of(1.0), "b": of(1.0, "2"), "c": 5.5}, map[string]any{"a": of(1.0), "b": of(1.0, "2"), "c": 5.5},
			func(j Job) int { return len(j.LookedAt) }},
		{"looked round", map[string]any{"axle": of(1.0, math.NaN())}, nil, nil},
		{"looked round runs", of(look(nil)), nil, func(j Job) int { return len(j.RunLooks) }},
		{"looked round runs", of(look(map[string]any{"fuel": of(point, point)})), nil, func(j Job) int { return len(j.RunLooks) }},
		{"looked round runs", of(look(map[string]any{"colour": "red"})), of(look(map[string]any{"colour": "red"})), func(j Job) int { return len(j.RunLooks) }},
		{"looked round runs", of(look(map[string]any{"kinds": of()})), of(look(map[string]any{"kinds": of()})), func(j Job) int { return len(j.RunLooks) }},
		{"looked round runs", of(look(map[string]any{"kinds": of("axle", int64(1))}), look(nil)), of(look(map[string]any{"kinds": of("axle", int64(1))})), func(j Job) int { return len(j.RunLooks) }},
		{"looked round runs", of(look(map[string]any{"exhaust": of(of(1.0, 2.0))})), of(look(map[string]any{"exhaust": of(of(1.0, 2.0))})), func(j Job) int { return len(j.RunLooks) }},
		{"looked round outlet", of(look(map[string]any{"exhaust": of(of(1.0, 2.0, "3"))})), of(look(map[string]any{"exhaust": of(of(1.0, 2.0, "3"))})), func(j Job) int { return len(j.OpeningLooks) }},
		{"looked round outlet", of(look(map[string]any{"exhaust": of()})), of(look(map[string]any{"exhaust": of()})), func(j Job) int { return len(j.OpeningLooks) }},
		{"looked round outlet", of(look(map[string]any{"exhaust": of(of(80000.0, 2.0, 3.0))})), nil, func(j Job) int { return len(j.OpeningLooks) }},
		{"looked round outlet", of(look(map[string]any{"exhaust": of(of(80000.5, 2.0, 3.0))})), of(look(map[string]any{"exhaust": of(of(80000.5, 2.0, 3.0))})), func(j Job) int { return len(j.OpeningLooks) }},
	} {
		if c.took == nil { // a place that is no number stays what it is
			var j Job
			j.readExtra(map[string]any{c.name: c.value})
			assert.Empty(t, j.LookedAt)
			assert.Contains(t, j.Extra, c.name)
			continue
		}
		job := extraRead(t, map[string]any{c.name: c.value})
		if c.rest == nil {
			assert.Nil(t, job.Extra, "%s: %v", c.name, c.value)
			assert.Positive(t, c.took(job), "%s: %v", c.name, c.value)
			continue
		}
		assert.Equal(t, fmt.Sprint(map[string]any{c.name: c.rest}), fmt.Sprint(job.Extra), "%s: %v", c.name, c.value) // a list of tables or of values
		again, err := ParseJob(job.Format(), "b.toml")
		require.NoError(t, err)
		assert.Equal(t, job, again, "%s: %v", c.name, c.value)
	}
}

// What others keep is put aside under a name of its own as often as need be, and the job it was put aside for stays.
func TestKeepingPutsNothingOverAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := Job{Ref: "TL-44", Floor: Floor{Length: 3000, Width: 1700, Thickness: 20, Ground: 400}}
		kept := map[int64]bool{}
		n := int64(0)
		for range rapid.IntRange(1, 5).Draw(t, "times") {
			var value any
			n++
			switch rapid.IntRange(0, 2).Draw(t, "shape") {
			case 0:
				value = map[string]any{"x": n}
			case 1:
				value = map[string]any{"y": []any{n}}
			default:
				value = map[string]any{"x": map[string]any{"deep": n}}
			}
			before, was := fmt.Sprint(job.Extra), job
			kept[n] = true
			job = job.Keeping(rapid.SampledFrom([]string{"a", "a of others"}).Draw(t, "name"), value.(map[string]any))
			require.Equal(t, before, fmt.Sprint(was.Extra), "the old job stays")
		}
		require.Equal(t, job, job.Keeping("a", nil))
		read, err := ParseJob(job.Format(), "a.toml")
		require.NoError(t, err)
		require.Equal(t, job.Extra, read.Extra)
		numbersOf(read.Extra, func(v int64) { delete(kept, v) })
		require.Empty(t, kept, "each is there still")
	})
}

// By hand: the second time something is put aside, what was put aside before keeps its name.
func TestWhatWasPutAsideIsNotPutOver(t *testing.T) {
	job := Job{}
	for n := range 3 {
		job = job.Keeping("a", map[string]any{"x": n})
	}
	assert.Equal(t, map[string]any{"a": map[string]any{"x": 2, "x of others": 0, "x of others 2": 1}}, job.Extra)
}

// numbersOf are all whole numbers of a value, however deep.
func numbersOf(value any, say func(int64)) {
	switch v := value.(type) {
	case int64:
		say(v)
	case map[string]any:
		for _, item := range v {
			numbersOf(item, say)
		}
	default:
		for _, item := range asList(value) {
			numbersOf(item, say)
		}
	}
}
