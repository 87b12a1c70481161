package words

import (
	"maps"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// What is doubtful since nobody has given a rule its value is ended by that value: nobody is told to move anything. With something else in doubt
// beside it no single word ends all of it.
func TestWhatHasNoValueIsNotToBeMoved(t *testing.T) {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1405, 195}
	job = job.WithCut(cut)
	for i := range job.Obstructions {
		o := job.Obstructions[i]
		o.Measured = true
		job.Obstructions = job.Obstructions.With(i, o)
	}
	of := func(without ...string) rules.Result {
		j := job
		j.Rules = maps.Clone(job.Rules)
		for _, id := range without {
			delete(j.Rules, id)
		}
		result, faults := rules.Judge(j, rules.Builtin())
		require.Empty(t, faults)
		return result
	}
	assert.NotContains(t, NoAdvice(of()), "no value")
	const enter = "what is doubtful has no value set: enter that on Job (8)"
	assert.Equal(t, enter, NoAdvice(of("fuel.lift")))
	assert.Equal(t, enter, NoAdvice(of("fuel.lift", "fuel.suction")))
	mixed := of("fuel.lift")
	for i := range mixed.Findings {
		if f := &mixed.Findings[i]; f.Verdict == rules.Clear && f.Rule.AtCut {
			f.Verdict = rules.Doubtful
			break
		}
	}
	assert.NotEqual(t, enter, NoAdvice(mixed))
}
