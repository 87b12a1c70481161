package words

import (
	"math"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// PilotOff says how far from where it was meant a drilled pilot hole came out, and how far the centre may still move.
func PilotOff(p rules.Pilot, set desk.Settings) string {
	u := set.Units
	fore, side := " forward", desk.Left(set)
	if p.Off.X < 0 {
		fore = " back"
	}
	if p.Off.Y < 0 {
		side = desk.Right(set)
	}
	return "Pilot off " + survey.Format(math.Abs(p.Off.X), u) + fore + ", " + survey.Format(math.Abs(p.Off.Y), u) + " " + side +
		"; the centre may move " + desk.Length(p.MayMove, u)
}

// BesidePilot says what a centre beside the drilled pilot hole of a cut takes, by how far it is.
func BesidePilot(cut *vehicles.Cut, set desk.Settings) string {
	return rules.BesideInGeneral(cut, func(mm float64) string { return desk.Length(mm, set.Units) })
}

// OffPilot says what a centre so many mm beside the old pilot hole takes, in a clause.
func OffPilot(by float64, beside rules.Beside, u survey.Units) string {
	return desk.Length(by, u) + " beside the old pilot hole: " + beside.Takes()
}

// MovedBeside says what becomes of the pilot hole that a centre was moved from by so many mm, "" where it is the hole. How far it is, and what that takes, the screen
// shows from then on.
func MovedBeside(cut *vehicles.Cut, by float64) string {
	beside := rules.BesidePilot(cut, by)
	if beside == rules.OnTheHole {
		return ""
	}
	return beside.Why()
}

// OldPilot says it of the centre of a job's cut, with how a guide board is made; "" where it was never moved from a pilot hole.
func OldPilot(r *rules.Result, set desk.Settings) string {
	by, beside, there := rules.OldPilot(r)
	if !there || beside == rules.OnTheHole {
		return ""
	}
	return "Centre " + OffPilot(by, beside, set.Units) + ". " + beside.WhyAtLength()
}
