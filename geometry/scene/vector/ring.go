package vector

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// ringed tells whether a part is the cut, and a ring is drawn for it.
func (d *drawing) ringed(p *part) bool {
	return d.look.Screen != nil && p.Role == scene.Cut && p.Line == nil && p.Area.Shape == geometry.Round
}

// ringAt is where the ring of the cut is on the board, with the radius of its outer edge; ok is false without one.
func (d *drawing) ringAt() (middle geometry.Point, radius float64, ok bool) {
	for i := range d.parts {
		if p := &d.parts[i]; d.ringed(p) {
			return d.frame.Place(p.Area.Middle), max(p.Area.Radius/d.frame.Scale, d.look.Screen.Ring), true
		}
	}
	return middle, 0, false
}

// circle is the ring of the cut on the board; nil without one.
func (d *drawing) circle() []geometry.Point { return d.round(1) }

// ring draws the ring over all lines: whole, with a bare rim. Its outer edge is that of the cut: that is what the eye measures.
func (d *drawing) ring() {
	for i := range d.parts {
		p := &d.parts[i]
		if !d.ringed(p) || p.ink.Line.A == 0 {
			continue
		}
		_, radius, _ := d.ringAt()
		width := d.look.Screen.Width
		circle := d.round(1 - width/2/radius)
		circle = append(circle, circle[0])
		d.board.Line(circle, Stroke{Width: 1.8 * width, Colour: d.look.Paper})
		d.board.Line(circle, Stroke{Width: width, Colour: p.ink.Line})
	}
}

// inTheWay draws what lies in the ring of each thing that is foul.
func (d *drawing) inTheWay() {
	if d.look.Screen == nil {
		return
	}
	circle := d.circle()
	for i := range d.parts {
		p := &d.parts[i]
		if circle == nil || p.State != scene.Foul || p.Primitive != scene.Area || p.Code == "" {
			continue
		}
		area := p.Area
		if least := d.look.Screen.Width / 2 * d.frame.Scale; area.Shape == geometry.Line {
			area.Radius = max(area.Radius, least) // a thinner one is not seen between the ring's sides
		}
		if common := clipped(d.frame.places(outlineOf(&area, off*d.frame.Scale)), circle); len(common) > 2 {
			d.board.Face(common, d.look.Screen.Conflict)
		}
	}
}

// clipped is what of an outline lies within a convex one that has no point twice: a side made of rounding lies any way, and all would be
// outside of it (I. Sutherland, G. Hodgman, Reentrant polygon clipping, 1974). Where that
// is in several pieces, seams without width along the convex one join them.
func clipped(outline, convex []geometry.Point) []geometry.Point {
	turn := area(convex)
	for i, a := range convex {
		b := convex[(i+1)%len(convex)]
		side := func(p geometry.Point) float64 {
			return turn * ((b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X))
		}
		var in []geometry.Point
		for k, p := range outline {
			q := outline[(k+1)%len(outline)]
			from, to := side(p), side(q)
			if from >= 0 {
				in = append(in, p)
			}
			if from >= 0 != (to >= 0) {
				in = append(in, p.Add(q.Sub(p).Scale(from/(from-to))))
			}
		}
		outline = in
	}
	return outline
}

// area is what an outline encloses, less than 0 where it goes round the other way.
func area(outline []geometry.Point) (twice float64) {
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		twice += p.X*q.Y - p.Y*q.X
	}
	return twice / 2
}
