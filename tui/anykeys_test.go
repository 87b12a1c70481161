package tui

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// fuzzedKeys are keys that go by a name.
var fuzzedKeys = []string{
	"up", "down", "left", "right", "enter", "esc", "tab", "shift+tab", "backspace", "delete", "home", "end", "pgup", "pgdown",
	"ctrl+z", "ctrl+y", "ctrl+u", "ctrl+w", "ctrl+k", "ctrl+s",
	"shift+up", "shift+down", "shift+left", "shift+right", "ctrl+up", "ctrl+down", "ctrl+left", "ctrl+right", "ctrl+shift+left", "ctrl+home", "ctrl+end",
	"alt+up", "alt+left", "alt+enter", "alt+d", "f5",
}

// namedKey is a key that goes by a name, "alt+" in front of it for one with that key held.
func namedKey(name string) tea.KeyMsg {
	plain, alt := strings.CutPrefix(name, "alt+")
	msg, _ := keyNamed(plain)
	msg.Alt = alt
	return msg
}

// pointings are what a mouse may do: its buttons pressed, dragged and let go, its wheels turned, or be moved with nothing held.
var pointings = []tea.MouseEvent{
	{Button: tea.MouseButtonLeft, Action: tea.MouseActionPress}, {Button: tea.MouseButtonLeft, Action: tea.MouseActionMotion},
	{Button: tea.MouseButtonLeft, Action: tea.MouseActionRelease}, {Button: tea.MouseButtonRight, Action: tea.MouseActionPress},
	{Button: tea.MouseButtonMiddle, Action: tea.MouseActionPress}, {Button: tea.MouseButtonRight, Action: tea.MouseActionMotion},
	{Button: tea.MouseButtonNone, Action: tea.MouseActionMotion}, {Button: tea.MouseButtonLeft, Action: tea.MouseActionPress, Ctrl: true},
	{Button: tea.MouseButtonWheelDown, Action: tea.MouseActionPress}, {Button: tea.MouseButtonWheelUp, Action: tea.MouseActionPress},
	{Button: tea.MouseButtonWheelLeft, Action: tea.MouseActionPress}, {Button: tea.MouseButtonWheelDown, Action: tea.MouseActionPress, Shift: true},
}

func pointed(which, x, y int) tea.MouseMsg {
	at := pointings[which%len(pointings)]
	at.X, at.Y = x, y
	return tea.MouseMsg(at)
}

// anything is what a hand may do without thinking: a key, a tap, a drag over some cells, another button, a turn of the wheel, a paste, another window.
func anything(r *rand.Rand, w, h int) []tea.Msg {
	x, y := r.IntN(w), r.IntN(h)
	switch r.IntN(12) {
	case 0, 1, 2:
		return []tea.Msg{namedKey(fuzzedKeys[r.IntN(20)])}
	case 3:
		return []tea.Msg{namedKey(fuzzedKeys[r.IntN(len(fuzzedKeys))])}
	case 4:
		return []tea.Msg{pointed(0, x, y)}
	case 5:
		return []tea.Msg{pointed(r.IntN(len(pointings)), x, y)}
	case 6:
		return []tea.Msg{pointed(0, x, y), pointed(1, r.IntN(w), y), pointed(1, r.IntN(w), r.IntN(h)), pointed(2, r.IntN(w), r.IntN(h))}
	case 7, 8:
		const letters = "abcdefghijklmnopqrstuvwxyzLR+,.<>?-/ '\""
		return []tea.Msg{tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{rune(letters[r.IntN(len(letters))])}}}
	case 9:
		if r.IntN(8) == 0 {
			return []tea.Msg{tea.KeyMsg{Type: tea.KeyRunes, Paste: true, Runes: []rune("652\r+84\r\a\x1b[31m\u202e-850\r")}}
		}
	}
	return []tea.Msg{tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'0' + rune(r.IntN(10))}}}
}

// watched is a program after each of whose events all is looked at that has to hold whatever was done.
type watched struct {
	*bench
	o     Options
	text  string // the job on the desk, as it is written, when it was looked at last
	saved string // what its file held then, and the job that is read from that
	told  screentest.Told
	looks int // how often a changed job was read back and judged
}

func watch(b *bench, o Options) *watched { return &watched{bench: b, o: o} }

// does sends an event and holds what has to hold after it.
func (w *watched) does(msg tea.Msg, about func() string) {
	w.deaf = time.Time{}
	w.send(msg)
	w.quit = false
	w.holds(about)
}

// holds looks at job, file, journal and picture.
func (w *watched) holds(about func() string) {
	other := func(f vehicles.Fault) bool { return !desk.Misfit(f) } // matching points that do not fit are taken, and not saved
	if slices.ContainsFunc(w.desk.State.Faults, other) {
		require.Fail(w.t, "the job can't be judged", "%v\n%s", w.desk.State.Faults, about())
	}
	changed := w.readsBack(about)
	w.fileReadsBack(changed, about)
	rows := strings.Split(w.View(), "\n")
	if len(rows) != w.h {
		require.Fail(w.t, "as high as the window", "%d rows\n%s", len(rows), about())
	}
	for y, row := range rows {
		if ansi.StringWidth(row) > w.Root.w {
			require.Fail(w.t, "no wider than the window", "row %d: %q\n%s", y, row, about())
		}
		rows[y] = ansi.Strip(row)
	}
	if len(w.desk.State.Faults) > 0 {
		return // the result is of the job before
	}
	w.told.Settings, w.told.Ticked = w.desk.State.Settings, w.desk.State.Ticked
	if wrong := w.told.Disagrees(rows); wrong != "" {
		require.Fail(w.t, "the screen says what is not in the job", "%s\n%s\n%s", wrong, about(), strings.Join(rows, "\n"))
	}
}

// readsBack holds that a changed job reads back as it is written, that it is judged anew as it is on the desk, and that the journal has it as long as it is not saved.
func (w *watched) readsBack(about func() string) (changed bool) {
	text := string(w.desk.State.Job.Format())
	if text == w.text {
		return false
	}
	w.text = text
	w.looks++
	again, err := vehicles.ParseJob([]byte(text), "job", w.desk.State.Book)
	require.NoError(w.t, unlessWhole(err), about())
	require.Equal(w.t, text, string(again.Format()), about())
	w.same(again, "each value is read back", about)
	if result, faults := rules.Judge(again, w.desk.State.Book); len(faults) == 0 {
		require.Equal(w.t, result.Verdict, w.desk.State.Result.Verdict, about())
		require.Len(w.t, w.desk.State.Result.Findings, len(result.Findings), about())
		w.told.Judge(again, result)
	}
	if w.desk.State.Dirty && w.o.StateDir != "" && w.Root.journal != nil {
		kept, err := os.ReadFile(w.Root.journal.path)
		require.NoError(w.t, err, "unsaved work is kept; %s", about())
		require.True(w.t, strings.HasSuffix(string(kept), "\n"+text), "the journal has the job as it is; %s", about())
	}
	return true
}

// same holds that a job is the one on the desk, value by value: of what is not written two texts say the same.
func (w *watched) same(job vehicles.Job, why string, about func() string) {
	if !assert.ObjectsAreEqual(job, w.desk.State.Job) {
		require.Equal(w.t, job, w.desk.State.Job, "%s; %s", why, about())
	}
}

// fileReadsBack holds that the file can be read, and has all that is said to be saved.
func (w *watched) fileReadsBack(changed bool, about func() string) {
	data, err := os.ReadFile(w.desk.State.Path)
	require.NoError(w.t, err, about())
	if string(data) == w.saved && !changed {
		return
	}
	w.saved = string(data)
	job, err := vehicles.ParseJob(data, w.o.Path, w.desk.State.Book)
	require.NoError(w.t, err, "what was saved reads back; %s", about())
	if !w.desk.State.Dirty {
		require.Equal(w.t, string(job.Format()), w.text, "all is saved; %s", about())
	}
}

// takesBack leaves what is open and undoes all that was done: the job is what it was.
func (w *watched) takesBack(begun vehicles.Job, about func() string) {
	w.send(tea.WindowSizeMsg{Width: 100, Height: 30}) // one that is too small takes no keys
	w.uncovers(about)
	for n := 0; len(w.desk.Steps()) > 0; n++ {
		require.Less(w.t, n, 2000, "undo comes to an end: %s\n%s", about(), w.View())
		w.press("ctrl+z")
	}
	w.same(begun, "undo goes back to where it began", about)
	w.holds(about)
}

// uncovers leaves what lies over the screens.
func (w *watched) uncovers(about func() string) {
	for n := 0; w.overlay() != nil; n++ {
		require.Less(w.t, n, 50, "what lies over the screens goes by Esc: %s\n%s", about(), w.View())
		w.press("esc")
	}
}

// deep is how many steps are taken back in a row at the least: more than anything pressed at random comes to in an ordinary round.
const deep = 100

// edits moves the cut there and back, each move a step of its own.
func (w *watched) edits(n int, about func() string) {
	w.uncovers(about)
	w.goTo(w.titled("Place"))
	w.does(namedKey("esc"), about)
	was := len(w.desk.Steps())
	for i := range n {
		w.does(namedKey([]string{"left", "right"}[i%2]), about)
		w.desk.Seal()
	}
	require.Len(w.t, w.desk.Steps(), was+n, about())
}

// marksOut goes past what stands before the marks, which hardly anything pressed at random does, and through some of them: each by itself, and in the list of all.
func (w *watched) marksOut(about func() string) {
	w.uncovers(about)
	w.goTo(w.titled("Marks"))
	for _, name := range []string{"l", "m"} { // nothing more is looked for, what is not clear stays so
		w.does(namedKey(name), about)
	}
	for n := 0; w.overlay() != nil; n++ { // the cautions are read to their end
		require.Less(w.t, n, 50, about())
		w.does(namedKey("enter"), about)
	}
	for _, name := range []string{"down", "v", "space", "down", "v", "p", "p", "tab", "down", "space", "up"} {
		w.does(namedKey(name), about)
	}
}

// looksRound goes once through all that is listed on the screens that are held to the job.
func (w *watched) looksRound(about func() string) {
	w.uncovers(about)
	for _, title := range screentest.ShownScreens() {
		w.goTo(w.titled(title))
		w.does(namedKey("esc"), about)
		for range 6 {
			w.does(namedKey("down"), about)
		}
	}
}

// Of a job that holds all that a file can, each value is in the journal after an edit and in the file after a save: a screen that shows none of it loses none of it.
func TestAnEditAndASaveKeepEachValueOfAJob(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("..", "testdata", "formats", "*.toml")) // every key there is stands in one of them
	require.NoError(t, err)
	require.Greater(t, len(files), 10)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		b, o := fuzzed(t, text)
		begun, w, about := b.desk.State.Job, watch(b, o), func() string { return file }
		for _, key := range []string{"8", "enter", "x", "enter", "esc", "ctrl+s", "ctrl+z"} { // what the job is called is another
			w.does(namedKey(key), about)
		}
		require.GreaterOrEqual(t, w.looks, 2, file)
		w.takesBack(begun, about)
	}
}

// Whatever is pressed, dragged, turned or pasted: after each event the job on the desk can be judged and reads back, file and journal have what they are said to have, the picture
// is as large as the window and says nothing of the job that is not in it; and undo goes back to where it began. KEYS=20000 makes a long round of it, KEYS_SEED
// draws another.
func TestWhateverIsPressedHoldsAfterEachEvent(t *testing.T) {
	presses, seed := 600, 1
	for name, n := range map[string]*int{"KEYS": &presses, "KEYS_SEED": &seed} {
		if text := os.Getenv(name); text != "" {
			var err error
			*n, err = strconv.Atoi(text)
			require.NoError(t, err, name)
		}
	}
	if testing.Short() {
		presses = 200
	}
	jobs := fuzzedJobs(t)
	told := screentest.Told{Rows: map[string]int{}}
	looks := 0
	for round := range len(jobs) {
		b, o := fuzzed(t, jobs[round])
		begun := b.desk.State.Job
		size := [][2]int{{60, 20}, {100, 30}, {160, 50}}[round%3]
		b.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		w, r := watch(b, o), rand.New(rand.NewPCG(uint64(seed), uint64(round)))
		var last []tea.Msg
		about := func() string { return fmt.Sprintf("seed %d, job %d, after %v", seed, round, last) }
		for range presses / len(jobs) {
			for _, msg := range anything(r, size[0], size[1]) {
				last = append(last[max(0, len(last)-20):], msg)
				w.does(msg, about)
			}
			if b.overlay() != nil && r.IntN(4) == 0 {
				w.does(namedKey("esc"), about)
			}
		}
		require.True(t, bytes.HasPrefix([]byte(w.text), []byte("format = ")))
		if round == 0 {
			w.edits(deep, about)
		}
		w.marksOut(about)
		w.looksRound(about)
		w.takesBack(begun, about)
		looks += w.looks
		told.Headings, told.Things, told.Findings = told.Headings+w.told.Headings, told.Things+w.told.Things, told.Findings+w.told.Findings
		for screen, n := range w.told.Rows {
			told.Rows[screen] += n
		}
	}
	t.Logf("rows of other screens: %v", told.Rows)
	for _, screen := range screentest.ShownScreens() {
		require.Greater(t, told.Rows[screen], 10, screen)
	}
	t.Logf("%d events, seed %d: %d changed jobs read back and judged anew; %d tallies, %d rows of things, %d of findings were the job's", presses, seed, looks, told.Headings, told.Things, told.Findings)
	for _, n := range []int{looks, told.Headings, told.Things, told.Findings} {
		require.Greater(t, n, 20)
	}
}
