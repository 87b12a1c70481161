package runs

import (
	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/words"
)

// Plain is what the screen says where nothing is drawn.
func (m screen) Plain(s desk.State) desk.Plain {
	m = m.current(s)
	switch {
	case m.shielding:
		return m.plainShields(s)
	case m.Typing():
		return m.prompt.Plain(headings[m.prompt.Kind], m.asks(m.prompt.Kind, s))
	}
	here := append(m.facts(s), aloud.Arrows(s), aloud.Worst(s, m.concerns))
	return desk.Plain{Here: here, All: func() []string { return m.whole(s) }}
}

// facts are which point is moved, where it is, and what must be known of it.
func (m screen) facts(s desk.State) []string {
	rows := append(m.wherePoint(s, aloud.Unbroken), moving.Notes(s, aloud.Unbroken)...)
	lines := []string{m.of.String(), "step " + desk.Length(m.step.Length(s), s.Settings.Units)}
	return append(lines, aloud.Rows(append(rows, moving.LeanRows(s, aloud.Unbroken)...)...)...)
}

// whole is the panel with every clearance of each run, and how they lie.
func (m screen) whole(s desk.State) []string {
	lines := append(m.facts(s), aloud.Arrows(s))
	lines = append(lines, aloud.Runs(s)...)
	for of := range laid {
		m.of = of
		lines = append(lines, moving.Said("the "+of.String(), s, m.concerns)...)
	}
	return lines
}

// plainShields is the list of what a heat shield may stand before.
func (m screen) plainShields(s desk.State) desk.Plain {
	rows := m.shieldList(s)
	line := func(i int) string {
		if rows[i].Mark == words.Deadly {
			return words.Deadly + " " + rows[i].Plain("")
		}
		return rows[i].Plain("")
	}
	at := max(0, min(m.shield, len(rows)-1))
	return desk.Plain{
		Here: []string{shieldAsks, line(at) + "; " + aloud.Of(at, len(rows))},
		All: func() []string {
			lines := []string{shieldAsks}
			for i := range rows {
				lines = append(lines, line(i))
			}
			return lines
		},
	}
}
