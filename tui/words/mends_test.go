package words

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// Where the runs alone are foul nobody is told to move the cut, and where both are, both have to be mended.
func TestWhatMendsIsWhatIsFoul(t *testing.T) {
	result, faults := rules.Judge(vehicles.Demo(), rules.Builtin())
	require.Empty(t, faults)
	assert.Equal(t, "Move the cut (4), lay the runs otherwise (5, J finds them), or measure again.", Mends(&result))
	var kept []rules.Finding
	for _, f := range result.Findings {
		if !f.Rule.AtCut || f.Verdict != rules.Foul {
			kept = append(kept, f)
		}
	}
	result.Findings = kept
	assert.Equal(t, "Lay the runs otherwise (5, J finds them), or measure again.", Mends(&result), "a doubt at the cut is not what is foul")
}

// Where nothing but matching points that disagree keeps the job from being clear, no move ends that: both the advice and what mends say what is to be
// measured again.
func TestWhereOnlyReadingsMendNobodyIsToldToMove(t *testing.T) {
	job := vehicles.Demo()
	result, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	const apart = "the matching points don't agree: measure them again"
	var kept []rules.Finding
	for _, f := range result.Findings {
		if f.Rule.AtCut && f.Verdict == rules.Clear && f.Sigma > 0 && len(kept) < 5 {
			f.Verdict, f.Why = rules.Doubtful, apart
			kept = append(kept, f)
		}
	}
	require.NotEmpty(t, kept)
	result.Findings = kept
	assert.Equal(t, apart, NoAdvice(result))
	assert.Equal(t, Sentence(apart), Mends(&result))
	kept[0].Margin.Value = 0
	assert.Contains(t, NoAdvice(result), "move something", "one of them is too close to call")
	assert.Contains(t, Mends(&result), "Move the cut")
}

// So it is with what readings say of each other, however far they are apart: matching points, tapes from the hole, chains.
func TestReadingsThatDisagreeAreMeasuredAgain(t *testing.T) {
	result, faults := rules.Judge(vehicles.Demo(), rules.Builtin())
	require.Empty(t, faults)
	var apart []rules.Finding
	for _, f := range result.Findings {
		if f.Rule.HoldsBack {
			f.Verdict, f.Margin, f.Why = rules.Doubtful, vehicles.Some(-17), "they differ: measure them again"
			apart = append(apart, f)
		}
	}
	require.NotEmpty(t, apart)
	result.Findings = apart
	assert.Equal(t, "they differ: measure them again", NoAdvice(result))
	assert.Equal(t, "They differ: measure them again.", Mends(&result))
}

// A layout without a fuel line says why: the job's own has none, with one another would be worse, or the worst that the nearest miss breaks, not what is
// only doubtful of it.
func TestWhyALayoutHasNoFuelLine(t *testing.T) {
	result, faults := rules.Judge(vehicles.Demo(), rules.Builtin())
	require.Empty(t, faults)
	l := rules.Layout{Result: result}
	assert.Empty(t, NoFuelLine(&l, survey.Millimetres), "it has one")
	l.Result.Job.Fuel = nil
	assert.Equal(t, "no fuel line: none goes well with its other runs", NoFuelLine(&l, survey.Millimetres))
	l.AsItIs = true
	assert.Equal(t, "no fuel line: none is laid", NoFuelLine(&l, survey.Millimetres))
	var foul, doubtful rules.Finding
	for _, f := range result.Findings {
		switch f.Verdict {
		case rules.Foul:
			foul = f
		case rules.Doubtful:
			doubtful = f
		}
	}
	l.AsItIs, l.FuelMiss = false, &rules.Route{Run: &vehicles.Run{}, Verdict: rules.Foul, Misses: []rules.Finding{doubtful, foul}}
	assert.Contains(t, NoFuelLine(&l, survey.Millimetres), Margin(foul, survey.Millimetres))
}
