package rules

import (
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// What rules of exhaust, intake and fuel line have in common.
const (
	longestGiven = "the heater's instructions give the longest."
	stubsApart   = "At the heater the stubs set how far apart they are"
)

// The rules of every run alike, beyond what its own group asks of it.
var runsRules = []*Rule{departure, breakover, fullTravel, throughFitting, firstClip, otherClipSpan, clipHold}

// The runs, in the order of the file.
var allRuns = []Sort{TheExhaust, TheIntake, TheFuel}

// SortOf is the sort that stands for a run.
func SortOf(k vehicles.RunKind) Sort { return allRuns[k] }

// Run is the run that a sort stands for; is is false for any other.
func (s Sort) Run() (k vehicles.RunKind, is bool) {
	i := slices.Index(allRuns, s)
	return vehicles.RunKind(i), i >= 0
}

// runs are the runs there are, or the one that is sought.
func (j *judge) runs() []Sort {
	return slices.DeleteFunc(slices.Clone(allRuns), func(of Sort) bool {
		return j.run(of) == nil || j.only != Nothing && of != j.only
	})
}

// runsInFull are those of a job that asks of them what the driven van, clips and service ask.
func (j *judge) runsInFull() []Sort {
	if !j.inFull() {
		return nil
	}
	return j.runs()
}

var (
	fullTravel = &Rule{
		ID: "runs.travel", Unit: MM, Sense: Least, Weight: Damages, ByKind: AStub,
		Word:   "full travel",
		named:  pairNamed,
		Title:  "Run clear of what moves, all the way that it moves",
		Ask:    "Springs, axle, shaft and tyres were measured standing: loaded, and over a bump, they go up and down. Say how far with each of them.",
		Advice: "lay the run farther from it, or say in Underneath how far it moves.",
		short:  tooClose,
		check:  clearOfTravel,
		way:    wayClearOfTravel,
	}
	throughFitting = &Rule{
		ID: "runs.fitting", Unit: MM, Sense: Least, Weight: Damages, ByKind: AStub,
		Word:   "above the floor",
		named:  pairNamed,
		Title:  "Run above the floor clear of what stands there",
		Ask:    "The first legs of a line may lie above the floor: not through a box that stands on it.",
		Advice: "lead the run round it, or through the floor elsewhere.",
		short:  tooClose,
		check:  clearOfFittings,
	}
)

// UsualTravel is how far up and down a thing moves while nobody has said, mm. common practice, no source
const UsualTravel = 100

// travels is where an obstruction may be as the van drives, how far that is counted, and whether it moves at all: in a job that does
// not ask its runs for everything only of what somebody has said how far it moves.
func (j *judge) travels(i int) (moved geometry.Prism, ok bool) {
	o := &j.job.Obstructions[i]
	if !j.is(i, vehicles.Travels) || !o.Travel.Set && !j.inFull() {
		return moved, false
	}
	moved = j.plan.Obstructions[i].Prism
	by := o.Travel.Or(UsualTravel)
	moved.Low, moved.High = moved.Low-by, moved.High+by
	return moved, true
}

func clearOfTravel(j *judge, r *Rule) {
	limits := j.book.ofKinds(r)
	for _, of := range j.runs() {
		limit, tube := limits.of(of.String()), j.measuring(of).fills()
		for n := range j.plan.Obstructions {
			i := j.haste.nth(n)
			moved, ok := j.travels(i)
			if !ok || j.haste.spares(tube, i, limit, moved.High-j.plan.Obstructions[i].Prism.High) {
				continue
			}
			s := tube.Gap(&moved)
			f := j.open(limit, the(of), j.obstruction(i))
			j.measured(f, surfaceOf(s.Separation3, s.Radius), &j.plan.Obstructions[i])
			if j.haste.settles(i, f) {
				return
			}
		}
	}
}

func wayClearOfTravel(c *course, r *Rule) {
	limit := c.book.ofKinds(r).of(SortOf(c.kind).String())
	for i := range c.plan.Obstructions {
		if moved, ok := c.travels(i); ok {
			c.keepFrom(moved, limit, c.widest(&c.plan.Obstructions[i]))
		}
	}
}

// clearOfFittings judges each run that goes above the floor against what stands there, but for what it begins in.
func clearOfFittings(j *judge, r *Rule) {
	limits := j.book.ofKinds(r)
	for _, of := range j.runsInFull() {
		laid := j.run(of)
		if !slices.ContainsFunc(laid.Path, func(p geometry.Point3) bool { return p.Z > 0 }) {
			continue
		}
		for i := range j.plan.Fittings {
			thing := &j.plan.Fittings[i]
			if thing.Prism.GapPoint(laid.Path[0]).Gap == 0 {
				continue
			}
			g := j.measuring(of).fills().Gap(&thing.Prism)
			s := surfaceOf(g.Separation3, g.Radius)
			f := j.open(limits.of(of.String()), the(of), j.fitting(i))
			f.Value = s.value
			f.between(s.A, s.B)
			j.close(f, j.spread(f, putting{mark: j.runMark(s.A), at: s.A.Plan()}, thing, true, s.B.Plan(), s.N))
		}
	}
}
