package vehicles

import "slices"

// Hanging is what hangs on a run, each thing by its place along it: mm along the rounded run, or, as the file says some,
// mm along one of its legs. What is known of each kind stands in its row (HangingKinds).
type Hanging struct {
	Muffler *Muffler  // nil for none
	Clips   []float64 // mm along the run; nil: nobody has said; empty: there are none
	Drains  []float64 // drain holes, mm along the run; not of the fuel line
	Filter  *Filter   // nil for none
	Pump    *Pump     // nil for none
}

// HangingKinds are the kinds of what may hang on a run, in the order of the file.
var HangingKinds = []*HangingKind{AMuffler, AClip, ADrain, AFilter, APump}

// HangingOn are the kinds that may hang on a run of a kind.
func HangingOn(on RunKind) (kinds []*HangingKind) {
	for _, k := range HangingKinds {
		if slices.Contains(k.On, on) {
			kinds = append(kinds, k)
		}
	}
	return kinds
}

// AClip holds a run up.
var AClip = many(HangingKind{
	Key: "clips", Name: "clip", Full: "clip", Sign: "c", Means: "clip", On: RunKinds[:], SaysNone: true,
	Counts: [len(RunKinds)]string{"exhaust clip", "intake clip", "fuel line clip"},
}, func(h *Hanging) *[]float64 { return &h.Clips })

// ADrain is a hole that lets water out of a run.
var ADrain = many(HangingKind{
	Key: "drains", Name: "drain", Full: "drain hole", Sign: "w", Means: "drain hole", On: []RunKind{ExhaustRun, IntakeRun},
}, func(h *Hanging) *[]float64 { return &h.Drains })

// Hung is a thing that hangs on a run.
type Hung struct {
	Kind  *HangingKind
	Index int // among those of its kind, from 0

	leg    *int     // nil: its place counts along the run
	start  *float64 // where it begins, mm along that
	length float64  // how much of the run it takes up, mm; 0 for what has a place only
	sits   sitting  // nil when its place is all there is
}

// Leg is the leg, from 1, along which its place counts; 0: along the run.
func (h *Hung) Leg() int {
	if h.leg == nil {
		return 0
	}
	return *h.leg
}

// Start is where it begins, mm along its leg or the run.
func (h *Hung) Start() float64 { return *h.start }

// Length is how much of the run it takes up, mm; 0 for what has a place only.
func (h *Hung) Length() float64 { return h.length }

// Details are what is said of it beside its place.
func (h *Hung) Details() []Detail {
	if h.sits == nil {
		return nil
	}
	return h.sits.details()
}

// Put gives it another place: on a leg, or, what has no leg, along the run.
func (h *Hung) Put(leg int, start float64) {
	if *h.start = start; h.leg != nil {
		*h.leg = leg
	}
}

// Along is between which places along a run it lies, mm; ok is false where the run has no such leg.
func (h *Hung) Along(laid *LaidRun) (from, to float64, ok bool) {
	switch {
	case h.leg == nil:
		return *h.start, *h.start, true
	case !laid.hasLeg(*h.leg):
		return 0, 0, false
	}
	return laid.Where(*h.leg, *h.start), laid.Where(*h.leg, *h.start+h.length), true
}

// Name is what it is called: "clip 2".
func (h *Hung) Name() string { return h.Kind.Called(h.Kind.Name, h.Index) }

// key is its key in the run's table: "clips[1]".
func (h *Hung) key() string {
	if !h.Kind.Many() {
		return h.Kind.Key
	}
	return joinIndex(h.Kind.Key, h.Index)
}

// Things are what hangs on the run, in the order of the file. They are copies: changing one changes no job.
func (h Hanging) Things() []Hung { return h.things() }

// Thing is one of what hangs on the run, which it makes the run's own, so that it may be changed; nil for none.
func (h *Hanging) Thing(k *HangingKind, index int) *Hung {
	if list := k.own(h); index < len(list) {
		return &list[index]
	}
	return nil
}

// OnLegs is what hangs on the run's legs, of each kind one: without what is spread along it.
func (h Hanging) OnLegs() Hanging {
	for _, k := range HangingKinds {
		if k.Many() {
			k.drop(&h)
		}
	}
	return h
}

// things makes what hangs on the run its own, so that their places may be changed, and returns all of it.
func (h *Hanging) things() (list []Hung) {
	for _, k := range HangingKinds {
		list = append(list, k.own(h)...)
	}
	return list
}

// hanging reads what may hang on a run of that kind, which has so many legs.
func (t *table) hanging(on RunKind, legs int) (h Hanging) {
	for _, k := range HangingOn(on) {
		k.read(t, legs, &h)
	}
	return h
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
	for _, k := range HangingKinds {
		k.write(w, &h)
	}
}
