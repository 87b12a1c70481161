package plan

import (
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// LookAt is a camera for a plan of w columns and h rows that shows where a finding is and as far round it as one looks for
// obstructions, or the whole floor for one that is of no place.
func LookAt(f rules.Finding, v scene.View, w, h int, units survey.Units) desk.Camera {
	if f.Places == 0 {
		return desk.Camera{View: v}
	}
	return canvas.Fit(v, f.Points(), vehicles.LookRound, w, h, units)
}
