package vehicles

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

// thing says which thing of the file is being reduced.
type thing struct {
	table string
	index int // -1 for a table that is there once
	name  string
}

func (t *thing) key(leaf string) string {
	if t.index >= 0 {
		return joinKey(joinIndex(t.table, t.index), leaf)
	}
	return joinKey(t.table, leaf)
}

// value says which value of a key a reading is: of a path's point, or where point is -1 of the key itself; where it has parts by
// name, which.
type value struct {
	leaf         string
	point, index int
	part         string
}

func (v value) key(what *thing) string {
	key := what.key(v.leaf)
	if v.point >= 0 {
		key = joinIndex(key, v.point)
	}
	if v.part != "" {
		return joinKey(key, v.part)
	}
	return joinIndex(key, v.index)
}

// called is the thing by its name, "" where it has none.
func (t *thing) called() string {
	if t.name == "" {
		return ""
	}
	return fmt.Sprintf("%s %q", t.table, t.name)
}

// where says a key of the thing in words.
func (t *thing) where(key string) string { return KeyOf(key, t.name) }

// place reduces a place measured from one side into placed and leaves in last where the next may run on from.
func (r *reducer) place(placed *Placed, p *Place, what *thing, from *side, at spot, last *trail) {
	switch p.Shape {
	case Piped:
		r.line(placed, p, what, from, at, last)
	case Disc:
		centre := r.step(placed, &p.Centre, what, value{leaf: "centre", point: -1}, from, at, last)
		placed.Prism.Footprint = geometry.NewRound(centre, p.Across.Value/2)
	default:
		r.box(placed, p, what, from, at, last)
	}
	placed.Loose = placed.Loose || last.loose && p.runsOn()
	last.loose = placed.Loose
}

// runsOn tells whether a place runs on, along either axis, from the thing before it.
func (p *Place) runsOn() bool {
	x, y := p.X[0], p.Y[0]
	switch {
	case p.Shape == Disc:
		x, y = p.Centre[0], p.Centre[1]
	case p.Shape == Piped && len(p.Path) > 0:
		x, y = p.Path[0][0], p.Path[0][1]
	}
	return x.Start == survey.On || y.Start == survey.On
}

// reading reduces one reading to its end e and reports what is wrong with it, or a place beyond all bounds. e may be the
// end before it.
func (r *reducer) reading(e *end, from *side, axis survey.Axis, reading *survey.Reading, at *spot, before *end, what *thing, v *value) {
	var made *Made
	if r.trace != nil {
		made = from.made(r.tape, axis, reading, at, before)
	}
	wrong := from.along(e, axis, reading, at, before)
	if wrong == "" && math.Abs(e.Value) > survey.Longest {
		wrong = "it comes to " + survey.InMM(e.Value) + ", and " + survey.NoLonger
		*e = end{broken: true}
	}
	if wrong != "" {
		key := v.key(what)
		r.faultAt(key, what.where(key), reading.String()+": "+wrong)
	}
	if r.chains != nil {
		r.chains.link(axis, reading.Start, e)
	}
	if r.trace != nil {
		r.trace.note(what, axis, *e, *made)
	}
}

// The four readings of a rectangle.
var boxValues = [4]value{{leaf: "x", point: -1}, {leaf: "x", point: -1, index: 1}, {leaf: "y", point: -1}, {leaf: "y", point: -1, index: 1}}

// forward says in which order the x readings of a rectangle stand: from the rear to the nose, on either side of the datum.
func (r *reducer) forward(near, far float64) string {
	name := r.job.Datum.Called()
	if near < 0 || far < 0 {
		return "the edge farther behind the " + name + " first: x runs forward, and behind it readings have a minus"
	}
	return "the edge nearest to the " + name + " first, then the farthest"
}

func (r *reducer) box(placed *Placed, p *Place, what *thing, from *side, at spot, last *trail) {
	var near, far, one, two end
	r.reading(&one, from, survey.Y, &p.Y[0], &at, &last.y, what, &boxValues[2])
	r.reading(&two, from, survey.Y, &p.Y[1], &at, &one, what, &boxValues[3])
	at.y = (one.Value + two.Value) / 2
	r.reading(&near, from, survey.X, &p.X[0], &at, &last.x, what, &boxValues[0])
	r.reading(&far, from, survey.X, &p.X[1], &at, &near, what, &boxValues[1])
	last.x, last.y = far, two
	if near.there && far.there && far.Value <= near.Value {
		r.faultAt(what.key("x"), what.called(), fmt.Sprintf(
			"x runs from %s to %s: give %s",
			survey.Figure(near.Value), survey.InMM(far.Value), r.forward(near.Value, far.Value)))
	}
	right, left := &one, &two
	if placed.LeftOne = two.Value < one.Value; placed.LeftOne {
		right, left = left, right
	}
	placed.Edges = [4]Taped{tapedOf(near.Coord), tapedOf(far.Coord), tapedOf(right.Coord), tapedOf(left.Coord)}
	placed.X, placed.Y = placed.Edges[0].worse(placed.Edges[1]), placed.Edges[2].worse(placed.Edges[3])
	placed.Loose = near.Loose || far.Loose || right.Loose || left.Loose
	placed.Unclosed = near.unclosed || far.unclosed || right.unclosed || left.unclosed
	placed.Axis = p.Turn == 0
	placed.Prism.Footprint = geometry.NewRectangle(
		geometry.Point{X: near.Value, Y: right.Value}, geometry.Point{X: far.Value, Y: left.Value}, p.Turn)
	if p.Turn != 0 {
		placed.UTurn = r.tape.TurnU()
	}
}

func (r *reducer) line(placed *Placed, p *Place, what *thing, from *side, at spot, last *trail) {
	path := make([]geometry.Point, 0, len(p.Path))
	for i := range p.Path {
		path = append(path, r.step(placed, &p.Path[i], what, value{leaf: "path", point: i}, from, at, last))
	}
	if len(path) == 0 {
		r.faultAt(what.key("path"), what.called(), "path has no point: give two or more [x, y]")
		return
	}
	placed.Prism.Footprint = geometry.NewLine(path, p.Across.Value/2)
}

// step reduces a point that may run on from the one before and gives placed the largest uncertainties so far.
func (r *reducer) step(placed *Placed, p *Pair, what *thing, v value, from *side, at spot, last *trail) geometry.Point {
	v.index = 1
	r.reading(&last.y, from, survey.Y, &p[1], &at, &last.y, what, &v)
	v.index, at.y = 0, last.y.Value
	r.reading(&last.x, from, survey.X, &p[0], &at, &last.x, what, &v)
	placed.X, placed.Y = placed.X.worse(tapedOf(last.x.Coord)), placed.Y.worse(tapedOf(last.y.Coord))
	placed.Loose = placed.Loose || last.x.Loose || last.y.Loose
	placed.Unclosed = placed.Unclosed || last.x.unclosed || last.y.unclosed
	return geometry.Point{X: last.x.Value, Y: last.y.Value}
}

// point reduces a point on the floor's surface, which must not run on from another.
func (r *reducer) point(p *Pair, what *thing, leaf string, from *side) (x, y survey.Coord) {
	onFloor := spot{known: true}
	var before, ex, ey end
	r.reading(&ey, from, survey.Y, &p[1], &onFloor, &before, what, &value{leaf: leaf, point: -1, index: 1})
	onFloor.y = ey.Value
	r.reading(&ex, from, survey.X, &p[0], &onFloor, &before, what, &value{leaf: leaf, point: -1})
	return ex.Coord, ey.Coord
}
