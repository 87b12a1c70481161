package marks

import (
	"fmt"
	"slices"
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// item is one row of the list: a mark, or a length to check between two marks.
type item struct {
	mark  *rules.Mark
	check *rules.Check
}

// items are the marks in the order of the work: those from above, the lengths to tape between them, those from below. Marks of the
// exhaust's clips and muffler wait while it is foul: it would be hung elsewhere.
func items(s desk.State) []item { return itemsOf(s, !exhaustFoul(s)) }

// itemsOf are those with or without the marks of the exhaust.
func itemsOf(s desk.State, exhaust bool) []item {
	all := s.Marks.Marks
	below := slices.IndexFunc(all, func(m rules.Mark) bool { return m.Above == nil })
	if below < 0 {
		below = len(all)
	}
	out := make([]item, 0, len(all)+len(s.Marks.Checks))
	for i := range all {
		if i == below {
			out = append(out, checkItems(s)...)
		}
		if all[i].Above != nil || exhaust {
			out = append(out, item{mark: &all[i]})
		}
	}
	if below == len(all) && below > 0 {
		out = append(out, checkItems(s)...)
	}
	return out
}

// exhaustFoul tells whether the exhaust can't be hung where it is.
func exhaustFoul(s desk.State) bool {
	return slices.ContainsFunc(s.Result.Findings, func(f rules.Finding) bool {
		return f.Verdict == rules.Foul && f.Subject.Sort == rules.TheExhaust
	})
}

// waiting says how many marks wait for the exhaust, "" when none does.
func waiting(s desk.State) string {
	n := len(s.Marks.Marks) + len(s.Marks.Checks) - len(items(s))
	if n == 0 {
		return ""
	}
	return fmt.Sprintf("%d more, of clips and muffler, once the exhaust is not foul (5 Runs)", n)
}

func checkItems(s desk.State) []item {
	out := make([]item, len(s.Marks.Checks))
	for i := range out {
		out[i].check = &s.Marks.Checks[i]
	}
	return out
}

// id is the name by which it is ticked.
func (it item) id() string {
	switch {
	case it.check != nil:
		return words.CheckID(*it.check)
	case it.mark != nil:
		return it.mark.Name
	}
	return ""
}

// short is what a narrow list calls it.
func (it item) short(set desk.Settings) string {
	if it.check != nil {
		return words.CheckEnds(*it.check, set)
	}
	return it.mark.Words
}

// viewItem paints one mark, or one length to check.
func (m screen) viewItem(s desk.State, w, h int) string {
	if c := m.here(s).check; c != nil {
		return m.viewCheck(*c, s, w, h)
	}
	return m.viewMark(s, w, h)
}

// viewCheck paints a length to check.
func (m screen) viewCheck(c rules.Check, s desk.State, w, h int) string {
	st := s.Settings.Styles()
	rows := []string{m.headline("check: "+words.CheckEnds(c, s.Settings), "", s.Ticked[words.CheckID(c)], taped, s, w)}
	rows = append(rows, banners(s, rules.Mark{}, w, false)...)
	rows = append(rows, desk.Wrapped(st.Plain, meaning(c), w)...)
	if text := words.CheckInTheWay(&s.Result, c, s.Settings); text != "" {
		rows = append(rows, desk.Wrapped(st.Doubtful, text, w)...)
	}
	ends := "from " + words.CheckEnd(c.From, s.Settings) + " to " + words.CheckEnd(c.To, s.Settings)
	rows = append(rows, "")
	return strings.Join(append(rows, figure(reading{from: ends, mm: c.Length}, s, w, h-len(rows))...), "\n")
}

// taped says whether a length has been checked.
func taped(ticked bool) string {
	return map[bool]string{true: "it says so", false: "not taped"}[ticked]
}

// meaning says what a length shows that does not come out.
func meaning(c rules.Check) string {
	switch c.Name {
	case rules.PinsApart:
		return "Taped above, from pin to pin. If the tape says something else, the pins do not stand where the arcs start."
	case rules.PlateDiagonal:
		return "Taped above, from mark to mark. Both diagonals must be alike: if they are not, the corners are not square. Mark them again."
	}
	return "Taped above, from the pin to the floor's corner. Both diagonals must be alike: if they are not, the pins do not stand square to the van."
}
