package work

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// A sheet has each step once, in order, under its part, with what is recorded; empty boxes where nothing is.
func TestASheetHasEachStepOnce(t *testing.T) {
	job := demo.WithDone(vehicles.Done{Step: "co-inside", At: "2026-11-27T10:15:00", Value: vehicles.Some(2), Note: "at the door", Photos: vehicles.List[string]{"meter.jpg"}}).
		WithDone(vehicles.Done{Step: "retorque", Due: "2026-12-11"}).WithDone(vehicles.Done{Step: "seat-wait", At: "2026-11-27", Value: vehicles.Some(12)})
	l := Of(judged(t, job))
	rows := l.Rows()
	require.Len(t, rows, len(l))
	parts := map[string]bool{}
	for i, r := range rows {
		assert.Equal(t, l[i].Name(), r.Name)
		assert.Equal(t, l[i].Unit != "", r.Wanted != "", r.Name)
		if r.Part != "" {
			assert.False(t, parts[r.Part], "%s begins once", r.Part)
			parts[r.Part] = true
		}
	}
	assert.NotEmpty(t, rows[0].Part)
	gas := rows[l.Index("co-inside")]
	assert.Equal(t, Row{
		Ticked: true, Name: "CO inside", Do: l[l.Index("co-inside")].Do, Wanted: "Carbon monoxide inside, ppm: 0 ppm at most (caution \"First run\": common practice, no source).",
		Briefly: "Carbon monoxide inside, ppm: 0 ppm at most (caution \"First run\").",
		Unit:    "ppm", Value: "2", When: "2026-11-27 10:15", Note: "at the door", Photos: []string{"meter.jpg"}, Cautions: "First run",
		Wrong: "2 ppm: 0 ppm at most is expected",
	}, gas)
	assert.Equal(t, []Row{{Ticked: true, Name: "seat wait", Value: "12", Unit: "min", When: "2026-11-27"}}, l.Unplaced(&job))
}

// Whoever works from paper reads at each step that drills or saws what is foul there, before a box is ticked; once it is, that it was wrong.
func TestASheetBarsWhatIsFoulBeforeItIsDone(t *testing.T) {
	rows := func(job vehicles.Job) map[string]Row {
		all := map[string]Row{}
		for _, r := range Of(judged(t, job)).Rows() {
			all[r.Name] = r
		}
		return all
	}
	job := throughTheFloor()
	for _, name := range []string{"pilot drilled", "sawn", "bolts drilled", "fuel hole"} {
		assert.Regexp(t, `^Not while foul: cut: brake pipe across, and \d more\. See Checks\.$`, rows(job)[name].Barred, name)
	}
	assert.Empty(t, rows(job)["depth"].Barred)
	sawn := rows(job.WithDone(vehicles.Done{Step: "sawn", At: "2026-11-27"}))["sawn"]
	assert.Empty(t, sawn.Barred)
	assert.Contains(t, sawn.Wrong, "foul now: ")
	cut := *job.Cut
	cut.At = [2]float64{1405, 195}
	assert.Empty(t, rows(demo.WithCut(cut))["sawn"].Barred)
}

// The record of the first run has what the trade asks to be written down, and the day on which all is tightened once more.
func TestTheRecordOfTheFirstRun(t *testing.T) {
	var names []string
	for _, r := range Of(judged(t, demo)).FirstRun() {
		names = append(names, r.Name)
	}
	assert.Equal(t, []string{
		"sealant cured", "alarm", "outside", "fuel primed", "fuel tight", "start current", "glow voltage", "CO inside", "ran", "cooled", "power off", "service agreed", "retorque",
	}, names)
}

// The finished job of the sample files is finished: every step done in its time, every value as expected, and clear as it was built.
func TestAFinishedJobIsFinished(t *testing.T) {
	data, err := os.ReadFile("../../testdata/work/finished.toml")
	require.NoError(t, err)
	job, err := vehicles.ParseJob(data, "finished.toml")
	require.NoError(t, err)
	assert.Equal(t, string(data), string(job.Format()), "as the program writes it")
	r := judged(t, job)
	l := Of(r)
	assert.Equal(t, len(l), l.Count())
	assert.Negative(t, l.Next())
	for _, row := range l.Rows() {
		assert.Empty(t, row.Wrong, row.Name)
		assert.True(t, row.Ticked, row.Name)
	}
	for i := 1; i < len(l); i++ {
		assert.LessOrEqual(t, l[i-1].Done.At, l[i].Done.At, "%s after %s", l[i].ID, l[i-1].ID)
	}
	assert.Empty(t, l.Unplaced(&job))
	built, faults := rules.AsBuilt(r, rules.Builtin())
	require.Empty(t, faults)
	assert.Equal(t, rules.Clear, built.Verdict)
	assert.NotEqual(t, r.Plan.Cut.At, built.Plan.Cut.At)
}
