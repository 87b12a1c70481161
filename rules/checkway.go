package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

// OnCheck returns the fittings, by the job's list, that the tape of a length to check would pass through on the floor.
func OnCheck(r *Result, c Check) []int {
	t := taping{r: r}
	return t.met(c.ends[0], c.ends[1])
}

// Even is a place of the centreline to which the tapes from both pins must say the same, where the pins stand square to the van.
type Even struct {
	Ahead  float64 // of the datum above, mm
	Length float64 // what either tape must say, mm
}

// evenStep is in which steps such a place is sought, mm: what a tape is easily laid to.
const evenStep = 50.0

// EvenPlace returns the farthest place of the centreline to which both pins' tapes lie free, in whole steps of 50 mm; ok is false where
// there is none as far ahead as the pins are out: nearer, the tapes lie too flat to show anything.
func EvenPlace(r *Result) (e Even, ok bool) {
	d, pins := &r.Job.Datum, r.Job.Pins()
	t := taping{r: r}
	left, right := geometry.Point{X: d.ShiftAbove.Value, Y: pins}, geometry.Point{X: d.ShiftAbove.Value, Y: -pins}
	end := r.Plan.Fit.Up(geometry.Point{X: r.Plan.FloorMax.X}).X
	for ahead := math.Floor(end/evenStep) * evenStep; ahead >= pins; ahead -= evenStep {
		at := geometry.Point{X: ahead}
		if t.met(left, at) == nil && t.met(right, at) == nil && t.onFloor(at) {
			length, _ := survey.Pins(at, d.ShiftAbove.Value, pins, d.HookAbove.Value)
			return Even{Ahead: ahead, Length: length}, true
		}
	}
	return e, false
}

// TapesMet returns how many tapes on top a fitting of the job stands in the way of: those of all marks and lengths to check.
func TapesMet(r *Result, sheet MarkSheet, fitting int) (n int) {
	count := func(t taping, from, to geometry.Point) {
		if t.meets(t.tape(from, to), fitting) {
			n++
		}
	}
	for _, m := range sheet.Marks {
		if m.Above == nil {
			continue
		}
		t := taping{r: r, end: geometry.Point{X: m.Above.X, Y: m.Above.Y}}
		for _, way := range TapeWays {
			count(t, t.zero(m.Above, way), t.end)
		}
	}
	for _, c := range sheet.Checks {
		count(taping{r: r}, c.ends[0], c.ends[1])
	}
	return n
}
