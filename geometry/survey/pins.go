package survey

import (
	"math"

	"bench.example/undermark/geometry"
)

// Pins returns the tape distances, mm, to a place p of the frame above from two datum pins at (shift, +pins) and
// (shift, -pins), the tape's zero hook below the floor.
func Pins(p geometry.Point, shift, pins, hook float64) (left, right float64) {
	dx := math.Hypot(p.X-shift, hook)
	return math.Hypot(dx, p.Y-pins), math.Hypot(dx, p.Y+pins)
}
