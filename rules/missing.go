package rules

import (
	"slices"
	"sync"

	"bench.example/undermark/vehicles"
)

// unchecked lists what the job lacks and so was not checked, parts of what is missing too.
func (b *bench) unchecked() []string {
	j := b.job
	list := []string{}
	missing := func(word string, gone bool) {
		if gone {
			list = append(list, word)
		}
	}
	missing("cut", j.Cut == nil)
	missing("exhaust", b.plan.Exhaust == nil)
	missing("muffler", b.plan.Exhaust == nil || j.Exhaust.Muffler == nil)
	missing("clips", b.plan.Exhaust == nil || len(j.Exhaust.Clips) == 0)
	missing("intake", b.plan.Intake == nil)
	missing("fuel", j.Fuel == nil)
	missing("pump", j.Fuel == nil || j.Fuel.Pump == nil)
	missing("turret", j.Heater == nil || !j.Heater.Turret.Set)
	missing("ties", !b.plan.Fit.Tied())
	missing("openings", len(j.Openings) == 0)
	missing("fittings", len(j.Fittings) == 0)
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
		if slices.ContainsFunc(Builtin().rules, func(r Rule) bool { return r.Kind == kind && r.ID != "exhaust.outlet" }) {
			kinds = append(kinds, kind)
		}
	}
	return kinds
})
