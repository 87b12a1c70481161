package rules

import (
	"math"
	"slices"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// Judge turns a job into its findings by a book. With faults the job can't be judged: the result then holds the job and
// what of its plan could be placed, no finding, and the verdict doubtful.
func Judge(job vehicles.Job, book *Book) (Result, []vehicles.Fault) {
	return judgeAfter(nil, job, book)
}

func judgeAfter(before *Result, job vehicles.Job, book *Book) (Result, []vehicles.Fault) {
	own, unknown := book.ForJob(job)
	var was *vehicles.Plan
	if before != nil {
		was = &before.Plan
	}
	plan, faults := vehicles.ReduceAfter(was, &job, own.closureLimit())
	faults = append(faults, unknown...)
	result := Result{Job: job, Plan: plan, Book: own, Verdict: Doubtful}
	if len(faults) > 0 {
		return result, faults
	}
	j := newJudge(&job, &plan, own)
	j.before = before
	j.findings = make([]Finding, 0, j.mostFindings())
	for _, r := range allRules {
		if r.check != nil {
			r.check(&j, r)
		}
	}
	sortWorst(j.findings)
	result.Findings, result.Hole = j.findings, j.hole
	for k := range j.measures {
		if m := j.measures[k].measured; m != nil {
			result.measured[k] = *m
		}
	}
	result.Unchecked = j.unchecked()
	result.Unanswered = j.unanswered()
	result.NotLookedFor = notLookedFor(&job, j.kinds)
	result.LookedElsewhere = lookedElsewhere(&job)
	result.NotLookedAtRuns = OpenIn(vehicles.AtRuns, &job, &plan)
	result.OpeningsNotLookedFor = OpenIn(vehicles.AtOutlet, &job, &plan)
	result.Verdict = overall(&job, result.Findings)
	return result, nil
}

// judge is one job being judged.
type judge struct {
	job   *vehicles.Job
	plan  *vehicles.Plan
	book  *Book
	tape  survey.Tape
	gauge survey.Gauge // the tape, made ready
	sides [2]float64   // from the centreline to the left and right side edges used from below

	before    *Result // of the job before it was edited; nil for none
	measures  [len(vehicles.RunKinds)]measuring
	tiesApart bool       // the ties don't agree with each other
	turned    [2]float64 // cosine and sine of the turn from the frame below to the frame above
	hole      Hole       // the drilled pilot hole, with what direct tapes from it came to
	misplaced bool       // the pilot hole is where the tapes do not explain it
	denied    []bool     // of each obstruction, whether a direct tape from the hole to it says otherwise; nil for none
	drilled   []hole     // beside the cut, once somebody has asked
	asked     bool

	only  Sort   // the one run that rules of every run judge, where it is sought; Nothing: all of them
	haste *haste // of a run that is tried; nil: all of it is judged

	kinds []uint8 // of each obstruction, as vehicles.KindIndex has it

	findings []Finding
}

func newJudge(job *vehicles.Job, plan *vehicles.Plan, book *Book) judge {
	tape := job.SurveyTape()
	sin, cos := math.Sincos(plan.Fit.Theta * math.Pi / 180)
	return judge{
		turned: [2]float64{cos, sin},
		job:    job, plan: plan, book: book, tape: tape, gauge: tape.Gauge(),
		sides: [2]float64{job.SideLeft(), job.SideRight()}, kinds: kindsOf(job.Obstructions),
	}
}

// mostFindings is about how many findings there will be. Without room made for them beforehand those of 500
// obstructions take 1.8 times as much memory, with runs 1.2 (BenchmarkFindings).
func (j *judge) mostFindings() int {
	const ofHeater, ofRun = 10, 12 // rules with a finding or two of their own
	runs := 0
	for _, there := range [3]bool{j.plan.Exhaust != nil, j.plan.Intake != nil, j.plan.Fuel != nil} {
		if there {
			runs++
		}
	}
	p := j.plan
	many := len(p.Obstructions)
	some := many / 8 // swages, and what comes down past a run
	return (1+runs)*many + some + 4*len(p.Fittings) + 2*len(p.Openings) + len(p.Closures) + ofHeater + ofRun*runs
}

// open starts a finding under a limit; close ends it. The pointer is good until the next one is opened.
func (j *judge) open(limit *Limit, subject, against Thing) *Finding {
	n := len(j.findings)
	if n == cap(j.findings) {
		j.findings = slices.Grow(j.findings, n+1)
	}
	j.findings = j.findings[:n+1] // nobody has written there yet
	f := &j.findings[n]
	f.Limit, f.Subject, f.Against, f.Required, f.Weight = limit, subject, against, limit.Value, limit.Weight
	if j.mayKill(against) {
		f.Weight = Kills
	}
	return f
}

// close works out margin and verdict; why is what holds the verdict back. What the check has written into Why is why it is foul.
func (j *judge) close(f *Finding, why reasons) {
	f.Sigma = math.Sqrt(f.Spread.Sum())
	if j.misplaced && f.Subject.onCut() {
		why |= misplaced
	}
	if f.OfGuess = j.onGuess(f); f.OfGuess {
		why |= guessed
	}
	if f.Required.Set {
		f.Margin = vehicles.Some(margin(f.Value, f.Required.Value, f.Rule.Sense))
	}
	f.Verdict = verdict(f.Margin, f.Sigma, why)
	f.Unconfirmed = why == unmeasured && verdict(f.Margin, f.Sigma, 0) == Clear
	if f.Verdict == Foul && f.Rule.doubt != "" {
		f.Verdict = Doubtful
	}
	switch {
	case f.Verdict == Clear:
		f.Why = ""
	case f.Verdict != Foul || f.Why == "":
		f.Why = f.because(why)
	}
}

// plain is a finding into which nothing measured enters.
func (j *judge) plain(r *Rule, subject, against Thing, value float64) {
	f := j.open(j.book.of(r), subject, against)
	f.Value = value
	j.close(f, 0)
}

// counted is a finding that counts what nothing measured enters; why says what they are, where there are too many.
func (j *judge) counted(r *Rule, subject, against Thing, n int, why string) {
	f := j.open(j.book.of(r), subject, against)
	f.Value, f.Why = float64(n), why
	j.close(f, 0)
}

// The things measured, by their index in the job.
func (j *judge) obstruction(i int) Thing {
	return Thing{AnObstruction, int32(i), j.job.Obstructions[i].Name}
}

func (j *judge) opening(i int) Thing { return Thing{AnOpening, int32(i), j.job.Openings[i].Name} }
func (j *judge) fitting(i int) Thing { return Thing{AFitting, int32(i), j.job.Fittings[i].Name} }
