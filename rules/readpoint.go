package rules

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// PointAbove tells whether a point so far below the floor's underside, mm, is above the floor: there it is read from above.
func PointAbove(job *vehicles.Job, drop float64) bool { return drop < -job.Floor.Thickness }

// PointInFloor tells whether a point so far below the floor's underside, mm, is within the floor's thickness: no hand and no clip gets there.
func PointInFloor(job *vehicles.Job, drop float64) bool { return drop < 0 && !PointAbove(job, drop) }

// ReadPoint returns what the tape says of a place of the frame below, which the frame above lies to as its plan's fit says, so far below the floor's underside, mm: along the van from the datum
// line, and across it from the centreline. From below the tape slopes to the point; a point above the floor is read from above, level with
// the floor.
func ReadPoint(job *vehicles.Job, frames survey.Fit, p geometry.Point, drop float64) (along, across float64) {
	d := &job.Datum
	if PointAbove(job, drop) {
		up := frames.Up(p)
		return reading(job.AboveBumper(up), d.HookAbove), up.Y
	}
	hook := d.HookBelow
	if hook.Set {
		hook.Value -= drop
	}
	return reading(job.BelowBumper(p), hook), p.Y
}
