package screentest

import (
	"fmt"
	"regexp"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/words"
)

// listedMark is a mark, or a length to check, as lists have it.
type listedMark struct {
	id, short, full, figures string
}

// sheet are the job's marks.
func (w *Told) sheet() rules.MarkSheet {
	if w.known.sheet == nil {
		sheet := rules.Marks(w.Result)
		w.known.sheet = &sheet
	}
	return *w.known.sheet
}

// marked are the marks of the job and the lengths to check.
func (w *Told) marked(sheet rules.MarkSheet) (all []listedMark) {
	u := w.Settings.Units
	for _, m := range sheet.Marks {
		at := [3]float64{m.Below.Bumper, m.Below.Left, m.Below.Right}
		if a := m.Above; a != nil {
			at = [3]float64{a.Bumper, a.Left, a.Right}
		}
		figures := survey.Format(at[0], u) + " " + survey.Format(at[1], u) + " " + survey.Format(at[2], u)
		all = append(all, listedMark{m.Name, m.Words, m.Words, figures})
	}
	for _, c := range sheet.Checks {
		all = append(all, listedMark{words.CheckID(c), words.CheckEnds(c, w.Settings), words.CheckText(c, w.Settings), survey.Format(c.Length, u)})
	}
	return all
}

var (
	markRow     = regexp.MustCompile(`^(?:▶ |  )\[([ x])\] (.+)`)
	markHead    = regexp.MustCompile(`^ (\S.*?)  +FROM (?:ABOVE|BELOW)  +\[([ x])\] `)
	readingSaid = regexp.MustCompile(`(?:from|behind) the \S.*? (?:edge|pin)(?:, zero .*? (?:floor|top))? +([^│]*?)(?: ± |$)`)
)

// marks holds that what is listed, or shown by itself, is a mark of the job, made or not as it is, with the readings of the tape there.
func (w *Told) marks(rows []string) (n int, wrong string) {
	sheet := w.sheet()
	all, table := w.marked(sheet), false
	var shown *rules.Mark
	for _, row := range rows {
		table = table || strings.HasPrefix(row, "All marks, ")
		list, page, beside := strings.Cut(row, "│")
		if !beside {
			page = row
		}
		if said := markRow.FindStringSubmatch(list); said != nil {
			if !w.isMark(said, all, table) {
				return n, fmt.Sprintf("%q is no mark of the job", list)
			}
			n++
		}
		page = strings.TrimPrefix(page, " ")
		if said := markHead.FindStringSubmatch(" " + strings.TrimLeft(page, " ")); said != nil {
			for i := range sheet.Marks {
				if m := &sheet.Marks[i]; m.Words == said[1] && (w.Ticked == nil || w.Ticked[m.Name] == (said[2] == "x")) {
					shown = m
				}
			}
			if shown == nil {
				return n, fmt.Sprintf("%q is no mark of the job", page)
			}
			n++
			continue
		}
		if shown == nil || !strings.HasPrefix(page, "from the ") && !strings.HasPrefix(page, "behind the ") {
			continue
		}
		for _, said := range readingSaid.FindAllStringSubmatch(page, -1) {
			if !w.reads(strings.TrimSpace(said[1]), shown) {
				return n, fmt.Sprintf("%q is no reading of %s", page, shown.Words)
			}
			n++
		}
	}
	return n, ""
}

// isMark tells whether a row behind its tick is one of those.
func (w *Told) isMark(said []string, all []listedMark, table bool) bool {
	text := spaced(said[2])
	for _, m := range all {
		if w.Ticked != nil && w.Ticked[m.id] != (said[1] == "x") {
			continue
		}
		rest, is := strings.CutPrefix(text, spaced(m.full))
		switch {
		case table && is && strings.HasSuffix(rest, " "+m.figures), table && strings.Contains(text, "…") && begins(m.full, text) || !table && cutOff(text, spaced(m.short)):
			return true
		}
	}
	return false
}

// reads tells whether a tape says that at a mark, from above, from below, or from a pin.
func (w *Told) reads(text string, m *rules.Mark) bool {
	all := []float64{m.Below.Bumper, m.Below.Left, m.Below.Right}
	if a := m.Above; a != nil {
		all = append(all, a.Bumper, a.Left, a.Right, a.PinLeft, a.PinRight)
	}
	for _, mm := range all {
		if figure := survey.Format(mm, w.Settings.Units); text == figure || strings.HasPrefix(text, figure+" ") {
			return true
		}
	}
	return false
}
