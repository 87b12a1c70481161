package geometry

import "math"

// GapBelow returns the least plan distance from what of the tube lies lower than the height z, mm, to the footprint (the
// second); ok is false when nothing of the tube does. A tube that dips below z by part of its thickness is as wide there as
// it is at z. The gap is negative when the two overlap: then it is minus the depth of the centreline in the footprint, less
// half that width, the depth in a line being that in one of its legs. It is exact where the tube is straight, within 0.01 mm
// on its arcs.
func (t *Tube) GapBelow(z float64, f *Footprint) (least Separation, ok bool) {
	least.Gap = math.Inf(1)
	var parts []Footprint
	try := func(a, b Point3, thick float64) {
		if parts == nil {
			parts = f.convex()
		}
		for i := range parts {
			dip := dipping{leg: Segment3{a, b}, thick: thick, z: z, to: &parts[i]}
			if s, there := dip.gap(); there && s.Gap < least.Gap {
				least, ok = s, true
			}
		}
	}
	for i := range t.straight {
		if s := &t.straight[i]; s.low.Z-s.thick < z {
			try(s.a, s.b, s.thick)
		}
	}
	for i := range t.bent {
		s := &t.bent[i]
		if s.low.Z-s.thick >= z {
			continue
		}
		chords := Piece{Radius: s.radius, Turn: s.length / s.radius}.Chords(chordsWithin)
		for k := range chords {
			try(s.at(s.length*float64(k)/float64(chords)), s.at(s.length*float64(k+1)/float64(chords)), s.thick)
		}
	}
	return least, ok
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

// dipping is a straight stretch of tube, of which what lies below a height is held against a footprint without a hollow.
type dipping struct {
	leg      Segment3
	thick, z float64
	to       *Footprint
}

// width is half of how wide the tube is, below the height, at a place of its leg: all of it once its middle is below.
func (d *dipping) width(at Point3) float64 {
	above := max(0, at.Z-d.z)
	return math.Sqrt(max(0, d.thick*d.thick-above*above))
}

// narrowings is how often the search below takes a third off: 20 m come down to 1e-10 mm.
const narrowings = 80

// gap is the least one; there is false when the stretch does not dip below the height. Along it both the distance from the
// footprint and minus the width bulge down, so that thirds close in on the least.
func (d *dipping) gap() (s Separation, there bool) {
	from, to, there := d.dips()
	if !there {
		return s, false
	}
	at := func(t float64) float64 {
		p := d.leg.At(t)
		return d.to.GapOnly(p.Plan()) - d.width(p)
	}
	low, high := from, to
	for range narrowings {
		third := (high - low) / 3
		if at(low+third) <= at(high-third) {
			high -= third
		} else {
			low += third
		}
	}
	best := (low + high) / 2
	for _, end := range [2]float64{from, to} { // a least one at an end is exact
		if at(end) <= at(best) {
			best = end
		}
	}
	p := d.leg.At(best)
	return d.to.GapCircle(p.Plan(), d.width(p)), true
}

// dips is the part of the leg, by its parameter, where the tube reaches below the height.
func (d *dipping) dips() (from, to float64, there bool) {
	a, b := d.leg.A.Z-d.thick-d.z, d.leg.B.Z-d.thick-d.z
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
