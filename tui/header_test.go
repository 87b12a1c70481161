package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
)

// The brackets round the title of the screen that is shown stand apart from its neighbours, and no title goes from under a thumb that
// taps twice.
func TestTheBracketsStandApart(t *testing.T) {
	for _, w := range []int{60, 80, 100, 120, 160} {
		b, _ := van(t)
		b.send(tea.WindowSizeMsg{Width: w, Height: 30})
		for i := range b.screens {
			before := b.titleButtons()[i]
			b.goTo(i)
			row := ansi.Strip(b.header())
			assert.Equal(t, w, ansi.StringWidth(row))
			if at := strings.Index(row, "["); at > 0 {
				assert.Equal(t, " ", row[at-1:at], row)
			}
			assert.Equal(t, " ", row[strings.Index(row, "]")+1:][:1], row)
			for x := before.from; x < before.from+before.width; x++ {
				assert.True(t, b.titleButtons()[i].holds(x) || x == before.from+before.width-1, "%d columns: %s at column %d", w, before.text, x)
			}
		}
	}
}
