package vector

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
)

// hatched returns the pieces, within an outline, of parallel lines at an angle, degrees anticlockwise from the board's X, a
// spacing apart; they start at the board's corner, so that the lines of neighbours meet. The outline may cross itself: what lies
// within it by the non-zero rule is hatched.
func hatched(outline []geometry.Point, angle, spacing float64) [][]geometry.Point {
	turned := make([]geometry.Point, len(outline))
	low, high := math.Inf(1), math.Inf(-1)
	for i, p := range outline {
		turned[i] = p.Turn(angle)
		low, high = min(low, turned[i].Y), max(high, turned[i].Y)
	}
	var pieces [][]geometry.Point
	for k := math.Ceil(low / spacing); k*spacing < high; k++ {
		y := k * spacing
		for _, span := range crossings(turned, y) {
			pieces = append(pieces, []geometry.Point{
				geometry.Point{X: span[0], Y: y}.Turn(-angle), geometry.Point{X: span[1], Y: y}.Turn(-angle),
			})
		}
	}
	return pieces
}

// crossings are the spans of a level line that lie within an outline.
func crossings(outline []geometry.Point, y float64) (spans [][2]float64) {
	type crossing struct {
		x  float64
		up int
	}
	var all []crossing
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		up := 1
		if p.Y > q.Y {
			p, q, up = q, p, -1
		}
		if p.Y <= y && y < q.Y {
			all = append(all, crossing{p.X + (y-p.Y)/(q.Y-p.Y)*(q.X-p.X), up})
		}
	}
	slices.SortFunc(all, func(a, b crossing) int {
		if a.x < b.x {
			return -1
		}
		return 1
	})
	winding, from := 0, 0.0
	for _, c := range all {
		if winding == 0 {
			from = c.x
		}
		if winding += c.up; winding == 0 {
			spans = append(spans, [2]float64{from, c.x})
		}
	}
	return spans
}
