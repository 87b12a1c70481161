package geometry

import "math"

// GapBelow returns the least plan distance from what of the tube lies lower than the height z, mm, to the footprint (the
// second); ok is false when nothing of the tube does. A tube that dips below z by part of its thickness is as wide there as
// it is at z. The gap is negative when the two overlap: then it is minus the depth of the centreline in the footprint, less
// half that width, the depth in a line being that in one of its legs. It is exact where the tube is straight, within
// chordsWithin, 0.01 mm, on its arcs.
func (t *Tube) GapBelow(z float64, f *Footprint) (least Separation, ok bool) {
	d := dipping{z: z, least: Separation{Gap: math.Inf(1)}}
	d.low, d.high = f.Bounds()
	for i := range t.straight {
		if s := &t.straight[i]; s.low.Z-s.thick < z {
			d.stretch(s, f, 1)
		}
	}
	for i := range t.bent {
		if s := &t.bent[i]; s.low.Z-s.thick < z {
			d.stretch(s, f, s.Chords(chordsWithin))
		}
	}
	return d.least, !math.IsInf(d.least.Gap, 1)
}

// convex are footprints without a hollow that make up f: f itself, or a line's legs.
func (f *Footprint) convex() []Footprint {
	if f.Shape != Line {
		return []Footprint{*f}
	}
	var legs []Footprint
	for i := 1; i < len(f.Path); i++ {
		legs = append(legs, NewLine(f.Path[i-1:i+1], f.Radius))
	}
	return legs
}

// dipping holds what of a tube lies below a height against footprints without a hollow, and keeps the least gap.
type dipping struct {
	z         float64
	parts     []Footprint // of the footprint; nil while nobody has come near it
	low, high Point       // corners of the footprint's box
	least     Separation
}

// stretch tries a stretch, in so many chords.
func (d *dipping) stretch(s *stretch, f *Footprint, chords int) {
	length := max(s.length, s.B.Sub(s.A).Norm()) // a path that is not rounded has no length of its own
	if d.boxed(s) || d.beyond(f, s.A, s.B, length, s.thick) {
		return
	}
	if d.parts == nil {
		d.parts = f.convex()
	}
	if chords == 1 {
		d.leg(Segment3{s.A, s.B}, s.thick)
		return
	}
	places := make([]Point3, chords+1)
	for k := range places {
		places[k] = s.at(s.length * float64(k) / float64(chords))
	}
	first := min(d.nearest(places, f, s.thick), chords-1) // then most of the others need no look
	d.leg(Segment3{places[first], places[first+1]}, s.thick)
	for k := range chords {
		if k != first {
			d.leg(Segment3{places[k], places[k+1]}, s.thick)
		}
	}
}

// nearest is which of places on a tube of that thickness is nearest to the footprint, of those where it reaches below the height.
func (d *dipping) nearest(places []Point3, f *Footprint, thick float64) (at int) {
	least := math.Inf(1)
	for k, p := range places {
		if p.Z-thick >= d.z {
			continue
		}
		if gap := f.GapOnly(p.Plan()); gap < least {
			least, at = gap, k
		}
	}
	return at
}

// boxed tells whether a stretch and the footprint are in boxes so far apart in plan that it can't be as near as the least so far.
func (d *dipping) boxed(s *stretch) bool {
	x, y := over(max(d.low.X-s.high.X, s.low.X-d.high.X)), over(max(d.low.Y-s.high.Y, s.low.Y-d.high.Y))
	apart := math.Sqrt(x*x + y*y)
	return apart > 0 && apart-s.thick >= d.least.Gap
}

// beyond tells whether nothing between two places can be as near as the least so far: of a way between them no longer than the
// length no place is farther from either of them than that. A distance changes by no more than a place moves.
func (d *dipping) beyond(f *Footprint, a, b Point3, length, thick float64) bool {
	apart := (f.GapOnly(a.Plan()) + f.GapOnly(b.Plan()) - length) / 2
	return apart-thick >= d.least.Gap
}

// leg tries a straight leg of that thickness.
func (d *dipping) leg(leg Segment3, thick float64) {
	from, to, there := d.dips(leg, thick)
	if !there {
		return
	}
	length := leg.B.Sub(leg.A).Norm()
	for i := range d.parts {
		part := &d.parts[i]
		if d.beyond(part, leg.A, leg.B, length, thick) || part.leastOf(leg)-thick >= d.least.Gap {
			continue
		}
		p := leg.At(nearestDip(func(t float64) float64 {
			p := leg.At(t)
			return part.GapOnly(p.Plan()) - d.width(p, thick)
		}, from, to, length))
		if s := part.GapCircle(p.Plan(), d.width(p, thick)); s.Gap < d.least.Gap {
			d.least = s
		}
	}
}

// leastOf is what the distance of a footprint without a hollow is at least along a leg, mm: along the leg it bulges down, and lies
// above its tangents at both ends.
func (f *Footprint) leastOf(leg Segment3) float64 {
	along := leg.B.Sub(leg.A).Plan()
	end := func(p Point) (gap, slope float64) {
		gap, nearest := f.Gap(p)
		return gap, f.outward(p, nearest, gap).Dot(along)
	}
	a, down := end(leg.A.Plan())
	b, up := end(leg.B.Plan())
	switch {
	case down >= 0:
		return a
	case up <= 0:
		return b
	}
	return a + down*(b-up-a)/(down-up)
}

// width is half of how wide the tube is, below the height, at a place of its centreline: all of it once its middle is below.
func (d *dipping) width(at Point3, thick float64) float64 {
	above := max(0, at.Z-d.z)
	return math.Sqrt(max(0, thick*thick-above*above))
}

// dips is the part of a leg, by its parameter, where the tube reaches below the height.
func (d *dipping) dips(leg Segment3, thick float64) (from, to float64, there bool) {
	a, b := leg.A.Z-thick-d.z, leg.B.Z-thick-d.z
	switch {
	case a >= 0 && b >= 0:
		return 0, 0, false
	case a >= 0:
		return a / (a - b), 1, true
	case b >= 0:
		return 0, a / (a - b), true
	}
	return 0, 1, true
}

// nearestDip is the parameter between two of a leg of so many mm where the gap is least. Along the leg both the distance from a
// footprint without a hollow and minus the width bulge down, and so does the gap: a golden section closes in on the least.
func nearestDip(gap func(t float64) float64, from, to, length float64) float64 {
	best := leastBetween(from, to, dipWithin/length, gap)
	for _, end := range [2]float64{from, to} { // a least one at an end is exact
		if gap(end) <= gap(best) {
			best = end
		}
	}
	return best
}

// leastBetween is where between two places a value that has one dip there is least, by the golden section, to within so much.
func leastBetween(from, to, within float64, value func(float64) float64) float64 {
	const part = 1 / math.Phi
	p, q := to-part*(to-from), from+part*(to-from)
	atP, atQ := value(p), value(q)
	for to-from > within {
		if atP <= atQ {
			to, q, atQ = q, p, atP
			p = to - part*(to-from)
			atP = value(p)
		} else {
			from, p, atP = p, q, atQ
			q = from + part*(to-from)
			atQ = value(q)
		}
	}
	return (from + to) / 2
}
