package survey

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// Two ties 2 a apart along x, all coordinates as good as each other: across the baseline the variance grows with the square of the
// way from its middle over a, along it not at all. By hand: each tie's difference has 2 u^2, their mean u^2, and the turn
// sqrt(2 u^2 + 2 u^2) / 2a.
func TestTwoTiesInClosedForm(t *testing.T) {
	const a, u = 600., 0.8
	at := []geometry.Point{{X: 1500 - a, Y: 200}, {X: 1500 + a, Y: 200}}
	ties := paired(at, at, 1)
	for i := range ties {
		ties[i].U = [4]float64{u, u, u, u}
	}
	fit, err := FitTies(ties, 1)
	require.NoError(t, err)
	ahead, aside := geometry.Point{X: 1}, geometry.Point{Y: 1}
	for _, way := range []float64{0, 300, -300, a, -a, 2 * a, 1500} {
		on := geometry.Point{X: 1500 + way, Y: 200}
		assert.InDelta(t, u*u*(1+way*way/(a*a)), fit.Carried(aside, on, Zeros{}, 1), 1e-9, "across, %v from the middle", way)
		assert.InDelta(t, u*u, fit.Carried(ahead, on, Zeros{}, 1), 1e-9, "along, %v from the middle", way)
		off := geometry.Point{X: 1500, Y: 200 + way}
		assert.InDelta(t, u*u*(1+way*way/(a*a)), fit.Carried(ahead, off, Zeros{}, 1), 1e-9, "along, %v beside", way)
		assert.InDelta(t, u*u, fit.Carried(aside, off, Zeros{}, 1), 1e-9)
	}
	assert.InDelta(t, math.Sqrt(2)*u, fit.U(aside, at[0]), 1e-9, "at a tie: its own two readings, as nothing else says where it is")
	assert.InDelta(t, 4*u*u, fit.Carried(geometry.Point{Y: 2}, geometry.Point{X: 1500, Y: 200}, Zeros{}, 1), 1e-9, "the direction's length counts")
}

// Across the baseline two ties carry as a ruler through two points does: each by its share of the way from the other. Along it
// each counts for a half, wherever.
func TestTwoTiesCarryAsARulerDoes(t *testing.T) {
	at := []geometry.Point{{X: 1000}, {X: 2000}}
	for i := range 2 {
		for k := range 4 {
			for _, x := range []float64{1000, 1250, 1500, 2000, 2600, 400} {
				ties := paired(at, at, 1)
				for n := range ties {
					ties[n].U = [4]float64{}
				}
				ties[i].U[k] = 0.7
				fit, err := FitTies(ties, 1)
				require.NoError(t, err)
				share := (2000 - x) / 1000
				if i == 1 {
					share = 1 - share
				}
				along, across := 0.25, share*share
				if k%2 == 1 {
					along = 0
				} else {
					across = 0
				}
				place := geometry.Point{X: x}
				assert.InDelta(t, 0.49*along, fit.Carried(geometry.Point{X: 1}, place, Zeros{}, 1), 1e-9)
				assert.InDelta(t, 0.49*across, fit.Carried(geometry.Point{Y: 1}, place, Zeros{}, 1), 1e-9)
			}
		}
	}
}

// Four ties at the corners of a square of 2 a: sum r^2 is 8 a^2, and in the middle each counts for a quarter.
func TestASquareOfTies(t *testing.T) {
	const a, u = 500., 1.
	var at []geometry.Point
	for _, x := range []float64{-a, a} {
		for _, y := range []float64{-a, a} {
			at = append(at, geometry.Point{X: 1500 + x, Y: y})
		}
	}
	ties := paired(at, at, 1)
	for i := range ties {
		ties[i].U = [4]float64{u, u, u, u}
	}
	fit, err := FitTies(ties, 1)
	require.NoError(t, err)
	for degrees := 0.; degrees < 360; degrees += 30 {
		n := geometry.Point{X: 1}.Turn(degrees)
		assert.InDelta(t, 0.5, fit.Carried(n, geometry.Point{X: 1500}, Zeros{}, 1), 1e-9, "2 u^2 / 4 whichever way")
		out := geometry.Point{X: 1500}.Add(n.Turn(90).Scale(800))
		assert.InDelta(t, 2*(1./4+800.*800/(8*a*a)), fit.Carried(n, out, Zeros{}, 1), 1e-9)
	}
}

// Many surveys: ties are read again and again with normal errors, the zeros' heights one draw a survey for all that is taped from
// them, an edge below among it; how far a mark from above is from that edge spreads as Carried says.
func TestCarriedIsTheSpreadOfManySurveys(t *testing.T) {
	const surveys, heightU = 30000, 1.2
	places := []geometry.Point{{X: 500, Y: 400}, {X: 2400, Y: -300}, {X: 1900, Y: 520}}
	turned := make([]geometry.Point, len(places))
	truth := motion{theta: 3, shift: geometry.Point{X: 12, Y: -8}}
	for i, p := range places {
		turned[i] = truth.apply(p)
	}
	ties := paired(places, turned, 1)
	for i := range ties {
		f := float64(i)
		ties[i].Tilt = [4]float64{-0.4 + 0.1*f, 0.2 * f, 0.3, -0.1 * f}
		for k := range ties[i].U {
			ties[i].U[k] = math.Hypot(0.4+0.2*f+0.1*float64(k), ties[i].Tilt[k]*heightU)
		}
	}
	fit, err := FitTies(ties, heightU)
	require.NoError(t, err)
	cut := geometry.Point{X: 1300, Y: 240}
	for seed, c := range []struct {
		degrees float64
		edge    Zeros
		sign    float64
	}{
		{0, Zeros{}, 1}, {90, Zeros{}, 1}, {35, Zeros{BumperBelow: -0.5}, 1}, {120, Zeros{SideBelow: 0.6}, 1}, {200, Zeros{BumperAbove: 0.5, SideAbove: -0.3}, -1},
	} {
		r := rand.New(rand.NewPCG(41, uint64(seed)))
		n, mark := geometry.Point{X: 1}.Turn(c.degrees), truth.apply(cut)
		sum, squares := 0., 0.
		for range surveys {
			read := append([]Tie(nil), ties...)
			var heights [4]float64
			for z := range heights {
				heights[z] = heightU * r.NormFloat64()
			}
			for i := range read {
				for k, at := range []*float64{&read[i].Below.X, &read[i].Below.Y, &read[i].Above.X, &read[i].Above.Y} {
					own := math.Sqrt(read[i].U[k]*read[i].U[k] - read[i].Tilt[k]*read[i].Tilt[k]*heightU*heightU)
					*at += own*r.NormFloat64() + read[i].Tilt[k]*heights[k]
				}
			}
			m, _, _ := rigid(read, false)
			off := -c.sign * mark.Sub(m.shift).Turn(-m.theta).Sub(cut).Dot(n) // from where the mark comes out to the edge, which was there
			for z, tilt := range c.edge {
				off += tilt * heights[z]
			}
			sum, squares = sum+off, squares+off*off
		}
		mean := sum / surveys
		assert.InDelta(t, 0, mean, 0.03)
		assert.InEpsilon(t, fit.Carried(n, cut, c.edge, c.sign), squares/surveys-mean*mean, 0.03, "%+v", c)
	}
}
