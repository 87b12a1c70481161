package rules

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// The tank's side that is nearest to the heater is 10 mm from a chassis rail, of which a line keeps 15: it begins round the corner.
func TestAUsualFuelLineBeginsWhereALineCan(t *testing.T) {
	van, ok := vehicles.FromLibrary("medium-van")
	require.True(t, ok)
	r := judged(t, van)
	tank := &r.Plan.Obstructions[fuelTanks(&r.Job)[0]]
	low, high := tank.Prism.Footprint.Bounds()
	stub := geometry.Point3{X: (low.X + high.X) / 2, Y: high.Y + 200, Z: -60}
	line, known := UsualFuel(&r, stub)
	require.True(t, known)
	begin := line.Path[0]
	assert.Less(t, begin.Y, high.Y-4, "not beside the rail")
	assert.InDelta(t, 0, tank.Prism.GapPoint(inSpace(begin)).Gap, math.Sqrt2/2, "on the tank")
	keeps := func(begin vehicles.RunPoint) bool {
		line := line
		line.Pump = nil
		line.Path = []vehicles.RunPoint{begin, {X: begin.X, Y: begin.Y, Drop: begin.Drop + 1}}
		for _, f := range judged(t, van.WithRun(vehicles.FuelRun, &line)).Findings {
			if (f.Rule == fuelKeeps || f.Rule == fullTravel) && f.Subject.Sort == TheFuel && f.Margin.Value < coverage*f.Sigma {
				return false
			}
		}
		return true
	}
	assert.True(t, keeps(begin))
	off := func(p vehicles.RunPoint) float64 { return geometry.Point{X: p.X, Y: p.Y}.Sub(stub.Plan()).Norm() }
	for x := math.Ceil(low.X); x <= high.X; x += 5 {
		for _, y := range []float64{low.Y, high.Y} {
			if p := (vehicles.RunPoint{X: x, Y: y, Drop: begin.Drop}); keeps(p) {
				assert.Greater(t, off(p), off(begin)-beginStep, "%v would be nearer", p)
			}
		}
	}
	for y := math.Ceil(low.Y); y <= high.Y; y += 5 {
		for _, x := range []float64{low.X, high.X} {
			if p := (vehicles.RunPoint{X: x, Y: y, Drop: begin.Drop}); keeps(p) {
				assert.Greater(t, off(p), off(begin)-beginStep, "%v would be nearer", p)
			}
		}
	}
}

// Places on an outline are on it, all round it no farther apart than said, and the nearest of all is the first.
func TestPlacesOnATanksOutline(t *testing.T) {
	to := geometry.Point{X: 2500, Y: 900}
	for _, f := range []geometry.Footprint{
		geometry.NewRectangle(geometry.Point{X: 1000, Y: 100}, geometry.Point{X: 1530, Y: 407}, 25),
		geometry.NewRound(geometry.Point{X: 1200, Y: 300}, 170),
		geometry.NewLine([]geometry.Point{{X: 900, Y: 200}, {X: 1400, Y: 300}}, 90),
		geometry.NewRectangle(geometry.Point{X: 1000, Y: 100}, geometry.Point{X: 1000, Y: 100}, 0),
	} {
		list := placesOn(&f, to)
		_, nearest := f.Gap(to)
		assert.LessOrEqual(t, list[0].Sub(nearest).Norm(), math.Sqrt2/2)
		for _, p := range list {
			assert.InDelta(t, 0, f.GapOnly(p), math.Sqrt2/2)
		}
		if f.Shape == geometry.Line {
			continue
		}
		for turn := 0.0; turn < 360; turn++ {
			_, on := f.Gap(f.Middle.Add(geometry.Point{X: 5000}.Turn(turn)))
			near := math.Inf(1)
			for _, p := range list {
				near = min(near, p.Sub(on).Norm())
			}
			assert.LessOrEqual(t, near, beginStep/2+1.0)
		}
	}
}
