package rules

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// coverage is the k of a 95 % one-sided guard band, kept both ways. Source: JCGM 106:2012, 8.3; 1.645 is the 95 % point
// of the normal distribution.
const coverage = 1.645

// marginNoise is the rounding a margin may carry, in its unit: below it, it is 0. Lengths here are good to 1e-9 mm.
const marginNoise = 1e-9

// hold is a set of reasons why a finding is never better than doubtful.
type hold uint8

const (
	unmeasured hold = 1 << iota // not measured on this van
	loose                       // the tape sloped by an unknown amount
	tiesApart                   // it rests on ties that don't agree
	unclosed                    // it rests on a chain that misses its overall reading
)

func margin(value, required float64, sense Sense) float64 {
	m := value - required
	if sense == Most {
		m = -m
	}
	if math.Abs(m) < marginNoise {
		return 0
	}
	return m
}

func verdict(m vehicles.Number, sigma float64, h hold) Verdict {
	band := coverage * sigma
	switch {
	case !m.Set:
		return Doubtful
	case m.Value < 0 && m.Value <= -band:
		return Foul
	case m.Value >= band && h == 0:
		return Clear
	}
	return Doubtful
}

// overall is the verdict of a job: that of its worst finding, and at best doubtful when nothing was judged, nothing under
// the floor has been entered beside the cut, or the job is not settled.
func overall(job *vehicles.Job, findings []Finding) Verdict {
	if len(findings) == 0 {
		return Doubtful
	}
	worst := findings[0].Verdict // they are sorted
	if job.Cut != nil && len(job.Obstructions) == 0 || !job.Settled() {
		worst = max(worst, Doubtful)
	}
	return worst
}

// why says in a fitter's words what keeps a finding from being clear.
func why(f *Finding, h hold) string {
	switch {
	case f.Verdict == Foul:
		return short(f, math.Abs(f.Margin.Value))
	case !f.Required.Set:
		return "needs your heater's figure"
	case h&loose != 0:
		return "tape sloped by an unknown amount: enter its height below floor"
	case h&unmeasured != 0:
		return "not measured on this van"
	case h&unclosed != 0:
		return "its chain of readings misses the overall one: measure them again"
	case h&tiesApart != 0:
		return "the matching points don't agree: measure them again"
	case f.ID == "ties.fit":
		return "the matching points differ by more than their tape readings can: measure them again"
	}
	return "too close to call: measure again or move"
}

// short says by how much a finding misses what is required.
func short(f *Finding, by float64) string {
	amount := survey.Format(by, survey.Millimetres)
	switch {
	case f.Unit == "count":
		return fmt.Sprintf("%s more than allowed", amount)
	case f.Unit == "deg" && f.Sense == Least:
		return fmt.Sprintf("%s degrees too few", amount)
	case f.Unit == "deg":
		return fmt.Sprintf("%s degrees too many", amount)
	case f.Unit == "mm/m":
		return fmt.Sprintf("falls %s mm per m too little", amount)
	case f.ID == "exhaust.edge":
		return fmt.Sprintf("ends %s mm too far under the van", amount)
	case f.ID == "stub.in-cut":
		return fmt.Sprintf("%s mm too near the rim", amount)
	case f.Sense == Most:
		return fmt.Sprintf("%s mm too much", amount)
	case f.ID == "stack.turret":
		return fmt.Sprintf("collar %s mm too short", amount)
	}
	return fmt.Sprintf("%s mm too close", amount)
}
