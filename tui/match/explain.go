package match

import (
	"strings"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
)

// bolt is what a matching point is, at most 50 columns wide.
const bolt = `
from the side             a bolt through the floor
BUMPER ├──── above: 1452 from the BUMPER ───┤
┌───┐  ┆                                    ◆
│   │  ▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒┃▒▒▒▒▒
└───┘  ┆                                    ◆
       ├──── below: 1458 from the BUMPER ───┤
`

// tells are what a fitter who has no matching point yet should know, the most important first.
var tells = []string{
	"A matching point is one thing that can be reached from both sides: a seat bolt, a lashing eye, a drain, a hole.",
	"Read it from below, then from above: from the DATUM, and across, each from its own zero.",
	"Two tie the sides together, far apart and round the cut. Three find swapped sides, four the one that is wrong.",
}

// explained is that with the datum's own name.
func explained(s desk.State) []string {
	lines := make([]string, len(tells))
	for i, tell := range tells {
		lines[i] = strings.ReplaceAll(tell, "DATUM", s.Job.Datum.Called())
	}
	return lines
}

// beside explains matching points until the first one is there.
func beside(_ entryscreen.Entry, s desk.State, w, h int) (text string, rows int) {
	if len(s.Job.Ties) > 0 {
		return "", 0
	}
	look := s.Settings.Styles()
	out := strings.Split(strings.Trim(desk.DatumIn(bolt, &s.Job.Datum), "\n"), "\n")
	for i, tell := range explained(s) {
		for _, row := range desk.Wrap(tell, w-1) {
			if i == 0 {
				row = look.Strong.Render(row)
			}
			out = append(out, row)
		}
	}
	for i := range out {
		out[i] = " " + out[i]
	}
	return strings.Join(out, "\n"), len(out)
}
