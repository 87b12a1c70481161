package tui

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/vehicles"
)

// ear is the program in lines on a terminal of 80 columns.
type ear struct {
	*bench
	out bytes.Buffer
}

// heardOn starts the program in lines on a job; nil for the sample.
func heardOn(t *testing.T, job *vehicles.Job) *ear {
	o := options(t)
	o.Screens = Screens()
	if job == nil {
		o.Path = ""
	} else {
		require.NoError(t, os.WriteFile(o.Path, job.Format(), 0o600))
	}
	r, err := New(o)
	require.NoError(t, err)
	r.pause, r.settle, r.fade = 0, 0, 0
	r.sayUntil = r.now()
	e := &ear{}
	p := &plainly{Root: r, voice: aloud.NewVoice(&e.out, true, func() int { return aloud.UsualWidth })}
	e.bench = &bench{Root: r, t: t, over: p}
	t.Cleanup(func() { r.journal.close() })
	p.begin()
	e.do(p.Init())
	return e
}

// hears presses keys and returns what was written since.
func (e *ear) hears(keys ...string) string {
	e.out.Reset()
	e.press(keys...)
	return strings.ReplaceAll(e.out.String(), "\r\n", "\n")
}

func TestAChangeOfScreenIsToldByItsTitleAndWhatIsPicked(t *testing.T) {
	e := heardOn(t, nil)
	start := e.out.String()
	assert.Contains(t, start, "A sample van")
	assert.Contains(t, start, "Screen 1 of 10: Underneath\r\n")
	assert.Contains(t, start, "6 foul, 6 doubtful: worst (can kill) cut: brake pipe across, 84.6 mm short")
	said := e.hears("4")
	assert.True(t, strings.HasPrefix(said, "Screen 4 of 10: Place\n"), said)
	assert.Contains(t, said, "At x 1255, 195 mm left")
	assert.NotContains(t, said, "6 foul", "nothing has changed about that")
	assert.NotContains(t, said, "\x1b")
}

// The picture of what a key did is what it changed: the place, the worst there, the verdict, each once.
func TestAfterAKeyOnlyWhatIsNewIsSaid(t *testing.T) {
	e := heardOn(t, nil)
	e.hears("4", "s")
	said := e.hears("right")
	assert.Contains(t, said, "At x 1305, 195 mm left")
	assert.Contains(t, said, "3 foul, 5 doubtful")
	assert.NotContains(t, said, "Arrows", "it points the same ways")
	assert.NotContains(t, said, "step 50")
	lines := strings.Split(strings.TrimSpace(said), "\n")
	seen := map[string]bool{}
	for _, line := range lines {
		assert.False(t, seen[line], line)
		seen[line] = true
	}
	assert.Equal(t, "Nothing new.\n", e.hears("q"), "a key that does nothing")
	assert.Contains(t, e.hears("v"), "Arrows, as seen from above: Right to the nose, Left to the bumper, Up to the")
}

// A reading is heard as it is typed, letter by letter on one line; one that is taken back in part stands whole on the next.
// What it comes to, and what the job comes to, is told when the field is left.
func TestAReadingIsSaidAsItIsTyped(t *testing.T) {
	e := heardOn(t, nil)
	said := e.hears("n")
	assert.Contains(t, said, "kind: nothing, letter; again: the next; field 1 of 12\n")
	assert.Contains(t, said, "c crossmember, r chassis rail")
	said = e.hears("c")
	assert.Contains(t, said, "kind: crossmember\n", "what was chosen")
	assert.Contains(t, said, "From the bumper\nnear edge, mm: nothing, needed; field 4 of")
	assert.Equal(t, "6", e.hears("6"))
	assert.Equal(t, "52", e.hears("52"))
	assert.Equal(t, "\n65\n", e.hears("backspace")+"\n")
	assert.Equal(t, "2x", e.hears("2", "x"))
	said = e.hears("enter")
	assert.Contains(t, said, "\nnear edge, mm: 652x, not taken: ", "refused as one line that says why")
	assert.Contains(t, said, "far edge, mm: nothing, needed")
	e.hears("+84", "enter", "-850", "enter", "850", "enter")
	said = e.hears("up", "up", "up", "up", "up")
	assert.Contains(t, said, "near edge, mm: 652x, not taken; field 4 of")
	assert.Equal(t, "652", e.hears("652"))
	assert.Contains(t, e.hears("enter"), "\n= 6", "what the reading comes to")
}

// What lies over the screens is said whole when it comes, and of a choice then only the choice.
func TestAQuestionIsSaidWithItsAnswers(t *testing.T) {
	e := heardOn(t, nil)
	e.hears("4", "right")
	assert.Equal(t, "There is work that is not saved.\nThis job has no file yet.\n1: Save and quit\n"+
		"2: Quit without saving: the changes are gone then\n3: Stay here\nMarked: 1, Save and quit\n", e.hears("ctrl+c"))
	assert.Equal(t, "Marked: 2, Quit without saving: the changes are gone then\n", e.hears("down"))
	assert.Contains(t, e.hears("3"), "Screen 4 of 10: Place\n")
	said := e.hears("8", "w")
	assert.Contains(t, said, "in which file?")
	assert.Contains(t, said, "File: TL-07.toml; field 1 of 1\n")
	e.hears("end") // a name that nobody gave is replaced by what is typed
	assert.Equal(t, "TL-07.tom", e.hears("backspace"))
	assert.Equal(t, "l", e.hears("l"))
}

func TestTheKeysAreReadAPageAtATime(t *testing.T) {
	e := heardOn(t, nil)
	said := e.hears("?")
	assert.Contains(t, said, "Help\n")
	assert.Contains(t, said, "left bracket: up the list")
	assert.Contains(t, said, "more rows below; Enter: read on, close at the end\n")
	all := e.hears("ctrl+l")
	assert.Contains(t, all, "Ctrl-L or B: read the whole screen")
	assert.NotContains(t, all, "tapped")
	assert.Contains(t, e.hears("esc"), "Screen 1 of 10: Underneath")
}

// Ctrl-R says where one is, with what was typed so far; Ctrl-L all there is. Neither changes anything.
func TestWhereOneIsIsSaidAgain(t *testing.T) {
	e := heardOn(t, nil)
	e.hears("n", "c", "65")
	before := string(e.desk.State.Job.Format())
	assert.Contains(t, e.hears("ctrl+r"), "near edge, mm:")
	said := e.hears("ctrl+l")
	assert.Contains(t, said, "\nnear edge, mm: 65")
	assert.Contains(t, said, "kind: crossmember\n")
	assert.Equal(t, before, string(e.desk.State.Job.Format()))
	assert.Equal(t, "652", e.hears("2"), "all of it, as its line has gone by")
	assert.Equal(t, "0", e.hears("0"), "a field takes the digit")
	e.hears("esc")
	assert.Equal(t, e.hears("ctrl+l"), e.hears("B"), "one finger")
	assert.Equal(t, e.hears("ctrl+r"), e.hears("b"))
}

// No figure of a mark is told before the cautions, whichever key is pressed.
func TestTheGateBeforeTheMarksHoldsInLines(t *testing.T) {
	e := heardOn(t, nil)
	e.hears("4", "s", "right", "right", "right")
	said := e.hears("6") + e.hears("ctrl+l") + e.hears("ctrl+r")
	assert.Contains(t, said, "within 300 mm of the cut, is there any")
	assert.NotContains(t, said, "from the left edge")
	e.hears("l")
	said = e.hears("ctrl+l")
	assert.Contains(t, said, "m; mark all the same")
	assert.NotContains(t, said, "from the left edge")
	said = e.hears("m")
	assert.True(t, strings.HasPrefix(said, drillingTitle), said)
	for e.overlay() != nil {
		said = e.hears("enter")
	}
	assert.Contains(t, said, "cut centre, not made\nfrom above\nHook on the bumper edge")
	assert.Equal(t, "cut centre, made\n", e.hears(" "))
}

func TestNothingIsSaidTwiceOfOneKey(t *testing.T) {
	e := heardOn(t, nil)
	for _, k := range []string{
		"down", "down", "up", "enter", "down", "down", "esc", "down", "2", "down", "enter", "enter", "enter", "esc", "5", "m", "right", "7", "down", "n", "down", "esc",
	} {
		said := e.hears(k)
		lines := strings.Split(strings.TrimSpace(said), "\n")
		for i, line := range lines {
			for j, other := range lines {
				assert.False(t, i != j && line != "" && len(line) > 30 && strings.Contains(other, line), "%s: %q twice in\n%s", k, line, said)
			}
		}
	}
	assert.Contains(t, e.hears("5", "left"), "Muffler: leg 3, 60 mm along it")
}

func TestUndoAndRefusalsAreOneLine(t *testing.T) {
	e := heardOn(t, nil)
	e.hears("4", "right")
	assert.Contains(t, e.hears("ctrl+z"), "took back: cut moved\n")
	assert.Equal(t, "nothing to undo\n", e.hears("ctrl+z"))
	r := heardOn(t, func() *vehicles.Job { j := vehicles.NewJob("TL-07"); return &j }())
	assert.Contains(t, r.hears("5", "right"), "No exhaust yet")
}
