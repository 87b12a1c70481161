package geometry

import "math"

// AlongSeen returns the place along the run, mm, that is seen nearest to a point of a picture, and how far from it that is seen, in the
// picture's mm; of several that are as near the first. see lays a picture out: it must be affine, as every view along straight lines is. A run
// without length has one place, 0. How far is good to 1e-9 mm.
func (r Run) AlongSeen(at Point, see func(Point3) Point) (along, off float64) {
	off = math.Inf(1)
	for i := range r.pieces {
		p := &r.pieces[i]
		if s, d := p.nearestSeen(at, see); d < off {
			along, off = p.start+s, d
		}
	}
	if math.IsInf(off, 1) {
		return 0, see(r.At(0)).Sub(at).Norm()
	}
	return along, off
}

// nearestSeen is the same of a piece, along it.
func (p *element) nearestSeen(at Point, see func(Point3) Point) (s, off float64) {
	from := see(p.at(0))
	if p.Radius > 0 {
		return p.nearestOnArc(seenArc{
			centre: see(p.A.Add(p.Inward.Scale(p.Radius))).Sub(at),
			forth:  see(p.A.Add(p.Along.Scale(p.Radius))).Sub(from),
			down:   from.Sub(see(p.A.Add(p.Inward.Scale(p.Radius)))),
		})
	}
	way := see(p.at(p.length)).Sub(from)
	share := 0.0
	if long := way.Dot(way); long > 0 {
		share = clamp(at.Sub(from).Dot(way)/long, 0, 1)
	}
	return share * p.length, from.Add(way.Scale(share)).Sub(at).Norm()
}

// seenArc is an arc as it is seen from a place of the picture: at a turn t it is centre + sin t forth + cos t down, part of an ellipse.
type seenArc struct{ centre, forth, down Point }

// at is the place seen at a turn, and the slope of half its squared distance there.
func (a *seenArc) at(t float64) (q Point, slope float64) {
	sin, cos := math.Sincos(t)
	q = a.centre.Add(a.forth.Scale(sin)).Add(a.down.Scale(cos))
	return q, q.Dot(a.forth.Scale(cos).Sub(a.down.Scale(sin)))
}

// arcParts is into how many parts an arc of less than a half turn is cut to find where it is nearest. Half the squared distance to an ellipse
// has at most two least places; two lie in one part only where it is as good as level between them.
const arcParts = 64

// nearestOnArc is the nearest place of an arc as it is seen: one of its ends, or where the distance stops to fall.
func (p *element) nearestOnArc(a seenArc) (s, off float64) {
	off = math.Inf(1)
	keep := func(t float64) {
		if q, _ := a.at(t); q.Norm() < off {
			s, off = min(t*p.Radius, p.length), q.Norm()
		}
	}
	keep(0)
	for i := range arcParts {
		from, to := p.Turn*float64(i)/arcParts, p.Turn*float64(i+1)/arcParts
		_, begins := a.at(from)
		_, ends := a.at(to)
		if begins < 0 && ends >= 0 {
			keep(a.turning(from, to))
		}
	}
	keep(p.Turn)
	return s, off
}

// turning is where the slope, less than 0 at from and not at to, comes to 0, to the last bit.
func (a *seenArc) turning(from, to float64) float64 {
	for {
		middle := (from + to) / 2
		if middle <= from || middle >= to {
			return middle
		}
		if _, slope := a.at(middle); slope < 0 {
			from = middle
		} else {
			to = middle
		}
	}
}
