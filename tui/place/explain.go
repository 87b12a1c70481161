package place

import (
	"fmt"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// The list of what would explain the pilot hole: a letter puts one of them right, arrows and the wheel go down the list where it is
// longer than its rows.

// explain answers a key while the explanations are listed: a letter puts one of them right.
func (m screen) explain(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	p, _ := pilotOf(s)
	i := -1
	if len(k.Runes) == 1 {
		i = int(k.Runes[0] - 'a')
	}
	switch {
	case key.Matches(k, desk.KeyLeave):
		m.explaining = false
	case key.Matches(k, desk.KeyDown, desk.KeyPageDown):
		m = m.explainedFrom(m.slip+1, p)
	case key.Matches(k, desk.KeyUp, desk.KeyPageUp):
		m = m.explainedFrom(m.slip-1, p)
	case i >= 0 && i < len(p.Slips):
		return m.putRight(p.Slips[i], s)
	}
	return m, desk.Change{}
}

// explainedFrom is the list from one of the explanations on.
func (m screen) explainedFrom(slip int, p rules.PilotReport) screen {
	m.slip = max(0, min(slip, mostSlips(p)-1))
	return m
}

// mostSlips is how many explanations have a letter.
func mostSlips(p rules.PilotReport) int { return min(len(p.Slips), 'z'-'a'+1) }

// putRight takes what would explain the pilot hole for what happened.
func (m screen) putRight(slip rules.Slip, s desk.State) (screen, desk.Change) {
	m.explaining = false
	job := slip.Apply(s.Job)
	return m, desk.Change{Job: &job, Say: "Put right; judged again. " + desk.KeyUndo.Help().Key + " takes it back."}
}

// explanations list what would explain the pilot hole, each with its letter, in h rows; with more than those the last says so.
func (m screen) explanations(s desk.State, w, h int) (rows panelRows) {
	st := s.Settings.Styles()
	p, _ := pilotOf(s)
	rows.add(-1, desk.Wrapped(st.Title, "One of these would explain the pilot. Check it on the van before you press its letter.", w)...)
	head, starts := len(rows.rows), []int{}
	for i, slip := range p.Slips[:mostSlips(p)] {
		starts = append(starts, len(rows.rows))
		for n, row := range desk.Wrap(slip.Text, w-2) {
			letter := "  "
			if n == 0 {
				letter = st.Key.Render(string(rune('a'+i))) + " "
			}
			rows.add(i, letter+row)
		}
	}
	if len(rows.rows) <= h {
		return rows
	}
	all, room := rows, max(1, h-head-1)
	from := min(starts[min(m.slip, len(starts)-1)], len(all.rows)-room)
	last := min(from+room, len(all.rows))
	rows = panelRows{append([]string{}, all.rows[:head]...), append([]int{}, all.of[:head]...)}
	for y := from; y < last; y++ {
		rows.add(all.of[y], all.rows[y])
	}
	rows.add(-1, st.Faint.Render(fmt.Sprintf("%c-%c of %d (↑ ↓)", 'a'+all.of[from], 'a'+all.of[last-1], mostSlips(p))))
	return rows
}
