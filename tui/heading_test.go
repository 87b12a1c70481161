package tui

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

func TestTheHeadingIsClearOnceAllIsAnswered(t *testing.T) {
	s := desk.State{Result: rules.Result{Verdict: rules.Clear, Job: vehicles.Job{Cut: &vehicles.Cut{}}}}
	assert.Equal(t, "clear", heading(s))
	s.Result.Unchecked = []rules.Lack{"turret", "ties"}
	assert.Equal(t, "clear; not checked: collar, matching points", heading(s), "as the other screens say it")
	s.Result.Unchecked = nil
	s.Result.Unanswered = []string{"muffler drain", "where the heater's air comes from"}
	assert.Equal(t, "clear of what was entered; nobody has said: muffler drain, where the heater's air comes from", heading(s))
}

// On a narrow row the margin of the worst stays, and the sign of what can kill.
func TestTheMarginStaysInANarrowHeading(t *testing.T) {
	result, faults := rules.Judge(vehicles.Demo(), rules.Builtin())
	assert.Empty(t, faults)
	s := desk.State{Job: result.Job, Result: result}
	worst := *rules.ForPeople(result.Findings)[0]
	assert.Equal(t, rules.Kills, worst.Weight)
	for _, w := range []int{60, 70, 80} {
		text := headingIn(s, w)
		assert.LessOrEqual(t, desk.Width(text), w)
		assert.Contains(t, text, ", "+words.Margin(worst, desk.Millimetres))
		assert.Regexp(t, words.Deadly+"|can kill", text)
	}
	assert.Equal(t, heading(s), headingIn(s, 300))
}

// A narrow heading is whole: what a clear job leaves open is counted where there is no room to name it, and nothing is cut.
func TestWhatAClearJobLeavesOpenIsCountedInANarrowHeading(t *testing.T) {
	s := desk.State{Result: rules.Result{Verdict: rules.Clear, Job: vehicles.Job{Cut: &vehicles.Cut{}}}}
	s.Result.NotLookedFor = []string{"air line", "double skin"}
	s.Result.NotLookedAtRuns = []string{"air line", "axle", "wiring"}
	s.Result.Unanswered = []string{"muffler drain"}
	assert.Equal(t, "clear of what was entered; 5 not looked for, 1 not said", headingIn(s, 60))
	s.Result.Unchecked = []rules.Lack{"turret", "ties"}
	assert.Equal(t, "clear of what was entered; 5 not looked for, more (7)", headingIn(s, 60))
	assert.Equal(t, "clear of what was entered; 5 not looked for, 1 not said, 2 not checked", headingIn(s, 70))
	s.Result.NotLookedFor, s.Result.NotLookedAtRuns = nil, nil
	s.Result.Unanswered = []string{"muffler drain", "where the heater's air comes from", "deck: steel or timber"}
	s.Result.Unchecked = nil
	assert.Equal(t, "clear of what was entered; 3 not said", headingIn(s, 60))

	s.Result.Verdict = rules.Doubtful
	s.Result.Job.Cut = nil
	assert.Equal(t, "the cut has no place yet", headingIn(s, 60))
	s.Result.Unchecked = []rules.Lack{"a dozen of things", "that were never entered", "and can't be checked"}
	assert.Equal(t, "the cut has no place yet; 3 not checked until it has", headingIn(s, 60))
}
