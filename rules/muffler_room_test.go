package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// By hand: 25 mm of straight pipe on either side of a muffler are enough, of 5 mm on one four fifths of 100 mm count, of none all.
func TestWhatAMufflerWithoutRoomCounts(t *testing.T) {
	path := []geometry.Point3{{}, {Z: -200}, {X: 500, Z: -200}}
	laid := vehicles.LaidRun{Path: path, Line: geometry.Rounded(path, 60)}
	assert.Zero(t, crampedMuffler(&laid), "there is none")
	begin, end := laid.Line.Legs[1].Begin, laid.Line.Length()
	for _, c := range []struct{ from, to, counts float64 }{
		{begin + 25, end - 25, 0}, {begin + 100, end - 5, 80}, {begin + 5, end - 100, 80}, {begin, end - 100, 100}, {begin + 100, end + 10, 100},
	} {
		laid.Muffler = &vehicles.LaidMuffler{Leg: 1, From: c.from, To: c.to}
		assert.InDelta(t, c.counts, crampedMuffler(&laid), 1e-9, "%+v", c)
	}
}

// Layouts of floors where the shortest exhaust had its muffler begin, or end, in a bend give it most of the room for its clamps.
func TestAMufflerOfALayoutHasRoomForItsClamps(t *testing.T) {
	van, ok := vehicles.FromLibrary("long-van")
	require.True(t, ok)
	for _, job := range []vehicles.Job{van, crowded(48, true)} {
		r := judged(t, job)
		found := layoutsOf(t, &r, 2)
		require.Len(t, found.Best, mostLayouts)
		for i := range found.Best {
			require.NotNil(t, found.Best[i].Result.Plan.Exhaust.Muffler)
			assert.Less(t, crampedMuffler(found.Best[i].Result.Plan.Exhaust), awkwardCosts/4, "%s, layout %d", job.Ref, i+1)
		}
	}
}
