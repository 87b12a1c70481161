package drawing

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// A place that is shaded as clear with 20 mm to spare is clear when it is judged, of all that was measured; one shaded as foul
// is not, and the shade between them changes with the verdict to within what the guard is taken for the whole floor.
func TestTheShadeAgreesWithTheVerdict(t *testing.T) {
	job := vehicles.Demo()
	job.Exhaust, job.Intake, job.Fuel = nil, nil, nil
	result, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	low, high := result.Plan.FloorMin, result.Plan.FloorMax
	s := NewShading(&result, rules.DoubtOfCut(rules.Doubt{}, &result), low, high, 5, 2)
	r, seen := rand.New(rand.NewPCG(7, 7)), map[scene.Grade]int{}
	for range 600 {
		p := geometry.Point{X: 5 * float64(int(low.X/5)+r.IntN(int(high.X-low.X)/5)), Y: 5 * float64(r.IntN(340)-170)}
		cut := *job.Cut
		cut.At = [2]float64{p.X, p.Y}
		judged, faults := rules.Judge(job.WithCut(cut), rules.Builtin())
		require.Empty(t, faults)
		worst, all := rules.Clear, rules.Clear
		for _, f := range judged.Findings {
			isCut := f.ID() == "cut.on-floor" || strings.HasPrefix(f.ID(), "cut.clearance")
			if isCut {
				all = max(all, f.Verdict) // the shade counts as measured what was not
			}
			if isCut && (f.Against.Sort != rules.AnObstruction || sure(&judged.Plan.Obstructions[f.Against.Index])) {
				worst = max(worst, f.Verdict)
			}
		}
		room := s.At(p)
		seen[room]++
		switch {
		case room >= scene.FairRoom:
			assert.Equal(t, rules.Clear, worst, "%v", p)
		case room == scene.NoRoom:
			assert.NotEqual(t, rules.Clear, all, "%v", p)
		case room >= scene.LittleRoom:
			assert.NotEqual(t, rules.Foul, worst, "%v", p)
		}
	}
	assert.Greater(t, seen[scene.NoRoom], 20)
	assert.Greater(t, seen[scene.FairRoom]+seen[scene.MuchRoom], 20)
}

// sure tells whether nothing but distance and uncertainty decides about a thing.
func sure(o *vehicles.Placed) bool { return o.Measured && !o.Loose && !o.Unclosed }

func TestNothingIsShadedOffTheFloor(t *testing.T) {
	result, _ := rules.Judge(vehicles.Demo(), rules.Builtin())
	s := NewShading(&result, rules.DoubtOfCut(rules.Doubt{}, &result), geometry.Point{X: -500, Y: -2000}, geometry.Point{X: 900, Y: 2000}, 10, 1)
	assert.Equal(t, scene.Unknown, s.At(geometry.Point{X: result.Plan.FloorMin.X - 1}))
	assert.Equal(t, scene.Unknown, s.At(geometry.Point{X: 950}), "beyond the part")
	assert.NotEqual(t, scene.Unknown, s.At(geometry.Point{X: 500}))
}

// Between nodes there is what a finer shading has at its own nodes, but within a node's distance of where one grade becomes another; at
// a node it is the node's.
func TestBetweenNodesTheShadeIsThatOfAFinerOne(t *testing.T) {
	const step = 16
	result, faults := rules.Judge(vehicles.Demo(), rules.Builtin())
	require.Empty(t, faults)
	low, high := result.Plan.FloorMin, result.Plan.FloorMax
	coarse := NewShading(&result, rules.DoubtOfCut(rules.Doubt{}, &result), low, high, step, 2)
	fine := NewShading(&result, rules.DoubtOfCut(rules.Doubt{}, &result), low, high, 1, 2)
	r, between := rand.New(rand.NewPCG(3, 3)), 0
	for range 20000 {
		p := geometry.Point{X: low.X + r.Float64()*(high.X-low.X), Y: low.Y + r.Float64()*(high.Y-low.Y)}
		got := coarse.Between(p)
		near := false
		for k := range 17 * 17 {
			off := geometry.Point{X: float64(k%17-8) * step / 8, Y: float64(k/17-8) * step / 8}
			if near = fine.At(p.Add(off)) == got; near {
				break
			}
		}
		require.True(t, near, "%v: %d", p, got)
		if got != coarse.At(p) {
			between++
		}
	}
	assert.Positive(t, between, "it is finer")
	node := coarse.possible.Node(7, 5)
	assert.Equal(t, coarse.At(node), coarse.Between(node))
	assert.Equal(t, scene.Unknown, coarse.Between(geometry.Point{X: low.X - 1}))
}
