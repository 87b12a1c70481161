package sheet

import (
	"slices"
	"strings"

	"bench.example/undermark/rules"
)

// checks are all findings, as people read them, with who asks for it, and what no finding speaks of.
func (s *source) checks() Section {
	section := Section{Heading: "Checks: every clearance, and who asks for it", Fresh: true}
	t := Table{Cols: []Col{
		{Head: "verdict"}, {Head: "of; † can kill"}, {Head: "found", Figure: true}, {Head: spreadHead, Figure: true}, {Head: "asked for"},
		{Head: "margin", Figure: true}, {Head: "why"}, {Head: "by"},
	}}
	var by sources
	for _, f := range rules.ForPeople(s.Findings) {
		name := f.About()
		if f.Weight == rules.Kills {
			name = "† " + name
		}
		t.Rows = append(t.Rows, Row{
			Cells:  []string{f.Verdict.String(), name, s.say.Found(*f), s.say.PlusMinus(*f), s.say.Asked(*f), s.say.Margin(*f), f.Why, by.mark(f.Limit)},
			Strong: f.Verdict != rules.Clear,
		})
	}
	if len(t.Rows) > 0 {
		section.Parts = append(section.Parts, t, by.table())
	}
	for _, lacking := range s.say.Missing(s.Result) {
		section.Parts = append(section.Parts, Text{Words: lacking.Title + ": " + strings.Join(lacking.Items, ", ") + ".", Bold: true})
	}
	return section
}

// sources are who asks for what, in the order in which they are met.
type sources []string

// mark is the letter that stands for a book with its source.
func (all *sources) mark(l *rules.Limit) string {
	text := l.Book
	if l.Source != "" && l.Source != l.Book {
		text += ": " + l.Source
	}
	i := slices.Index(*all, text)
	if i < 0 {
		i = len(*all)
		*all = append(*all, text)
	}
	return letter(i)
}

// letter counts in letters: a to z, then aa.
func letter(i int) string {
	const letters = 26
	text := string(rune('a' + i%letters))
	if i >= letters {
		text = letter(i/letters-1) + text
	}
	return text
}

func (all sources) table() Table {
	t := Table{Cols: []Col{{Head: "by"}, {Head: "which book spoke, and its source"}}}
	for i, text := range all {
		t.Rows = append(t.Rows, Row{Cells: []string{letter(i), text}})
	}
	return t
}
