package sheet

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/cutlist"
	"bench.example/undermark/rules/parts"
	"bench.example/undermark/rules/template"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/vehicles"
)

// pageSays is all that the job's sheet says, without blanks.
func pageSays(s *source) string {
	sheet := Of(s.Result, s.say)
	var all []*board
	for _, page := range sheet.Pages(template.Papers["a4"]) {
		b := &board{}
		page.Draw(b)
		all = append(all, b)
	}
	return said(all)
}

// step is a step of a job as it stands on paper.
func step(t *testing.T, s *source, id string) Tick {
	for _, ticks := range each[Ticks](s.steps()) {
		for _, tick := range ticks {
			if tick.Name == vehicles.StepName(id) {
				return tick
			}
		}
	}
	require.Fail(t, "no such step", id)
	return Tick{}
}

// A job from its first sheet to the customer's page: surveyed without a heater, placed where it is foul, moved, drilled, sawn, finished. Each sheet says what holds then,
// and nothing of before.
func TestAJobFromItsFirstSheetToTheCustomers(t *testing.T) {
	demo := vehicles.Demo()
	survey1 := demo
	survey1.Cut, survey1.Heater, survey1.Exhaust, survey1.Intake, survey1.Fuel, survey1.Rules = nil, nil, nil, nil, nil, nil

	s := paperOf(t, survey1) // surveyed
	all := pageSays(s)
	assert.Contains(t, all, tight(rules.CutHasNoPlace))
	for _, o := range demo.Obstructions {
		assert.Contains(t, all, tight(o.Name))
	}
	for _, not := range []string{"Cutlist:", "Theruns:", "Madeotherwise", "Asbuilt:", "plate1", "Notwhilefoul"} {
		assert.NotContains(t, all, not)
	}
	assert.Empty(t, tableOf(s.above(), "mark").Rows)
	assert.Empty(t, parts.Of(s.Result, cutlist.Usual()).Rows)

	s = paperOf(t, demo) // placed, foul
	require.Equal(t, rules.Foul, s.Verdict)
	for _, id := range []string{"pilot-drilled", "sawn", "bolts-drilled"} {
		assert.Contains(t, step(t, s, id).Words, "Not while foul: cut: brake pipe across, and ")
	}
	assert.Len(t, tableOf(s.above(), "mark").Rows, len(listedOf(s)))
	planned := markRows(s)["cut centre"]

	cut := *demo.Cut // moved to where no clearance at the cut is missed
	cut.At = [2]float64{1405, 195}
	clear := demo.WithCut(cut)
	s = paperOf(t, clear)
	for _, id := range []string{"pilot-drilled", "sawn", "bolts-drilled"} {
		assert.NotContains(t, step(t, s, id).Words, "Not while foul")
	}
	moved := markRows(s)["cut centre"]
	assert.Greater(t, figure(t, moved[1]), figure(t, planned[1])+145, "150 mm forward")
	assert.Equal(t, planned[2], moved[2], "and no way aside")

	drilled := clear.WithDrilled(&vehicles.Pair{survey.FromNumber(1418, true), survey.FromNumber(193, true)}) // it came out beside
	s = paperOf(t, drilled)
	rows := tableOf(s.above(), "mark").Rows
	assert.Equal(t, "cut centre as meant", rows[0].Cells[0])
	assert.Equal(t, "pilot hole as drilled", rows[1].Cells[0], "so that nobody takes one for the other")
	texts := ""
	for _, text := range each[Text](s.above()) {
		texts += text.Words + "\n"
	}
	assert.Contains(t, texts, "All else here is set off the hole.")
	assert.Contains(t, step(t, s, "pilot-looked").Words, "The job has it: measured on Marks")
	assert.False(t, step(t, s, "pilot-looked").Done, "nobody said when")

	done := drilled // every step in its order, each value as it is expected
	for _, kind := range work.Of(s.Result) {
		d := vehicles.Done{Step: kind.ID, At: "2026-11-27T10:15:00"}
		if kind.Measures() {
			d.Value = kind.Expected.Least
			if !d.Value.Set {
				d.Value = vehicles.Some(kind.Expected.Most.Or(1))
			}
		}
		if kind.Dated {
			d.Due = "2026-12-11"
		}
		done = done.WithDone(d)
	}
	s = paperOf(t, done)
	list := work.Of(s.Result)
	assert.Equal(t, len(list), list.Count())
	for _, ticks := range each[Ticks](s.steps()) {
		for _, tick := range ticks {
			assert.True(t, tick.Done, tick.Name)
			assert.NotContains(t, tick.Words, "Not while foul")
			if !strings.Contains(tick.Words, "foul now") {
				assert.NotContains(t, tick.Words, "Look again", tick.Name)
			}
		}
	}
	page := ForCustomer(s.Result, s.say)
	assert.Contains(t, told(&page)["The heater"], s.at(s.Plan.Cut.At)+". ")
	assert.Contains(t, told(&page)["Service"], "on 2026-12-11, as agreed")
}

// On paper nothing is picked as on a screen: in no picture does a thing, a mark or a finding stand out but the arcs that are to be struck.
func TestNothingIsPickedOnPaper(t *testing.T) {
	s := paperOf(t, vehicles.Demo())
	arcs := 0
	for i, section := range contents {
		for _, picture := range each[Picture](section(s)) {
			for _, it := range picture.Scene.Items {
				if it.Selected {
					assert.Equal(t, [2]any{scene.Mark, scene.Stroke}, [2]any{it.Role, it.Primitive}, "section %d: %s", i, it.Label)
					arcs++
				}
			}
		}
	}
	assert.Positive(t, arcs)
}

// Whoever has the sheet alone reads how the place stands, in the head of each page and over the lines for names, in every sample job, and of a cut that is
// nowhere that it has no place: whatever else is in the job.
func TestHowThePlaceStandsIsSaidWhereItIsSigned(t *testing.T) {
	cases(t, func(name string, s *source, _ *expected) {
		want := "the place is " + s.Verdict.String()
		assert.Equal(t, want, headOf(s.Result, s.say).Standing, name)
		assert.Contains(t, signedUnder(s), "When this was printed "+want+". ", name)
	})
	job := vehicles.Demo()
	job.Cut = nil
	s := paperOf(t, job)
	assert.Equal(t, rules.CutHasNoPlace, headOf(s.Result, s.say).Standing)
	assert.Contains(t, signedUnder(s), "When this was printed "+rules.CutHasNoPlace+". ")
	assert.NotContains(t, signedUnder(s), "Made otherwise", "nothing is planned")
}

// Notes are printed as they were written, line for line, and a job without any has no such section.
func TestNotesAreOnPaper(t *testing.T) {
	job := vehicles.Demo()
	job.Notes = "first line\nsecond line"
	assert.Equal(t, []Text{{Words: "first line\nsecond line"}}, each[Text](paperOf(t, job).notes()))
	job.Notes = ""
	assert.Empty(t, paperOf(t, job).notes().Parts)
}
