package rules

import (
	"fmt"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// Deviation is one figure of what was made otherwise than planned. Of a table that differs in none of those that people type Planned and
// Built are not set.
type Deviation struct {
	Table          vehicles.BuiltTable
	What           Measured
	Unit           Unit // MM, or Degree
	Planned, Built vehicles.Number
	Sigma          vehicles.Number // standard uncertainty of Built, mm; not set where nothing was read
	Unexplained    bool            // the hole is farther off than marks and readings explain: sawn elsewhere, or misread
	Verdict        Verdict         // the worst finding of it as built
}

// Measured is which figure of a table came out otherwise; its zero value is the table as a whole.
type Measured struct {
	Point int // of a run's path, 1 the first; 0 for what is of none
	Of    MeasuredOf
}

// MeasuredOf is what is measured there.
type MeasuredOf uint8

// What people type of what they built.
const (
	MeasuredWhole MeasuredOf = iota
	MeasuredAlong
	MeasuredAcross
	MeasuredDrop
	MeasuredCollar // how deep the collar is
	MeasuredPoints // where the warm air points
)

// String is what programs read: "along", "collar", "point 2 drop"; "" for a whole table.
func (m Measured) String() string {
	word := [...]string{"", "along", "across", "drop", "collar", "points"}[m.Of]
	if m.Point > 0 {
		return fmt.Sprintf("point %d %s", m.Point, word)
	}
	return word
}

// By is how much more was built than planned, of an angle the shorter way round; ok is false where either is not known.
func (d Deviation) By() (by float64, ok bool) {
	by = d.Built.Value - d.Planned.Value
	if d.Unit == Degree {
		by = geometry.WithinHalfTurn(by)
	}
	return by, d.Planned.Set && d.Built.Set
}

// Deviations are what was made otherwise than planned, by table in the order of the job file, each with what it came to.
func Deviations(planned, built *Result) (list []Deviation) {
	made := planned.Job.BuiltOtherwise()
	in := func(table vehicles.BuiltTable, look func(d *deviator)) {
		d := deviator{table: table, worst: worstOf(table, built)}
		if look(&d); len(d.list) == 0 {
			d.list = []Deviation{{Table: table, Verdict: d.worst}}
		}
		list = append(list, d.list...)
	}
	if made.Heater != nil {
		in(vehicles.BuiltHeater, func(d *deviator) { d.heater(planned.Job.Heater, made.Heater) })
	}
	if made.Cut != nil {
		in(vehicles.BuiltCut, func(d *deviator) { d.cut(planned, built) })
	}
	for _, k := range vehicles.RunKinds {
		if is := made.Run(k); is != nil {
			in(vehicles.BuiltRun(k), func(d *deviator) { d.run(planned.Job.Run(k), is) })
		}
	}
	return list
}

// deviator gathers what is otherwise in one table.
type deviator struct {
	table vehicles.BuiltTable
	worst Verdict
	list  []Deviation
}

// put adds a figure that is another than planned.
func (d *deviator) put(what Measured, unit Unit, planned, built vehicles.Number) {
	if planned != built {
		d.add(what, unit, planned, built)
	}
}

// add adds a figure, whatever was planned.
func (d *deviator) add(what Measured, unit Unit, planned, built vehicles.Number) *Deviation {
	d.list = append(d.list, Deviation{Table: d.table, What: what, Unit: unit, Planned: planned, Built: built, Verdict: d.worst})
	return &d.list[len(d.list)-1]
}

// cut is where the hole came out: planned is where it was judged to be, at the pilot hole once that is measured.
func (d *deviator) cut(planned, built *Result) {
	is, made := &built.Plan.Cut, planned.Job.Built.Cut
	if planned.Job.Cut == nil {
		return
	}
	was := planned.Plan.Cut.At
	unexplained := made.Sawn != (vehicles.Pair{}) && !explains(planned, built)
	for axis, at := range [...][2]float64{{was.X, is.At.X}, {was.Y, is.At.Y}} {
		if made.Sawn[axis].Text == "" && made.At[axis] == planned.Job.Cut.At[axis] {
			continue
		}
		one := d.add(Measured{Of: MeasuredAlong + MeasuredOf(axis)}, MM, vehicles.Some(at[0]), vehicles.Some(at[1]))
		one.Unexplained = unexplained
		if made.Sawn[axis].Text != "" {
			one.Sigma = vehicles.Some([...]float64{is.UX, is.UY}[axis])
		}
	}
}

// explains tells whether marks and readings explain how far from its mark a hole as built was read, by what is asked of a pilot hole.
func explains(planned, built *Result) bool {
	plan := planned.Plan
	plan.Cut.At, plan.Cut.UX, plan.Cut.UY = built.Plan.Cut.At, built.Plan.Cut.UX, built.Plan.Cut.UY
	return offsetSquare(&planned.Job, &plan) <= planned.Book.pilotLimit()
}

func (d *deviator) heater(was, is *vehicles.Heater) {
	if was == nil {
		return
	}
	d.put(Measured{Of: MeasuredCollar}, MM, was.Turret, is.Turret)
	d.put(Measured{Of: MeasuredPoints}, Degree, vehicles.Some(geometry.WithinHalfTurn(was.Yaw)), vehicles.Some(geometry.WithinHalfTurn(is.Yaw)))
}

// run is where the points of a run came out.
func (d *deviator) run(was, is *vehicles.Run) {
	if was == nil {
		return
	}
	for i := range max(len(was.Path), len(is.Path)) {
		p, q := pointAt(was.Path, i), pointAt(is.Path, i)
		for c := range p {
			d.put(Measured{i + 1, MeasuredAlong + MeasuredOf(c)}, MM, p[c], q[c])
		}
	}
}

// pointAt are the coordinates of a point of a path, not set for one that it has not.
func pointAt(path []vehicles.RunPoint, i int) (p [3]vehicles.Number) {
	if i < len(path) {
		p = [3]vehicles.Number{vehicles.Some(path[i].X), vehicles.Some(path[i].Y), vehicles.Some(path[i].Drop)}
	}
	return p
}

// worstOf is the worst verdict of what hangs on a table, as built; what the cut carries is the cut's and the heater's.
func worstOf(table vehicles.BuiltTable, built *Result) Verdict {
	worst := Clear
	for i := range built.Findings {
		f := &built.Findings[i]
		if f.Subject.of(table) || f.Against.of(table) {
			worst = max(worst, f.Verdict)
		}
	}
	return worst
}

// of tells whether a thing is where it is by what a table of the job file says.
func (t Thing) of(table vehicles.BuiltTable) bool {
	switch table {
	case vehicles.BuiltCut:
		return t.onCut()
	case vehicles.BuiltHeater:
		return t.onCut() && t.Sort != TheCut || t.Sort == TheHeater || t.Sort == TheStack || t.Sort == TheFuelStub
	case vehicles.BuiltExhaust:
		return t.Sort == TheExhaust || t.Sort == TheMuffler
	case vehicles.BuiltIntake:
		return t.Sort == TheIntake
	}
	return t.Sort == TheFuel
}
