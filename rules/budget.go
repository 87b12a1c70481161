package rules

import (
	"cmp"
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// Share is one cause's part of a finding's variance.
type Share struct {
	Cause    string
	Variance float64 // in the square of the finding's unit
}

// PuttingTheMark is what a spread owes to its Mark.
const PuttingTheMark = "putting the mark"

// The causes of uncertainty, in the order lists show them. What the readings of a thing and the marks of what is put in
// place owe to the tape is added together: a better tape helps both.
const (
	ofTape    = "tape class"
	ofReading = "reading the tape"
	ofHook    = "hook end"
	ofSlope   = "slope and hook height"
	ofChain   = "readings before it"
	ofMark    = PuttingTheMark
	ofHeights = "drops and rises"
	ofTies    = "matching points"
	ofFrames  = "above against below"
	ofTurn    = "its turn"
)

// Budget returns what a finding's uncertainty comes from, the largest share first; the shares add up to sigma squared.
func Budget(r Result, f Finding) []Share {
	b := budget{r: &r, f: &f, by: map[string]float64{
		ofHeights: f.Spread.Height, ofTurn: f.Spread.Turn, ofFrames: f.Spread.Frames,
	}}
	if r.Plan.Fit.Tied() {
		b.by[ofTies], b.by[ofFrames] = f.Spread.Frames, 0
	}
	if f.Spread.Survey > 0 {
		x, y := b.surveyed()
		b.add(b.taped(f.Against.Sort == AFitting), x, y, f.Spread.Survey)
	}
	if f.Spread.Mark > 0 {
		b.marks()
	}
	var shares []Share
	for _, cause := range []string{ofTape, ofReading, ofHook, ofSlope, ofChain, ofMark, ofHeights, ofTies, ofFrames, ofTurn} {
		if v := b.by[cause]; v > 0 {
			shares = append(shares, Share{cause, v})
		}
	}
	slices.SortStableFunc(shares, func(a, b Share) int { return cmp.Compare(b.Variance, a.Variance) })
	return shares
}

// budget adds up one finding's variance by cause.
type budget struct {
	r  *Result
	f  *Finding
	by map[string]float64
}

// taped is the finding's direction along the axes that one side is taped along: through ties those above are turned.
func (b *budget) taped(above bool) geometry.Point {
	if n := b.f.N.Plan(); above {
		return n.Turn(b.r.Plan.Fit.Theta)
	}
	return b.f.N.Plan()
}

// add adds what two coordinates' variances are made of, as far as they lie along n. What they come to there beyond the whole is
// the height of their zero: through ties that is counted with the ties', as it is one error for all.
func (b *budget) add(n geometry.Point, x, y vehicles.Made, whole float64) {
	shared := -whole
	put := func(cause string, ofX, ofY float64) {
		part := n.X*n.X*ofX + n.Y*n.Y*ofY
		b.by[cause] += part
		shared += part
	}
	put(ofTape, x.Tape, y.Tape)
	put(ofReading, x.Read, y.Read)
	put(ofHook, x.Hook, y.Hook)
	put(ofSlope, x.Slope+x.Height, y.Slope+y.Height)
	put(ofChain, x.Chain, y.Chain)
	put(ofMark, x.Mark, y.Mark)
	for _, cause := range []string{ofSlope, ofChain} {
		part := min(b.by[cause], max(0, shared))
		b.by[cause] -= part
		shared -= part
	}
}

// surveyed is what the place of the thing measured is made of, at the finding's nearest point of it.
func (b *budget) surveyed() (x, y vehicles.Made) {
	i, limit := int(b.f.Against.Index), b.r.Book.closureLimit()
	made := func(table vehicles.Table, placed *vehicles.Placed, limit float64) (x, y vehicles.Made) {
		return b.r.Job.MadeAt(table, i, placed, b.f.At[1].Plan(), limit)
	}
	switch b.f.Against.Sort {
	case AnOpening:
		return made(vehicles.Openings, &b.r.Plan.Openings[i].Placed, 0)
	case AFitting:
		return made(vehicles.Fittings, &b.r.Plan.Fittings[i], limit)
	}
	return made(vehicles.Obstructions, &b.r.Plan.Obstructions[i], limit)
}

// marks adds what putting the subject in place costs, or measuring where its pilot hole is.
func (b *budget) marks() {
	if b.f.Subject.marked() {
		x, y := b.cutMade()
		b.add(b.taped(!b.drilled()), x, y, b.f.Spread.Mark)
		return
	}
	ends := b.f.At[:1]
	if b.f.Against.run() {
		ends = b.f.At[:]
	}
	for _, at := range ends {
		x, y := b.runMade(at)
		n := b.taped(false)
		b.add(n, x, y, n.X*n.X*x.Sum()+n.Y*n.Y*y.Sum())
	}
}

// drilled tells whether the subject is where the hole was measured to be: all that has no mark of its own.
func (b *budget) drilled() bool { return b.r.Plan.Cut.Below && b.f.Subject.onCut() }

func (b *budget) cutMade() (x, y vehicles.Made) {
	job := &b.r.Job
	if b.drilled() {
		return job.DrilledMade()
	}
	at := b.r.Plan.Cut.At
	if b.f.Subject.Sort == AFuelHole {
		at = FuelHoles(job, &b.r.Plan)[b.f.Subject.Index]
	}
	tape, up := job.SurveyTape(), b.r.Plan.Fit.Up(at)
	edge := math.Min(math.Abs(job.AboveLeft()-up.Y), math.Abs(up.Y+job.AboveRight()))
	return vehicles.MarkMade(tape, job.AboveBumper(up), job.Datum.HookAbove.Value), vehicles.MarkMade(tape, edge, 0)
}

// runMade is that of a run put up from below, at a point of it.
func (b *budget) runMade(p geometry.Point3) (x, y vehicles.Made) {
	job, tape := &b.r.Job, b.r.Job.SurveyTape()
	edge := math.Min(math.Abs(job.SideLeft()-p.Y), math.Abs(p.Y+job.SideRight()))
	return vehicles.MarkMade(tape, job.BelowBumper(p.Plan()), 0), vehicles.MarkMade(tape, edge, 0)
}
