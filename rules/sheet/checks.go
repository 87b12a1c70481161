package sheet

import (
	"slices"
	"strings"

	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/rules"
)

// checks are all findings, as people read them, with who asks for it, and what no finding speaks of.
func (s *source) checks() Section {
	section := Section{Heading: "Checks: every clearance, and who asks for it"}
	var by sources
	findings := rules.ForPeople(s.Findings)
	first := slices.IndexFunc(findings, func(f *rules.Finding) bool { return f.Verdict == rules.Clear })
	if first < 0 {
		first = len(findings)
	}
	apart := s.sorted(findings)
	open, kept := s.open(findings[:first], &by), s.clear(apart.others, &by)
	if len(open.Rows) > 0 {
		section.Parts = append(section.Parts, open)
	}
	var unknown Named
	for _, lacking := range s.say.Missing(s.Result) {
		unknown = append(unknown, [2]string{lacking.Title + ":", strings.Join(lacking.Items, ", ") + "."})
	}
	if len(unknown) > 0 {
		section.Parts = append(section.Parts, unknown)
	}
	if table := s.apart(&apart, &by); len(table.Rows) > 0 {
		section.Parts = append(section.Parts, Titled{apartTitle, table})
	}
	if len(kept.Rows) > 0 {
		section.Parts = append(section.Parts, Titled{"What else is " + rules.ClearOfEntered + ". Figures are mm unless said.", Halves{kept}})
	}
	if len(by) > 0 {
		section.Parts = append(section.Parts, by.told("By: which book spoke, and its source"))
	}
	return section
}

// senses stand before what is asked for.
var senses = map[rules.Sense]string{rules.Least: "≥ ", rules.Most: "≤ "}

// deadly stands before what can kill.
const deadly = "† "

func about(f *rules.Finding) string {
	if f.Weight == rules.Kills {
		return deadly + f.About()
	}
	return f.About()
}

// open are the findings that are not clear, each with why.
func (s *source) open(findings []*rules.Finding, by *sources) Table {
	const short = 31 // mm: a reason no longer than that has a column, a longer one stands under its row
	t := Table{Size: small, Close: true, Cols: []Col{
		{Head: "verdict"}, {Head: "of; " + deadly + "can kill"}, {Head: "found", Figure: true}, {Head: spreadHead, Figure: true}, {Head: "asked for"},
		{Head: "margin", Figure: true}, {Head: "by"}, {Head: "why"},
	}}
	for _, f := range findings {
		margin, why, under := s.say.Margin(*f), "", f.Why
		if f.OnlyMargin() {
			margin, under = f.Why, ""
		}
		if measured(vector.Text{Size: small}, under) <= short {
			why, under = under, ""
		}
		t.Rows = append(t.Rows, Row{
			Cells:  []string{f.Verdict.String(), about(f), s.say.Found(*f), s.say.PlusMinus(*f), s.say.Asked(*f), margin, by.mark(f.Limit), why},
			Strong: true, Under: under,
		})
	}
	return t
}

// clear are clear findings in short, with why those are clear whose margin is less than its ±.
func (s *source) clear(findings []*rules.Finding, by *sources) Table {
	t := Table{Size: small, Close: true, Cols: []Col{
		{Head: "of; " + deadly + "can kill"}, {Head: "found", Figure: true}, {Head: spreadHead, Figure: true}, {Head: "asked for", Figure: true}, {Head: "by"},
	}}
	for _, f := range findings {
		t.Rows = append(t.Rows, Row{
			Cells: []string{about(f), s.say.Short(*f, f.Value), s.say.PlusMinus(*f), senses[f.Rule.Sense] + s.say.Short(*f, f.Required.Value), by.mark(f.Limit)},
			Under: s.say.WhyClear(*f),
		})
	}
	return t
}

// sources are who asks for what, in the order in which they are met.
type sources []string

// mark is the letter that stands for a book with its source.
func (all *sources) mark(l *rules.Limit) string {
	text := l.Book
	if l.Source != "" && l.Source != l.Book {
		text += ": " + l.Source
	}
	return all.letter(text)
}

// letter is the letter that stands for a source, "" for none.
func (all *sources) letter(text string) string {
	if text == "" {
		return ""
	}
	i := slices.Index(*all, text)
	if i < 0 {
		i = len(*all)
		*all = append(*all, text)
	}
	return letter(i)
}

// letters are those of each source that a text names, one behind the other.
func (all *sources) letters(text string) string {
	var each []string
	for part := range strings.SplitSeq(text, "; ") {
		if l := all.letter(part); l != "" {
			each = append(each, l)
		}
	}
	return strings.Join(each, "\u00a0")
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

// told says what each letter stands for.
func (all sources) told(head string) Part {
	texts := make([]string, len(all))
	for i, text := range all {
		texts[i] = letter(i) + "\u00a0= " + text
	}
	return Titled{head, Halves{Text{Words: strings.Join(texts, "; ") + ".", Size: small}}}
}
