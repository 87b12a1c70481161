package place

import (
	"context"
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
)

// far says how far a search for a place is.
func far(at rules.Stage, done, of int) string {
	switch at {
	case rules.AtYaws:
		return fmt.Sprintf("heading %d of %d", done+1, of)
	case rules.AtInTheWay:
		return fmt.Sprintf("what stands in the way, %d of %d", done+1, of)
	}
	return "the nearest place beyond"
}

// seek works out where the heater fits; it may take longer than a frame.
func seek(s desk.State) (moving.Search[rules.Assistance], tea.Cmd) {
	result := s.Result
	return moving.Seek(s, func(ctx context.Context, tell func(string)) rules.Assistance {
		said, _ := rules.Assist(ctx, &result, func(at rules.Stage, done, of int) { tell(far(at, done, of)) }) // its only error is that it was stopped
		return said
	})
}
