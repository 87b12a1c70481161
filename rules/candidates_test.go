package rules

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

func on(length float64) survey.Reading {
	return survey.Reading{Text: fmt.Sprint("+", length), Start: survey.On, Length: length}
}

// chained draws obstructions of all shapes of which each runs on from the one before, in x, in y or in both, from a tape
// that slopes.
func chainedThings(t *rapid.T) vehicles.Job {
	whole := func(name string, low, high int) float64 { return float64(rapid.IntRange(low, high).Draw(t, name)) }
	job := tidy()
	job.Ties, job.Openings, job.Fittings, job.Exhaust, job.Intake, job.Fuel = nil, nil, nil, nil, nil, nil
	job.Obstructions = nil
	job.Datum.HookBelow = vehicles.Some(whole("hook", 0, 200))
	ways := map[string]survey.Start{"left": survey.FromLeft, "right": survey.FromRight, "centre": survey.Datum}
	start := ways[rapid.SampledFrom([]string{"left", "right", "centre"}).Draw(t, "across from")]
	for i := range rapid.IntRange(1, 4).Draw(t, "things") {
		o := vehicles.Obstruction{Name: fmt.Sprint("thing ", i), Kind: "other", Drop: vehicles.Span{From: 0, To: whole("low", 10, 150), Set: true}}
		x, y := on(whole("x", 5, 80)), on(whole("y", 5, 80))
		if i == 0 {
			x, y = at(whole("x", 300, 900)), starting(start, whole("y", 50, 300))
		}
		switch rapid.IntRange(0, 2).Draw(t, "shape") {
		case 0:
			o.X, o.Y = vehicles.Pair{x, on(whole("long", 5, 80))}, vehicles.Pair{y, on(whole("wide", 5, 80))}
		case 1:
			o.Place = vehicles.Place{Shape: vehicles.Disc, Centre: vehicles.Pair{x, y}, Across: vehicles.Some(20)}
		case 2:
			o.Place = vehicles.Place{Shape: vehicles.Piped, Across: vehicles.Some(8), Path: []vehicles.Pair{{x, y}, {on(whole("on", 5, 80)), on(whole("over", 5, 80))}}}
		}
		job.Obstructions = append(job.Obstructions, o)
	}
	return job
}

// An overall reading that comes out as expected is where the chain ends: nothing is missed, whatever the shape, the side it
// started from and the slope of the tape.
func TestAnAdvisedOverallReadingClosesItsChain(t *testing.T) {
	taken := 0
	rapid.Check(t, func(t *rapid.T) {
		job := chainedThings(t)
		result := judged(t, job)
		for _, a := range candidates(&result) {
			if a.Field != "total.x" && a.Field != "total.y" {
				continue
			}
			taken++
			plan, faults := vehicles.Reduce(a.taken(job))
			require.Empty(t, faults, a.Text)
			require.Len(t, plan.Closures, 1)
			assert.InDelta(t, 0, plan.Closures[0].Misclosure, 1e-6, a.Text)
			assert.Equal(t, a.Obstruction, plan.Closures[0].Index)
			assert.Equal(t, map[string]survey.Axis{"total.x": survey.X, "total.y": survey.Y}[a.Field], plan.Closures[0].Axis)
		}
	})
	assert.Greater(t, taken, 20)
}

// A drop nobody measured is expected where x was taped, else as low as those of its kind hang on the mean, else as all do,
// else level with the floor's underside.
func TestAnExpectedDropIsThatOfItsLike(t *testing.T) {
	with := func(taped vehicles.Number, others ...vehicles.Obstruction) float64 {
		unknown := box("unknown", "wiring", 1400, 1420, 0, 20, 0, 0)
		unknown.Drop, unknown.TapedAt, unknown.Measured = vehicles.Span{}, taped, false
		job := tidy()
		job.Obstructions = append([]vehicles.Obstruction{unknown}, others...)
		result := judged(t, job)
		for _, a := range candidates(&result) {
			if a.Field == "drop" {
				return a.taken(job).Obstructions[0].Drop.To
			}
		}
		return math.NaN()
	}
	wires := []vehicles.Obstruction{box("a", "wiring", 2000, 2010, 0, 10, 0, 40), box("b", "wiring", 2100, 2110, 0, 10, 0, 60)}
	rail := box("rail", "chassis rail", 2200, 2300, 0, 10, 0, 110)
	assert.Equal(t, 33.0, with(vehicles.Some(33), wires...))
	assert.Equal(t, 50.0, with(vehicles.Number{}, append(wires, rail)...), "of wiring: (40 + 60) / 2")
	assert.Equal(t, 110.0, with(vehicles.Number{}, rail), "there is no other wiring")
	assert.Equal(t, 0.0, with(vehicles.Number{}))
}

func TestWhatIsNotOfThisVanIsAdvisedToBeConfirmed(t *testing.T) {
	job := tidy()
	job.Openings[2].Unconfirmed = true
	job.Obstructions[5].Measured = false
	result := judged(t, job)
	found := map[string]Advice{}
	for _, a := range Next(result, Builtin()) {
		if a.Field == "measured" {
			found[a.Text] = a
		}
	}
	opening, ok := found["measure: "+job.Openings[2].Name+", confirm it on this van: ends 2 doubts"] // of outlet and muffler
	require.True(t, ok, "%v", found)
	assert.Equal(t, []int{-1, 2}, []int{opening.Obstruction, opening.Opening})
	assert.False(t, opening.taken(job).Openings[2].Unconfirmed)
	obstruction, ok := found["measure: "+job.Obstructions[5].Name+", confirm it on this van: ends 4 doubts"]
	require.True(t, ok, "%v", found)
	assert.Equal(t, []int{5, -1}, []int{obstruction.Obstruction, obstruction.Opening}, "of cut, exhaust, intake and fuel line")
	assert.True(t, job.Openings[2].Unconfirmed, "the job stays as it was")
}

func TestMatchingPointsStillNeededAreAdvised(t *testing.T) {
	job := tidy()
	job.Ties = nil
	job.Obstructions = append(job.Obstructions, box("near", "other", 1210+63.5+21, 1400, 100, 300, 0, 50))
	result := judged(t, job)
	var tie *Advice
	for _, a := range candidates(&result) {
		if a.Field == FieldTie {
			tie = &a
		}
	}
	require.NotNil(t, tie)
	assert.Contains(t, tie.What, "two matching points well apart")
	after := judged(t, tie.taken(job))
	require.Len(t, after.Job.Ties, 2)
	assert.InDelta(t, 0, after.Plan.Fit.RMS, 1e-6, "they agree")
	assert.Greater(t, after.Plan.Fit.SumR2, 1e6, "well apart")
}

// Matching points that agree are not measured again; of those that do not, the one that is most left over is, by its name.
func TestOnlyMatchingPointsThatDisagreeAreMeasuredAgain(t *testing.T) {
	again := func(name string) (words []string) {
		result := judged(t, readCase(t, "../testdata/cases/"+name+".toml"))
		for _, a := range candidates(&result) {
			if strings.HasSuffix(a.What, " again, from above, as a matching point") {
				words = append(words, a.What)
			}
		}
		return words
	}
	assert.Empty(t, again("13-two-ties"))
	assert.Empty(t, again("14-three-ties-drilled"))
	suspect := judged(t, readCase(t, "../testdata/cases/15-a-suspect.toml")).Plan.Fit.Suspect
	require.NotEmpty(t, suspect)
	assert.Contains(t, again("15-a-suspect"), suspect+" again, from above, as a matching point")
	assert.Empty(t, again("16-suspect-taken-out"))
}
