package tui

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// atOdds is the sample van with four matching points, of which the last was read on the wrong side below.
func atOdds(t testing.TB) vehicles.Job {
	job := vehicles.Demo()
	for _, said := range [][5]string{{"drain, left", "1408", "L 328", "1402", "L 324.5"}, {"bolt, right", "2305", "R 487", "2301", "R 482"}} {
		var read [4]survey.Reading
		for i, text := range said[1:] {
			reading, err := survey.Parse(text, survey.Axis(i%2))
			require.NoError(t, err)
			read[i] = reading
		}
		tie := vehicles.Tie{Name: said[0], Use: true, Below: vehicles.Pair{read[0], read[1]}, Above: vehicles.Pair{read[2], read[3]}}
		job.Ties = job.Ties.Insert(len(job.Ties), tie)
	}
	return job.WithTieSideSwapped(len(job.Ties)-1, true)
}

// reductions is how often a job, or its matching points alone, are reduced while something is done.
func reductions(do func()) int64 {
	before := vehicles.Reductions.Load()
	do()
	return vehicles.Reductions.Load() - before
}

// A picture, the keys that hold and the lines of a screen are made of the job as it was reduced when it changed, also where
// matching points disagree: which of them is on the wrong side is worked out once a change. The point in hand on Match alone
// is reduced beside it, below and above, to say what its readings come to: the picture says so, and the lines.
func TestAPictureReducesNothing(t *testing.T) {
	job := atOdds(t)
	plan, faults := rules.Reduce(job, rules.Builtin())
	require.Empty(t, faults)
	_, ok := rules.TieOnWrongSide(job, plan)
	require.True(t, ok, "one of them is on the wrong side")
	const inPicture, inLines = 2, 2
	points := map[string]int64{"Match": inPicture + inLines}
	for _, screen := range Screens() {
		r := screentest.New(t, screen, job, 160, 47)
		r.View(160, 47)
		assert.Equal(t, points[screen.Title()], reductions(func() {
			r.View(160, 47)
			r.Screen.Keys(r.State)
			r.Screen.Plain(r.State)
		}), screen.Title())
		if screen.Title() != "Match" {
			continue
		}
		r.Begin(job.WithTieSideSwapped(0, false), true)
		sides := 2 * int64(len(job.Ties))
		assert.Equal(t, sides+inPicture, reductions(func() { r.View(160, 47); r.Screen.Keys(r.State) }), "each of both sides is tried, once")
	}
}
