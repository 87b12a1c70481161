package rules_test

import (
	"math"
	"math/cmplx"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// space is a place in space: in plan, and its drop.
type space struct {
	plan complex128
	drop float64
}

// between is the place a share of the way from a to b.
func between(a, b space, share float64) space {
	return space{a.plan + (b.plan-a.plan)*complex(share, 0), a.drop + (b.drop-a.drop)*share}
}

// pipe is the stretch of the exhaust, or of the fuel line, that comes near things: a straight leg.
type pipe struct {
	from, to space
	radius   float64
}

// moved is the pipe put up a little off.
func (p pipe) moved(by space) pipe {
	p.from.plan, p.from.drop = p.from.plan+by.plan, p.from.drop+by.drop
	p.to.plan, p.to.drop = p.to.plan+by.plan, p.to.drop+by.drop
	return p
}

// least is the least of a distance that has one valley only, as that from a convex thing along a straight leg, from 0
// to 1: found by leaving out a third at a time.
func least(distance func(share float64) float64) float64 {
	low, high := 0., 1.
	for range 50 {
		a, b := low+(high-low)/3, high-(high-low)/3
		if distance(a) <= distance(b) {
			high = b
		} else {
			low = a
		}
	}
	return distance((low + high) / 2)
}

// clear is how far the pipe's surface truly is from a thing.
func (p pipe) clear(t *truth) float64 {
	return least(func(share float64) float64 {
		at := between(p.from, p.to, share)
		return math.Hypot(t.gap(at.plan), math.Max(0, math.Max(t.top-at.drop, at.drop-t.bottom)))
	}) - p.radius
}

// apart is how far the surfaces of two pipes truly are apart.
func (p pipe) apart(q pipe) float64 {
	return least(func(share float64) float64 { return q.off(between(p.from, p.to, share)) }) - p.radius - q.radius
}

// off is how far a place is from the pipe's centreline.
func (p pipe) off(at space) float64 {
	along, way := p.to.plan-p.from.plan, at.plan-p.from.plan
	down, depth := p.to.drop-p.from.drop, at.drop-p.from.drop
	share := (real(way*cmplx.Conj(along)) + depth*down) / (real(along*cmplx.Conj(along)) + down*down)
	foot := between(p.from, p.to, math.Min(1, math.Max(0, share)))
	return math.Hypot(cmplx.Abs(at.plan-foot.plan), at.drop-foot.drop)
}

// put is by how much the pipe is off where it is put up by the tape, held level from bumper and nearer side edge to a
// place of it.
func (v *visit) put(at geometry.Point3) space {
	h := v.hand
	side := math.Min(v.left-at.Y, at.Y+v.right)
	return space{
		complex(h.tape(at.X, true)-at.X+h.off(h.mark), h.tape(side, true)-side+h.off(h.mark)), h.off(h.height),
	}
}

var (
	exhaustPipe = pipe{space{1300 + 265i, 150}, space{2500 + 300i, 175}, 13}
	fuelPipe    = pipe{space{2445 - 300i, 95}, space{2375 + 700i, 105}, 2.25}
)

// runVan is the van of the proof with things beside, over and across a run.
func runVan() *van {
	v := panelVan(0)
	over := turned(40)
	v.things = []truth{
		{name: "beside", kind: "chassis rail", top: 60, bottom: 220, tapeAt: 220, gap: fromBox(1500, 2300, 360, 420), tape: taped(1500, 2300, 360, 420, 0)},
		{name: "over", kind: "crossmember", bottom: 62, tapeAt: 62, gap: fromBox(1700, 1790, -850, 850), tape: taped(1700, 1790, -850, 850, 0)},
		{name: "edge in space", kind: "fuel tank", bottom: 90, tapeAt: 90, gap: fromBox(1900, 2200, -300, 210), tape: taped(1900, 2200, -300, 210, 0)},
		{
			name: "turned, in space", kind: "suspension", bottom: 100, tapeAt: 100,
			gap: fromTurned(2010+450i, 150+60i, over), tape: taped(1860, 2160, 390, 510, 40),
		},
		wheel("round", "spare wheel", 1720+480i, 260),
		piped("line over", "brake line", 8, (*visit).fromLeft, 2105-100i, 2095+250i, 2150+600i),
	}
	return v
}

// taped tapes a rectangle by its four edges.
func taped(near, far, right, left, turn float64) func(*visit, float64) vehicles.Place {
	return func(v *visit, drop float64) vehicles.Place {
		p := vehicles.Place{
			X: vehicles.Pair{v.x(near, drop), v.x(far, drop)}, Y: vehicles.Pair{v.fromLeft(left, drop), v.fromRight(right, drop)},
		}
		if turn != 0 {
			p.Turn = turn + v.hand.off(v.hand.turn)
		}
		return p
	}
}

// withRuns is the job file with the exhaust and the fuel line in it.
func withRuns(job vehicles.Job) vehicles.Job {
	point := func(p space) vehicles.RunPoint {
		return vehicles.RunPoint{X: real(p.plan), Y: imag(p.plan), Drop: p.drop}
	}
	heater, _ := vehicles.HeaterClass("2 kW")
	job.Heater = &heater
	job.Exhaust = &vehicles.Run{Across: 2 * exhaustPipe.radius, Path: []vehicles.RunPoint{point(exhaustPipe.from), point(exhaustPipe.to)}}
	job.Fuel = &vehicles.Run{
		Across: 2 * fuelPipe.radius, Path: []vehicles.RunPoint{point(fuelPipe.from), point(fuelPipe.to)},
	}
	return job
}

// hung surveys the van, hangs the runs as the job file has them, and judges them by where they truly hang. nominal
// says where the tape is held when hanging: where each run comes nearest.
func (v *visit) hung(t *testing.T, nominal []*rules.Finding) ([]*rules.Finding, []float64) {
	job := withRuns(v.survey(vehicles.Tape{}))
	job.Rules = map[string]float64{}
	truths := make([]float64, len(v.things)+1)
	for i := range v.things {
		truths[i] = exhaustPipe.moved(v.put(nominal[i].At[0])).clear(&v.things[i])
		job.Rules["exhaust.clearance."+v.things[i].kind] = truths[i]
	}
	pair := nominal[len(v.things)]
	truths[len(v.things)] = exhaustPipe.moved(v.put(pair.At[0])).apart(fuelPipe.moved(v.put(pair.At[1])))
	job.Rules["exhaust.fuel"] = truths[len(v.things)]
	return runFindings(t, job), truths
}

// runFindings are those of the exhaust against each thing, and against the fuel line.
func runFindings(t *testing.T, job vehicles.Job) []*rules.Finding {
	result, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	found := make([]*rules.Finding, len(job.Obstructions)+1)
	for i := range result.Findings {
		switch f := &result.Findings[i]; f.ID() {
		case "exhaust.clearance":
			found[f.Against.Index] = f
		case "exhaust.fuel":
			if f.Against.Sort != rules.TheFuel {
				continue // at the heater
			}
			found[len(job.Obstructions)] = f
		}
	}
	return found
}

// A run in space, put up from below: 10000 surveys.
func TestProofOfTheRuns(t *testing.T) {
	v := visit{runVan(), newHand(nil, classII)}
	nominal := runFindings(t, withRuns(v.survey(vehicles.Tape{})))
	_, exact := v.hung(t, nominal)
	outcomes := make([]outcome, len(nominal))
	for i, f := range nominal {
		outcomes[i].sigma = f.Sigma
		require.InDelta(t, exact[i], f.Value, 1e-6, "%s: a hand that never errs predicts the truth", f.Against)
	}
	v.hand = newHand(random(t, 50), classII)
	for range surveys(10000) {
		found, truths := v.hung(t, nominal)
		for i, f := range found {
			outcomes[i].add(f, truths[i])
		}
	}
	var all pool
	for i := range outcomes {
		all.add(&outcomes[i])
		name := "fuel line"
		if i < len(v.things) {
			name = v.things[i].name
		}
		outcomes[i].check(t, name, promised)
	}
	all.check(t, "all")
}
