package sheet

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// settled are rules whose values say what is looked at, or what readings can be relied on: changing one changes findings of others.
var settled = []string{"cut.reach", "pilot.place", "pilot.direct", "ties.fit"}

// openOf are the rows of findings that are not clear, of rules that are asked for, without the letters of sources: those count in the order in which sources are met.
func openOf(s *source, of func(id string) bool) (rows []string) {
	for _, f := range rules.ForPeople(s.Findings) {
		if !of(f.Rule.ID) {
			continue
		}
		if f.Verdict == rules.Clear {
			cells := s.clear([]*rules.Finding{f}, new(sources)).Rows[0].Cells
			rows = append(rows, "clear "+strings.Join(cells[:4], " | "))
			continue
		}
		row := s.open([]*rules.Finding{f}, new(sources)).Rows[0]
		rows = append(rows, strings.Join(append(slices.Clone(row.Cells[:6]), row.Cells[7], row.Under), " | "))
	}
	slices.Sort(rows)
	return rows
}

// figuresOf are all figures on paper that no rule enters: marks, survey, runs and what they are cut to.
func figuresOf(s *source) (rows [][]string) {
	parts := []Part{s.marks(rules.Marks(*s.Result)), s.obstructions(), s.openings(), s.fittings(), s.ties()}
	for _, of := range vehicles.RunKinds {
		parts = append(parts, s.points(s.Plan.Run(of)), s.hanging(s.Job.Run(of), s.Plan.Run(of)))
	}
	for _, t := range each[Table](Section{Parts: append(parts, s.cuts().Parts...)}) {
		for _, row := range t.Rows {
			rows = append(rows, append(slices.Clone(row.Cells), row.Under))
		}
	}
	return rows
}

// Whoever changes one figure of the book changes what that rule says, and nothing else on paper: where things are, what is marked, how runs go, what is cut
// and ordered, and what every other rule says stay as they were.
func TestAChangedRuleChangesItsOwnRowsAlone(t *testing.T) {
	was := paperOf(t, vehicles.Demo())
	var ids []string
	for _, f := range was.Findings {
		if id := f.Rule.ID; f.Required.Set && !slices.Contains(ids, id) && !slices.Contains(settled, id) {
			ids = append(ids, id)
		}
	}
	require.Greater(t, len(ids), 15)
	figures, ordered := figuresOf(was), tableOf(was.toOrder(), "to buy")
	require.Greater(t, len(figures), 60)
	for _, id := range ids {
		others := func(other string) bool { return other != id }
		before := openOf(was, others)
		for _, asks := range []float64{0, 33.3} {
			is := paperOf(t, vehicles.Demo().WithRule(id, asks))
			assert.Equal(t, before, openOf(is, others), "%s = %g", id, asks)
			assert.Equal(t, figures, figuresOf(is), "%s = %g", id, asks)
			if id != "stack.turret" { // that one says which collar is ordered
				assert.Equal(t, ordered, tableOf(is.toOrder(), "to buy"), "%s = %g", id, asks)
			}
			for _, f := range is.Findings {
				if f.Rule.ID == id {
					assert.True(t, f.Limit.Book == rules.ThisJob || f.Limit.Source == rules.ThisJob, "%s is asked by %q, %q", f.About(), f.Limit.Book, f.Limit.Source)
				}
			}
		}
	}
}

// What the job asks itself is said to be its own, beside the figure that it asks, and what others ask keeps its source.
func TestWhoAsksIsSaidBesideWhatIsAsked(t *testing.T) {
	s := paperOf(t, vehicles.Demo().WithRule("exhaust.fall", 35))
	section := s.checks()
	var legend string
	for _, titled := range each[Titled](section) {
		if strings.HasPrefix(titled.Title, "By: ") {
			legend = each[Text](Section{Parts: []Part{titled}})[0].Words
		}
	}
	open := tableOf(section, "verdict")
	fall := slices.IndexFunc(open.Rows, func(row Row) bool { return row.Cells[4] == "asked 35" })
	require.GreaterOrEqual(t, fall, 0, "35 mm/m is more than the sample falls")
	assert.Contains(t, "; "+legend, "; "+open.Rows[fall].Cells[6]+"\u00a0= "+rules.ThisJob)
	letters := map[string]bool{}
	for _, row := range open.Rows {
		letters[row.Cells[6]] = true
		assert.Contains(t, "; "+legend, "; "+row.Cells[6]+"\u00a0= ", row.Cells[1])
	}
	assert.Greater(t, len(letters), 1)
	tilt := slices.IndexFunc(each[Ticks](s.steps()), func(list Ticks) bool {
		return slices.ContainsFunc(list, func(tick Tick) bool { return strings.Contains(tick.Words, "35 mm/m at least") })
	})
	assert.GreaterOrEqual(t, tilt, 0, "whoever lays the level on is asked the same")
}

// A reason that is short stands in its row, a long one under it, and one that says the margin takes the margin's place.
func TestWhereAReasonStands(t *testing.T) {
	s := paperOf(t, vehicles.Demo())
	findings := rules.ForPeople(s.Findings)
	f := *findings[0]
	row := func(why string) Row {
		f.Why = why
		return s.open([]*rules.Finding{&f}, new(sources)).Rows[0]
	}
	long := strings.Repeat("a long reason ", 5)
	require.NotEqual(t, rules.Clear, f.Verdict)
	assert.Equal(t, [2]string{"short", ""}, [2]string{row("short").Cells[7], row("short").Under})
	assert.Equal(t, [2]string{"", long}, [2]string{row(long).Cells[7], row(long).Under})
	margins := 0
	for _, f := range findings {
		if f.Verdict == rules.Clear || !f.OnlyMargin() {
			continue
		}
		margins++
		only := s.open([]*rules.Finding{f}, new(sources)).Rows[0]
		assert.Equal(t, [3]string{f.Why, "", ""}, [3]string{only.Cells[5], only.Cells[7], only.Under}, f.About())
	}
	assert.Positive(t, margins)
}
