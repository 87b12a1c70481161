package work

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
)

// What the job has of a step from elsewhere: whoever entered it once is not asked for it again.

// pilotKnown says where the pilot hole came out: it was drilled, looked at from below and measured.
func pilotKnown(r *rules.Result) string {
	place := &r.Plan.Cut
	if !place.Drilled {
		return oldPilotKnown(r)
	}
	off := place.At.Sub(place.Intended)
	ahead, side := "forward", "left"
	if off.X < 0 {
		ahead = "back"
	}
	if off.Y < 0 {
		side = "right"
	}
	return fmt.Sprintf("measured on Marks, %s %s and %s %s of its mark", survey.InMM(math.Abs(off.X)), ahead, survey.InMM(math.Abs(off.Y)), side)
}

// oldPilotKnown says that the pilot hole that the centre was moved from is the only one there will be: it is so near that a board leads the saw.
func oldPilotKnown(r *rules.Result) string {
	by, beside, there := rules.OldPilot(r)
	if !there || beside > rules.NearTheHole {
		return ""
	}
	return "the old hole, " + survey.InMM(by) + " beside the centre: no new one"
}

// sawnKnown says that the hole as built was read.
func sawnKnown(r *rules.Result) string {
	if r.Job.BuiltOtherwise().Cut == nil {
		return ""
	}
	return "read as built"
}

// collarKnown says how deep the collar is that was fitted.
func collarKnown(r *rules.Result) string {
	h := r.Job.BuiltOtherwise().Heater
	if h == nil || !h.Turret.Set || h.Turret == r.Job.Heater.Turret {
		return ""
	}
	return survey.InMM(h.Turret.Value) + " as built"
}
