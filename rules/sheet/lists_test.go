package sheet

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"bench.example/undermark/rules"
	"bench.example/undermark/rules/cutlist"
	"bench.example/undermark/rules/parts"
	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/rules/work"
)

// What is true of the lists on the paper of any job: each says what its own room says, all of it and once.
func TestListsOnPaperSayWhatTheirRoomsSay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, faults := rules.Judge(anyJob(t), rules.Builtin())
		if len(faults) > 0 {
			t.Skip(faults[0].Text)
		}
		s := &source{&r, plainWords()}
		cautionsAreThoseThatApply(t, s)
		stepsAreThoseOfTheWork(t, s)
		partsAddUp(t, s)
		sizesAreSaidOnce(t, s)
		whyIsSaid(t, s)
		piecesAreThoseOfTheCutList(t, s)
	})
}

// cautionsAreThoseThatApply: each with all its words and a box that nobody has ticked, those of one occasion together.
func cautionsAreThoseThatApply(t *rapid.T, s *source) {
	var want, got []string
	for _, c := range rules.Cautions() {
		if c.AppliesTo(s.Result) {
			want = append(want, c.About+": "+c.Say)
		}
	}
	for _, ticks := range each[Ticks](s.cautions()) {
		for _, tick := range ticks {
			if got = append(got, tick.Name+": "+tick.Words); tick.Done {
				t.Fatalf("%q is ticked on a fresh sheet", tick.Name)
			}
		}
	}
	slices.Sort(want)
	slices.Sort(got)
	if !slices.Equal(want, got) {
		t.Fatalf("cautions that apply: %q\non paper: %q", want, got)
	}
	titled := each[Titled](s.cautions())
	if len(titled) == 0 || titled[0].Title != "Every time" {
		t.Fatalf("what holds every time does not come first")
	}
}

// stepsAreThoseOfTheWork: a box for each step in its order, with what it is done to and what bars it.
func stepsAreThoseOfTheWork(t *rapid.T, s *source) {
	list := work.Of(s.Result)
	var ticks []Tick
	for _, part := range each[Ticks](s.steps()) {
		ticks = append(ticks, part...)
	}
	if len(ticks) != len(list) {
		t.Fatalf("%d boxes for %d steps", len(ticks), len(list))
	}
	for i, tick := range ticks {
		step := &list[i]
		asks := 1 // when
		if step.Measures() {
			asks++
		}
		if step.Dated {
			asks++
		}
		switch {
		case tick.Name != step.Name() || !strings.Contains(tick.Words, step.Do) || !strings.Contains(tick.Words, step.Of):
			t.Fatalf("%s on paper: %q %q", step.ID, tick.Name, tick.Words)
		case step.Foul != "" && step.Known == "" && !strings.Contains(tick.Words, "Not while foul: "+step.Foul):
			t.Fatalf("%s is foul, and paper does not bar it: %q", step.ID, tick.Words)
		case step.Foul == "" && strings.Contains(tick.Words, "Not while"):
			t.Fatalf("%s is barred: %q", step.ID, tick.Words)
		case step.Caution != "" && !strings.Contains(tick.Words, "Caution: "+step.Caution+"."):
			t.Fatalf("%s without its caution: %q", step.ID, tick.Words)
		case len(tick.Answers) != asks:
			t.Fatalf("%s asks %v", step.ID, tick.Answers)
		}
	}
	if at := each[Named](s.steps())[0][0][1]; !strings.HasPrefix(at, strings.Join(work.Tools(s.Result), "; ")) {
		t.Fatalf("at hand: %q", at)
	}
}

// partsAddUp: what is wanted less what the kit holds is what is bought, each part of the list once, under what it is for.
func partsAddUp(t *rapid.T, s *source) {
	table, list := tableOf(s.toOrder(), "to buy"), parts.Of(s.Result, cutlist.Usual())
	i, under := 0, ""
	for _, row := range table.Rows {
		if len(row.Cells) == 1 {
			under = strings.TrimPrefix(row.Cells[0], "For the ")
			continue
		}
		want := list.Rows[i]
		i++
		if row.Cells[0] != want.Of || row.Cells[1] != want.Size || row.Cells[5] != want.Unit || under != want.For {
			t.Fatalf("%q under %q is not %+v", row.Cells, under, want)
		}
		wanted, err := strconv.ParseFloat(row.Cells[2], 64)
		if (err == nil) != want.Count.Set {
			t.Fatalf("%q: reckoned is %v", row.Cells, want.Count)
		}
		if err != nil {
			if row.Cells[4] != "" {
				t.Fatalf("%q: nobody has reckoned how many are bought", row.Cells)
			}
			continue
		}
		kit, _ := strconv.ParseFloat("0"+row.Cells[3], 64)
		if buy, err := strconv.ParseFloat(row.Cells[4], 64); err != nil || buy != max(0, wanted-kit) {
			t.Fatalf("%q does not add up", row.Cells)
		}
	}
	if i != len(list.Rows) {
		t.Fatalf("%d of %d parts are on paper", i, len(list.Rows))
	}
	if texts := each[Text](s.toOrder()); len(texts) > 0 {
		for _, absent := range list.Absent {
			if !strings.Contains(texts[len(texts)-1].Words, absent) {
				t.Fatalf("%q is not said", absent)
			}
		}
	}
}

// sizesAreSaidOnce: each size that is known in the table with where it is from, each other one below it with what it lacks.
func sizesAreSaidOnce(t *rapid.T, s *source) {
	section := s.sized()
	rows := map[string][]string{}
	title := ""
	for _, row := range tableOf(section, "size").Rows {
		if len(row.Cells) == 1 {
			title = row.Cells[0]
		} else {
			rows[title+", "+row.Cells[0]] = row.Cells
		}
	}
	lacking := strings.Join(slices.Concat(each[List](section)...), "\n")
	var legend string
	for _, titled := range each[Titled](section) {
		if titled.Title == "By: where it is from" {
			legend = each[Text](Section{Parts: []Part{titled}})[0].Words
		}
	}
	known := 0
	for _, subject := range sizing.Of(s.Result) {
		for _, r := range subject.Rows {
			name := subject.Title + ", " + r.Label
			cells, there := rows[name]
			if there != (len(r.Lacks) == 0) || there == strings.Contains(lacking, name+": ") {
				t.Fatalf("%s: in the table %v, lacking is %q", name, there, r.Lacks)
			}
			if !there {
				continue
			}
			if known++; r.Instructions != strings.Contains(cells[2], before) {
				t.Fatalf("%s: whose word goes before is not marked: %q", name, cells)
			}
			asFrom(t, name, cells[3], r.Source.String(), legend)
		}
	}
	if known != len(rows) {
		t.Fatalf("%d sizes are known, %d on paper", known, len(rows))
	}
}

// asFrom holds the letters of a row to the sources that they stand for.
func asFrom(t *rapid.T, name, letters, source, legend string) {
	if source == "" {
		return
	}
	of := strings.Split(source, "; ")
	each := strings.Fields(strings.ReplaceAll(letters, "\u00a0", " "))
	if len(each) != len(of) {
		t.Fatalf("%s: %q for %q", name, letters, source)
	}
	for i, l := range each {
		if !strings.Contains("; "+legend, "; "+l+"\u00a0= "+of[i]) {
			t.Fatalf("%s: %q is not %q in %q", name, l, of[i], legend)
		}
	}
}

// whyIsSaid: each finding that is not clear has its reason, in its row or under it, and what can kill is marked.
func whyIsSaid(t *rapid.T, s *source) {
	open := tableOf(s.checks(), "verdict")
	for _, f := range s.Findings {
		if f.Verdict == rules.Clear {
			continue
		}
		if !slices.ContainsFunc(open.Rows, func(row Row) bool {
			said := append(slices.Clone(row.Cells[5:]), row.Under)
			return row.Cells[0] == f.Verdict.String() && strings.TrimPrefix(row.Cells[1], deadly) == f.About() &&
				(f.Weight == rules.Kills) == strings.HasPrefix(row.Cells[1], deadly) && slices.Contains(said, f.Why)
		}) {
			t.Fatalf("%s is %s, and why is not said: %q", f.About(), f.Verdict, f.Why)
		}
	}
}

// piecesAreThoseOfTheCutList: as many, as long, and what they are cut to is what lies along their middles with 5 mm at each end and 25 mm a joint.
func piecesAreThoseOfTheCutList(t *rapid.T, s *source) {
	rows, list := tableOf(s.cuts(), "piece").Rows, cutlist.Of(s.Result, cutlist.Usual())
	if len(rows) != len(list.Pieces) {
		t.Fatalf("%d of %d pieces are on paper", len(rows), len(list.Pieces))
	}
	for i, row := range rows {
		cut, _ := strconv.ParseFloat(row.Cells[3], 64)
		middle, _ := strconv.ParseFloat(row.Cells[4], 64)
		most := 2*25 + 2*5.0
		if p := list.Pieces[i]; row.Cells[0] != string(p.Of) || row.Cells[2] != p.From+" and "+p.To || cut-middle < 10-0.11 || cut-middle > most+0.11 {
			t.Fatalf("%q on paper, %+v", row.Cells, p)
		}
	}
}

// What stands behind a size: what is to be put right, what is said of it, why it is asked, what was taken in place of what nobody has said, and whether the
// instructions have it; what it has not is left out.
func TestWhatStandsBehindASize(t *testing.T) {
	assert.Empty(t, reckoned(sizing.Row{}))
	assert.Equal(t, "Put right: too thin. Said so. Because. Taken: 230 W/m2; 3 h. "+before, reckoned(sizing.Row{
		Amiss: "too thin", Text: "said so", Why: "Because.", Taken: []string{"230 W/m2", "3 h"}, Instructions: true,
	}))
	assert.Equal(t, "Because.", reckoned(sizing.Row{Why: "Because."}))
}
