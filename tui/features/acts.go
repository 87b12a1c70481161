package features

import (
	"errors"
	"fmt"
	"maps"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// Duplicate returns the job with a copy of the thing behind it, and the copy's record. The copy counts as not
// confirmed: nobody has measured it yet.
func (h Record) Duplicate(s desk.State) (vehicles.Job, Record, error) {
	l, j := h.List, s.Job
	if !h.Real(j) {
		all := l.unfinished(j)
		x := maps.Clone(h.texts(j))
		if x == nil {
			return j, h, errors.New("there is nothing to duplicate")
		}
		x["name"] = l.unusedName(j, x["name"])
		return l.withUnfinished(j, all.Insert(0, vehicles.Begun{}.Saying(x))), Record{l, l.Len(j), false}, nil
	}
	t := l.At(j, h.Row)
	t.Name, t.Measured, t.Total = l.unusedName(j, t.Name), !l.Confirmable(), vehicles.Totals{}
	after := l.table().put(j, h.Row+1, t)
	next := Record{l, h.Row + 1, false}
	return after, next, h.holds(s, after)
}

// Delete returns the job without the thing, and without what says an obstruction's name.
func (h Record) Delete(s desk.State) (vehicles.Job, error) {
	j := s.Job
	if h.Real(j) {
		after := h.List.table().drop(j, h.Row)
		if h.List == Obstructions {
			after = after.Forgetting(j.Obstructions[h.Row].Name)
		}
		return h.List.forgotten(after), h.holds(s, after)
	}
	all := h.List.unfinished(j)
	i := h.Row - h.List.Len(j)
	if h.Fresh || i >= len(all) {
		return j, errors.New("there is nothing to delete")
	}
	return h.List.forgotten(h.List.withUnfinished(j, all.Without(i))), nil
}

// Named says what else of the job goes with the thing when it is deleted, in words; none for most.
func (h Record) Named(j vehicles.Job) []string {
	if h.List != Obstructions || !h.Real(j) {
		return nil
	}
	return j.Naming(j.Obstructions[h.Row].Name)
}

// Move returns the job with the thing so many places further down its list, and its record there.
func (h Record) Move(s desk.State, by int) (vehicles.Job, Record, error) {
	j, to := s.Job, h.Row+by
	switch {
	case !h.Real(j):
		return j, h, errors.New("a thing that is not finished stays at the end of the list")
	case to < 0 || to >= h.List.Len(j):
		return j, h, errors.New("it stands at the end of the list already")
	}
	after := h.List.table().move(j, h.Row, to)
	return after, Record{h.List, to, false}, h.holds(s, after)
}

// Confirm returns the job with the thing measured on this van, or not confirmed again.
func (h Record) Confirm(j vehicles.Job) (after vehicles.Job, measured bool, err error) {
	if !h.List.Confirmable() || !h.Real(j) {
		return j, false, errors.New("only what has all its readings can be confirmed")
	}
	t := h.List.At(j, h.Row)
	t.Measured = !t.Measured
	return h.List.table().with(j, h.Row, t), t.Measured, nil
}

// holds returns an error when an edit of the order of the list would move another thing: one that runs on from
// what is no longer before it.
func (h Record) holds(s desk.State, after vehicles.Job) error {
	plan, err := form.Try(s, after)
	if err != nil {
		return err
	}
	was, now := h.List.places(s.Job, s.Plan), h.List.places(after, plan)
	for i := range h.List.Len(after) {
		name := h.List.At(after, i).Name
		old, there := was[name]
		if there && !same(old, now[name]) {
			return fmt.Errorf("%q runs on from the thing before it and would move: "+
				"first give it a reading of its own", name)
		}
	}
	return nil
}

// places are the footprints of a list's things by name.
func (l List) places(j vehicles.Job, plan vehicles.Plan) map[string]geometry.Footprint {
	out := map[string]geometry.Footprint{}
	for i := range l.Len(j) {
		out[l.At(j, i).Name] = l.placed(plan, i).Prism.Footprint
	}
	return out
}

func same(a, b geometry.Footprint) bool {
	return a.Shape == b.Shape && a.Middle == b.Middle && a.Half == b.Half && slices.Equal(a.Path, b.Path)
}
