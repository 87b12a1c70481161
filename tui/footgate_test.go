package tui

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
)

// Every answer that stands before the marks is on the foot of the narrowest window.
func TestTheFootHasEachAnswerBeforeTheMarks(t *testing.T) {
	b := sampled(t)
	b.send(tea.WindowSizeMsg{Width: 60, Height: 20})
	b.keys("6")
	foot := b.rows()[19]
	for _, answer := range []string{"n none there", "e enter it", "l leave open"} {
		assert.Contains(t, foot, answer)
	}
	b.keys("l")
	foot = b.rows()[19]
	for _, answer := range []string{"Enter shows the worst", "m mark all the same"} {
		assert.Contains(t, foot, answer)
	}
}

// What is typed for a name takes the place of one that nobody gave; of one that somebody did it goes on.
func TestANameThatNobodyGaveIsReplaced(t *testing.T) {
	o := options(t)
	o.Path, o.Screens = "", Screens()
	b := started(t, o)
	b.keys("ctrl+s")
	b.press("my-van.toml")
	assert.Equal(t, "my-van.toml", b.overlay().(*prompt).fields[0].Text)
}
