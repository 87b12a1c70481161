package field

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// outline returns an outline of any form; parallel ones, and those without width, are where the sides of a hull meet.
func outline(r *rand.Rand) geometry.Footprint {
	at := pt(r.NormFloat64()*200, r.NormFloat64()*200)
	size := pt(float64(r.IntN(4))*100, float64(r.IntN(4))*60)
	switch r.IntN(5) {
	case 0:
		return geometry.NewRound(at, float64(r.IntN(3))*30)
	case 1:
		return geometry.NewLine(wander(r, at, 2+r.IntN(3), 300), float64(r.IntN(3))*10)
	case 2:
		return geometry.NewRectangle(at, at.Add(size), float64(r.IntN(24))*15)
	case 3:
		return geometry.NewRectangle(at, at.Add(size), float64(r.IntN(24))*15+r.NormFloat64()*1e-9)
	default:
		return geometry.NewRectangle(at, at.Add(size), r.Float64()*360)
	}
}

// What is taken apart is what it was: on the sides' own lines too, where rounding has one side of a hull before the other.
func TestCarriedTakenApartIsWhatItWas(t *testing.T) {
	r := seeded(t, 11)
	for range 3000 {
		c := Carried{Body: outline(r), Against: outline(r), Need: r.Float64() * 30, Lift: -1}
		if r.IntN(2) == 0 {
			c.Lift = float64(r.IntN(3)) * 20
		}
		m := NewMargins(Limits{Max: pt(1, 1), EdgeNeed: math.Inf(-1), Constraints: []Constraint{c}})
		for range 40 {
			p := pt(r.NormFloat64()*300, r.NormFloat64()*300)
			if h := m.parts[r.IntN(len(m.parts))].hull; h != nil && r.IntN(2) == 0 {
				f := h.sides[r.IntN(h.count)]
				off, aside := f.off, f.aside+(r.Float64()*4-2)*f.half
				p = pt(h.x+off*f.nx-aside*f.ny, h.y+off*f.ny+aside*f.nx)
			}
			require.InDelta(t, c.Margin(p), m.At(p).Margin, 1e-9, "%+v at %v", c, p)
		}
	}
}

func TestContainedTakenApartIsWhatItWas(t *testing.T) {
	r := seeded(t, 12)
	for range 300 {
		c := Contained{outline(r), pt(-400, -300), pt(500, 600), r.Float64() * 30}
		m := NewMargins(Limits{Max: pt(1, 1), EdgeNeed: math.Inf(-1), Constraints: []Constraint{c}})
		for range 20 {
			p := pt(r.NormFloat64()*300, r.NormFloat64()*300)
			require.InDelta(t, c.Margin(p), m.At(p).Margin, 1e-9)
		}
	}
}

// A margin that is convex is never above the line between two places: ceilings rest on it.
func TestCarriedMarginsAreConvex(t *testing.T) {
	r := seeded(t, 13)
	for range 3000 {
		for _, s := range (Carried{Body: outline(r), Against: outline(r), Lift: float64(r.IntN(3)*40 - 40)}).appendParts(nil) {
			if s.kind == other {
				continue
			}
			p, q := pt(r.NormFloat64()*300, r.NormFloat64()*300), pt(r.NormFloat64()*300, r.NormFloat64()*300)
			a, b := s.at(p.X, p.Y), s.at(q.X, q.Y)
			middle := p.Add(q).Scale(0.5)
			require.LessOrEqual(t, s.at(middle.X, middle.Y), (a+b)/2+1e-9)
		}
	}
}

func TestTheBestWayIsNamed(t *testing.T) {
	r := seeded(t, 14)
	named := 0
	for range 60 {
		l := mixed(r, 8)
		m := NewMargins(l)
		for range 40 {
			p := pt(r.Float64()*3200, r.Float64()*1780-890)
			way, margin := m.Way(p)
			require.InDelta(t, bestOf(l.Ways, p), margin, 1e-9)
			if len(l.Ways) == 0 {
				assert.Equal(t, -1, way)
				continue
			}
			named++
			require.InDelta(t, margin, leastOf(l.Ways[way], p), 1e-9)
		}
	}
	assert.Greater(t, named, 100)
}

func TestAWayThatAsksNothingIsMetAnywhere(t *testing.T) {
	l := Limits{Min: pt(0, 0), Max: pt(100, 100), EdgeNeed: 10}
	l.Ways = [][]Constraint{{Contained{geometry.NewRound(pt(0, 0), 90), l.Min, l.Max, 0}}, {}}
	assert.InDelta(t, 40, NewMargins(l).Roomiest(0.01).Margin, 0.01)
	l.Ways = l.Ways[:1]
	assert.InDelta(t, -40, NewMargins(l).Roomiest(0.01).Margin, 0.01)
}
