package rules

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// lowVan is a van with so little between its left rail and the ground that an exhaust to its left side has hardly any fall to spare, and no
// exhaust yet.
func lowVan(t *testing.T) vehicles.Job {
	t.Helper()
	job, err := vehicles.ParseJob([]byte(`
format = 1
[job]
ref = "low van"
[floor]
from = 35
length = 2650
width = 1660
thickness = 24
ground = 345
[tape]
class = "II"
read = 1.5
height = 3
[heater]
class = "2 kW"
yaw = 90
[cut]
at = [2550, 150]
across = 127
[[obstruction]]
name = "rail"
kind = "chassis rail"
x = [200, 2640]
y = [430, 510]
drop = [0, 100]
[[obstruction]]
name = "brake pipe"
kind = "brake line"
path = [[3060, 525], [1000, 525]]
across = 6
drop = [10, 20]
[[obstruction]]
name = "tank"
kind = "fuel tank"
x = [1570, 2190]
y = [60, 420]
drop = [35, 220]
taped_at = 130
holds = "diesel"
[[obstruction]]
name = "seat mount"
kind = "seat mount"
centre = [2650, 400]
across = 40
drop = [0, 14]
[fuel]
from = "tank"
across = 4.5
path = [[2190, 150, 55], [2219, 118, 150], [2449, 54, 150], [2585, 150, 129], [2585, 150, 45]]
[exhaust]
across = 26
bend = 60
path = [[2525, 185, 138], [2673, 423, 154], [2662, 803, 159]]
muffler = { leg = 2, start = 66, length = 180, across = 68 }
clips = [524]
`), "low-van.toml")
	require.NoError(t, err)
	return job
}

// withExhaust is a job whose exhaust takes another path, and breaks no rule there.
func withExhaust(t *testing.T, job vehicles.Job, path ...vehicles.RunPoint) *Result {
	t.Helper()
	run := *job.Exhaust
	run.Path = path
	r, faults := Judge(job.WithRun(vehicles.ExhaustRun, &run), Builtin())
	require.Empty(t, faults)
	for i := range r.Findings {
		if f := &r.Findings[i]; f.Subject.Sort == TheExhaust {
			require.NotEqual(t, Foul, f.Verdict, "%s: %s", f.About(), f.Why)
		}
	}
	return &r
}

// An exhaust need not fall behind its muffler. One that can't fall there as it does before is found nevertheless, and whatever path the job has.
func TestAnExhaustIsFoundThatHardlyFallsBehindItsMuffler(t *testing.T) {
	job := lowVan(t)
	job.RunChecks = vehicles.InFull
	job.Obstructions = append(job.Obstructions, box("tray", "plastic part", 2300, 2660, 545, 735, 30, 45))
	end := vehicles.RunPoint{X: 2662, Y: 803, Drop: 159}
	r := withExhaust(t, job, job.Exhaust.Path...)
	for _, path := range [][]vehicles.RunPoint{job.Exhaust.Path, nil} {
		run := *job.Exhaust
		run.Path = path
		own := *r
		own.Job = r.Job.WithRun(vehicles.ExhaustRun, &run)
		found := FindRoute(context.Background(), &own, vehicles.ExhaustRun, Target{At: &end, Upright: true}, nil)
		require.True(t, found.Found(), "%v", found.Misses)
		for _, f := range judgedWith(t, r, vehicles.ExhaustRun, &found) {
			assert.NotEqual(t, Foul, f.Verdict, "%s: %s", f.About(), f.Why)
		}
	}
}

// One that leans from its stub as it likes is found wherever one is that leads straight down.
func TestARunThatMayLeanIsFoundWhereAnUprightOneIs(t *testing.T) {
	job := lowVan(t)
	end := vehicles.RunPoint{X: 2670, Y: 806, Drop: 165}
	r := withExhaust(t, job, vehicles.RunPoint{X: 2525, Y: 185, Drop: 137}, vehicles.RunPoint{X: 2678, Y: 424, Drop: 154}, end)
	for _, upright := range []bool{true, false} {
		found := FindRoute(context.Background(), r, vehicles.ExhaustRun, Target{At: &end, Upright: upright}, nil)
		assert.True(t, found.Found(), "upright %v: %v", upright, found.Misses)
	}
}

// By hand: below a rail that reaches to 100.4, with 30 kept from it, the pipe's middle is at 143.4 or lower; it ends at 143.6, so that the corner
// before lies between two whole mm, where no search puts one. A run that is there and breaks no rule is never told as none.
func TestARunThatIsThereIsFoundAsItIs(t *testing.T) {
	job := lowVan(t)
	job.Obstructions = vehicles.List[vehicles.Obstruction]{box("rail", "chassis rail", 0, 4000, 430, 510, 0, 100.4)}
	job.Fuel = nil
	run := *job.Exhaust
	run.Muffler = &vehicles.Muffler{Leg: 2, Start: 56, Length: 100, Across: 68}
	job = job.WithRun(vehicles.ExhaustRun, &run)
	end := vehicles.RunPoint{X: 2662, Y: 803, Drop: 143.6}
	r := withExhaust(t, job, vehicles.RunPoint{X: 2525, Y: 185, Drop: 125}, vehicles.RunPoint{X: 2640, Y: 370, Drop: 143.5}, end)
	found := FindRoute(context.Background(), r, vehicles.ExhaustRun, Target{At: &end, Upright: true}, nil)
	require.True(t, found.Found(), "%v", found.Misses)
	assert.Equal(t, r.Job.Exhaust, found.Run)
}
