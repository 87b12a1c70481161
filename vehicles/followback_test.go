package vehicles

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

// underStubs is the laid job with the ends of all its runs right under their stubs.
func underStubs() Job {
	job := laid()
	for _, k := range RunKinds {
		stub, _ := job.Stub(k)
		run := *job.Run(k)
		i := 0
		if k == FuelRun {
			i = len(run.Path) - 1
		}
		end := run.Path[i]
		run.Path = run.Path.With(i, RunPoint{X: hundredth(stub.X), Y: hundredth(stub.Y), Drop: end.Drop})
		job = job.WithRun(k, &run)
	}
	return job
}

// endAtHeater is the end of a run that lies under its stub.
func endAtHeater(job Job, k RunKind) RunPoint {
	path := job.Run(k).Path
	if k == FuelRun {
		return path[len(path)-1]
	}
	return path[0]
}

// However the cut is moved and the heater turned, the ends of the runs go along as the heater does, by a turn about the cut and a
// shift, to the hundredth of a mm to which they are written; all other points stay.
func TestEndsGoAlongAsTheHeaterDoes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		before := underStubs()
		cut, heater := *before.Cut, *before.Heater
		by := geometry.Point{X: float64(rapid.IntRange(-3000, 3000).Draw(t, "x")) / 10, Y: float64(rapid.IntRange(-3000, 3000).Draw(t, "y")) / 10}
		turn := float64(rapid.IntRange(-180, 180).Draw(t, "turn"))
		cut.At = [2]float64{cut.At[0] + by.X, cut.At[1] + by.Y}
		heater.Yaw += turn
		after, gone := before.WithCut(cut).WithHeater(heater).Following(before)
		middle := geometry.Point{X: before.Cut.At[0], Y: before.Cut.At[1]}
		sin, cos := math.Sincos(turn * math.Pi / 180)
		for _, k := range RunKinds {
			end, now := endAtHeater(before, k), endAtHeater(after, k)
			arm := geometry.Point{X: end.X, Y: end.Y}.Sub(middle)
			want := middle.Add(by).Add(geometry.Point{X: arm.X*cos - arm.Y*sin, Y: arm.X*sin + arm.Y*cos})
			require.InDelta(t, want.X, now.X, 0.011, "%v", k)
			require.InDelta(t, want.Y, now.Y, 0.011, "%v", k)
			require.Equal(t, end.Drop, now.Drop, "%v", k)
			was, is := before.Run(k).Path, after.Run(k).Path
			require.Len(t, is, len(was))
			for i := range was {
				if was[i] != end {
					require.Equal(t, was[i], is[i], "%v", k)
				}
			}
		}
		if by == (geometry.Point{}) && turn == 0 {
			require.Empty(t, gone)
		}
	})
}

// A way there and back is no way: the ends lie where they lay, and the job as it was is never touched.
func TestThereAndBackIsNoWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		before := underStubs()
		text := string(before.Format())
		cut := *before.Cut
		cut.At[0] += float64(rapid.IntRange(-200, 200).Draw(t, "x"))
		cut.At[1] += float64(rapid.IntRange(-200, 200).Draw(t, "y"))
		there, _ := before.WithCut(cut).Following(before)
		back, _ := there.WithCut(*before.Cut).Following(there)
		for _, k := range RunKinds {
			require.Less(t, endAtHeater(back, k).apart(endAtHeater(before, k)), 0.02)
		}
		require.Equal(t, text, string(before.Format()))
	})
}

// What lies a tape's error beside its stub goes along, what lies farther off stays.
func TestHowNearToItsStubAnEndMustLie(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		before := underStubs()
		off := geometry.Point{X: rapid.Float64Range(0, 2).Draw(t, "off")}.Turn(rapid.Float64Range(0, 360).Draw(t, "way"))
		if math.Abs(off.Norm()-1) < 0.02 {
			t.Skip("the limit, to what an end is written to")
		}
		run := *before.Exhaust
		first := run.Path[0]
		run.Path = run.Path.With(0, RunPoint{first.X + off.X, first.Y + off.Y, first.Drop})
		before = before.WithRun(ExhaustRun, &run)
		cut := *before.Cut
		cut.At[0] += 50
		after, _ := before.WithCut(cut).Following(before)
		if off.Norm() < 1 {
			require.InDelta(t, first.X+50, after.Exhaust.Path[0].X, 0.011)
			return
		}
		require.Equal(t, before.Exhaust.Path[0], after.Exhaust.Path[0])
	})
}
