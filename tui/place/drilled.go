package place

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// A hole is where it is: once the pilot is drilled, arrows and taps do not move the cut away from it before a key has said that
// they shall. What is typed and taken, and the keys that name a place of their own, say it themselves.

var keyRelease = bind("r", "let the drilled cut be moved, or hold it", "r")

// holds says whether the drilled cut stays where it is whatever is tapped.
func (m screen) holds(s desk.State) bool {
	return s.Job.Cut != nil && s.Job.Cut.Drilled != nil && m.released != s.Job.Cut.Drilled
}

// heldFast is said in place of a move.
func heldFast() desk.Change {
	return desk.Change{Say: "The pilot is drilled: the cut stays with it. " + keyRelease.Help().Key + " lets it be moved, " +
		keyType.Help().Key + " types a place."}
}

// release lets the arrows move a drilled cut, or holds it again.
func (m screen) release(s desk.State) (screen, desk.Change) {
	if m.holds(s) {
		m.released = s.Job.Cut.Drilled
		return m, desk.Change{Say: "Arrows and taps move the drilled cut now; " + keyRelease.Help().Key + " holds it again. " + newPilot}
	}
	m.released = nil
	return m, desk.Change{Say: "The cut stays with its pilot hole."}
}

// tapCut puts the cut where the plan was tapped, and says what moved and how to take that back: a tap may not have been meant.
func (m screen) tapCut(s desk.State, at geometry.Point) desk.Change {
	if m.holds(s) {
		return heldFast()
	}
	change := placeCut(s, at)
	to := plan2(change.Job.Cut.At)
	text := "Cut placed at "
	if s.Job.Cut != nil {
		way := words.Way(to.Sub(plan2(s.Job.Cut.At)), s.Settings)
		if way == "" {
			return desk.Change{}
		}
		text = "Cut moved " + way + ", to "
	}
	text += desk.AtX(to.X, s.Settings.Units) + ", " + desk.Across(to.Y, s.Settings) + "."
	if old := besideHole(change, s).Say; old != "" {
		text += " " + old
	}
	change.Say = text + " " + desk.KeyUndo.Help().Key + " takes it back."
	return change
}
