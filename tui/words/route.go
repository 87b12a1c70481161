package words

import (
	"fmt"

	"bench.example/undermark/rules"
)

// Tried says how far a search for a run is: "clear of what is uncertain, 1200 legs tried".
func Tried(at rules.Aim, legs int) string {
	aim := [...]string{rules.ToBeClear: "clear of all that is uncertain", rules.ToKeepRules: "breaking no rule", rules.ToMissLeast: "the nearest miss"}[at]
	return fmt.Sprintf("%s, %d legs tried", aim, legs)
}

// NoWay says that nothing was found at all.
func NoWay(run fmt.Stringer) string {
	return "no " + run.String() + " leads there, whatever rule it breaks"
}

// StubBlocked says that a run is foul at its stub, so that no end mends it.
func StubBlocked(run fmt.Stringer, by string) string {
	return "the " + run.String() + "'s stub itself is too near to " + by + ": no way from there mends that; move the cut, or turn the heater"
}

// StaysAbove says which points of a fuel line that was sought stay, as they are above the floor.
func StaysAbove(points int) string {
	return fmt.Sprintf("The line's first %d points, above the floor and through it, stay as they are.", points)
}
