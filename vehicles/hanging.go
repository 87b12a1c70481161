package vehicles

import (
	"fmt"
	"slices"

	"bench.example/undermark/geometry/survey"
)

// Hanging is what hangs on a run, each thing by its place along it: mm along the rounded run, or, as the file says some,
// mm along one of its legs. A thing that is new here needs its field, a line in hanging and in writer.hanging, which are
// how the file says it, and one in things, by which it is held to the run and stays in its place when the path is edited.
type Hanging struct {
	Muffler *Muffler  // nil for none
	Clips   []float64 // mm along the run; nil: nobody has said; empty: there are none
	Drains  []float64 // drain holes, mm along the run; not of the fuel line
	Filter  *Filter   // nil for none
	Pump    *Pump     // nil for none
}

// Muffler sits on leg Leg (counted from 1), Start mm along it.
type Muffler struct {
	Leg                   int
	Start, Length, Across float64
	Drain                 string // how its drain hole points: DrainDown or DrainAside; "" while nobody has looked
}

// How a muffler's drain hole points.
const (
	DrainDown  = "down"
	DrainAside = "aside"
)

// Filter sits in the fuel line, on leg Leg, Start mm along it.
type Filter struct {
	Leg   int
	Start float64
}

// Pump sits on leg Leg of the fuel line, Start mm along it, its outlet Tilt degrees up from level.
type Pump struct {
	Leg           int
	Start, Tilt   float64
	MlPer1000, Hz Number
}

// Figures are its numbers that may be left out.
func (p *Pump) Figures() []Figure {
	return []Figure{{"ml_per_1000", &p.MlPer1000, aMeasure}, {"hz", &p.Hz, aMeasure}}
}

// hung is a thing that hangs on a run, as whoever treats all of them alike sees it.
type hung struct {
	name, key string         // what it is called, and its key in the run's table: "clip 2", "clips[1]"
	leg       *int           // the leg, from 1, along which its place counts; nil: along the run
	start     *float64       // where it begins, mm along that
	length    float64        // how much of the run it takes up, mm; 0 for what has a place only
	lay       func(*LaidRun) // puts it in its place, once it is known to fit; nil when its place is all there is
}

// things makes what hangs on the run its own, so that their places may be changed, and returns all of it.
func (h *Hanging) things() []hung {
	var list []hung
	if h.Muffler != nil {
		m := *h.Muffler
		h.Muffler = &m
		list = append(list, hung{"muffler", "muffler", &m.Leg, &m.Start, m.Length, m.lay})
	}
	h.Clips = slices.Clone(h.Clips)
	for i := range h.Clips {
		list = append(list, hung{fmt.Sprintf("clip %d", i+1), fmt.Sprintf("clips[%d]", i), nil, &h.Clips[i], 0, nil})
	}
	h.Drains = slices.Clone(h.Drains)
	for i := range h.Drains {
		list = append(list, hung{fmt.Sprintf("drain %d", i+1), fmt.Sprintf("drains[%d]", i), nil, &h.Drains[i], 0, nil})
	}
	if h.Filter != nil {
		f := *h.Filter
		h.Filter = &f
		list = append(list, hung{"filter", "filter", &f.Leg, &f.Start, 0, f.lay})
	}
	if h.Pump != nil {
		p := *h.Pump
		h.Pump = &p
		list = append(list, hung{"pump", "pump", &p.Leg, &p.Start, 0, p.lay})
	}
	return list
}

// hanging reads what may hang on a run of that kind, which has so many legs.
func (t *table) hanging(on RunKind, legs int) (h Hanging) {
	if on == ExhaustRun {
		h.Muffler = t.muffler(legs)
	}
	h.Clips = t.numbers("clips", 0, optional, aDistance)
	if on == FuelRun {
		h.Filter, h.Pump = t.filter(legs), t.pump(legs)
	} else {
		h.Drains = t.numbers("drains", 0, optional, aDistance)
	}
	return h
}

func (t *table) muffler(legs int) *Muffler {
	s := t.sub("muffler", optional)
	if s == nil {
		return nil
	}
	m := Muffler{
		Leg:    s.leg(legs),
		Start:  s.number("start", required, aDistance).Value,
		Length: s.number("length", required, aSize).Value,
		Across: s.number("across", required, aSize).Value,
		Drain:  s.choice("drain", optional, []string{DrainDown, DrainAside}),
	}
	s.done()
	return &m
}

func (t *table) filter(legs int) *Filter {
	s := t.sub("filter", optional)
	if s == nil {
		return nil
	}
	f := Filter{Leg: s.leg(legs), Start: s.number("start", required, aDistance).Value}
	s.done()
	return &f
}

func (t *table) pump(legs int) *Pump {
	s := t.sub("pump", optional)
	if s == nil {
		return nil
	}
	p := Pump{
		Leg:   s.leg(legs),
		Start: s.number("start", required, aDistance).Value,
		Tilt:  s.number("tilt", required, aTilt).Value,
	}
	s.figuresOf(p.Figures())
	s.done()
	return &p
}

// leg reads which leg of a run something sits on; legs 0 means the run itself is wrong, and says so elsewhere.
func (t *table) leg(legs int) int {
	if legs < 1 {
		legs = 1e6
	}
	return t.count("leg", legs, "run's legs")
}

// hanging writes what hangs on a run.
func (w *writer) hanging(h Hanging) {
	if m := h.Muffler; m != nil {
		w.value("muffler", inline("leg", fmt.Sprint(m.Leg), "start", survey.Exact(m.Start), "length", survey.Exact(m.Length), "across", survey.Exact(m.Across),
			"drain", quoted(m.Drain)))
	}
	if h.Clips != nil {
		w.numbers("clips", h.Clips...)
	}
	if h.Drains != nil {
		w.numbers("drains", h.Drains...)
	}
	if f := h.Filter; f != nil {
		w.value("filter", inline("leg", fmt.Sprint(f.Leg), "start", survey.Exact(f.Start)))
	}
	if p := h.Pump; p != nil {
		w.value("pump", inline("leg", fmt.Sprint(p.Leg), "start", survey.Exact(p.Start), "tilt", survey.Exact(p.Tilt),
			"ml_per_1000", p.MlPer1000.Text(), "hz", p.Hz.Text()))
	}
}
