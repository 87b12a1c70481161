package runs

import (
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
)

// roundRun is how much is shown round a run that is looked at from the side, mm.
const roundRun = 150

// turnAside goes on to the next of plan, side and back; the run at hand fills the picture there, and the plan's key for all of it shows
// the whole van.
func (m screen) turnAside(s desk.State) screen {
	m.aside, m.profile, m.camera = (m.aside+1)%(len(scene.Sides)+1), false, desk.Camera{}
	if laid := s.Job.Laid(m.of); m.aside > 0 && laid != nil && m.w > 0 {
		a := arranged(m.w, m.h)
		m.camera = canvas.Fit(scene.Sides[m.aside-1], laid.Path, roundRun, a.plan.W, a.plan.H, s.Settings.Units)
	}
	return m
}

// own keeps what a change does to the camera of a view from the side: all other screens look at the floor's face.
func (m screen) own(change desk.Change) screen {
	if m.aside > 0 && change.Camera != nil {
		m.camera = *change.Camera
		if seen := m.camera.View.Projection(); seen.FacesFloor() {
			m.aside, m.camera = 0, desk.Camera{}
		}
	}
	return m
}

// others is what of a change is for the others.
func (m screen) others(change desk.Change) desk.Change {
	if m.aside > 0 {
		change.Camera = nil
	}
	return change
}
