package rules

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
	"bench.example/undermark/vehicles"
)

// The slow way stays here: each run that is tried is judged whole.

// soughtOn is the search for a run on a random floor; every other one asks of runs all that can be asked.
func soughtOn(t *testing.T, r *rand.Rand, n int) (*seeker, *course) {
	kind := vehicles.RunKind(r.IntN(2))
	job := randomFloor(r, kind)
	if n%2 == 0 {
		job.RunChecks = vehicles.InFull
	}
	bare := job
	bare.Exhaust, bare.Intake = nil, nil
	result, faults := Judge(bare, Builtin())
	require.Empty(t, faults, n)
	result.Job = job
	s := newSeeker(context.Background(), &result, kind, Target{Edge: AnyEdge, Spare: float64(n % 3 * 10)}, nil)
	d := demands[n%len(demands)]
	goals, _ := s.goals(d)
	if len(goals) == 0 {
		return s, nil
	}
	d.less -= s.to.Spare
	return s, newCourse(s.judge, s.kind, goals, d)
}

// What a run comes to is the same whether or not the trial spares itself what can't count; where it falls short of too much, both say so.
func TestAHastyTrialComesToTheSame(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(81, 81))
	exact, beyond := 0, 0
	for n := range randomFloors() / 5 {
		s, c := soughtOn(t, r, n)
		if c == nil {
			continue
		}
		slow, fast := s.trial(c.judged, 0), s.trial(c.judged, 0)
		slow.spare, fast.spare = s.to.Spare, s.to.Spare
		fast.haste = newHaste(c, c.judged, fast.spare, fast.shortWith)
		for range 40 {
			corners := strayed(r, c)
			whole := slow.worth(corners, 0, math.Inf(1))
			require.InDelta(t, whole.Short, fast.worth(corners, 0, math.Inf(1)).Short, 1e-9, "floor %d: %v", n, corners)
			most := r.Float64() * 2 * whole.Short
			hasty := fast.worth(corners, 0, most)
			require.Equal(t, whole.Length, hasty.Length)
			if whole.Short <= most {
				exact++
				require.InDelta(t, whole.Short, hasty.Short, 1e-9, "floor %d: %v", n, corners)
			} else {
				beyond++
				require.Greater(t, hasty.Short, most, "floor %d: %v", n, corners)
			}
		}
	}
	t.Logf("%d that fall short of no more than was said, %d of more", exact, beyond)
	assert.Greater(t, exact, randomFloors())
	assert.Greater(t, beyond, randomFloors())
}

// strayed are the corners of a run to one of the goals, now and then by way of places far outside the box of the way.
func strayed(r *rand.Rand, c *course) []geometry.Point3 {
	low, high := c.query.Min, c.query.Max
	out := 0.0
	if r.IntN(4) == 0 {
		out = 3 * beyondTheBox
	}
	between := func(a, b float64) float64 { return math.Round(a - out + (b-a+2*out)*r.Float64()) }
	corners := []geometry.Point3{c.query.From}
	for range r.IntN(4) {
		corners = append(corners, geometry.Point3{X: between(low.X, high.X), Y: between(low.Y, high.Y), Z: between(low.Z, high.Z)})
	}
	g := c.query.To[r.IntN(len(c.query.To))]
	return append(corners, g.At.At(g.Low+(g.High-g.Low)*r.Float64()))
}

// So the runs that are found are the same to the last digit.
func TestHasteFindsTheSameRuns(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(82, 82))
	compared := 0
	for n := range randomFloors() / 12 {
		s, c := soughtOn(t, r, n)
		if c == nil {
			continue
		}
		for _, w := range route.Find(s.ctx, &c.query, 2, nil) {
			slow := s.trial(c.judged, 0)
			slow.spare = s.to.Spare
			asked, hasty := s.straightenBy(slow, w.Corners, c, route.Straightener{Steps: []float64{32, 8, 2, 1}}), s.straighten(w.Corners, c, c.judged, 0)
			require.Equal(t, asked, hasty, "floor %d", n)
			compared++
		}
	}
	t.Logf("%d runs compared", compared)
	assert.Greater(t, compared, randomFloors()/40)
}
