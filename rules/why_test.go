package rules

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// example is a job of those beside a rule.
func example(t *testing.T, id, name string) vehicles.Job {
	t.Helper()
	file := filepath.Join(examples, id, name+".toml")
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	job, err := vehicles.ParseJob(data, file, Builtin())
	require.NoError(t, err)
	return job
}

// From the stub at 45 mm down to 150 are 105, on to the low point at 200 are 358.5; the corner between them cut short by 18.2 and half of the
// bend at the low point by 0.2: 445.0.
func TestALowPointSaysWhereWaterStands(t *testing.T) {
	job := example(t, "exhaust.drains", "fail-a-sag")
	f := one(t, job, "exhaust.drains", "")
	assert.Equal(t, [][]float64{{1235, 580, 200}}, f.places())
	assert.Equal(t, "1 low point without a drain, 445 mm along it: a drain hole there, or let it fall", f.Why)

	run := *job.Exhaust
	run.Path = append(run.Path[:len(run.Path):len(run.Path)], vehicles.RunPoint{X: 1235, Y: 1300, Drop: 210}, vehicles.RunPoint{X: 1235, Y: 1600, Drop: 150})
	f = one(t, job.WithRun(vehicles.ExhaustRun, &run), "exhaust.drains", "")
	assert.Equal(t, [][]float64{{1235, 580, 200}}, f.places(), "the first of them")
	assert.Contains(t, f.Why, "2 low points without a drain, the first 4")

	clear := one(t, example(t, "intake.drains", "pass-drained"), "intake.drains", "")
	assert.Empty(t, clear.places())
	assert.Empty(t, clear.Why)
}

func TestWhatIsCountedIsNamed(t *testing.T) {
	assert.Equal(t, "its drain hole points aside", one(t, example(t, "muffler.drain", "fail-points-aside"), "muffler.drain", "muffler").Why)
	assert.Equal(t, "gas bottles, lead batteries", one(t, example(t, "heater.store", "fail-gas-and-batteries"), "heater.store", "").Why)
	assert.Equal(t, "1 leg too short", one(t, example(t, "exhaust.bend-room", "fail-a-short-step"), "exhaust.bend-room", "").Why)
	assert.Equal(t, "1 leg too short", one(t, example(t, "intake.bend-room", "fail-a-short-step"), "intake.bend-room", "").Why)
}
