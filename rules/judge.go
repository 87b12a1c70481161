package rules

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// Judge turns a job into its findings by a book. With faults the job can't be judged: the result then holds the job and
// what of its plan could be placed, no finding, and the verdict doubtful.
func Judge(job vehicles.Job, book *Book) (Result, []vehicles.Fault) {
	own, unknown := book.ForJob(job)
	plan, faults := vehicles.ReduceWithin(job, own.closureLimit())
	faults = append(faults, unknown...)
	b := bench{
		job: &job, plan: &plan, book: own, tape: job.SurveyTape(), gauge: job.SurveyTape().Gauge(),
		sides: [2]float64{job.SideLeft(), job.SideRight()},
	}
	result := Result{Job: job, Plan: plan, Book: own, Verdict: Doubtful}
	if len(faults) > 0 {
		return result, faults
	}
	b.room()
	b.ties()
	b.closures()
	b.cut()
	b.heater()
	b.exhaustRules()
	b.intakeRules()
	b.fuelRules()
	sortWorst(b.findings)
	result.Findings = b.findings
	result.Unchecked = b.unchecked()
	result.NotLookedFor = NotLookedFor(&job)
	result.LookedElsewhere = lookedElsewhere(&job)
	result.Verdict = overall(&job, result.Findings)
	return result, nil
}

// bench is where one job is judged.
type bench struct {
	job   *vehicles.Job
	plan  *vehicles.Plan
	book  *Book
	tape  survey.Tape
	gauge survey.Gauge // the tape, made ready
	sides [2]float64   // from the centreline to the left and right side edges used from below

	tiesApart bool // the ties don't agree with each other

	findings []Finding
	points   []geometry.Point3 // where the findings' At lie
}

// room makes room for all findings at once.
func (b *bench) room() {
	runs := 0
	for _, there := range []bool{b.plan.Exhaust != nil, b.plan.Intake != nil, b.plan.Fuel != nil} {
		if there {
			runs++
		}
	}
	n := (1+runs)*len(b.plan.Obstructions) + 2*len(b.plan.Fittings) + len(b.plan.Openings) + len(b.plan.Closures) + 16*runs + 8
	b.findings = make([]Finding, 0, n)
	b.points = make([]geometry.Point3, 0, 2*n)
}

// open starts a finding of a rule; close ends it. The pointer is good until the next one is opened.
func (b *bench) open(id string, rule *Rule, subject, against Thing) *Finding {
	n := len(b.findings)
	if n < cap(b.findings) {
		b.findings = b.findings[:n+1] // nobody has written there yet
	} else {
		b.findings = append(b.findings, Finding{})
	}
	f := &b.findings[n]
	f.ID, f.Subject, f.Against = id, subject, against
	if rule != nil {
		f.Required, f.Unit, f.Sense = rule.Value, rule.Unit, rule.Sense
		f.Source, f.Book, f.Title = rule.Source, rule.Book, rule.Title
	}
	return f
}

// The things measured, by their index in the job.
func (b *bench) obstruction(i int) Thing {
	return Thing{AnObstruction, int32(i), b.job.Obstructions[i].Name}
}

func (b *bench) opening(i int) Thing { return Thing{AnOpening, int32(i), b.job.Openings[i].Name} }
func (b *bench) fitting(i int) Thing { return Thing{AFitting, int32(i), b.job.Fittings[i].Name} }

// at gives a finding its nearest points.
func (b *bench) at(f *Finding, points ...geometry.Point3) {
	from := len(b.points)
	b.points = append(b.points, points...)
	f.At = b.points[from:len(b.points):len(b.points)]
}

// flat gives a finding its nearest points in plan.
func (b *bench) flat(f *Finding, p, q geometry.Point) {
	b.at(f, p.At(0), q.At(0))
	f.Flat = true
}

// close works out margin and verdict.
func (b *bench) close(f *Finding, h hold) {
	f.Sigma = math.Sqrt(f.Spread.Sum())
	if f.Required.Set {
		f.Margin = vehicles.Some(margin(f.Value, f.Required.Value, f.Sense))
	}
	f.Verdict = verdict(f.Margin, f.Sigma, h)
	if f.Verdict != Clear {
		f.Why = why(f, h)
	}
}

// plain is a finding into which nothing measured enters.
func (b *bench) plain(id string, subject, against Thing, value float64) {
	f := b.open(id, b.book.find(id, ""), subject, against)
	f.Value = value
	b.close(f, 0)
}

// ranked is where a finding stands among the others.
type ranked struct {
	group  int // foul, doubtful, clear, in each those with a margin first
	margin float64
	at     int
}

// sortWorst puts the findings worst first: foul, doubtful, clear, then by margin, those without one last. Findings are
// large, so their ranks are sorted and every finding is then moved once.
func sortWorst(findings []Finding) {
	order := make([]ranked, len(findings))
	for i := range findings {
		f := &findings[i]
		order[i] = ranked{group: 2 * int(Foul-f.Verdict), margin: f.Margin.Value, at: i}
		if !f.Margin.Set {
			order[i].group++
		}
	}
	slices.SortFunc(order, func(p, q ranked) int {
		switch {
		case p.group != q.group:
			return p.group - q.group
		case p.margin < q.margin:
			return -1
		case p.margin > q.margin:
			return 1
		}
		return p.at - q.at
	})
	for start := range order {
		if order[start].at == start || order[start].at < 0 {
			continue
		}
		first, i := findings[start], start
		for order[i].at != start {
			from := order[i].at
			findings[i], order[i].at = findings[from], -1
			i = from
		}
		findings[i], order[i].at = first, -1
	}
}
