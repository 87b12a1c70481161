package tui

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// In a job into which nothing was put yet nothing is called clear, and each screen that judges says what comes first.
func TestAnEmptyJobIsNowhereClear(t *testing.T) {
	b, _ := van(t)
	for _, title := range []string{"Place", "Runs", "Marks", "Checks"} {
		b.goTo(b.titled(title))
		all := strings.Join(append(b.screens[b.at].Plain(b.desk.State).All(), b.rows()...), "\n")
		assert.NotContains(t, strings.ToLower(all), "clear", title)
		assert.Contains(t, all, "first the floor (2), then what is below it (1)", title)
	}
	b.keys(`2 enter 40 enter 3200 enter 1780 enter 31 enter 460 esc`).goTo(b.titled("Place"))
	assert.True(t, b.shows("first enter what is below the floor (1)"))
}
