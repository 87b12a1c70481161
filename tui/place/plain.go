package place

import (
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/moving"
)

// atCut says whether a finding is of what is placed here.
func atCut(f *rules.Finding) bool { return f.Rule.AtCut }

// Plain is what the screen says where nothing is drawn.
func (m screen) Plain(s desk.State) desk.Plain {
	m = m.current(s)
	switch {
	case len(m.proposed()) > 0:
		return m.plainLayouts(s)
	case m.explaining, m.choosing:
		m.places.Far = "" // it would be said again and again
		lines := aloud.Rows(m.panel(s, aloud.Unbroken, aloud.Unbroken)...)
		return desk.Plain{Here: lines, All: func() []string { return lines }}
	case m.tapes.open:
		return m.tapes.plain(s)
	case m.Typing():
		return m.prompt.Plain(m.heading(s), m.asks(m.prompt.Kind, s))
	}
	here := m.facts(s)
	if s.Job.Cut != nil {
		here = append(here, aloud.Arrows(s), aloud.Worst(s, atCut))
	}
	return desk.Plain{Here: here, All: func() []string { return m.whole(s) }}
}

// facts are where the cut is and what must be known of it.
func (m screen) facts(s desk.State) []string {
	rows := append(m.where(s, aloud.Unbroken), moving.Notes(s, aloud.Unbroken)...)
	return aloud.Rows(append(rows, moving.LeanRows(s, aloud.Unbroken)...)...)
}

// whole is the panel with every clearance of the cut, and what the plan shows.
func (m screen) whole(s desk.State) []string {
	lines := append(m.facts(s), aloud.Arrows(s))
	lines = append(append(lines, moving.Said("the cut", s, atCut)...), worst(s).Unmoved(s))
	lines = append(append(lines, aloud.Near(s)...), aloud.NearOnTop(s)...)
	lines = append(lines, aloud.Runs(s)...)
	if len(s.Faults) > 0 || len(s.Result.Findings) == 0 {
		return lines
	}
	areas, _ := m.pane.Areas(s)
	if len(areas) == 0 {
		return append(lines, noRoom)
	}
	return append(lines, aloud.Areas(areas, s)...)
}

// plain is what the list of direct tapes says.
func (t taping) plain(s desk.State) desk.Plain {
	p, _ := pilotOf(s)
	fields := tapeFields(s)
	said := t.form.Plain(fields)
	said.Here = append([]string{tapeHead, holding(p)}, said.Here...)
	if said.Taped != nil {
		said.Taped.Head = "straight from the pilot hole to"
	}
	said.All = func() []string {
		return append(append([]string{tapeHead}, form.Form{}.Plain(fields).All()...), holding(p), onPurpose(s))
	}
	return said
}

// plainLayouts is what the layouts say: the one that is shown, or all of them.
func (m screen) plainLayouts(s desk.State) desk.Plain {
	here := append(m.title(s, aloud.Unbroken), layoutLine(&m.proposed()[m.at], s))
	return desk.Plain{
		Here: append(aloud.Rows(here...), aloud.Runs(laid(&m.proposed()[m.at], s))...),
		All:  func() []string { return aloud.Rows(m.choices(s, aloud.Unbroken, aloud.Unbroken).rows...) },
	}
}
