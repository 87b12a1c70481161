package runs

import (
	"math"
	"slices"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/plan"
	"bench.example/undermark/vehicles"
)

// revealed shows the finding that the state picks out in the middle of the plan, with the point in hand that is nearest to it.
func (m screen) revealed(s desk.State) (screen, desk.Change) {
	f := s.Focus
	if f == nil {
		return m, desk.Change{}
	}
	m.prompt, m.shielding, m.aside, m.pictures, m.finder, m.cutting = moving.Prompt{}, false, 0, together, m.finder.closed(), false
	if of, ok := runConcerned(f); ok && (m.finger == 0 || !m.concerns(f)) { // a tap in the list of the run at hand stays with it
		m = m.turnTo(of)
	}
	if run := m.run(s); run != nil && f.Places > 0 {
		least := math.Inf(1)
		for i, p := range run.Path {
			if away := inSpace(p).Sub(f.At[0]).Norm(); away < least {
				m.picked, least = part{sort: point, index: i}, away
			}
		}
	}
	if muffler := (part{sort: hung, kind: vehicles.AMuffler}); (f.Subject.Sort == rules.TheMuffler || f.Against.Sort == rules.TheMuffler) && m.has(muffler, s) {
		m.picked = muffler
	}
	if m.finger > 0 || m.arranged(s, m.w, m.h).body.Under > 0 { // a brief list begins with what is shown
		m.top, m.finger = m.worst(s).Kept(f, m.finger-1, m.top, s, m.under(s)), 0
	}
	a := m.arranged(s, m.w, m.h)
	camera := plan.LookAt(*f, s.Camera.View, a.plan.W, a.plan.H, s.Settings.Units)
	return m, desk.Change{Camera: &camera}
}

// has says whether the run at hand has a part.
func (m screen) has(of part, s desk.State) bool {
	return slices.ContainsFunc(m.parts(s), func(p placed) bool { return p.part == of && p.there })
}

// runConcerned is the run that a finding is of: its subject, else what that is held against.
func runConcerned(f *rules.Finding) (of vehicles.RunKind, ok bool) {
	for _, about := range [...]rules.Sort{f.Subject.Sort, f.Against.Sort} {
		if of, ok = about.Run(); ok {
			return of, ok
		}
	}
	return of, false
}
