package jobcard

import (
	"strings"

	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
)

// Plain is what the screen says where nothing is drawn.
func (m Screen) Plain(s desk.State) desk.Plain { return m.entry.Plain(s) }

// tells is what is said beside a row, which is in words anyway.
func tells(e entryscreen.Entry, s desk.State) []string {
	text, _ := beside(e, s, aloud.Unbroken, aloud.Unbroken)
	return aloud.Rows(strings.Split(text, "\n")...)
}
