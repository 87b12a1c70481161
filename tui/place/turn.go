package place

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// The heater turns about its hole, so a pilot hole, or a sawn one, stays where it is: its heading may be chosen until the holes of its bolts
// are drilled.

// noHeater is said where a key needs one.
const noHeater = "no heater is chosen yet: choose one on the Job screen"

// isBolted is said in place of a turn.
const isBolted = "The bolt holes are drilled: the heater keeps its heading. Where they are not, Space takes that back on Work."

// turn turns the heater on its cut, anticlockwise as seen for 1, clockwise for -1.
func turn(s desk.State, way float64) desk.Change {
	switch {
	case s.Job.Heater == nil:
		return desk.Change{Say: words.Sentence(noHeater)}
	case s.Job.DoneOf(vehicles.BoltsDrilled).At != "":
		return desk.Change{Say: isBolted}
	}
	if s.Camera.View.Projection().Over {
		way = -way
	}
	heater := *s.Job.Heater
	heater.Yaw = geometry.WithinHalfTurn(heater.Yaw + way*desk.TurnStep)
	heater.Given |= vehicles.HasYaw
	job := s.Job.WithHeater(heater)
	change := desk.Change{Job: &job, Step: "turn heater"}
	if holeOf(s).there() || sawn(s) {
		change.Say = "Turned about the hole, which stays: warm air " + facing(heater.Yaw, s) + "."
	}
	return change
}
