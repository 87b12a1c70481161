package match

import (
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
)

// Plain is what the screen says where nothing is drawn.
func (m Screen) Plain(s desk.State) desk.Plain { return m.entry.Plain(fitted(s)) }

// told is what a fitter should know who has no matching point yet.
func told(_ entryscreen.Entry, s desk.State) []string {
	if len(s.Job.Ties) > 0 {
		return nil
	}
	return explained(s)
}
