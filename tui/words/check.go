package words

import (
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// CheckID is the name by which a length to check is ticked; no mark has it.
func CheckID(c rules.Check) string { return "from " + c.From + " to " + c.To }

// CheckText names a length to check: "diagonal: plate 1 to plate 3".
func CheckText(c rules.Check, set desk.Settings) string {
	what := string(c.Name)
	if IsDiagonal(c) {
		what = "diagonal"
	}
	return what + ": " + CheckEnds(c, set)
}

// CheckEnds names its two ends: "plate 1 to plate 3".
func CheckEnds(c rules.Check, set desk.Settings) string {
	return CheckEnd(c.From, set) + " to " + CheckEnd(c.To, set)
}

// CheckEnd names one of its ends, its sides as the workshop calls them.
func CheckEnd(name string, set desk.Settings) string {
	return strings.NewReplacer("left", desk.Left(set), "right", desk.Right(set)).Replace(name)
}

// IsDiagonal says whether a length to check is one of two that must be alike.
func IsDiagonal(c rules.Check) bool {
	return c.Name == rules.PlateDiagonal || c.Name == rules.PinDiagonal
}
