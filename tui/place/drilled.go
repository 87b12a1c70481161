package place

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// A hole is where it is: once the pilot is drilled, arrows and taps do not move the cut away from it before a key has said that
// they shall. What is typed and taken, and the keys that name a place of their own, say it themselves.

var keyRelease = bind("r", "let the drilled cut be moved, or hold it", "r")

// hole is the pilot hole that a cut stays with: as it was measured, and when Work has it drilled. The zero value is none.
type hole struct {
	measured *vehicles.Pair
	ticked   string
}

// holeOf is the pilot hole of the job.
func holeOf(s desk.State) hole {
	if s.Job.Cut == nil {
		return hole{}
	}
	return hole{s.Job.Cut.Drilled, s.Job.DoneOf(vehicles.PilotDrilled).At}
}

// there tells whether there is one.
func (h hole) there() bool { return h != hole{} }

// unmeasured tells whether it is there and nobody knows where it came out.
func (h hole) unmeasured() bool { return h.there() && h.measured == nil }

// holds says whether the drilled cut stays where it is whatever is tapped.
func (m screen) holds(s desk.State) bool {
	pilot := holeOf(s)
	return sawn(s) || pilot.there() && m.released != pilot
}

// sawn tells whether the hole is cut, as Work has it.
func sawn(s desk.State) bool { return s.Job.Cut != nil && s.Job.DoneOf(vehicles.Sawn).At != "" }

// isSawn is said in place of whatever would move the hole.
const isSawn = "The hole is sawn: it stays where it is. What came out otherwise stands on Work, as built; where it is not sawn, Space takes that back there."

// uncut is a change that leaves a sawn hole where it is: no key, no tap and no typed place moves what is cut.
func uncut(change desk.Change, s desk.State) desk.Change {
	if change.Job == nil || !sawn(s) || change.Job.Cut != nil && change.Job.Cut.At == s.Job.Cut.At {
		return change
	}
	return desk.Change{Say: isSawn}
}

// heldFast is said in place of a move.
func heldFast(s desk.State) desk.Change {
	if sawn(s) {
		return desk.Change{Say: isSawn}
	}
	if holeOf(s).unmeasured() {
		return desk.Change{Say: "The pilot is drilled, as Work has it: the cut stays with it. " + keyPilot.Help().Key + " measures it, " +
			keyRelease.Help().Key + " lets it be moved, " + keyType.Help().Key + " types a place."}
	}
	return desk.Change{Say: "The pilot is drilled: the cut stays with it. " + keyRelease.Help().Key + " lets it be moved, " +
		keyType.Help().Key + " types a place."}
}

// moveDrilled is said while a drilled cut is let go.
const moveDrilled = "Arrows and taps move the drilled cut"

// release lets the arrows move a drilled cut, or holds it again.
func (m screen) release(s desk.State) (screen, desk.Change) {
	if sawn(s) {
		return m, desk.Change{Say: isSawn}
	}
	if m.holds(s) {
		m.released = holeOf(s)
		return m, desk.Change{Say: moveDrilled + " now; " + keyRelease.Help().Key + " holds it again. " + words.BesidePilot(s.Job.Cut, s.Settings) + "."}
	}
	m.released = hole{}
	return m, desk.Change{Say: "The cut stays with its pilot hole."}
}

// tapCut puts the cut where the plan was tapped, and says what moved and how to take that back: a tap may not have been meant.
func (m screen) tapCut(s desk.State, at geometry.Point) desk.Change {
	if m.holds(s) {
		return heldFast(s)
	}
	change := besideHole(placeCut(s, at), s)
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
	if change.Say != "" {
		text += " " + change.Say
	}
	change.Say = text + " " + desk.KeyUndo.Help().Key + " takes it back."
	return change
}
