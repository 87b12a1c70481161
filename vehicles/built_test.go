package vehicles

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
)

// What was made otherwise stands in place of what was planned, and nothing else changes.
func TestAsBuiltIsThePlanWithWhatWasMadeOtherwise(t *testing.T) {
	planned := Demo()
	assert.Equal(t, planned, planned.AsBuilt())
	cut := *planned.Cut
	cut.At[0] += 12
	run := *planned.Exhaust
	run.Path = run.Path.With(1, RunPoint{1370, 540, 190})
	job := planned.WithBuilt(Built{Cut: &cut}.WithRun(ExhaustRun, &run))
	want := planned.WithCut(cut).WithRun(ExhaustRun, &run)
	assert.Equal(t, want, job.AsBuilt())
	assert.Equal(t, planned, job.WithBuilt(Built{}), "all as planned again")
	again, err := ParseJob(job.Format(), "a.toml")
	require.NoError(t, err)
	assert.Equal(t, want.Format(), again.AsBuilt().Format())
	plan, faults := Reduce(job)
	require.Empty(t, faults)
	bare, _ := Reduce(planned)
	assert.Equal(t, bare.Cut, plan.Cut, "the plan stays as it was")
}

// What was read of the pilot, and taped directly from it, says nothing of a hole that was read otherwise, and holds again once that reading is taken back.
func TestWhatWasReadOfThePilotHoldsWhereNothingWasReadOfTheHole(t *testing.T) {
	job := Demo()
	cut := *job.Cut
	cut.Drilled = &Pair{mustSay("1264", survey.X), mustSay("L693", survey.Y)}
	cut.Direct = List[DirectTape]{{job.Obstructions[0].Name, survey.FromNumber(100, true)}}
	job = job.WithCut(cut)
	read := job.ReadSawn(cut, survey.X, mustSay("1273", survey.X))
	assert.Nil(t, read.Drilled)
	assert.Nil(t, read.Direct)
	assert.NotEqual(t, cut.At, read.At)
	back := job.ReadSawn(read, survey.X, survey.Reading{})
	assert.Equal(t, cut, back)
	both := job.ReadSawn(read, survey.Y, mustSay("193", survey.Y))
	one := job.ReadSawn(both, survey.X, survey.Reading{})
	assert.Nil(t, one.Drilled, "it was read across")
	assert.Equal(t, cut.At[0], one.At[0])
}

// Whoever is renamed or goes is so in what was made otherwise, too: else the job could be read no more.
func TestNamesGoAlongAsBuilt(t *testing.T) {
	job := named()
	job.Built = &Built{Cut: job.Cut, Exhaust: job.Exhaust, Fuel: job.Fuel}
	old := job
	renamed := job.Renaming("tank", "fuel tank")
	assert.Equal(t, "fuel tank", renamed.Built.Fuel.Supply.From)
	assert.Equal(t, []string{"rail", "fuel tank"}, renamed.Built.Exhaust.Shielded.Names)
	assert.Equal(t, []string{"fuel tank", "rail", "fuel tank"}, directTo(renamed.AsBuilt()))
	gone := job.Forgetting("tank")
	assert.Empty(t, gone.Built.Fuel.Supply.From)
	assert.Equal(t, []string{"rail"}, gone.Built.Exhaust.Shielded.Names)
	assert.Empty(t, gone.Naming("tank"))
	assert.Len(t, job.Naming("tank"), 6)
	assert.Equal(t, old, job, "the old job stays")
}

// Where what was made otherwise contradicts itself, its own key is named; what is wrong with the plan is told once.
func TestFaultsOfWhatWasMadeAreTold(t *testing.T) {
	job := Demo()
	run := *job.Exhaust
	run.Muffler = &Muffler{Leg: 1, Start: 5000, Length: 180, Across: 68}
	_, faults := Reduce(job.WithBuilt(Built{Exhaust: &run}))
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].Key, "built.exhaust.muffler")
	assert.Contains(t, faults[0].Text, "as built: ")
	_, faults = Reduce(job.WithRun(ExhaustRun, &run).WithBuilt(Built{Exhaust: &run}))
	assert.Len(t, faults, 1)
}

// A new job for another van has nothing of what was made in this one.
func TestWhatWasDoneStaysWithItsVan(t *testing.T) {
	job := Demo().WithDone(Done{Step: "stands", At: "2026-11-27"}).WithBuilt(Built{Cut: Demo().Cut})
	fresh := CarryOver(job, "TL-90")
	assert.Nil(t, fresh.Built)
	assert.Empty(t, fresh.Done)
}

// A hole as built that was read from below is where its readings are, as uncertain as those; along an axis that nobody read it is where
// cut.at has it, as uncertain as a mark is. The readings of the pilot are worth no more then.
func TestASawnHoleIsWhereItWasRead(t *testing.T) {
	x, y := survey.FromNumber(1313, true), mustSay("L 693", survey.Y)
	plan := func(at Pair) CutPlace {
		cut := *Demo().Cut
		cut.Sawn = at
		p, faults := Reduce(Demo().WithBuilt(Built{Cut: &cut}).AsBuilt())
		require.Empty(t, faults)
		return p.Cut
	}
	pilot, faults := Reduce(Demo().WithDrilled(&Pair{x, y}))
	require.Empty(t, faults)
	both := plan(Pair{x, y})
	assert.Equal(t, pilot.Cut.At, both.At, "reduced as a pilot's are")
	assert.Equal(t, pilot.Cut.UX, both.UX)
	assert.Equal(t, pilot.Cut.UY, both.UY)
	assert.True(t, both.Below)
	assert.False(t, both.Drilled)
	assert.Equal(t, both.At, both.Intended)
	one := plan(Pair{x, {}})
	assert.InDelta(t, both.At.X, one.At.X, 1e-9)
	assert.Equal(t, Demo().Cut.At[1], one.At.Y)
	assert.Equal(t, pilot.Cut.UMark[1], one.UY)
	assert.False(t, one.Below)
}
