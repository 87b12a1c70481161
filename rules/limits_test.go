package rules

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// What rounding may do, and no more: each limit from both sides.

func TestAMarginOfRoundingIsNone(t *testing.T) {
	for _, sense := range []Sense{Least, Most} {
		assert.Zero(t, margin(10+0.9e-9, 10, sense))
		assert.Zero(t, margin(10-0.9e-9, 10, sense))
		assert.NotZero(t, margin(10+1.1e-9, 10, sense))
		assert.NotZero(t, margin(10-1.1e-9, 10, sense))
	}
	assert.Equal(t, Clear, verdict(vehicles.Some(margin(10-0.9e-9, 10, Least)), 0, 0), "exactly what is asked is clear")
	assert.Equal(t, Foul, verdict(vehicles.Some(margin(10-1.1e-9, 10, Least)), 0, 0))
}

func TestACentrelineInsideByRounding(t *testing.T) {
	near := geometry.Separation3{Gap: 0.9e-6, N: geometry.Point3{X: 1}}
	assert.Equal(t, surface{geometry.Separation3{N: geometry.Point3{Z: -1}}, -13}, surfaceOf(near, 13))
	near.Gap = 1.1e-6
	assert.Equal(t, surface{near, near.Gap - 13}, surfaceOf(near, 13))
}

// A muffler that begins or ends at a point of the run drains it, one that stands off by more than rounding does not.
func TestHowNearAMufflerDrainsAPoint(t *testing.T) {
	path := []geometry.Point3{{X: 0, Z: -100}, {X: 400, Z: -200}, {X: 800, Z: -150}}
	on := func(leg int, from, to float64) *vehicles.LaidMuffler {
		l := geometry.Segment3{A: path[leg], B: path[leg+1]}
		length := l.B.Sub(l.A).Norm()
		return &vehicles.LaidMuffler{Leg: leg, Axis: []geometry.Point3{l.At(from / length), l.At(to / length)}}
	}
	first := path[1].Sub(path[0]).Norm()
	for off, drains := range map[float64]bool{0: true, 0.9e-6: true, 1.2e-6: false, 1: false} {
		assert.Equal(t, drains, touches(on(1, off, 100), path, 1, 1), "begins %g behind it", off)
		assert.Equal(t, drains, touches(on(0, 100, first-off), path, 1, 1), "ends %g before it", off)
	}
	assert.True(t, touches(on(1, 50, 100), path, 1, 2), "on the stretch itself")
	assert.False(t, touches(nil, path, 0, 2))
}

func TestALegThatFallsStraightDown(t *testing.T) {
	fall, degrees, ok := legTilt(geometry.Point3{}, geometry.Point3{X: 0.9e-9, Z: -50})
	assert.True(t, ok)
	assert.Equal(t, [2]float64{1e6, 90}, [2]float64{fall, degrees})
	fall, _, _ = legTilt(geometry.Point3{}, geometry.Point3{X: 1.1e-9, Z: -50})
	assert.Greater(t, fall, 1e9)
	_, _, ok = legTilt(geometry.Point3{}, geometry.Point3{X: 0.5e-9, Z: -0.9e-9})
	assert.False(t, ok, "no leg")
	fall, degrees, _ = legTilt(geometry.Point3{}, geometry.Point3{X: 300, Y: 400, Z: 50})
	assert.InDelta(t, -100, fall, 1e-9)
	assert.InDelta(t, math.Atan(0.1)*180/math.Pi, degrees, 1e-9)
}

// Two ties whose distance differs between the sides by 2.57 standard uncertainties are explained, by 2.58 not.
func TestHowMuchDifferenceTapesExplain(t *testing.T) {
	for sigmas, apart := range map[float64]int{2.57: 0, 2.58: 1} {
		ties := []survey.Tie{
			{Name: "a", Use: true, U: alike(1.5)},
			{Name: "b", Use: true, U: alike(2.5), Below: geometry.Point{X: 1000}, Above: geometry.Point{X: 1000 + 2*sigmas}},
		}
		assert.Len(t, TiesApart(vehicles.Plan{Ties: ties}), apart, "%v", sigmas)
	}
}

// The root of the 99 % point of chi-squared is that of a normal distribution; 99 % of an offset in plan
// is -2 ln 0.01 = 9.21 (NIST/SEMATECH handbook, 1.3.6.7.4, from memory).
func TestFactorsAgreeWithTheirDistributions(t *testing.T) {
	assert.InDelta(t, 2.576, sure99(), 5e-4, "JCGM 100:2008, table G.1")
	assert.InDelta(t, 0.99, math.Erf(sure99()/math.Sqrt2), 1e-4)
	assert.InDelta(t, 0.95, 0.5+math.Erf(coverage/math.Sqrt2)/2, 1e-4)
	assert.InDelta(t, 0.01, math.Exp(-Builtin().pilotLimit()/2), 1e-5)
	direct, _ := Builtin().Lookup("pilot.direct", "")
	assert.InDelta(t, survey.ChiSquared99(1), direct.Value.Value, 1e-3)
}

// Two things may seem to be 5 mm in each other, in plan or in height, before one is called wrong.
func TestHowDeepThingsMaySeemToOverlap(t *testing.T) {
	placed := func(x, low, high float64) vehicles.Placed {
		f := geometry.NewRectangle(geometry.Point{X: x}, geometry.Point{X: x + 100, Y: 100}, 0)
		return vehicles.Placed{Prism: geometry.Prism{Footprint: f, Low: low, High: high}}
	}
	for _, c := range []struct {
		x, low float64
		want   int
	}{{95.1, -80, 0}, {94.9, -80, 1}, {50, -5.1, 1}, {50, -4.9, 0}, {100, -80, 0}, {300, -80, 0}} {
		plan := vehicles.Plan{Obstructions: []vehicles.Placed{placed(0, -100, 0), placed(c.x, c.low, c.low+100)}}
		found := overlapsOf(plan)
		assert.Len(t, found, c.want, "%+v", c)
		plan.Obstructions[0], plan.Obstructions[1] = plan.Obstructions[1], plan.Obstructions[0]
		assert.Len(t, overlapsOf(plan), c.want, "%+v, the other first", c)
	}
	plan := vehicles.Plan{Obstructions: []vehicles.Placed{placed(0, -100, 0), placed(50, -100, 0)}}
	assert.Equal(t, []Overlap{{A: 0, B: 1, Depth: 50}}, overlapsOf(plan))
	plan.Obstructions[1].Assumed = true
	assert.Empty(t, overlapsOf(plan), "what has no measured height is no overlap")
}

// alike are the uncertainties of a tie whose four coordinates are as good as each other.
func alike(variance float64) [4]float64 {
	u := math.Sqrt(variance / 2)
	return [4]float64{u, u, u, u}
}
