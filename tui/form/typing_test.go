package form

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/tui/desk"
)

// line is a text with its cursor where the bar stands.
func lineOf(t *testing.T, marked string) typing {
	before, after, ok := strings.Cut(marked, "|")
	require.True(t, ok, marked)
	return typing{text: []rune(before + after), at: len([]rune(before))}
}

func (t typing) marked() string { return string(t.text[:t.at]) + "|" + string(t.text[t.at:]) }

func TestKeysThatDelete(t *testing.T) {
	for _, c := range []struct {
		key        tea.KeyType
		line, want string
	}{
		{tea.KeyCtrlW, "L 240|", "L |"},
		{tea.KeyCtrlW, "L 240  |", "L |"},
		{tea.KeyCtrlW, "L |240", "|240"},
		{tea.KeyCtrlW, "L 2|40", "L |40"},
		{tea.KeyCtrlW, "rear  axle |beam", "rear  |beam"},
		{tea.KeyCtrlW, "   |", "|"},
		{tea.KeyCtrlW, "  a|", "  |"},
		{tea.KeyCtrlW, "|652", "|652"},
		{tea.KeyCtrlW, "é ü|", "é |"},
		{tea.KeyCtrlU, "L 2|40", "|40"},
		{tea.KeyCtrlU, "L 240|", "|"},
		{tea.KeyCtrlU, "|652", "|652"},
		{tea.KeyCtrlK, "L 2|40", "L 2|"},
		{tea.KeyCtrlK, "652|", "652|"},
		{tea.KeyBackspace, "L 2|40", "L |40"},
		{tea.KeyBackspace, "|652", "|652"},
		{tea.KeyDelete, "L 2|40", "L 2|0"},
		{tea.KeyDelete, "652|", "652|"},
	} {
		line := lineOf(t, c.line)
		got, err := line.press(named(c.key))
		require.NoError(t, err)
		assert.Equal(t, c.want, got.marked(), "%v on %s", c.key, c.line)
		assert.False(t, got.all)
		assert.Equal(t, c.line, line.marked(), "the old line stays as it was")

		got, err = line.selected().press(named(c.key))
		require.NoError(t, err)
		assert.Equal(t, typing{}, got, "%v on %s, selected", c.key, c.line)
	}
}

func TestKeysThatMoveDropTheSelection(t *testing.T) {
	for key, want := range map[tea.KeyType]string{
		tea.KeyLeft: "65|2", tea.KeyRight: "652|", tea.KeyHome: "|652", tea.KeyCtrlA: "|652", tea.KeyEnd: "652|", tea.KeyCtrlE: "652|",
	} {
		got, err := typingOf("652").selected().press(named(key))
		require.NoError(t, err)
		assert.Equal(t, want, got.marked(), "%v", key)
		assert.False(t, got.all)
	}
}

func TestWhatIsTooLongLeavesTheLineAsItWas(t *testing.T) {
	over := []rune(strings.Repeat("x", longestLine+1))
	full := typingOf(string(over[:longestLine]))
	for name, c := range map[string]struct {
		line typing
		put  []rune
	}{
		"a selected line":        {typingOf("652").selected(), over},
		"an empty one":           {typing{}, over},
		"one letter more":        {full, []rune("y")},
		"all that fits but one":  {typingOf("652"), over[:longestLine-2]},
		"in front of a full one": {full.to(0), []rune("y")},
	} {
		got, err := c.line.insert(c.put)
		assert.EqualError(t, err, "too long: more than 2000 characters; nothing was changed", name)
		assert.Equal(t, c.line, got, name)
	}
	got, err := full.selected().insert(over[:longestLine])
	require.NoError(t, err, "what is selected makes room")
	assert.Len(t, got.text, longestLine)
	got, err = typingOf("652").insert(over[:longestLine-3])
	require.NoError(t, err)
	assert.Len(t, got.text, longestLine)
}

// The plain way: drop a letter in front as long as what is before the cursor does not fit.
func TestALineScrollsAsFarAsItMust(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		text := rapid.StringOf(rapid.SampledFrom([]rune("ab é世 "))).Draw(rt, "text")
		line := typingOf(text)
		line = line.to(rapid.IntRange(0, len(line.text)).Draw(rt, "at"))
		w := rapid.IntRange(4, 12).Draw(rt, "w")
		from := 0
		for from < line.at && ansi.StringWidth(string(line.text[from:line.at])) > w-2 {
			from++
		}
		require.Equal(rt, from, line.scrolled(w-2))
		require.Equal(rt, w, ansi.StringWidth(line.paint("", w, desk.Settings{}.Styles())), "%q", text)
	})
}
