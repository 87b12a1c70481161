package route

import (
	"math"

	"bench.example/undermark/geometry"
)

// part is a piece of an obstacle without a hollow, so that along a straight line the distance from it falls and then rises.
type part struct {
	shape     geometry.Footprint
	need      float64
	low, high float64        // its heights
	min, max  geometry.Point // the box about it, grown by need
	whole     bool           // it can be passed neither above nor below
	inner     float64        // whose centreline comes nearer to its middle than this is too near to it; 0 where nobody knows
	outer     float64        // and whose stays farther is not
}

// partsOf are the pieces of the obstacles that are in a run's way.
func partsOf(q *Query) (list []part) {
	for i := range q.Obstacles {
		o := &q.Obstacles[i]
		if o.Need <= touching || o.Prism.High+o.Need <= q.Min.Z || o.Prism.Low-o.Need >= math.Max(q.Max.Z, q.From.Z) {
			continue
		}
		for _, shape := range convex(&o.Prism.Footprint) {
			p := part{shape: shape, need: o.Need, low: o.Prism.Low, high: o.Prism.High}
			p.min, p.max = shape.Bounds()
			grown := geometry.Point{X: o.Need, Y: o.Need}
			p.min, p.max = p.min.Sub(grown), p.max.Add(grown)
			p.inner, p.outer = circles(&shape)
			p.inner, p.outer = p.inner+o.Need, p.outer+o.Need
			p.whole = p.low-p.need < q.Min.Z && p.high+p.need > math.Max(q.Max.Z, q.From.Z)
			list = append(list, p)
		}
	}
	return list
}

// convex are shapes without a hollow that make up a footprint: itself, or a line's legs.
func convex(f *geometry.Footprint) []geometry.Footprint {
	if f.Shape != geometry.Line {
		return []geometry.Footprint{*f}
	}
	var legs []geometry.Footprint
	for i := 1; i < len(f.Path); i++ {
		legs = append(legs, geometry.NewLine(f.Path[i-1:i+1], f.Radius))
	}
	return legs
}

// circles are the radii of the largest circle about a shape's middle that lies in it, and of the smallest that holds it.
func circles(f *geometry.Footprint) (inner, outer float64) {
	switch f.Shape {
	case geometry.Rectangle:
		return min(f.Half.X, f.Half.Y), f.Half.Norm()
	case geometry.Line:
		return f.Radius, f.Radius + f.Path[1].Sub(f.Path[0]).Norm()/2
	}
	return f.Radius, f.Radius
}

// misses tells whether the box about a part and that of a leg are apart.
func (p *part) misses(low, high geometry.Point) bool {
	return p.min.X >= high.X || p.max.X <= low.X || p.min.Y >= high.Y || p.max.Y <= low.Y
}

// offMiddle2 is the square of the plan distance of a leg from the part's middle.
func (p *part) offMiddle2(a, b geometry.Point) float64 {
	d, w := b.Sub(a), p.shape.Middle.Sub(a)
	if n := d.Dot(d); n > 0 {
		w = w.Sub(d.Scale(min(max(w.Dot(d)/n, 0), 1)))
	}
	return w.Dot(w)
}

// gap is the plan distance of a leg from the part, 0 where they meet, and the share of the leg at which it comes that near.
func (p *part) gap(a, b geometry.Point) (gap, nearest float64) {
	flat := geometry.Prism{Footprint: p.shape}
	s := flat.GapRun([]geometry.Point3{a.At(0), b.At(0)})
	d := b.Sub(a)
	if n := d.Dot(d); n > 0 {
		nearest = min(max(s.A.Plan().Sub(a).Dot(d)/n, 0), 1)
	}
	return s.Gap, nearest
}

// reach is how far above and below the part a run must stay that is no nearer in plan than gap.
func (p *part) reach(gap float64) float64 { return math.Sqrt(max(0, p.need*p.need-gap*gap)) }

// span is between which shares of a leg the part is nearer in plan than it may be; nearest is where it comes nearest.
func (p *part) span(a, b geometry.Point, nearest float64) (from, to float64) {
	at := func(t float64) float64 { return p.shape.GapOnly(a.Add(b.Sub(a).Scale(t))) - p.need }
	return edge(at, nearest, 0), edge(at, nearest, 1)
}

// edge is where what is negative inside becomes positive towards an end, by halving: the outer side of it.
func edge(at func(t float64) float64, inside, end float64) float64 {
	if at(end) <= 0 {
		return end
	}
	for range 13 { // of 3 m to less than half a mm
		middle := (inside + end) / 2
		if at(middle) > 0 {
			end = middle
		} else {
			inside = middle
		}
	}
	return end
}
