package rules

import (
	"slices"

	"bench.example/undermark/vehicles"
)

// Lack is what a job has not, so that it was not checked, in the contract's words.
type Lack string

// What a job may lack.
const (
	LacksCut      Lack = "cut"
	LacksExhaust  Lack = "exhaust"
	LacksMuffler  Lack = "muffler"
	LacksClips    Lack = "clips"
	LacksIntake   Lack = "intake"
	LacksFuel     Lack = "fuel"
	LacksPump     Lack = "pump"
	LacksCollar   Lack = "turret"
	LacksTies     Lack = "ties"
	LacksOpenings Lack = "openings"
	LacksFittings Lack = "fittings"
)

// unchecked lists what the job lacks and so was not checked, parts of what is missing too.
func (j *judge) unchecked() []Lack {
	job := j.job
	const most = 11
	list := make([]Lack, 0, most)
	missing := func(lack Lack, gone bool) {
		if gone {
			list = append(list, lack)
		}
	}
	missing(LacksCut, job.Cut == nil)
	missing(LacksExhaust, j.plan.Exhaust == nil)
	missing(LacksMuffler, j.plan.Exhaust == nil || job.Exhaust.Muffler == nil)
	missing(LacksClips, j.plan.Exhaust == nil || job.Exhaust.Clips == nil)
	missing(LacksIntake, j.plan.Intake == nil)
	missing(LacksFuel, job.Fuel == nil)
	missing(LacksPump, job.Fuel == nil || job.Fuel.Pump == nil)
	missing(LacksCollar, job.Heater == nil || !job.Heater.Turret.Set)
	missing(LacksTies, !j.plan.Fit.Tied())
	missing(LacksOpenings, len(job.Openings) == 0)
	missing(LacksFittings, len(job.Fittings) == 0)
	return list
}

// unanswered lists what the job has and nobody has said how: it is not checked either. It stands beside what is unchecked, as
// other programs know all that may stand there.
func (j *judge) unanswered() (list []string) {
	open := func(word string, asked bool) {
		if asked {
			list = append(list, word)
		}
	}
	open("muffler drain", j.plan.Exhaust != nil && j.job.Exhaust.Muffler != nil && j.job.Exhaust.Muffler.Drain == "")
	if j.placed() && j.plan.Exhaust != nil && !j.job.Cut.Relieved.Set { // what is by the stub may burn
		open("deck: steel or timber", j.job.Deck() == "")
		steel := j.job.Deck() != vehicles.Timber
		open("wood, foam or lining on the deck", steel && j.job.OnDeck() == "")
		open("how wide wood is cut back at the hole", steel && j.job.Floor.Layers == "" && j.job.OnDeck() == vehicles.Wood) // the layers say that there is some
	}
	open("where the heater's air comes from", j.job.Heater != nil && j.job.Heater.Air == "")
	j.unansweredOfRuns(open)
	return list
}

// unansweredOfRuns says what nobody has said of the runs: whether they are held to everything, and then what that rests on.
func (j *judge) unansweredOfRuns(open func(word string, asked bool)) {
	runs := j.runs()
	if !j.inFull() {
		open(RunsInFull, len(runs) > 0)
		return
	}
	rear, front := axles(j.job)
	open("where the wheels stand", len(runs) > 0 && (rear == nil || front == nil))
	open("clips of the intake", j.plan.Intake != nil && j.job.Intake.Clips == nil)
	open("clips of the fuel line", j.plan.Fuel != nil && j.job.Fuel.Clips == nil)
	open("diesel or petrol", j.pumped() && j.job.Fuel.Supply.Kind == "")
}

// RunsInFull is what stands among the unanswered while a job does not ask its runs for everything.
const RunsInFull = "runs: driving wind, wheels, clips and reach"

// NotLookedFor lists the kinds that are neither entered nor looked for.
func NotLookedFor(job *vehicles.Job) []string {
	return notLookedFor(job, kindsOf(job.Obstructions))
}

// notLookedFor is that of a job of whose obstructions the kinds are known, as vehicles.KindIndex has them.
func notLookedFor(job *vehicles.Job, kinds []uint8) []string {
	entered := make([]bool, len(vehicles.Kinds)+1)
	for _, kind := range kinds {
		entered[kind] = true
	}
	open, nameless := []string{}, vehicles.KindOf("").Name
	for i, kind := range vehicles.Kinds {
		if kind != nameless && !entered[i] && !job.Looked[kind] {
			open = append(open, kind)
		}
	}
	return open
}

// OpenIn lists the kinds of a list that nobody has entered, nor looked for where all is now; none where the job lacks what they
// would be looked for round.
func OpenIn(l vehicles.LookList, job *vehicles.Job, plan *vehicles.Plan) []string {
	if l == vehicles.AtCut {
		return append(NotLookedFor(job), lookedElsewhere(job)...)
	}
	if !job.HasToLookRound(l) {
		return nil
	}
	looked, before := job.LookedFor(l), job.LookedBefore(l, plan)
	return slices.DeleteFunc(slices.Clone(l.Kinds()), func(kind string) bool {
		nameless := kind == l.KindOf("").Name
		return nameless || looked[kind] && !slices.Contains(before, kind) || job.Has(l, kind)
	})
}

func lookedElsewhere(job *vehicles.Job) []string { return notEntered(job, job.LookedElsewhere()) }

// notEntered takes those kinds out that the job has an obstruction of.
func notEntered(job *vehicles.Job, kinds []string) []string {
	return slices.DeleteFunc(kinds, func(kind string) bool { return job.Has(vehicles.AtCut, kind) })
}

// contractKinds parts kinds into those that other programs know and those that are this program's own.
func contractKinds(kinds []string) (known, added []string) {
	known = []string{}
	for _, kind := range kinds {
		if vehicles.KindOf(kind).Is(vehicles.Added) {
			added = append(added, kind)
		} else {
			known = append(known, kind)
		}
	}
	return known, added
}

// Open are the kinds that nobody has entered, nor looked for round where the cut is now.
func (r *Result) Open() []string { return append(slices.Clone(r.NotLookedFor), r.LookedElsewhere...) }

// OpenIn are the kinds of a list that nobody has entered, nor looked for where all is now.
func (r *Result) OpenIn(l vehicles.LookList) []string {
	switch l {
	case vehicles.AtRuns:
		return r.NotLookedAtRuns
	case vehicles.AtOutlet:
		return r.OpeningsNotLookedFor
	}
	return r.Open()
}

// AllLooked tells whether every kind of every list was entered or looked for where all is now.
func (r *Result) AllLooked() bool {
	return len(r.NotLookedFor)+len(r.LookedElsewhere)+len(r.NotLookedAtRuns)+len(r.OpeningsNotLookedFor) == 0
}

// AllKnown tells whether every kind was entered or looked for, and all that is asked of the heater and its runs was answered: only
// then is a job clear of more than was entered.
func (r *Result) AllKnown() bool { return r.AllLooked() && len(r.Unanswered) == 0 }
