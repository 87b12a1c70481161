package rules

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// Slip is one mistake that would explain where a pilot hole came out.
type Slip struct {
	Text      string  // in a fitter's words
	Statistic float64 // of what is left of the offset with the mistake put right
	right     func(vehicles.Job) vehicles.Job
}

// Apply returns the job with the mistake put right: a reading of the hole as it must have been, or cut.at where the mark
// from above was in truth put. Judged again, the tapes explain what is left.
func (s Slip) Apply(job vehicles.Job) vehicles.Job { return s.right(job) }

// misreadings are the lengths by which tapes are most often misread, mm: a centimetre and a decimetre.
var misreadings = []float64{10, 100}

// slips returns the single mistakes that would explain the offset, those that leave least first.
func slips(r *Result) []Slip {
	s := slipper{job: &r.Job, plan: &r.Plan}
	s.belowX()
	s.belowY()
	s.aboveX()
	s.aboveY()
	s.ties()
	var list []Slip
	for _, slip := range s.list {
		job := slip.Apply(r.Job)
		plan, faults := Reduce(job, r.Book)
		if len(faults) > 0 {
			continue
		}
		if left := offset(&job, &plan, r.Book.pilotLimit()); left.Explained {
			slip.Statistic = left.Statistic
			list = append(list, slip)
		}
	}
	slices.SortStableFunc(list, func(a, b Slip) int { return cmp.Compare(a.Statistic, b.Statistic) })
	return list
}

// slipper collects mistakes to try.
type slipper struct {
	job  *vehicles.Job
	plan *vehicles.Plan
	list []Slip
}

// drilled tries another reading of the hole from below.
func (s *slipper) drilled(axis survey.Axis, reading survey.Reading, format string, args ...any) {
	s.list = append(s.list, Slip{Text: "from below: " + fmt.Sprintf(format, args...), right: func(job vehicles.Job) vehicles.Job {
		p := *job.Cut.Drilled
		p[axis] = reading
		return job.WithDrilled(&p)
	}})
}

// marked tries another place of the mark from above.
func (s *slipper) marked(up geometry.Point, format string, args ...any) {
	at := s.plan.Fit.Down(up)
	s.list = append(s.list, Slip{Text: "from above: " + fmt.Sprintf(format, args...), right: func(job vehicles.Job) vehicles.Job {
		c := *job.Cut
		c.At = [2]float64{at.X, at.Y}
		return job.WithCut(c)
	}})
}

// misread tries a reading of the hole that was read wrong by a round length.
func (s *slipper) misread(axis survey.Axis, name string) {
	said := s.job.Cut.Drilled[axis]
	for _, by := range misreadings {
		for _, length := range []float64{said.Length - by, said.Length + by} {
			s.drilled(axis, starting(said.Start, length), "%s was read as %s, it is %s: a misreading by %s",
				name, said, survey.Figure(length), survey.InMM(by))
		}
	}
}

func (s *slipper) belowX() {
	said, d := s.job.Cut.Drilled[survey.X], &s.job.Datum
	s.misread(survey.X, "the reading from the "+d.Called())
	if h := d.HookBelow.Value; d.HookBelow.Set && h != 0 {
		s.drilled(survey.X, survey.FromNumber(survey.AboveReading(said.Length, h), false),
			"the tape from the %s was held level, and no hook height of %s is to be taken off", d.Called(), survey.InMM(h))
	}
	if shift := d.ShiftAbove.Value; shift != 0 {
		bumper := s.job.BelowBumper(s.plan.Cut.At) + shift
		s.drilled(survey.X, survey.FromNumber(survey.AboveReading(bumper, d.HookBelow.Value), false),
			"the tape was hooked on the zero used above, %s further forward", survey.InMM(shift))
	}
}

func (s *slipper) belowY() {
	said, d := s.job.Cut.Drilled[survey.Y], &s.job.Datum
	s.misread(survey.Y, "the reading across")
	starts := map[survey.Start]string{
		survey.Datum: "the centreline", survey.FromLeft: "the left side edge", survey.FromRight: "the right side edge",
	}
	for _, start := range []survey.Start{survey.FromLeft, survey.FromRight, survey.Datum} {
		if start == said.Start {
			continue
		}
		length := math.Abs(said.Length)
		s.drilled(survey.Y, starting(start, length), "%s was taken from %s, not from %s", said, starts[start], starts[said.Start])
		if start == survey.Datum {
			s.drilled(survey.Y, starting(start, -length), "%s was taken from the centreline to the right, not from %s", said, starts[said.Start])
		}
	}
	if said.Start == survey.Datum && said.Length != 0 {
		s.drilled(survey.Y, starting(said.Start, -said.Length), "%s is on the other side of the centreline", said)
	}
	if h := d.SideBelow.Value; d.SideBelow.Set && h != 0 && said.Start != survey.Datum {
		s.drilled(survey.Y, starting(said.Start, math.Hypot(said.Length, h)),
			"the tape from the side edge was held level, and no height of %s is to be taken off", survey.InMM(h))
	}
}

func (s *slipper) aboveX() {
	d, up := &s.job.Datum, s.plan.Fit.Up(s.plan.Cut.Intended)
	plan, hook := s.job.AboveBumper(up), d.HookAbove.Value
	said := survey.AboveReading(plan, hook)
	land := func(length float64) geometry.Point {
		square := length*length - hook*hook
		return geometry.Point{X: up.X - plan + math.Copysign(math.Sqrt(max(0, square)), length), Y: up.Y}
	}
	for _, by := range misreadings {
		for _, length := range []float64{said - by, said + by} {
			s.marked(land(length), "the mark was put at %s from the %s, not at %s: a misreading by %s", survey.InMM(length), d.Called(), survey.Figure(said), survey.InMM(by))
		}
	}
	if hook != 0 {
		s.marked(land(plan), "the mark was put at %s from the %s, without the %s that the hook hangs lower", survey.InMM(plan), d.Called(), survey.InMM(hook))
	}
	if shift := d.ShiftAbove.Value; shift != 0 {
		s.marked(geometry.Point{X: up.X - shift, Y: up.Y}, "the mark was put from the zero used below, %s further back", survey.InMM(shift))
	}
}

func (s *slipper) aboveY() {
	left, right, up := s.job.AboveLeft(), s.job.AboveRight(), s.plan.Fit.Up(s.plan.Cut.Intended)
	side, said, away := "left", left-up.Y, -1.0
	if other := up.Y + right; other < said {
		side, said, away = "right", other, 1
	}
	for _, by := range misreadings {
		for _, length := range []float64{said - by, said + by} {
			to := geometry.Point{X: up.X, Y: up.Y + away*(length-said)}
			s.marked(to, "the mark was put at %s from the %s side edge, not at %s: a misreading by %s", survey.InMM(length), side, survey.Figure(said), survey.InMM(by))
		}
	}
	s.marked(geometry.Point{X: up.X, Y: left - right - up.Y}, "the mark was put from the other side edge: left and right were swapped")
	if up.Y != 0 {
		s.marked(geometry.Point{X: up.X, Y: -up.Y}, "the mark was put on the other side of the centreline")
	}
}

// ties tries each tie left out: the mark was put through a fit with it, and is in truth where the others say.
func (s *slipper) ties() {
	if s.plan.Fit.N < 3 {
		return
	}
	for i, tie := range s.job.Ties {
		if !tie.Use {
			continue
		}
		ties := slices.Clone(s.plan.Ties)
		ties[i].Use = false
		others, err := survey.FitTies(ties, s.job.SurveyTape().HeightU())
		if err != nil {
			continue
		}
		at := others.Down(s.plan.Fit.Up(s.plan.Cut.Intended))
		s.list = append(s.list, Slip{Text: fmt.Sprintf("between the two: matching point %q is wrong, and is to be left out", tie.Name), right: func(job vehicles.Job) vehicles.Job {
			out := job.Ties[i]
			out.Use = false
			c := *job.Cut
			c.At = [2]float64{at.X, at.Y}
			job.Ties = job.Ties.With(i, out)
			return job.WithCut(c)
		}})
	}
}

// starting is a reading of a length from a start.
func starting(start survey.Start, length float64) survey.Reading {
	r := survey.FromNumber(length, false)
	side := map[survey.Start]string{survey.FromLeft: "L ", survey.FromRight: "R "}[start]
	if side != "" {
		r = survey.Reading{Text: side + survey.Exact(length), Start: start, Length: length}
	}
	return r
}
