package sheet

import (
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/template"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/vehicles"
)

// tables says what was made otherwise as the job file's tables have it.
func tables(job *vehicles.Job) (all []string) {
	for _, table := range job.BuiltOtherwise().Tables() {
		all = append(all, table.String())
	}
	return all
}

// builtPaper is what sections are made of for a job that was built, in words that tell deviations by their figures.
func builtPaper(t require.TestingT, job vehicles.Job) *source {
	s := paperOf(t, job)
	s.say.Otherwise = tables
	s.say.Deviation = func(d rules.Deviation) [5]string {
		by := ""
		if v, ok := d.By(); ok {
			by = survey.Figure(v)
		}
		return [5]string{d.Table.String() + " " + d.What.String(), d.Planned.Text(), d.Built.Text(), by, ""}
	}
	return s
}

// sawnAt is the sample with its cut planned at one place and sawn at another.
func sawnAt(planned, built [2]float64) vehicles.Job {
	job := vehicles.Demo()
	plan, hole := *job.Cut, *job.Cut
	plan.At, hole.At = planned, built
	return job.WithCut(plan).WithBuilt(vehicles.Built{Cut: &hole})
}

// What came out otherwise stands beside what was planned: the figures, by how much, and each margin that is another now; what came out the same is left
// out, and what is there no more says so.
func TestWhatWasBuiltStandsBesideWhatWasPlanned(t *testing.T) {
	s := builtPaper(t, sawnAt([2]float64{1405, 195}, [2]float64{1395, 198}))
	section := s.built()
	made := tableOf(section, "made")
	require.Len(t, made.Rows, 2)
	assert.Equal(t, []string{"cut along", "1405", "1395", "-10", ""}, made.Rows[0].Cells[1:])
	assert.Equal(t, []string{"cut across", "195", "198", "3", ""}, made.Rows[1].Cells[1:])
	built, faults := rules.AsBuilt(s.Result, s.Book)
	require.Empty(t, faults)
	words := ""
	for _, text := range each[Text](section) {
		words += text.Words + " "
	}
	assert.Contains(t, words, "Made otherwise: cut. ")
	assert.Contains(t, words, "As built the job is "+built.Verdict.String()+", as planned "+s.Verdict.String()+".")
	margins := tableOf(section, "as planned")
	require.NotEmpty(t, margins.Rows)
	now, then := marginsOf(&built), marginsOf(s.Result)
	for _, row := range margins.Rows {
		of := strings.TrimPrefix(row.Cells[1], deadly)
		if row.Cells[0] == "not there" {
			assert.NotContains(t, now, of)
			assert.Empty(t, row.Cells[2])
			continue
		}
		assert.Contains(t, now[of], row.Cells[2], of)
		if row.Cells[3] != "" {
			assert.Contains(t, then[of], row.Cells[3], of)
			assert.NotEqual(t, row.Cells[2]+row.Cells[0], row.Cells[3], "%s came out the same", of)
		} else {
			assert.NotContains(t, then, of)
		}
	}
	shown := map[string]bool{}
	for _, row := range margins.Rows {
		shown[strings.TrimPrefix(row.Cells[1], deadly)] = true
	}
	for of, is := range now {
		if was, known := then[of]; known && len(is) == 1 && len(was) == 1 {
			assert.Equal(t, is[0] != was[0], shown[of], "%s: %s, planned %s", of, is, was)
		}
	}
	assert.Empty(t, each[Table](paperOf(t, vehicles.Demo()).built()), "nothing was made otherwise")
}

// marginsOf are the margins of a judged job by what each is of, as a sheet writes them.
func marginsOf(r *rules.Result) map[string][]string {
	all := map[string][]string{}
	for _, f := range r.Findings {
		all[f.About()] = append(all[f.About()], plainWords().Margin(f))
	}
	return all
}

// A run that is shorter as built than as planned: what was said of the leg that is gone is not there any more, by its name.
func TestWhatIsNotThereAnyMoreIsNamed(t *testing.T) {
	job := vehicles.Demo()
	run := *job.Intake
	run.Path, run.Clips = run.Path[:1:1], []float64{100}
	s := builtPaper(t, job.WithBuilt(vehicles.Built{Intake: &run}))
	gone := 0
	then := marginsOf(s.Result)
	for _, row := range tableOf(s.built(), "as planned").Rows {
		if row.Cells[0] == "not there" {
			gone++
			of := strings.TrimPrefix(row.Cells[1], deadly)
			assert.Contains(t, then[of], row.Cells[3], of)
		}
	}
	assert.Positive(t, gone)
}

// The customer reads where the heater is, not where it was planned, and hears of what came out foul.
func TestTheCustomersPageIsOfWhatWasBuilt(t *testing.T) {
	clear, foul := [2]float64{1405, 195}, [2]float64{1255, 195}
	for _, c := range []struct{ planned, built [2]float64 }{{clear, foul}, {foul, clear}} {
		s := builtPaper(t, sawnAt(c.planned, c.built))
		page := ForCustomer(s.Result, s.say)
		assert.Contains(t, told(&page)["The heater"], paperOf(t, vehicles.Demo()).at(judged(t, s.Job.AsBuilt()).Plan.Cut.At))
		built := judged(t, s.Job.AsBuilt())
		assert.Equal(t, c.built == foul, strings.Contains(each[Text](page.Sections[0])[0].Words, "where "), built.Verdict.String())
	}
}

// finished is the job of the sample files whose work is done, on paper.
func finished(t *testing.T) *source {
	data, err := os.ReadFile("../../testdata/work/finished.toml")
	require.NoError(t, err)
	job, err := vehicles.ParseJob(data, "finished.toml")
	require.NoError(t, err)
	return builtPaper(t, job)
}

// The whole way of a job that is finished: each step is ticked with its day and its value as the file has them, nothing is barred and nothing looked at again,
// the sign-off asks no more how it was made, and the customer is told that all is well, with the days that were agreed.
func TestAFinishedJobOnPaper(t *testing.T) {
	s := finished(t)
	list := work.Of(s.Result)
	ticked := map[string]Tick{}
	for _, ticks := range each[Ticks](s.steps()) {
		for _, tick := range ticks {
			assert.True(t, tick.Done, tick.Name)
			assert.NotContains(t, tick.Words, "Look again")
			assert.NotContains(t, tick.Words, "Not while foul")
			ticked[tick.Name] = tick
		}
	}
	require.Len(t, ticked, len(list))
	for i := range list {
		step := &list[i]
		answers := map[string]string{}
		for _, a := range ticked[step.Name()].Answers {
			answers[a.Ask] = a.Value
		}
		assert.Equal(t, step.Done.When(), answers["when"], step.ID)
		if step.Measures() {
			v, err := strconv.ParseFloat(answers[step.Unit], 64)
			require.NoError(t, err, step.ID)
			assert.InDelta(t, step.Done.Value.Value, v, 0, step.ID)
		}
		if step.Dated {
			assert.Equal(t, step.Done.Due, answers["agreed for"])
		}
	}
	assert.Equal(t, "2026-12-11", ticked["retorque"].Answers[len(ticked["retorque"].Answers)-1].Value)
	assert.NotContains(t, signedUnder(s), "Made otherwise than planned", "that is told above")
	assert.Contains(t, signedUnder(builtPaper(t, vehicles.Demo())), "the hole's centre is planned at 1263.9, left 693, right 1082:")
	page := ForCustomer(s.Result, s.say)
	assert.Contains(t, each[Text](page.Sections[0])[0].Words, "keeps what is asked of it")
	assert.Contains(t, told(&page)["First"], "on 2026-12-11, as agreed")
	sheet := Of(s.Result, s.say)
	for _, paper := range template.Papers {
		f := sheet.set(paper)
		assert.False(t, f.lastAlone())
		ticks := 0
		for _, page := range f.pages {
			p := printedOf(page)
			for _, line := range p.lines {
				if len(line) == 3 && line[1].Y > line[0].Y && line[2].Y < line[0].Y && line[2].X > line[1].X {
					ticks++
				}
			}
		}
		assert.Equal(t, len(list), ticks, "as many boxes are ticked as steps are done")
	}
}

// What is recorded of steps that the job has not, or no longer, is on paper under a title of its own.
func TestRecordsOfNoStepAreOnPaper(t *testing.T) {
	job := vehicles.Demo().WithDone(vehicles.Done{Step: "seat-wait", At: "2026-11-27", Value: vehicles.Some(12), Note: "one seat", Photos: vehicles.List[string]{"seat.jpg"}})
	titled := each[Titled](paperOf(t, job).steps())
	last := titled[len(titled)-1]
	assert.Equal(t, "Recorded of steps that this job has not", last.Title)
	tick := last.Part.(Ticks)[0]
	assert.Equal(t, Tick{Name: "seat wait", Words: "Note: one seat. Photos: seat.jpg.", Done: true, Answers: []Answer{{"when", "2026-11-27"}, {"min", "12"}}}, tick)
	for _, one := range each[Titled](paperOf(t, vehicles.Demo()).steps()) {
		assert.NotEqual(t, last.Title, one.Title)
	}
}
