package geometry

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// bent is an arc from a place, that begins along a direction and bends towards another.
func bent(a, along, towards Point3, radius, turn float64) element {
	along = unit3(along)
	towards = unit3(towards.Sub(along.Scale(towards.Dot(along))))
	b := a.Add(along.Scale(radius * math.Sin(turn))).Add(towards.Scale(radius * (1 - math.Cos(turn))))
	return element{Piece: Piece{A: a, B: b, Along: along, Inward: towards, Radius: radius, Turn: turn}, length: radius * turn}
}

// walked is the least distance from places of one arc, that many, to another.
func walked(p, o *element, places int) float64 {
	least := math.Inf(1)
	for i := range places + 1 {
		x := o.at(o.length * float64(i) / float64(places))
		least = min(least, p.nearestTo(x).Sub(x).Norm())
	}
	return least
}

// The distance along a bend may dip twice within a step of the looks where it comes past the other's end.
func TestABendPastTheEndOfAnother(t *testing.T) {
	for _, c := range [][2]element{
		{
			bent(Point3{52.138, 170.8126, 164.9904}, Point3{-0.263715, -0.520631, 0.812033}, Point3{-0.597218, 0.749205, 0.286397}, 54.3194, 2.568812),
			bent(Point3{56.4317, 173.3838, 184.6908}, Point3{0.418252, 0.388246, -0.821176}, Point3{-0.257753, -0.816158, -0.517155}, 123.6752, 2.638106),
		},
		{
			bent(Point3{92.1862, 39.155, 160.579}, Point3{-0.35227, -0.728057, -0.58808}, Point3{-0.432098, 0.683901, -0.587852}, 56.4023, 0.344939),
			bent(Point3{155.258, 149.9612, 13.1798}, Point3{-0.765154, -0.640029, 0.07001}, Point3{-0.173598, 0.309792, 0.934822}, 128.6979, 1.915562),
		},
	} {
		for k := range 2 {
			p, o := &c[k], &c[1-k]
			found := Separation3{Gap: math.Inf(1)}
			p.arcs(o, &found)
			assert.LessOrEqual(t, found.Gap, walked(p, o, 4000)+1e-6)
			assert.InDelta(t, found.Gap, found.B.Sub(found.A).Norm(), 1e-9)
			assert.InDelta(t, 0, p.nearestTo(found.A).Sub(found.A).Norm()+o.nearestTo(found.B).Sub(found.B).Norm(), 1e-9, "each on its own")
		}
	}
}

// Oracle: no place of any bend is nearer to another one than is said.
func TestNoPlaceOfABendIsNearerToAnother(t *testing.T) {
	r := rand.New(rand.NewPCG(16, 16))
	way := func() Point3 { return Point3{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()} }
	drawn := func() element {
		return bent(Point3{200 * r.Float64(), 200 * r.Float64(), 200 * r.Float64()}, way(), way(), 50+100*r.Float64(), 0.3+2.6*r.Float64())
	}
	for range 20000 {
		p, o := drawn(), drawn()
		found := Separation3{Gap: math.Inf(1)}
		p.arcs(&o, &found)
		assert.LessOrEqual(t, found.Gap, walked(&p, &o, 100)+1e-6, "%v and %v", p, o)
	}
}

// Oracle: a bend seen almost edge on comes near a place of the picture twice, within little of its turn, and the nearer one is named.
func TestNoPlaceOfABendIsSeenNearer(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 16))
	for range 20000 {
		turn, thin := 0.3+2.7*r.Float64(), math.Pow(10, -3*r.Float64())
		p := element{Piece: Piece{Radius: 100, Turn: turn}, length: 100 * turn}
		sin, cos := math.Sincos(2 * math.Pi * r.Float64())
		a := seenArc{
			centre: Point{200 * (r.Float64() - 0.5), 600 * thin * (r.Float64() - 0.5)},
			forth:  Point{100 * cos, 100 * thin * sin}, down: Point{-100 * sin, 100 * thin * cos},
		}
		s, off := p.nearestOnArc(a)
		named, _ := a.at(s / p.Radius)
		assert.InDelta(t, off, named.Norm(), 1e-9)
		least := off
		for i := range 101 {
			q, _ := a.at(turn * float64(i) / 100)
			least = min(least, q.Norm())
		}
		assert.InDelta(t, off, least, 1e-9, "%+v", a)
	}
}
