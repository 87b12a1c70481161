package checks

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// Plain is what the screen says where nothing is drawn.
func (m screen) Plain(s desk.State) desk.Plain {
	if m.next {
		return m.plainNext(s)
	}
	p := desk.Plain{Here: []string{m.titled(s)}, All: func() []string { return m.whole(s) }}
	listed := m.listed(s)
	if len(listed) == 0 {
		p.Here = append(p.Here, nobody(m.only, s))
		return p
	}
	f := *listed[m.index(s)]
	p.Here = append(p.Here, aloud.Finding(f, s)+"; "+aloud.Of(m.index(s), len(listed)))
	if m.from {
		p.Here = append(p.Here, causes(f, s)...)
		return p
	}
	p.Here = append(append(p.Here, spot(f, s)), reasons(f, s)...)
	return p
}

// titled is what stands above the list.
func (m screen) titled(s desk.State) string {
	return fmt.Sprintf("Findings, %s: %d of %d", m.only, len(m.listed(s)), len(s.Result.Findings))
}

// whole is the list with what is to be done about each finding, and what was not checked.
func (m screen) whole(s desk.State) []string {
	lines := aloud.Rows(m.faults(s, aloud.Unbroken)...)
	listed := m.listed(s)
	lines = append(lines, m.titled(s))
	if len(listed) == 0 {
		lines = append(lines, nobody(m.only, s))
	}
	for _, f := range listed {
		lines = append(lines, aloud.Finding(*f, s))
		if f.Verdict != rules.Clear {
			lines = append(lines, aloud.Joined(reasons(*f, s)...))
		}
	}
	lines = append(lines, m.shownFull(s)...)
	for _, u := range notChecked(s) {
		lines = append(lines, u.text())
	}
	return lines
}

// shownFull is the picked finding in full, as it is shown under the list.
func (m screen) shownFull(s desk.State) []string {
	f := m.picked(s)
	if f == nil {
		return nil
	}
	lines := append([]string{"Picked:"}, aloud.Rows(detail(*f, s, aloud.Unbroken)...)...)
	return append(append(lines, spot(*f, s)), causes(*f, s)...)
}

// reasons are why a finding is not clear, what to do, what its rule asks and who says so.
func reasons(f rules.Finding, s desk.State) []string {
	rows := aloud.Rows(detail(f, s, aloud.Unbroken)...)
	return rows[min(len(rows), len(heading(f, s, aloud.Unbroken))+1):] // what stands before is in the finding's own line
}

// spot says where a finding is, "" for one of no place.
func spot(f rules.Finding, s desk.State) string {
	points := f.Points()
	if len(points) == 0 {
		return ""
	}
	return "Where: " + aloud.Place(points[len(points)-1], s)
}

// causes are where a finding's ± comes from.
func causes(f rules.Finding, s desk.State) []string {
	if f.Sigma == 0 {
		return []string{noSpread}
	}
	lines := []string{budgetHead}
	for _, share := range rules.Budget(s.Result, f) {
		alone := f
		alone.Sigma = math.Sqrt(share.Variance)
		lines = append(lines, fmt.Sprintf("%s: %s %%, %s", share.Cause, survey.FigureTo(100*share.Variance/(f.Sigma*f.Sigma), 0), words.PlusMinus(alone, s.Settings.Units)))
	}
	return lines
}

// worth is what the picked reading is good for.
func (m screen) worth(s desk.State) []string {
	rows := aloud.Rows(m.nextDetail(s, aloud.Unbroken)...)
	return rows[min(len(rows), 1):] // what it is has a line of its own
}

// plainNext is what to measure next.
func (m screen) plainNext(s desk.State) desk.Plain {
	all := s.Next.Advice
	line := func(i int) string { return all[i].What + ": " + all[i].Does }
	lines := func() []string {
		said := []string{nextTitle(s)}
		if len(all) == 0 {
			said = append(said, m.nothing(s))
		}
		for i := range all {
			said = append(said, line(i))
		}
		return append(said, m.worth(s)...)
	}
	here := []string{nextTitle(s), m.nothing(s)}
	if len(all) > 0 {
		i := m.picking(s)
		here = append([]string{nextTitle(s), line(i) + "; " + aloud.Of(i, len(all))}, m.worth(s)...)
	}
	return desk.Plain{Here: here, All: lines}
}
