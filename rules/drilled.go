package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// The rules of the drilled pilot hole: whether it is where the tapes say. What rests on a hole that they do not explain is held
// back, until direct tapes from it show where it is.
var pilotRules = []*Rule{
	pilotPlaceRule,
	{
		ID: "pilot.direct", Unit: Pure, Sense: Most, Weight: Damages, AtCut: true, HoldsBack: true,
		Word:   "tape from the pilot hole",
		Title:  "Tapes from the pilot hole agree with the survey",
		Ask:    "The square of the difference over its variance: the 99 % point of chi-squared for one.",
		Advice: "tape from the hole to it again, level, and measure the thing again.",
		doubt:  "the tape from the hole to it differs by more than the tapes explain: measure both again",
		check:  pilotDirect,
	},
}

var pilotPlaceRule = &Rule{
	ID: "pilot.place", Unit: Pure, Sense: Most, Weight: Damages, AtCut: true, HoldsBack: true,
	Word:   "pilot hole's place",
	named:  wordAlone,
	Title:  "Pilot hole where it was meant",
	Ask:    "The squares of how far it is off in x and y over their variances: the 99 % point of chi-squared for two.",
	Advice: "measure the hole again from below, or tape from it straight to two things across one another.",
	doubt:  "the hole is farther off than the tapes explain: measure it again",
	check:  pilotPlace,
}

func (j *judge) isDrilled() bool { return j.job.Cut != nil && j.plan.Cut.Drilled }

func pilotPlace(j *judge, r *Rule) {
	if !j.isDrilled() {
		return
	}
	f := j.open(j.book.of(r), the(ThePilot), Thing{})
	f.Value = offsetSquare(j.job, j.plan)
	j.close(f, 0)
	j.misplaced = f.Verdict != Clear
	j.hole.Held = j.misplaced
}

// Hole is what the direct tapes from a drilled pilot hole came to.
type Hole struct {
	Held  bool       // it is where the tapes do not explain it, and no direct tapes confirm it: what rests on it is held back
	Tapes []HoleTape // as cut.direct has them; none without a drilled hole
}

// offsetVariance is the variance along the unit direction n of how far a drilled pilot hole is off, mm^2: of the mark from above,
// of the readings of the hole from below, and of what lies between the two frames.
func offsetVariance(job *vehicles.Job, plan *vehicles.Plan, n geometry.Point) float64 {
	cut, fit, up := &plan.Cut, &plan.Fit, n.Turn(plan.Fit.Theta)
	along := func(n geometry.Point, x, y float64) float64 { return n.X*n.X*x*x + n.Y*n.Y*y*y }
	between := job.Frames() * job.Frames() / 3
	if fit.Tied() {
		u := fit.U(n, cut.Intended)
		between = u * u
	}
	return along(up, cut.UMark[0], cut.UMark[1]) + along(n, cut.UX, cut.UY) + between
}

// offsetSquare is the offset over its uncertainty, squared, x and y together; huge where nothing is uncertain and it is off.
func offsetSquare(job *vehicles.Job, plan *vehicles.Plan) float64 {
	off := plan.Cut.At.Sub(plan.Cut.Intended)
	sum := 0.0
	if off.X != 0 {
		sum = off.X * off.X / offsetVariance(job, plan, geometry.Point{X: 1})
	}
	if off.Y != 0 {
		sum += off.Y * off.Y / offsetVariance(job, plan, geometry.Point{Y: 1})
	}
	return math.Min(sum, math.MaxFloat64)
}

// Two direct tapes fix the hole where they lie across one another: by this much at least, degrees, and the same short of
// straight on. Source: the findings' contract; usual for an intersection, from memory.
const leastAcross = 30

func pilotDirect(j *judge, r *Rule) {
	if !j.isDrilled() || len(j.job.Cut.Direct) == 0 {
		return
	}
	limit, ways := j.book.of(r), []geometry.Point{}
	j.denied = make([]bool, len(j.plan.Obstructions))
	for i := range j.job.Cut.Direct {
		tape := &j.job.Cut.Direct[i]
		at, _ := j.job.ObstructionNamed(tape.To)
		h := j.direct(limit, tape, at)
		h.Direct = i
		j.hole.Tapes = append(j.hole.Tapes, h)
		if h.Verdict != Clear {
			j.denied[at] = true
		} else if h.Way != (geometry.Point{}) {
			ways = append(ways, h.Way)
		}
	}
	j.misplaced = j.misplaced && !fixes(ways)
	j.hole.Held = j.misplaced
}

// direct judges a tape from the drilled hole to an obstruction.
func (j *judge) direct(limit *Limit, tape *vehicles.DirectTape, at int) (h HoleTape) {
	thing, hole := &j.plan.Obstructions[at], j.plan.Cut.At
	s := thing.Prism.Footprint.GapCircle(hole, j.job.Cut.Across/2)
	f := j.open(limit, the(ThePilot), j.obstruction(at))
	why := j.spread(f, j.theCut(), thing, false, s.B, s.N.At(0))
	spread := f.Spread.Sum()
	f.Spread, f.N = Spread{}, geometry.Point3{}
	h.To, h.Is = at, max(0, thing.Prism.Footprint.GapOnly(hole))
	if h.Is > 0 {
		way := s.B.Sub(hole)
		h.Way = way.Scale(1 / way.Norm())
	}
	if h.Far = tape.Gap.Length - h.Is; h.Far != 0 {
		f.Value = math.Min(h.Far*h.Far/(j.tape.Variance(tape.Gap.Length, true)+spread), math.MaxFloat64)
	}
	f.flat(hole, s.B)
	j.close(f, why)
	h.Verdict = f.Verdict
	return h
}

// fixes tells whether two of the directions lie across one another.
func fixes(ways []geometry.Point) bool {
	across := math.Cos(leastAcross * math.Pi / 180)
	for i, p := range ways {
		for _, q := range ways[i+1:] {
			if math.Abs(p.Dot(q)) <= across {
				return true
			}
		}
	}
	return false
}
