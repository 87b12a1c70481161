package rules

import (
	"context"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// The slow search for a pair stays here: one search after the other, none of them made twice use of.

func slowPair(r *Result) Pair {
	none := Pair{Exhaust: Route{Verdict: Foul}, Intake: Route{Verdict: Foul}}
	s := pairSeeker{ctx: context.Background(), result: r}
	seek := func(r Result, kind vehicles.RunKind, edge Edge, room float64, d demand) Route {
		for _, d.upright = range []bool{true, false} {
			one := newSeeker(s.ctx, &r, kind, Target{Edge: edge, Room: room}, nil)
			if best := one.among(d); best.keeps() {
				return one.told(best)
			}
		}
		return Route{Verdict: Foul}
	}
	best := none
	for _, d := range demands {
		var ways []way
		for _, edge := range Edges {
			exhaust := seek(s.bare(), vehicles.ExhaustRun, edge, 0, d)
			if !exhaust.Found() {
				continue
			}
			for _, mouth := range Edges {
				if p := (Pair{exhaust, seek(s.with(&exhaust), vehicles.IntakeRun, mouth, 0, d)}); p.Found() {
					ways = append(ways, way{edge, mouth})
					best = p.shorter(best)
				}
			}
			if !best.Found() {
				best.Exhaust = exhaust
			}
		}
		low, high := 0, len(rooms)
		for best.Found() && high-low > 1 {
			middle := (low + high) / 2
			p := none
			for _, w := range ways {
				if exhaust := seek(s.bare(), vehicles.ExhaustRun, w.exhaust, rooms[middle], d); exhaust.Found() {
					p = Pair{exhaust, seek(s.with(&exhaust), vehicles.IntakeRun, w.intake, rooms[middle], d)}.shorter(p)
				}
			}
			if p.Found() {
				best, low = p, middle
			} else {
				high = middle
			}
		}
		if best.Found() {
			return best
		}
	}
	for _, edge := range Edges {
		if best.Exhaust.Found() {
			with := s.with(&best.Exhaust)
			best.Intake = best.Intake.nearer(FindRoute(s.ctx, &with, vehicles.IntakeRun, Target{Edge: edge}, nil))
		} else {
			bare := s.bare()
			best.Exhaust = best.Exhaust.nearer(FindRoute(s.ctx, &bare, vehicles.ExhaustRun, Target{Edge: edge}, nil))
		}
	}
	return best
}

// Whatever goes on beside each other, the pair that is found is the one that is found step by step.
func TestAPairIsWhatTheSlowSearchFinds(t *testing.T) {
	t.Parallel()
	const seed = 83
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	found, exhausts := 0, 0
	for n := range randomFloors() / 100 {
		job := randomFloor(r, vehicles.ExhaustRun)
		intake := vehicles.UsualRun(vehicles.IntakeRun)
		intake.Path = job.Exhaust.Path
		job = job.WithRun(vehicles.IntakeRun, &intake)
		bare := job
		bare.Exhaust, bare.Intake = nil, nil
		result, faults := Judge(bare, Builtin())
		require.Empty(t, faults, n)
		result.Job = job
		want, got := slowPair(&result), FindPair(context.Background(), &result, nil)
		require.Equal(t, want, got, "floor %d", n)
		if got.Found() {
			found++
		}
		if got.Exhaust.Found() {
			exhausts++
		}
	}
	t.Logf("%d pairs on %d floors, %d exhausts", found, randomFloors()/100, exhausts)
	assert.True(t, found > 0 || testing.Short(), "a single floor may have none")
}
