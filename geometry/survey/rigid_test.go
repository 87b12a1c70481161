package survey

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// paired makes ties of two lists of places, those below times scale: published examples have a scale, the fit none.
func paired(below, above []geometry.Point, scale float64) []Tie {
	ties := make([]Tie, len(below))
	for i := range below {
		ties[i] = Tie{Name: string(rune('A' + i)), Below: below[i].Scale(scale), Above: above[i], Use: true, U: alike(1)}
	}
	return ties
}

// Source: Ghilani, Adjustment Computations, example 18.1, a conformal fit. With its scale taken out beforehand the
// rigid fit must give its rotation, residuals and carried-over places. Its rotation is in the third quadrant.
func TestRigidGhilani(t *testing.T) {
	scale := math.Hypot(-4.512493612538, -0.253714497269)
	ties := paired(
		[]geometry.Point{{X: 121.622, Y: -128.066}, {X: 141.228, Y: 187.718}, {X: 175.802, Y: 135.728}},
		[]geometry.Point{{X: 1049422.40, Y: 51089.20}, {X: 1049413.95, Y: 49659.30}, {X: 1049244.95, Y: 49884.95}},
		scale)
	fit, err := FitTies(ties, 0)
	require.NoError(t, err)
	assert.InDelta(t, 183+13./60+5.0/3600-360, fit.Theta, 0.05/3600)
	for i, v := range []geometry.Point{{X: 0.0038, Y: -0.0291}, {X: 0.1009, Y: -0.0767}, {X: -0.1047, Y: 0.1059}} {
		assert.InDelta(t, -v.X, fit.Residuals[i].DX, 1e-4) // the book's are computed minus given
		assert.InDelta(t, -v.Y, fit.Residuals[i].DY, 1e-4)
	}
	assert.InDelta(t, 0.14, fit.RMS*math.Sqrt(3./2), 0.005, "S0, of two degrees of freedom")
	assert.InDelta(t, 0.13982047514, fit.RMS*math.Sqrt(3./2), 1e-6)
	for _, c := range []struct{ from, to geometry.Point }{
		{geometry.Point{X: 174.148, Y: -120.262}, geometry.Point{X: 1049187.361, Y: 51040.629}},
		{geometry.Point{X: 513.520, Y: -192.130}, geometry.Point{X: 1047637.713, Y: 51278.829}},
		{geometry.Point{X: 754.444, Y: -67.706}, geometry.Point{X: 1046582.113, Y: 50656.241}},
		{geometry.Point{X: 972.788, Y: 120.994}, geometry.Point{X: 1045644.713, Y: 49749.336}},
	} {
		to := fit.Up(c.from.Scale(scale))
		assert.InDelta(t, c.to.X, to.X, 6e-4)
		assert.InDelta(t, c.to.Y, to.Y, 6e-4)
	}
}

// Source: EPSG method 9621, operation 5166 (IOGP guidance note 373-7-2), and three more pairs of the Catalan mapping
// institute (H2D v8, 2010), in metres to the millimetre; 1.56504" clockwise.
func TestRigidSimilarityOfTwoGrids(t *testing.T) {
	fit, err := FitTies(paired(
		[]geometry.Point{{X: 300000, Y: 4500000}, {X: 315000, Y: 4740000}, {X: 520000, Y: 4680000}, {X: 420000, Y: 4600000}},
		[]geometry.Point{{X: 299905.060, Y: 4499796.515}, {X: 314906.904, Y: 4739796.774}, {X: 519906.767, Y: 4679795.125},
			{X: 419906.005, Y: 4599795.760}},
		1.0000015504), 0)
	require.NoError(t, err)
	assert.InDelta(t, -1.56504, fit.Theta*3600, 2e-4)
	assert.Less(t, fit.RMS, 0.0005*math.Sqrt2, "no more than the rounding to a millimetre")
	for _, r := range fit.Residuals {
		assert.InDelta(t, 0, math.Hypot(r.DX, r.DY), 6e-4)
	}
}

// binGrid is EPSG methods 9666 (right-handed) and 1049 (left-handed), IOGP guidance note 373-7-2: where the bin at
// di, dj of a grid with its J axis at bearing th lies in easting and northing.
func binGrid(origin geometry.Point, th float64, leftHanded bool, d geometry.Point) geometry.Point {
	if leftHanded {
		d.X = -d.X
	}
	return origin.Add(d.Turn(-th))
}

// Source: the worked examples of those methods. Their two published places each fix the rotation; with a third by
// the formula the left-handed one can only be fitted by a mirror.
func TestRigidHandedGrids(t *testing.T) {
	right := []geometry.Point{{}, {X: 299 * 25 * 0.99984, Y: 246 * 12.5 * 0.99984}}
	origin := geometry.Point{X: 456781, Y: 5836723}
	fit, err := FitTies(paired(right, []geometry.Point{origin, {X: 464855.62, Y: 5837055.90}}, 1), 0)
	require.NoError(t, err)
	assert.InDelta(t, -20, fit.Theta, 1e-4)
	assert.InDelta(t, 0, fit.RMS, 0.005)

	left := []geometry.Point{{}, {X: -300 * 82.5, Y: 247 * 41.25}, {X: -300 * 82.5}}
	origin = geometry.Point{X: 871200, Y: 10280160}
	published := geometry.Point{X: 890972.63, Y: 10298199.29}
	require.InDelta(t, 0, binGrid(origin, 340, true, left[1]).Sub(published).Norm(), 0.01)
	ties := paired(left, []geometry.Point{origin, published, binGrid(origin, 340, true, left[2])}, 1)
	_, err = FitTies(ties, 0)
	assert.ErrorIs(t, err, ErrSwapped)
	assert.InDelta(t, 0, MirroredRMS(ties), 0.01)
}

// Source: Borg and Groenen, Modern Multidimensional Scaling, section 19.4, a fit that needs a mirror; scales and sums
// of squares recomputed.
func TestRigidMirrorOfBorgAndGroenen(t *testing.T) {
	target := []geometry.Point{{X: 1, Y: 2}, {X: -1, Y: 2}, {X: -1, Y: -2}, {X: 1, Y: -2}}
	moving := []geometry.Point{{X: 0.07, Y: 2.62}, {X: 0.93, Y: 3.12}, {X: 1.93, Y: 1.38}, {X: 1.07, Y: 0.88}}
	mirrored := MirroredRMS(paired(moving, target, 1.99655293198))
	assert.InDelta(t, 0.000318903, 4*mirrored*mirrored, 1e-8)
	fit, err := FitTies(paired(moving, target, 1.2034627), 0)
	require.NoError(t, err, "1.8 mm is no reason to speak of swapped sides")
	assert.InDelta(t, -29.79196, fit.Theta, 1e-5)
	assert.InDelta(t, 12.7334768, 4*fit.RMS*fit.RMS, 1e-6)

	m, _, _ := rigid(paired(moving, target, 1.99655293198), true)
	assert.InDelta(t, 3.7231922, m.shift.X, 1e-6)
	assert.InDelta(t, -2.4635255, m.shift.Y, 1e-6)

	for i := range target { // the same in the size of a van
		target[i], moving[i] = target[i].Scale(500), moving[i].Scale(500)
	}
	_, err = FitTies(paired(moving, target, 1.99655293198), 0)
	require.ErrorIs(t, err, ErrSwapped)
	assert.ErrorContains(t, err, "swapped")
}

// Source: Golub and Van Loan, Matrix Computations, 3rd edition, example 12.4.1: rotation alone. Each place is taken
// with its opposite, which puts both centroids at the origin and doubles the squares. The book gives sizes; the sign
// is that of the vector products' sum, 0.3 - 1.3 + 0.7 - 2.3.
func TestRigidRotationOfGolubAndVanLoan(t *testing.T) {
	above := []geometry.Point{{X: 1, Y: 2}, {X: 3, Y: 4}, {X: 5, Y: 6}, {X: 7, Y: 8}}
	below := []geometry.Point{{X: 1.2, Y: 2.1}, {X: 2.9, Y: 4.3}, {X: 5.2, Y: 6.1}, {X: 6.8, Y: 8.1}}
	for i := range 4 {
		above, below = append(above, above[i].Scale(-1)), append(below, below[i].Scale(-1))
	}
	fit, err := FitTies(paired(below, above, 1), 0)
	require.NoError(t, err)
	assert.InDelta(t, 0.9999, math.Cos(fit.Theta*math.Pi/180), 5e-5)
	assert.InDelta(t, -0.0126, math.Sin(fit.Theta*math.Pi/180), 5e-5)
	assert.InDelta(t, -0.7220608, fit.Theta, 1e-6)
	assert.InDelta(t, 0.4660831333, math.Sqrt(8*fit.RMS*fit.RMS/2), 1e-9)
}

// alike are the uncertainties of a tie whose four coordinates are as good as each other: along any direction its variance is
// that given.
func alike(variance float64) [4]float64 {
	u := math.Sqrt(variance / 2)
	return [4]float64{u, u, u, u}
}
