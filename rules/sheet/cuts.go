package sheet

import (
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules/cutlist"
)

// cuts are what the runs are cut to. Without runs there is nothing to cut.
func (s *source) cuts() Section {
	section := Section{Heading: "Cut list: what the runs are cut to"}
	l := cutlist.Of(s.Result, cutlist.Usual())
	if len(l.Pieces) == 0 {
		return section
	}
	section.Parts = []Part{Text{Words: "What is allowed for: " + l.Source + ". What they are cut out of, joined and hung with stands with the parts.", Size: small}, s.pieces(&l)}
	return section
}

func (s *source) pieces(l *cutlist.List) Table {
	t := Table{Size: small, Cols: []Col{
		{Head: "piece"}, {Head: "across", Figure: true}, {Head: "between"}, {Head: "cut to", Figure: true}, {Head: "along its middle", Figure: true},
		{Head: "straight lengths and bends, in order"},
	}}
	for _, p := range l.Pieces {
		bits := s.say.Bits(p)
		if remark := p.Remark(); remark != "" {
			bits += "; " + remark
		}
		t.Rows = append(t.Rows, Row{Cells: []string{
			string(p.Of), survey.Figure(p.Across), p.From + " and " + p.To, survey.Figure(p.Cut), survey.Figure(p.Developed), bits,
		}, Strong: true})
	}
	return t
}
