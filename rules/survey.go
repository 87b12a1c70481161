package rules

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// PointsDiffer is what is wrong where matching points do not fit each other.
const PointsDiffer = "points differ by more than their tapes explain"

// The rules of the survey: whether the readings agree with each other. What rests on those that don't is held back.
var surveyRules = []*Rule{
	{
		ID: "ties.fit", Unit: Pure, Sense: Most, Weight: Nuisance, AtCut: true, HoldsBack: true,
		Word:  "matching points",
		Title: "Ties agree with each other",
		Ask: fmt.Sprintf("Left empty, it is the 99 %% point of chi-squared with 2n - 3 degrees of freedom: %s, %s, %s for 2, 3, 4 ties.",
			survey.Fixed(survey.ChiSquared99(1), 2), survey.Fixed(survey.ChiSquared99(3), 2), survey.Fixed(survey.ChiSquared99(5), 2)),
		Advice: "measure the matching points again; take the one out that is most left over.",
		doubt:  "the matching " + PointsDiffer + ": measure them again",
		check:  tiesFit,
	},
	chainClosure,
}

var chainClosure = &Rule{
	ID: "chain.closure", Unit: Pure, Sense: Most, Weight: Nuisance, HoldsBack: true,
	Word:  "chain and its overall reading",
	named: axisNamed,
	Title: "Chain of readings comes out at its overall reading",
	Ask: fmt.Sprintf("The square of the misclosure over its variance. Left empty, it is the 99 %% point of chi-squared for one: %s, that is %s sigma.",
		survey.Fixed(vehicles.ClosureLimit(), 2), survey.Fixed(math.Sqrt(vehicles.ClosureLimit()), 1)),
	Advice: "measure the chain again, each reading from the last, and its overall reading.",
	doubt:  "the readings come out beside the overall one by more than their tapes can: measure them again",
	check:  chainClosures,
}

func tiesFit(j *judge, r *Rule) {
	fit := &j.plan.Fit
	if !fit.Tied() {
		return
	}
	f := j.open(j.book.of(r), the(TheTies), Thing{})
	f.Value = fit.Statistic
	if !f.Required.Set {
		f.Required = vehicles.Some(survey.ChiSquared99(2*fit.N - 3))
	}
	j.close(f, 0)
	j.tiesApart = f.Verdict != Clear
}

// closureLimit is the largest square of a misclosure over its variance that the tapes explain, by the book.
func (b *Book) closureLimit() float64 {
	if limit := b.of(chainClosure); limit.Value.Set {
		return limit.Value.Value
	}
	return vehicles.ClosureLimit()
}

// chainClosures judges every chain that has an overall reading: the square of its misclosure over that of its standard
// uncertainty, a number like that of ties.fit. Up to the limit the misclosure has been spread over the chain; above it
// what rests on the chain is held back.
func chainClosures(j *judge, r *Rule) {
	for i := range j.plan.Closures {
		c := &j.plan.Closures[i]
		f := j.open(j.book.of(r), the(TheSurvey), j.chainEnd(c))
		f.Value, f.axis = c.Statistic, c.Axis
		if !f.Required.Set {
			f.Required = vehicles.Some(vehicles.ClosureLimit())
		}
		j.close(f, 0)
		if !c.Closes {
			f.Verdict, f.Why = Doubtful, misclosed(c)
		}
	}
}

// chainEnd is the thing a chain ends with.
func (j *judge) chainEnd(c *vehicles.Closure) Thing {
	if c.Table == vehicles.Fittings {
		return j.fitting(c.Index)
	}
	return j.obstruction(c.Index)
}

// misclosed says by how much a chain misses its overall reading.
func misclosed(c *vehicles.Closure) string {
	axis := [...]string{"x", "y"}[c.Axis]
	return fmt.Sprintf("in %s the readings come out %s from the overall one, the tapes explain %s: measure them again",
		axis, survey.InMM(math.Abs(c.Misclosure)), survey.InMM(c.Explained))
}
