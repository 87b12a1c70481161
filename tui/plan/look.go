package plan

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
)

// around is how much of the floor is seen round a finding, mm: as far as one looks for obstructions.
const around = 300

// LookAt is a camera for a plan of w columns and h rows that shows where a finding is, or the whole floor for one that
// is of no place.
func LookAt(f rules.Finding, v scene.View, w, h int) desk.Camera {
	if f.Places == 0 {
		return desk.Camera{View: v}
	}
	low, high := f.At[0].Plan(), f.At[0].Plan()
	for _, p := range f.Points() {
		low = geometry.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
		high = geometry.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	margin := geometry.Point{X: around, Y: around}
	return canvas.Fit(v, low.Sub(margin), high.Add(margin), w, h)
}
