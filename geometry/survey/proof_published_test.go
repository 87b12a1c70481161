package survey

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// Source: the Catalan mapping institute's paper (H2D v8, 2010), the second set of parameters of the similarity of EPSG
// operation 5166, from the new datum back to the old: 1.56504" anticlockwise, scale 1 - 1.5504e-6.
func TestRigidSimilarityBackwards(t *testing.T) {
	fit, err := FitTies(paired(
		[]geometry.Point{{X: 300000, Y: 4500000}, {X: 315000, Y: 4740000}, {X: 520000, Y: 4680000}, {X: 420000, Y: 4600000}},
		[]geometry.Point{{X: 300094.938, Y: 4500203.485}, {X: 315093.094, Y: 4740203.227}, {X: 520093.231, Y: 4680204.876},
			{X: 420093.993, Y: 4600204.241}},
		1-1.5504e-6), 0)
	require.NoError(t, err)
	assert.InDelta(t, 1.56504, fit.Theta*3600, 4e-4, "half a millimetre over 250 km")
	assert.Less(t, fit.RMS, 0.0005*math.Sqrt2, "no more than the rounding to a millimetre")
}

// Source: Ghilani, Adjustment Computations, example 18.1: standard deviations of the rotation and of the shift (values
// from memory, reproduced), both from the same unit weight as residuals. A rigid fit's are the same to first order: its
// rotation times scale has that of b, and the place at the origin of the frame below that of Te.
func TestFitUncertaintyGhilani(t *testing.T) {
	const sdA, sdT, s2 = 0.000576405735, 0.122592814, 0.01954976527
	ties := paired(
		[]geometry.Point{{X: 121.622, Y: -128.066}, {X: 141.228, Y: 187.718}, {X: 175.802, Y: 135.728}},
		[]geometry.Point{{X: 1049422.40, Y: 51089.20}, {X: 1049413.95, Y: 49659.30}, {X: 1049244.95, Y: 49884.95}}, 1)
	for i := range ties {
		ties[i].U = alike(s2)
		ties[i].Above = ties[i].Above.Scale(1 / 4.51962) // no scale in the fit, and none in what is asked here
	}
	fit, err := FitTies(ties, 0)
	require.NoError(t, err)
	// Far out along x a turn shows in y alone.
	const far = 1e7
	assert.InEpsilon(t, sdA, fit.U(geometry.Point{Y: 1}, geometry.Point{X: far})/far, 1e-4)
	// Both coordinates of the origin share a turn's lever in the rigid fit, turn and scale in the conformal one.
	x, y := fit.U(geometry.Point{X: 1}, geometry.Point{}), fit.U(geometry.Point{Y: 1}, geometry.Point{})
	assert.InEpsilon(t, sdT*sdT, x*x+y*y-s2/3, 1e-6)
}
