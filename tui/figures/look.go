package figures

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// LookAt is a camera for a plan of w columns and h rows that shows where a finding is and as far round it as one looks for
// obstructions, or the whole floor for one that
// is of no place.
func LookAt(f rules.Finding, v scene.View, w, h int) desk.Camera {
	if len(f.At) == 0 {
		return desk.Camera{View: v}
	}
	low, high := f.At[0].Plan(), f.At[0].Plan()
	for _, p := range f.At {
		low = geometry.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
		high = geometry.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	margin := geometry.Point{X: vehicles.LookRound, Y: vehicles.LookRound}
	return canvas.Fit(v, low.Sub(margin), high.Add(margin), w, h)
}
