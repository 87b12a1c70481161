package rules

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// The rules of the cut: what is under the floor, and the floor's edges.
var cutRules = []*Rule{
	cutReach,
	cutClear,
	{
		ID: "cut.on-floor", Unit: MM, Sense: Least, Weight: Damages, AtCut: true,
		Word:   "cut",
		Title:  "Cut inside the floor",
		Ask:    "The flange and its seal need sheet metal all round.",
		Advice: moveOff,
		short:  tooClose,
		check:  cutOnFloor,
		keep:   keeper{TheCut, keepCutOnFloor},
	},
}

var cutClear = &Rule{
	ID: "cut.clearance", Unit: MM, Sense: Least, Weight: Damages, ByKind: AnObstruction, AtCut: true,
	Word:   "cut",
	Title:  "Cut clear of what is under the floor",
	Ask:    "The saw wanders, and what it meets can't be seen from above.",
	Advice: moveOff,
	short:  tooClose,
	check:  cutClearance,
	keep:   keeper{TheCut, keepUnder},
}

// cutReach gives no finding: it says which things count for those of the cut.
var cutReach = &Rule{
	ID: "cut.reach", Unit: MM, Sense: Least, Weight: Damages, ByKind: AnObstruction, AtCut: true, reach: true,
	Title: "How deep a thing may lie that the cut must keep clear of",
	Ask: "Measure the hole saw with its pilot bit in: how far does the tip go below the floor when the saw is through? A bit that breaks " +
		"through goes further than its stop, and the stubs with their first bend come out there.",
}

func cutClearance(j *judge, r *Rule) {
	if j.job.Cut == nil {
		return
	}
	radius, place := j.job.Cut.Across/2, &j.plan.Cut
	limit, cut, depths := j.byKindOf(r), j.theCut(), j.cutDepths()
	for i := range j.plan.Obstructions {
		thing := &j.plan.Obstructions[i]
		if !depths.reach(j, i) {
			continue
		}
		s := thing.Prism.Footprint.GapCircle(place.At, radius)
		f := j.open(limit(i), the(TheCut), j.obstruction(i))
		f.Value = s.Gap
		f.flat(s.A, s.B)
		why := j.spread(f, cut, thing, false, s.B, s.N.At(0))
		if j.denied != nil && j.denied[i] {
			why |= denied
		}
		j.close(f, why)
	}
}

func cutOnFloor(j *judge, r *Rule) {
	if j.job.Cut != nil {
		j.onFloor(r, the(TheCut), j.theCut(), geometry.NewRound(j.plan.Cut.At, j.job.Cut.Across/2))
	}
}

// cutRadius is that of the cut, or of the one that places are sought for while a job has none.
func (j *judge) cutRadius() float64 {
	if j.job.Cut == nil {
		return vehicles.UsualAcross / 2.
	}
	return j.job.Cut.Across / 2
}

func keepUnder(j *judge, r *Rule) (list []keep) {
	limit, radius, depths := j.byKindOf(r), j.cutRadius(), j.cutDepths()
	for i := range j.plan.Obstructions {
		if depths.reach(j, i) {
			list = append(list, keepCentre(j.job.Obstructions[i].Name, &j.plan.Obstructions[i], radius+limit(i).least()))
		}
	}
	return list
}

// keepCentre keeps the cut's centre so far away from a thing, mm.
func keepCentre(name string, thing *vehicles.Placed, need float64) keep {
	return keep{name: name, thing: thing, need: need, Constraint: marginOf(func(c geometry.Point) float64 {
		return thing.Prism.Footprint.GapOnly(c) - need
	})}
}

func keepCutOnFloor(j *judge, r *Rule) []keep {
	low, high, need := j.plan.FloorMin, j.plan.FloorMax, j.cutRadius()+j.book.of(r).least()
	return []keep{{name: TheFloor.String(), edge: true, need: need, Constraint: marginOf(func(c geometry.Point) float64 {
		return min(c.X-low.X, high.X-c.X, c.Y-low.Y, high.Y-c.Y) - need
	})}}
}

// depths are the drops to which something that comes through the floor may get to each obstruction.
type depths struct {
	limit  func(i int) *Limit
	least  float64 // whatever the program's own book says
	ground float64 // where no book says anything
}

// reach tells whether it may get to an obstruction.
func (d *depths) reach(j *judge, i int) bool {
	if j.is(i, vehicles.InSheetMetal) {
		return false
	}
	thing, to := &j.plan.Obstructions[i], d.ground
	if limit := d.limit(i); limit.Value.Set {
		if to = limit.Value.Value; limit.Book == BuiltIn {
			to = max(to, d.least)
		}
	}
	return thing.Assumed || -thing.Prism.High <= to+coverage*thing.UTop
}

// cutDepths are those of saw, pilot bit and stubs. The program's own book does not know this heater's stubs: their first bends
// need room too.
func (j *judge) cutDepths() depths {
	d := depths{limit: j.byKindOf(cutReach), ground: j.job.Floor.Ground}
	if h := j.job.Heater; h != nil {
		for _, run := range []*vehicles.Run{j.job.Exhaust, j.job.Intake} {
			if run != nil {
				d.least = max(d.least, h.StubDrop+run.Bend.Value+run.Across/2+underBend)
			}
		}
	}
	return d
}

// underBend is what is to be free below a stub's first bend, mm. common practice, no source
const underBend = 20

// onFloor judges how far inside the floor's edges something lies. The floor is putting out in the frame below.
func (j *judge) onFloor(r *Rule, subject Thing, put putting, outline geometry.Footprint) {
	s := outline.Inside(j.plan.FloorMin, j.plan.FloorMax)
	f := j.open(j.book.of(r), subject, the(TheFloor))
	f.Value = s.Gap
	f.flat(s.A, s.B)
	j.close(f, j.spread(f, put, nil, false, s.B, s.N.At(0)))
}
