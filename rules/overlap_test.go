package rules

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// overlapsOf are those of a plan by itself.
func overlapsOf(plan vehicles.Plan) []Overlap { return new(Overlapping).After(plan).Pairs }

// scattered is a floor with n things strewn over it, some of them in each other.
func scattered(r *rand.Rand, n int) vehicles.Plan {
	var plan vehicles.Plan
	for range n {
		at := geometry.Point{X: 3200 * r.Float64(), Y: 1780 * (r.Float64() - 0.5)}
		size := geometry.Point{X: 5 + 60*r.Float64(), Y: 5 + 60*r.Float64()}
		top := 200 * r.Float64()
		var p vehicles.Placed
		p.Prism = geometry.Prism{Low: -top - 5 - 100*r.Float64(), High: -top}
		switch r.IntN(3) {
		case 0:
			p.Prism.Footprint = geometry.NewRectangle(at, at.Add(size), 90*r.Float64())
		case 1:
			p.Prism.Footprint = geometry.NewRound(at, size.X)
		default:
			p.Prism.Footprint = geometry.NewLine([]geometry.Point{at, at.Add(size.Scale(5))}, 6)
		}
		p.Assumed = r.IntN(10) == 0
		plan.Obstructions = append(plan.Obstructions, p)
	}
	return plan
}

// every is Overlaps in the slow and obvious way: every pair is looked at.
func every(plan vehicles.Plan) (list []Overlap) {
	for i, p := range plan.Obstructions {
		for k, q := range plan.Obstructions[i+1:] {
			high, low := min(p.Prism.High, q.Prism.High), max(p.Prism.Low, q.Prism.Low)
			gap := geometry.Between(p.Prism.Footprint, q.Prism.Footprint).Gap
			if !p.Assumed && !q.Assumed && high-low > overlapTolerance && gap < -overlapTolerance {
				list = append(list, Overlap{i, i + 1 + k, -gap})
			}
		}
	}
	return list
}

func TestOverlapsAreThoseOfEveryPair(t *testing.T) {
	found := 0
	for seed := range uint64(20) {
		plan := scattered(rand.New(rand.NewPCG(seed, 3)), 120)
		want := every(plan)
		found += len(want)
		assert.Equal(t, want, overlapsOf(plan), "seed %d", seed)
	}
	assert.Greater(t, found, 100, "there is something to find")
}

// Whatever becomes of a plan, its overlaps are those of every pair: nothing stays from the plans before it.
func TestOverlapsOfAnEditedPlanAreThoseOfEveryPair(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 3))
	plan, last := scattered(r, 100), &Overlapping{}
	for step := range 300 {
		things := slices.Clone(plan.Obstructions)
		switch i, other := r.IntN(len(things)), scattered(r, 1).Obstructions[0]; r.IntN(7) {
		case 0:
			things[i] = other
		case 5, 6: // what is in another a little aside: it is still near that
			for _, p := range last.Pairs[min(1, len(last.Pairs)):] {
				k := [2]int{p.A, p.B}[r.IntN(2)]
				things[k].Prism.Footprint = things[k].Prism.Footprint.Moved(0, geometry.Point{X: 10*r.Float64() - 5, Y: 10*r.Float64() - 5})
			}
		case 1:
			things = slices.Insert(things, i, other)
		case 2:
			things = slices.Delete(things, i, i+1)
		case 3:
			things[i].Assumed = !things[i].Assumed
		case 4:
			things[i].Prism.Low, things[i].Prism.High = other.Prism.Low, other.Prism.High
		}
		plan.Obstructions = things
		last = last.After(plan)
		assert.Equal(t, every(plan), last.Pairs, "step %d", step)
		assert.Same(t, last, last.After(plan), "nothing is looked at twice")
	}
}

func BenchmarkOverlaps(b *testing.B) {
	for _, n := range []int{60, 500} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			plan := scattered(rand.New(rand.NewPCG(1, 3)), n)
			for b.Loop() {
				overlapsOf(plan)
			}
		})
	}
}

// What lies over one another without end is not all compared, and that is said; of fewer things none is left out.
func TestMoreThanIsComparedIsSaid(t *testing.T) {
	heap := func(n int) *Overlapping {
		text := "format = 1\n[job]\nref = \"heap\"\n[floor]\nfrom = 40\nlength = 3200\nwidth = 1780\nthickness = 31\nground = 460\n"
		for i := range n {
			text += fmt.Sprintf("[[obstruction]]\nname = \"n%d\"\nkind = \"other\"\nx = [1000, 1100]\ny = [0, 100]\ndrop = [0, 50]\n", i)
		}
		job, err := vehicles.ParseJob([]byte(text), "heap.toml")
		require.NoError(t, err)
		result, faults := Judge(job, Builtin())
		require.Empty(t, faults)
		return new(Overlapping).After(result.Plan)
	}
	few, many := heap(100), heap(300)
	assert.False(t, few.Partial)
	assert.Len(t, few.Pairs, 100*99/2)
	assert.True(t, many.Partial)
	assert.Len(t, many.Pairs, mostCompared)
}
