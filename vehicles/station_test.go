package vehicles

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Station goes on without a leap, no slower and no faster than s: every chord is at most as long as its stretch, and together
// they are as long as the run, but for what the chords of its bends cut off, R (2 sin a/2 - a) each.
func TestStationKeepsTheLengthOfTheRun(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := wanderer(t)
		run, _ := job.laidAlone(ExhaustRun, job.Exhaust)
		const steps = 400
		step, sum := run.Line.Length()/steps, 0.0
		for k := range steps {
			chord := run.Station(float64(k) * step).apart(run.Station(float64(k+1) * step))
			require.LessOrEqual(t, chord, step+1e-9)
			sum += chord
		}
		if len(run.Line.ShortLegs) == 0 && job.Exhaust.Bend.Value >= 20 {
			require.InDelta(t, run.Line.Length(), sum, run.Line.Length()/100)
		}
		s := rapid.Float64Range(0, run.Line.Length()).Draw(t, "s")
		require.LessOrEqual(t, run.Station(s).apart(run.Station(s+1e-3)), 1e-3+1e-9)
	})
}

// Plain sums: 40 mm down, a bend of 60 mm, 480 to the right, another, 740 to the rear.
func TestStations(t *testing.T) {
	plan, faults := Reduce(laid())
	require.Empty(t, faults)
	run := plan.Exhaust
	const bend, half = 30 * math.Pi, math.Sqrt2 / 2
	for _, c := range []struct {
		s    float64
		want RunPoint
	}{
		{-1, RunPoint{1035, 225, 45}},
		{0, RunPoint{1035, 225, 45}},
		{40, RunPoint{1035, 225, 85}},
		{40 + bend/2, RunPoint{1035, 165 + 60*half, 85 + 60*half}}, // its centre lies 60 mm to the right of where it begins
		{40 + bend, RunPoint{1035, 165, 145}},
		{40 + bend + 480, RunPoint{1035, -315, 145}},
		{40 + bend + 480 + bend/2, RunPoint{975 + 60*half, -315 - 60*half, 145}},
		{40 + 2*bend + 480 + 100, RunPoint{875, -375, 145}},
		{1e6, RunPoint{235, -375, 145}},
	} {
		assert.InDelta(t, 0, c.want.apart(run.Station(c.s)), 1e-9, "%v mm along", c.s)
	}
	for leg, at := range map[int]float64{0: 0, 1: 40 + bend - 60, 2: 40 + 2*bend + 480 - 60} {
		assert.InDelta(t, at+250, run.Line.Along(leg, 250), 1e-9)
		assert.InDelta(t, 250, run.Line.OnLeg(leg, at+250), 1e-9)
		assert.InDelta(t, -5, run.Line.OnLeg(leg, at-5), 1e-9)
	}
}
