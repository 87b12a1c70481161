package rules

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// cramped is the demo with its cut where an intake has to lead to the rear and, as its mouth may not face forward, to turn at its end.
func cramped(t *testing.T) *Result {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1405, 195}
	r := judged(t, job.WithCut(cut))
	return &r
}

// Where an intake to a place under the van breaks no rule, one is found that may end anywhere there, and anywhere at all; it is at most
// 1 % longer than the shortest to a place.
func TestAnIntakeUnderTheVanMayTurnAtItsEnd(t *testing.T) {
	r := cramped(t)
	for _, upright := range []bool{false, true} {
		var shortest float64
		for _, to := range []Target{toPlace(2480, 330, 136), toPlace(2365, 235, 140), toPlace(2285, 85, 223)} {
			to.Upright = upright
			found := FindRoute(context.Background(), r, vehicles.IntakeRun, to, nil)
			require.True(t, found.Found(), "%v, upright %v", *to.At, upright)
			shortest = found.Length
		}
		for _, edge := range []Edge{UnderVan, AnyEdge} {
			found := FindRoute(context.Background(), r, vehicles.IntakeRun, Target{Edge: edge, Upright: upright}, nil)
			require.True(t, found.Found(), "%s, upright %v", edge, upright)
			t.Logf("%s, upright %v: %.1f, to a place %.1f", edge, upright, found.Length, shortest)
			assert.LessOrEqual(t, found.Length, shortest*1.01, "%s, upright %v", edge, upright)
		}
	}
}

// A layout's intake may turn just before its mouth where no other way keeps what is asked, as one that is sought by itself may: on some random
// floors nothing else is found.
func TestALayoutsIntakeMayTurnBeforeItsMouth(t *testing.T) {
	const seed = 113
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	l := layouting{seeking: seeking{context.Background(), nil}}
	straight, turned := 0, 0
	for range 300 {
		job := randomFloor(r, vehicles.IntakeRun)
		k := l.rough(floorToSeek(t, job), vehicles.IntakeRun, Target{Edge: AnyEdge}, uprightly(demands[0]))
		before := k.course != nil && k.course.query.TurnBefore
		switch best := k.worked(); {
		case !best.keeps():
		case before || k.course.query.TurnBefore:
			turned++
			assert.Zero(t, k.trial(k.demand.judged, best.lower).worth(best.corners, 0, math.Inf(1)).Short)
		default:
			straight++
		}
	}
	t.Logf("%d as they come, %d turned before their mouths", straight, turned)
	assert.Positive(t, turned)
}

// An intake is sought from places all over what is under the van and nowhere else: by hand, every 150 mm from 75 mm behind its front edge and
// 75 mm inside its right side to its far edges, as far from the stub's mouth as the longest intake reaches: a round of five steps holds 81, of
// which one is ahead of the floor.
func TestPlacesUnderTheVanAreAllOverIt(t *testing.T) {
	job := vehicles.Demo()
	job.Obstructions, job.Ties, job.Exhaust, job.Fuel = nil, nil, nil, nil
	job.Floor.From, job.Floor.Length = 500.5, 1875.5
	job.Floor.Outline.Right, job.Floor.Outline.Left = vehicles.Some(900), vehicles.Some(975)
	cut, stub := *job.Cut, judgedMouth(t, job)
	cut.At[0], cut.At[1] = cut.At[0]+1176-stub.X, cut.At[1]-75-stub.Y
	job = job.WithCut(cut)
	require.Equal(t, geometry.Point{X: 1176, Y: -75}, judgedMouth(t, job))
	for longest, count := range map[float64]int{2000: 13 * 13, 750: 81 - 1, 200: 5} {
		job.Rules = map[string]float64{"intake.length": longest}
		var want []geometry.Point
		for x := 576.0; x <= 2376; x += 150 {
			for y := -825.0; y <= 975; y += 150 {
				if math.Hypot(x-1176, y+75) <= longest {
					want = append(want, geometry.Point{X: x, Y: y})
				}
			}
		}
		r := judged(t, job)
		s := newSeeker(context.Background(), &r, vehicles.IntakeRun, Target{Edge: UnderVan}, nil)
		assert.Equal(t, want, s.underVan(), "intakes of up to %g mm", longest)
		assert.Len(t, want, count, "intakes of up to %g mm", longest)
	}
}

// judgedMouth is where in plan the intake's stub has its mouth.
func judgedMouth(t *testing.T, job vehicles.Job) geometry.Point {
	r := judged(t, job)
	return r.Plan.Mouth(&r.Job, vehicles.IntakeRun).Plan()
}
