package survey

import (
	"fmt"
	"math"
)

// Slope is where the tape's zero hangs. Not set, the tape was held level.
type Slope struct {
	Hook float64 // drop of the tape's zero, mm
	Set  bool
}

// Reduce returns the plan distance of a reading from its hook, taken from below, and its standard uncertainty,
// both mm: sqrt(L^2 - (h - p)^2) with h the drop of the zero and p the drop of the point measured. A reading taken to what
// lies behind the zero is negative, and so is its plan distance.
//
// pKnown false with a slope set: nobody knows the slope, the reading stands as it is and is loose. It is an error
// when the heights differ by the whole reading or more, unless they do not differ.
func (t Tape) Reduce(length float64, s Slope, p float64, pKnown bool) (plan, u float64, loose bool, err error) {
	g := t.Gauge()
	return g.Reduce(length, s, p, pKnown)
}

// Reduce is that of the Tape.
func (g *Gauge) Reduce(length float64, s Slope, p float64, pKnown bool) (plan, u float64, loose bool, err error) {
	if !s.Set || !pKnown {
		return length, math.Sqrt(g.variance(length, true)), s.Set, nil
	}
	plan, u, err = g.reduce(length, s.Hook-p, 2)
	return plan, u, false, err
}

// ReduceAbove returns the plan distance of a reading from its hook taken from above, where the zero lies
// hookAbove below the finished floor and nothing else has a height, and its standard uncertainty, both mm.
// Errors are as for Reduce.
func (t Tape) ReduceAbove(length, hookAbove float64) (plan, u float64, err error) {
	g := t.Gauge()
	return g.ReduceAbove(length, hookAbove)
}

// ReduceAbove is that of the Tape.
func (g *Gauge) ReduceAbove(length, hookAbove float64) (plan, u float64, err error) {
	return g.reduce(length, hookAbove, 1)
}

func (g *Gauge) reduce(length, rise float64, heights int) (plan, u float64, err error) {
	up := math.Abs(rise)
	if up >= math.Abs(length) && up != 0 {
		return 0, 0, fmt.Errorf("the tape reads %s, but its ends are %s apart in height: measure again, "+
			"or correct the heights", InMM(length), InMM(up))
	}
	plan = length
	if rise != 0 {
		plan = math.Copysign(math.Sqrt((length-rise)*(length+rise)), length)
	}
	return plan, math.Sqrt(g.readingVariance(length, plan, rise, heights)), nil
}

// AboveReading returns what a tape whose zero lies hook below the surface must say to land on plan: the root of
// plan^2 + hook^2, mm, negative for a place behind the zero.
func AboveReading(plan, hook float64) float64 { return math.Copysign(math.Hypot(plan, hook), plan) }

// Lean returns by how much a plan distance grows for each mm that its zero, rise mm below the point measured, hangs lower
// than was said: -(h - p)/s, s the plan distance, negative behind the zero. Source: the derivative of Reduce's formula.
func Lean(plan, rise float64) float64 {
	if rise == 0 {
		return 0
	}
	return -rise / math.Copysign(math.Max(math.Abs(plan), leastPlan), plan)
}

// MarkU returns the standard uncertainty of a mark put plan mm from the tape's zero, which lies hook below it,
// mm. At plan 0 over a hook that is not 0 the tape says nothing about plan: the result is huge, but finite.
func (t Tape) MarkU(plan, hook float64) float64 { return t.MarkTerms(plan, hook).U() }

// MarkTerms returns the terms whose sum is the square of MarkU.
func (t Tape) MarkTerms(plan, hook float64) Terms {
	g := t.Gauge()
	return g.markTerms(plan, hook)
}

func (g *Gauge) markTerms(plan, hook float64) Terms {
	m := g.readingTerms(AboveReading(plan, hook), plan, hook, 1)
	m.Mark = g.mark
	return m
}

// MarkVariance returns the variance of a mark put where a level tape from its hook says length, mm^2: a third of
// mpe^2 + read^2 + mark^2.
func (g *Gauge) MarkVariance(length float64) float64 { return g.variance(length, true) + g.mark }
