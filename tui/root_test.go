package tui

import (
	"os"
	"path/filepath"
	"reflect"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
	"bench.example/undermark/vehicles"
)

// plain is a screen that does what its keys say: e edits, m moves in one step, t starts typing, Esc ends it, and
// what is typed is kept.
type plain struct {
	title  string
	typing bool
	typed  string
	seen   []string
}

func (p plain) Title() string { return p.title }
func (p plain) Typing() bool  { return p.typing }

func (p plain) Update(msg tea.Msg, s desk.State) (desk.Screen, desk.Change, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.MouseMsg:
		p.seen = append(p.seen, "mouse "+msg.String()+" at "+strings.Repeat("x", msg.X)+strings.Repeat("y", msg.Y))
		return p, desk.Change{}, nil
	case tea.KeyMsg:
		p.seen = append(p.seen, msg.String())
		switch {
		case p.typing && msg.Type == tea.KeyEsc:
			p.typing = false
		case p.typing:
			p.typed += string(msg.Runes)
		case msg.String() == "t":
			p.typing = true
		case msg.String() == "e" || msg.String() == "m":
			job := s.Job
			job.Notes += msg.String()
			step := map[string]string{"m": "move"}[msg.String()]
			return p, desk.Change{Job: &job, Step: step}, nil
		}
	}
	return p, desk.Change{}, nil
}

func (p plain) View(s desk.State, w, h int) string {
	return desk.Fit(p.title+" body "+s.Job.Notes, w, h)
}

func (p plain) Plain(s desk.State) desk.Plain {
	lines := []string{p.title + " body " + s.Job.Notes}
	return desk.Plain{Here: lines, All: func() []string { return lines }}
}

func (p plain) Keys(desk.State) []key.Binding {
	return []key.Binding{
		key.NewBinding(key.WithKeys("e"), key.WithHelp("e", "edit "+p.title)),
		key.NewBinding(key.WithKeys("m"), key.WithHelp("m", "move")),
	}
}

// bench drives a root without a terminal: it runs the commands at once, one after another.
type bench struct {
	*Root
	t    *testing.T
	over tea.Model // what stands round the root; nil for nothing
	quit bool
}

func options(t *testing.T) Options {
	dir := t.TempDir()
	seen := filepath.Join(dir, "state", "cautions-read")
	require.NoError(t, os.MkdirAll(filepath.Dir(seen), 0o755))
	require.NoError(t, os.WriteFile(seen, []byte(cautionsVersion), 0o644))
	return Options{
		Path: filepath.Join(dir, "van.toml"), Book: rules.Builtin(),
		Screens:      []desk.Screen{plain{title: "Underneath"}, plain{title: "On top"}, plain{title: "Place"}, plain{title: "Checks"}},
		SettingsPath: filepath.Join(dir, "config", "settings.toml"), StateDir: filepath.Join(dir, "state"),
	}
}

func started(t *testing.T, o Options) *bench {
	r, err := New(o)
	require.NoError(t, err)
	r.pause, r.settle, r.fade = 0, 0, 0
	b := &bench{Root: r, t: t}
	t.Cleanup(func() { b.Root.journal.close() })
	b.do(r.Init())
	b.send(tea.WindowSizeMsg{Width: 100, Height: 30})
	return b
}

// opened starts on a job file that is there.
func opened(t *testing.T) (*bench, Options) {
	o := options(t)
	require.NoError(t, os.WriteFile(o.Path, vehicles.NewJob("TL-07").Format(), 0o644))
	return started(t, o), o
}

func (b *bench) send(msg tea.Msg) {
	var model tea.Model = b.Root
	if b.over != nil {
		model = b.over
	}
	_, cmd := model.Update(msg)
	b.do(cmd)
}

func (b *bench) do(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil:
	case tea.QuitMsg:
		b.quit = true
	case tea.BatchMsg:
		for _, c := range msg {
			b.do(c)
		}
	default:
		if v := reflect.ValueOf(msg); v.Kind() == reflect.Slice && v.Type().Elem() == reflect.TypeFor[tea.Cmd]() {
			for i := range v.Len() { // a sequence
				b.do(v.Index(i).Interface().(tea.Cmd))
			}
			return
		}
		b.send(msg)
	}
}

// press sends keys by name, and text in one read where it is no name.
func (b *bench) press(names ...string) *bench {
	for _, name := range names {
		msg, known := keyNamed(name)
		if !known {
			msg = tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
		}
		b.deaf = time.Time{} // a hand, not a key that bounces
		b.send(msg)
	}
	return b
}

func (b *bench) tap(x, y int) {
	b.send(tea.MouseMsg{X: x, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
}

// rows are the rows of the picture, without colours.
func (b *bench) rows() []string { return strings.Split(ansi.Strip(b.View()), "\n") }

func (b *bench) shows(text string) bool { return strings.Contains(ansi.Strip(b.View()), text) }

func (b *bench) screen() plain { return b.screens[b.at].(plain) }

// tapOn taps the first place where the text shows.
func (b *bench) tapOn(text string) {
	for y, row := range b.rows() {
		if i := strings.Index(row, text); i >= 0 {
			b.tap(ansi.StringWidth(row[:i]), y)
			return
		}
	}
	require.Fail(b.t, "not on the screen: "+text, ansi.Strip(b.View()))
}

func TestTheFirstViewWaitsForTheSize(t *testing.T) {
	r, err := New(options(t))
	require.NoError(t, err)
	defer r.journal.close()
	assert.Empty(t, r.View())
}

func TestTheViewFillsTheWindowExactly(t *testing.T) {
	b, _ := opened(t)
	for _, overlay := range []string{"", "?", "ctrl+c"} {
		if overlay != "" {
			b.press("e", overlay)
		}
		for _, size := range [][2]int{{60, 20}, {61, 20}, {100, 30}, {160, 50}, {30, 9}, {200, 19}, {1, 1}} {
			b.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			rows := b.rows()
			assert.Len(t, rows, size[1], "%v %q", size, overlay)
			for _, row := range rows {
				assert.Equal(t, size[0], ansi.StringWidth(row), "%v %q: %q", size, overlay, row)
			}
		}
		b.send(tea.WindowSizeMsg{Width: 100, Height: 30})
		b.press("esc")
	}
}

func TestDigitsGoToScreens(t *testing.T) {
	b, _ := opened(t)
	b.press("3")
	assert.True(t, b.shows("[3 Place]") && b.shows("Place body"))
	b.tapOn("2 On top")
	assert.True(t, b.shows("On top body"))
	b.tap(30, 1) // the heading
	assert.True(t, b.shows("[4 Checks]"))
	b.press("9", "6")
	assert.True(t, b.shows("[4 Checks]"), "there is no sixth of these screens")
}

func TestLettersInAFieldAreNoKeys(t *testing.T) {
	b, _ := opened(t)
	b.press("t", "2", "?", "u", "b", "e", "m")
	assert.Equal(t, "2?ubem", b.screen().typed)
	assert.Equal(t, 0, b.at)
	assert.False(t, b.desk.State.Dirty)
	assert.Equal(t, desk.Millimetres, b.desk.State.Settings.Units)
	b.press("esc", "2")
	assert.Equal(t, 1, b.at)
}

func TestFastLettersAreTakenOneByOne(t *testing.T) {
	b, _ := opened(t)
	b.press("mm") // one read
	assert.Equal(t, "mm", b.desk.State.Job.Notes)
	b.press("t4u")
	assert.Equal(t, "4u", b.screen().typed, "the t opens a field, which the rest belongs to")
}

func TestPastedTextIsNoKeys(t *testing.T) {
	b, _ := opened(t)
	paste := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("e2"), Paste: true}
	b.send(paste)
	assert.Empty(t, b.screen().seen)
	assert.Equal(t, 0, b.at)
	assert.Empty(t, b.desk.State.Job.Notes)
	b.press("t")
	b.send(paste)
	assert.Equal(t, "e2", b.screen().typed)
}

func TestUndoTakesARowOfMovesAtOnce(t *testing.T) {
	b, _ := opened(t)
	b.press("e", "m", "m", "m")
	assert.Equal(t, "emmm", b.desk.State.Job.Notes)
	b.press("ctrl+z")
	assert.Equal(t, "e", b.desk.State.Job.Notes)
	assert.True(t, b.shows("took back: job: notes"))
	b.press("ctrl+z")
	assert.Empty(t, b.desk.State.Job.Notes)
	assert.False(t, b.desk.State.Dirty, "back at what is on the disk")
	b.press("ctrl+z")
	assert.True(t, b.shows("nothing to undo"))
	b.press("ctrl+y", "ctrl+y")
	assert.Equal(t, "emmm", b.desk.State.Job.Notes)
	b.press("ctrl+z", "ctrl+y")
	assert.True(t, b.shows("done again: job: notes"))
	b.press("ctrl+z", "m", "ctrl+y")
	assert.Equal(t, "em", b.desk.State.Job.Notes, "an edit forgets what was undone")
	b.press("m", "2", "1", "m", "ctrl+z")
	assert.Equal(t, "emm", b.desk.State.Job.Notes, "going to another screen ends the step")
}

func TestUnitsAndLookAreKept(t *testing.T) {
	b, o := opened(t)
	b.press("u")
	for _, want := range []looks.Look{looks.Light, looks.Sun, looks.Night} {
		b.press("b")
		kept, err := desk.LoadSettings(o.SettingsPath)
		require.NoError(t, err)
		assert.Equal(t, desk.Inches, kept.Units)
		assert.Equal(t, want, kept.Look)
		assert.True(t, b.shows(want.String()+" look; this terminal shows no colours"), "what the key can't do is said")
	}
	b.press("u", "b")
	assert.Equal(t, desk.Settings{}, b.desk.State.Settings)
	b.desk.State.Settings.Colour = desk.TrueColour
	b.press("b", "b")
	assert.True(t, b.shows("sun look"))
	assert.False(t, b.shows("sun look;"))
	for i, row := range strings.Split(b.View(), "\n") {
		assert.True(t, strings.HasPrefix(row, "\x1b[0;38;2;0;0;0;48;2;255;255;255m"), "row %d", i)
	}
}

func TestHintsAreTapped(t *testing.T) {
	b, _ := opened(t)
	b.tapOn("edit Underneath")
	assert.Equal(t, "e", b.desk.State.Job.Notes)
	b.tapOn("? help")
	assert.True(t, b.shows("On every screen"))
	b.press("down", "down")
	assert.True(t, b.shows("edit Place"), "the keys of every screen")
	b.tapOn("Esc close")
	assert.False(t, b.shows("On every screen"))
}

func TestTheMouseIsRelativeToTheBody(t *testing.T) {
	b, _ := opened(t)
	b.tap(3, 4)
	assert.Contains(t, b.screen().seen, "mouse left press at xxxyy")
}

func TestTheHeaderIsTappedOutOfAField(t *testing.T) {
	b, _ := opened(t)
	b.press("t", "5")
	b.tap(20, 0)
	assert.Equal(t, 1, b.at, "a tap on a screen's title goes there")
	assert.Equal(t, "5", b.screens[0].(plain).typed, "and types nothing")
}

func TestATooSmallWindowSaysWhatItNeeds(t *testing.T) {
	b, _ := opened(t)
	b.send(tea.WindowSizeMsg{Width: 50, Height: 15})
	assert.True(t, b.shows("60 columns and 20 rows"))
	b.press("e")
	assert.Empty(t, b.desk.State.Job.Notes, "what can't be seen can't be meant")
	b.send(tea.WindowSizeMsg{Width: 60, Height: 20})
	b.press("e")
	b.send(tea.WindowSizeMsg{Width: 50, Height: 15})
	b.press("ctrl+c")
	assert.True(t, b.shows("Save and quit"))
	b.press("2")
	assert.True(t, b.quit)
}

func TestTheUnsavedDotFitsTheSmallestWindow(t *testing.T) {
	o := options(t)
	var all []desk.Screen
	for _, title := range []string{"Underneath", "On top", "Match", "Place", "Runs", "Marks", "Checks", "Job", "Sizing"} {
		all = append(all, plain{title: title})
	}
	o.Screens = all
	require.NoError(t, os.WriteFile(o.Path, vehicles.NewJob("TL-07").Format(), 0o644))
	b := started(t, o)
	b.send(tea.WindowSizeMsg{Width: 60, Height: 20})
	assert.NotContains(t, b.rows()[0], "●")
	b.press("e")
	for i := range all {
		b.press(strconv.Itoa(i + 1))
		row := b.rows()[0]
		assert.Contains(t, row, "Job", "every title has room: %q", row)
		assert.Contains(t, row, "●", "%q", row)
		for k := range all {
			p := b.titleButtons()[k] // where it stands now: the brackets take columns
			b.tap(p.from+p.width/2, 0)
			assert.Equal(t, p.key, strconv.Itoa(b.at+1), "a tap goes to the title it is on")
		}
	}
	b.press("1")
	b.send(tea.WindowSizeMsg{Width: 100, Height: 30})
	assert.Contains(t, b.rows()[0], "TL-07 ● not saved")
}

func TestALineAtTheFootStaysLongEnoughToBeRead(t *testing.T) {
	b, _ := opened(t)
	clock := time.Now()
	b.now = func() time.Time { return clock }
	b.press("ctrl+z", "m", "m")
	assert.True(t, b.shows("nothing to undo"))
	clock = clock.Add(sayAtLeast + time.Second)
	b.press("m")
	assert.False(t, b.shows("nothing to undo"), "and goes with the next key")

	b.tell("read me")
	clock = clock.Add(sayAtLeast + time.Second)
	b.tap(5, 5)
	assert.False(t, b.shows("read me"), "or the next tap")
}

func TestALineGoesByItself(t *testing.T) {
	b, _ := opened(t)
	b.fade = time.Nanosecond
	_, end := b.Update(tea.KeyMsg{Type: tea.KeyCtrlZ})
	require.True(t, b.shows("nothing to undo"))
	b.do(end)
	assert.False(t, b.shows("nothing to undo"))

	b.fade = 0
	b.tell("unread")
	b.open(&question{asks: "?", answers: []answer{{"Go on", nil}}})
	silence{b.number}.happened(b.Root)
	b.press("enter")
	assert.True(t, b.shows("unread"), "what nobody could read stays")

	b.tell("another line")
	silence{b.number - 1}.happened(b.Root)
	assert.True(t, b.shows("another line"), "the end of one line is not that of the next")
}

// The foot is the keys' alone, and a line that is said has a row of its own, however low the window is.
func TestWhatIsSaidCoversNoKeys(t *testing.T) {
	b, _ := opened(t)
	for _, size := range [][2]int{{60, 20}, {100, 30}} {
		b.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		body := b.bodyHeight()
		foot := b.rows()[size[1]-1]
		require.Contains(t, foot, "? help")
		b.tell("said")
		rows := b.rows()
		assert.Equal(t, foot, rows[size[1]-1])
		assert.Contains(t, rows[size[1]-2], "said")
		assert.Less(t, headRows+body, size[1]-1, "no row of the screen's is under it")
		b.say = ""
	}
}

func TestTheCautionsAreReadOnce(t *testing.T) {
	o := options(t)
	require.NoError(t, os.Remove(filepath.Join(o.StateDir, "cautions-read")))
	require.NoError(t, os.WriteFile(o.Path, vehicles.NewJob("TL-07").Format(), 0o644))
	b := started(t, o)
	b.send(tea.WindowSizeMsg{Width: 60, Height: 20})
	assert.True(t, b.shows("Read this before working on a van"))
	b.press("esc", "2", "e")
	assert.True(t, b.shows("Read this before working on a van"), "only Enter goes on")
	for range 20 {
		b.press("enter")
	}
	assert.True(t, b.shows("Underneath body"))
	b.Root.journal.close()
	assert.True(t, started(t, o).shows("Underneath body"))
}

func TestALineIsSaidAboveTheKeysAndHidesNone(t *testing.T) {
	b, _ := opened(t)
	keys := b.rows()[29]
	b.press("ctrl+z")
	assert.Contains(t, b.rows()[28], "nothing to undo")
	assert.Equal(t, keys, b.rows()[29])
	b.tapOn("edit Underneath")
	assert.Equal(t, "e", b.desk.State.Job.Notes)
	b.tell(strings.Repeat("word ", 30) + "end")
	assert.Contains(t, b.rows()[27], "word word", "all of it is seen, whatever its length")
	assert.Contains(t, b.rows()[28], "end")
	assert.Equal(t, 30-headRows-2-footRows, b.bodyHeight(), "the screen stands above it, and not under it")
	b.tap(3, 29)
	assert.Equal(t, "ee", b.desk.State.Job.Notes, "a tap on a key presses it")
	b.tap(3, 28)
	assert.False(t, b.shows("word"), "a tap on the line takes it away")
	assert.Equal(t, "ee", b.desk.State.Job.Notes)
}
