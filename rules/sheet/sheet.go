// Package sheet sets a judged job on paper: the pages that are worked from under the van and on its floor, and the page that the
// customer gets. A sheet is sections in the order in which the work goes; a section is a heading over parts, and a part lays itself:
// text, a table, a picture, boxes to tick, lines to write on. Adding a section is a line in contents.
//
// Places are mm from a page's top left, X to the right and Y down. All is black. Text of others is made fit to be seen and printed where
// it is measured, and stays in its box.
package sheet

import (
	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/template"
)

// Section is a heading with what stands under it. One without parts is not printed.
type Section struct {
	Heading string
	Parts   []Part
	Fresh   bool // it begins a page
}

// Part is something that lays itself under what is there, in the column it is given, and goes on on the next page where it must.
type Part interface{ lay(f *flow) }

// Page is one page, ready to be drawn.
type Page struct{ marks []func(b vector.Board) }

// Draw draws the page.
func (p *Page) Draw(b vector.Board) {
	for _, mark := range p.marks {
		mark(b)
	}
}

// Sheet is what is printed of one job.
type Sheet struct {
	Head     Head
	Sections []Section
	carried  bool // what is Carried goes on to the next page
	many     bool // its pages take more than two figures each
}

// Of returns the job sheet of a judged job.
func Of(r *rules.Result, say Words) Sheet {
	s := Sheet{Head: headOf(r, say)}
	from := source{r, say}
	for _, section := range contents {
		s.Sections = append(s.Sections, section(&from))
	}
	return s
}

// source is what sections are made of.
type source struct {
	*rules.Result
	say Words
}

// Pages lays the sheet on pages of a paper, each with its head.
func (s *Sheet) Pages(paper template.Paper) []*Page {
	f := s.set(paper)
	for i, p := range f.pages {
		s.Head.put(p, paper, i+1, len(f.pages))
	}
	return f.pages
}

// set has the sections laid so that the last one, which is signed, does not stand alone, and that the numbers of all pages have their room.
func (s *Sheet) set(paper template.Paper) *flow {
	f := s.laid(paper)
	again := Sheet{Head: s.Head, Sections: s.Sections, carried: f.lastAlone(), many: len(f.pages) >= 99} // one more may come
	if !again.carried && !again.many {
		return f
	}
	return again.laid(paper)
}

// laid has the sections laid on pages of a paper.
func (s *Sheet) laid(paper template.Paper) *flow {
	f := newFlow(paper)
	f.sheet = s
	for _, section := range s.Sections {
		f.section(section)
	}
	return f
}

// lastAlone tells whether nothing but the last section stands on the last page: whoever signs that signs a page without a word of the work.
func (f *flow) lastAlone() bool {
	last := len(f.begun) - 1
	return last > 0 && f.begun[last].page == len(f.pages) && f.begun[last-1].ends < len(f.pages)
}

// PDF returns the sheet as a file.
func (s *Sheet) PDF(paper template.Paper) ([]byte, error) {
	file := vector.NewPDF(printable(s.Head.Job))
	for _, p := range s.Pages(paper) {
		file.Page(paper.Wide, paper.High)
		p.Draw(file)
	}
	return file.Bytes()
}
