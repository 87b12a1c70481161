package sheet

import (
	"fmt"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/template"
)

// Head is what stands over each page. Each half of it says what the page is of: folded in four, bottom up behind and then in half, a
// sheet has either half outside.
type Head struct {
	Of       string // what is printed
	Job, Van string
	Date     string
	Standing string // how the job stands, in words that stand alone; "" where that is not said
}

// jobSheet is what a job's own sheet is called.
const jobSheet = "Job sheet"

func headOf(r *rules.Result, say Words) Head {
	return Head{Of: jobSheet, Job: r.Job.Ref, Van: r.Job.Vehicle, Date: r.Job.Date, Standing: standing(r, say)}
}

// put writes the head on page n of all, and marks where it is folded.
func (h *Head) put(p *Page, paper template.Paper, n, all int) {
	f := flow{paper: paper, pages: []*Page{p}}
	half := (paper.Wide - 2*aside - gutter) / 2
	middle := paper.Wide/2 + gutter/2
	strong, plain := vector.Text{Size: large, Bold: true}, vector.Text{Size: small}
	at := func(x, y, room float64, style vector.Text, words string) {
		style.Words = cut(words, style, room)
		f.write(x, y, style)
	}
	at(aside, 15, half, strong, h.Job)
	left, right := survey.Joined(", ", h.Of, h.Van), survey.Joined(", ", h.Date, h.Standing)
	if h.Standing == "" || measured(plain, left) > half { // then the van has a half to itself: its name may be long
		left, right = h.Van, survey.Joined(", ", h.Of, h.Date, h.Standing)
	}
	at(aside, 19, half, plain, left)

	number := vector.Text{Words: fmt.Sprintf("page %d of %d", n, all), Size: small, Align: vector.ByEnd}
	f.write(paper.Wide-aside, 15, number)
	at(middle, 15, half-vector.WidthOf(number)-3, strong, h.Job)
	at(middle, 19, half, plain, right)
	f.line(thin, geometry.Point{X: aside, Y: 21}, geometry.Point{X: paper.Wide - aside, Y: 21})
	f.folds()
}

// standing says how the place of the cut stands: one that is nowhere stands no way, whatever else is in the job.
func standing(r *rules.Result, say Words) string {
	if r.Job.Cut == nil {
		return rules.CutHasNoPlace
	}
	return "the place is " + say.Standing(r)
}

// folds draws a short line at the middle of each edge, where nothing else stands.
func (f *flow) folds() {
	const from, to = 8, 11 // mm from the edge
	w, h := f.paper.Wide, f.paper.High
	for _, ends := range [][2]geometry.Point{
		{{X: w / 2, Y: from}, {X: w / 2, Y: to}}, {{X: w / 2, Y: h - from}, {X: w / 2, Y: h - to}},
		{{X: from, Y: h / 2}, {X: to, Y: h / 2}}, {{X: w - from, Y: h / 2}, {X: w - to, Y: h / 2}},
	} {
		f.line(hair, ends[0], ends[1])
	}
}
