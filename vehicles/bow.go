package vehicles

import (
	"math"

	"bench.example/undermark/geometry"
)

// BowPoint says how far forward of the datum line, mm, the bumper's edge is at a y: behind it when negative.
//
// A bumper is seldom straight, and a tape hooked on it starts at its edge, not at the datum line. So every reading in x
// from the bumper, below and above, is lengthened by the offset at the y where the tape ran: that of the point measured,
// of a rectangle the middle of its y. Between two points the offset runs straight, beyond the outermost it stays. Readings
// that run on, cut.at and the datum pins, which stand on the datum line itself, are not touched. A mark's reading from
// the bumper is shorter by the same offset, so that reading and place are the inverse of each other.
type BowPoint struct{ Y, Offset float64 }

// BelowBumper returns the plan distance from the bumper's edge, as used from below, to p of the frame below, mm.
func (j *Job) BelowBumper(p geometry.Point) float64 { return p.X - bowAt(j.Bow, p.Y) }

// AboveBumper returns the plan distance from the bumper's zero, as used from above, to p of the frame above, mm.
func (j *Job) AboveBumper(p geometry.Point) float64 {
	return p.X - j.Datum.ShiftAbove.Value - bowAt(j.Bow, p.Y)
}

// bowAt returns how far forward of the datum line a bumper's edge is at y, mm; 0 for a straight one. The points may stand in
// any order.
func bowAt(bow []BowPoint, y float64) float64 {
	if len(bow) == 0 {
		return 0
	}
	right, left := BowPoint{Y: math.Inf(-1)}, BowPoint{Y: math.Inf(1)}
	for _, p := range bow {
		if p.Y <= y && p.Y > right.Y {
			right = p
		}
		if p.Y >= y && p.Y < left.Y {
			left = p
		}
	}
	switch {
	case math.IsInf(right.Y, -1):
		return left.Offset
	case math.IsInf(left.Y, 1) || right.Y == left.Y:
		return right.Offset
	}
	return right.Offset + (left.Offset-right.Offset)*(y-right.Y)/(left.Y-right.Y)
}
