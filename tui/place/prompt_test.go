package place

import (
	"regexp"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

func TestNoPartOfARefusedPlaceIsShown(t *testing.T) {
	s := screentest.State(t)
	p, after, _ := screentest.After(New(), s, screentest.Keys("t 1219 enter L652")...)
	assert.Contains(t, ansi.Strip(p.View(after, 100, 27)), "x 1209.7,", "sqrt(1219^2 - 150^2) = 1209.74")
	p, after, _ = screentest.After(p, after, screentest.Keys("up 1219x down")...)
	assert.NotContains(t, ansi.Strip(p.View(after, 100, 27)), "x 1209.7,")
	assert.Contains(t, ansi.Strip(p.View(after, 100, 27)), "1219x")
	p, after, _ = screentest.After(p, after, screentest.Keys("enter")...)
	assert.Equal(t, s.Job.Cut.At, after.Job.Cut.At)
	assert.True(t, p.Typing())
}

// A typed place comes to where the same two readings of an obstruction come to: a bumper that bows is in both.
func TestABowedBumperIsInTypedPlaces(t *testing.T) {
	s := screentest.State(t)
	job := s.Job
	job.Bow = []vehicles.BowPoint{{Y: 0, Offset: 12}}
	p, after, _ := screentest.After(New(), screentest.Judged(s, job), screentest.Keys("t 1219 enter L652")...)
	assert.Contains(t, ansi.Strip(p.View(after, 100, 27)), "x 1221.7,", "sqrt(1219^2 - 150^2) = 1209.74, and 12 forward")
	_, after, _ = screentest.After(p, after, screentest.Keys("enter")...)
	assert.Equal(t, 1221.74, after.Job.Cut.At[0])
}

func pasted(text string) tea.Msg {
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true}
}

func TestAPlaceIsPasted(t *testing.T) {
	s := screentest.State(t)
	p, after, changes := screentest.After(New(), s, append(screentest.Keys("t"), pasted("1219\nL 652\n"))...)
	assert.Equal(t, desk.Change{}, changes[1], "nothing is taken before Enter")
	assert.Contains(t, ansi.Strip(p.View(after, 100, 27)), "x 1209.7,")
	_, after, _ = screentest.After(p, after, screentest.Keys("enter")...)
	assert.Equal(t, 1209.74, after.Job.Cut.At[0])
}

func TestAPasteThatNoPlaceTakesChangesNothing(t *testing.T) {
	s := screentest.State(t)
	p, after, _ := screentest.After(New(), s, screentest.Keys("t 1219 enter L652 up")...)
	before := p.View(after, 100, 27)
	for text, says := range map[string]string{
		"1\n2\n3":                 "too long: 3 lines, 2 fields left; nothing was changed",
		strings.Repeat("7", 2001): "too long: more than 2000 characters; nothing was changed",
		"\n":                      "there is no text in what was pasted; nothing was changed",
	} {
		next, _, changes := screentest.After(p, after, pasted(text))
		assert.Equal(t, desk.Change{Say: says}, changes[0])
		assert.Equal(t, before, next.View(after, 100, 27))
	}
	p, after, _ = screentest.After(p, after, pasted("12x\n600"))
	view := ansi.Strip(p.View(after, 100, 27))
	assert.Contains(t, view, "12x", "what can't be read stays in its field with the reason")
	assert.NotContains(t, view, "x 1209.7,")
}

func TestPastedTextTakesNoneOfThePlaces(t *testing.T) {
	s := screentest.State(t)
	p, after, _ := screentest.After(New(), s, screentest.Keys("c")...)
	p, _, changes := screentest.After(p, after, pasted("a"))
	assert.Equal(t, desk.Change{}, changes[0])
	assert.True(t, p.Typing(), "the list stays")
}

func TestWhatStandsInAPromptIsTypedOver(t *testing.T) {
	s := screentest.State(t)
	_, after, _ := screentest.After(New(), s, screentest.Keys("k enter 102 enter")...)
	assert.Equal(t, 102., after.Job.Cut.Across)
}

// Which place is typed, and where that is now, is said; where the hole should be only after it has been read.
func TestWhatAPlaceIsTypedFor(t *testing.T) {
	s := screentest.State(t)
	p, after, _ := screentest.After(New(), s, screentest.Keys("t")...)
	assert.Contains(t, ansi.Strip(p.View(after, 60, 17)), "now bumper 1219.3, L 650: x 1210,")
	p, after, _ = screentest.After(New(), s, screentest.Keys("m 1222")...)
	below := s.Marks.Marks[0].Below
	expected := "marked at " + survey.Format(below.Bumper, survey.Millimetres) + ", L " + survey.Format(below.Left, survey.Millimetres)
	assert.NotContains(t, ansi.Strip(p.View(after, 60, 17)), "marked at")
	p, after, _ = screentest.After(p, after, screentest.Keys("enter L65")...)
	assert.NotContains(t, ansi.Strip(p.View(after, 60, 17)), "marked at", "while it is typed it could be copied")
	p, after, _ = screentest.After(p, after, screentest.Keys("2")...)
	view := strings.Join(strings.Fields(strings.ReplaceAll(ansi.Strip(p.View(after, 60, 17)), "│", " ")), " ")
	assert.Contains(t, view, expected)
	assert.Regexp(t, `it is 2\.\d mm forward`, view)
}

// How many figures a reading has before its point or fraction tells when it is typed whole.
func TestFiguresOfAReading(t *testing.T) {
	for text, want := range map[string]int{"": 0, "L": 0, "L 693": 3, "L6": 1, "1263.9": 4, "L 27 9/32\"": 2, "2'3": 1, "-195": 3} {
		assert.Equal(t, want, figures(text), text)
	}
}

// Where the cut is now is said as the tape says it in the fields below, so that what is typed there can be held to it: typed as told, it stays.
func TestTheCutsPromptSaysWhereItIsAsItIsTyped(t *testing.T) {
	for _, size := range [][2]int{{60, 15}, {100, 26}, {160, 46}} {
		d := screentest.New(t, New(), vehicles.Demo(), size[0], size[1])
		at := d.State.Job.Cut.At
		d.Type("t")
		said := regexp.MustCompile(`now bumper ([\d.]+),\s+L ([\d.]+):`).FindStringSubmatch(d.Screen.(screen).heading(d.State))
		require.Len(t, said, 3)
		assert.Contains(t, ansi.Strip(d.View(size[0], size[1])), said[1]+", L ", "%v", size)
		d.Type(said[1] + "<enter>L" + said[2] + "<enter>")
		assert.InDelta(t, at[0], d.State.Job.Cut.At[0], 0.1)
		assert.InDelta(t, at[1], d.State.Job.Cut.At[1], 0.1)
	}
}
