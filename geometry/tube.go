package geometry

import (
	"math"
	"slices"
)

// Tube is what a run fills: stretches of centreline, each with a radius of its own. Its zero value is empty; the Add
// methods fill it, and asking it for gaps changes nothing.
type Tube struct {
	straight, bent []stretch
	low, high      Point3 // opposite corners of a box that holds its centreline; where it has any
}

// stretch is a piece of centreline with its radius and opposite corners of a box that holds the centreline.
type stretch struct {
	element
	thick     float64
	low, high Point3
}

// Emptied makes the tube one that fills nothing, in the memory that it has.
func (t *Tube) Emptied() *Tube {
	*t = Tube{straight: t.straight[:0], bent: t.bent[:0]}
	return t
}

// AddRun adds the stretch of a run between two places along it, mm; an empty one is the point at from.
func (t *Tube) AddRun(r *Run, from, to, radius float64) {
	empty := true
	t.straight, t.bent = slices.Grow(t.straight, len(r.Legs)), slices.Grow(t.bent, len(r.pieces)-len(r.Legs))
	for i := range r.pieces {
		if part, ok := r.part(i, from, to); ok {
			t.add(part, radius)
			empty = false
		}
	}
	if empty {
		t.AddPath([]Point3{r.At(from)}, radius)
	}
}

// AddPath adds a path that is not rounded, or a single point.
func (t *Tube) AddPath(path []Point3, radius float64) {
	for i := range legCount(path) {
		leg := legOf(path, i)
		t.add(element{Piece: Piece{A: leg.A, B: leg.B}, corner: leg.B}, radius)
	}
}

func (t *Tube) add(p element, radius float64) {
	s := stretch{element: p, thick: radius}
	s.low, s.high = p.corners()
	if len(t.straight)+len(t.bent) == 0 {
		t.low, t.high = s.low, s.high
	}
	t.low = Point3{min(t.low.X, s.low.X), min(t.low.Y, s.low.Y), min(t.low.Z, s.low.Z)}
	t.high = Point3{max(t.high.X, s.high.X), max(t.high.Y, s.high.Y), max(t.high.Z, s.high.Z)}
	if p.Radius > 0 {
		t.bent = append(t.bent, s)
	} else {
		t.straight = append(t.straight, s)
	}
}

// LiesIn tells whether the centreline surely lies in an axis-parallel box, given its opposite corners: by boxes about it, so that one that
// only just does may be said not to. An empty tube does.
func (t *Tube) LiesIn(low, high Point3) bool {
	return len(t.straight)+len(t.bent) == 0 ||
		t.low.X >= low.X && t.low.Y >= low.Y && t.low.Z >= low.Z && t.high.X <= high.X && t.high.Y <= high.Y && t.high.Z <= high.Z
}

// Misses tells whether the tube surely has nothing in an axis-parallel box, given its opposite corners: by boxes about its stretches, so
// that one that only just misses it may be said not to. An empty tube does.
func (t *Tube) Misses(low, high Point3) bool {
	for _, list := range [...][]stretch{t.straight, t.bent} {
		for i := range list {
			if s := &list[i]; s.meets(&low, &high) {
				return false
			}
		}
	}
	return true
}

func (s *stretch) meets(low, high *Point3) bool {
	r := s.thick
	return s.low.X-r < high.X && s.high.X+r > low.X && s.low.Y-r < high.Y && s.high.Y+r > low.Y && s.low.Z-r < high.Z && s.high.Z+r > low.Z
}

// Gap returns the least distance of the tube's surface from the prism, with the separation of the centreline (the first)
// there and the tube's radius there. The distance is that separation's gap less the radius, so that inside the prism it
// is minus the radius. It is exact where the tube is straight, within 1e-9 mm on its arcs; +Inf for an empty tube.
func (t *Tube) Gap(p *Prism) Surface {
	least := Surface{Separation3: none(), Distance: math.Inf(1)}
	for i := range p.count() {
		s := p.solid(i)
		t.nearer(&s, &least)
	}
	return least
}

// GapPath returns the least distance of the tube's surface from a path without width, or from a single point, in the
// same way; +Inf when the path has no point.
func (t *Tube) GapPath(path []Point3) Surface {
	least := Surface{Separation3: none(), Distance: math.Inf(1)}
	for i := range legCount(path) {
		leg := legOf(path, i)
		t.nearer(&solid{line: &leg, bounds: extentOf(leg.A, leg.B)}, &least)
	}
	return least
}

// Surface is the distance of a tube's surface from something.
type Surface struct {
	Separation3         // of the centreline from it
	Radius      float64 // of the tube there
	Distance    float64 // Gap less Radius, mm
}

// nearer replaces least by the distance from c where that is nearer. The straight stretch that may come nearest goes
// first and the arcs last, so that most of the others need no look.
func (t *Tube) nearer(c *solid, least *Surface) {
	first, bound := -1, math.Inf(1)
	for i := range t.straight {
		s := &t.straight[i]
		if b := c.bounds.apart2(&s.low, &s.high); b < bound {
			first, bound = i, b
		}
	}
	if first >= 0 {
		t.straight[first].nearer(c, least)
	}
	for i := range t.straight {
		if i != first {
			t.straight[i].nearer(c, least)
		}
	}
	for i := range t.bent {
		t.bent[i].nearer(c, least)
	}
}

func (s *stretch) nearer(c *solid, least *Surface) {
	limit := least.Distance + s.thick // what the centreline must come below
	if limit <= 0 || c.bounds.apart2(&s.low, &s.high) >= limit*limit {
		return
	}
	found := Separation3{Gap: limit}
	s.closer(c, &found)
	if found.Gap < limit {
		*least = Surface{Separation3: found, Radius: s.thick, Distance: found.Gap - s.thick}
	}
}
