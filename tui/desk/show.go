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
	if title, is := EnteredOn(f.Against.Sort); f.Unconfirmed && is { // to be confirmed, not moved away from
		return Change{Goto: title, Focus: f}
	}
	if f.WithRun() {
		return Change{Goto: "Runs", Focus: f}
	}
	return Change{Goto: "Place", Focus: f}
}

// EnteredOn is the screen where things of a sort are entered and confirmed; false of a sort that is not in a list.
func EnteredOn(sort rules.Sort) (title string, is bool) {
	switch sort {
	case rules.AnObstruction, rules.AnOpening:
		return "Underneath", true
	case rules.AFitting:
		return "On top", true
	}
	return "", false
}
