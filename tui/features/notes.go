package features

import (
	"errors"
	"math"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// placed is where a thing of the list is, as it was measured: a fitting above the floor.
func (l List) placed(plan vehicles.Plan, row int) vehicles.Placed {
	switch l {
	case Openings:
		return plan.Openings[row].Placed
	case Fittings:
		p := plan.Fittings[row]
		if plan.Fit.Tied() { // back up from where the ties carried it
			p.Prism.Footprint = p.Prism.Footprint.Moved(plan.Fit.Theta, plan.Fit.Shift)
		}
		return p
	case Ties:
		return vehicles.Placed{} // a tie moves nothing that runs on from it
	}
	return plan.Obstructions[row]
}

// Spot places a point that two readings give, so far below the floor, mm, taken as those of the list are: as the only thing
// of the job, so that there is nothing to run on from. The error says what is wrong with them.
func (l List) Spot(job vehicles.Job, at vehicles.Pair, drop float64) (vehicles.Placed, error) {
	place := vehicles.Place{Shape: vehicles.Disc, Centre: at, Across: vehicles.Some(1)}
	alone := vehicles.Job{Floor: job.Floor, Datum: job.Datum, Tape: job.Tape, Bow: job.Bow}
	if l == Fittings {
		alone.Fittings = vehicles.List[vehicles.Fitting]{{Place: place}}
	} else {
		alone.Obstructions = vehicles.List[vehicles.Obstruction]{{Place: place, TapedAt: vehicles.Some(drop)}}
	}
	plan, faults := rules.Reduce(alone, nil) // no chain: no book has a say
	if len(faults) > 0 {
		return vehicles.Placed{}, errors.New(faults[0].Text)
	}
	return l.placed(plan, 0), nil
}

// RunPoint is where two readings of a point of a run come to, in the frame below: read from below as obstructions are, from above where the
// point is above the floor; frames is how the frame above lies to that below.
func RunPoint(job vehicles.Job, frames survey.Fit, at vehicles.Pair, drop float64) (geometry.Point, error) {
	list := Obstructions
	if rules.PointAbove(&job, drop) {
		list = Fittings
	}
	placed, err := list.Spot(job, at, drop)
	p := placed.Prism.Footprint.Middle
	if list == Fittings && err == nil {
		p = frames.Down(p)
	}
	return p, err
}

// noter says what readings come to.
type noter struct {
	s      desk.State
	list   List
	placed vehicles.Placed
	offer  bool // a nearer datum line, with a long reading
	out    map[string]string
	took   map[string]float64 // how much of a reading the slope took, mm
}

// Notes are what the readings of a thing come to, by key: "= 645 mm from bumper ± 2, tape sloped 7". Of an
// unfinished thing they are there as far as it can be shown.
func (h Record) Notes(s desk.State) map[string]string {
	return h.noted(s).out
}

// noted is what its readings come to.
func (h Record) noted(s desk.State) noter {
	n := noter{s: s, list: h.List, offer: h.offersNearer(s.Job), out: map[string]string{}, took: map[string]float64{}}
	switch {
	case h.List == Ties:
		return n.ofTie(h, s)
	case h.Fresh:
		return n
	}
	j, row, plan := s.Job, h.Row, s.Plan
	if !h.Real(s.Job) {
		sketch := h.Sketch(s)
		j, row, plan = sketch.Job, sketch.Row, sketch.Plan
	}
	if row < 0 {
		return n
	}
	n.placed = h.List.placed(plan, row)
	t := h.List.At(j, row)
	switch t.Shape {
	case vehicles.Box:
		n.box(t)
	case vehicles.Piped:
		n.path(t, h.texts(s.Job))
	case vehicles.Disc:
		at := n.placed.Prism.Footprint.Middle
		n.x("cx", at.X, n.placed.X.U, t.Centre[0])
		n.y("cy", at.Y, n.placed.Y.U, t.Centre[1])
	}
	n.assumed(t)
	if h.Real(s.Job) {
		n.totals(row)
	} else {
		n.unread(h.texts(s.Job))
	}
	return n
}

// unread takes back what was said of places that only the sketch has: of a field without a text, and of one that runs on from it.
func (n *noter) unread(x texts) {
	for _, pair := range [][2]string{{"x0", "x1"}, {"y0", "y1"}, {"cx", "cy"}} {
		for _, key := range pair {
			if x[key] == "" {
				delete(n.out, key)
			}
		}
		if x[pair[0]] == "" && strings.HasPrefix(x[pair[1]], "+") {
			delete(n.out, pair[1])
		}
	}
}

func (n *noter) box(t Feature) {
	f, u := n.placed.Prism.Footprint, n.placed.Edges
	n.x("x0", f.Middle.X-f.Half.X, u[0].U, t.X[0])
	n.x("x1", f.Middle.X+f.Half.X, u[1].U, t.X[1])
	right, left := "y0", "y1"
	if n.placed.LeftOne {
		right, left = left, right
	}
	read := map[string]survey.Reading{"y0": t.Y[0], "y1": t.Y[1]}
	n.y(right, f.Middle.Y-f.Half.Y, u[2].U, read[right])
	n.y(left, f.Middle.Y+f.Half.Y, u[3].U, read[left])
}

func (n *noter) path(t Feature, x texts) {
	at := 0
	for i := range x.points() {
		kx, ky := pointKey(i, 0), pointKey(i, 1)
		if x[kx] == "" || x[ky] == "" || at >= len(t.Path) {
			continue
		}
		p := n.placed.Prism.Footprint.Path[at]
		n.x(kx, p.X, n.placed.X.U, t.Path[at][0])
		n.y(ky, p.Y, n.placed.Y.U, t.Path[at][1])
		at++
	}
}

// x says where a reading from the datum line ends, and how much of it the slope took.
func (n *noter) x(key string, at, u float64, r survey.Reading) {
	units := n.s.Settings.Units
	way, datum := " from ", &n.s.Job.Datum
	if at < 0 {
		way = " behind "
	}
	note := "= " + desk.Length(math.Abs(at), units) + way + desk.Datum(datum, shortDatum) + " " + desk.PlusMinus95(u, units)
	shift := 0.0
	if n.list == Fittings {
		shift = n.s.Job.Datum.ShiftAbove.Value
	}
	slope := math.Abs(r.Length - (at - shift))
	switch {
	case n.placed.Loose:
		note += ", tape sloped by an unknown amount: give the drop"
	case r.Start == survey.Datum && slope >= leastSlope:
		note += ", tape sloped " + survey.Format(slope, units)
		n.took[key] = slope
	}
	if n.offer && isLong(r) {
		note += nearer
		n.offer = false
	}
	n.out[key] = note
}

// y says where a reading across the van ends, and how much of it the slope took.
func (n *noter) y(key string, at, u float64, r survey.Reading) {
	n.out[key] = "= " + desk.Across(at, n.s.Settings) + " " + desk.PlusMinus95(u, n.s.Settings.Units)
	if n.list == Fittings {
		return // above the floor the side edges hang where they are
	}
	level := at
	switch r.Start {
	case survey.FromLeft:
		level = n.s.Job.SideLeft() - at
	case survey.FromRight:
		level = n.s.Job.SideRight() + at
	case survey.On:
		return
	}
	if slope := math.Abs(r.Length - level); slope >= leastSlope && !n.placed.Loose {
		n.out[key] += ", tape sloped " + survey.Format(slope, n.s.Settings.Units)
		n.took[key] = slope
	}
}

// assumed says what is taken for heights that were not measured.
func (n *noter) assumed(t Feature) {
	if n.list != Obstructions || t.Span.Set {
		return
	}
	note := "not measured: taken to reach the ground"
	n.out["top"], n.out["low"] = note, note
}
