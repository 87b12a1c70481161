package rules_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/rules"
)

// outcome is what many surveys said of one thing: by how much the clearance predicted exceeded the true one, each
// judged with the true clearance as what is required. A hair less and the thing is truly foul: every clear is then
// wrong. A hair more and it is truly clear: every foul is.
type outcome struct {
	excess      []float64
	clear, foul int
	sigma       float64 // as predicted for a hand that never errs
}

func (o *outcome) add(f *rules.Finding, truth float64) {
	o.excess = append(o.excess, f.Value-truth)
	switch f.Verdict {
	case rules.Clear:
		o.clear++
	case rules.Foul:
		o.foul++
	}
}

func (o *outcome) moments() (mean, deviation float64) {
	for _, e := range o.excess {
		mean += e / float64(len(o.excess))
	}
	for _, e := range o.excess {
		deviation += (e - mean) * (e - mean) / float64(len(o.excess)-1)
	}
	return mean, math.Sqrt(deviation)
}

// bounds are what the proof holds an outcome to: predicted sigma over the spread, and how often clear is wrong.
type bounds struct{ ratio, wrong [2]float64 }

// promised is what the product promises: sigma within 5 % of the spread, clear wrong at most 5 % of the time and half
// a percent. Even errors have short tails: one alone is beyond 1.645 sigma 2.5 % of the time, two alike 5.4 % (which is
// the most), three 5.2 %, many 5 %.
var promised = bounds{ratio: [2]float64{0.95, 1.05}, wrong: [2]float64{0.02, 0.055}}

// check holds an outcome to its bounds, which give way by the sampling error: twice that of a share that is truly 5 %,
// and in a short run three times that of either.
func (o *outcome) check(t *testing.T, name string, b bounds) {
	t.Helper()
	mean, deviation := o.moments()
	ratio, n := o.sigma/deviation, float64(len(o.excess))
	clear, foul := float64(o.clear)/n, float64(o.foul)/n
	t.Logf("%-22s n %d  sigma %.3f  spread %.3f  ratio %.3f  mean %+.3f  clear wrong %.2f %%  foul wrong %.2f %%",
		name, len(o.excess), o.sigma, deviation, ratio, mean, 100*clear, 100*foul)
	times, slack := 2., 0.
	if testing.Short() {
		times, slack = 3, 3/math.Sqrt(2*n)
	}
	few := times * math.Sqrt(0.05*0.95/n)
	assert.GreaterOrEqual(t, ratio, b.ratio[0]-slack, "%s: sigma over spread", name)
	assert.LessOrEqual(t, ratio, b.ratio[1]+slack, "%s: sigma over spread", name)
	assert.GreaterOrEqual(t, clear, b.wrong[0]-few, "%s: clear wrong", name)
	assert.LessOrEqual(t, clear, b.wrong[1]+few, "%s: clear wrong", name)
	assert.LessOrEqual(t, foul, b.wrong[1]+few, "%s: foul wrong", name)
}

// pool counts the wrong verdicts of several outcomes: so many surveys need hardly any allowance for sampling.
type pool struct{ all, clear, foul int }

func (p *pool) add(o *outcome) {
	p.all, p.clear, p.foul = p.all+len(o.excess), p.clear+o.clear, p.foul+o.foul
}

func (p *pool) check(t *testing.T, name string) {
	t.Helper()
	clear, foul := float64(p.clear)/float64(p.all), float64(p.foul)/float64(p.all)
	t.Logf("%-22s n %d  clear wrong %.2f %%  foul wrong %.2f %%", name, p.all, 100*clear, 100*foul)
	few := 0.
	if testing.Short() {
		few = 3 * math.Sqrt(0.05*0.95/float64(p.all))
	}
	assert.LessOrEqual(t, clear, promised.wrong[1]+few, "%s: clear wrong", name)
	assert.LessOrEqual(t, foul, promised.wrong[1]+few, "%s: foul wrong", name)
}

// surveys is how many surveys a part of the proof makes; a short run makes a tenth, but no fewer than 500.
func surveys(n int) int {
	if testing.Short() {
		return max(n/10, 500)
	}
	return n
}
