package moving

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/plan"
)

// Followed has the view follow a place that is moved when that leaves the picture of the pane, which has its size, or what reaches so many mm from it in plan
// does and would be seen whole with the place in the middle.
func Followed(change desk.Change, at geometry.Point3, reach float64, pane plan.Pane, s desk.State, opts plan.Options) desk.Change {
	if change.Camera != nil || s.Camera.Scale == 0 {
		return change
	}
	there := s
	there.Camera.Middle = s.Camera.View.Projection().Point(at)
	sees := func(s desk.State, to geometry.Point3) bool {
		where := pane.Cells(s, opts)
		_, _, one := where(at.Add(to))
		_, _, other := where(at.Sub(to))
		return one && other
	}
	for _, to := range [...]geometry.Point3{{}, {X: reach}, {Y: reach}} { // a low picture may have room for it one way alone
		if !sees(s, to) && (to == geometry.Point3{} || sees(there, to)) {
			change.Camera = &there.Camera
			break
		}
	}
	return change
}

// LookAt puts a finding in the middle of the plan in a body of w by h.
func LookAt(f rules.Finding, s desk.State, w, h int) desk.Change {
	planW, planH := Sizes(w, h)
	camera := plan.LookAt(f, s.Camera.View, planW, planH, s.Settings.Units)
	return desk.Change{Camera: &camera}
}

// PickWithin is how near to a place, mm, a tap picks it: three cells where the scale is known.
func PickWithin(s desk.State) float64 {
	const dots, whole = 6, 40
	if s.Camera.Scale > 0 {
		return dots * s.Camera.Scale
	}
	return whole
}
