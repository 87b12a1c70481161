package tui

import (
	"bytes"
	"io"
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/sparing"
	"bench.example/undermark/vehicles"
)

// held presses keys of names, and holds back what is to be done beside the screen.
func (b *bench) held(names ...string) (beside []tea.Cmd) {
	for _, name := range names {
		_, cmd := b.Root.Update(namedKey(name))
		beside = append(beside, cmd)
	}
	return beside
}

// Commands run beside each other. The write of an older setting that comes last would bring back inches where millimetres are shown.
func TestTheLatestSettingStaysWhicheverWriteEndsLast(t *testing.T) {
	b, o := fuzzed(t, vehicles.Demo().Format())
	beside := b.held("u", "b", "u", "B")
	slices.Reverse(beside)
	for _, cmd := range beside {
		b.do(cmd)
	}
	kept, err := desk.LoadSettings(o.SettingsPath)
	require.NoError(t, err)
	shown := b.desk.State.Settings
	kept.Colour = shown.Colour // of the terminal
	assert.Equal(t, shown, kept)
	assert.True(t, kept.Big)
}

// So it is with marks that are ticked one after another.
func TestTheLatestTickStaysWhicheverWriteEndsLast(t *testing.T) {
	b, o := marked(t)
	var beside []tea.Cmd
	for _, mark := range []string{"cut centre", "plate 1", "plate 2"} {
		beside = append(beside, b.apply(desk.Change{Tick: mark}))
	}
	slices.Reverse(beside)
	for _, cmd := range beside {
		b.do(cmd)
	}
	assert.Len(t, b.desk.Made, 3)
	assert.Equal(t, b.desk.Made, started(t, o).desk.Made)
}

// Whoever quits at once after a key: what it set going is done first.
func TestWhatIsNotWrittenDownIsWrittenAtTheEnd(t *testing.T) {
	o := options(t)
	o.Path = ""
	o.Screens = Screens()
	r, err := New(o)
	require.NoError(t, err)
	r.w, r.h = 100, 30
	set := r.desk.State.Settings
	set.Units = desk.Inches
	r.setSettings(set) // what is to be done beside the screen is not
	var told bytes.Buffer
	require.NoError(t, r.show(r, &told, sparing.NewLeaving(), tea.WithInput(strings.NewReader("\x03")), tea.WithOutput(io.Discard), tea.WithoutSignals()))
	kept, err := desk.LoadSettings(o.SettingsPath)
	require.NoError(t, err)
	assert.Equal(t, desk.Inches, kept.Units)
	assert.Empty(t, told.String())
}
