package survey

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// Each limit of the fit and of the tape from both sides, a hundredth or so below it and above.

// where returns the t between 0 and far for which a rising function is nearest to want.
func where(t *testing.T, far, want float64, of func(float64) float64) float64 {
	low, high := 0., far
	require.Less(t, of(low), want)
	require.Greater(t, of(high), want)
	for range 80 {
		if middle := (low + high) / 2; of(middle) < want {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// lopsided are places that no turn lays on their mirror image.
var lopsided = []geometry.Point{{X: 0, Y: 0}, {X: 1000, Y: 0}, {X: 1000, Y: 400}, {X: 300, Y: 700}}

// noise are ways that neither a shift nor a turn explains.
var noise = []geometry.Point{{X: 1, Y: 1}, {X: -1, Y: -1}, {X: 1, Y: -1}, {X: -1, Y: 1}}

func TestSwappedSidesAreSaidOverTenMillimetres(t *testing.T) {
	mirrored := func(scale float64) []Tie {
		var ties []Tie
		for _, p := range lopsided {
			p = p.Scale(scale)
			ties = append(ties, Tie{Use: true, Below: p, Above: geometry.Point{X: p.X, Y: -p.Y}, U: alike(1)})
		}
		return ties
	}
	rms := func(scale float64) float64 {
		fit, _ := FitTies(mirrored(scale), 0)
		return fit.RMS
	}
	_, err := FitTies(mirrored(where(t, 1, 9.9, rms)), 0)
	assert.NoError(t, err)
	_, err = FitTies(mirrored(where(t, 1, 10.1, rms)), 0)
	assert.ErrorIs(t, err, ErrSwapped)
	_, err = FitTies(mirrored(1)[:2], 0)
	assert.NoError(t, err, "two points are their own mirror image")
	_, err = FitTies(mirrored(1)[:3], 0)
	assert.ErrorIs(t, err, ErrSwapped)
}

func TestSwappedSidesFitThreeTimesBetterMirrored(t *testing.T) {
	disturbed := func(by float64) []Tie {
		var ties []Tie
		for i, p := range lopsided {
			above := geometry.Point{X: p.X, Y: -p.Y}.Add(noise[i].Scale(by))
			ties = append(ties, Tie{Use: true, Below: p, Above: above, U: alike(1)})
		}
		return ties
	}
	ratio := func(by float64) float64 {
		fit, _ := FitTies(disturbed(by), 0)
		return MirroredRMS(disturbed(by)) / fit.RMS
	}
	_, err := FitTies(disturbed(where(t, 1000, 0.328, ratio)), 0)
	assert.ErrorIs(t, err, ErrSwapped)
	_, err = FitTies(disturbed(where(t, 1000, 0.338, ratio)), 0)
	assert.NoError(t, err)
}

func TestATieIsSuspectOverFiveMillimetres(t *testing.T) {
	off := func(by float64) []Tie {
		var ties []Tie
		for i, p := range lopsided {
			ties = append(ties, Tie{Name: string(rune('A' + i)), Use: true, Below: p, Above: p, U: alike(1)})
		}
		ties[2].Above = ties[2].Above.Add(geometry.Point{X: by, Y: by})
		return ties
	}
	rms := func(by float64) float64 {
		fit, _ := FitTies(off(by), 0)
		return fit.RMS
	}
	fit, err := FitTies(off(where(t, 100, 4.95, rms)), 0)
	require.NoError(t, err)
	assert.Empty(t, fit.Suspect)
	fit, err = FitTies(off(where(t, 100, 5.05, rms)), 0)
	require.NoError(t, err)
	assert.Equal(t, "C", fit.Suspect)
	fit, err = FitTies(off(100)[1:], 0)
	require.NoError(t, err)
	assert.Empty(t, fit.Suspect, "of three nobody can say which")
}

func TestASuspectLeavesAThirdOfTheRMS(t *testing.T) {
	off := func(by float64) []Tie {
		var ties []Tie
		for i, p := range lopsided {
			ties = append(ties, Tie{Name: string(rune('A' + i)), Use: true, Below: p, Above: p.Add(noise[i].Scale(by)), U: alike(1)})
		}
		ties[2].Above = ties[2].Above.Add(geometry.Point{X: 30, Y: 30})
		return ties
	}
	left := func(by float64) float64 {
		fit, _ := FitTies(off(by), 0)
		least := math.Inf(1)
		for _, without := range LeaveOneOut(off(by)) {
			least = min(least, without.RMS)
		}
		return least / fit.RMS
	}
	fit, _ := FitTies(off(where(t, 12, 0.328, left)), 0)
	assert.Equal(t, "C", fit.Suspect)
	fit, _ = FitTies(off(where(t, 12, 0.338, left)), 0)
	assert.Empty(t, fit.Suspect)
}

// Two ties d apart are at one place when d^2 / 2 is below 1e-6 mm^2.
func TestHowFarApartTiesMustBe(t *testing.T) {
	for apart, ok := range map[float64]bool{1.36e-3: false, 1.46e-3: true, 0.01: true} {
		b := geometry.Point{X: apart}
		_, err := FitTies([]Tie{{Use: true}, {Use: true, Below: b, Above: b}}, 0)
		assert.Equal(t, ok, err == nil, "%v mm", apart)
		if !ok {
			assert.ErrorIs(t, err, ErrOnePlace)
		}
	}
}

func TestWhereAMetreEnds(t *testing.T) {
	tape := Tape{Class: "II"}
	assert.InDelta(t, 0.5, gauge(tape).mpe(1000+0.9e-6, false), 1e-12)
	assert.InDelta(t, 0.7, gauge(tape).mpe(1000+1.1e-6, false), 1e-12)
}

func TestHowNearItsZeroATapeStillSaysSomething(t *testing.T) {
	tape := Tape{Class: "II", Read: 1, Mark: 1, Height: 2}
	assert.Equal(t, tape.MarkU(0, 60), tape.MarkU(1e-3, 60), "held there")
	assert.Less(t, tape.MarkU(1.02e-3, 60), tape.MarkU(1e-3, 60))
	assert.Positive(t, tape.ReadingTerms(100, math.Sqrt(9999), 1, 2).Slope, "a millimetre is a slope")
	assert.Zero(t, tape.ReadingTerms(100, 100, 0, 2).Slope+tape.ReadingTerms(100, 100, 0, 2).Height)
}
