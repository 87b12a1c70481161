package geometry

import "math"

// GapTube returns the least distance between the surfaces of two tubes in the same way, and the other's radius there. It is exact
// between straight stretches, within 1e-9 mm of an arc and a straight one, within 1e-6 mm of two arcs; +Inf when either tube is empty.
func (t *Tube) GapTube(other *Tube) (between Surface, radius float64) {
	between = Surface{Separation3: none(), Distance: math.Inf(1)}
	for _, pass := range [...][2][]stretch{ // the dearest last: what is near leaves most of the others no look
		{t.straight, other.straight}, {t.straight, other.bent}, {t.bent, other.straight}, {t.bent, other.bent},
	} {
		for i := range pass[1] {
			o := &pass[1][i]
			box := extentOf(o.low, o.high)
			for k := range pass[0] {
				pass[0][k].nearerTo(o, &box, &between, &radius)
			}
		}
	}
	return between, radius
}

// nearerTo replaces between by the distance from another tube's stretch, which lies in a box, where that is nearer.
func (s *stretch) nearerTo(o *stretch, box *extent, between *Surface, radius *float64) {
	limit := between.Distance + s.thick + o.thick // what the centrelines must come below
	if limit <= 0 || box.apart2(&s.low, &s.high) >= limit*limit {
		return
	}
	found := Separation3{Gap: limit}
	switch {
	case o.Radius == 0:
		s.closer(&solid{line: &Segment3{A: o.A, B: o.B}, bounds: *box}, &found)
	case s.Radius == 0:
		if o.arc(&solid{line: &Segment3{A: s.A, B: s.B}, bounds: extentOf(s.A, s.B)}, &found); found.Gap < limit {
			found = apart(found.B, found.A)
		}
	default:
		s.arcs(&o.element, &found)
	}
	if distance := found.Gap - s.thick - o.thick; found.Gap < limit && distance < between.Distance {
		*between, *radius = Surface{Separation3: found, Radius: s.thick, Distance: distance}, o.thick
	}
}

// looksAtArc is at how many places of one arc it is looked how far the other is away: more than that distance can have dips.
const looksAtArc = 32

// arcs replaces least by the separation from another arc where that is nearer. Of a place of that arc the nearest place of this one is
// known; what is sought along it is the place of the least distance, in each dip that the looks see. Beside an end of this one there may be
// two dips within a step, so the ends are asked by themselves; between them the distance is smooth.
func (p *element) arcs(o *element, least *Separation3) {
	off := func(along float64) Separation3 {
		x := o.at(along)
		s := apart(p.nearestTo(x), x)
		if s.Gap < least.Gap {
			*least = s
		}
		return s
	}
	for _, end := range [2]Point3{p.A, p.B} {
		if s := apart(end, o.nearestTo(end)); s.Gap < least.Gap {
			*least = s
		}
	}
	var gaps [looksAtArc + 1]float64
	step := o.length / looksAtArc
	for i := range gaps {
		gaps[i] = off(step * float64(i)).Gap
	}
	for i, gap := range gaps {
		if gap > gaps[max(i-1, 0)] || gap > gaps[min(i+1, looksAtArc)] || gap-step >= least.Gap {
			continue // no dip, or none that is deep enough
		}
		leastBetween(step*float64(max(i-1, 0)), step*float64(min(i+1, looksAtArc)), dipNear, func(along float64) float64 { return off(along).Gap })
	}
}

// nearestTo returns the place of an arc that is nearest to a point.
func (p *element) nearestTo(x Point3) Point3 {
	v := x.Sub(p.A.Add(p.Inward.Scale(p.Radius)))
	if turn := math.Atan2(v.Dot(p.Along), -v.Dot(p.Inward)); turn > 0 && turn*p.Radius < p.length {
		return p.at(turn * p.Radius)
	}
	if p.B.Sub(x).Norm() < p.A.Sub(x).Norm() {
		return p.B
	}
	return p.A
}
