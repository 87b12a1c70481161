package vehicles

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

// Made is what the variance of one coordinate is made of, mm^2: the terms of its reading, and apart from them what the
// hook end adds to the tape's own.
type Made struct {
	survey.Terms
	Hook float64
}

// Sum returns the whole variance, mm^2.
func (m Made) Sum() float64 { return m.Terms.Sum() + m.Hook }

// scaled is m with every part times k.
func (m Made) scaled(k float64) Made {
	t := &m.Terms
	for _, part := range []*float64{&t.Tape, &t.Read, &t.Mark, &t.Slope, &t.Height, &t.Chain, &m.Hook} {
		*part *= k
	}
	return m
}

// hooked parts what the hook end adds from the tape's own term.
func hooked(tape survey.Tape, length float64, t survey.Terms) Made {
	hook := tape.Variance(length, true) - tape.Variance(length, false)
	t.Tape -= hook
	return Made{Terms: t, Hook: hook}
}

// MarkMade is what the variance of a mark is made of, put plan mm from a zero that hangs hook mm lower.
func MarkMade(tape survey.Tape, plan, hook float64) Made {
	return hooked(tape, survey.AboveReading(plan, hook), tape.MarkTerms(plan, hook))
}

// made is what the variance of a reduced reading is made of, before any overall reading.
func (s *side) made(tape survey.Tape, axis survey.Axis, r *survey.Reading, at *spot, before *end) *Made {
	if r.Start == survey.On {
		t := tape.Terms(r.Length, false)
		t.Chain = before.U * before.U
		return &Made{Terms: t}
	}
	zero, rise, heights := s.zero(axis, r.Start), 0.0, 1
	switch {
	case s.above:
		rise = zero.Hook
	case zero.Set && at.known:
		rise, heights = zero.Hook-at.drop, 2
	}
	plan := math.Sqrt(max(0, (r.Length-rise)*(r.Length+rise)))
	made := hooked(tape, r.Length, tape.ReadingTerms(r.Length, plan, rise, heights))
	return &made
}

// Table says which list of a job a thing is in.
type Table string

// The lists whose things are measured.
const (
	Obstructions Table = "obstruction"
	Openings     Table = "opening"
	Fittings     Table = "fitting"
)

// tracer notes what the readings of one thing come to and are made of.
type tracer struct {
	table Table
	index int
	of    [2][]traced // by axis
}

type traced struct {
	end  end
	made Made
}

func (t *tracer) note(what *thing, axis survey.Axis, e end, m Made) {
	if what.table == string(t.table) && what.index == t.index {
		t.of[axis] = append(t.of[axis], traced{e, m})
	}
}

// MadeAt returns what the variances in x and in y of thing i of a table are made of at q, a point of its outline: they
// add up to the squares of EdgeU. placed is the thing as the plan has it, closure the limit it was reduced with.
func (j Job) MadeAt(table Table, i int, placed *Placed, q geometry.Point, closure float64) (x, y Made) {
	r := newReducer(&j)
	r.closure, r.trace = closure, &tracer{table: table, index: i}
	switch table {
	case Obstructions:
		r.obstructions(reduced{})
	case Openings:
		r.openings()
	case Fittings:
		r.fittings(survey.Fit{})
	}
	xs, ys := r.trace.of[survey.X], r.trace.of[survey.Y]
	if len(xs) == 0 || len(ys) == 0 {
		return x, y
	}
	if !placed.Axis {
		return largest(xs), largest(ys)
	}
	if ys[0].end.Value > ys[1].end.Value {
		ys[0], ys[1] = ys[1], ys[0]
	}
	ix, iy := placed.edgesAt(q)
	return xs[ix].whole(), ys[iy].whole()
}

// DrilledMade is MadeAt for the pilot hole as it was measured from below.
func (j Job) DrilledMade() (x, y Made) {
	r := newReducer(&j)
	r.trace = &tracer{table: "cut", index: -1}
	r.cut(survey.Fit{})
	return largest(r.trace.of[survey.X]), largest(r.trace.of[survey.Y])
}

// whole scales the parts to the variance that overall readings have left.
func (t traced) whole() Made {
	if sum := t.made.Sum(); sum > 0 {
		return t.made.scaled(t.end.U * t.end.U / sum)
	}
	return t.made
}

func largest(list []traced) Made {
	best := list[0]
	for _, t := range list {
		if t.end.U > best.end.U {
			best = t
		}
	}
	return best.whole()
}
