package drawing

import (
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
)

// states are how the things of a job stand with the rules: the worst of what is found about each.
type states struct {
	obstructions, openings, fittings []scene.State
	subjects                         map[rules.Sort]scene.State // cut, plate, body, exhaust, intake, fuel
}

func statesOf(result *rules.Result) states {
	s := states{
		obstructions: make([]scene.State, len(result.Plan.Obstructions)),
		openings:     make([]scene.State, len(result.Plan.Openings)),
		fittings:     make([]scene.State, len(result.Plan.Fittings)),
		subjects:     map[rules.Sort]scene.State{},
	}
	for i := range result.Findings {
		f := &result.Findings[i]
		state := stateOf(f.Verdict)
		s.subjects[f.Subject.Sort] = max(s.subjects[f.Subject.Sort], state)
		if f.Subject.Sort == rules.TheSurvey {
			continue // of the readings, not of where the thing is
		}
		if list := s.about(f.Against.Sort); list != nil {
			list[f.Against.Index] = max(list[f.Against.Index], state)
		}
	}
	return s
}

// about returns the list that a sort of thing is in, nil for what is in none.
func (s *states) about(sort rules.Sort) []scene.State {
	switch sort {
	case rules.AnObstruction:
		return s.obstructions
	case rules.AnOpening:
		return s.openings
	case rules.AFitting:
		return s.fittings
	}
	return nil
}

func stateOf(v rules.Verdict) scene.State {
	return [...]scene.State{scene.Clear, scene.Doubtful, scene.Foul}[v-rules.Clear]
}
