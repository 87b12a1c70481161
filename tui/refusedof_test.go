package tui

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/screentest"
)

// No two forms keep what was refused under one name: the other would take it for its own, and drop it as taken.
func TestEachFormKeepsWhatWasRefusedByItself(t *testing.T) {
	s := screentest.Judged(screentest.State(t), screentest.Full(t))
	at := map[string]string{}
	for _, screen := range Screens() {
		forms, is := screen.(recorder)
		if !is {
			continue
		}
		for _, record := range forms.Records(s) {
			if of, _ := form.NameOf(record, s.Job); of != "" {
				assert.Empty(t, at[of], "%s on %s", of, screen.Title())
				at[of] = screen.Title()
			}
		}
	}
	require.NotEmpty(t, at)
}

// A layer of the floor without its kind is refused, and stays so.
func TestALayerWithoutItsKindIsRefused(t *testing.T) {
	b, _ := van(t)
	b.goTo(b.titled("Sizing"))
	b.keys(`home enter 12 enter`)
	require.Len(t, b.desk.State.Job.Refused(), 1)
	b.keys(`esc`)
	require.Len(t, b.desk.State.Job.Refused(), 1, b.say)
	assert.NotContains(t, b.say, "now taken")
	b.keys(`1 n c 652`)
	assert.Len(t, b.desk.State.Job.Refused(), 1)
	b.keys(`esc 0 home enter p12 esc`)
	assert.Empty(t, b.desk.State.Job.Refused())
	require.Len(t, b.desk.State.Job.Stack, 1)
}
