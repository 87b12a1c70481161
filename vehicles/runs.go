package vehicles

import "slices"

// FuelKinds are the fuels of job file format 1.
var FuelKinds = []string{"diesel", "petrol"}

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
		if p := t.figures(joinIndex(path, i), v, 3, aLength, "a point [x, y, drop] of three numbers of mm"); p != nil {
			out[i] = RunPoint{p[0], p[1], p[2]}
		}
	}
	return out
}

// intake reads the intake's table: what an exhaust has, but no muffler, clips or shields.
func (t *table) intake() *Run {
	r := t.run()
	t.done()
	return &r
}

func (t *table) run() Run {
	return Run{
		Across: t.number("across", required, aSize).Value,
		Bend:   t.number("bend", optional, aDistance),
		Path:   t.points("path", 1),
	}
}

func (t *table) exhaust() *Run {
	r := t.run()
	if m := t.sub("muffler", optional); m != nil {
		r.Muffler = &Muffler{
			Leg:    m.leg(len(r.Path)),
			Start:  m.number("start", required, aDistance).Value,
			Length: m.number("length", required, aSize).Value,
			Across: m.number("across", required, aSize).Value,
		}
		m.done()
	}
	r.Clips = t.numbers("clips", 0, optional, aDistance)
	r.Shielded = t.flag("shielded", false)
	t.done()
	return &r
}

// leg reads which leg of a run something sits on; legs 0 means the run itself is wrong, and says so elsewhere.
func (t *table) leg(legs int) int {
	if legs < 1 {
		legs = 1e6
	}
	return t.count("leg", legs, "run's legs")
}

func (t *table) fuel() *Fuel {
	f := Fuel{
		Kind:   t.choice("kind", optional, FuelKinds),
		From:   t.line("from", optional),
		Hole:   t.number("hole", optional, aSize),
		Across: t.number("across", required, aSize),
		Bore:   t.number("bore", optional, aSize),
		Path:   t.points("path", 2),
	}
	if s := t.sub("tank", optional); s != nil {
		f.Tank = s.tank()
	}
	if s := t.sub("pump", optional); s != nil {
		f.Pump = &Pump{
			Leg:       s.leg(len(f.Path) - 1),
			Start:     s.number("start", required, aDistance).Value,
			Tilt:      s.number("tilt", required, aTilt).Value,
			MlPer1000: s.number("ml_per_1000", optional, aMeasure),
			Hz:        s.number("hz", optional, aMeasure),
		}
		s.done()
	}
	t.done()
	return &f
}

func (t *table) tank() *Tank {
	tank := Tank{At: t.point("at", required), Rise: t.rise(optional), Drop: t.drop(optional)}
	if tank.Rise.Set && tank.Drop.Set {
		t.r.fault(joinKey(t.path, "drop"), " stands beside rise: keep rise for a tank above the floor, drop for one below")
	}
	t.done()
	return &tank
}

// point reads a place of two numbers, x and y.
func (t *table) point(key string, n need) (p [2]float64) {
	copy(p[:], t.numbers(key, len(p), n, aLength))
	return p
}
