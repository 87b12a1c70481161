package rules

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// The rules of the cut: what is under the floor, and the floor's edges.
var cutRules = []*Rule{
	cutReach,
	{
		ID: "cut.clearance", Unit: MM, Sense: Least, Weight: Damages, ByKind: AnObstruction, AtCut: true,
		Word:   "cut",
		Title:  "Cut clear of what is under the floor",
		Ask:    "The saw wanders, and what it meets can't be seen from above.",
		Advice: "move the cut away from it, in Place.",
		short:  tooClose,
		check:  cutClearance,
		keep:   keeper{TheCut, keepUnder},
	},
	{
		ID: "cut.on-floor", Unit: MM, Sense: Least, Weight: Damages, AtCut: true,
		Word:   "cut",
		Title:  "Cut inside the floor",
		Ask:    "The flange and its seal need sheet metal all round.",
		Advice: "move the cut away from it, in Place.",
		short:  tooClose,
		check:  cutOnFloor,
		keep:   keeper{TheCut, keepCutOnFloor},
	},
}

// cutReach gives no finding: it says which things count for those of the cut.
var cutReach = &Rule{
	ID: "cut.reach", Unit: MM, Sense: Least, Weight: Damages, AtCut: true,
	Title: "How deep saw and pilot bit reach below the floor",
	Ask:   "Measure the hole saw with its pilot bit in: how far does the tip go below the floor when the saw is through?",
}

func cutClearance(j *judge, r *Rule) {
	if j.job.Cut == nil {
		return
	}
	radius, place := j.job.Cut.Across/2, &j.plan.Cut
	limits, mark, reach := j.book.ofKinds(r), j.cutMark(), j.reach()
	for i := range j.plan.Obstructions {
		thing := &j.plan.Obstructions[i]
		if !reached(thing, reach) {
			continue
		}
		s := thing.Prism.Footprint.GapCircle(place.At, radius)
		n := s.N.At(0)
		f := j.open(limits.of(j.job.Obstructions[i].Kind), the(TheCut), j.obstruction(i))
		f.Value, f.N = s.Gap, n
		f.Spread = spread(thing, s.B, n, mark)
		f.flat(s.A, s.B)
		why := rests(thing)
		if !place.Drilled {
			why |= j.across(f, n)
		}
		j.close(f, why)
	}
}

func cutOnFloor(j *judge, r *Rule) {
	if j.job.Cut != nil {
		j.onFloor(r, TheCut, geometry.NewRound(j.plan.Cut.At, j.job.Cut.Across/2))
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
	limits, radius, reach := j.book.ofKinds(r), j.cutRadius(), j.reach()
	for i := range j.plan.Obstructions {
		thing, o := &j.plan.Obstructions[i], &j.job.Obstructions[i]
		if !reached(thing, reach) {
			continue
		}
		need := radius + limits.of(o.Kind).least()
		list = append(list, keep{name: o.Name, thing: thing, need: need, Constraint: marginOf(func(c geometry.Point) float64 {
			return thing.Prism.Footprint.GapOnly(c) - need
		})})
	}
	return list
}

func keepCutOnFloor(j *judge, r *Rule) []keep {
	low, high, need := j.plan.FloorMin, j.plan.FloorMax, j.cutRadius()+j.book.of(r).least()
	return []keep{{name: TheFloor.String(), edge: true, need: need, Constraint: marginOf(func(c geometry.Point) float64 {
		return min(c.X-low.X, high.X-c.X, c.Y-low.Y, high.Y-c.Y) - need
	})}}
}

// reached tells whether saw or pilot bit, which go down to a drop of reach, may get to a thing under the floor.
func reached(thing *vehicles.Placed, reach float64) bool {
	return thing.Assumed || -thing.Prism.High <= reach+coverage*thing.UTop
}

// reach is the drop to which saw or pilot bit may reach: the book's, or the ground when it has none.
func (j *judge) reach() float64 {
	if limit := j.book.of(cutReach); limit.Value.Set {
		return limit.Value.Value
	}
	return j.job.Floor.Ground
}

// onFloor judges how far inside the floor's edges something lies. The floor is laid out in the frame below.
func (j *judge) onFloor(r *Rule, subject Sort, outline geometry.Footprint) {
	s := outline.Inside(j.plan.FloorMin, j.plan.FloorMax)
	n := s.N.At(0)
	f := j.open(j.book.of(r), the(subject), the(TheFloor))
	f.Value, f.N = s.Gap, n
	f.Spread.Mark = j.cutMark().along(n)
	f.flat(s.A, s.B)
	var why reasons
	if !j.plan.Cut.Drilled {
		why = j.across(f, n)
	}
	j.close(f, why)
}
