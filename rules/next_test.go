package rules

import (
	"encoding/json"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// unsure is the tidy job with three things taken loosely, of which one is near everything: a pipe without a drop whose
// tape hung by nobody knows how much, a bracket of another van, and a rail at the end of a long chain.
func unsure() vehicles.Job {
	job := tidy()
	job.Datum.HookBelow = vehicles.Some(30)
	pipe := box("brake pipe, right", "brake line", 1420, 1430, -800, 800, 0, 0)
	pipe.Drop = vehicles.Span{}
	clip := box("pipe clip", "other", 0, 0, 300, 320, 0, 20) // runs on from the pipe, and is as unsure as it
	clip.X = vehicles.Pair{{Text: "+5", Start: survey.On, Length: 5}, {Text: "+12", Start: survey.On, Length: 12}}
	bracket := box("bracket", "other", 1500, 1520, 400, 420, 0, 60)
	bracket.Measured = false
	rail := box("rail", "crossmember", 800, 0, -850, 850, 0, 20)
	for i := range 5 {
		rail.X[1] = survey.Reading{Text: "+60", Start: survey.On, Length: 60}
		rail.Name = fmt.Sprint("rail ", i)
		job.Obstructions = append(job.Obstructions, rail)
		rail.X[0] = survey.Reading{Text: "+2", Start: survey.On, Length: 2}
	}
	job.Obstructions = append(job.Obstructions, pipe, clip, bracket)
	return job
}

func doubtsOf(t *testing.T, job vehicles.Job) int {
	t.Helper()
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	n := 0
	for _, f := range result.Findings {
		if f.Verdict == Doubtful {
			n++
		}
	}
	return n
}

// Every other reading that could be taken of every thing, simulated here one by one, leaves at least as many doubtful.
func TestTheAdvisedReadingSettlesMoreThanAnyOther(t *testing.T) {
	job := unsure()
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	advice := Next(result, Builtin())
	require.NotEmpty(t, advice)
	first := doubtsOf(t, advice[0].taken(job))
	assert.Equal(t, doubtsOf(t, job)-advice[0].Decides, first)
	assert.Contains(t, advice[0].Text, "measure: brake pipe, right, drop: ends ")
	assert.Equal(t, "brake pipe, right", job.Obstructions[advice[0].Obstruction].Name)
	others := 0
	for i := range job.Obstructions {
		for _, change := range []func(*vehicles.Obstruction){
			func(o *vehicles.Obstruction) { o.Measured = true },
			func(o *vehicles.Obstruction) { o.Drop = vehicles.Span{From: 0, To: 40, Set: true} },
			func(o *vehicles.Obstruction) { o.TapedAt = vehicles.Some(40) },
			func(o *vehicles.Obstruction) {
				if o.X[1].Start == survey.On {
					o.Total[0] = survey.FromNumber(result.Plan.Obstructions[i].Prism.Footprint.Middle.X+30, false)
				}
			},
		} {
			o := job.Obstructions[i]
			change(&o)
			other := job
			other.Obstructions = job.Obstructions.With(i, o)
			if _, faults := vehicles.Reduce(other); len(faults) > 0 {
				continue
			}
			others++
			assert.LessOrEqual(t, first, doubtsOf(t, other), "%s", o.Name)
		}
	}
	assert.Greater(t, others, 60)
	for i, a := range advice {
		assert.True(t, a.Decides > 0 || a.Gain > 0, a.Text)
		if i > 0 {
			assert.GreaterOrEqual(t, advice[i-1].Decides, a.Decides)
		}
		assert.GreaterOrEqual(t, doubtsOf(t, a.taken(job)), first, a.Text)
	}
	assert.Equal(t, unsure(), job, "the job stays as it was")
}

func TestAdviceIsOfTheRightThing(t *testing.T) {
	fields := func(job vehicles.Job) map[string]Advice {
		result, faults := Judge(job, Builtin())
		require.Empty(t, faults)
		found := map[string]Advice{}
		for _, a := range Next(result, Builtin()) {
			if _, there := found[a.Field]; !there {
				found[a.Field] = a
			}
		}
		return found
	}
	assert.Empty(t, fields(tidy()), "nothing is doubtful")
	got := fields(unsure())
	assert.Contains(t, got, "drop")
	assert.Contains(t, got, "measured")
	assert.Contains(t, got, "taped_at")

	apart := tidy() // ties that disagree: one more, or a suspect measured again
	apart.Ties = append(apart.Ties,
		vehicles.Tie{Name: "third", Use: true, Below: vehicles.Pair{at(900), at(700)}, Above: vehicles.Pair{at(900), at(700)}},
		vehicles.Tie{Name: "fourth", Use: true, Below: vehicles.Pair{at(2200), at(-600)}, Above: vehicles.Pair{at(2260), at(-600)}})
	again := fields(apart)[FieldTie]
	assert.Contains(t, again.Text, "fourth again, from above, as a matching point: ends ")
	assert.Positive(t, again.Decides)

	bent := tidy() // a chain that misses its overall reading
	bent.Obstructions[0].Total[0] = at(190)
	total := fields(bent)["total.x"]
	assert.Contains(t, total.Text, "overall reading from the bumper")
	assert.Positive(t, total.Decides)
	data, err := json.Marshal(total)
	require.NoError(t, err)
	assert.Contains(t, string(data), `"field":"total.x"`)
}

// Near the limit the frames and the mark make the difference; without anything unknown under the floor drilling may be
// advised, with something unknown it is not.
func TestDrillingIsAdvisedOnlyWhenTheCutIsThenClear(t *testing.T) {
	job := tidy()
	job.Ties = nil
	job.Obstructions = append(job.Obstructions, box("near", "other", 1210+63.5+22, 1400, 100, 300, 0, 50))
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	var drill, tie bool
	for _, a := range Next(result, Builtin()) {
		drill, tie = drill || a.Field == FieldDrilled, tie || a.Field == FieldTie
	}
	assert.True(t, tie)
	assert.True(t, drill)
	unknown := box("unknown", "wiring", 1600, 1610, 0, 10, 0, 50)
	unknown.Measured = false
	job.Obstructions = append(job.Obstructions, unknown)
	result, _ = Judge(job, Builtin())
	for _, a := range Next(result, Builtin()) {
		assert.NotEqual(t, FieldDrilled, a.Field)
	}
}
