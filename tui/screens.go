package tui

import (
	"bench.example/undermark/tui/checks"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/jobcard"
	"bench.example/undermark/tui/marks"
	"bench.example/undermark/tui/match"
	"bench.example/undermark/tui/ontop"
	"bench.example/undermark/tui/place"
	"bench.example/undermark/tui/runs"
	"bench.example/undermark/tui/sizing"
	"bench.example/undermark/tui/under"
	steps "bench.example/undermark/tui/work"
)

// Screens are the program's screens, in the order of their digits: that of the work.
func Screens() []desk.Screen {
	return []desk.Screen{
		under.New(), ontop.New(), match.New(), place.New(), runs.New(), marks.New(), checks.New(), jobcard.New(), steps.New(), sizing.New(),
	}
}
