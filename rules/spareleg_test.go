package rules

import (
	"context"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// offMark is by how much a cut is moved, or a pilot drilled beside its mark, mm: more than a good hand is off, each way in turn.
const offMark = 3.0

// assertLegsKept moves the cut of a job a little in every direction, its runs following as they do, and drills its pilot as far beside the
// mark, where no run follows: no leg of an exhaust or an intake becomes too short for its bends.
func assertLegsKept(t *testing.T, job vehicles.Job) {
	t.Helper()
	job = job.WithDrilled(nil)
	at := job.Cut.At
	for turn := 0.0; turn < 360; turn += 45 {
		sin, cos := math.Sincos(turn * math.Pi / 180)
		x, y := at[0]+offMark*cos, at[1]+offMark*sin
		cut := *job.Cut
		cut.At = [2]float64{x, y}
		moved, _ := job.WithCut(cut).Following(job)
		drilled := drilledAt(t, job, geometry.Point{X: x, Y: y})
		for what, off := range map[string]vehicles.Job{"moved": moved, "drilled": drilled} {
			r := judged(t, off)
			for i := range r.Findings {
				f := &r.Findings[i]
				if strings.HasSuffix(f.Rule.ID, ".bend-room") {
					assert.NotEqual(t, Foul, f.Verdict, "%s at %.0f degrees: %s", what, turn, f.About())
				}
			}
		}
	}
}

// drilledAt is a job whose pilot came out at a place: what the tapes then read of it is that less what the survey makes of them.
func drilledAt(t *testing.T, job vehicles.Job, at geometry.Point) vehicles.Job {
	reads := at
	for range 3 {
		drilled := job.WithDrilled(&vehicles.Pair{survey.FromNumber(reads.X, false), survey.FromNumber(reads.Y, false)})
		r := judged(t, drilled)
		off := at.Sub(r.Plan.Cut.At)
		if off.Norm() < 0.01 {
			return drilled
		}
		reads = reads.Add(off)
	}
	require.Fail(t, "no reading is of that place", "%v", at)
	return job
}

// A pilot comes out some mm beside its mark: what was found keeps room for its bends there too, in layouts and where a run is sought alone.
func TestFoundRunsKeepTheirLegsBesideTheirMark(t *testing.T) {
	r := judged(t, vehicles.Demo())
	found := layoutsOf(t, &r, 2)
	require.NotEmpty(t, found.Best)
	for i := range found.Best {
		assertLegsKept(t, found.Best[i].Result.Job)
	}
	there := moved(t)
	for _, of := range []vehicles.RunKind{vehicles.ExhaustRun, vehicles.IntakeRun} {
		for _, upright := range []bool{true, false} {
			route := FindRoute(context.Background(), there, of, Target{Edge: AnyEdge, Upright: upright}, nil)
			require.True(t, route.Found())
			assertLegsKept(t, there.Job.WithRun(of, route.Run))
		}
	}
}
