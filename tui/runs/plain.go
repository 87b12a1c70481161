package runs

import (
	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// Plain is what the screen says where nothing is drawn.
func (m screen) Plain(s desk.State) desk.Plain {
	m = m.current(s)
	switch {
	case m.finder.open():
		return m.plainFinder(s)
	case m.cutting:
		return plainCutList(s)
	case m.shielding:
		return m.plainShields(s)
	case m.Typing():
		here, _ := m.here(s)
		return m.prompt.Plain(m.heading(here, s), m.asks(here, s))
	}
	here := append(m.facts(s), m.arrows(s), aloud.Worst(s, m.concerns))
	return desk.Plain{Here: here, All: func() []string { return m.whole(s) }}
}

// facts are which part is picked, what it is, and what must be known of the run.
func (m screen) facts(s desk.State) []string {
	lines := []string{m.of.String(), "step " + desk.Length(m.step.Length(s), s.Settings.Units)}
	rows := m.toldHere(s, aloud.Unbroken, false)
	if parts := m.parts(s); len(parts) > 0 {
		rows = append(rows, "part "+aloud.Of(m.row(parts), len(parts)))
	}
	rows = append(append(rows, moving.Notes(s, aloud.Unbroken)...), moving.LeanRows(s, aloud.Unbroken)...)
	return append(lines, aloud.Rows(rows...)...)
}

// arrows says what the arrows do with the part that is picked.
func (m screen) arrows(s desk.State) string {
	here, ok := m.here(s)
	switch {
	case !ok:
		return ""
	case here.sort == point && m.alone(s):
		return "Arrows: Left and Right pick along the run, Up raises, Down drops"
	case here.sort == point:
		return aloud.Arrows(m.looking(s))
	case here.hangs():
		return "Arrows: Left and Right slide it along the run, Up and Down pick another part"
	}
	return "Arrows: Up and Down pick another part"
}

// whole is the panel with every part and clearance of each run, and how they lie.
func (m screen) whole(s desk.State) []string {
	lines := append(m.facts(s), m.arrows(s))
	for _, m.of = range vehicles.RunKinds {
		lines = append(lines, aloud.Run(m.of, s)...)
		lines = append(lines, aloud.Rows(m.worst(s).Unmoved(s))...)
		for _, p := range m.parts(s) {
			lines = append(lines, m.told(p, s))
		}
		lines = append(lines, moving.Said("the "+m.of.String(), s, m.concerns)...)
	}
	if len(s.Result.Findings) > 0 {
		lines = append(append(lines, cutListHead+":"), cutListLines(s)...)
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
		Here: []string{shieldsHead, line(at) + "; " + aloud.Of(at, len(rows))},
		All: func() []string {
			lines := []string{shieldsHead}
			for i := range rows {
				lines = append(lines, line(i))
			}
			return lines
		},
	}
}
