package rules

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// surface is the distance of a run's surface from something and where it is taken.
type surface struct {
	geometry.Separation3
	value float64
}

// inside is the distance, mm, below which a centreline counts as inside what it touches: a thousand times the 1e-9 to which
// distances are good, as the direction of a shorter one is made of rounding. Its separation is then straight down.
const inside = 1e-6

// surfaceOf is the surface at a radius about a centreline, given the centreline's separation.
func surfaceOf(c geometry.Separation3, radius float64) surface {
	if c.Gap < inside {
		c.Gap, c.N = 0, geometry.Point3{Z: -1}
	}
	return surface{c, c.Gap - radius}
}

// nearer keeps the nearer of two surfaces, given a centreline's separation and its radius.
func (s *surface) nearer(c geometry.Separation3, radius float64) {
	if c.Gap-radius < s.value {
		*s = surfaceOf(c, radius)
	}
}

// stretchOf is what a run fills between two places along it, mm: its pipe but where the muffler is it, and the muffler; nothing where the first lies behind the second.
func stretchOf(r *vehicles.LaidRun, from, to float64) *geometry.Tube {
	return filledBy(&geometry.Tube{}, r, from, to)
}

// filledBy is that in the memory of an empty tube.
func filledBy(t *geometry.Tube, r *vehicles.LaidRun, from, to float64) *geometry.Tube {
	m := r.Muffler
	pipe := func(from, to float64) {
		if from <= to {
			t.AddRun(&r.Line, from, to, r.Radius)
		}
	}
	if m == nil {
		pipe(from, to)
		return t
	}
	pipe(from, min(to, m.Begin))
	pipe(max(from, m.End), to)
	if begin, end := max(from, m.From), min(to, m.To); begin < end {
		axis, length := geometry.Segment3{A: m.Axis[0], B: m.Axis[1]}, m.To-m.From
		t.AddPath([]geometry.Point3{axis.At((begin - m.From) / length), axis.At((end - m.From) / length)}, m.Radius)
	}
	return t
}

// AtStub is how much of a run at its stub is as near to another as the heater puts it, mm along the run. Source: the findings'
// contract.
const AtStub = 150

// apart is the distance between what two runs fill.
func apart(p, q *geometry.Tube) surface {
	between, _ := p.GapTube(q)
	return surfaceBetween(between)
}

// surfaceBetween is a surface given the distance of two tubes.
func surfaceBetween(s geometry.Surface) surface {
	between := surfaceOf(s.Separation3, 0)
	between.value = s.Distance
	if s.Gap < inside {
		between.value -= s.Gap
	}
	return between
}

// lowest returns the lowest point of the run's axis where its surface hangs lowest, and how far the surface is below.
func lowest(r *vehicles.LaidRun) (geometry.Point3, float64) {
	if r.Muffler == nil {
		return r.Line.Lowest(), r.Radius
	}
	at, below := r.Line.LowestOn(0, r.Muffler.Begin), r.Radius
	if p := r.Line.LowestOn(r.Muffler.End, r.Line.Length()); p.Z < at.Z {
		at = p
	}
	for _, p := range r.Muffler.Axis {
		if p.Z-r.Muffler.Radius < at.Z-below {
			at, below = p, r.Muffler.Radius
		}
	}
	return at, below
}

// highest returns the same of the highest point behind the run's first bend; ok is false when it has none.
func highest(r *vehicles.LaidRun) (at geometry.Point3, above float64, ok bool) {
	leg, ok := r.Line.FirstBend()
	if !ok {
		return at, 0, false
	}
	from, to, m := r.Line.Legs[leg].Begin, r.Line.Length(), r.Muffler
	if m == nil || m.Leg < leg {
		return r.Line.HighestOn(from, to), r.Radius, true
	}
	at, above = r.Line.HighestOn(from, max(from, m.Begin)), r.Radius
	if p := r.Line.HighestOn(m.End, to); p.Z > at.Z {
		at = p
	}
	for _, p := range m.Axis {
		if p.Z+m.Radius > at.Z+above {
			at, above = p, m.Radius
		}
	}
	return at, above, true
}
