package history

import (
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// followed is the job that a change asks for, with the ends of the runs that were under their stubs under them still where the heater was
// edited and the runs were not: whoever turns it, or gives its stubs other places, anywhere, leaves no run behind. No run follows a hole that is
// read beside its mark. They go from where they were before the step, so that a figure of several letters shifts what hangs on them once.
func (d *Desk) followed(c desk.Change) vehicles.Job {
	job, now := *c.Job, d.now.job
	if !heaterAlone(&job, &now) || sameStubs(&job, &now) {
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

// heaterAlone tells whether of what the runs hang on, and of them, the heater alone was edited.
func heaterAlone(a, b *vehicles.Job) bool {
	edited := a.Heater != b.Heater && a.Heater != nil && b.Heater != nil
	return edited && a.Cut == b.Cut && a.Exhaust == b.Exhaust && a.Intake == b.Intake && a.Fuel == b.Fuel
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
