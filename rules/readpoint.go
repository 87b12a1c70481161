package rules

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// PointAbove tells whether a point so far below the floor's underside, mm, is above the floor: there it is read from above.
func PointAbove(job *vehicles.Job, drop float64) bool { return drop < -job.Floor.Thickness }

// FramesOf is how the frame above lies to the frame below by a job's matching points; without two of them they are the same.
func FramesOf(job *vehicles.Job) survey.Fit {
	plan, _ := Reduce(vehicles.Job{Floor: job.Floor, Datum: job.Datum, Tape: job.Tape, Bow: job.Bow, Ties: job.Ties}, nil)
	if !plan.Fit.Tied() {
		return survey.Fit{}
	}
	return plan.Fit
}

// ReadPoint returns what the tape says of a place of the frame below, so far below the floor's underside, mm: along the van from the datum
// line, and across it from the centreline. From below the tape slopes to the point; a point above the floor is read from above, level with
// the floor.
func ReadPoint(job *vehicles.Job, p geometry.Point, drop float64) (along, across float64) {
	d := &job.Datum
	if PointAbove(job, drop) {
		up := FramesOf(job).Up(p)
		return reading(job.AboveBumper(up), d.HookAbove), up.Y
	}
	hook := d.HookBelow
	if hook.Set {
		hook.Value -= drop
	}
	return reading(job.BelowBumper(p), hook), p.Y
}
