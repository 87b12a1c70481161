package sheet

import (
	"strconv"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules/cutlist"
)

// cuts are what the runs are cut from and hung with. Without runs there is nothing to cut.
func (s *source) cuts() Section {
	section := Section{Heading: "Cut list: what the runs are cut from and hung with"}
	l := cutlist.Of(s.Result, cutlist.Usual())
	if len(l.Pieces) == 0 && len(l.Parts) == 0 {
		return section
	}
	section.Parts = []Part{s.pieces(&l), stockAndParts(&l)}
	if len(l.Absent) > 0 {
		section.Parts = append(section.Parts, Text{Words: "Not counted:", Bold: true}, List(l.Absent))
	}
	section.Parts = append(section.Parts, Text{Words: "What is allowed for and what the usual kit holds: " + l.Source + ". Count yours.", Size: small})
	return section
}

func (s *source) pieces(l *cutlist.List) Table {
	t := Table{Size: small, Cols: []Col{
		{Head: "piece"}, {Head: "across", Figure: true}, {Head: "between"}, {Head: "cut to", Figure: true}, {Head: "along its middle", Figure: true},
		{Head: "straight lengths and bends, in order"},
	}}
	for _, p := range l.Pieces {
		t.Rows = append(t.Rows, Row{Cells: []string{
			p.Of, survey.Figure(p.Across), p.From + " and " + p.To, survey.Figure(p.Cut), survey.Figure(p.Developed), s.say.Bits(p),
		}, Strong: true})
	}
	return t
}

// stockAndParts are what is taken from the shelf.
func stockAndParts(l *cutlist.List) Table {
	t := Table{Size: small, Cols: []Col{{Head: "to have at hand"}, {Head: "wanted", Figure: true}, {Head: "usual kit holds", Figure: true}, {Head: "more wanted", Figure: true}, {Head: ""}}}
	lacking := func(n int) string {
		if n == 0 {
			return ""
		}
		return strconv.Itoa(n)
	}
	for _, stock := range l.Stock {
		of := stock.Of + ", lengths of " + survey.Figure(stock.Length) + " mm"
		if stock.Needed > 0 {
			left := "left over "
			for i, v := range stock.Left {
				if i > 0 {
					left += ", "
				}
				left += survey.Figure(v)
			}
			t.Rows = append(t.Rows, Row{Cells: []string{of, strconv.Itoa(stock.Needed), strconv.Itoa(stock.Holds), lacking(stock.Lacks()), left}})
		}
		for _, cut := range stock.TooLong {
			t.Rows = append(t.Rows, Row{Cells: []string{stock.Of + ", " + survey.Figure(cut) + " mm in one piece", "1", "0", "1", "longer than the usual length"}})
		}
	}
	for _, p := range l.Parts {
		t.Rows = append(t.Rows, Row{Cells: []string{p.Of, strconv.Itoa(p.Count), strconv.Itoa(p.Holds), lacking(p.Lacks()), ""}})
	}
	return t
}
