package rules

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

func TestWhatRestsOnAChainThatMissesIsHeldBack(t *testing.T) {
	job := tidy()
	on := survey.Reading{Text: "+60", Start: survey.On, Length: 60}
	job.Obstructions[1].X = vehicles.Pair{on, on} // runs on from the first
	closed, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	assert.Equal(t, Clear, closed.Verdict)
	f := one(t, job, "chain.closure", "a crossmember")
	assert.Equal(t, the(TheSurvey), f.Subject)
	assert.InDelta(t, 6.635, f.Required.Value, 5e-4) // NIST/SEMATECH handbook, 1.3.6.7.4, one degree of freedom (from memory)

	job.Obstructions[0].Total[0] = at(172)
	missed, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	for _, f := range missed.Findings {
		rests := f.ID() == "chain.closure" || f.Against.Name == "a crossmember" || f.Against.Name == "a chassis rail"
		assert.Equal(t, rests, f.Verdict == Doubtful, "%s %s", f.ID(), f.Against)
	}
	f = one(t, job, "chain.closure", "a crossmember")
	// By hand: u^2 is (0.7^2 + 1)/3 twice and (0.5^2 + 1)/3, class II of 2014/32/EU annex X.
	u2 := 2*(0.7*0.7+1)/3 + (0.5*0.5+1)/3
	assert.InDelta(t, 144/u2, f.Value, 1e-9)
	assert.Contains(t, f.Why, "in x the readings come out 12 mm from the overall one, the tapes explain "+survey.Figure(sure99()*math.Sqrt(u2)))
	assert.Contains(t, one(t, job, "cut.clearance", "a chassis rail").Why, "misses the overall one")
	strict := one(t, job.WithRule("chain.closure", 4), "chain.closure", "a crossmember")
	assert.Contains(t, strict.Why, "the tapes explain "+survey.Figure(2*math.Sqrt(u2)), "what the limit that holds lets through")

	workshop, err := LoadBook(writeBook(t, "format = 1\n[[rule]]\nid = \"chain.closure\"\nvalue = 200\nsource = \"bench sheet\"\n"))
	require.NoError(t, err)
	spread, faults := Judge(job, workshop.Over(Builtin()))
	require.Empty(t, faults)
	assert.Equal(t, Clear, spread.Verdict, "the book's own limit speaks, for the spreading too")
	assert.True(t, spread.Plan.Closures[0].Closes)
}

// What the marks say is what leads back to the place: below as a drilled hole, above as a fitting.
func TestMarksOnABowedBumperLeadBack(t *testing.T) {
	job := sloping()
	job.Bow = []vehicles.BowPoint{{Y: -800, Offset: -14}, {Y: 0, Offset: 3}, {Y: 300, Offset: -2}, {Y: 800, Offset: -11}}
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	sheet := Marks(result)
	require.Len(t, sheet.Marks, 9)
	for _, m := range sheet.Marks {
		back := drilled(job, at(m.Below.Bumper), starting(survey.FromLeft, m.Below.Left))
		back.Exhaust, back.Intake = nil, nil
		plan, faults := vehicles.Reduce(back)
		require.Empty(t, faults)
		assert.InDelta(t, 0, plan.Cut.At.Sub(m.Plan).Norm(), 1e-9, m.Name)
		if m.Above == nil {
			continue
		}
		back.Fittings = []vehicles.Fitting{{Name: "mark", Place: vehicles.Place{
			Shape: vehicles.Disc, Across: vehicles.Some(1), Centre: vehicles.Pair{at(m.Above.Bumper), starting(survey.FromRight, m.Above.Right)},
		}, Rise: vehicles.Span{To: 1, Set: true}}}
		plan, faults = vehicles.Reduce(back)
		require.Empty(t, faults)
		assert.InDelta(t, 0, plan.Fittings[0].Prism.Footprint.Middle.Sub(m.Plan).Norm(), 1e-9, m.Name)
	}
}

func TestDiagonalsToCheck(t *testing.T) {
	job := sloping()
	job.Heater.Yaw = 20
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	sheet := Marks(result)
	corner := map[string]geometry.Point{}
	for _, m := range sheet.Marks {
		corner[m.Name] = m.Plan
	}
	byName := map[CheckName][]float64{}
	for _, c := range sheet.Checks {
		byName[c.Name] = append(byName[c.Name], c.Length)
		if c.Name == "plate diagonal" {
			assert.InDelta(t, c.Length, corner[c.From].Sub(corner[c.To]).Norm(), 1e-9)
		}
	}
	diagonal := math.Sqrt(190*190 + 150*150) // Pythagoras
	assert.InDeltaSlice(t, []float64{diagonal, diagonal}, byName["plate diagonal"], 1e-9)
	assert.Equal(t, []float64{2 * 0.4 * 1780}, byName["pins apart"])
	// A right triangle in space: along the floor from the pins' line, across to the other side, and up by the hook.
	pin := math.Sqrt(math.Pow(3240-25, 2) + math.Pow(890+712, 2) + 60*60)
	require.Len(t, byName["pin diagonal"], 2)
	for _, length := range byName["pin diagonal"] {
		assert.InDelta(t, pin, length, 0.5, "the ties are exact but for their own rounding")
	}
	assert.InDelta(t, byName["pin diagonal"][0], byName["pin diagonal"][1], 1e-6)
	data, err := MarksJSON(result)
	require.NoError(t, err)
	assert.Contains(t, string(data), `"checks":[{"name":"plate diagonal","from":"plate 1","to":"plate 3","length":242.07`)
}
