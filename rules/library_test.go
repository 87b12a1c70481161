package rules

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

func TestNoTwoThingsOfALibraryVanFillOneSpace(t *testing.T) {
	for _, sample := range vehicles.Library() {
		job, _ := vehicles.FromLibrary(sample.Name)
		plan, _ := vehicles.Reduce(job)
		for _, o := range overlapsOf(plan) {
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

// summed tells how many findings of which id a judged job has that are not clear: "foul: cut.clearance 2; doubtful: ...".
func summed(r Result) string {
	var all []string
	for _, v := range []Verdict{Foul, Doubtful} {
		counts := map[string]int{}
		for _, f := range r.Findings {
			if f.Verdict == v {
				counts[f.ID()]++
			}
		}
		var list []string
		for _, id := range slices.Sorted(maps.Keys(counts)) {
			list = append(list, fmt.Sprint(id, " ", counts[id]))
		}
		if len(list) > 0 {
			all = append(all, v.String()+": "+strings.Join(list, ", "))
		}
	}
	return strings.Join(all, "; ")
}

// placed is a van of the library with its cut where there is most room, as suggest has it.
func placed(t *testing.T, name string) vehicles.Job {
	job, ok := vehicles.FromLibrary(name)
	require.True(t, ok)
	result := judged(t, job)
	open := RoomForCut(&result).Best(1)
	require.NotEmpty(t, open, name)
	assert.Greater(t, open[0].Margin, 10., name)
	return job.WithCut(vehicles.Cut{At: [2]float64{open[0].At.X, open[0].At.Y}, Across: 127})
}

// What each van says, its cut where there is most room: a change of a value, a rule or a van is seen here. Their floors are guesses until somebody
// measures them.
func TestWhatTheLibraryVansSay(t *testing.T) {
	for name, want := range map[string]string{
		"crew-van":     "doubtful: body.space 5, cut.clearance 36, cut.on-floor 1, heater.return 1, plate.fitting 4, plate.on-floor 1, plate.swage 12, stack.turret 1",
		"high-roof":    "doubtful: cut.clearance 27, cut.on-floor 1, plate.on-floor 1, stack.turret 1",
		"long-van":     "doubtful: cut.clearance 31, cut.on-floor 1, plate.on-floor 1, stack.turret 1",
		"medium-van":   "doubtful: cut.clearance 27, cut.on-floor 1, plate.on-floor 1, stack.turret 1",
		"minibus":      "doubtful: cut.clearance 46, cut.on-floor 1, plate.on-floor 1, stack.turret 1",
		"pick-up-tray": "doubtful: cut.clearance 23, cut.on-floor 1, plate.on-floor 1, stack.turret 1",
		"short-van":    "doubtful: cut.clearance 23, cut.on-floor 1, plate.on-floor 1, stack.turret 1",
	} {
		assert.Equal(t, want, summed(judged(t, placed(t, name))), name)
	}
	assert.Len(t, vehicles.Library(), 7)
	sample := vehicles.Demo()
	assert.Equal(t, "foul: cut.clearance 2, exhaust.clearance 2, hole.clearance 2; "+
		"doubtful: cut.clearance 1, exhaust.clearance 1, fuel.clearance 1, hole.clearance 1, intake.clearance 1, intake.exhaust 1",
		summed(judged(t, sample)), "the sample as it comes")
	cut := *sample.Cut
	cut.At[0] += 150
	assert.Equal(t, "doubtful: cut.clearance 1, exhaust.clearance 1, fuel.clearance 1, hole.clearance 1, intake.clearance 1",
		summed(judged(t, sample.WithCut(cut))), "the sample, its cut moved: what nobody has measured is left")
}

// The crew van's heater stands under its double seat; its line begins at the van's own tank. Every reading was confirmed.
const crewWork = `
[cut]
at = [2446, 140]
across = 127
pilot = 6

[exhaust]
across = 26
bend = 60
path = [[2421, 175, 140], [2421, 520, 162], [2421, 815, 172]]
muffler = { leg = 2, start = 60, length = 150, across = 68 }
clips = [150, 420, 700]

[intake]
across = 28
bend = 60
path = [[2421, 105, 120], [2150, 15, 128], [1370, 10, 140]]

[fuel]
kind = "diesel"
from = "fuel tank"
across = 4.5
bore = 2
path = [[2150, 150, 33], [2205, 60, 33], [2205, 60, 88], [2330, 42, 88], [2500, 60, 88], [2481, 140, 88], [2481, 140, 45]]
pump = { leg = 5, start = 20, tilt = 20, ml_per_1000 = 22, hz = 1 }
`

func crewVan(t *testing.T) vehicles.Job {
	text, err := os.ReadFile("../vehicles/library/crew-van.toml")
	require.NoError(t, err)
	van := strings.ReplaceAll(string(text), "measured = false\n", "")
	van = strings.Replace(van, "yaw = 90\n", "yaw = 90\nbolts = [[80, 60], [80, -60], [-80, 60], [-80, -60]]\n", 1)
	job, err := vehicles.ParseJob([]byte(van+crewWork), "crew-van.toml")
	require.NoError(t, err)
	return job
}

// On a floor with swages everywhere, over an under-floor tank and beside a catalyst, there is a place a fitter would sign:
// what is left to do is to pack the swages out under the plate, to measure the air's way back and to look the pump's figures up.
func TestTheHeaterGoesUnderTheCrewVansSeat(t *testing.T) {
	result := judged(t, crewVan(t))
	assert.Equal(t, "doubtful: fuel.delivery 1, fuel.suction 1, heater.return 1, plate.swage 2", summed(result))
	assert.Equal(t, "plate.swage", result.Findings[0].ID(), "what lets exhaust gas in comes first")
	assert.Empty(t, overlapsOf(result.Plan))
	assert.Empty(t, Dangers(&result), "its tank holds diesel")

	packed := *result.Job.Heater
	packed.Packed = true
	packed.ReturnArea = vehicles.Some(50) // cm2, over 1.5 times the 28.3 of a duct 60 mm across
	job := result.Job.WithHeater(packed)
	job.Rules = map[string]float64{"fuel.suction": 1200, "fuel.delivery": 4000}
	assert.Equal(t, Clear, judged(t, job).Verdict)
}
