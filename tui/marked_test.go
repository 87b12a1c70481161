package tui

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/history"
	"bench.example/undermark/vehicles"
)

// sampled is the program on a copy of the sample van, in the smallest window there is.
func sampled(t *testing.T) *bench {
	o := options(t)
	o.Screens = Screens()
	require.NoError(t, os.WriteFile(o.Path, vehicles.Demo().Format(), 0o644))
	b := started(t, o)
	b.send(tea.WindowSizeMsg{Width: 60, Height: 20})
	return b
}

// The pilot comes out 8 mm off: the plate and its bolts go with it, and their marks are to be made again.
func TestMarksThatAreNoLongerMadeAreNamed(t *testing.T) {
	b := sampled(t).keys(`6 l m enter`)
	for n := 0; !strings.Contains(b.say, "All made"); n++ { // of the exhaust, which is foul, none is to be made
		require.Less(t, n, 50)
		b.keys(`enter`)
	}
	b.keys(`d 1272 enter l693 enter`)
	require.NotNil(t, b.desk.State.Job.Cut.Drilled)
	assert.Contains(t, b.say, "Until it is explained where the hole is, what is checked at the cut is held back.")
	assert.Contains(t, b.say, "Moved 8.1 mm forward, so to be marked again: plate 1 rear right, plate 2 front right, plate 3 front left, plate 4 rear left, bolt hole 1, and 3 more.")
	assert.True(t, b.desk.State.Ticked["cut centre"], "the hole is where it was marked, or it was not drilled there")
	assert.False(t, b.desk.State.Ticked["plate 1"])
}

// A pilot hole 1 mm off moves what goes with it by less than anybody marks to: with room to spare round it nothing is marked again, and that is said.
// At 8 mm it is. Where the clearances can't spare that millimetre, it is, too.
func TestMarksThatThePilotMovedLessThanTheirOwnErrorStayMade(t *testing.T) {
	measured := func(b *bench, off float64) {
		below := b.desk.State.Marks.Marks[0].Below
		b.keys(fmt.Sprintf(`d %.1f enter l%.1f enter`, below.Bumper+off, below.Left))
		require.NotNil(t, b.desk.State.Job.Cut.Drilled)
	}
	marked := func(job vehicles.Job) *bench {
		o := options(t)
		o.Screens = Screens()
		require.NoError(t, os.WriteFile(o.Path, job.Format(), 0o644))
		b := started(t, o).keys(`6 l m`)
		for b.overlay() != nil {
			b.keys(`enter`)
		}
		for n := 0; !strings.Contains(b.say, "All made"); n++ {
			require.Less(t, n, 50)
			b.keys(`enter`)
		}
		return b
	}
	apart := vehicles.Demo()
	cut := *apart.Cut
	cut.At = [2]float64{1400, 250}
	apart.Exhaust, apart.Intake, apart.Fuel = nil, nil, nil
	apart = apart.WithCut(cut)

	b := marked(apart)
	before := len(b.desk.State.Ticked)
	require.Greater(t, rules.MayStay(&b.desk.State.Result), 1.)
	measured(b, 1)
	assert.Len(t, b.desk.State.Ticked, before)
	assert.Contains(t, b.say, "8 made marks lie 1 mm forward, less than their ±: they stay made.")
	assert.NotContains(t, b.say, "to be marked again")
	b.keys(`ctrl+z`)
	assert.Len(t, b.desk.State.Ticked, before)
	measured(b, 8)
	assert.False(t, b.desk.State.Ticked["plate 1"])

	tight := marked(vehicles.Demo()) // its cut is foul
	require.Zero(t, rules.MayStay(&tight.desk.State.Result))
	measured(tight, 1)
	assert.False(t, tight.desk.State.Ticked["plate 1"])
}

// Marks that moved alike are told together, however many ways the others went.
func TestMarksThatMovedAlikeAreToldTogether(t *testing.T) {
	moved := func(x, y float64, names ...string) (all []history.Moved) {
		for _, name := range names {
			all = append(all, history.Moved{Words: name, By: geometry.Point{X: x, Y: y}})
		}
		return all
	}
	set := desk.Settings{}
	alike := moved(8, 0, "cut centre", "plate 1", "plate 2", "plate 3", "plate 4", "bolt hole 1", "bolt hole 2")
	assert.Equal(t, "Moved 8 mm forward, so to be marked again: cut centre, plate 1, plate 2, plate 3, plate 4, and 2 more.", unmade(alike, set))
	two := append(moved(8, 0, "plate 1", "plate 2"), moved(0, 3, "clip 1")...)
	two = append(two, moved(8, 0, "plate 3")...)
	assert.Equal(t, "Moved, so to be marked again: 8 mm forward: plate 1, plate 2, plate 3; 3 mm left: clip 1.", unmade(two, set))
	assert.Equal(t, "Moved, so to be marked again: 8 mm forward: cut centre, plate 1, plate 2, plate 3, plate 4, and 2 more; 3 mm left: 2 marks.",
		unmade(append(alike, moved(0, 3, "clip 1", "clip 2")...), set))
}

// A key that bounces or is held ticks one mark, and leaves the next to be made.
func TestAKeyThatBouncesTicksOneMark(t *testing.T) {
	b := sampled(t).keys(`6 l m`)
	for b.overlay() != nil {
		b.keys(`enter`)
	}
	clock := time.Now().Add(time.Second) // since the cautions were read
	b.now = func() time.Time { return clock }
	for range 3 {
		clock = clock.Add(40 * time.Millisecond)
		b.send(tea.KeyMsg{Type: tea.KeyEnter})
	}
	assert.Len(t, b.desk.State.Ticked, 1)
	clock = clock.Add(time.Second)
	b.send(tea.KeyMsg{Type: tea.KeyEnter})
	assert.Len(t, b.desk.State.Ticked, 2)
}

// Whoever presses Enter once too often for the cautions opens nothing below them: a figure would then replace a reading.
func TestAnEagerEnterAfterTheCautionsOpensNothing(t *testing.T) {
	o := options(t)
	o.Path = ""
	b := walked(t, o, 100, 30)
	clock := time.Unix(1e9, 0)
	b.now = func() time.Time { return clock }
	enter := func(after time.Duration) {
		clock = clock.Add(after)
		b.send(tea.KeyMsg{Type: tea.KeyEnter})
	}
	enter(time.Second)
	require.Nil(t, b.overlay(), "the cautions fit a page")
	enter(250 * time.Millisecond)
	assert.False(t, b.screens[b.at].Typing())
	enter(eager)
	assert.True(t, b.screens[b.at].Typing(), "one that was meant opens it")
}

// Whoever types on at once below a text that was read means the Enter behind it.
func TestAnEnterBehindAnotherKeyIsMeant(t *testing.T) {
	o := options(t)
	o.Path = ""
	b := walked(t, o, 100, 30)
	clock := time.Unix(1e9, 0)
	b.now = func() time.Time { return clock }
	b.send(tea.KeyMsg{Type: tea.KeyEnter})
	require.Nil(t, b.overlay(), "the cautions fit a page")
	b.send(tea.KeyMsg{Type: tea.KeyDown})
	b.send(tea.KeyMsg{Type: tea.KeyEnter})
	assert.True(t, b.screens[b.at].Typing())
}
