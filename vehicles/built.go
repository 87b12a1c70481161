package vehicles

import (
	"slices"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

// Built is what of the plan was made otherwise, as it came out: whole tables in place of those planned, nil for what is as planned.
// What is under the floor and on it is the same for both.
type Built struct {
	Heater                *Heater
	Cut                   *Cut
	Exhaust, Intake, Fuel *Run
}

// AsBuilt returns the job as it was built: what was made otherwise stands in place of what was planned.
func (j Job) AsBuilt() Job {
	b := j.Built
	j.Built = nil
	if b == nil {
		return j
	}
	if b.Heater != nil {
		j.Heater = b.Heater
	}
	if b.Cut != nil {
		j.Cut = b.Cut
	}
	for _, k := range RunKinds {
		if r := *b.run(k); r != nil {
			*j.run(k) = r
		}
	}
	return j
}

func (b *Built) run(k RunKind) **Run { return [...]**Run{&b.Exhaust, &b.Intake, &b.Fuel}[k] }

// Run is the run of a kind as it was built, nil where it is as planned.
func (b Built) Run(k RunKind) *Run { return *b.run(k) }

// WithRun puts a run in as it was built; nil says that it is as planned.
func (b Built) WithRun(k RunKind, r *Run) Built {
	*b.run(k) = r
	return b
}

// BuiltOtherwise is what of the job was made otherwise, its zero value for nothing.
func (j Job) BuiltOtherwise() Built {
	if j.Built == nil {
		return Built{}
	}
	return *j.Built
}

// WithBuilt returns the job with what was made otherwise.
func (j Job) WithBuilt(b Built) Job {
	if j.Built = &b; b == (Built{}) {
		j.Built = nil
	}
	return j
}

// ReadSawn returns a cut as built with where its hole was read from below along an axis; a reading without text says that it was
// not, and it is there as it was planned. At is where the readings come to, to 0.01 mm. What was read of the pilot says nothing of the
// hole then, and holds again once nothing was made otherwise. The job must have a cut; a reading that can't be reduced leaves At as it was.
func (j *Job) ReadSawn(c Cut, axis survey.Axis, reading survey.Reading) Cut {
	if c.Sawn[axis] = reading; reading.Text == "" {
		c.At[axis] = j.Cut.At[axis]
	}
	r := newReducer(j)
	place := CutPlace{At: geometry.Point{X: c.At[0], Y: c.At[1]}}
	if r.sawn(&place, &c.Sawn, &thing{"cut", -1, ""}); len(r.faults) == 0 {
		for i, v := range []float64{place.At.X, place.At.Y} {
			if c.Sawn[i].Text != "" {
				c.At[i] = hundredth(v)
			}
		}
	}
	c.Drilled, c.Direct = nil, nil
	if c.Sawn == (Pair{}) && c.At == j.Cut.At {
		c.Drilled, c.Direct = j.Cut.Drilled, j.Cut.Direct
	}
	return c
}

// built reads what was made otherwise, nil for nothing.
func (t *table) built(j *Job) {
	s := t.sub("built", optional)
	if s == nil {
		return
	}
	var made Job
	s.made(&made)
	s.done()
	*j = j.WithBuilt(Built{made.Heater, made.Cut, made.Exhaust, made.Intake, made.Fuel})
}

func (w *writer) built(b Built) {
	made := Job{Heater: b.Heater, Cut: b.Cut, Exhaust: b.Exhaust, Intake: b.Intake, Fuel: b.Fuel}
	w.under = "built."
	w.made(made)
	w.under = ""
}

// builtFaults are the faults of the job as it was built that it has not as planned, under the keys that its file has them. What was
// surveyed is where the plan has it: only what was made otherwise is reduced anew.
func (j *Job) builtFaults(plan *Plan, planned []Fault, closure float64) (faults []Fault) {
	if j.Built == nil {
		return nil
	}
	built := j.AsBuilt()
	_, all := ReduceAfter(plan, &built, closure)
	for _, f := range all {
		if slices.ContainsFunc(planned, func(p Fault) bool { return p.Key == f.Key && p.Text == f.Text }) {
			continue
		}
		if j.Built.has(f.Key) {
			f.Key = "built." + f.Key
		}
		f.Text = "as built: " + f.Text
		faults = append(faults, f)
	}
	return faults
}

// BuiltTable is a table of the job file that may have been made otherwise than planned.
type BuiltTable uint8

// The tables, the runs' in the order of RunKinds.
const (
	BuiltHeater BuiltTable = iota
	BuiltCut
	BuiltExhaust
	BuiltIntake
	BuiltFuel
)

// String is the table's name in the file.
func (t BuiltTable) String() string {
	return [...]string{"heater", "cut", "exhaust", "intake", "fuel"}[t]
}

// BuiltRun is the table of a run.
func BuiltRun(k RunKind) BuiltTable { return BuiltExhaust + BuiltTable(k) }

// Tables are the tables of the file that were made otherwise, in its order.
func (b Built) Tables() (made []BuiltTable) {
	if b.Heater != nil {
		made = append(made, BuiltHeater)
	}
	if b.Cut != nil {
		made = append(made, BuiltCut)
	}
	for _, k := range RunKinds {
		if b.Run(k) != nil {
			made = append(made, BuiltRun(k))
		}
	}
	return made
}

// has tells whether a key is of a table that was made otherwise.
func (b Built) has(key string) bool {
	table, _, _ := strings.Cut(key, ".")
	return slices.ContainsFunc(b.Tables(), func(t BuiltTable) bool { return t.String() == table })
}

// naming does to the job as it was built what changes who says an obstruction's name in a job.
func (j Job) naming(change func(Job) Job) Job {
	if j.Built == nil {
		return j
	}
	b := *j.Built
	made := change(Job{Cut: b.Cut, Exhaust: b.Exhaust, Fuel: b.Fuel})
	b.Cut, b.Exhaust, b.Fuel = made.Cut, made.Exhaust, made.Fuel
	return j.WithBuilt(b)
}
