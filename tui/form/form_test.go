package form

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
)

// some are fields of every sort.
func some() []Field {
	fields := []Field{
		{Key: "kind", Label: "kind", Text: "pipe", Choices: []Choice{{'p', "pipe"}, {'b', "beam"}, {'o', "other"}}},
		{Key: "name", Label: "name", Text: "a name that is rather long for its field", Pass: true},
		{Key: "near", Label: "near edge", Heading: "From the bumper", Text: "652", Unit: "mm", Note: "= 645 mm from bumper ± 2, tape sloped 7"},
		{Key: "far", Label: "far edge", Unit: "mm", Blank: "not measured"},
		{Key: "px", Label: "point 1", Text: "300", Unit: "mm"},
		{Key: "py", Label: "point 1 across", Text: "R 410", Unit: "mm", Second: true},
	}
	for i := range 12 {
		fields = append(fields, Field{Key: fmt.Sprint("more", i), Label: fmt.Sprint("more ", i), Unit: "mm", Blank: "not measured"})
	}
	return fields
}

func press(f Form, fields []Field, keys ...tea.KeyMsg) (Form, Event) {
	var e Event
	for _, k := range keys {
		f, e = f.Update(k, fields)
	}
	return f, e
}

func letters(text string) tea.KeyMsg { return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text)} }

func named(t tea.KeyType) tea.KeyMsg { return tea.KeyMsg{Type: t} }

func TestMoving(t *testing.T) {
	fields := some()
	f := Form{}.Open("kind", fields)
	f, _ = press(f, fields, named(tea.KeyEnter))
	assert.Equal(t, "near", f.On(), "Enter goes past what mostly stays")
	f, _ = press(f, fields, named(tea.KeyUp))
	assert.Equal(t, "name", f.On(), "arrows do not")
	f, _ = press(f, fields, named(tea.KeyTab), named(tea.KeyTab), named(tea.KeyDown))
	assert.Equal(t, "px", f.On(), "what is worked out takes no keys")
	f, _ = press(f, fields, named(tea.KeyShiftTab))
	assert.Equal(t, "far", f.On())
	f, e := press(f.Open("more11", fields), fields, named(tea.KeyEnter))
	assert.True(t, e.Past)
	assert.Equal(t, "more11", f.On())
	f, e = press(f, fields, named(tea.KeyEsc))
	assert.True(t, e.Left)
	assert.False(t, f.Typing())
}

func TestChoosing(t *testing.T) {
	fields := some()
	f := Form{}.Open("kind", fields)
	_, e := press(f, fields, letters("B"))
	assert.Equal(t, Event{Key: "kind", Text: "beam", Edited: true, Picked: true}, e)
	_, e = press(f, fields, letters("z"))
	assert.False(t, e.Edited)
	_, e = press(f, fields, named(tea.KeyRight))
	assert.Equal(t, "beam", e.Text)
	_, e = press(f, fields, named(tea.KeyLeft))
	assert.Equal(t, "other", e.Text, "round the end")
}

func TestTyping(t *testing.T) {
	fields := some()
	f := Form{}.Open("near", fields)
	f, e := press(f, fields, named(tea.KeyEnd), letters("7"), named(tea.KeyHome), letters("+"), named(tea.KeyDelete))
	assert.Equal(t, "+527", e.Text)
	_, e = press(f, fields, named(tea.KeyCtrlK))
	assert.Equal(t, "+", e.Text)
	_, e = press(f, fields, named(tea.KeyLeft))
	assert.False(t, e.Edited)
}

func TestWhatStandsInAFieldIsSelected(t *testing.T) {
	fields := some()
	open := Form{}.Open("kind", fields)
	open, _ = press(open, fields, named(tea.KeyEnter))
	require.Equal(t, "near", open.On())
	for name, c := range map[string]struct {
		key  tea.KeyMsg
		text string
	}{
		"a letter takes its place": {letters("5"), "5"},
		"backspace clears it":      {named(tea.KeyBackspace), ""},
		"delete clears it":         {named(tea.KeyDelete), ""},
		"ctrl-w clears it":         {named(tea.KeyCtrlW), ""},
		"ctrl-k clears it":         {named(tea.KeyCtrlK), ""},
	} {
		_, e := press(open, fields, c.key)
		assert.Equal(t, c.text, e.Text, name)
	}
	for key, text := range map[tea.KeyType]string{tea.KeyHome: "7652", tea.KeyEnd: "6527", tea.KeyRight: "6527", tea.KeyLeft: "6572"} {
		_, e := press(open, fields, named(key), letters("7"))
		assert.Equal(t, text, e.Text, "%v edits in place", key)
	}
	for _, key := range []tea.KeyType{tea.KeyEnter, tea.KeyTab, tea.KeyDown, tea.KeyUp, tea.KeyEsc} {
		_, e := press(open, fields, named(key))
		assert.False(t, e.Edited, "leaving it leaves it as it was")
	}
	_, e := press(open, fields, named(tea.KeyDown), named(tea.KeyUp), letters("5"))
	assert.Equal(t, "5", e.Text, "the arrows select it too")
}

func TestASecondTapDropsTheSelection(t *testing.T) {
	fields := some()
	f := Form{}
	for range 2 {
		for y, row := range strings.Split(ansi.Strip(f.View(fields, 60, 24, desk.Settings{}.Styles())), "\n") {
			if strings.Contains(row, "near edge") {
				f, _ = f.Tap(fields, 60, 24, 20, y)
			}
		}
	}
	_, e := press(f, fields, letters("7"))
	assert.Equal(t, "6527", e.Text)
}

// Going on is no measuring: a guess stays one until somebody types over it, or says that it was measured just so.
func TestAGuessStaysOneUntilItIsMeasured(t *testing.T) {
	fields := some()
	fields[2].Guess = true
	look := desk.Settings{}.Styles()
	assert.Contains(t, ansi.Strip(Form{}.View(fields, 60, 24, look)), "? a guess: not measured yet")
	f := Form{}.Open("near", fields)
	_, e := press(f, fields, named(tea.KeyDown))
	assert.False(t, e.Edited, "going past it says nothing")
	past, e := press(f, fields, named(tea.KeyEnter))
	assert.Equal(t, Event{Key: "near"}, e)
	assert.Equal(t, "far", past.On())
	so, e := press(f, fields, letters("y"))
	assert.Equal(t, Event{Key: "near", Text: "652", Edited: true}, e)
	assert.Equal(t, "far", so.On())
	_, e = press(f, fields, letters("65y"))
	assert.Equal(t, "65y", e.Text, "behind what is typed it is a letter")
	for _, w := range []int{60, 100} {
		taken := 0
		for y := range 24 {
			for x := range w {
				if _, e := f.Tap(fields, w, 24, x, y); e.Edited {
					taken++
					assert.Equal(t, Event{Key: "near", Text: "652", Edited: true}, e)
				}
			}
		}
		assert.Positive(t, taken, "and so does a tap on what is said of it")
	}
}

func TestOldFormsStayAsTheyWere(t *testing.T) {
	fields := some()
	old := Form{}.Open("near", fields).AtEnd()
	was := old.View(fields, 60, 20, desk.Settings{}.Styles())
	one, _ := press(old, fields, letters("1"))
	two, _ := press(old, fields, letters("2"))
	assert.Equal(t, was, old.View(fields, 60, 20, desk.Settings{}.Styles()))
	assert.Contains(t, ansi.Strip(one.View(fields, 60, 20, desk.Settings{}.Styles())), "6521")
	assert.Contains(t, ansi.Strip(two.View(fields, 60, 20, desk.Settings{}.Styles())), "6522")
}

func TestWhatTheJobDidNotTakeStays(t *testing.T) {
	fields := some()
	f := Form{}.Open("far", fields)
	f, e := press(f, fields, letters("7 feet"))
	f = f.Refused(fields[3], e.Text, "no such unit")
	f, _ = press(f, fields, named(tea.KeyEnter))
	view := ansi.Strip(f.View(fields, 60, 24, desk.Settings{}.Styles()))
	assert.Contains(t, view, "7 feet")
	assert.Contains(t, view, "! no such unit")
	assert.True(t, f.Wrong(fields))
	f = f.Open("far", fields)
	_, e = press(f, fields, named(tea.KeyEnd), named(tea.KeyBackspace))
	assert.Equal(t, "7 fee", e.Text, "one goes on from one's own words")
	fields[3].Text = "736"
	assert.False(t, f.Wrong(fields), "an undo has put another text there")
	assert.Contains(t, ansi.Strip(f.View(fields, 60, 24, desk.Settings{}.Styles())), "736")
}

func TestTheFieldThatIsTypedInShows(t *testing.T) {
	fields := some()
	for _, w := range []int{28, 60, 100} {
		for _, h := range []int{4, 9, 40} {
			for _, field := range fields {
				f := Form{}.Open(field.Key, fields)
				rows := strings.Split(ansi.Strip(f.View(fields, w, h, desk.Settings{}.Styles())), "\n")
				require.Len(t, rows, h)
				assert.Contains(t, strings.Join(rows, "\n"), "▸", "%s at %dx%d", field.Key, w, h)
				for _, row := range rows {
					assert.Equal(t, w, ansi.StringWidth(row))
				}
			}
		}
	}
}

func TestLongTextsScrollWithTheCursor(t *testing.T) {
	fields := some()
	f := Form{}.Open("name", fields)
	view := ansi.Strip(f.View(fields, 28, 12, desk.Settings{}.Styles()))
	assert.Contains(t, view, "ts field")
	f, _ = press(f, fields, named(tea.KeyHome))
	assert.Contains(t, ansi.Strip(f.View(fields, 28, 12, desk.Settings{}.Styles())), "a name t")
}

func TestTheCursorIsSeenWithoutColour(t *testing.T) {
	fields := some()
	f := Form{}.Open("near", fields)
	view := f.View(fields, 60, 24, desk.Settings{Colour: desk.NoColour}.Styles())
	row := ""
	for _, line := range strings.Split(view, "\n") {
		if strings.Contains(line, "near edge") {
			row = line
		}
	}
	assert.Contains(t, row, "\x1b[7m652", "what is selected stands reversed (ECMA-48, SGR 7)")
	f, _ = press(f, fields, named(tea.KeyLeft))
	for _, line := range strings.Split(f.View(fields, 60, 24, desk.Settings{Colour: desk.NoColour}.Styles()), "\n") {
		if strings.Contains(line, "near edge") {
			row = line
		}
	}
	assert.Contains(t, row, "\x1b[7m2", "then the cursor alone")
	assert.Contains(t, row, "\x1b[4;4m65", "in a text underlined (SGR 4)")
}

func TestTaps(t *testing.T) {
	fields := some()
	f := Form{}
	rows := strings.Split(ansi.Strip(f.View(fields, 60, 24, desk.Settings{}.Styles())), "\n")
	for y, row := range rows {
		if strings.Contains(row, "point 1") {
			one, _ := f.Tap(fields, 60, 24, strings.Index(row, "300")+1, y)
			assert.Equal(t, "px", one.On())
			two, _ := f.Tap(fields, 60, 24, strings.Index(row, "R 410")+1, y)
			assert.Equal(t, "py", two.On())
		}
	}
	f = f.Open("kind", fields)
	for y, row := range strings.Split(ansi.Strip(f.View(fields, 60, 24, desk.Settings{}.Styles())), "\n") {
		if x := strings.Index(row, "b beam"); x >= 0 {
			_, e := f.Tap(fields, 60, 24, x+3, y)
			assert.Equal(t, "beam", e.Text)
		}
	}
}

func TestGoldens(t *testing.T) {
	for _, size := range [][2]int{{28, 24}, {60, 17}, {100, 27}} {
		for _, on := range []string{"", "kind", "near", "py"} {
			name := fmt.Sprintf("form-%s-%dx%d", on, size[0], size[1])
			t.Run(name, func(t *testing.T) {
				fields := some()
				f := Form{}.Refused(fields[3], "7 feet", `"7 feet": the unit is not mm, cm, m, in or "`)
				if on != "" {
					f = f.Open(on, fields)
				}
				text := ansi.Strip(f.View(fields, size[0], size[1], desk.Settings{}.Styles()))
				got := strings.ReplaceAll(text, "\n", "|\n") + "|\n"
				path := filepath.Join("testdata", name+".txt")
				if os.Getenv("UPDATE_GOLDEN") != "" {
					require.NoError(t, os.MkdirAll("testdata", 0o755))
					require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
				}
				want, err := os.ReadFile(path)
				require.NoError(t, err)
				assert.Equal(t, string(want), got)
			})
		}
	}
}
