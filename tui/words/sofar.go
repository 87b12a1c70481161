package words

import (
	"fmt"

	"bench.example/undermark/rules"
)

// NoneKept is said where what is proposed breaks rules: of a few places, each at its easiest heading, and not surely what breaks them by least.
const NoneKept = "none tried keeps every rule: near misses"

// SoFar says how far a search for layouts is.
func SoFar(p rules.Progress) string {
	of := fmt.Sprintf(", %d of %d", p.Done+1, p.Of)
	switch p.At {
	case rules.AtWays:
		return "ways out" + of
	case rules.AtMisses:
		return NoneKept + of
	case rules.AtInTheWay:
		return "what stands in the way" + of
	}
	return fmt.Sprintf("runs from place %d of %d, %d so far keep every rule", p.Done+1, p.Of, p.Kept)
}

// The head of layouts that are proposed, and what is said of each thing that would make room: both go on.
const (
	WholeLayouts = "Whole layouts of what was entered"
	WouldFit     = "The heater would fit where it is wanted with "
)

// NoMoreLayouts is said below layouts where there are fewer than could be proposed.
const NoMoreLayouts = "No other was found that differs to the eye."
