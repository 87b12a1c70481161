package work

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/features"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// Where a run's points came out is read with a tape as they are elsewhere: from the datum line, from the centreline or a side edge, and
// how far below the floor; + runs on from the point before. A point above the floor is read from above.

// tapeTo is a job whose points are taped, with how its frame above lies to that below.
type tapeTo struct {
	*vehicles.Job
	frames survey.Fit
}

// runSlots are the points of a run: as many as it has.
func runSlots(kind vehicles.RunKind, j tapeTo) (slots form.Slots) {
	of := func(j vehicles.Job) *vehicles.Run { return j.Run(kind) }
	with := func(b vehicles.Built, r *vehicles.Run) vehicles.Built { return b.WithRun(kind, r) }
	asBuilt := j.AsBuilt()
	for i := range asBuilt.Run(kind).Path {
		slot := made(form.Field{Key: fmt.Sprint("p", i), Label: fmt.Sprint("point ", i+1)}, of, with,
			func(r vehicles.Run) string { return pointSaid(j, &r, i) },
			func(r *vehicles.Run, text string) error {
				p, err := pointOf(j, r.Path, i, text)
				if err == nil {
					r.Path = r.Path.With(i, nearPlanned(p, of(*j.Job), i))
					r.Taped = tapedWith(r, of(*j.Job), i, text)
				}
				return err
			})
		slot.Say = func(f *form.Field, s desk.State) { sayPoint(f, of, i, s) }
		slots = append(slots, slot)
	}
	return slots
}

// sayPoint says how a point is read, and once it is what it comes to beside what was planned.
func sayPoint(f *form.Field, of func(vehicles.Job) *vehicles.Run, i int, s desk.State) {
	f.Blank = "planned: " + pointAsWritten(tapeTo{&s.Job, s.Plan.Fit}, of(s.Job).Path, i, survey.Figure)
	f.Note = "from the " + desk.Datum(&s.Job.Datum, 16) + ", across (L 693, R 1082, -240), below the floor; + runs on from the point before"
	planned, built := of(s.Job).Path, of(s.Job.AsBuilt()).Path
	if f.Text == "" || i >= len(planned) || i >= len(built) {
		return
	}
	u, is, was := s.Settings.Units, built[i], planned[i]
	f.Note = "= " + desk.AtX(is.X, u) + ", " + desk.Across(is.Y, s.Settings) + ", " + desk.Length(is.Drop, u) + " below"
	if way := words.Way(geometry.Point{X: is.X - was.X, Y: is.Y - was.Y}, s.Settings); way != "" {
		f.Note += "; it is " + way
	}
}

// pointSaid is a point of a run as the tape said it, where that still comes to it, else as the tape would say it; "" for one that it has not.
func pointSaid(j tapeTo, r *vehicles.Run, i int) string {
	if i < len(r.Taped) && i < len(r.Path) && r.Taped[i] != "" {
		if p, err := pointOf(j, r.Path, i, r.Taped[i]); err == nil && same(p, r.Path[i]) {
			return r.Taped[i]
		}
	}
	return pointText(j, r.Path, i)
}

// tapedWith are the texts of a run's points with another for one; a point that is as planned has none.
func tapedWith(r *vehicles.Run, planned *vehicles.Run, i int, text string) vehicles.List[string] {
	texts := make(vehicles.List[string], len(r.Path))
	copy(texts, r.Taped)
	texts[i] = strings.TrimSpace(text)
	if planned != nil && i < len(planned.Path) && r.Path[i] == planned.Path[i] {
		texts[i] = ""
	}
	if strings.Join(texts, "") == "" {
		return nil
	}
	return texts
}

// pointText is a point of a path as the tape says it, "" for one that it has not.
func pointText(j tapeTo, path []vehicles.RunPoint, i int) string {
	return pointAsWritten(j, path, i, exact)
}

// pointAsWritten is such a text with its figures as written.
func pointAsWritten(j tapeTo, path []vehicles.RunPoint, i int, written func(float64) string) string {
	if i >= len(path) {
		return ""
	}
	p := path[i]
	x, y := rules.ReadPoint(j.Job, j.frames, geometry.Point{X: p.X, Y: p.Y}, p.Drop)
	return written(x) + ", " + written(y) + ", " + written(p.Drop)
}

func exact(v float64) string { return survey.Exact(moving.Hundredth(v)) }

// alike is what two places may be apart and be one, mm: readings and places are kept to 0.01.
const alike = 0.02

func same(p, q vehicles.RunPoint) bool {
	return math.Abs(p.X-q.X) < alike && math.Abs(p.Y-q.Y) < alike && math.Abs(p.Drop-q.Drop) < alike
}

// nearPlanned takes a coordinate of the plan in place of one that shows the same figures.
func nearPlanned(p vehicles.RunPoint, planned *vehicles.Run, i int) vehicles.RunPoint {
	if planned == nil || i >= len(planned.Path) {
		return p
	}
	is := planned.Path[i]
	for to, was := range map[*float64]float64{&p.X: is.X, &p.Y: is.Y, &p.Drop: is.Drop} {
		if math.Abs(*to-was) < alike {
			*to = was
		}
	}
	return p
}

// pointOf reads a point of a path: along the van, across it, and how far below the floor.
func pointOf(j tapeTo, path []vehicles.RunPoint, i int, text string) (p vehicles.RunPoint, err error) {
	parts := pointParts(text)
	if len(parts) != 3 {
		return p, fmt.Errorf("%q: a point is along, across and below the floor, like 1378, L 368, 184", form.Quoted(text))
	}
	x, errX := survey.Typed(parts[0], survey.X)
	y, errY := survey.Typed(parts[1], survey.Y)
	drop, errDrop := form.Length(parts[2], vehicles.ALength)
	if err = errors.Join(errX, errY, errDrop); err != nil {
		return p, err
	}
	before := vehicles.RunPoint{}
	switch {
	case x.Start != survey.On && y.Start != survey.On:
	case i == 0:
		return p, j.Datum.NothingBefore()
	default:
		before = path[i-1]
	}
	return taped(j, x, y, drop, before)
}

// taped is where two readings come to, so far below the floor; one with + is so far on from the point before.
func taped(j tapeTo, x, y survey.Reading, drop float64, before vehicles.RunPoint) (p vehicles.RunPoint, err error) {
	there, across := rules.ReadPoint(j.Job, j.frames, geometry.Point{X: before.X, Y: before.Y}, drop)
	onX, onY := x, y
	if x.Start == survey.On {
		x = survey.FromNumber(there, false)
	}
	if y.Start == survey.On {
		y = survey.FromNumber(across, false)
	}
	at, err := features.RunPoint(*j.Job, j.frames, vehicles.Pair{x, y}, drop)
	p = vehicles.RunPoint{X: moving.Hundredth(at.X), Y: moving.Hundredth(at.Y), Drop: drop}
	if onX.Start == survey.On {
		p.X = moving.Hundredth(before.X + onX.Length)
	}
	if onY.Start == survey.On {
		p.Y = moving.Hundredth(before.Y + onY.Length)
	}
	return p, err
}

// pointParts are the three texts of a point: between commas, or between blanks where there are none. L, R and + go with what they stand before.
func pointParts(text string) (parts []string) {
	if strings.Contains(text, ",") {
		return strings.Split(text, ",")
	}
	with := ""
	for _, word := range strings.Fields(text) {
		if strings.ContainsAny(word, "lLrR+") && len(word) == 1 {
			with = word
			continue
		}
		parts, with = append(parts, with+word), ""
	}
	return parts
}
