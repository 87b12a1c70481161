package vehicles

import (
	"fmt"
	"slices"

	"bench.example/undermark/geometry/survey"
)

// HangingKind is what the program knows of a kind of thing that hangs on a run, all in one row. A row is made by one or by many.
type HangingKind struct {
	Key   string    // in the table of its run
	Name  string    // what one is called: "drain"
	Full  string    // and on paper, where Name is short for that: "drain hole"
	Sign  string    // of it in the pictures
	Means string    // what the sign means
	On    []RunKind // which runs it may hang on

	// Of what a run has one of.
	Wanted bool         // a run is not whole without it: of the kinds of a run one is
	Goes   string       // onto the run or into it: "on", "in"
	Asks   string       // what is asked of it beside where it is: ", and how large"
	Told   string       // what is said once it was put there, {leg} the leg, {type} the key that types it, {other} the one that says the other
	Minds  string       // what to mind as it is put there, behind its place: ", its drain hole down"
	Before *HangingKind // what it sits before; nil for nothing
	Apart  float64      // and how far before that it is put, mm

	// Of what a run may have many of.
	SaysNone bool // that there are none may be said: until then nobody has said

	// In the cut list.
	Counts [len(RunKinds)]string // what one is counted as, by run; "" for what is not made or bought
	Lacks  string                // what is said of a run without it; "" for nothing

	own   func(*Hanging) []Hung                    // makes what there is of the kind the run's own, and returns that
	drop  func(*Hanging)                           // takes all out
	put   func(h *Hanging, leg int, start float64) // puts one there, as usual, in place of the one that there is; nil of many
	list  func(*Hanging) *[]float64                // nil of one
	read  func(t *table, legs int, h *Hanging)     // from the run's table
	write func(w *writer, h *Hanging)
}

// Many tells whether a run may have many, each by its place along the run.
func (k *HangingKind) Many() bool { return k.list != nil }

// List is where things of the kind lie along the run, mm, of many; the list is the job's: whoever changes it clones it.
func (k *HangingKind) List(h *Hanging) *[]float64 { return k.list(h) }

// Has tells whether the run has any.
func (k *HangingKind) Has(h Hanging) bool { return len(k.own(&h)) > 0 }

// Usual is the one that is put on a run until the fitter says otherwise.
func (k *HangingKind) Usual() *Hung {
	var h Hanging
	k.put(&h, 1, 0)
	return h.Thing(k, 0)
}

// Hang puts the usual one on a leg, from 1, in place of the one that there is.
func (k *HangingKind) Hang(h *Hanging, leg int, start float64) { k.put(h, leg, start) }

// Without takes one out. Where the last of many goes and nothing says that there are none, nobody has said.
func (k *HangingKind) Without(h *Hanging, index int) {
	if !k.Many() {
		k.drop(h)
		return
	}
	list := k.list(h)
	if *list = slices.Delete(slices.Clone(*list), index, index+1); len(*list) == 0 && !k.SaysNone {
		*list = nil
	}
}

// Called is what one of the kind is called by a word for it: "clip 2".
func (k *HangingKind) Called(word string, index int) string {
	if !k.Many() {
		return word
	}
	return fmt.Sprintf("%s %d", word, index+1)
}

// sitting is a thing of which a run has one, on one of its legs.
type sitting interface {
	seat() (leg *int, start *float64)
	takes() float64    // how much of the run it takes up, mm; 0 for what has a place only
	details() []Detail // beside its place
}

// laying is one that a laid run has under its own name, for those who ask for it by that.
type laying interface {
	lay(*LaidRun) // once it is known to fit
}

// lay puts it in its place where the run has one of its name.
func (h *Hung) lay(run *LaidRun) {
	if named, is := h.sits.(laying); is {
		named.lay(run)
	}
}

// one is the row of a kind of which a run has one: where a run keeps it, and the usual one.
func one[T any, P interface {
	*T
	sitting
}](k HangingKind, of func(*Hanging) **T, usual T) *HangingKind {
	k.own = func(h *Hanging) []Hung {
		if *of(h) == nil {
			return nil
		}
		c := **of(h)
		*of(h) = &c
		leg, start := P(&c).seat()
		return []Hung{{Kind: &k, leg: leg, start: start, sits: P(&c)}}
	}
	k.drop = func(h *Hanging) { *of(h) = nil }
	k.put = func(h *Hanging, leg int, start float64) {
		c := usual
		at, from := P(&c).seat()
		*at, *from = leg, start
		*of(h) = &c
	}
	k.read = func(t *table, legs int, h *Hanging) {
		s := t.sub(k.Key, optional)
		if s == nil {
			return
		}
		c := new(T)
		leg, start := P(c).seat()
		*leg, *start = s.leg(legs), s.number("start", required, ADistance).Value
		for _, d := range P(c).details() {
			d.read(s)
		}
		s.done()
		*of(h) = c
	}
	k.write = func(w *writer, h *Hanging) {
		c := P(*of(h))
		if c == nil {
			return
		}
		leg, start := c.seat()
		keys := []string{"leg", fmt.Sprint(*leg), "start", survey.Exact(*start)}
		for _, d := range c.details() {
			keys = append(keys, d.Key, d.written())
		}
		w.value(k.Key, inline(keys...))
	}
	return &k
}

// many is the row of a kind of which a run may have many, each by its place along it: where a run keeps those.
func many(k HangingKind, of func(*Hanging) *[]float64) *HangingKind {
	k.list = of
	k.own = func(h *Hanging) (things []Hung) {
		list := slices.Clone(*of(h))
		*of(h) = list
		for i := range list {
			things = append(things, Hung{Kind: &k, Index: i, start: &list[i]})
		}
		return things
	}
	k.drop = func(h *Hanging) { *of(h) = nil }
	k.read = func(t *table, _ int, h *Hanging) { *of(h) = t.numbers(k.Key, 0, optional, ADistance) }
	k.write = func(w *writer, h *Hanging) {
		if list := *of(h); list != nil {
			w.numbers(k.Key, list...)
		}
	}
	return &k
}
