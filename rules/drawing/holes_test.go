package drawing

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// sample is a judged sample job.
func sample(t *testing.T, name string) rules.Result {
	data, err := os.ReadFile("../../testdata/cases/" + name)
	require.NoError(t, err)
	job, err := vehicles.ParseJob(data, name)
	require.NoError(t, err)
	result, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	return result
}

func TestHolesBesideTheCutAreDrawnWithWhatIsFoundOfThem(t *testing.T) {
	result := sample(t, "26-bolts-and-a-fuel-hole.toml")
	for _, view := range []scene.View{scene.Below, scene.Above} {
		s := Draw(result, Options{View: view, Selected: -1})
		holes := map[string]scene.Item{}
		for _, it := range find(s, scene.Hole, "") {
			holes[it.Label] = it
			assert.False(t, s.Projection.Hidden(&it), "it goes through")
		}
		require.Len(t, holes, len(result.Job.Heater.Bolts)+1)
		fuel := holes["fuel hole 1"]
		assert.Equal(t, scene.Foul, fuel.State, "10 mm too near the brake pipe")
		assert.Equal(t, rules.FuelHoles(&result.Job, &result.Plan)[0], fuel.Solid.Prism.Footprint.Middle)
		assert.Equal(t, scene.Clear, holes["bolt hole 1"].State)
		assert.Equal(t, result.Job.Heater.Bolt/2, holes["bolt hole 1"].Solid.Prism.Footprint.Radius)
		assert.Equal(t, scene.Plain, holes["bolt hole 2"].State, "no finding is of it")
	}
}

// A swage is no more than the sheet's own shape, where a rib is welded on under it.
func TestASwageIsPressedAndSeenFromBothSides(t *testing.T) {
	result := sample(t, "27-swages.toml")
	s := Draw(result, Options{View: scene.Above, Selected: -1})
	pressed := find(s, scene.Pressed, "")
	require.NotEmpty(t, pressed)
	for _, it := range pressed {
		assert.Equal(t, "SW", it.Code)
		assert.False(t, s.Projection.Hidden(&it))
		assert.Equal(t, scene.DashDot, s.Projection.LineOf(&it))
	}
}
