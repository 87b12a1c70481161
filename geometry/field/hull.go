package field

import (
	"math"

	"bench.example/undermark/geometry"
)

// hull is where the place may not be for one convex piece to be clear of another that is carried with the place: the
// pieces' rectangles, a leg's or a point's without width, added up. It is convex and symmetric about its middle, so half
// of its sides say it all. Lifted, what is carried passes at another height.
type hull struct {
	x, y   float64 // its middle
	sides  [4]flank
	count  int     // of the sides
	radius float64 // round the rectangles, mm
	need   float64
	lift   float64 // between the two in height, mm; negative when they are at one height
}

// flank is a side of a hull and the one opposite it. Its middle is off along (nx, ny) and aside to the left of that.
type flank struct {
	nx, ny, off, aside, half float64
}

// core is a rectangle about a middle, turned, that a piece is within a radius of.
type core struct {
	middle   geometry.Point
	half     geometry.Point
	sin, cos float64
	radius   float64
}

// cores returns the convex pieces of a footprint.
func cores(f geometry.Footprint) (list []core) {
	switch f.Shape {
	case geometry.Round:
		return []core{{middle: f.Middle, cos: 1, radius: f.Radius}}
	case geometry.Line:
		for i := 1; i < len(f.Path); i++ {
			list = append(list, between(f.Path[i-1], f.Path[i], f.Radius))
		}
		return list
	}
	sin, cos := geometry.SinCos(f.Turn)
	return []core{{middle: f.Middle, half: f.Half, sin: sin, cos: cos}}
}

// between is the core of a leg.
func between(a, b geometry.Point, radius float64) core {
	c, d := core{middle: a.Add(b).Scale(0.5), cos: 1, radius: radius}, b.Sub(a)
	if length := d.Norm(); length > 0 {
		c.cos, c.sin, c.half.X = d.X/length, d.Y/length, length/2
	}
	return c
}

// newHull returns what a body, whose middle is carried from where it is when the place is the datum, leaves beside a thing.
func newHull(body, thing core, need, lift float64) *hull {
	h := &hull{
		x: thing.middle.X - body.middle.X, y: thing.middle.Y - body.middle.Y,
		radius: body.radius + thing.radius, need: need, lift: lift,
	}
	// How the thing lies to the body; both see the same signs, so that their sides follow each other round without a gap.
	cos, sin := body.cos*thing.cos+body.sin*thing.sin, body.cos*thing.sin-body.sin*thing.cos
	h.add(body, thing, cos, sin, true)
	h.add(thing, body, cos, -sin, body.half.X == 0 || body.half.Y == 0)
	return h
}

// add adds the sides that are parallel to those of a; b lies to it at an angle. Sides without length count only where the
// others don't close the hull.
func (h *hull) add(a, b core, cos, sin float64, all bool) {
	forward, left := math.Copysign(1, cos), math.Copysign(1, sin)
	for k, half := range [2]float64{a.half.Y, a.half.X} {
		if half == 0 && !all {
			continue
		}
		f := flank{nx: a.cos, ny: a.sin, half: half}
		// Along the side's normal b reaches farthest with one of its corners, which lies aside of its middle.
		f.off = a.half.X + math.Abs(cos)*b.half.X + math.Abs(sin)*b.half.Y
		f.aside = forward*sin*b.half.X - left*cos*b.half.Y
		if k == 1 {
			f.nx, f.ny = -a.sin, a.cos
			f.off = a.half.Y + math.Abs(sin)*b.half.X + math.Abs(cos)*b.half.Y
			f.aside = -left*cos*b.half.X + forward*sin*b.half.Y
		}
		h.sides[h.count] = f
		h.count++
	}
}

// margin returns the margin of a place.
func (h *hull) margin(x, y float64) float64 {
	dx, dy := x-h.x, y-h.y
	most, out := math.Inf(-1), math.Inf(1)
	for i := range h.count {
		f := &h.sides[i]
		off, aside := dx*f.nx+dy*f.ny, dy*f.nx-dx*f.ny
		if off < 0 {
			off, aside = -off, -aside
		}
		off -= f.off
		most = max(most, off)
		if off > -slack { // a side that goes straight on from another may be the nearest where rounding has it behind
			aside = max(0, math.Abs(aside-f.aside)-f.half)
			out = min(out, off*off+aside*aside)
		}
	}
	if most > 0 {
		most = math.Sqrt(out)
	}
	return h.over(most - h.radius)
}

// over is the margin where the gap in plan is so much.
func (h *hull) over(gap float64) float64 {
	if h.lift >= 0 {
		gap = max(gap, 0)
		gap = math.Sqrt(gap*gap + h.lift*h.lift)
	}
	return gap - h.need
}
