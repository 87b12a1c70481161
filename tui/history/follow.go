package history

import (
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// followed is the job that a change asks for, with the ends of the runs that were under their stubs under them still where the heater was
// edited and the runs were not: whoever turns it, or gives its stubs other places, anywhere, leaves no run behind. A hole that is read beside its mark is followed by nothing. They go from where they
// were before the step, so that a figure of several letters shifts what hangs on them once.
func (d *Desk) followed(c desk.Change) vehicles.Job {
	job, now := *c.Job, d.now.job
	if job.Heater == nil || now.Heater == nil || job.Heater == now.Heater || job.Cut != now.Cut || job.Exhaust != now.Exhaust || job.Intake != now.Intake || job.Fuel != now.Fuel || sameStubs(&job, &now) {
		return job
	}
	before := now
	if n := len(d.past); n > 0 && d.runsOn(c.Step) {
		before = d.past[n-1].job
	}
	for _, of := range vehicles.RunKinds {
		if before.Run(of) != nil && job.Run(of) != nil {
			job = job.WithRun(of, before.Run(of))
		}
	}
	next, _ := job.Following(before)
	return next
}

// sameStubs tells whether a heater has its stubs where another has them.
func sameStubs(a, b *vehicles.Job) bool {
	for _, of := range vehicles.RunKinds {
		at, there := a.Stub(of)
		was, had := b.Stub(of)
		if at != was || there != had {
			return false
		}
	}
	return true
}
