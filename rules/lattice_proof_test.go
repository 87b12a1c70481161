package rules

import (
	"context"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// smallFloor has a cut in its middle and a few things, on which all runs through a lattice can be tried.
func smallFloor(r *rand.Rand) vehicles.Job {
	heater, _ := vehicles.HeaterClass("2 kW")
	heater.Yaw = float64(r.IntN(4) * 90)
	job := vehicles.Job{
		Ref: "TL-07", Floor: vehicles.Floor{From: 0, Length: 1200, Width: 1000, Thickness: 31, Ground: 460},
		Heater: &heater, Cut: &vehicles.Cut{At: [2]float64{600, 0}, Across: 127},
	}
	for range 4 {
		x, y, top := math.Round(1100*r.Float64()), math.Round(-500+900*r.Float64()), math.Round(100*r.Float64())
		job.Obstructions = append(job.Obstructions, box(string(rune('a'+len(job.Obstructions))), "crossmember", x, x+120, y, y+80, top, top+120))
	}
	return job
}

// What a fitter is told is no longer than the best of all runs of up to two corners between stub and end that lie on a lattice, or, where
// the end may be anywhere along an edge or under the van, of up to one between the stub and each place of the lattice there, each judged by
// the rules; and where there is one of those, a run is found.
func TestNoRunOfALatticeIsShorterThanTheOneFound(t *testing.T) {
	t.Parallel()
	along := func(e Edge) func(*rand.Rand) Target { return func(*rand.Rand) Target { return Target{Edge: e} } }
	at := func(y, drop float64) func(*rand.Rand) Target {
		return func(r *rand.Rand) Target { return toPlace(float64(200+r.IntN(8)*100), y, drop) }
	}
	for i, c := range []struct {
		name string
		kind vehicles.RunKind
		to   func(*rand.Rand) Target
		part int // of the floors there are
	}{
		{"exhaust to a place", vehicles.ExhaustRun, at(475, 260), 40},
		{"exhaust along an edge", vehicles.ExhaustRun, along(LeftEdge), 20},
		{"intake anywhere", vehicles.IntakeRun, along(AnyEdge), 100},
		{"intake under the van", vehicles.IntakeRun, along(UnderVan), 100},
		{"fuel line", vehicles.FuelRun, at(350, 120), 100},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			seed := uint64(103 + i)
			t.Logf("seed %d", seed)
			r := rand.New(rand.NewPCG(seed, seed))
			compared, floors := 0, floorsFor(t, c.part, 4)
			for n := range floors {
				if job, to := smallFloor(r), c.to(r); floorSaid(t, n) {
					compared += asNumber(noneShorter(t, n, job, c.kind, to))
				}
			}
			t.Logf("%d of %d floors compared", compared, floors)
			if os.Getenv("FLOOR") == "" {
				assert.Greater(t, compared, floors/4)
			}
		})
	}
}

// floorSaid tells whether the n-th floor is looked at: FLOOR names those, with commas between them, where not all are to be.
//
//	FLOORS=1000 FLOOR=503,911 go test ./rules -run OfALattice/exhaust_along -v
func floorSaid(t *testing.T, n int) bool {
	said := os.Getenv("FLOOR")
	if said == "" {
		return true
	}
	return slices.ContainsFunc(strings.Split(said, ","), func(one string) bool {
		floor, err := strconv.Atoi(one)
		require.NoError(t, err, "FLOOR names floors by their numbers")
		return floor == n
	})
}

// noneShorter holds what is found on the n-th floor to the lattice; it is false where that has no clear run, or what is found is not clear.
func noneShorter(t *testing.T, n int, job vehicles.Job, kind vehicles.RunKind, to Target) bool {
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults, n)
	run := vehicles.UsualRun(kind)
	result.Job = job.WithRun(kind, &run)
	found := FindRoute(context.Background(), &result, kind, to, nil)
	best, any := bestOfLattice(&result, kind, to)
	if !any {
		return false
	}
	require.True(t, found.Found(), "floor %d: the lattice has a run", n)
	if found.Verdict != Clear {
		return false
	}
	assert.LessOrEqual(t, found.Length, best+1, "floor %d", n)
	return true
}

// latticeNodes are those of a lattice of 150 mm and 70 mm of height.
func latticeNodes() (nodes []geometry.Point3) {
	for x := 75.0; x < 1200; x += 150 {
		for y := -450.0; y <= 450; y += 150 {
			for _, z := range []float64{-100, -170, -240} {
				nodes = append(nodes, geometry.Point3{X: x, Y: y, Z: z})
			}
		}
	}
	return nodes
}

// lattice is a trial of all runs through a lattice.
type lattice struct {
	trial  *trial
	course *course
	mouth  geometry.Point3
	best   float64
}

// try has the length of a run through corners where it is the shortest that is clear.
func (l *lattice) try(corners ...geometry.Point3) {
	all, length := append([]geometry.Point3{l.mouth}, corners...), 0.0
	for i := 1; i < len(all); i++ {
		if l.trial.kind == vehicles.ExhaustRun && all[i].Z > all[i-1].Z {
			return // it falls
		}
		length += all[i].Sub(all[i-1]).Norm()
	}
	if length*0.8 > l.best { // bends take no more than that off
		return
	}
	if w := l.trial.worth(all, l.course.beyond(all), 0); w.Short == 0 {
		l.best = min(l.best, l.trial.plan.Run(l.trial.kind).Line.Length())
	}
}

// bestOfLattice is the length of the shortest clear run of a lattice.
func bestOfLattice(r *Result, kind vehicles.RunKind, to Target) (best float64, any bool) {
	s, nodes := newSeeker(context.Background(), r, kind, to, nil), latticeNodes()
	l := lattice{s.trial(coverage, 0), newCourse(s.judge, kind, nil, demands[0]), s.judge.plan.Mouth(s.judge.job, kind), math.Inf(1)}
	if !to.exactly() {
		ends := slices.Clone(nodes)
		for x := 75.0; x < 1200; x += 50 {
			ends = append(ends, geometry.Point3{X: x, Y: 475, Z: -260})
		}
		ends = slices.DeleteFunc(ends, func(p geometry.Point3) bool { return !s.onEdge(p) })
		for _, end := range ends {
			l.try(end)
			for _, a := range nodes {
				l.try(a, end)
			}
		}
		return l.best, !math.IsInf(l.best, 1)
	}
	end := inSpace(*to.At)
	l.try(end)
	for _, a := range nodes {
		l.try(a, end)
		for _, b := range nodes {
			l.try(a, b, end)
		}
	}
	return l.best, !math.IsInf(l.best, 1)
}
