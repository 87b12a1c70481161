// Package rules judges a job: it holds the book of what is allowed and turns a job's plan into findings.
//
// A thing is judged here once; the screens, the JSON, the sheet and the exit code all show these findings.
// Lengths are mm, angles degrees, sigmas standard uncertainties in the finding's unit. Nothing here holds state.
package rules

import (
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// Verdict is what a margin and its uncertainty come to. What nobody has judged is doubtful: that is the zero value.
// The greater of two verdicts is the worse one.
type Verdict int8

// The verdicts, better first.
const (
	Clear Verdict = iota - 1
	Doubtful
	Foul
)

func (v Verdict) String() string { return [...]string{"clear", "doubtful", "foul"}[v-Clear] }

// Spread is what the variance of a finding's value is made of, in the square of its unit.
type Spread struct {
	Survey float64 // the readings of the thing measured
	Mark   float64 // putting what is put in place, or measuring the drilled hole
	Height float64 // drops, rises and hook heights, where the distance slopes
	Turn   float64 // the turn of the thing measured
	Frames float64 // between the frames below and above: the ties, or how far the frames may differ
}

// Sum returns the whole variance.
func (s Spread) Sum() float64 { return s.Survey + s.Mark + s.Height + s.Turn + s.Frames }

// Finding is what one rule says of one pair of things.
type Finding struct {
	*Limit                   // what it is held to: the rule, and what the nearest book asks under it
	Subject  Thing           // what it is of
	Against  Thing           // what that is held against; Nothing where there is no other
	Value    float64         // what was found
	Required vehicles.Number // not set: nobody has given the rule a value
	Margin   vehicles.Number // positive on the good side; not set with Required
	Sigma    float64
	Spread   Spread             // Sigma squared, by cause
	N        geometry.Point3    // the unit direction the value is taken along, where something measured enters
	At       [2]geometry.Point3 // the nearest points, on the subject and on the other: the first Places of them
	Why      string             // what keeps it from being clear, in a fitter's words; "" when clear
	Verdict  Verdict
	Weight   Weight      // what the fault that it is of, or would be, can do
	Places   uint8       // how many nearest points there are
	Flat     bool        // they are in plan only
	axis     survey.Axis // of the readings it is of, where it is of one axis alone
	Unsaid   bool        // nobody has said what it takes to know the value: Value is none, and there is no margin
	// Unconfirmed: it would be clear, but that what it is held against was not measured on this van.
	Unconfirmed bool
	// OfGuess: it rests on a size of the floor that nobody has measured.
	OfGuess bool
}

// ID is the id by which the JSON calls the finding.
func (f *Finding) ID() string { return f.Rule.FindingID() }

// Of tells whether the finding is one of a rule, or of a case of it.
func (f *Finding) Of(r *Rule) bool { return f.Rule == r || f.ID() == r.FindingID() }

// About says in a few words what the finding is of, no two of a job the same: "cut: brake pipe, right", "exhaust fall: leg 2".
func (f *Finding) About() string {
	word, other := f.Rule.Word, f.Against.spoken()
	switch f.Rule.named {
	case wordAlone:
		return word
	case subjectNamed:
		other = f.Subject.String()
	case bothNamed:
		word = f.Subject.spoken()
	case pairNamed:
		word += ", " + f.Subject.String()
	case axisNamed:
		other += [...]string{", x", ", y"}[f.axis]
	}
	if f.Shielded() {
		other += " (shielded)"
	}
	if other == "" {
		return word
	}
	return word + ": " + other
}

// Apart is which part of the heater it keeps from which of the things that were entered: for a table of things by parts. There is one at
// most of a part's sort and a thing. "The other" is what people call the thing, with what is said of it behind: "prop shaft, full travel".
// It is none for what else is asked of a part's place.
func (f *Finding) Apart() (part Thing, other string, is bool) {
	switch {
	case f.Rule == fullTravel:
		return f.Subject, f.Against.spoken() + ", " + f.Rule.Word, true
	case f.Rule.ByKind != AnObstruction:
		return Thing{}, "", false
	case f.Shielded():
		return f.Subject, f.Against.spoken() + " (shielded)", true
	}
	return f.Subject, f.Against.spoken(), true
}

// Shielded tells whether it counts on a shield that stands between.
func (f *Finding) Shielded() bool { return f.Rule == exhaustShielded }

// ClearFrom is the margin from which on it is clear, in its unit, where nothing but its uncertainty keeps it from that.
func (f *Finding) ClearFrom() float64 { return coverage * f.Sigma }

// WithCut tells whether a move of the cut changes it: it is of the cut, or of what is bolted on it, beside something else.
func (f *Finding) WithCut() bool { return f.Rule.AtCut && f.Subject.onCut() }

// WithRun tells whether it is a run that is laid otherwise to mend it.
func (f *Finding) WithRun() bool { return !f.Rule.AtCut && (f.Subject.run() || f.Against.run()) }

// Axis is along which axis a chain runs that a finding of one is of.
func (f *Finding) Axis() survey.Axis { return f.axis }

// Points are the nearest points, on the subject and on the other; none where the rule has none.
func (f *Finding) Points() []geometry.Point3 { return f.At[:f.Places] }

// at gives a finding the one place it is of.
func (f *Finding) at(p geometry.Point3) { f.At[0], f.Places = p, 1 }

// between gives a finding its nearest points, flat its nearest points in plan.
func (f *Finding) between(p, q geometry.Point3) { f.At, f.Places = [2]geometry.Point3{p, q}, 2 }

func (f *Finding) flat(p, q geometry.Point) {
	f.between(p.At(0), q.At(0))
	f.Flat = true
}

// Result is a judged job.
type Result struct {
	Job          vehicles.Job
	Plan         vehicles.Plan
	Book         *Book     // what it was judged by, the job's own rules in front
	Findings     []Finding // worst first: foul, doubtful, clear, then by margin
	Verdict      Verdict
	Hole         Hole // what the direct tapes from the drilled pilot hole came to
	Unchecked    []Lack
	Unanswered   []string // what is there and nobody has said how; beside the contract's list
	NotLookedFor []string // kinds neither entered nor looked for
	// LookedElsewhere are kinds looked for round a place that the cut has since moved away from, and not entered.
	LookedElsewhere []string
	// NotLookedAtRuns are kinds neither entered nor looked for round the runs where they are now; of a job without runs none.
	NotLookedAtRuns []string
	// OpeningsNotLookedFor are kinds of opening neither entered nor looked for near the exhaust where it is now; of a job
	// without an exhaust none.
	OpeningsNotLookedFor []string

	measured [len(vehicles.RunKinds)]measured // for Rejudge
}

// MarkSheet is what the tape must say at each mark.
type MarkSheet struct {
	Marks  []Mark
	Holes  []Mark  // the pilot holes that are there, as a tape finds them: the one that was drilled, and the one that the centre was moved from
	Stubs  []Mark  // where the heater's stubs will be: they go with the disc, so nobody ticks them, but a dry fit is held to them
	Checks []Check // lengths to tape that show whether what was set out is square
	Pilot  *Pilot  // never nil; empty without a cut
	Moved  []Moved // the marks that lie elsewhere since the pilot hole was measured
}

// Listed are all of them in the order of a table: the pilot holes stand by the cut's centre, so that nobody takes one for the other; the stubs,
// which nobody marks, come last.
func (s *MarkSheet) Listed() []Mark {
	if len(s.Holes) == 0 {
		return slices.Concat(s.Marks, s.Stubs)
	}
	return slices.Concat(s.Marks[:1], s.Holes, s.Marks[1:], s.Stubs)
}

// Moved is a mark that lies elsewhere than it was planned, as the pilot hole came out beside its mark, and how far, as seen from above.
type Moved struct {
	Name, Words string // as the mark's
	By          geometry.Point
	Was         Mark // as it was planned
}

// Check is a length between two marks or pins that a careful fitter tapes: both diagonals of a thing that is square are
// alike, and as long as this says.
type Check struct {
	Name   CheckName `json:"name"`
	From   string    `json:"from"`
	To     string    `json:"to"`
	Length float64   `json:"length"` // mm, as the tape must say it

	ends [2]geometry.Point // in the frame above
}

// ClearOfEntered is all that a job with nothing doubtful in it is before all was looked for.
const ClearOfEntered = "clear of what was entered"

// CheckName is what a length to check is, as programs read it.
type CheckName string

// The lengths to check.
const (
	PlateDiagonal CheckName = "plate diagonal" // between opposite corners of the flange
	PinsApart     CheckName = "pins apart"     // between the datum pins
	PinDiagonal   CheckName = "pin diagonal"   // from a pin to the floor's front corner on the other side
)

// Mark is one place to mark, with its tape readings below and above.
type Mark struct {
	Name  string // what programs call it, and by which it is ticked
	Words string // what people call it
	Plan  geometry.Point
	Below BelowReadings
	Above *AboveReadings // nil for what is marked below only
}

// BelowReadings are what the tape must say at a mark on the floor's underside, mm.
type BelowReadings struct {
	Bumper, Left, Right float64
	Sigma               [2]float64 // the standard uncertainty in x and y of a mark that is put there from below
}

// AboveReadings are what the tape must say at a mark on the finished floor, mm, and where it is in the above frame.
type AboveReadings struct {
	X, Y, Bumper, Left, Right, PinLeft, PinRight float64
	Sigma                                        [2]float64 // the mark's standard uncertainty in x and y
}

// Pilot is where the pilot hole came out.
type Pilot struct {
	Drilled *geometry.Point // nil before drilling
	Off     geometry.Point  // drilled less intended
	MayMove float64         // how far the centre may still go and the pilot hole comes out with the disc: MostBeside
	Inside  float64         // how far it is inside the cut, whatever the saw's teeth are: may_move of the JSON
}
