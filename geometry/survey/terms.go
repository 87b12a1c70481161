package survey

import "math"

// Terms are the variances, mm^2, that add up to the variance of one coordinate: what an error budget draws.
type Terms struct {
	Tape   float64 // the tape's maximum permissible error
	Read   float64 // reading it
	Mark   float64 // putting the mark
	Slope  float64 // what the slope makes of the first two beyond themselves
	Height float64 // the heights the slope was worked out from
	Chain  float64 // the reading this one runs on from
}

// Sum returns the whole variance, mm^2.
func (m Terms) Sum() float64 { return m.Tape + m.Read + m.Mark + m.Slope + m.Height + m.Chain }

// U returns the standard uncertainty, mm.
func (m Terms) U() float64 { return math.Sqrt(m.Sum()) }

// Terms returns the terms of a level reading of length mm; hook as for a tape's permissible error.
func (t Tape) Terms(length float64, hook bool) Terms {
	g := t.Gauge()
	return g.terms(length, hook)
}

func (g *Gauge) terms(length float64, hook bool) Terms {
	return Terms{Tape: uniform(g.mpe(length, hook)), Read: g.read}
}

// ReadingTerms returns the terms of a reading from its hook that reduces to plan, its ends being rise mm apart
// in height, which rests on so many measured heights: two from below, one from above. Their sum is the square of
// the u of Reduce. With L^2 = plan^2 + rise^2, the (L/plan)^2 of the formula is 1 + (rise/plan)^2.
func (t Tape) ReadingTerms(length, plan, rise float64, heights int) Terms {
	g := t.Gauge()
	return g.readingTerms(length, plan, rise, heights)
}

func (g *Gauge) readingTerms(length, plan, rise float64, heights int) Terms {
	m := g.terms(length, true)
	k := steepness(plan, rise)
	m.Slope = k * (m.Tape + m.Read)
	m.Height = k * float64(heights) * g.height
	return m
}

// variance is the sum of terms, readingVariance that of readingTerms: most readings are asked for that alone.
func (g *Gauge) variance(length float64, hook bool) float64 {
	return uniform(g.mpe(length, hook)) + g.read
}

func (g *Gauge) readingVariance(length, plan, rise float64, heights int) float64 {
	level, k := g.variance(length, true), steepness(plan, rise)
	return level + k*level + k*float64(heights)*g.height
}

// leastPlan is the shortest plan distance for which a slope's effect is worked out, mm. Straight above or below
// its zero a tape says nothing about plan, and the uncertainty grows beyond bounds: nearer than this it is held
// at its value here, huge but finite, so that everything resting on it is doubtful.
const leastPlan = 1e-3

// steepness is (rise/plan)^2, 0 for a level tape of any length.
func steepness(plan, rise float64) float64 {
	if rise == 0 {
		return 0
	}
	ratio := rise / math.Max(math.Abs(plan), leastPlan)
	return ratio * ratio
}
