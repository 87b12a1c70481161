package place

import (
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"

	"bench.example/undermark/tui/figures/trial"
)

func TestNoPartOfARefusedPlaceIsShown(t *testing.T) {
	s := trial.State(t)
	p, after, _ := trial.After(New(), s, trial.Keys("t 1219 enter L652")...)
	assert.Contains(t, ansi.Strip(p.View(after, 100, 27)), "x 1209.7,", "sqrt(1219^2 - 150^2) = 1209.74")
	p, after, _ = trial.After(p, after, trial.Keys("up 1219x down")...)
	assert.NotContains(t, ansi.Strip(p.View(after, 100, 27)), "x 1209.7,")
	assert.Contains(t, ansi.Strip(p.View(after, 100, 27)), "1219x")
	p, after, _ = trial.After(p, after, trial.Keys("enter")...)
	assert.Equal(t, s.Job.Cut.At, after.Job.Cut.At)
	assert.True(t, p.Typing())
}

func TestWhatStandsInAPromptIsTypedOver(t *testing.T) {
	s := trial.State(t)
	_, after, _ := trial.After(New(), s, trial.Keys("k enter 102 enter")...)
	assert.Equal(t, 102., after.Job.Cut.Across)
}
