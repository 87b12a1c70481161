// Package work says what is to be done in a job, step by step, from the battery's clamp to the owner's first lesson, what is measured in
// each step and what is to be expected, and what of it the job records as done. Only what applies to the job is there. It judges
// nothing that the book judges. Lengths are mm, angles degrees.
package work

import (
	"slices"

	"bench.example/undermark/rules"
	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/vehicles"
)

// Part is a stretch of the work.
type Part uint8

// The parts, in the order of the work.
const (
	Ready Part = iota
	Holes
	Metal
	Mounting
	Runs
	FuelLine
	VanAgain
	FirstRun
	HandingOver
	partCount
)

// String is what a part is called.
func (p Part) String() string {
	return [...]string{
		"Before anything is drilled", "Holes", "Bare metal", "Heater and wiring", "Exhaust and intake", "Fuel line", "Wax, seat and battery", "First run", "Handing over",
	}[p]
}

// Expected is what a value should come to. Neither is set where only words can say it.
type Expected struct {
	Least, Most vehicles.Number
	Words       string         // where no figure can be given: "as the heater's instructions say"
	Of          string         // what in the job or the program has it, and how well: "the job's floor, ±3 mm"; "" for nothing
	Source      sizing.Sources // who says so
}

// Step is a step of the work in a job.
type Step struct {
	vehicles.StepKind
	Part     Part
	Do       string   // what is done, in a sentence
	Of       string   // what of this job it is done to: "4 holes, 7 mm"; "" where that says nothing more
	Measured string   // what is measured; "" for nothing
	Expected Expected // of what is measured
	Defers   string   // whose word goes before this one: "the heater's own instructions"; "" for nobody's
	Caution  string   // what the caution is about that stands with it; "" for none
	After    []string // the steps of this job that must be done before, for safety
	Danger   string   // what comes of it where they are not
	Since    string   // the step from which the time runs that is measured; "" for none
	Dated    bool     // a day is agreed on which it is to be done
	Done     vehicles.Done
	Foul     string // what is foul as the job stands, so that it should not be done: "cut: brake pipe. See Checks."; "" for nothing
	Known    string // what the job has of it from elsewhere: that is not asked again, and says that it was done; "" for nothing
}

// Ticked tells whether the step is done.
func (s *Step) Ticked() bool { return s.Done.At != "" }

// List are the steps of a job, in the order of the work.
type List []Step

// Of makes the list of a job, judged or not: what it asks of the result is its job, what is in danger by its plan, and its book.
func Of(r *rules.Result) List {
	var list List
	for i := range table {
		if k := &table[i]; k.applies == nil || k.applies(r) {
			list = append(list, k.step(r))
		}
	}
	for i := range list {
		list[i].After = slices.DeleteFunc(slices.Clone(list[i].After), func(id string) bool { return list.Index(id) < 0 })
		if len(list[i].After) == 0 {
			list[i].After, list[i].Danger = nil, ""
		}
	}
	return list
}

// Index is where a step is in the list, -1 for one that the job has not.
func (l List) Index(id string) int {
	return slices.IndexFunc(l, func(s Step) bool { return s.ID == id })
}

// Next is the first step that is not done, -1 where all are.
func (l List) Next() int {
	return slices.IndexFunc(l, func(s Step) bool { return !s.Ticked() })
}

// Count is how many of the steps are done.
func (l List) Count() (done int) {
	for i := range l {
		if l[i].Ticked() {
			done++
		}
	}
	return done
}

// Early are the steps that should have been done before step i for safety, and are not, or did not come out as they must. What the job knows to
// be done is.
func (l List) Early(i int) (open []Step) {
	for _, id := range l[i].After {
		if s := l[l.Index(id)]; !s.Ticked() && s.Known == "" || s.Amiss() != "" {
			open = append(open, s)
		}
	}
	return open
}

// Elsewhere are records of steps that the job has not, or no longer: what is recorded is never dropped.
func (l List) Elsewhere(j *vehicles.Job) (list []vehicles.Done) {
	for _, d := range j.Done {
		if l.Index(d.Step) < 0 {
			list = append(list, d)
		}
	}
	return list
}

// kind is a step as the program knows it, one row of the table.
type kind struct {
	id, do  string
	part    Part
	applies func(*rules.Result) bool   // nil: to every job
	of      func(*rules.Result) string // nil: nothing
	expect  func(*rules.Result) Expected
	// measured is what is measured, in a step that has a unit.
	measured string
	since    string
	defers   string
	caution  string
	foul     func(*rules.Result) string // what is foul as the job stands, so that it should not be done; nil: nothing of the job bars it
	known    func(*rules.Result) string // what the job has of it from elsewhere; nil: nothing
	after    []string
	danger   string
	dated    bool
}

func (k *kind) step(r *rules.Result) Step {
	s := Step{
		StepKind: vehicles.StepKinds[vehicles.StepIndex(k.id)], Part: k.part, Do: k.do, Measured: k.measured, Defers: k.defers, Caution: k.caution,
		After: k.after, Danger: k.danger, Since: k.since, Dated: k.dated, Done: r.Job.DoneOf(k.id),
	}
	if k.of != nil {
		s.Of = k.of(r)
	}
	if k.foul != nil {
		s.Foul = k.foul(r)
	}
	if k.known != nil {
		s.Known = k.known(r)
	}
	if k.expect != nil {
		s.Expected = k.expect(r)
	}
	return s
}

// table are all steps.
var table = slices.Concat(ready, holes, metal, mounting, runs, fuelLine, vanAgain, firstRun, handingOver)

// Whose word goes before the program's.
const (
	heaterSays = "the heater's own instructions"
	vanSays    = "the van maker"
	tinSays    = "what stands on the tin"
)
