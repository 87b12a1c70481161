package rules

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// From the tank's fitting, which is higher than what lies between, the line goes down to its pump and from there up to the heater.
func TestAFuelLineIsFoundThatHasNoHumps(t *testing.T) {
	r := moved(t)
	for _, begin := range []vehicles.RunPoint{{X: 2170, Y: 600, Drop: 33}, {X: 2120, Y: 600, Drop: 133}} {
		found := FindRoute(context.Background(), r, vehicles.FuelRun, Target{At: &begin}, nil)
		require.True(t, found.Found())
		assert.Equal(t, Clear, found.Verdict)
		path := found.Run.Path
		assert.Equal(t, begin, path[0])
		mouth := r.Plan.Mouth(&r.Job, vehicles.FuelRun)
		assert.Equal(t, vehicles.RunPoint{X: mouth.X, Y: mouth.Y, Drop: -mouth.Z}, path[len(path)-1])
		pump := found.Run.Pump
		require.NotNil(t, pump)
		assert.Equal(t, r.Job.Fuel.Pump.Tilt, pump.Tilt)
		for i := 1; i < len(path); i++ {
			if i < pump.Leg {
				assert.GreaterOrEqual(t, path[i].Drop, path[i-1].Drop, "down to the pump")
			} else {
				assert.LessOrEqual(t, path[i].Drop, path[i-1].Drop, "up to the heater")
			}
		}
		after, faults := Judge(r.Job.WithRun(vehicles.FuelRun, found.Run), r.Book)
		require.Empty(t, faults)
		for _, f := range after.Findings {
			if f.Subject.Sort == TheFuel {
				assert.Equal(t, Clear, f.Verdict, f.About())
			}
		}
	}
}

func TestHumpsAreCounted(t *testing.T) {
	line := func(heights ...float64) (corners []geometry.Point3) {
		for i, z := range heights {
			corners = append(corners, geometry.Point3{X: float64(100 * i), Z: z})
		}
		return corners
	}
	assert.Zero(t, humps(line(-45, -80, -130, -90)), "one low place")
	assert.Zero(t, humps(line(-45, -45, -130)), "level, and down")
	assert.Equal(t, 20.0, humps(line(-45, -90, -70, -130, -100)), "up 20 before the lowest")
	assert.Equal(t, 30.0, humps(line(-45, -130, -70, -100, -60)), "down 30 behind it")
	assert.Equal(t, &vehicles.Pump{Leg: 1, Start: 100, Tilt: 30}, pumpOn(&vehicles.Pump{Tilt: 30}, line(-45, -145, -500)), "from the tank up")
	assert.Equal(t, &vehicles.Pump{Leg: 2, Start: 52, Tilt: 30}, pumpOn(&vehicles.Pump{Leg: 7, Tilt: 30}, line(-45, -75, -60)), "behind the low place, in the middle of a short leg")
	assert.Nil(t, pumpOn(nil, line(-45, -145)))
}
