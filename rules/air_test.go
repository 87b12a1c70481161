package rules

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// A body of 320 takes 60 more at an end with a duct, and not 200 or 150 of free air. A box of 400 under a seat still holds it only
// where the heater's own sheet asks for less.
func TestAHeaterWithDuctsFitsWhereABareOneDoesNot(t *testing.T) {
	across := func(h vehicles.Heater) float64 {
		job := tidy()
		h.Yaw = 0
		job.Heater = &h
		f := Body(job, judged(t, job).Plan, true).Footprint
		return 2 * f.Half.X
	}
	h, _ := vehicles.HeaterClass("2 kW")
	assert.InDelta(t, 670, across(h), 1e-9)
	h.Duct = vehicles.Ends{Front: true, Rear: true}
	assert.InDelta(t, 440, across(h), 1e-9, "320 + 60 + 60")
	h.Space.Front, h.Space.Rear, h.Given = 40, 40, h.Given|vehicles.HasFrontSpace|vehicles.HasRearSpace
	assert.InDelta(t, 400, across(h), 1e-9, "as the heater's own sheet says it")
}

// withAir is the tidy job with its heater's air changed.
func withAir(change func(*vehicles.Heater)) vehicles.Job {
	job := tidy()
	h, run := *job.Heater, *job.Exhaust
	change(&h)
	muffler := *run.Muffler
	muffler.Drain = vehicles.DrainDown // is asked too
	run.Muffler = &muffler
	job.Heater = &h
	return job.WithRun(vehicles.ExhaustRun, &run)
}

// saidOfRuns is a job with all said that is asked of its runs.
func saidOfRuns(job vehicles.Job) vehicles.Job {
	job.RunChecks = vehicles.InFull
	job.Wheels = vehicles.List[vehicles.Wheel]{{At: [2]float64{700, 800}}, {At: [2]float64{3900, 800}}}
	for _, kind := range []vehicles.RunKind{vehicles.IntakeRun, vehicles.FuelRun} {
		other := *job.Run(kind)
		other.Clips, other.Supply.Kind = []float64{200}, vehicles.Diesel
		job = job.WithRun(kind, &other)
	}
	return job
}

func TestWhereTheAirComesFromIsAskedApart(t *testing.T) {
	silent := judged(t, saidOfRuns(withAir(func(h *vehicles.Heater) { h.Air = "" })))
	assert.Equal(t, []string{"where the heater's air comes from"}, silent.Unanswered)
	said := judged(t, saidOfRuns(withAir(func(h *vehicles.Heater) { h.Air = vehicles.Outside })))
	assert.Empty(t, said.Unanswered)
	assert.Equal(t, said.Unchecked, silent.Unchecked, "other programs compare these")
	job := saidOfRuns(withAir(func(*vehicles.Heater) {}))
	job.Heater = nil
	assert.Empty(t, judged(t, job).Unanswered, "without a heater nobody is asked")

	data, err := json.Marshal(silent)
	require.NoError(t, err)
	assert.Contains(t, string(data), `"unanswered":["where the heater's air comes from"]`)
	data, err = json.Marshal(said)
	require.NoError(t, err)
	assert.NotContains(t, string(data), "unanswered")
}

// What nobody has said has no value: neither 0 nor a margin from it.
func TestWhatIsUnsaidHasNoValue(t *testing.T) {
	result := judged(t, withAir(func(h *vehicles.Heater) { h.Air = vehicles.Locker }))
	assert.Equal(t, Doubtful, result.Verdict)
	f := meant(result, rulesByID()["heater.store"], nil)
	require.NotNil(t, f)
	assert.Equal(t, "unanswered: are petrol, gas bottles or lead batteries kept in the locker?", f.Why)
	assert.Equal(t, Kills, f.Weight)
	data, err := json.Marshal(result)
	require.NoError(t, err)
	var read struct{ Findings []map[string]any }
	require.NoError(t, json.Unmarshal(data, &read))
	for _, f := range read.Findings {
		if f["id"] == "heater.store" {
			assert.Nil(t, f["value"])
			assert.Nil(t, f["margin"])
			assert.Zero(t, f["required"])
			return
		}
	}
	t.Fatal("not in the JSON")
}

// What is kept there is kept there, whether or not anybody has said where the air comes from.
func TestWhatIsStoredIsCountedBeforeTheAirIsSaid(t *testing.T) {
	stored := func(air string, given bool) *Finding {
		result := judged(t, withAir(func(h *vehicles.Heater) {
			h.Air = air
			if h.Given &^= vehicles.HasStored; given {
				h.Given, h.Stored = h.Given|vehicles.HasStored, vehicles.Stored{Petrol: true}
			}
		}))
		return meant(result, rulesByID()["heater.store"], nil)
	}
	f := stored("", true)
	require.NotNil(t, f)
	assert.Equal(t, Foul, f.Verdict)
	assert.EqualValues(t, 1, f.Value)
	assert.Equal(t, "petrol, and nobody has said where the heater takes its air", f.Why)
	assert.Equal(t, "petrol", stored(vehicles.Locker, true).Why)
	assert.Nil(t, stored("", false), "nothing was said of it")
	assert.Nil(t, stored(vehicles.Outside, true), "air from outside comes past none of it")
}
