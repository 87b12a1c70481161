package runs

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// A line from a can in the van is taken away and begun anew where it began, although the van has a tank; what nobody says of another one
// is not taken over: a line whose tank is gone from the floor begins as the first of a job does.
func TestAFuelLineIsBegunAsTheOneTakenAway(t *testing.T) {
	job := vehicles.Demo()
	line := *job.Fuel
	line.Supply = vehicles.Supply{Kind: vehicles.Petrol, Tank: &vehicles.Tank{At: [2]float64{2600, 500}, Rise: vehicles.Span{From: 50, To: 350, Set: true}}}
	line.Path = line.Path.With(0, vehicles.RunPoint{X: 2600, Y: 500, Drop: -72})
	indoors := job.WithRun(vehicles.FuelRun, &line)

	for name, keys := range map[string]string{"all at once": "X", "point by point": "xxxxx"} {
		d := screentest.New(t, New(), indoors, 100, 30)
		d.Type("<tab><tab>" + keys)
		require.Nil(t, d.State.Job.Fuel, name)
		d.Type("a")
		require.NotNil(t, d.State.Job.Fuel, name)
		assert.Equal(t, line.Supply, d.State.Job.Fuel.Supply, name)
		assert.Equal(t, vehicles.Petrol+" line", d.Said[len("Taken as a "):][:len("petrol line")], name)
		assert.Nil(t, d.State.Job.Fuel.Pump, name)
		d.Type("m")
		require.NotNil(t, d.State.Job.Fuel.Pump, name)
		assert.Equal(t, line.Pump.MlPer1000, d.State.Job.Fuel.Pump.MlPer1000, name)
	}

	d := screentest.New(t, New(), job, 100, 30)
	d.Type("<tab><tab>X")
	gone := d.State.Job
	gone.Obstructions = nil
	d.Apply(desk.Change{Job: &gone})
	d.Type("a")
	assert.Empty(t, d.State.Job.Fuel.Supply.Kind)
	assert.Empty(t, d.State.Job.Fuel.Supply.From)
	assert.Nil(t, d.State.Job.Fuel.Supply.Tank)
}

// A first line carries what its tank holds; where nobody has said that, nobody has said it of the line.
func TestAFirstFuelLineCarriesWhatItsTankHolds(t *testing.T) {
	for _, holds := range []string{vehicles.Diesel, vehicles.Petrol, ""} {
		job := vehicles.Demo().WithRun(vehicles.FuelRun, nil)
		for i := range job.Obstructions {
			if job.Obstructions[i].Is(vehicles.VanTank) {
				tank := job.Obstructions[i]
				tank.Holds = holds
				job.Obstructions = job.Obstructions.With(i, tank)
			}
		}
		d := screentest.New(t, New(), job, 100, 30)
		d.Type("<tab><tab>a")
		assert.Equal(t, holds, d.State.Job.Fuel.Supply.Kind)
	}
}

// In a van without a tank a first line begins 500 mm ahead of the stub, as low, and asks where it does begin.
func TestAFirstFuelLineOfNoTankBeginsAheadOfTheStub(t *testing.T) {
	job := vehicles.Demo().WithRun(vehicles.FuelRun, nil)
	job.Obstructions = nil
	d := screentest.New(t, New(), job, 100, 30)
	d.Type("<tab><tab>a")
	stub, _ := d.State.Job.Stub(vehicles.FuelRun)
	path := d.State.Job.Fuel.Path
	require.Len(t, path, 2)
	assert.InDeltaSlice(t, []float64{stub.X + 500, stub.Y, -stub.Z}, []float64{path[0].X, path[0].Y, path[0].Drop}, 0.01)
	assert.Contains(t, d.Said, "Where does it begin?")
}
