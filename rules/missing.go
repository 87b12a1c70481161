package rules

import (
	"slices"
	"sync"

	"bench.example/undermark/vehicles"
)

// unchecked lists what the job lacks and so was not checked, parts of what is missing too.
func (j *judge) unchecked() []string {
	job := j.job
	list := []string{}
	missing := func(word string, gone bool) {
		if gone {
			list = append(list, word)
		}
	}
	missing("cut", job.Cut == nil)
	missing("exhaust", j.plan.Exhaust == nil)
	missing("muffler", j.plan.Exhaust == nil || job.Exhaust.Muffler == nil)
	missing("clips", j.plan.Exhaust == nil || job.Exhaust.Clips == nil)
	missing("intake", j.plan.Intake == nil)
	missing("fuel", job.Fuel == nil)
	missing("pump", job.Fuel == nil || job.Fuel.Pump == nil)
	missing("turret", job.Heater == nil || !job.Heater.Turret.Set)
	missing("ties", !j.plan.Fit.Tied())
	missing("openings", len(job.Openings) == 0)
	missing("fittings", len(job.Fittings) == 0)
	return list
}

// NotLookedFor lists the kinds of the book that are neither entered nor looked for.
func NotLookedFor(job *vehicles.Job) []string {
	open := slices.DeleteFunc(slices.Clone(kindsOfBook()), func(kind string) bool { return job.Looked[kind] })
	return notEntered(job, open)
}

func lookedElsewhere(job *vehicles.Job) []string { return notEntered(job, job.LookedElsewhere()) }

// notEntered takes those kinds out that the job has an obstruction of.
func notEntered(job *vehicles.Job, kinds []string) []string {
	return slices.DeleteFunc(kinds, func(kind string) bool {
		for i := range job.Obstructions {
			if job.Obstructions[i].Kind == kind {
				return true
			}
		}
		return false
	})
}

// Open are the kinds that nobody has entered, nor looked for round where the cut is now.
func (r *Result) Open() []string { return append(slices.Clone(r.NotLookedFor), r.LookedElsewhere...) }

// kindsOfBook are the kinds of obstruction the book has a value of its own for, in the order lists show them.
var kindsOfBook = sync.OnceValue(func() []string {
	var kinds []string
	for _, kind := range vehicles.Kinds {
		if slices.ContainsFunc(Builtin().limits, func(l Limit) bool { return l.Kind == kind && l.ByKind == AnObstruction }) {
			kinds = append(kinds, kind)
		}
	}
	return kinds
})
