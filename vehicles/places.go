package vehicles

import (
	"slices"

	"bench.example/undermark/geometry/survey"
)

// What a place must look like, as errors say it.
const (
	acceptedPair  = "two readings [652, 736], numbers of mm or texts like \"+84\", \"65.2cm\""
	acceptedPoint = "a point [x, y] of two readings, numbers of mm or texts like \"L 240\", \"65.2cm\""
	acceptedPath  = "a list of two points or more, [[x, y], [x, y]]"
)

// pair reads two readings, the first along a and the second along b.
func (t *table) pair(key string, n need, a, b survey.Axis) Pair {
	accepted := acceptedPair
	if a != b {
		accepted = acceptedPoint
	}
	value, path, ok := t.take(key, n, accepted)
	if !ok {
		return Pair{}
	}
	return t.readings(path, value, accepted, a, b)
}

func (t *table) readings(path string, value any, accepted string, axes ...survey.Axis) (p Pair) {
	list, isList := value.([]any)
	if !isList || len(list) != len(p) {
		t.wrong(path, value, accepted)
		return p
	}
	for i, v := range list {
		p[i] = t.reading(joinIndex(path, i), v, axes[i])
	}
	return p
}

// reading reads what the tape said along an axis.
func (t *table) reading(path string, value any, axis survey.Axis) survey.Reading {
	if s, isText := value.(string); isText {
		r, err := survey.Parse(s, axis)
		if err != nil {
			t.r.fault(path, ": %v", err)
		}
		return r
	}
	v, isNumber := asNumber(value)
	if !isNumber {
		t.wrong(path, value, "a reading: a number of mm, or a text like \"65.2cm\"")
		return survey.Reading{}
	}
	_, whole := value.(int64)
	r := survey.FromNumber(v, whole)
	if r.Validate() != nil {
		t.wrong(path, value, ALength.says)
	}
	return r
}

// course reads a line of two points or more.
func (t *table) course(key string) []Pair {
	value, path, ok := t.take(key, required, acceptedPath)
	if !ok {
		return nil
	}
	list, isList := value.([]any)
	if !isList || len(list) < 2 || !slices.ContainsFunc(list, isAList) {
		t.wrong(path, value, acceptedPath)
		return nil
	}
	out := make([]Pair, len(list))
	for i, v := range list {
		out[i] = t.readings(joinIndex(path, i), v, acceptedPoint, survey.X, survey.Y)
	}
	return out
}

func isAList(value any) bool {
	_, ok := value.([]any)
	return ok
}

// span reads a range along the height. low and high say what its values are.
func (t *table) span(key string, n need, low, high string) Span {
	v := t.numbers(key, 2, n, ALength)
	if v == nil {
		return Span{}
	}
	if v[0] > v[1] {
		t.r.fault(joinKey(t.path, key), " is [%s, %s], the wrong way round: write the %s first, then the %s",
			survey.Exact(v[0]), survey.Exact(v[1]), low, high)
		return Span{}
	}
	return Span{From: v[0], To: v[1], Set: true}
}

// drop reads a range below the floor, rise one above it.
func (t *table) drop(n need) Span { return t.span("drop", n, "top", "bottom") }
func (t *table) rise(n need) Span { return t.span("rise", n, "foot", "top") }

// placeKeys are the keys of all shapes of place.
var placeKeys = []string{"x", "y", "turn", "path", "centre", "across"}

// place reads where a thing is in plan. width says whether a line must have one.
func (t *table) place(width need) (p Place) {
	box, line, round := t.has("x") || t.has("y"), t.has("path"), t.has("centre")
	switch {
	case line && (box || round):
		t.twoForms("path")
	case round && box:
		t.twoForms("centre")
	case line:
		p.Shape, p.Path = Piped, t.course("path")
		p.Across = t.number("across", width, ASize)
	case round:
		p.Shape, p.Centre = Disc, t.pair("centre", required, survey.X, survey.Y)
		p.Across = t.number("across", required, ASize)
	case box:
		p.X, p.Y = t.pair("x", required, survey.X, survey.X), t.pair("y", required, survey.Y, survey.Y)
		p.Turn = t.number("turn", optional, AnAngle).Value
	default:
		t.missing = append(t.missing, fault{key: t.path, text: " has no place: give it x and y, or path and across, or centre and across"})
	}
	if t.has("across") && p.Shape == Box && box && !line && !round {
		t.r.fault(joinKey(t.path, "across"), " goes with path or centre: the size of a rectangle is in its x and y")
	}
	if turn, path, ok := t.take("turn", optional, ""); ok && p.Shape != Box && turn != int64(0) {
		t.r.fault(path, " goes with x and y: a line and a round one have none")
	}
	t.known = append(t.known, placeKeys...)
	return p
}

func (t *table) twoForms(key string) {
	t.r.fault(joinKey(t.path, key), " is one form of place too many: keep x and y, or path, or centre")
}

// eitherOf reads two readings, each of which may be left out; like is one that would do.
func (t *table) eitherOf(key, like string) (p Pair) {
	s := t.sub(key, optional)
	if s == nil {
		return p
	}
	for axis, key := range []string{"x", "y"} {
		if value, path, ok := s.take(key, optional, ""); ok {
			p[axis] = s.reading(path, value, survey.Axis(axis))
		}
	}
	if len(s.values) == 0 {
		t.r.fault(s.path, " is empty: give it x, y or both, as %s", like)
	}
	s.done()
	return p
}

// totals reads the overall readings of where a chain ends.
func (t *table) totals() Totals { return t.eitherOf("total", "total = { x = 1540 }") }

// bow reads how the bumper's edge runs.
func (t *table) bow() (points []BowPoint) {
	for i, s := range t.list("bow") {
		p := BowPoint{
			Y:      s.number("y", required, ALength).Value,
			Offset: s.number("offset", required, ALength).Value,
		}
		s.done()
		if slices.ContainsFunc(points, func(q BowPoint) bool { return q.Y == p.Y }) {
			t.r.fault(joinKey(joinIndex(joinKey(t.path, "bow"), i), "y"), " is %s a second time: give each y one offset", survey.Exact(p.Y))
		}
		points = append(points, p)
	}
	return points
}
