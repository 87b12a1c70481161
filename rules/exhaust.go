package rules

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

func (b *bench) exhaustRules() {
	r := b.plan.Exhaust
	if r == nil {
		return
	}
	book := "exhaust.clearance"
	if b.job.Exhaust.Shielded {
		book = "exhaust.clearance.shielded"
	}
	tube := tubeOf(r)
	b.clearances(TheExhaust, book, tube)
	b.fuelLine(tube)
	b.common(TheExhaust, r)
	b.plain("exhaust.drains", the(TheExhaust), Thing{}, float64(undrained(r)))
	b.falls(r)
	if clips := b.job.Exhaust.Clips; len(clips) > 0 {
		b.plain("exhaust.clip-span", the(TheExhaust), Thing{}, longestSpan(r, clips))
	}
	b.outlets(r)
	b.edge(r)
}

// falls judges the legs before the muffler's own, and the muffler's level.
func (b *bench) falls(r *vehicles.LaidRun) {
	if r.Muffler == nil {
		return
	}
	for i := range r.Muffler.Leg {
		fall, _, ok := legTilt(r.Path[i], r.Path[i+1])
		if !ok {
			continue
		}
		f := b.open("exhaust.fall", b.book.find("exhaust.fall", ""), the(TheExhaust), Thing{Sort: ALeg, Index: int32(i)})
		f.Value = fall
		b.at(f, r.Path[i], r.Path[i+1])
		b.close(f, 0)
	}
	_, degrees, _ := legTilt(r.Path[r.Muffler.Leg], r.Path[r.Muffler.Leg+1])
	f := b.open("exhaust.muffler-level", b.book.find("exhaust.muffler-level", ""), the(TheExhaust), the(TheMuffler))
	f.Value = degrees
	b.at(f, r.Muffler.Axis...)
	b.close(f, 0)
}

// flatLeg is the most by which the ends of a leg differ in drop while it still counts as level, mm.
const flatLeg = 0.5

// undrained counts the low points of a run that nothing drains: neither the outlet nor the muffler is on them. A low
// point is a point or a level stretch of points whose neighbours on both sides, where there are any, are higher.
func undrained(r *vehicles.LaidRun) int {
	count, last := 0, len(r.Path)-1
	for from := 0; from <= last; {
		to := from
		for to < last && math.Abs(r.Path[to+1].Z-r.Path[to].Z) <= flatLeg {
			to++
		}
		low := (from == 0 || r.Path[from-1].Z > r.Path[from].Z) && (to == last || r.Path[to+1].Z > r.Path[to].Z)
		if low && to != last && !touches(r.Muffler, r.Path, from, to) {
			count++
		}
		from = to + 1
	}
	return count
}

// touches tells whether any part of the muffler is on the stretch between two points of the path.
func touches(m *vehicles.LaidMuffler, path []geometry.Point3, from, to int) bool {
	if m == nil {
		return false
	}
	if m.Leg >= from && m.Leg < to {
		return true
	}
	const noise = 1e-6 // mm, of places worked out along a leg
	begins := m.Axis[0].Sub(path[m.Leg]).Norm() < noise
	ends := m.Axis[1].Sub(path[m.Leg+1]).Norm() < noise
	return m.Leg == to && begins || m.Leg+1 == from && ends
}

// longestSpan returns the longest stretch between neighbours among stub, clips, muffler ends and outlet, mm along the
// run; the muffler holds itself.
func longestSpan(r *vehicles.LaidRun, clips []float64) float64 {
	places := append(make([]float64, 0, len(clips)+4), clips...)
	places = append(places, 0, r.Line.Length())
	if r.Muffler != nil {
		places = append(places, r.Muffler.From, r.Muffler.To)
	}
	slices.Sort(places)
	longest := 0.0
	for i := 1; i < len(places); i++ {
		if m := r.Muffler; m != nil && places[i-1] >= m.From && places[i] <= m.To {
			continue
		}
		longest = max(longest, places[i]-places[i-1])
	}
	return longest
}

// outlets judges the outlet against every opening.
func (b *bench) outlets(r *vehicles.LaidRun) {
	rules := b.book.ofKinds("exhaust.outlet")
	outlet := r.Path[len(r.Path)-1]
	for i := range b.plan.Openings {
		o, thing := &b.job.Openings[i], &b.plan.Openings[i].Placed
		f := b.open("exhaust.outlet", rules.of(o.Kind), the(TheExhaust), b.opening(i))
		f.Kind = o.Kind
		b.measured(f, surfaceOf(thing.Prism.GapPoint(outlet), 0), thing)
	}
}

// fuelLine judges what the exhaust fills against the heater's own fuel line.
func (b *bench) fuelLine(tube *geometry.Tube) {
	line := b.plan.Fuel
	if line == nil {
		return
	}
	s := tube.GapPath(line.Path)
	between := surfaceOf(s.Separation3, s.Radius)
	between.value -= line.Radius
	b.put(b.open("exhaust.fuel", b.book.find("exhaust.fuel", ""), the(TheExhaust), the(TheFuel)), between)
}

// edge judges how far inside the van's outline the exhaust ends: the bumper line and the floor's sides.
func (b *bench) edge(r *vehicles.LaidRun) {
	outlet := r.Path[len(r.Path)-1]
	half := b.job.Floor.Width / 2
	value, to, n := outlet.X, geometry.Point3{X: 0, Y: outlet.Y, Z: outlet.Z}, geometry.Point3{X: 1}
	if side := half - math.Abs(outlet.Y); side < value {
		value, n = side, geometry.Point3{Y: 1}
		to = geometry.Point3{X: outlet.X, Y: math.Copysign(half, outlet.Y), Z: outlet.Z}
	}
	f := b.open("exhaust.edge", b.book.find("exhaust.edge", ""), the(TheExhaust), Thing{})
	f.Value, f.N = value, n
	f.Spread.Mark = b.runMark(outlet).along(n)
	b.flat(f, outlet.Plan(), to.Plan())
	b.close(f, 0)
}
