package parts

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// The collar that the heater has is not ordered; where the floor is thicker than it reaches a deeper one is.
func TestACollarIsOrderedOnlyWhereTheHeatersIsTooShort(t *testing.T) {
	l := listOf(t, vehicles.Demo())
	has, there := l.row("collar")
	require.True(t, there)
	assert.Equal(t, vehicles.Some(0), has.Buy())
	_, there = l.row("deeper collar")
	assert.False(t, there)
	job := vehicles.Demo()
	job.Stack = append(vehicles.List[vehicles.Layer]{{Kind: vehicles.Ply, Thick: 18}}, job.Stack...)
	deeper, there := listOf(t, job).row("deeper collar")
	require.True(t, there)
	assert.Equal(t, vehicles.Some(1), deeper.Buy())
	assert.Contains(t, deeper.Note, "Order one of ")
	assert.Equal(t, "60 mm deep", deeper.Size, "49 mm of floor and 5 below it are 54")
}

// What goes in beside pipes and heater is counted by the job: swages as deep as the layers have them, 4.2 m of cable in its sleeve.
func TestWhatGoesInBeside(t *testing.T) {
	l := listOf(t, vehicles.Demo())
	packing, there := l.row("metal packing")
	require.True(t, there)
	assert.Equal(t, "190 by 150 mm, 20 mm thick", packing.Size)
	sleeve, _ := l.row("sleeve")
	assert.Equal(t, vehicles.Some(4.2), sleeve.Buy())
	ring, _ := l.row("ring terminal")
	assert.Equal(t, "4 mm² cable", ring.Size)
	mount, _ := l.row("rubber mount")
	assert.Equal(t, vehicles.Some(1), mount.Buy())
	_, there = l.row("grommet")
	assert.True(t, there)

	job := vehicles.Demo()
	run := *job.Fuel
	first := run.Path[0]
	first.Drop = -100
	run.Path, run.Pump = run.Path.Insert(0, first), nil
	var through []Row
	for _, r := range listOf(t, job.WithRun(vehicles.FuelRun, &run)).Rows {
		if r.Of == "grommet" && r.For == "fuel line" {
			through = append(through, r)
		}
	}
	require.Len(t, through, 1, "one row for one hole")
	assert.Equal(t, "for a hole of 12 mm, 4.5 mm inside", through[0].Size)
	assert.Equal(t, vehicles.Some(1.0), through[0].Count)
	assert.Equal(t, vehicles.Some(1.0), through[0].Kit, "the kit has one")

	job = vehicles.Demo()
	job.Stack = nil
	_, there = listOf(t, job).row("metal packing")
	assert.False(t, there, "no swage is known")
}
