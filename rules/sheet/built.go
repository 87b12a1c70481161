package sheet

import (
	"strings"

	"bench.example/undermark/rules"
)

// asBuilt is the job judged as it was built; ok is false where nothing was made otherwise than planned, or where that can't be judged.
func asBuilt(r *rules.Result) (built rules.Result, ok bool) {
	if len(r.Job.BuiltOtherwise().Tables()) == 0 {
		return built, false
	}
	built, faults := rules.AsBuilt(r, r.Book)
	return built, len(faults) == 0
}

// built is what was made otherwise than planned, with the margins that are others now: planned beside built.
func (s *source) built() Section {
	section := Section{Heading: "As built: what came out otherwise than planned"}
	otherwise := s.say.Otherwise(&s.Job)
	if len(otherwise) == 0 {
		return section
	}
	section.Parts = []Part{Text{Words: "Made otherwise: " + strings.Join(otherwise, ", ") + ".", Bold: true}}
	built, ok := asBuilt(s.Result)
	if !ok {
		section.Parts = append(section.Parts, Text{Words: "It can't be judged as it stands in the job: look at Work."})
		return section
	}
	section.Parts = append(section.Parts, Text{Words: "As built the job is " + built.Verdict.String() + ", as planned " + s.Verdict.String() + "."})
	section.Parts = append(section.Parts, s.deviations(&built)...)
	t := Table{Cols: []Col{{Head: "as built"}, {Head: "of; " + deadly + "can kill"}, {Head: "margin", Figure: true}, {Head: "as planned", Figure: true}}}
	for _, c := range rules.Compare(s.Result, &built) {
		if c.Same() {
			continue
		}
		t.Rows = append(t.Rows, s.compared(c))
	}
	section.Parts = append(section.Parts, t)
	return section
}

// deviations are what was planned, what was built and by how much that is more, each with its worst finding as built.
func (s *source) deviations(built *rules.Result) []Part {
	list := rules.Deviations(s.Result, built)
	t := Table{Cols: []Col{{Head: "as built"}, {Head: "made"}, {Head: "planned", Figure: true}, {Head: "built", Figure: true}, {Head: "by", Figure: true}, {Head: "± 95 %", Figure: true}}}
	for _, d := range list {
		cells := s.say.Deviation(d)
		t.Rows = append(t.Rows, Row{Cells: append([]string{d.Verdict.String()}, cells[:]...), Strong: true})
	}
	parts := []Part{t}
	if note := s.say.Unexplained(list); note != "" {
		parts = append(parts, Text{Words: note, Bold: true})
	}
	return parts
}

// compared is a row of what a rule says as built and as planned.
func (s *source) compared(c rules.Compared) Row {
	verdict, of, is, was := "not there", c.Built, "", ""
	if of == nil {
		of = c.Planned
	} else {
		verdict, is = of.Verdict.String(), s.say.Margin(*of)
	}
	if c.Planned != nil {
		was = s.say.Margin(*c.Planned)
	}
	return Row{Cells: []string{verdict, about(of), is, was}, Strong: true}
}
