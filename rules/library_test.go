package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

func TestNoTwoThingsOfALibraryVanFillOneSpace(t *testing.T) {
	for _, sample := range vehicles.Library() {
		job, _ := vehicles.FromLibrary(sample.Name)
		plan, _ := vehicles.Reduce(job)
		for _, o := range Overlaps(plan) {
			t.Errorf("%s: %q and %q overlap by %.0f", sample.Name, job.Obstructions[o.A].Name, job.Obstructions[o.B].Name, o.Depth)
		}
	}
}

// However good it looks, nothing that stands on a library van is clear.
func TestNothingIsClearOfWhatNobodyMeasured(t *testing.T) {
	for _, sample := range vehicles.Library() {
		job, _ := vehicles.FromLibrary(sample.Name)
		job = job.WithCut(vehicles.Cut{At: [2]float64{job.Floor.From + job.Floor.Length/2, 100}, Across: 127})
		job = job.WithRun(vehicles.ExhaustRun, &vehicles.Run{Across: 26, Bend: vehicles.Some(60), Path: []vehicles.RunPoint{
			{X: job.Cut.At[0] + 35, Y: 125, Drop: 110}, {X: job.Cut.At[0], Y: 640, Drop: 140},
		}})
		result, faults := Judge(job, Builtin())
		require.Empty(t, faults)
		seen := 0
		for _, f := range result.Findings {
			switch f.ID() {
			case "cut.clearance", "exhaust.clearance", "exhaust.outlet":
				seen++
				assert.NotEqual(t, Clear, f.Verdict, "%s: %s %s", sample.Name, f.ID(), f.Against)
			}
		}
		assert.Positive(t, seen)
	}
}
