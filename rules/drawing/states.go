package drawing

import (
	"strings"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
)

// states are how the things of a job stand with the rules: the worst of what is found about each.
type states struct {
	obstructions, openings, fittings []scene.State
	subjects                         map[string]scene.State // cut, plate, body, exhaust, intake, fuel
}

func statesOf(result *rules.Result) states {
	s := states{
		obstructions: make([]scene.State, len(result.Plan.Obstructions)),
		openings:     make([]scene.State, len(result.Plan.Openings)),
		fittings:     make([]scene.State, len(result.Plan.Fittings)),
		subjects:     map[string]scene.State{},
	}
	for i := range result.Findings {
		f := &result.Findings[i]
		state := stateOf(f.Verdict)
		s.subjects[f.Subject] = max(s.subjects[f.Subject], state)
		if list := s.about(f.ID); f.Index >= 0 && f.Index < len(list) {
			list[f.Index] = max(list[f.Index], state)
		}
	}
	return s
}

// about returns the list that a rule's findings are about.
func (s *states) about(id string) []scene.State {
	switch {
	case id == "exhaust.outlet":
		return s.openings
	case id == "plate.fitting", id == "body.space":
		return s.fittings
	case strings.HasSuffix(id, ".clearance"):
		return s.obstructions
	}
	return nil
}

func stateOf(v rules.Verdict) scene.State {
	return [...]scene.State{scene.Clear, scene.Doubtful, scene.Foul}[v-rules.Clear]
}
