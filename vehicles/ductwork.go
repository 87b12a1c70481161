package vehicles

import "slices"

// Ductwork is the warm air's way behind the heater, one duct after the other as one.
type Ductwork struct {
	Length Number    // along its middle, mm
	Rough  Number    // how rough it is inside, mm
	Flow   Number    // what should come out, m3/h
	Bends  []float64 // how far each turns, degrees; nil while nobody has said, empty for none
	Fan    List[FanPoint]
}

// FanPoint is a point of a fan's curve: what pressure it makes at a flow.
type FanPoint struct{ Flow, Pressure float64 } // m3/h, Pa

// Figures are its numbers.
func (d *Ductwork) Figures() []Figure {
	return []Figure{{"length", &d.Length, ASize}, {"rough", &d.Rough, ADistance}, {"flow", &d.Flow, AMeasure}}
}

// Said tells whether anything is said of it.
func (d Ductwork) Said() bool {
	return d.Length.Set || d.Rough.Set || d.Flow.Set || d.Bends != nil || len(d.Fan) > 0
}

const acceptedFan = "a list of points [[m3/h, Pa], ...], the flows rising and the pressures falling, two at least"

func (t *table) ductwork() (d Ductwork) {
	t.figuresOf(d.Figures())
	d.Bends = t.numbers("bends", 0, optional, ABend)
	d.Fan = t.fan("fan")
	t.done()
	return d
}

// fan reads the points of a fan's curve.
func (t *table) fan(key string) (fan []FanPoint) {
	value, path, ok := t.take(key, optional, acceptedFan)
	if !ok {
		return nil
	}
	list, isList := value.([]any)
	if !isList || slices.ContainsFunc(list, func(v any) bool { return !isAList(v) }) {
		t.wrong(path, value, acceptedFan)
		return nil
	}
	for i, item := range list {
		if p := t.figures(joinIndex(path, i), item, 2, ARate, "a point [m3/h, Pa] of two numbers, each "+ARate.says); p != nil {
			fan = append(fan, FanPoint{p[0], p[1]})
		}
	}
	if len(fan) < len(list) || FanFalls(fan) {
		return fan
	}
	t.wrong(path, value, acceptedFan)
	return nil
}

// FanFalls tells whether points are a fan's curve: two or more, each with more flow than the one before and no more pressure.
func FanFalls(fan []FanPoint) bool {
	for i := 1; i < len(fan); i++ {
		if fan[i].Flow <= fan[i-1].Flow || fan[i].Pressure > fan[i-1].Pressure {
			return false
		}
	}
	return len(fan) >= 2
}

func (w *writer) ductwork(d Ductwork) {
	if !d.Said() {
		return
	}
	w.table("duct")
	w.figuresOf(d.Figures())
	if d.Bends != nil {
		w.numbers("bends", d.Bends...)
	}
	if len(d.Fan) > 0 {
		points := make([][2]float64, len(d.Fan))
		for i, p := range d.Fan {
			points[i] = [2]float64{p.Flow, p.Pressure}
		}
		w.value("fan", pointList(points))
	}
}
