package field

import (
	"math"

	"bench.example/undermark/geometry"
)

// Carried keeps what moves with the place, without turning, away from a thing: a plate or a body from a fitting. Of two
// rectangles the margin is exact, overlapping too; otherwise it is as geometry.Between has it.
type Carried struct {
	Body    geometry.Footprint // when the place is the datum
	Against geometry.Footprint
	Need    float64 // least distance between the two, mm
	// Lift is how far one is above the other, mm, and then counts with the gap in plan; negative when they are at one
	// height, so that only the plan counts.
	Lift float64
}

// Margin returns the gap of the two less Need, with the body's place at p.
func (c Carried) Margin(p geometry.Point) float64 {
	gap := geometry.Between(c.Body.Moved(0, p), c.Against).Gap
	if c.Lift >= 0 {
		gap = math.Hypot(max(gap, 0), c.Lift)
	}
	return gap - c.Need
}

// convex says whether the margin is the least of those between pieces: so it is but inside a bent line, whose way out
// from a round is known.
func (c Carried) convex() bool {
	round := c.Body.Shape == geometry.Round || c.Against.Shape == geometry.Round
	bent := len(c.Body.Path) > 2 || len(c.Against.Path) > 2
	return c.Lift >= 0 || !round || !bent
}

// appendParts appends what each piece of the body asks of each of the thing.
func (c Carried) appendParts(parts []part) []part {
	if !c.convex() {
		return append(parts, vague(c))
	}
	for _, body := range cores(c.Body) {
		for _, thing := range cores(c.Against) {
			h := newHull(body, thing, c.Need, c.Lift)
			parts = append(parts, part{
				kind: carried, hull: h, x: h.x, y: h.y, off: h.radius + h.need, reach: body.half.Norm() + thing.half.Norm(),
			})
		}
	}
	return parts
}

// Contained keeps what moves with the place, without turning, on the floor.
type Contained struct {
	Body     geometry.Footprint // when the place is the datum
	Min, Max geometry.Point     // of the floor
	Need     float64            // least distance inside the floor's edge, mm
}

// Margin returns how far the body is inside the floor's edge, less Need, with its place at p.
func (c Contained) Margin(p geometry.Point) float64 {
	return c.Body.Moved(0, p).Inside(c.Min, c.Max).Gap - c.Need
}
