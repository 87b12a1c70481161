package place

import (
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// tapeHead stands above the list.
const tapeHead = "Tape level from the hole's centre, to the nearest edge of:"

// tapeRows is the list of direct tapes in place of the panel, scrolled to the one that is typed.
func (m screen) tapeRows(s desk.State, w, h int) (rows panelRows) {
	st := s.Settings.Styles()
	p, _ := pilotOf(s)
	rows.add(-1, desk.Wrapped(st.Title, tapeHead, w)...)
	from, to := 0, 0
	for i, f := range tapeFields(s) {
		if f.Key == m.tapes.form.On() {
			from = len(rows.rows)
			rows.add(i, m.tapeField(s, i, w)...)
			to = len(rows.rows)
			continue
		}
		style, text := st.Plain, f.Label+": "+f.Blank
		if f.Text != "" {
			style, text = st.Verdict(p.Tapes[i].Verdict), f.Label+" "+f.Text+": "+f.Note
		}
		rows.add(i, indented(desk.Wrapped(style, text, w-2))...)
	}
	rows.add(-1, desk.Wrapped(holdingStyle(p, st), holding(p), w)...)
	rows.add(-1, desk.Wrapped(st.Plain, onPurpose(s), w)...)
	top := max(0, min(from-1, to-h, len(rows.rows)-h))
	if to > h { // what is typed stays in sight whole, the rest as far as there is room
		top = to - h
	}
	return rows.from(top)
}

// tapeField is the field that is typed, with what it came to in as few rows as that takes.
func (m screen) tapeField(s desk.State, i, w int) []string {
	const most = 5 // a field, and what is said of it
	fields := tapeFields(s)
	rows := strings.Split(m.tapes.form.View(fields[i:i+1], w, most, s.Settings.Styles()), "\n")
	for len(rows) > 1 && strings.TrimSpace(rows[len(rows)-1]) == "" {
		rows = rows[:len(rows)-1]
	}
	return rows
}

func indented(rows []string) []string {
	for i := range rows {
		rows[i] = "  " + rows[i]
	}
	return rows
}

// onPurpose is for whoever moves the centre on purpose after the pilot was drilled.
func onPurpose(s desk.State) string {
	return words.BesidePilot(s.Job.Cut, s.Settings) + "."
}

// holding says what the direct tapes come to.
func holding(p rules.PilotReport) string {
	clear := 0
	for _, h := range p.Tapes {
		if h.Direct >= 0 && h.Verdict == rules.Clear {
			clear++
		}
	}
	switch {
	case p.Explained:
		return "The readings explain where the hole is. These check it once more."
	case !p.Held:
		return "Two agree across one another: the hole is confirmed where it is."
	case clear > 1:
		return "Those that agree lie along one line: one across them is needed."
	}
	return "Held back until two agree that lie across one another."
}

func holdingStyle(p rules.PilotReport, st desk.Styles) desk.Style {
	if p.Held {
		return st.Fault
	}
	return st.Strong
}
