package geometry

import "math"

// element is a piece in its place along a run. Its control triangle A, corner, B holds it all.
type element struct {
	Piece
	start, length float64 // its place along the run
	corner        Point3
}

// at returns the point s mm along the piece.
func (p *element) at(s float64) Point3 {
	if s == p.length {
		return p.B
	}
	if p.Radius == 0 {
		return p.A.Add(p.Along.Scale(s))
	}
	sin, cos := math.Sincos(s / p.Radius)
	return p.A.Add(p.Along.Scale(p.Radius * sin)).Add(p.Inward.Scale(p.Radius * (1 - cos)))
}

// part returns the piece between two places along it.
func (p *element) part(from, to float64) element {
	q := *p
	q.A, q.B, q.length = p.at(from), p.at(to), to-from
	q.corner = q.B
	if p.Radius > 0 {
		sin, cos := math.Sincos(from / p.Radius)
		q.Along = p.Along.Scale(cos).Add(p.Inward.Scale(sin))
		q.Inward = p.Inward.Scale(cos).Sub(p.Along.Scale(sin))
		q.Turn = q.length / p.Radius
		q.corner = q.A.Add(q.Along.Scale(p.Radius * math.Tan(q.Turn/2)))
	}
	return q
}

// least returns the place between from and to whose point has the least component along n. On the circle that is
// where the radius points against n, if the arc goes there, else at an end: less than a half turn, it goes nowhere behind A.
func (p *element) least(n Point3, from, to float64) float64 {
	if p.Radius > 0 {
		turn := math.Atan2(-n.Dot(p.Along), n.Dot(p.Inward))
		if s := turn * p.Radius; s > from && s < to {
			return s
		}
	}
	if p.at(to).Dot(n) < p.at(from).Dot(n) {
		return to
	}
	return from
}

// corners returns opposite corners of an axis-parallel box that holds the piece.
func (p *element) corners() (low, high Point3) {
	a, b, c := &p.A, &p.B, &p.corner
	return Point3{min(a.X, b.X, c.X), min(a.Y, b.Y, c.Y), min(a.Z, b.Z, c.Z)},
		Point3{max(a.X, b.X, c.X), max(a.Y, b.Y, c.Y), max(a.Z, b.Z, c.Z)}
}

// closer replaces least by the separation of the piece from c where that is nearer.
func (p *element) closer(c *solid, least *Separation3) {
	if p.Radius > 0 {
		p.arc(c, least)
		return
	}
	if s := c.segment(&Segment3{p.A, p.B}); s.Gap < least.Gap {
		*least = s
	}
}
