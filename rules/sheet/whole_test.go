package sheet

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/template"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/vehicles"
)

// anyJob is the sample with another number of things, named so that each is found again, without some of what it has, and with whatever
// others write in its reference, its van and its notes.
func anyJob(t *rapid.T) vehicles.Job {
	job := vehicles.Demo()
	chance := func(what string) bool { return rapid.IntRange(0, 3).Draw(t, what) == 0 }
	at := func(what string, low, high int) survey.Reading {
		return survey.FromNumber(float64(rapid.IntRange(low, high).Draw(t, what)), false)
	}
	job.Ref, job.Vehicle = rapid.StringMatching(`[A-Z]{2}-[0-9]{1,12}`).Draw(t, "ref"), wordsOfOthers.Draw(t, "van")
	if chance("notes") {
		job.Notes = strings.Repeat(rapid.StringMatching(`[a-z ,.]{5,60}`).Draw(t, "note"), rapid.IntRange(1, 80).Draw(t, "times"))
	}
	for i := range rapid.IntRange(0, 40).Draw(t, "more things") {
		o := job.Obstructions[i%3]
		o.Name = fmt.Sprintf("thing%dq", i)
		o.Place = vehicles.Place{Shape: vehicles.Disc, Centre: vehicles.Pair{at("x", 100, 2600), at("y", -700, 700)}, Across: vehicles.Some(20)}
		job.Obstructions = job.Obstructions.Insert(len(job.Obstructions), o)
	}
	if chance("no openings") {
		job.Openings = nil
	}
	if chance("no fittings") {
		job.Fittings = nil
	}
	if chance("no ties") {
		job.Ties = nil
	}
	for _, k := range vehicles.RunKinds {
		if chance("no " + k.String()) {
			job = job.WithRun(k, nil)
		}
	}
	switch rapid.IntRange(0, 7).Draw(t, "without") {
	case 0:
		job.Heater = nil
	case 1:
		job.Cut = nil
	}
	return job
}

// anySheet is such a job's sheet on a paper, with the job as it was judged.
func anySheet(t *rapid.T) (r rules.Result, paper template.Paper, pages []printed) {
	job := anyJob(t)
	r, faults := rules.Judge(job, rules.Builtin())
	if len(faults) > 0 {
		t.Skip(faults[0].Text)
	}
	paper = template.Papers[rapid.SampledFrom([]string{"a4", "letter"}).Draw(t, "paper")]
	sheet := Of(&r, plainWords())
	for _, page := range sheet.Pages(paper) {
		pages = append(pages, printedOf(page))
	}
	return r, paper, pages
}

// What is true of the paper of any job.
func TestAnyJobOnPaper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, paper, pages := anySheet(t)
		for n := range pages {
			noPartLiesOverAnother(t, &pages[n], paper, n+1)
			hasItsHead(t, &r, &pages[n], paper, fmt.Sprintf("page %d of %d", n+1, len(pages)))
		}
		nothingIsLeftOut(t, &r, pages)
	})
}

// On no page does one part lie over another: no two lines of text, no text a picture, no two pictures; and nothing stands beside, over or
// under what a page is for.
func noPartLiesOverAnother(t *rapid.T, p *printed, paper template.Paper, n int) {
	const touch = 0.6 // mm by which the boxes of two lines may meet: letters leave their boxes' ends free
	for i, a := range p.boxes {
		words := p.texts[i].Words
		if a.Left < aside-touch || a.Left+a.Width > paper.Wide-aside+touch || a.Top < 7 || a.Top+a.Height > paper.High-bottom+touch {
			t.Fatalf("page %d: %q stands where nothing may, at %v", n, words, a)
		}
		for k, b := range p.boxes[:i] {
			if over(a, b) > touch {
				t.Fatalf("page %d: %q at %v lies over %q at %v", n, words, a, p.texts[k].Words, b)
			}
		}
		for _, b := range p.pictures {
			if over(a, b) > touch {
				t.Fatalf("page %d: %q at %v lies over a picture at %v", n, words, a, b)
			}
		}
	}
	for i, a := range p.pictures {
		for _, b := range p.pictures[:i] {
			if over(a, b) > touch {
				t.Fatalf("page %d: a picture at %v lies over another at %v", n, a, b)
			}
		}
	}
}

// Whatever is in a job is there by name: what was surveyed, what is marked, judged and done, and what to mind.
func nothingIsLeftOut(t *rapid.T, r *rules.Result, pages []printed) {
	var all strings.Builder
	for _, p := range pages {
		for _, text := range p.texts {
			all.WriteString(tight(text.Words))
		}
	}
	told := func(what, text string) {
		if !strings.Contains(all.String(), tight(printable(text))) {
			t.Fatalf("%s: %q is not there", what, text)
		}
	}
	for _, o := range r.Job.Obstructions {
		told("obstruction", o.Name)
	}
	for _, o := range r.Job.Openings {
		told("opening", o.Name)
	}
	for _, o := range r.Job.Fittings {
		told("fitting", o.Name)
	}
	for _, tie := range r.Job.Ties {
		told("matching point", tie.Name)
	}
	for _, m := range rules.Marks(*r).Marks {
		told("mark", m.Words)
	}
	for i := range r.Findings {
		if f := &r.Findings[i]; f.Verdict != rules.Clear {
			told("finding", f.About())
		}
	}
	for _, step := range work.Of(r) {
		told("step", step.Name())
	}
	for when := rules.EveryTime; when <= rules.FirstRun; when++ {
		for _, c := range rules.CautionsFor(when, r) {
			told("caution", c.About)
		}
	}
}

// Each page says on both halves of its head whose job it is, and which page of how many it is and how the place stands.
func hasItsHead(t *rapid.T, r *rules.Result, p *printed, paper template.Paper, number string) {
	var head strings.Builder
	left, right := false, false
	for i, text := range p.texts {
		if p.boxes[i].Top+p.boxes[i].Height < top {
			head.WriteString(tight(text.Words))
			left = left || text.Words == r.Job.Ref && p.boxes[i].Left < paper.Wide/2
			right = right || text.Words == r.Job.Ref && p.boxes[i].Left > paper.Wide/2
		}
	}
	stands := "the place is " + r.Verdict.String()
	if r.Job.Cut == nil {
		stands = rules.CutHasNoPlace
	}
	for _, words := range []string{number, stands} {
		if !strings.Contains(head.String(), tight(words)) {
			t.Fatalf("%s: %q is not in its head: %s", number, words, head.String())
		}
	}
	if !left || !right {
		t.Fatalf("%s: the job's reference is not on both halves", number)
	}
}

// The list of sections on the first page names the page where each heading is.
func TestSectionsBeginWhereTheFirstPageSays(t *testing.T) {
	r, faults := rules.Judge(vehicles.Demo(), rules.Builtin())
	require.Empty(t, faults)
	for _, paper := range template.Papers {
		sheet := Of(&r, plainWords())
		f := sheet.set(paper)
		require.Greater(t, len(f.begun), 5)
		for _, b := range f.begun {
			page := printedOf(f.pages[b.page-1])
			found := false
			for _, text := range page.texts {
				found = found || text.Bold && strings.HasPrefix(tight(b.heading), tight(text.Words)) && len(text.Words) > 3
			}
			require.True(t, found, "%q is on page %d", b.heading, b.page)
		}
	}
}

// Wherever a page ends, what is said under a row stands on the page of its row, and each page has the table's head over its rows once.
func TestWhatIsSaidUnderARowStaysWithIt(t *testing.T) {
	table := Table{Cols: []Col{{Head: "HEAD"}, {Head: "of"}}}
	for i := range 30 {
		table.Rows = append(table.Rows, Row{Cells: []string{fmt.Sprintf("row %dq", i), "a"}, Under: fmt.Sprintf("under %dq", i)})
	}
	for lines := range 60 {
		pages := laid(template.Papers["a4"], Section{Parts: []Part{Text{Words: strings.Repeat("line\n", lines)}, table}})
		seen := 0
		for n, p := range pages {
			all := said([]*board{p})
			rows := strings.Count(all, "row")
			for i := range table.Rows {
				row, under := strings.Contains(all, fmt.Sprintf("row%dq", i)), strings.Contains(all, fmt.Sprintf("under%dq", i))
				require.Equal(t, row, under, "%d lines, page %d, row %d", lines, n+1, i)
			}
			require.Equal(t, min(rows, 1), strings.Count(all, "HEAD"), "%d lines, page %d", lines, n+1)
			seen += rows
		}
		require.Equal(t, len(table.Rows), seen)
	}
}
