package runs

import (
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
)

// turnAside goes on to the next of plan, side and back; each shows the whole van at first. A list that was asked for stays.
func (m screen) turnAside() screen {
	m.aside, m.camera = (m.aside+1)%(len(scene.Sides)+1), desk.Camera{Whole: true}
	if m.pictures == fallAlone {
		m.pictures = together
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
