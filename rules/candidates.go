package rules

import (
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// The fields of an Advice that are not keys of an obstruction.
const (
	FieldTie     = "tie"
	FieldDrilled = "drilled"
)

// candidates are the readings that might be taken for a job's doubtful findings.
func candidates(r *Result) []Advice {
	c := candidate{r: r, done: map[int]bool{}}
	for i := range r.Findings {
		f := &r.Findings[i]
		at := int(f.Against.Index)
		if f.Verdict == Doubtful && f.Against.Sort == AnObstruction && !c.done[at] {
			c.done[at] = true
			c.obstruction(at)
		}
	}
	c.openings()
	c.fittings()
	c.ties()
	c.pilot()
	return c.list
}

// candidate collects readings to simulate.
type candidate struct {
	r    *Result
	done map[int]bool
	list []Advice
}

func (c *candidate) add(text string, obstruction int, field string, taken func(vehicles.Job) vehicles.Job) {
	c.list = append(c.list, Advice{What: text, Obstruction: obstruction, Opening: -1, Field: field, taken: taken})
}

// of adds a reading of an obstruction.
func (c *candidate) of(i int, field, words string, change func(*vehicles.Obstruction)) {
	c.add(c.r.Job.Obstructions[i].Name+", "+words, i, field, func(job vehicles.Job) vehicles.Job {
		o := job.Obstructions[i]
		change(&o)
		job.Obstructions = job.Obstructions.With(i, o)
		return job
	})
}

// obstruction adds what may be measured of one that a doubtful finding is about, or of what it runs on from.
func (c *candidate) obstruction(i int) {
	o, placed := &c.r.Job.Obstructions[i], &c.r.Plan.Obstructions[i]
	if !o.Measured {
		c.of(i, "measured", "confirm it on this van", func(o *vehicles.Obstruction) { o.Measured = true })
	}
	low := c.expectedLow(o)
	if !o.Drop.Set {
		c.of(i, "drop", "drop", func(o *vehicles.Obstruction) {
			o.Drop = vehicles.Span{From: 0, To: low, Set: true}
		})
	}
	if placed.Loose && !o.TapedAt.Set && !o.Drop.Set {
		c.of(i, "taped_at", "height below floor where the tape was", func(o *vehicles.Obstruction) { o.TapedAt = vehicles.Some(low) })
	}
	c.chains(i)
	if (placed.Loose || placed.Unclosed) && i > 0 && c.runsOn(i) && !c.done[i-1] {
		c.done[i-1] = true
		c.obstruction(i - 1) // the doubt may come from there
	}
}

// expectedLow is the drop at which the underside of a thing is expected: where x was taped, or as low as those of its
// kind on this van are on the mean, or as all are.
func (c *candidate) expectedLow(o *vehicles.Obstruction) float64 {
	if o.TapedAt.Set {
		return max(o.TapedAt.Value, 0)
	}
	var same, all mean
	for i := range c.r.Job.Obstructions {
		if q := &c.r.Job.Obstructions[i]; q.Drop.Set {
			all.add(q.Drop.To)
			if q.Kind == o.Kind {
				same.add(q.Drop.To)
			}
		}
	}
	if same.n > 0 {
		return max(same.value(), 0)
	}
	return max(all.value(), 0)
}

type mean struct {
	sum float64
	n   int
}

func (m *mean) add(v float64) { m.sum, m.n = m.sum+v, m.n+1 }

// value is 0 for the mean of nothing: level with the floor's underside.
func (m *mean) value() float64 {
	if m.n == 0 {
		return 0
	}
	return m.sum / float64(m.n)
}

func (c *candidate) runsOn(i int) bool {
	o := &c.r.Job.Obstructions[i]
	first := []survey.Reading{o.X[0], o.Y[0]}
	switch {
	case o.Shape == vehicles.Disc:
		first = o.Centre[:]
	case o.Shape == vehicles.Piped && len(o.Path) > 0:
		first = o.Path[0][:]
	}
	return slices.ContainsFunc(first, func(r survey.Reading) bool { return r.Start == survey.On })
}

// chains adds an overall reading to where each chain that ends with a rectangle or a round goes: from the bumper in x,
// from the centreline in y.
func (c *candidate) chains(i int) {
	o, f := &c.r.Job.Obstructions[i], &c.r.Plan.Obstructions[i].Prism.Footprint
	ends := [2]survey.Reading{o.X[1], o.Y[1]}
	place := geometry.Point{X: f.Middle.X + f.Half.X, Y: f.Middle.Y}
	switch o.Shape {
	case vehicles.Disc:
		ends, place = o.Centre, f.Middle
	case vehicles.Piped:
		last := len(o.Path) - 1
		ends, place = o.Path[last], f.Path[last]
	}
	h, done := c.heightTaped(o), func(axis survey.Axis) bool {
		return ends[axis].Start != survey.On || o.Total[axis].Text != "" && !c.r.Plan.Obstructions[i].Unclosed
	}
	if !done(survey.X) {
		said := survey.AboveReading(c.r.Job.BelowBumper(place), h)
		c.of(i, "total.x", "overall reading from the "+c.r.Job.Datum.Called()+" to where its chain ends", func(o *vehicles.Obstruction) {
			o.Total[survey.X] = survey.FromNumber(said, false)
		})
	}
	if !done(survey.Y) {
		y := c.chainEndY(i, place.Y)
		c.of(i, "total.y", "overall reading from the centreline to where its chain ends", func(o *vehicles.Obstruction) {
			o.Total[survey.Y] = survey.FromNumber(y, false)
		})
	}
}

// heightTaped is how far the tape's zero hangs from where x was taped, 0 when it is level or nobody knows.
func (c *candidate) heightTaped(o *vehicles.Obstruction) float64 {
	hook := c.r.Job.Datum.HookBelow
	switch {
	case !hook.Set:
		return 0
	case o.TapedAt.Set:
		return hook.Value - o.TapedAt.Value
	case o.Drop.Set:
		return hook.Value - o.Drop.To
	}
	return 0
}

// chainEndY is where the second y of a thing is: its left edge when the chain runs to the left, else its right one.
func (c *candidate) chainEndY(i int, middle float64) float64 {
	o, f := &c.r.Job.Obstructions[i], &c.r.Plan.Obstructions[i].Prism.Footprint
	if o.Shape != vehicles.Box {
		return middle
	}
	for k := i; k >= 0; k-- {
		q := &c.r.Job.Obstructions[k]
		start := q.Y[0].Start
		switch q.Shape {
		case vehicles.Disc:
			start = q.Centre[1].Start
		case vehicles.Piped:
			start = q.Path[0][1].Start
		}
		if start != survey.On {
			if start == survey.FromLeft {
				return middle - f.Half.Y
			}
			break
		}
	}
	return middle + f.Half.Y
}

// fittings adds those not confirmed on this van.
func (c *candidate) fittings() {
	for i, f := range c.r.Job.Fittings {
		if f.Unconfirmed {
			f.Unconfirmed = false
			c.confirm(f.Name, func(job *vehicles.Job) { job.Fittings = job.Fittings.With(i, f) })
		}
	}
}

// openings adds those not confirmed on this van.
func (c *candidate) openings() {
	for i, o := range c.r.Job.Openings {
		if o.Unconfirmed {
			o.Unconfirmed = false
			c.confirm(o.Name, func(job *vehicles.Job) { job.Openings = job.Openings.With(i, o) })
			c.list[len(c.list)-1].Opening = i
		}
	}
}

// confirm adds that a thing from a library or another van is measured on this one.
func (c *candidate) confirm(name string, confirmed func(*vehicles.Job)) {
	c.add(name+", confirm it on this van", -1, "measured", func(job vehicles.Job) vehicles.Job {
		confirmed(&job)
		return job
	})
}

// ties adds matching points still needed, one that seems wrong, and one more than there are.
func (c *candidate) ties() {
	fit := &c.r.Plan.Fit
	if c.r.Job.Cut == nil || c.r.Plan.Cut.Drilled && len(c.r.Job.Fittings) == 0 {
		return
	}
	words, want := "one more matching point, from both sides of the floor", 1
	if fit.N == 0 {
		words, want = "two matching points well apart, each from both sides of the floor", 2
	}
	c.add(words, -1, FieldTie, func(job vehicles.Job) vehicles.Job {
		for k := range want {
			job.Ties = job.Ties.Insert(len(job.Ties), c.expectedTie(job, k))
		}
		return job
	})
	for i, residual := range survey.LeaveOneOut(c.r.Plan.Ties) {
		if fit.Suspect == residual.Name || fit.Statistic > survey.ChiSquared99(2*fit.N-3) {
			c.tieAgain(residual, i)
		}
	}
}

// tieAgain adds a tie measured again from above, where the others say it is.
func (c *candidate) tieAgain(others survey.LeftOut, used int) {
	index := -1
	for i, t := range c.r.Job.Ties {
		if t.Use {
			used--
		}
		if used < 0 {
			index = i
			break
		}
	}
	c.add(others.Name+" again, from above, as a matching point", -1, FieldTie, func(job vehicles.Job) vehicles.Job {
		t := job.Ties[index]
		t.Above = c.saidAbove(others.Predicted)
		job.Ties = job.Ties.With(index, t)
		return job
	})
}

// expectedTie is a tie that agrees with the fit: at corners of the floor across from each other, so that the two are
// well apart.
func (c *candidate) expectedTie(job vehicles.Job, k int) vehicles.Tie {
	low, high := c.r.Plan.FloorMin, c.r.Plan.FloorMax
	p := geometry.Point{X: low.X + (high.X-low.X)/4, Y: low.Y / 2}
	if k%2 == 0 {
		p = geometry.Point{X: low.X + (high.X-low.X)*3/4, Y: high.Y / 2}
	}
	return vehicles.Tie{Name: job.UniqueName("matching point"), Use: true, Below: c.saidBelow(p), Above: c.saidAbove(c.r.Plan.Fit.Up(p))}
}

// saidBelow and saidAbove are what the tape says of a place on the floor, y from the centreline.
func (c *candidate) saidBelow(p geometry.Point) vehicles.Pair {
	return vehicles.Pair{
		survey.FromNumber(reading(c.r.Job.BelowBumper(p), c.r.Job.Datum.HookBelow), false), survey.FromNumber(p.Y, false),
	}
}

func (c *candidate) saidAbove(p geometry.Point) vehicles.Pair {
	return vehicles.Pair{
		survey.FromNumber(reading(c.r.Job.AboveBumper(p), c.r.Job.Datum.HookAbove), false), survey.FromNumber(p.Y, false),
	}
}

// pilot adds drilling the pilot hole and measuring it from below.
func (c *candidate) pilot() {
	if c.r.Job.Cut == nil || c.r.Plan.Cut.Drilled {
		return
	}
	p := c.saidBelow(c.r.Plan.Cut.Intended)
	c.add("the pilot hole from below, once it is drilled", -1, FieldDrilled, func(job vehicles.Job) vehicles.Job {
		return job.WithDrilled(&p)
	})
}
