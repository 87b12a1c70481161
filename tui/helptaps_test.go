package tui

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
)

// shown opens the whole van in the smallest window at a screen, with keys pressed there.
func shown(t *testing.T, title, keys string) *bench {
	b, _ := wholeVan(t, windows[0][0], windows[0][1])
	b.goTo(b.titled(title))
	return b.keys(strings.NewReplacer("<", " ", ">", " ").Replace(keys))
}

// helped opens the help with a tap at the foot, and taps the row of a binding there, or one of its keys.
func helped(b *bench, k key.Binding, sent string, everywhere bool) {
	before := len(b.overlays)
	for _, p := range b.hintButtons() {
		if p.text == "?" || p.text == "…" {
			b.tap(p.from, b.h-1)
		}
	}
	require.Len(b.t, b.overlays, before+1, "the foot leads to the help")
	lines := b.helpLines([]keysOf{{screen: b.at, keys: b.screens[b.at].Keys(b.desk.State)}, {screen: -1, keys: b.everywhere()}}, desk.Styles{}, b.w-4)
	wanted := -1
	for i, line := range lines {
		if everywhere != (line.of < 0) || len(line.buttons) == 0 {
			continue
		}
		if head := strings.Fields(line.text); strings.HasPrefix(strings.TrimSpace(line.text), k.Help().Key+" ") && len(line.buttons) == 1 && len(head) > 0 {
			wanted = i
			break
		}
		if len(line.buttons) > 1 && len(sentBy(k)) > 1 && line.buttons[0].key == sentBy(k)[0] && len(line.buttons) == len(sentBy(k)) {
			wanted = i
			break
		}
	}
	require.GreaterOrEqual(b.t, wanted, 0, "%s %s is in the help", k.Help().Key, k.Help().Desc)
	reader := b.overlay().(*reader)
	for range lines {
		if _, room := reader.page(b.Root, b.w, b.bodyHeight()); wanted < reader.top+room {
			break
		}
		b.send(tea.MouseMsg{X: 5, Y: 8, Action: tea.MouseActionPress, Button: tea.MouseButtonWheelDown})
	}
	for _, p := range lines[wanted].buttons {
		if p.key == sent {
			b.tap(readerIndent+p.from, headRows+len(b.bandRows())+readerHead+wanted-reader.top)
			return
		}
	}
	require.Fail(b.t, "nothing sends "+sent)
}

// In the smallest window, too, all that a key does is done by a tap: where the foot has no room for it, on its row of the help.
func TestEachKeyIsDoneByATapOnItsRowOfTheHelp(t *testing.T) {
	ofWholeRun(t)
	view := func(b *bench) string {
		folder := "/" + filepath.Base(filepath.Dir(b.document.Path)) + "/" // another each time
		return strings.ReplaceAll(strings.Join(b.rows(), "\n"), folder, "/000/")
	}
	taps, done := 0, map[string]bool{}
	each := func(title, keys string, bindings []key.Binding, everywhere bool) {
		for _, k := range bindings {
			id := title + k.Help().Key + k.Help().Desc
			if done[id] {
				continue
			}
			done[id] = true
			for _, sent := range sentBy(k) {
				byKey, byTap := shown(t, title, keys), shown(t, title, keys)
				what := title + " " + keys + ": " + k.Help().Key + " " + k.Help().Desc + ", " + sent
				helped(byTap, k, sent, everywhere)
				byKey.press(sent)
				taps++
				require.Equal(t, view(byKey), view(byTap), what)
				assert.Equal(t, string(byKey.desk.State.Job.Format()), string(byTap.desk.State.Job.Format()), what)
				assert.Equal(t, byKey.quit, byTap.quit, what)
			}
		}
	}
	for title, states := range tappable {
		for _, keys := range states {
			b := shown(t, title, keys)
			each(title, keys, b.screens[b.at].Keys(b.desk.State), false)
		}
	}
	each("Place", "", desk.Everywhere(), true)
	t.Log(taps)
}

// While a field has the letters a tap in the help does what holds everywhere and types nothing.
func TestTheHelpIsATapAwayWhileAFieldIsTypedIn(t *testing.T) {
	for _, k := range []key.Binding{desk.KeyLook, desk.KeyUnits, desk.KeyFigures} {
		b := shown(t, "Underneath", "<enter><down><down><down>")
		job, look := string(b.desk.State.Job.Format()), b.desk.State.Settings
		helped(b, k, k.Keys()[0], true)
		assert.Equal(t, job, string(b.desk.State.Job.Format()), k.Help().Desc)
		assert.NotEqual(t, look, b.desk.State.Settings, k.Help().Desc)
		assert.True(t, b.screens[b.at].Typing(), "and the field is typed in still")
	}
}

// A row of another screen's keys leads to that screen's help: nothing is done unseen.
func TestAnotherScreensKeyIsNotPressedUnseen(t *testing.T) {
	b := shown(t, "Underneath", "")
	job := string(b.desk.State.Job.Format())
	b.doHelped(b.titled("Place"), "n")
	assert.Equal(t, job, string(b.desk.State.Job.Format()))
	assert.True(t, b.shows("Place (the screen you are on)"))
}
