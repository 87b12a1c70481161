package rules

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// closureLimit is the largest square of a misclosure over its variance that the tapes explain, by the book.
func (b *Book) closureLimit() float64 {
	if rule := b.find("chain.closure", ""); rule != nil && rule.Value.Set {
		return rule.Value.Value
	}
	return vehicles.ClosureLimit()
}

// closures judges every chain that has an overall reading: the square of its misclosure over that of its standard
// uncertainty, a number like that of ties.fit. Up to the limit the misclosure has been spread over the chain; above it
// the finding is doubtful, never foul, and what rests on the chain is held back.
func (b *bench) closures() {
	for i := range b.plan.Closures {
		c := &b.plan.Closures[i]
		f := b.open("chain.closure", b.book.find("chain.closure", ""), the(TheSurvey), b.chainEnd(c))
		f.Value = c.Statistic
		if !f.Required.Set {
			f.Required = vehicles.Some(vehicles.ClosureLimit())
		}
		b.close(f, 0)
		if !c.Closes {
			f.Verdict, f.Why = Doubtful, misclosed(c)
		}
	}
}

// chainEnd is the thing a chain ends with.
func (b *bench) chainEnd(c *vehicles.Closure) Thing {
	if c.Table == vehicles.Fittings {
		return b.fitting(c.Index)
	}
	return b.obstruction(c.Index)
}

// misclosed says by how much a chain misses its overall reading.
func misclosed(c *vehicles.Closure) string {
	axis := [...]string{"x", "y"}[c.Axis]
	return fmt.Sprintf("in %s the readings come out %s mm from the overall one, the tapes explain %s mm: measure them again",
		axis, survey.Format(math.Abs(c.Misclosure), survey.Millimetres), survey.Format(chainExplains*c.U, survey.Millimetres))
}

// chainExplains is how many standard uncertainties hold 99 % of misclosures: the root of 6.635, the 99 % point of
// chi-squared with one degree of freedom.
const chainExplains = 2.576
