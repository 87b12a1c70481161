package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// Where an exhaust may end is asked of one place of the cut and taken to hold for all: at each of them, at whatever heading, it comes out the same.
func TestWhereAnExhaustMayEndRestsOnTheVanAlone(t *testing.T) {
	full := crowded(24, true)
	full.RunChecks = vehicles.InFull
	jobs := []vehicles.Job{vehicles.Demo(), full}
	for _, name := range []string{"pick-up-tray", "short-van"} {
		van, ok := vehicles.FromLibrary(name)
		require.True(t, ok)
		jobs = append(jobs, van)
	}
	for _, job := range jobs {
		r := judged(t, job)
		l := newLayouting(t.Context(), &r, 1, func(Progress) {})
		spots, turns := l.spots(), 0
		l.knowFor(spots)
		require.NotEmpty(t, l.ends, job.Ref)
		for i := range spots {
			placed, ok := l.placed(&spots[i])
			if i%8 > 0 || !ok {
				continue
			}
			turns += asNumber(spots[i].yaw != spots[0].yaw)
			for _, d := range []demand{uprightly(demands[0]), uprightly(demands[2]), demands[2]} {
				l.know(&placed, d)
				s := newSeeker(t.Context(), &placed, vehicles.ExhaustRun, Target{Edge: AnyEdge}, nil)
				assert.Equal(t, s.endsFor(d), l.ends[d.endsBy(AnyEdge)], "%s, %+v", job.Ref, spots[i])
			}
		}
		assert.Positive(t, turns, job.Ref)
	}
}
