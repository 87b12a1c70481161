package ontop

import (
	"strings"

	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
)

// Plain is what the screen says where nothing is drawn.
func (m Screen) Plain(s desk.State) desk.Plain { return m.entry.Plain(s) }

// tells is what is explained, without its drawing.
func tells(e entryscreen.Entry, s desk.State) []string {
	t, ok := topicOf(e, s)
	if !ok {
		return nil
	}
	lines := []string{t.asks(s)}
	if t.comes != nil {
		lines = append(lines, strings.Split(t.comes(s), "\n")...)
	}
	return aloud.Rows(lines...)
}
