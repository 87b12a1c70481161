package desk

import "bench.example/undermark/rules"

// Measure is the change that goes to where the reading of an advice is entered.
func Measure(a rules.Advice) Change {
	switch {
	case a.Field == rules.FieldTie:
		return Change{Goto: "Match"}
	case a.Field == rules.FieldDrilled:
		return Change{Goto: "Place", Say: "Look at the checks of the cut before you drill."}
	case a.Obstruction < 0 && a.Opening < 0:
		return Change{Goto: "On top", Say: "Go to the fitting and confirm it (m), or type its readings."}
	}
	return Change{Goto: "Underneath", Open: &Open{Obstruction: a.Obstruction, Opening: a.Opening, Field: a.Field}}
}
