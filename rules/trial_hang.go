package rules

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// hang hangs on a run through corners what hangs on its legs in the job. lacks is by how much these are too short for it, or a fuel line
// goes up and down again, mm.
func (t *trial) hang(corners []geometry.Point3) (h vehicles.Hanging, lacks float64) {
	h = t.hanging
	if t.kind == vehicles.FuelRun {
		h.Pump = t.pumpOn(h.Pump, corners)
		h.Filter = t.filterOn(h.Filter, corners)
		lacks = humps(corners)
	}
	if h.Muffler != nil {
		h.Muffler, lacks = t.mufflerOn(*h.Muffler, corners)
	}
	for _, k := range vehicles.HangingOn(t.kind) {
		if !placedByName[k] && !k.Many() && k.Has(h) {
			lacks += t.seat(&h, k, corners)
		}
	}
	return h, lacks
}

// placedByName are the kinds that a rule asks a place of: hang has a line for each.
var placedByName = map[*vehicles.HangingKind]bool{vehicles.AMuffler: true, vehicles.APump: true, vehicles.AFilter: true}

// seat puts a thing of a kind on the leg with most room for it. Where none has, it is left off, and lacks is its length.
func (t *trial) seat(h *vehicles.Hanging, k *vehicles.HangingKind, corners []geometry.Point3) (lacks float64) {
	var path []geometry.Point3
	if t.kind != vehicles.FuelRun {
		path = corners[:1:1]
	}
	for _, p := range t.pathThrough(corners) {
		path = append(path, inSpace(p))
	}
	laid := vehicles.LaidRun{Path: path, Line: geometry.Rounded(path, t.run.Bend.Value)}
	thing := h.Thing(k, 0)
	leg, start, ok := laid.Seat(thing.Length())
	if !ok {
		k.Without(h, 0)
		return thing.Length()
	}
	thing.Put(leg, start)
	return 0
}

// mufflerOn is a muffler on a run through corners, nil where its leg is shorter than it is; lacks is by how much that is too short for it.
func (t *trial) mufflerOn(m vehicles.Muffler, corners []geometry.Point3) (on *vehicles.Muffler, lacks float64) {
	laid := &t.bare
	laid.Round(corners, t.run.Bend.Value)
	leg := t.mufflerLeg(laid, m.Length)
	l := laid.Legs[leg]
	whole := l.B.Sub(l.A).Norm()
	if lacks = max(0, m.Length-(l.End-l.Begin)); whole < m.Length {
		return nil, lacks + m.Length
	}
	middle := laid.OnLeg(leg, (l.Begin+l.End)/2)
	m.Leg, m.Start = leg+1, min(max(math.Floor(middle-m.Length/2), 0), whole-m.Length)
	return &m, lacks
}

// mufflerLeg is the leg for a muffler: the lowest that is straight for its length and level enough, else the longest.
func (t *trial) mufflerLeg(laid *geometry.Run, length float64) int {
	limit := t.judge.book.of(mufflerLevelRule)
	var fit []int
	longest, at := -1.0, 0
	for i, l := range laid.Legs {
		straight := l.End - l.Begin
		if straight > longest {
			longest, at = straight, i
		}
		_, tilt, ok := legTilt(l.A, l.B)
		if straight >= length && ok && (!limit.Value.Set || tilt <= limit.Value.Value) {
			fit = append(fit, i)
		}
	}
	slices.Reverse(fit)
	if t.lower < len(fit) {
		return fit[t.lower]
	}
	return at
}
