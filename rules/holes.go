package rules

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// The rules of what is drilled beside the cut: the holes for the heater's bolts, and that of the fuel line.
var holeRules = []*Rule{
	holeReach,
	holeClear,
	{
		ID: "hole.on-floor", Unit: MM, Sense: Least, Weight: Damages, AtCut: true,
		Word:   "hole",
		named:  bothNamed,
		Title:  floorHoles + " inside the floor",
		Ask:    "A hole at the edge of the sheet tears out, and lets water in.",
		Advice: leadFuelElsewhere,
		short:  tooClose,
		check:  holeOnFloor,
		keep:   keeper{ThePlate, keepBoltsOnFloor},
	},
}

// floorHoles are the holes through the floor beside the cut.
const floorHoles = "Bolt holes and the fuel line's hole"

var holeClear = &Rule{
	ID: "hole.clearance", Unit: MM, Sense: Least, Weight: Damages, ByKind: AnObstruction, AtCut: true,
	Word:   "hole",
	named:  bothNamed,
	Title:  floorHoles + " clear of what is under the floor",
	Ask:    "A bit that breaks through goes on into what lies below, and a bolt's nut and washer need room.",
	Advice: leadFuelElsewhere,
	short:  tooClose,
	check:  holeClearance,
	keep:   keeper{ThePlate, keepBoltsClear},
}

// IsReach tells whether the rule gives no finding, but says how far below the floor a thing may be and still count.
func (r *Rule) IsReach() bool { return r.reach }

// AnyDepth tells whether a reach is as long as a job file may say: whatever is entered counts.
func (l *Limit) AnyDepth() bool { return l.IsReach() && l.Value.Value >= survey.Longest }

// holeReach gives no finding: it says which things count for those of the holes.
var holeReach = &Rule{
	ID: "hole.reach", Unit: MM, Sense: Least, Weight: Damages, ByKind: AnObstruction, AtCut: true, reach: true,
	Title: "How deep a thing may lie that a drilled hole must keep clear of",
	Ask:   "Measure how far the bit goes below the floor when it is through, its stop set.",
}

// hole is one that is drilled beside the cut.
type hole struct {
	thing   Thing
	at      geometry.Point
	radius  float64
	putting putting
}

// holes are those of the bolts, which go with the cut, and of the fuel line, which has a mark of its own.
func (j *judge) holes() []hole {
	if j.asked {
		return j.drilled
	}
	j.asked = true
	for i, at := range Bolts(j.job, j.plan) {
		j.drilled = append(j.drilled, hole{Thing{Sort: ABolt, Index: int32(i)}, at, j.job.Heater.Bolt / 2, j.theCut()})
	}
	for i, at := range FuelHoles(j.job, j.plan) {
		j.drilled = append(j.drilled, hole{Thing{Sort: AFuelHole, Index: int32(i)}, at, j.job.Fuel.Supply.HoleAcross() / 2, j.markedAbove(at)})
	}
	return j.drilled
}

// Bolts are the middles of the holes drilled for the heater's bolts where it will sit, in the job's order; none without a
// heater and a cut.
func Bolts(job *vehicles.Job, plan *vehicles.Plan) []geometry.Point {
	if job.Heater == nil || job.Cut == nil {
		return nil
	}
	var at []geometry.Point
	for _, b := range job.Heater.Bolts {
		at = append(at, geometry.Point{X: b[0], Y: b[1]}.Turn(job.Heater.Yaw).Add(plan.Cut.At))
	}
	return at
}

// FuelHoles are where the fuel line passes the underside of the floor outside the cut's circle, in its order.
func FuelHoles(job *vehicles.Job, plan *vehicles.Plan) (at []geometry.Point) {
	if plan.Fuel == nil {
		return nil
	}
	path := plan.Fuel.Path
	for i := 1; i < len(path); i++ {
		from, to := path[i-1], path[i]
		if (from.Z > 0) == (to.Z > 0) {
			continue
		}
		p := from.Add(to.Sub(from).Scale(from.Z / (from.Z - to.Z))).Plan()
		if job.Cut == nil || p.Sub(plan.Cut.At).Norm() > job.Cut.Across/2 {
			at = append(at, p)
		}
	}
	return at
}

// ClipHole is how wide the hole of a clip's or a pump's screw or rivet is, mm. common practice, no source
const ClipHole = 6

// ClipHoles are where the clips of the laid runs are screwed or riveted on, and where the pump hangs, if one is placed.
func ClipHoles(job *vehicles.Job, plan *vehicles.Plan) (clips, pump []geometry.Point) {
	at := func(run *vehicles.LaidRun, along float64) geometry.Point {
		p := run.Station(along)
		return geometry.Point{X: p.X, Y: p.Y}
	}
	for _, of := range vehicles.RunKinds {
		laid := plan.Run(of)
		if laid == nil {
			continue
		}
		for _, along := range job.Run(of).Clips {
			clips = append(clips, at(laid, along))
		}
		if laid.Pump.Set {
			pump = append(pump, at(laid, laid.Pump.Value))
		}
	}
	return clips, pump
}

// HoleName is what people call a hole drilled beside the cut, ABolt or AFuelHole, counted from 0.
func HoleName(of Sort, i int) string { return Thing{Sort: of, Index: int32(i)}.spoken() }

// nearestHole is the hole for which gap is least.
func nearestHole(holes []hole, gap func(*hole) float64) *hole {
	nearest := &holes[0]
	least := gap(nearest)
	for i := range holes[1:] {
		if g := gap(&holes[i+1]); g < least {
			nearest, least = &holes[i+1], g
		}
	}
	return nearest
}

func holeClearance(j *judge, r *Rule) {
	holes := j.holes()
	if len(holes) == 0 {
		return
	}
	limit, depths := j.byKindOf(r), j.holeDepths()
	for i := range j.plan.Obstructions {
		thing := &j.plan.Obstructions[i]
		if !depths.reach(j, i) {
			continue
		}
		h := nearestHole(holes, func(h *hole) float64 { return thing.Prism.Footprint.GapOnly(h.at) - h.radius })
		s := thing.Prism.Footprint.GapCircle(h.at, h.radius)
		f := j.open(limit(i), h.thing, j.obstruction(i))
		f.Value = s.Gap
		f.flat(s.A, s.B)
		j.close(f, j.spread(f, h.putting, thing, false, s.B, s.N.At(0)))
	}
}

func holeOnFloor(j *judge, r *Rule) {
	holes := j.holes()
	if len(holes) == 0 {
		return
	}
	h := nearestHole(holes, func(h *hole) float64 {
		return geometry.NewRound(h.at, h.radius).Inside(j.plan.FloorMin, j.plan.FloorMax).Gap
	})
	j.onFloor(r, h.thing, h.putting, geometry.NewRound(h.at, h.radius))
}

func (j *judge) holeDepths() depths {
	return depths{limit: j.byKindOf(holeReach), ground: j.job.Floor.Ground}
}

// bolts are the outlines of the bolts' holes when the cut is at the datum.
func (j *judge) bolts() (list []geometry.Footprint) {
	if h := j.job.Heater; h != nil {
		for _, b := range h.Bolts {
			list = append(list, geometry.NewRound(geometry.Point{X: b[0], Y: b[1]}.Turn(h.Yaw), h.Bolt/2))
		}
	}
	return list
}

func keepBoltsClear(j *judge, r *Rule) (list []keep) {
	bolts := j.bolts()
	if len(bolts) == 0 {
		return nil
	}
	limit, depths := j.byKindOf(r), j.holeDepths()
	for i := range j.plan.Obstructions {
		if !depths.reach(j, i) {
			continue
		}
		for _, bolt := range bolts {
			list = append(list, carried(j.job.Obstructions[i].Name, &j.plan.Obstructions[i], bolt, limit(i).least(), level))
		}
	}
	return list
}

func keepBoltsOnFloor(j *judge, r *Rule) (list []keep) {
	for _, bolt := range j.bolts() {
		list = append(list, j.keepOnFloor(r, bolt.Moved(0, j.plan.Cut.At))...)
	}
	return list
}
