package aloud

import (
	"fmt"

	"bench.example/undermark/geometry/field"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// squareMetre is a square metre in mm².
const squareMetre = 1e6

// Areas says where the floor is open for the cut's centre, the roomiest area first, and which way each lies from the cut; nothing
// where there is none.
func Areas(areas []field.Area, s desk.State) []string {
	if len(s.Faults) > 0 || len(areas) == 0 {
		return nil
	}
	u := s.Settings.Units
	lines := []string{fmt.Sprintf("Open areas for the cut's centre, the uncertainty left out: %d.", len(areas))}
	for _, a := range areas {
		text := fmt.Sprintf("Area %s, %s square metres: best at %s, %s", a.Name, survey.Fixed(a.Size/squareMetre, 3), Spot(a.Best.At, s), words.Spare(a.Best.Margin, u))
		if s.Job.Cut != nil {
			by := a.Best.At.Sub(s.Result.Plan.Cut.At)
			text = Joined(text, desk.Length(by.Norm(), u)+" from the cut "+Towards(by, s))
		}
		lines = append(lines, text)
	}
	return lines
}
