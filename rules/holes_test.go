package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// A fuel line has a hole of its own wherever it passes the underside of the floor outside the cut, the first from above: by
// proportion, 72 of 112 mm along the leg that goes down. What only comes up to it from below has none.
func TestWhereTheFuelLinePassesTheFloor(t *testing.T) {
	path := func(points ...vehicles.RunPoint) vehicles.Job {
		job := vehicles.Job{Ref: "TL-07", Floor: vehicles.Floor{From: 0, Length: 3200, Width: 1800, Thickness: 30, Ground: 450}}
		return job.WithRun(vehicles.FuelRun, &vehicles.Run{Across: 5, Path: points})
	}
	for name, c := range map[string]struct {
		job  vehicles.Job
		want []geometry.Point
	}{
		"down":                {path(vehicles.RunPoint{X: 1000, Drop: -72}, vehicles.RunPoint{X: 1112, Drop: 40}), []geometry.Point{{X: 1072}}},
		"down and up again":   {path(vehicles.RunPoint{X: 1000, Drop: -50}, vehicles.RunPoint{X: 1100, Drop: 50}, vehicles.RunPoint{X: 1300, Drop: -50}), []geometry.Point{{X: 1050}, {X: 1200}}},
		"to it, then below":   {path(vehicles.RunPoint{X: 1000, Drop: -50}, vehicles.RunPoint{X: 1100}, vehicles.RunPoint{X: 1200, Drop: 50}), []geometry.Point{{X: 1100}}},
		"up to it from below": {path(vehicles.RunPoint{X: 1000, Drop: 50}, vehicles.RunPoint{X: 1100}, vehicles.RunPoint{X: 1200, Drop: 50}), nil},
		"never":               {path(vehicles.RunPoint{X: 1000, Drop: 50}, vehicles.RunPoint{X: 1100, Drop: 60}), nil},
		"through the cut":     {path(vehicles.RunPoint{X: 1000, Drop: -50}, vehicles.RunPoint{X: 1100, Drop: 50}).WithCut(vehicles.Cut{At: [2]float64{1050, 63}, Across: 127}), nil},
		"just beside the cut": {path(vehicles.RunPoint{X: 1000, Drop: -50}, vehicles.RunPoint{X: 1100, Drop: 50}).WithCut(vehicles.Cut{At: [2]float64{1050, 64}, Across: 127}), []geometry.Point{{X: 1050}}},
	} {
		result := judged(t, c.job)
		holes := FuelHoles(&result.Job, &result.Plan)
		require.Len(t, holes, len(c.want), name)
		for i := range holes {
			assert.InDelta(t, 0, holes[i].Sub(c.want[i]).Norm(), 1e-9, name)
		}
		marked := 0
		for _, m := range Marks(result).Marks {
			if m.Name[:4] == "fuel" {
				assert.Equal(t, holes[marked], m.Plan, name)
				marked++
			}
		}
		assert.Equal(t, len(c.want), marked, "%s: each has its mark, with a cut and without", name)
	}
}

// By hand: the van ends at x 0 and y 900. 18 past the rear and 24 past the side are 30 from the corner.
func TestHowFarAnOutletIsFromTheOutline(t *testing.T) {
	for name, c := range map[string]struct{ x, y, inside float64 }{
		"within": {300, 800, 100}, "nearer the rear": {60, 800, 60}, "past the side": {300, 910, -10}, "past the rear": {-12, 800, -12},
		"past the corner": {-18, 924, -30}, "past the other corner": {-18, -924, -30}, "on the side": {300, -900, 0},
	} {
		heater, _ := vehicles.HeaterClass("2 kW")
		job := vehicles.Job{Ref: "TL-07", Floor: vehicles.Floor{From: 0, Length: 3200, Width: 1800, Thickness: 30, Ground: 450}}
		job = job.WithHeater(heater).WithCut(vehicles.Cut{At: [2]float64{1200, 200}, Across: 127})
		job = job.WithRun(vehicles.ExhaustRun, &vehicles.Run{Across: 26, Path: []vehicles.RunPoint{{X: 1235, Y: 225, Drop: 120}, {X: c.x, Y: c.y, Drop: 150}}})
		for _, f := range judged(t, job).Findings {
			switch f.ID() {
			case "exhaust.edge":
				assert.InDelta(t, c.inside, f.Value, 1e-9, name)
			case "exhaust.outside":
				assert.InDelta(t, -c.inside, f.Value, 1e-9, name)
				assert.InDelta(t, 1, f.N.Norm(), 1e-9, name)
			}
		}
		job.Datum.Name = "step of the side door"
		for _, f := range judged(t, job).Findings {
			if f.ID() == "exhaust.edge" {
				assert.InDelta(t, 900-max(c.y, -c.y), f.Value, 1e-9, "%s: nobody knows where the rear is", name)
			}
		}
	}
}
