package vehicles

import (
	"slices"
	"strings"
	"unicode"
)

// The fuels of job file format 1.
const (
	Diesel = "diesel"
	Petrol = "petrol"
)

// FuelKinds are all of them.
var FuelKinds = []string{Diesel, Petrol}

const acceptedRun = "a list of points [[x, y, drop], ...] in mm"

// points reads a run's path of least points or more.
func (t *table) points(key string, least int) []RunPoint {
	value, path, ok := t.take(key, required, acceptedRun)
	if !ok {
		return nil
	}
	list, isList := value.([]any)
	if !isList || (len(list) > 0 && !slices.ContainsFunc(list, isAList)) {
		t.wrong(path, value, acceptedRun)
		return nil
	}
	if len(list) < least {
		t.r.fault(path, " has %d points; it must have at least %d, [[x, y, drop], ...]", len(list), least)
		return nil
	}
	out := make([]RunPoint, len(list))
	for i, v := range list {
		if p := t.figures(joinIndex(path, i), v, 3, ALength, "a point [x, y, drop] of three numbers of mm"); p != nil {
			out[i] = RunPoint{p[0], p[1], p[2]}
		}
	}
	return out
}

// run reads a run of a kind: the keys that all have, what its own kind has besides, and what hangs on it.
func (t *table) run(k RunKind) *Run {
	var r Run
	switch k {
	case FuelRun:
		r = t.fuel()
	default:
		r = Run{
			Across: t.number("across", required, ASize).Value,
			Bend:   t.number("bend", optional, ADistance),
			Path:   t.points("path", 1),
		}
		r.Hanging = t.hanging(k, len(r.Path))
	}
	if strings.HasPrefix(t.path, "built.") { // nothing is read of a run that is planned
		r.Taped = t.taped("taped", len(r.Path))
	}
	if k == ExhaustRun {
		r.Shielded = t.shields("shielded")
	}
	t.done()
	return &r
}

// taped reads what the tape said of each of so many points.
func (t *table) taped(key string, points int) (texts List[string]) {
	const accepted = `a list of a text for each point, "" for one as planned: ["", "1378, L 368, 184"]`
	value, path, ok := t.take(key, optional, accepted)
	if !ok {
		return nil
	}
	items, isList := value.([]any)
	if !isList || len(items) != points {
		t.wrong(path, value, accepted)
		return nil
	}
	for i, item := range items {
		text, isText := item.(string)
		if !isText || strings.ContainsFunc(text, unicode.IsControl) {
			t.wrong(joinIndex(path, i), item, textOfLine)
		}
		texts = append(texts, text)
	}
	return texts
}

// fuel reads a fuel line, which has the beginning of its first leg in its path.
func (t *table) fuel() Run {
	var r Run
	r.Supply.Kind = t.choice("kind", optional, FuelKinds)
	r.Supply.From = t.line("from", optional)
	r.Supply.Hole = t.number("hole", optional, ASize)
	r.Across = t.number("across", required, ASize).Value
	r.Supply.Bore = t.number("bore", optional, ASize)
	r.Path = t.points("path", 2)
	if s := t.sub("tank", optional); s != nil {
		r.Supply.Tank = s.tank()
	}
	r.Hanging = t.hanging(FuelRun, len(r.Path)-1)
	return r
}

func (t *table) tank() *Tank {
	tank := Tank{
		At: t.point("at", required), Rise: t.rise(optional), Drop: t.drop(optional),
		Filler: t.choice("filler", optional, TankEnds), Breather: t.choice("breather", optional, TankEnds),
	}
	t.figuresOf(tank.Figures())
	if tank.Rise.Set && tank.Drop.Set {
		t.r.fault(joinKey(t.path, "drop"), " stands beside rise: keep rise for a tank above the floor, drop for one below")
	}
	t.done()
	return &tank
}

// point reads a place of two numbers, x and y.
func (t *table) point(key string, n need) (p [2]float64) {
	copy(p[:], t.numbers(key, len(p), n, ALength))
	return p
}

const acceptedShields = `a list of the obstructions that a shield stands before ["brake pipe, right"], or true for all`

// shields reads what a shield stands before.
func (t *table) shields(key string) (s Shields) {
	value, path, ok := t.take(key, optional, acceptedShields)
	if !ok {
		return s
	}
	switch v := value.(type) {
	case bool:
		s.All = v
	case []any:
		for i, item := range v {
			name, isText := item.(string)
			if !isText {
				t.wrong(joinIndex(path, i), item, "the name of an obstruction in quotes")
				continue
			}
			s.Names = append(s.Names, name)
		}
	default:
		t.wrong(path, value, acceptedShields)
	}
	return s
}
