package survey

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// four are ties of a van: the frame above turned by 0.5 degrees and shifted, exactly.
func four() []Tie {
	ties := paired([]geometry.Point{{X: 400, Y: -620}, {X: 1240, Y: 650}, {X: 2000, Y: -480}, {X: 2700, Y: 180}},
		make([]geometry.Point, 4), 1)
	for i := range ties {
		ties[i].Above = ties[i].Below.Turn(0.5).Add(geometry.Point{X: -12, Y: 7})
	}
	return ties
}

func TestFitWithTooFewTiesIsTheIdentity(t *testing.T) {
	for n := range 2 {
		ties := four()
		for i := n; i < 4; i++ {
			ties[i].Use = false
		}
		fit, err := FitTies(ties, 0)
		require.NoError(t, err)
		assert.Equal(t, n, fit.N)
		assert.False(t, fit.Tied())
		assert.Len(t, fit.Residuals, n)
		assert.Len(t, fit.LeftOut, 4-n)
		p := geometry.Point{X: 1210, Y: 240}
		assert.Equal(t, p, fit.Up(p))
		assert.Equal(t, p, fit.Down(p))
		assert.Zero(t, fit.U(geometry.Point{X: 1}, p))
	}
}

func TestTiesLeftOutAreShownButDoNotCount(t *testing.T) {
	ties := four()
	ties[1].Use = false
	ties[1].Above.X += 40
	fit, err := FitTies(ties, 0)
	require.NoError(t, err)
	assert.Equal(t, 3, fit.N)
	assert.InDelta(t, 0, fit.RMS, 1e-9)
	require.Len(t, fit.LeftOut, 1)
	assert.Equal(t, "B", fit.LeftOut[0].Name)
	assert.False(t, fit.LeftOut[0].Used)
	assert.InDelta(t, 40, fit.LeftOut[0].DX, 1e-9)
	assert.InDelta(t, 0, fit.LeftOut[0].DY, 1e-9)
	for _, r := range fit.Residuals {
		assert.True(t, r.Used)
	}
}

func TestSuspectIsNamedAndStays(t *testing.T) {
	ties := four()
	ties[2].Above.Y += 25
	fit, err := FitTies(ties, 0)
	require.NoError(t, err)
	assert.Equal(t, "C", fit.Suspect)
	assert.Equal(t, 4, fit.N)
	assert.Greater(t, fit.RMS, 5.)

	ties[2].Above.Y -= 20 // 5 mm off: the RMS of four is below 5 mm
	fit, err = FitTies(ties, 0)
	require.NoError(t, err)
	assert.Empty(t, fit.Suspect)

	ties = four()[1:] // of three nobody can tell
	ties[1].Above.Y += 25
	fit, err = FitTies(ties, 0)
	require.NoError(t, err)
	assert.Greater(t, fit.RMS, 5.)
	assert.Empty(t, fit.Suspect)
}

func TestNoSuspectWhenSeveralAreOff(t *testing.T) {
	ties := four()
	ties[0].Above.X += 25
	ties[2].Above.X -= 25
	ties[3].Above.Y += 30
	fit, err := FitTies(ties, 0)
	require.NoError(t, err)
	assert.Empty(t, fit.Suspect)
}

func TestSwappedSides(t *testing.T) {
	ties := four()
	for i := range ties {
		ties[i].Above.Y = -ties[i].Above.Y
	}
	fit, err := FitTies(ties, 0)
	require.ErrorIs(t, err, ErrSwapped)
	assert.ErrorContains(t, err, "swapped")
	assert.ErrorContains(t, err, "change the sign or the side")
	assert.Greater(t, fit.RMS, 10.)
	assert.Len(t, fit.Residuals, 4, "the fit comes with the error")
	fit, err = FitTies(ties[:2], 0) // two match either way
	require.NoError(t, err)
	assert.InDelta(t, 0, fit.RMS, 1e-9)
}

func TestTiesAtOnePlaceFixNothing(t *testing.T) {
	ties := four()[:2]
	ties[1].Below = ties[0].Below
	fit, err := FitTies(ties, 0)
	require.ErrorIs(t, err, ErrOnePlace)
	assert.Equal(t, Fit{N: 2}, fit)
	assert.Zero(t, fit.U(geometry.Point{X: 1}, geometry.Point{}))
}

func TestStatisticStaysFinite(t *testing.T) {
	assert.Equal(t, 0., statistic(3, 0, 0))
	assert.Equal(t, math.MaxFloat64, statistic(3, 2, 0))
	assert.InDelta(t, 3*4/1.5, statistic(3, 2, 1.5), 1e-12)
}

func TestLeaveOneOut(t *testing.T) {
	ties := four()
	ties[2].Above = ties[2].Above.Add(geometry.Point{X: 3, Y: 25})
	out := LeaveOneOut(ties)
	require.Len(t, out, 4)
	assert.Equal(t, "C", out[2].Name)
	assert.InDelta(t, 0, out[2].RMS, 1e-9)
	assert.InDelta(t, 3, out[2].Off.X, 1e-9)
	assert.InDelta(t, 25, out[2].Off.Y, 1e-9)
	assert.InDelta(t, 0, ties[2].Above.Sub(out[2].Off).Sub(out[2].Predicted).Norm(), 1e-9)
	assert.Len(t, LeaveOneOut(ties[:3]), 3, "two others fix a motion")
	assert.Nil(t, LeaveOneOut(ties[:2]))
	assert.Zero(t, MirroredRMS(nil))
}

// Pythagoras: 3-4-5 below, 5-12-13 above.
func TestPairDistances(t *testing.T) {
	ties := []Tie{
		{Name: "A", Use: true},
		{Name: "B", Use: true, Below: geometry.Point{X: 300, Y: 400}, Above: geometry.Point{X: 500, Y: 1200}},
		{Name: "C"},
	}
	assert.Equal(t, []Baseline{{A: "A", B: "B", Below: 500, Above: 1300, Difference: 800}}, Baselines(ties))
}
