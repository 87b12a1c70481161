package rules

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
	"bench.example/undermark/vehicles"
)

// course is what the rules ask of the way of a run that is being sought: each rule that limits it says so in its own file, by its
// way. They are the demands of the search alone. What comes out of it is judged by what judges any run.
type course struct {
	judge
	demand
	kind   vehicles.RunKind
	radius float64 // of the run, mm
	query  route.Query
}

// askedOf are the rules that a run of each kind is held to when it is sought: its own, and those of other runs that it may break.
func askedOf(kind vehicles.RunKind) []*Rule {
	switch kind {
	case vehicles.IntakeRun:
		return slices.Concat(intakeRules, runsRules)
	case vehicles.FuelRun:
		return slices.Concat(fuelRules, runsRules, []*Rule{exhaustFuel})
	}
	return slices.Concat(exhaustRules, outletRules, runsRules, []*Rule{intakeExhaust, intakeMouth, intakeUpwind, pumpHeat})
}

// newCourse asks the rules what a run of a job must keep that leads from its stub to one of some goals.
func newCourse(j judge, kind vehicles.RunKind, goals []route.Goal, d demand) *course {
	run := j.job.Run(kind)
	c := &course{judge: j, kind: kind, radius: run.Across / 2, demand: d}
	from := j.plan.Mouth(j.job, kind)
	if d.upright {
		from.Z = math.Floor(from.Z - stubDown(run))
	}
	c.query = route.Query{From: from, To: goals, Bend: run.Bend.Value, Fall: math.Inf(-1)}
	c.query.Min, c.query.Max = c.box(goals)
	for _, r := range askedOf(kind) {
		if r.way != nil {
			r.way(c, r)
		}
	}
	if d.uncut {
		c.spareEnds()
	}
	return c
}

// box holds the floor, the van's outline and both ends of the run; it reaches from the ground to the floor.
func (c *course) box(goals []route.Goal) (low, high geometry.Point3) {
	p := c.plan
	left, right := max(p.FloorMax.Y, c.job.OutlineLeft()), max(-p.FloorMin.Y, c.job.OutlineRight())
	low = geometry.Point3{X: p.FloorMin.X, Y: -right, Z: c.radius - c.job.Floor.Ground}
	high = geometry.Point3{X: p.FloorMax.X, Y: left, Z: 0}
	if rear, ok := c.job.OutlineRear(); ok {
		low.X = min(low.X, rear)
	}
	for _, at := range append([]route.Goal{{At: c.query.From.Plan()}}, goals...) {
		low.X, high.X = min(low.X, at.At.X), max(high.X, at.At.X)
		low.Y, high.Y = min(low.Y, at.At.Y), max(high.Y, at.At.Y)
	}
	return low, high
}

// corners are those of a way, the stub's mouth first.
func (c *course) corners(w route.Way) []geometry.Point3 {
	if !c.upright {
		return w.Corners
	}
	return append([]geometry.Point3{c.plan.Mouth(c.job, c.kind)}, w.Corners...)
}

// beyond is by how much corners lie where no run can, in all, mm: out of the van and back again, in the floor or in the ground.
func (c *course) beyond(corners []geometry.Point3) (sum float64) {
	low, high := c.query.Min, c.query.Max
	for _, at := range corners {
		sum += max(0, low.X-at.X, at.X-high.X) + max(0, low.Y-at.Y, at.Y-high.Y)
		sum += asImpossible * max(0, at.Z+c.radius, c.radius-c.job.Floor.Ground-at.Z)
	}
	return sum
}

// keepFrom keeps the run's surface so far from a thing, whose place is known that well at the least.
func (c *course) keepFrom(prism geometry.Prism, limit *Limit, sigma float64) {
	need := limit.least() + c.searched*sigma - c.less
	if !limit.Value.Set {
		need = nothingHit
	}
	c.query.Obstacles = append(c.query.Obstacles, route.Obstacle{Prism: prism, Need: c.radius + need})
}

// nothingHit is what is kept from a thing of which only is asked that it is not hit, mm.
const nothingHit = 1

// clearOf keeps the run clear of every obstruction that has a limit.
func (c *course) clearOf(limit func(i int) *Limit) {
	for i := range c.plan.Obstructions {
		if c.is(i, vehicles.InSheetMetal) {
			continue
		}
		if l := limit(i); l != nil {
			thing := &c.plan.Obstructions[i]
			c.keepFrom(thing.Prism, l, c.widest(thing))
		}
	}
}

// widest is the largest sigma that a distance between the run and a thing can have: along the worst known axis, at the far end of
// the floor.
func (c *course) widest(thing *vehicles.Placed) float64 {
	mark := c.farMark()
	along := max(thing.X.U*thing.X.U+mark[0], thing.Y.U*thing.Y.U+mark[1], thing.UTop*thing.UTop+mark[2])
	low, high := thing.Prism.Footprint.Bounds()
	turn := thing.UTurn * high.Sub(low).Norm() / 2
	return math.Sqrt(along + turn*turn)
}

// farMark are the variances of a run where it can be put up least well.
func (c *course) farMark() (worst variances) {
	low, high := c.query.Min, c.query.Max
	for _, at := range []geometry.Point3{low, high, {X: low.X}, {X: high.X}} {
		for axis, v := range c.runMark(at) {
			worst[axis] = max(worst[axis], v)
		}
	}
	return worst
}

// apartFrom keeps the run away from what another fills between two places along it.
func (c *course) apartFrom(other *vehicles.LaidRun, from, to float64, limit *Limit) {
	mark := c.farMark()
	sigma := math.Sqrt(2 * max(mark[0], mark[1], mark[2]))
	for at := from; at < to; at += pieceOfRun {
		a, b := other.Line.At(at), other.Line.At(min(at+pieceOfRun, to))
		prism := geometry.Prism{
			Footprint: geometry.NewLine([]geometry.Point{a.Plan(), b.Plan()}, other.Radius),
			Low:       min(a.Z, b.Z) - other.Radius, High: max(a.Z, b.Z) + other.Radius,
		}
		if off := prism.GapPoint(c.query.From).Gap; off < c.radius+limit.least()+AtStub {
			continue // the heater puts them there; whether they come apart is judged
		}
		c.keepFrom(prism, limit, sigma)
	}
}

// pieceOfRun is the length of the pieces in which another run is kept away from, mm.
const pieceOfRun = 80

// spared is by how much less than is there is asked, mm: a whole place of what runs are laid in.
const spared = 0.01

// spareEnds asks no more of what is near the run's ends than is there: those stay where they are.
func (c *course) spareEnds() {
	for i := range c.query.Obstacles {
		o := &c.query.Obstacles[i]
		o.Need = min(o.Need, o.Prism.GapPoint(c.query.From).Gap-spared)
		for _, g := range c.query.To {
			o.Need = min(o.Need, o.Prism.GapRun([]geometry.Point3{g.At.At(g.Low), g.At.At(g.High)}).Gap-spared)
		}
	}
}
