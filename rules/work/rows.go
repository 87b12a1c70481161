package work

import "bench.example/undermark/vehicles"

// Row is a step as a sheet of paper has it: a box to tick, what is done, and room for what is measured, filled in as far as it is recorded.
type Row struct {
	Part     string // in the first row of each part, else ""
	Ticked   bool
	Name     string
	Do       string // with what of the job it is done to
	Wanted   string // what is measured and expected; "" where nothing is measured
	Briefly  string // the same without rules.Practice, which a sheet says once
	Unit     string // of the value, for an empty box
	Value    string // without its unit; "" while nothing is noted
	When     string // "" while it is not done
	Due      string // the day that was agreed; Dated where one is to be agreed
	Dated    bool
	Note     string
	Photos   []string
	Wrong    string // its value is amiss or not noted, or it was done too early
	Barred   string // why it must not be done as the job stands; "" for nothing, and once it is done
	Cautions string // what the caution is about that stands with it
}

// Rows are the steps as a sheet has them.
func (l List) Rows() []Row { return l.rows(func(*Step) bool { return true }) }

// FirstRun is the record of the first run: what is done, measured and agreed from the alarm on.
func (l List) FirstRun() []Row {
	return l.rows(func(s *Step) bool { return s.Part == FirstRun || s.Dated })
}

func (l List) rows(of func(*Step) bool) (rows []Row) {
	last := partCount
	for i := range l {
		s := &l[i]
		if !of(s) {
			continue
		}
		row := Row{
			Ticked: s.Ticked(), Name: s.Name(), Do: s.Sentence(), Wanted: s.Wanted(), Briefly: s.briefly(), Unit: s.Unit, Value: s.Done.Value.Text(), When: s.Done.When(),
			Due: s.Done.Due, Dated: s.Dated, Note: s.Done.Note, Photos: s.Done.Photos, Wrong: l.Wrong(i), Barred: s.Barred(), Cautions: s.Caution,
		}
		if s.Part != last {
			row.Part, last = s.Part.String(), s.Part
		}
		rows = append(rows, row)
	}
	return rows
}

// Wrong says what is wrong with what is recorded of step i: its value is amiss or not noted, or it was done too early; "" for nothing.
func (l List) Wrong(i int) string {
	s := &l[i]
	switch {
	case s.Amiss() != "":
		return s.Amiss()
	case s.Ticked() && (len(l.Early(i)) > 0 || s.Foul != ""):
		return l.Warning(i)
	}
	return s.Lacks()
}

// Unplaced are what a sheet says of records of steps that the job has not, each with the name of its step.
func (l List) Unplaced(j *vehicles.Job) (rows []Row) {
	for _, d := range l.Elsewhere(j) {
		rows = append(rows, Row{
			Ticked: d.At != "", Name: vehicles.StepName(d.Step), Value: d.Value.Text(), Unit: vehicles.StepUnit(d.Step), When: d.When(), Due: d.Due, Note: d.Note, Photos: d.Photos,
		})
	}
	return rows
}
