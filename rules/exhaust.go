package rules

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// The rules of the exhaust's way.
var exhaustRules = []*Rule{
	ExhaustClearance,
	exhaustShielded,
	{
		ID: "exhaust.length", Unit: MM, Sense: Most, Weight: Damages,
		Word:   "exhaust length",
		Title:  "Length of the exhaust",
		Ask:    "Too long an exhaust chokes the heater: see its instructions.",
		Advice: "shorten the exhaust; " + longestGiven,
		short:  tooMuch,
		check:  ofRun(TheExhaust, lengthOf),
		way:    noLonger,
	},
	{
		ID: "exhaust.bends", Unit: Degree, Sense: Most, Weight: Damages,
		Word:   "exhaust bends",
		Title:  "Bends of the exhaust together",
		Ask:    bendsChoke,
		Advice: "straighten the exhaust: fewer and wider bends.",
		short:  degreesTooMany,
		check:  ofRun(TheExhaust, turnsOf),
		way:    noMoreBends,
	},
	{
		ID: "exhaust.bend-room", Unit: Count, Sense: Most, Weight: Damages,
		Word:   "exhaust legs too short",
		Title:  "Legs of the exhaust too short for their bends",
		Ask:    "A pipe bent tighter than it can take kinks.",
		Advice: mendShortLegs,
		check:  shortLegs(TheExhaust),
	},
	{
		ID: "exhaust.floor", Unit: MM, Sense: Least, Weight: Damages,
		Word:   "exhaust",
		Title:  "Exhaust below the floor",
		Ask:    "Hot pipe close under the floor heats lining, seal and wiring above it.",
		Advice: moveExhaust,
		short:  tooClose,
		check:  belowFloor(TheExhaust),
		way:    belowTheFloor,
	},
	{
		ID: "exhaust.ground", Unit: MM, Sense: Least, Weight: Damages,
		Word:   "exhaust",
		Title:  "Exhaust above the ground",
		Ask:    "What hangs low is torn off on a ramp or kerb.",
		Advice: "raise the lowest point of the exhaust.",
		short:  tooClose,
		check:  aboveGround(TheExhaust),
		way:    aboveTheGround,
	},
	{
		ID: "exhaust.drains", Unit: Count, Sense: Most, Weight: Kills,
		Word:   "exhaust low points",
		Title:  "Low points of the exhaust without a drain",
		Ask:    "Put the muffler with its drain hole, or the outlet, at the low point.",
		Advice: "lower or raise points so that water runs to the outlet or the muffler's drain.",
		check:  lowPoints(TheExhaust),
		way:    neverRises,
	},
	ExhaustFall,
	mufflerLevelRule,
	mufflerDrainRule,
	exhaustUnder,
	clipSpanRule,
	mufflerReach,
}

// ExhaustClearance is of the exhaust with an obstruction; with a shield between the two exhaustShielded takes its place.
var ExhaustClearance = &Rule{
	ID: "exhaust.clearance", Unit: MM, Sense: Least, Weight: Damages, ByKind: AnObstruction, ByFuel: true,
	Word:   "exhaust",
	Title:  "Exhaust clear of what is under the floor",
	Ask:    "The pipe gets hot enough to burn hoses and set fuel alight.",
	Advice: moveExhaust,
	short:  tooClose,
	check:  exhaustClearance,
	keep:   keeper{AStub, keepExhaustStub},
	way:    func(c *course, r *Rule) { c.clearOf(c.ofExhaust(r)) },
}

// ExhaustFall is asked for when a run is led out, and when its fall is measured.
var ExhaustFall = &Rule{
	ID: "exhaust.fall", Unit: PerM, Sense: Least, Weight: Damages,
	Word:   "exhaust fall",
	Title:  "Exhaust falls towards the muffler",
	Ask:    "Water in the exhaust must run out, not stand in the heater.",
	Advice: "lower the leg's far end, so that water runs to the drain.",
	short:  shortfall{words: "falls %s mm per m too little"},
	check:  exhaustFall,
	way:    falls,
}

var clipSpanRule = &Rule{
	ID: "exhaust.clip-span", Unit: MM, Sense: Most, Weight: Damages,
	Word:   "exhaust clips",
	Title:  "Longest stretch of exhaust without a clip",
	Ask:    "A pipe that hangs free works loose at the heater, and gas comes out there.",
	Advice: addClip,
	short:  tooMuch,
	check:  clipSpan,
}

// exhaustShielded takes the place of exhaust.clearance where a shield stands between the pipe and the thing.
var exhaustShielded = &Rule{
	ID: "exhaust.clearance.shielded", Findings: "exhaust.clearance", Unit: MM, Sense: Least, Weight: Damages, ByKind: AnObstruction,
	ByFuel: true,
	Word:   "exhaust",
	Title:  "Shielded exhaust clear of what is under the floor",
	Ask:    "With a heat shield between the pipe and the thing, not only a wrap on the pipe.",
	Advice: moveExhaust,
	short:  tooClose,
}

func exhaustClearance(j *judge, r *Rule) {
	if j.plan.Exhaust != nil {
		j.clearances(TheExhaust, j.ofExhaust(r))
	}
}

// ofExhaust are the limits of the exhaust by obstruction: of a bare one, or of one shielded from it. What burns less easily may
// be nearer.
func (j *judge) ofExhaust(bare *Rule) func(i int) *Limit {
	free, shielded, shields := j.byKindOf(bare), j.byKindOf(exhaustShielded), j.job.Exhaust.Shielded
	return func(i int) *Limit {
		if shields.For(j.job.Obstructions[i].Name) {
			return shielded(i)
		}
		return free(i)
	}
}

func keepExhaustStub(j *judge, r *Rule) []keep {
	run, h := j.job.Exhaust, j.job.Heater
	if run == nil || h == nil {
		return nil
	}
	return j.keepStub(j.ofExhaust(r), h.ExhaustStub, run.Across)
}

// exhaustFall judges the legs before the muffler's own, without one every leg.
func exhaustFall(j *judge, r *Rule) {
	run := j.plan.Exhaust
	if run == nil {
		return
	}
	legs := len(run.Path) - 1
	if run.Muffler != nil {
		legs = run.Muffler.Leg
	}
	for i := range legs {
		if fall, _, ok := legTilt(run.Path[i], run.Path[i+1]); ok {
			j.fallOf(r, i, fall)
		}
	}
}

// fallOf judges the fall of a leg of the exhaust.
func (j *judge) fallOf(r *Rule, leg int, fall float64) {
	from, to := j.plan.Exhaust.Path[leg], j.plan.Exhaust.Path[leg+1]
	f := j.open(j.book.of(r), the(TheExhaust), Thing{Sort: ALeg, Index: int32(leg)})
	f.Value = fall
	f.between(from, to)
	j.close(f, 0)
}

// rises judges the legs of the exhaust that lead up behind its muffler. The rule asks for a fall towards that alone; an exhaust that is sought falls all the
// way, or is a miss.
func (j *judge) rises() {
	run := j.plan.Exhaust
	if run == nil || run.Muffler == nil {
		return
	}
	for i := run.Muffler.Leg; i+1 < len(run.Path); i++ {
		if fall, _, ok := legTilt(run.Path[i], run.Path[i+1]); ok && fall < -marginNoise {
			j.fallOf(ExhaustFall, i, fall)
		}
	}
}

func clipSpan(j *judge, r *Rule) {
	if run := j.plan.Exhaust; run != nil && j.job.Exhaust.Clips != nil {
		j.plain(r, the(TheExhaust), Thing{}, longestSpan(run, j.job.Exhaust.Clips))
	}
}

// flatLeg is the most by which the ends of a leg differ in drop while it still counts as level, mm. Source: the definition
// of a low point in the findings' contract; half of what a tape is read to.
const flatLeg = 0.5

// drainedWithin is how far along the run a drain hole may be from a low point that it drains, mm. Source: the same.
const drainedWithin = 50

// undrained are the low points of a run that nothing drains, by where in its path each begins: neither the outlet, the muffler nor a
// drain hole is on them. A low point is a point or a level stretch of points whose neighbours on both sides, where there are any, are higher.
func undrained(r *vehicles.LaidRun, drains []float64) (list []int) {
	last := len(r.Path) - 1
	for from := 0; from <= last; {
		to := from
		for to < last && math.Abs(r.Path[to+1].Z-r.Path[to].Z) <= flatLeg {
			to++
		}
		low := (from == 0 || r.Path[from-1].Z > r.Path[from].Z) && (to == last || r.Path[to+1].Z > r.Path[to].Z)
		if low && to != last && !touches(r.Muffler, r.Path, from, to) && !drainedOn(r, from, to, drains) {
			list = append(list, from)
		}
		from = to + 1
	}
	return list
}

// drainedOn tells whether a drain hole is on the stretch between two points of the path, or near enough.
func drainedOn(r *vehicles.LaidRun, from, to int, drains []float64) bool {
	begin, end := r.CornerAlong(from), r.CornerAlong(to)
	return slices.ContainsFunc(drains, func(at float64) bool {
		return at >= begin-drainedWithin-vehicles.AlongNoise && at <= end+drainedWithin+vehicles.AlongNoise
	})
}

// Undrained are the low points of a run that nothing drains, as places along it, mm: each the beginning of its point or level
// stretch.
func Undrained(r *vehicles.LaidRun, drains []float64) (along []float64) {
	for _, point := range undrained(r, drains) {
		along = append(along, r.CornerAlong(point))
	}
	return along
}

// touches tells whether any part of the muffler is on the stretch between two points of the path.
func touches(m *vehicles.LaidMuffler, path []geometry.Point3, from, to int) bool {
	if m == nil {
		return false
	}
	if m.Leg >= from && m.Leg < to {
		return true
	}
	begins := m.Axis[0].Sub(path[m.Leg]).Norm() < vehicles.AlongNoise
	ends := m.Axis[1].Sub(path[m.Leg+1]).Norm() < vehicles.AlongNoise
	return m.Leg == to && begins || m.Leg+1 == from && ends
}

// longestSpan returns the longest stretch between neighbours among stub, clips, muffler ends and outlet, mm along the
// run; the muffler holds itself.
func longestSpan(r *vehicles.LaidRun, clips []float64) float64 {
	places := append(make([]float64, 0, len(clips)+4), clips...)
	places = append(places, 0, r.Line.Length())
	if r.Muffler != nil {
		places = append(places, r.Muffler.From, r.Muffler.To)
	}
	slices.Sort(places)
	longest := 0.0
	for i := 1; i < len(places); i++ {
		if m := r.Muffler; m != nil && places[i-1] >= m.From && places[i] <= m.To {
			continue
		}
		longest = max(longest, places[i]-places[i-1])
	}
	return longest
}
