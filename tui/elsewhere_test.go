package tui

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// goes taps the title of a screen.
func (b *bench) goes(title string) {
	p := b.titleButtons()[b.titled(title)]
	b.tap(p.from+p.width/2, 0)
	require.Equal(b.t, title, b.screens[b.at].Title())
}

// A tap may go elsewhere while a field is open. Left open it would take the digit of the next screen into a reading.
func TestWhoeverGoesElsewhereLeavesTheField(t *testing.T) {
	for title, opened := range map[string]string{"Underneath": `1 enter`, "On top": `2 enter`, "Match": `3 n`, "Job": `8 end enter`, "Work": `9 end enter`, "Sizing": `0 enter`} {
		t.Run(title, func(t *testing.T) {
			b, _ := fuzzed(t, vehicles.Demo().Format())
			at := b.titled(title)
			b.keys(opened)
			require.True(t, b.screens[at].Typing(), b.View())
			job := b.desk.State.Job
			for _, elsewhere := range []string{"Checks", "Place"} {
				b.goes(elsewhere)
				require.False(t, b.screens[at].Typing())
				b.goes(title)
			}
			b.keys(`7`)
			assert.Equal(t, "Checks", b.screens[b.at].Title())
			assert.Equal(t, job, b.desk.State.Job)
		})
	}
}

// What is typed at a prompt is nowhere else until it is taken: a look at another screen loses none of it.
func TestAPromptOutlastsALookElsewhere(t *testing.T) {
	b, _ := fuzzed(t, vehicles.Demo().Format())
	b.keys(`4 t 123`)
	b.goes("Underneath")
	b.goes("Place")
	b.keys(`4`)
	require.True(t, b.screens[b.at].Typing())
	assert.Contains(t, flat(b), "from the bumper 1234 mm")
}
