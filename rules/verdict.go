package rules

import (
	"cmp"
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

// reasons is a set of reasons why a finding is never better than doubtful.
type reasons uint8

const (
	unmeasured reasons = 1 << iota // not measured on this van
	loose                          // the tape sloped by an unknown amount
	tiesApart                      // it rests on ties that don't agree
	unclosed                       // it rests on a chain that misses its overall reading
	misplaced                      // the pilot hole is where the tapes do not explain it
	denied                         // a direct tape from the drilled hole says otherwise
	guessed                        // a size of the floor was not measured
)

// ByReadings tells whether readings end the doubt of a finding, and no move does: it keeps enough as it is, or is of what readings say of each other.
func (f *Finding) ByReadings() bool {
	return f.Verdict == Doubtful && (f.Rule.HoldsBack || f.Margin.Set && f.Margin.Value >= coverage*f.Sigma)
}

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

func verdict(m vehicles.Number, sigma float64, why reasons) Verdict {
	band := coverage * sigma
	switch {
	case !m.Set:
		return Doubtful
	case m.Value < 0 && m.Value <= -band:
		return Foul
	case m.Value >= band && why == 0:
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

// Why a finding is not clear, in words that others use too.
const (
	NeedsFigure     = "needs your heater's figure" // the source, too, of what only the heater's maker can say
	NotMeasuredHere = vehicles.NotMeasured + " on this van"
)

// CutHasNoPlace is how a job's cut stands that is nowhere.
const CutHasNoPlace = "the cut has no place yet"

// OnlyMargin tells whether why a finding is foul says no more than its margin does, by how many mm it misses: one of them is enough.
func (f *Finding) OnlyMargin() bool {
	return f.Verdict == Foul && f.Rule.short.margin && f.Why == f.because(0)
}

// because says in a fitter's words what keeps a finding from being clear.
func (f *Finding) because(why reasons) string {
	switch {
	case f.Verdict == Foul:
		return fmt.Sprintf(f.Rule.short.words, survey.Told(math.Abs(f.Margin.Value)))
	case !f.Required.Set:
		return cmp.Or(f.Rule.unset, NeedsFigure)
	case why&loose != 0:
		return "tape sloped by an unknown amount: enter its height below floor"
	case why&unmeasured != 0:
		return NotMeasuredHere
	case why&guessed != 0:
		return "a size of the floor is a guess: measure it"
	case why&unclosed != 0:
		return "its chain of readings misses the overall one: measure them again"
	case why&denied != 0:
		return "the tape from the hole says otherwise: measure both again"
	case why&misplaced != 0:
		return "the tapes don't explain where the pilot hole is: tape from it to two things"
	case why&tiesApart != 0:
		return "the matching points don't agree: measure them again"
	case f.Rule.doubt != "":
		return f.Rule.doubt
	}
	return "too close to call: measure again or move"
}
