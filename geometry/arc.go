package geometry

import "math"

// look is what a convex thing looks like from one point of an arc: how far away it is, and the direction away from it as
// the arc's own frame has it. No point of the thing lies beyond the plane through its nearest point across that
// direction, so the distance of any other point of the arc is at least that from the plane.
type look struct {
	turn, sin, cos float64 // where on the arc, radians from its start
	gap            float64
	along, inward  float64 // the unit direction away from the thing, in the arc's frame
	slope          float64 // of the distance, over radius and turn
}

// looks measures at a point of the arc and replaces least where that is nearer.
func (p *element) looks(c *solid, turn float64, least *Separation3) look {
	o := look{turn: turn}
	o.sin, o.cos = math.Sincos(turn)
	x := p.A.Add(p.Along.Scale(p.Radius * o.sin)).Add(p.Inward.Scale(p.Radius * (1 - o.cos)))
	if turn*p.Radius >= p.length {
		x = p.B
	}
	s := apart(x, c.near(x))
	if s.Gap < least.Gap {
		*least = s
	}
	o.gap, o.along, o.inward = s.Gap, -s.N.Dot(p.Along), -s.N.Dot(p.Inward)
	o.slope = o.rise(&o)
	return o
}

// rise is the slope, at another point, of the height over the plane of o.
func (o *look) rise(at *look) float64 { return o.along*at.cos + o.inward*at.sin }

// height is that of another point over the plane of o, over the radius and but for a constant.
func (o *look) height(at *look) float64 { return o.along*at.sin - o.inward*at.cos }

// floor returns the least height over the plane of o that any point of the arc from f to t has. Along a circle that
// height is a sine, least between the two where it falls at f and rises at t, else at one of them.
func (o *look) floor(radius float64, f, t *look) float64 {
	least := min(o.height(f), o.height(t))
	if o.rise(f) < 0 && o.rise(t) > 0 {
		least = -math.Sqrt(o.along*o.along + o.inward*o.inward)
	}
	return o.gap + radius*(least-o.height(o))
}

// arc looks for the nearest point of an arc, which turns by less than a half turn.
func (p *element) arc(c *solid, least *Separation3) {
	f := p.looks(c, 0, least)
	t := p.looks(c, p.Turn, least)
	p.between(c, &f, &t, 0, least)
}

// between looks for it between two points of the arc. Where the planes at both say that nothing nearer can be there, it
// is done; else it looks where the slope seems to change its sign, every third time in the middle, and on both sides.
func (p *element) between(c *solid, f, t *look, depth int, least *Separation3) {
	if least.Gap == 0 || max(f.floor(p.Radius, f, t), t.floor(p.Radius, f, t)) >= least.Gap-accuracy {
		return
	}
	middle := (f.turn + t.turn) / 2
	turn := middle
	if depth%3 < 2 && f.slope < 0 && t.slope > 0 {
		turn = f.turn + (t.turn-f.turn)*f.slope/(f.slope-t.slope)
	}
	if turn <= f.turn || turn >= t.turn { // rounding put it on an end
		turn = middle
	}
	if turn <= f.turn || turn >= t.turn {
		return
	}
	m := p.looks(c, turn, least)
	if m.slope > 0 { // the promising side first
		p.between(c, f, &m, depth+1, least)
		p.between(c, &m, t, depth+1, least)
		return
	}
	p.between(c, &m, t, depth+1, least)
	p.between(c, f, &m, depth+1, least)
}
