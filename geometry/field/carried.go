package field

import "bench.example/undermark/geometry"

// Carried keeps what moves with the place, without turning, away from a thing: a plate or a body from a fitting. Of two
// rectangles the margin is exact, overlapping too.
type Carried struct {
	Body    geometry.Footprint // when the place is the datum
	Against geometry.Footprint
	Need    float64 // least distance between the outlines, mm
}

// Margin returns the gap of the two less Need, with the body's place at p.
func (c Carried) Margin(p geometry.Point) float64 {
	return geometry.Between(c.Body.Moved(0, p), c.Against).Gap - c.Need
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
