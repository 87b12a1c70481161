package geometry

import "math"

// piece is a straight piece (radius 0) or an arc of a run. Its control triangle a, corner, b holds it all.
type piece struct {
	start, length float64 // its place along the run
	a, b, corner  Point3
	along, inward Point3 // unit vectors at a: onwards, and towards the arc's centre
	radius        float64
}

// at returns the point s mm along the piece.
func (p *piece) at(s float64) Point3 {
	if s == p.length {
		return p.b
	}
	if p.radius == 0 {
		return p.a.Add(p.along.Scale(s))
	}
	sin, cos := math.Sincos(s / p.radius)
	return p.a.Add(p.along.Scale(p.radius * sin)).Add(p.inward.Scale(p.radius * (1 - cos)))
}

// part returns the piece between two places along it.
func (p *piece) part(from, to float64) piece {
	q := *p
	q.a, q.b, q.length = p.at(from), p.at(to), to-from
	q.corner = q.b
	if p.radius > 0 {
		sin, cos := math.Sincos(from / p.radius)
		q.along = p.along.Scale(cos).Add(p.inward.Scale(sin))
		q.inward = p.inward.Scale(cos).Sub(p.along.Scale(sin))
		q.corner = q.a.Add(q.along.Scale(p.radius * math.Tan(q.length/p.radius/2)))
	}
	return q
}

// least returns the place between from and to whose point has the least component along n. On the circle that is
// where the radius points against n, if the arc goes there, else at an end.
func (p *piece) least(n Point3, from, to float64) float64 {
	if p.radius > 0 {
		turn := math.Atan2(-n.Dot(p.along), n.Dot(p.inward))
		if turn < 0 {
			turn += 2 * math.Pi
		}
		if s := turn * p.radius; s > from && s < to {
			return s
		}
	}
	if p.at(to).Dot(n) < p.at(from).Dot(n) {
		return to
	}
	return from
}

// corners returns opposite corners of an axis-parallel box that holds the piece.
func (p *piece) corners() (low, high Point3) {
	a, b, c := &p.a, &p.b, &p.corner
	return Point3{min(a.X, b.X, c.X), min(a.Y, b.Y, c.Y), min(a.Z, b.Z, c.Z)},
		Point3{max(a.X, b.X, c.X), max(a.Y, b.Y, c.Y), max(a.Z, b.Z, c.Z)}
}

// closer replaces least by the separation of the piece from c where that is nearer.
func (p *piece) closer(c *solid, least *Separation3) {
	if p.radius > 0 {
		p.arc(c, least)
		return
	}
	if s := c.segment(&Segment3{p.a, p.b}); s.Gap < least.Gap {
		*least = s
	}
}
