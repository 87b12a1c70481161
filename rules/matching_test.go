package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

func pair(x, y float64) vehicles.Pair {
	return vehicles.Pair{survey.FromNumber(x, true), survey.FromNumber(y, true)}
}

// A 3-4-5 triangle: 500 mm apart whatever the sides do. Class II within a metre is good to 0.7 mm, read to 1, so each
// distance is known to sqrt(4 (0.7^2 + 1) / 3) or so; 4 mm is within 2.576 of those, 8 mm is not. By hand.
func TestTiesThatAreNotAsFarApartBelowAsAbove(t *testing.T) {
	plan := func(miss float64) vehicles.Plan {
		job := vehicles.NewJob("TL-09")
		job.Tape = vehicles.Tape{}
		job.Ties = []vehicles.Tie{
			{Name: "a", Use: true, Below: pair(100, 100), Above: pair(400, 500)},
			{Name: "b", Use: true, Below: pair(400, 500), Above: pair(100, 100-miss)},
			{Name: "out", Below: pair(0, 0), Above: pair(900, 900)},
		}
		p, faults := vehicles.Reduce(job)
		require.Empty(t, faults)
		return p
	}
	assert.Empty(t, TiesApart(plan(0)))
	assert.Empty(t, TiesApart(plan(4)))
	apart := TiesApart(plan(8))
	require.Len(t, apart, 1, "what is left out of the fit is not asked")
	assert.Equal(t, "a", apart[0].A)
	assert.InDelta(t, 500, apart[0].Below, 1e-9)
	assert.InDelta(t, 506.4, apart[0].Above, 0.1, "sqrt(300^2 + 408^2)")
}

func TestATieOnTheWrongSide(t *testing.T) {
	job := vehicles.NewJob("TL-09")
	for i, p := range [][2]float64{{500, -500}, {2500, 500}, {1400, 560}} {
		job.Ties = append(job.Ties, vehicles.Tie{Name: string(rune('a' + i)), Use: true, Below: pair(p[0], p[1]), Above: pair(p[0], p[1])})
	}
	check := func(j vehicles.Job) (int, bool) {
		plan, _ := vehicles.Reduce(j)
		return TieOnWrongSide(j, plan)
	}
	_, ok := check(job)
	assert.False(t, ok, "all agree")
	for i := range job.Ties {
		for _, below := range []bool{true, false} {
			got, ok := check(job.WithTieSideSwapped(i, below))
			require.True(t, ok)
			assert.Equal(t, i, got)
		}
	}
	far := job.Ties[2]
	far.Above = pair(1460, 560)
	job.Ties = job.Ties.With(2, far)
	_, ok = check(job)
	assert.False(t, ok, "60 mm along the van are no swapped side")
}

func TestWhatIsUnconfirmedNearTheWork(t *testing.T) {
	job, _ := vehicles.FromLibrary("long-van")
	all := len(job.Obstructions)
	names := func(j vehicles.Job) (list []string) {
		r, faults := Judge(j, Builtin())
		require.Empty(t, faults)
		for _, i := range Unconfirmed(r, 300) {
			list = append(list, j.Obstructions[i].Name)
		}
		return list
	}
	assert.Len(t, names(job), all, "without a cut nobody knows what is near")
	job = job.WithCut(vehicles.Cut{At: [2]float64{1700, 200}, Across: 127})
	near := names(job)
	assert.Contains(t, near, "prop shaft", "its edge is 165 mm from the centre, 101.5 from the cut")
	assert.Contains(t, near, "middle crossmember")
	assert.NotContains(t, near, "rear crossmember")
	assert.NotContains(t, near, "fuel tank", "600 mm from the centre")
	for i, o := range job.Obstructions {
		if o.Name == "prop shaft" {
			o.Measured = true
			job.Obstructions = job.Obstructions.With(i, o)
		}
	}
	assert.Len(t, names(job), len(near)-1)
	job = job.WithRun(vehicles.ExhaustRun, &vehicles.Run{Across: 26, Path: []vehicles.RunPoint{{X: 1735, Y: 225, Drop: 110}, {X: 2500, Y: 700, Drop: 140}}})
	assert.Contains(t, names(job), "fuel tank", "the exhaust passes over it in plan")
}
