package rules

import (
	"bench.example/undermark/vehicles"
)

// The rules of how the muffler hangs: its water must run out.

var mufflerLevelRule = &Rule{
	ID: "exhaust.muffler-level", Unit: Degree, Sense: Most, Weight: Nuisance,
	Word:   "muffler level",
	named:  wordAlone,
	Title:  "Muffler level",
	Ask:    "Its drain hole must be at its lowest point.",
	Advice: "bring both ends of the muffler's leg to one height.",
	short:  degreesTooMany,
	check:  mufflerLevel,
}

var mufflerDrainRule = &Rule{
	ID: "muffler.drain", Unit: Count, Sense: Most, Weight: Damages,
	Word:   "muffler's drain hole",
	named:  wordAlone,
	Title:  "Drain holes of the muffler that do not point down",
	Ask:    "A hole that points aside leaves water standing in the muffler: it rusts through, or freezes and chokes the heater.",
	Advice: "turn the muffler about its length until its drain hole points down.",
	check:  mufflerDrain,
}

func mufflerLevel(j *judge, r *Rule) {
	run := j.plan.Exhaust
	if run == nil || run.Muffler == nil {
		return
	}
	leg := run.Muffler.Leg
	f := j.open(j.book.of(r), the(TheExhaust), the(TheMuffler))
	_, f.Value, _ = legTilt(run.Path[leg], run.Path[leg+1])
	axis := run.Muffler.Axis
	f.between(axis[0], axis[len(axis)-1])
	j.close(f, 0)
}

// mufflerDrain judges how the muffler's drain hole points, once somebody has looked.
func mufflerDrain(j *judge, r *Rule) {
	if j.plan.Exhaust == nil || j.job.Exhaust.Muffler == nil {
		return
	}
	switch j.job.Exhaust.Muffler.Drain {
	case vehicles.DrainDown:
		j.counted(r, the(TheExhaust), the(TheMuffler), 0, "")
	case vehicles.DrainAside:
		j.counted(r, the(TheExhaust), the(TheMuffler), 1, "its drain hole points aside")
	}
}
