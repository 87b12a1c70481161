package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

const tooLongForAField = "too long: more than 2000 characters; nothing was changed"

// own is the program with its own screens on a job of the test cases, in a window of 100 x 40.
func own(t *testing.T, name string) *bench {
	o := options(t)
	o.Path, o.Screens = jobOfCases(t, name), Screens()
	b := started(t, o)
	b.send(tea.WindowSizeMsg{Width: 100, Height: 40})
	return b
}

// paste pastes a text as a terminal does that marks what is pasted.
func (b *bench) paste(text string) {
	b.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true})
}

func TestAPasteTooLongForAFieldChangesNothing(t *testing.T) {
	for name, field := range map[string]struct {
		keys  []string
		shows string
	}{
		"reading":          {[]string{"1", "enter"}, "939"},
		"name":             {[]string{"1", "enter", "up", "up"}, "▸ name          fuel line 1"},
		"text of the job":  {[]string{"8", "enter"}, "▸ reference TL-24"},
		"name to save as":  {[]string{"8", "w"}, "24-everything.toml"},
		"place of the cut": {[]string{"4", "t", "1219", "enter", "up"}, "1219"},
		"collar":           {[]string{"4", "k"}, "▸ collar depth 22"},
	} {
		t.Run(name, func(t *testing.T) {
			b := own(t, "24-everything.toml")
			b.press(field.keys...)
			before := string(b.desk.State.Job.Format())
			b.paste(strings.Repeat("x", 2001))
			assert.Equal(t, before, string(b.desk.State.Job.Format()))
			assert.True(t, b.shows(field.shows), "the field holds what it held")
			assert.True(t, b.shows(tooLongForAField), strings.Join(b.rows(), "\n"))
			assert.Empty(t, b.desk.Steps())
			b.press("enter") // what stands there is what was there
			assert.Empty(t, b.desk.State.Job.Refused())
		})
	}
	require.LessOrEqual(t, len(tooLongForAField), leastWidth)
}

// Every letter may open a field that the ones behind it belong to.
func TestFastLettersInOneMessage(t *testing.T) {
	b := own(t, "01-wide-floor.toml")
	before := len(b.desk.State.Job.Obstructions)
	b.press("nc652")
	assert.True(t, b.shows("652"))
	b.press("esc")
	assert.True(t, b.shows("needs far edge"))
	assert.Len(t, b.desk.State.Job.Obstructions, before)
}

func TestAsManyLettersAsMayBeTypedAreKeys(t *testing.T) {
	b, _ := opened(t)
	b.press(strings.Repeat("m", mostTyped))
	assert.Equal(t, strings.Repeat("m", mostTyped), b.desk.State.Job.Notes)
	b.press(strings.Repeat("m", mostTyped+1))
	assert.Len(t, b.desk.State.Job.Notes, mostTyped, "nobody types as fast as that")
	assert.True(t, b.shows(pastedOutside))
	b.press("t", strings.Repeat("x", mostTyped+1))
	assert.Len(t, b.screen().typed, mostTyped+1, "in a field it is a text")
}

// The 40 lines of 20 points of a pipe: typed, each would be an edit.
func TestAPasteIsOneEdit(t *testing.T) {
	const lines = 40
	pasted, typed := own(t, "24-everything.toml"), own(t, "24-everything.toml")
	pasted.press("1", "n", "b")
	typed.press("1", "n", "b")
	before, judged, steps := string(pasted.desk.State.Job.Format()), pasted.asked, len(pasted.desk.Steps())

	text := points(lines / 2)
	pasted.paste(text)
	assert.EqualValues(t, 1, pasted.asked-judged, "judged once")
	assert.Len(t, pasted.desk.Steps(), steps+1, "one undo step")
	assert.True(t, pasted.shows("40 lines taken"))
	for i, line := range strings.Split(strings.TrimSpace(text), "\n") {
		if i > 0 {
			typed.press("enter")
		}
		typed.press(line)
	}
	require.Equal(t, string(typed.desk.State.Job.Format()), string(pasted.desk.State.Job.Format()), "the same as typed")
	assert.Equal(t, typed.rows()[3:38], pasted.rows()[3:38], "and the form stands where it would")
	pasted.press("ctrl+z")
	assert.Equal(t, before, string(pasted.desk.State.Job.Format()))
}

func TestAPasteThatIsRefusedInPart(t *testing.T) {
	b := own(t, "24-everything.toml")
	b.press("1", "n", "c")
	before := string(b.desk.State.Job.Format())
	b.paste("652\n7 feet\n-850\nsome\n0\n95")
	assert.True(t, b.shows("4 of 6 lines taken, 2 refused and not in the job"), b.rows()[39])
	refused := b.desk.State.Job.Refused()
	require.Len(t, refused, 2)
	assert.Equal(t, []string{"7 feet", "some"}, []string{refused[0].Text, refused[1].Text})
	assert.Contains(t, refused[0].Why, "7 feet", "each with its own reason")
	assert.Contains(t, refused[1].Why, "some")
	assert.True(t, b.shows("! far edge"))
	b.press("ctrl+z")
	assert.Equal(t, before, string(b.desk.State.Job.Format()))
}

func TestNothingIsPastedIntoAWindowTooSmall(t *testing.T) {
	b := own(t, "24-everything.toml")
	b.press("8", "enter")
	b.send(tea.WindowSizeMsg{Width: 40, Height: 10})
	before := string(b.desk.State.Job.Format())
	b.paste("TL-99")
	assert.Equal(t, before, string(b.desk.State.Job.Format()), "what can't be seen can't be meant")
}

// placesToPaste are where a paste may fall, by the keys that go there.
var placesToPaste = map[string][]string{
	"a choice":               {"1", "n"},
	"the name of a thing":    {"1", "enter", "down"},
	"a reading":              {"1", "enter", "down", "down", "down"},
	"a point of a new line":  {"1", "n", "b"},
	"a field half typed":     {"1", "enter", "down", "down", "down", "7", "x"},
	"a new matching point":   {"3", "n"},
	"the floor":              {"2", "enter"},
	"the bumper's bow":       {"2", "down", "down", "enter"},
	"the job":                {"8", "enter"},
	"the notes":              {"8", "enter", "up"},
	"a setting":              {"8", "down", "down", "enter"},
	"the name to save as":    {"8", "w"},
	"the place of the cut":   {"4", "t"},
	"the collar":             {"4", "k"},
	"a list":                 {"1"},
	"the kinds looked for":   {"1", "a"},
	"the plan":               {"4"},
	"a point of a run":       {"5", "t"},
	"the runs":               {"5"},
	"the places for the cut": {"4", "c"},
	"the marks":              {"6"},
	"the checks":             {"7"},
	"the help":               {"?"},
	"a question":             {"4", "right", "ctrl+c"},
}

func TestNoPasteDoesHarm(t *testing.T) {
	texts := map[string]string{
		"64 KB random": junk(64 << 10), "1 MB random": junk(1 << 20), "1 KB random": junk(1 << 10),
		"newlines": strings.Repeat("\r", 1<<20), "one line": strings.Repeat("7", 1<<20), "few newlines": "\n\n\n",
		"colours": strings.Repeat("\x1b[31m", 1<<18), "few colours": "\x1b[31mL 240\x1b[0m", "marks": strings.Repeat("\x1b[201~\x1b[200~", 100),
		"what a field takes": strings.Repeat("é", 2000), "one more": strings.Repeat("é", 2001),
		"full lines": strings.Repeat(strings.Repeat("?", 79)+"\n", 100), "many lines": strings.Repeat("652\n", 1000),
		"quotes": strings.Repeat(`"""\`, 100), "wide": strings.Repeat("世\u0301\u200d", 200), "letters": "b\nL 240\nx\n\n.5\n-\n3/0in\n1,200",
	}
	for place, keys := range placesToPaste {
		t.Run(place, func(t *testing.T) {
			b := own(t, "24-everything.toml")
			b.press(keys...)
			began := string(b.desk.State.Job.Format())
			for name, text := range texts {
				judged, steps := b.asked, len(b.desk.Steps())
				b.paste(text)
				assert.LessOrEqual(t, b.asked-judged, uint64(1), "%s: judged once", name)
				require.LessOrEqual(t, len(b.desk.Steps()), steps+1, "%s: one step", name)
				for _, row := range b.rows() {
					require.Equal(t, 100, ansi.StringWidth(row), "%s: %q", name, row)
				}
				if len(b.desk.Steps()) == steps {
					require.Equal(t, began, string(b.desk.State.Job.Format()), "%s: nothing was changed", name)
					continue
				}
				again, err := vehicles.ParseJob(b.desk.State.Job.Format(), "again.toml")
				require.NoError(t, unlessWhole(err), name)
				require.Equal(t, string(b.desk.State.Job.Format()), string(again.Format()), name)
				b.press("ctrl+z")
				require.Equal(t, began, string(b.desk.State.Job.Format()), "%s: taken back", name)
			}
		})
	}
}
