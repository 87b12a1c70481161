package rules

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// The rules of what must be reached from below later on. A job says whether it asks them.
var (
	mufflerReach = &Rule{
		ID: "muffler.reach", Unit: MM, Sense: Least, Weight: Nuisance,
		Word:   "below the muffler",
		Title:  "Room below the muffler to reach its drain hole",
		Ask:    "The drain hole clogs: a hand with a wire must get at it from below.",
		Advice: "hang the muffler where nothing is right below it.",
		short:  tooClose,
		check:  reachMuffler,
	}
	pumpReach = &Rule{
		ID: "fuel.pump-reach", Unit: MM, Sense: Least, Weight: Nuisance,
		Word:   "below the pump",
		Title:  "Room below the pump to reach it and its filter",
		Ask:    "Pump and filter are changed from below: a hand must get there.",
		Advice: "put the pump below the floor where nothing is right below it.",
		short:  tooClose,
		check:  reachPump,
	}
	filterReach = &Rule{
		ID: "fuel.filter-reach", Unit: MM, Sense: Least, Weight: Nuisance,
		Word:   "below the fuel filter",
		Title:  "Room below the fuel filter to reach it",
		Ask:    "The filter is changed from below: a hand must get there.",
		Advice: "put the filter below the floor where nothing is right below it.",
		short:  tooClose,
		check:  reachFilter,
	}
)

// handAcross is what a hand takes in width, mm. Source: from memory, EN 547-3, breadth of a hand with its thumb, 95th percentile.
const handAcross = 120

func reachMuffler(j *judge, r *Rule) {
	run := j.plan.Exhaust
	if run == nil || run.Muffler == nil || !j.inFull() {
		return
	}
	m := run.Muffler
	axis := []geometry.Point{m.Axis[0].Plan(), m.Axis[1].Plan()}
	middle := geometry.Segment3{A: m.Axis[0], B: m.Axis[1]}.At(0.5)
	under := middle.Sub(geometry.Point3{Z: m.Radius})
	j.roomBelow(r, TheExhaust, under, geometry.NewLine(axis, m.Radius))
}

func reachPump(j *judge, r *Rule) {
	if at, ok := j.pumpAt(); ok {
		j.reach(r, at)
	}
}

func reachFilter(j *judge, r *Rule) {
	if line := j.plan.Fuel; line != nil && line.Filter.Set && j.inFull() {
		j.reach(r, line.Line.At(line.Filter.Value))
	}
}

// reach judges how a hand gets to what sits on the fuel line: from below the floor; to what is above it from above, of which nothing is
// asked; to what is within the floor not at all.
func (j *judge) reach(r *Rule, at geometry.Point3) {
	switch drop := -at.Z; {
	case PointAbove(j.job, drop):
	case PointInFloor(j.job, drop):
		j.level(r, TheFuel, TheFloor, at, 0)
	default:
		j.roomBelow(r, TheFuel, at, geometry.NewRound(at.Plan(), handAcross/2))
	}
}

// roomBelow judges the height that is free below a place of a run, over an outline round it, to the first thing there or to the
// ground. What is beside the place, or reaches past its height, is not below it.
func (j *judge) roomBelow(r *Rule, of Sort, under geometry.Point3, over geometry.Footprint) {
	first, top := -1, -j.job.Floor.Ground
	for i := range j.plan.Obstructions {
		p := &j.plan.Obstructions[i].Prism
		if j.is(i, vehicles.InSheetMetal) || p.High > under.Z || p.High <= top {
			continue
		}
		if geometry.Between(over, p.Footprint).Gap < 0 {
			first, top = i, p.High
		}
	}
	if first < 0 {
		j.level(r, of, TheGround, under, under.Z-top)
		return
	}
	thing := &j.plan.Obstructions[first]
	below := geometry.Point3{X: under.X, Y: under.Y, Z: top}
	s := surface{value: under.Z - top}
	s.A, s.B, s.N = under, below, geometry.Point3{Z: -1}
	j.measured(j.open(j.book.of(r), the(of), j.obstruction(first)), s, thing)
}
