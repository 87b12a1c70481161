package runs

import (
	"maps"
	"math"
	"slices"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/plan"
)

// revealed shows the finding that the state picks out in the middle of the plan, with the point in hand that is nearest to it.
func (m screen) revealed(s desk.State) (screen, desk.Change) {
	f := s.Focus
	if f == nil {
		return m, desk.Change{}
	}
	m.prompt, m.shielding, m.aside, m.profile = moving.Prompt{}, false, 0, false
	about := f.Subject.Sort
	if !slices.Contains(slices.Collect(maps.Values(sorts)), about) {
		about = f.Against.Sort
	}
	for of, sort := range sorts {
		if sort == about {
			m = m.turnTo(of)
		}
	}
	if run := m.run(s); run != nil && f.Places > 0 {
		least := math.Inf(1)
		for i, p := range run.Path {
			if away := inSpace(p).Sub(f.At[0]).Norm(); away < least {
				m.picked, least = part{point, i}, away
			}
		}
	}
	a := arranged(m.w, m.h)
	camera := plan.LookAt(*f, s.Camera.View, a.plan.W, a.plan.H, s.Settings.Units)
	return m, desk.Change{Camera: &camera}
}
