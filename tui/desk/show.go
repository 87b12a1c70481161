package desk

import (
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
)

// Reveal tells a screen that it is to show the finding in the state's Focus: in the middle of its plan, with what can mend it
// in hand.
type Reveal struct{}

// Show is the change that shows a finding on the screen that can mend it.
func Show(f *rules.Finding) Change {
	switch f.Subject.Sort {
	case rules.TheTies:
		return Change{Goto: "Match", Focus: f}
	case rules.TheSurvey:
		if f.Against.Sort == rules.AnObstruction {
			return Change{Goto: "Underneath", Focus: f, Open: &Open{Obstruction: int(f.Against.Index), Opening: -1, Field: "total." + [...]string{survey.X: "x", survey.Y: "y"}[f.Axis()]}}
		}
		return Change{Goto: "On top", Focus: f}
	case rules.TheHeater:
		return Change{Goto: "On top", Focus: f}
	}
	if f.WithRun() {
		return Change{Goto: "Runs", Focus: f}
	}
	return Change{Goto: "Place", Focus: f}
}
