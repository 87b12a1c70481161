package rules

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// bareJob is a job file with nothing but a floor, nine lines long.
const bareJob = `format = 1
[job]
ref = "TL-07"
[floor]
from = 40
length = 3200
width = 1780
thickness = 31
ground = 460
`

func TestAJobsWrongRulesAreFoundOnTheirLines(t *testing.T) {
	for text, says := range map[string]string{
		`"exhaust.lenght" = 2000`:         `rules: "exhaust.lenght" is no rule; did you mean "exhaust.length"?`,
		`"cut.clearance.brake lines" = 6`: `rules: "cut.clearance.brake lines" is no rule; did you mean "cut.clearance.brake line"?`,
		`"fuel.pump-tilt" = 15`:           `did you mean "fuel.pump-tilt.least"?`,
		`"cut.on-floor.crossmember" = 15`: `is no rule`,
		`cut = 15`:                        `is no rule; did you mean "cut.reach"?`,
		`"strange thing altogether" = 15`: `is no rule; all are listed by: undermark rules`,
		`"exhaust.length" = 20001`:        `rules: "exhaust.length" is 20001; it must be a length from -20000 to 20000 mm`,
		`"cut.reach" = -20000.5`:          `rules: "cut.reach" is -20000.5; it must be a length`,
	} {
		path := filepath.Join(t.TempDir(), "van.toml")
		require.NoError(t, os.WriteFile(path, []byte(bareJob+"[looked]\nwiring = true\n[rules]\n\"exhaust.bends\" = 30000\n"+text+"\n"), 0o600))
		document, err := vehicles.Load(path, Builtin())
		var faults vehicles.FileErrors
		require.ErrorAs(t, err, &faults, text)
		require.Len(t, faults, 1, text)
		assert.True(t, strings.HasPrefix(faults[0].Error(), path+":14: "), "%v", faults[0])
		assert.Contains(t, faults[0].Text, says)
		assert.False(t, faults.WholeJob(), "it can't be judged")
		_, again := Judge(document.Job, Builtin())
		require.Len(t, again, 1, "nor by somebody who did not check")
		assert.Equal(t, faults[0].Text, again[0].Text)
	}
}

func TestAllThatIsWrongIsSaidAtOnce(t *testing.T) {
	_, err := vehicles.ParseJob([]byte(bareJob+"[rules]\n\"cut.raech\" = 80\n\"cut.reach\" = \"80\"\n[wrong]\n"), "van.toml", Builtin())
	var faults vehicles.FileErrors
	require.True(t, errors.As(err, &faults))
	lines := []int{}
	for _, f := range faults {
		lines = append(lines, f.Line)
	}
	assert.Equal(t, []int{11, 12, 13}, lines, "%v", err)
}

func TestTheKeysOfRules(t *testing.T) {
	for key, want := range map[string][2]string{
		"cut.clearance": {"cut.clearance", ""}, "cut.clearance.brake line": {"cut.clearance", "brake line"},
		"exhaust.clearance.shielded": {"exhaust.clearance.shielded", ""}, "exhaust.outlet.door": {"exhaust.outlet", "door"},
		"exhaust.clearance.shielded.brake line": {"exhaust.clearance.shielded", "brake line"},
		"fuel.pump-tilt.least":                  {"fuel.pump-tilt.least", ""}, "stack.turret": {"stack.turret", ""},
		"stub.in-cut.exhaust": {"stub.in-cut", "exhaust"}, "stub.in-cut.intake": {"stub.in-cut", "intake"}, "stub.in-cut.fuel": {"stub.in-cut", "fuel"},
	} {
		rule, kind, ok := ruleOf(key)
		require.True(t, ok, key)
		assert.Equal(t, want, [2]string{rule.ID, kind})
		assert.Equal(t, key, rule.Key(kind))
	}
	for _, key := range []string{"", "cut", "exhaust.outlet.crossmember", "cut.on-floor.wiring", "cut.clearance.door", "stub.in-cut.muffler"} {
		_, _, ok := ruleOf(key)
		assert.False(t, ok, key)
	}
	for _, key := range ruleKeys() {
		_, _, ok := ruleOf(key)
		assert.True(t, ok, key)
	}
}

// The job's own limit speaks before the workshop's, the workshop's before the 99 % point.
func TestPlacesAreReducedWithTheBooksWordForChains(t *testing.T) {
	job := tidy()
	job.Obstructions[0].Total[0] = at(172)
	closes := func(book *Book) bool {
		plan, faults := Reduce(job, book)
		require.Empty(t, faults)
		return plan.Closures[0].Closes
	}
	assert.False(t, closes(nil))
	workshop := newBook([]Limit{{Rule: chainClosure, Value: vehicles.Some(200), Book: Workshop}}).Over(Builtin())
	assert.True(t, closes(workshop))
	job.Rules["chain.closure"] = 3
	assert.False(t, closes(workshop))
}

// missing is a job whose chain misses its overall reading by 2.5 mm: spread over the chain, its box would end before it
// starts. Left as it was read there is nothing wrong with it.
const missing = bareJob + `[[obstruction]]
name = "box"
kind = "other"
x = [652, "+0.5"]
y = [100, 200]
total = { x = 650 }
`

func TestAJobIsReadAndSavedByTheBookThatJudgesIt(t *testing.T) {
	workshop := newBook([]Limit{{Rule: chainClosure, Value: vehicles.Some(0.1), Book: Workshop}}).Over(Builtin())
	own := missing + "[rules]\n\"chain.closure\" = 0.1\n"
	wide := missing + "[rules]\n\"chain.closure\" = 1000\n"
	for name, c := range map[string]struct {
		text string
		book *Book
		good bool
	}{
		"the built-in limit spreads it":     {missing, Builtin(), false},
		"no book is the built-in one":       {missing, nil, false},
		"the job's own limit leaves it":     {own, Builtin(), true},
		"the workshop's limit leaves it":    {missing, workshop, true},
		"the job's speaks before the other": {wide, workshop, false},
	} {
		path := filepath.Join(t.TempDir(), "van.toml")
		require.NoError(t, os.WriteFile(path, []byte(c.text), 0o600))
		document, err := vehicles.Load(path, c.book)
		_, contradictions := Reduce(document.Job, c.book)
		assert.Equal(t, c.good, len(contradictions) == 0, name)
		if !c.good {
			var faults vehicles.FileErrors
			require.ErrorAs(t, err, &faults, name)
			assert.True(t, faults.WholeJob(), name)
			_, _, err = document.Save(document.Job, c.book)
			require.ErrorContains(t, err, "not saved", name)
			continue
		}
		require.NoError(t, err, name)
		document.Job.Fitter = "somebody"
		saved, _, err := document.Save(document.Job, c.book)
		require.NoError(t, err, name)
		again, err := vehicles.Load(path, c.book)
		require.NoError(t, err, name)
		assert.Equal(t, saved.Job, again.Job, name)
		copied := filepath.Join(t.TempDir(), "copy.toml")
		_, _, err = vehicles.SaveAs(copied, again.Job, c.book)
		require.NoError(t, err, name)
	}
}

// leftAsRead is a job with a thing whose chain only the job's own limit leaves without contradiction.
func leftAsRead(t *testing.T, job vehicles.Job) vehicles.Job {
	onward, err := survey.Parse("+0.1", survey.X)
	require.NoError(t, err)
	thing := box("left as read", "other", 2600, 0.1, 700, 720, 0, 60)
	thing.X[1] = onward
	thing.Total[0] = at(2597)
	job.Obstructions = append(slices.Clone(job.Obstructions), thing)
	job.Rules = map[string]float64{"chain.closure": 0.1}
	return job
}

func TestWhatIsTriedIsReducedByTheBook(t *testing.T) {
	misread := leftAsRead(t, drilled(sloping(), at(math.Hypot(1210, 350)+100), at(240)))
	report := checked(t, misread)
	assert.False(t, report.Explained)
	assert.NotEmpty(t, report.Slips)

	job := leftAsRead(t, sloping()).WithTieSideSwapped(2, true)
	plan, faults := Reduce(job, Builtin())
	require.Empty(t, faults)
	tie, ok := TieOnWrongSide(job, plan)
	assert.True(t, ok)
	assert.Equal(t, 2, tie)
}
