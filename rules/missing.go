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
	missing("clips", j.plan.Exhaust == nil || len(job.Exhaust.Clips) == 0)
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
	entered := kindsEntered(job)
	list := []string{}
	for _, kind := range kindsOfBook() {
		if !entered[kind] && !job.Looked[kind] {
			list = append(list, kind)
		}
	}
	return list
}

func lookedElsewhere(job *vehicles.Job) []string {
	elsewhere := job.LookedElsewhere()
	if len(elsewhere) == 0 {
		return nil
	}
	entered := kindsEntered(job)
	return slices.DeleteFunc(elsewhere, func(kind string) bool { return entered[kind] })
}

func kindsEntered(job *vehicles.Job) map[string]bool {
	entered := make(map[string]bool, len(vehicles.Kinds))
	for i := range job.Obstructions {
		entered[job.Obstructions[i].Kind] = true
	}
	return entered
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
