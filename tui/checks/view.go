package checks

import (
	"fmt"
	"strings"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// listWidth is how many columns the list has, or half of them, with the plan beside it, and leastPlan how many that has: with more no
// name of the sample's first page would stand whole in 100 columns.
const (
	listWidth = 66
	leastPlan = 40
)

// sizes are the columns of the list, and those and the rows of the plan, in a body of w by h.
func (m screen) sizes(w, h int) (listW, planW, planH int) {
	switch {
	case m.large:
		return w, w, max(1, h-captionRows)
	case w >= desk.SideBySide:
		list := max(w/2, min(listWidth, w-1-leastPlan))
		return list - desk.Margin, w - list - 1, h
	}
	return w, 0, 0
}

// captionRows stand under a plan that has the whole screen.
const captionRows = 3

// View paints the screen.
func (m screen) View(s desk.State, w, h int) string {
	listW, planW, planH := m.sizes(w, h)
	if m.large {
		return m.picture(s, planW, planH) + "\n" + desk.Fit(strings.Join(m.caption(s, w), "\n"), w, h-planH)
	}
	page := strings.Join(m.page(s, listW, h), "\n")
	if planW == 0 {
		return desk.Fit(page, listW, h)
	}
	return desk.Beside(desk.Fit(page, listW+desk.Margin, h), m.picture(s, planW, planH), s.Settings.Styles())
}

// listRoom is how many rows the list takes at least, its head among them.
const listRoom = 3

// page is the list, the picked finding in full, and what was not checked.
func (m screen) page(s desk.State, w, h int) []string {
	head, full, foot := m.faults(s, w), m.full(s, w, h), open(s, w, h)
	room := max(listRoom, h-len(head)-len(full)-len(foot))
	var list []string
	if m.next {
		list = m.nextView(s, w, room)
	} else {
		list = m.listView(s, w, room)
	}
	for len(list) < room {
		list = append(list, "")
	}
	rows := append(head, list[:room]...)
	rows = append(rows, full...)
	return append(rows, foot...)
}

// full is the picked finding in full, in not much more than half of h rows; with few, in as many as what is to be done about it takes.
func (m screen) full(s desk.State, w, h int) []string {
	room := max(4, h/2-2)
	if m.from && !m.next {
		room = max(4, h/2)
	}
	var rows []string
	if m.next {
		rows = m.nextDetail(s, w)
		room = max(room, min(len(rows), m.mostFull(s, w, h)))
	} else {
		if f := m.picked(s); f != nil && !m.from {
			room = max(room, min(len(toBeDone(*f, s, w)), m.mostFull(s, w, h)))
		}
		rows = m.findingDetail(s, w, room)
	}
	if len(rows) == 0 {
		return nil
	}
	return append([]string{s.Settings.Styles().Frame.Render(strings.Repeat("─", w))}, rows[:min(len(rows), room)]...)
}

// mostFull is how many rows that may take at the most: the list has one finding then.
func (m screen) mostFull(s desk.State, w, h int) int {
	return h - len(m.faults(s, w)) - len(open(s, w, h)) - listRoom - 1
}

// findingDetail is the picked finding in so many rows: all that is said of it and, with room or when it is asked for, where
// its ± comes from.
func (m screen) findingDetail(s desk.State, w, h int) []string {
	f := m.picked(s)
	if f == nil {
		return nil
	}
	rows := detail(*f, s, w)
	if m.from {
		head := []string{s.Settings.Styles().Strong.Render(desk.FitRow(f.About(), w)), verdict(*f, s)}
		return append(head, budget(*f, s, w, h-len(head))...)
	}
	if from := budget(*f, s, w, h); f.Sigma > 0 && len(rows)+len(from) <= h {
		rows = append(rows, from...)
	}
	return rows
}

// listRows is how many findings the list shows at once.
func (m screen) listRows(s desk.State) int {
	listW, _, _ := m.sizes(m.w, m.h)
	return max(listRoom, m.h-len(m.faults(s, listW))-len(m.full(s, listW, m.h))-len(open(s, listW, m.h))) - listHead
}

// faults says why the findings are not those of the job as it is now.
func (m screen) faults(s desk.State, w int) []string {
	st := s.Settings.Styles()
	var rows []string
	for _, f := range s.Faults {
		rows = append(rows, desk.Wrapped(st.Fault, f.Key+": "+f.Text, w)...)
	}
	if len(rows) > 0 {
		rows = append(rows, desk.Wrapped(st.Foul, "What follows is of the job before that went wrong.", w)...)
	}
	return rows
}

// open says what was not checked and not looked for, each in no more than an eighth of h rows, and in one where there are so few that the list
// needs them: with as many by name as that has room for.
func open(s desk.State, w, h int) []string {
	var rows []string
	for _, u := range notChecked(s) {
		if h < shortOf {
			rows = append(rows, s.Settings.Styles().Doubtful.Render(desk.FitRow(u.inRow(w), w)))
		} else {
			rows = append(rows, capped(u.text(), s, w, h/8)...)
		}
	}
	return rows
}

// shortOf is how many rows a body has that is short of them.
const shortOf = 20

// undone is what was not checked or not looked for, and why.
type undone struct {
	why string
	of  []string
}

// text is all of it.
func (u undone) text() string {
	if len(u.of) == 0 {
		return u.why
	}
	return u.why + ": " + strings.Join(u.of, ", ")
}

// inRow is what of it fits into w columns: as many as that has room for, and how many more there are; why alone where that is none of them.
func (u undone) inRow(w int) string {
	if text := u.text(); desk.Width(text) <= w {
		return text
	}
	for n := len(u.of) - 1; n > 0; n-- {
		if text := fmt.Sprintf("%s: %s, %d more", u.why, strings.Join(u.of[:n], ", "), len(u.of)-n); desk.Width(text) <= w {
			return text
		}
	}
	return u.why
}

// notChecked are what was not checked and not looked for.
func notChecked(s desk.State) (all []undone) {
	if missing := s.Result.Unchecked; len(missing) > 0 {
		all = append(all, undone{words.NotEntered, words.Unchecked(missing)})
	}
	if asked := s.Result.Unanswered; len(asked) > 0 {
		all = append(all, undone{words.NobodySaid, asked})
	}
	if left := words.Left(s.Result.OpenIn); left != "" {
		all = append(all, undone{"Not looked for, " + left, s.Result.Open()})
	}
	return all
}

// capped breaks text into at most h rows, the last one ending in an ellipsis when there is more.
func capped(text string, s desk.State, w, h int) []string {
	rows := desk.Wrap(text, w)
	if h = max(1, h); len(rows) > h {
		rows[h-1] = desk.FitRow(rows[h-1]+" "+rows[h], w)
		rows = rows[:h]
	}
	for i := range rows {
		rows[i] = s.Settings.Styles().Doubtful.Render(rows[i])
	}
	return rows
}

// caption names the finding under a plan that has the whole screen.
func (m screen) caption(s desk.State, w int) []string {
	f := m.picked(s)
	if f == nil {
		return nil
	}
	return detail(*f, s, w)
}
