package words

import (
	"math"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// PilotOff says how far from where it was meant a drilled pilot hole came out, and how far the centre may still move.
func PilotOff(p rules.Pilot, set desk.Settings) string {
	u := set.Units
	fore, side := " forward", desk.Left(set)
	if p.Off.X < 0 {
		fore = " back"
	}
	if p.Off.Y < 0 {
		side = desk.Right(set)
	}
	return "Pilot off " + survey.Format(math.Abs(p.Off.X), u) + fore + ", " + survey.Format(math.Abs(p.Off.Y), u) + " " + side +
		"; the centre may move " + desk.Length(p.MayMove, u)
}
