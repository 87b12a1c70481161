package tui

import (
	"regexp"
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// A reading that is called out is typed with figures, +, L, R and Enter alone: all that an obstruction needs, once its kind is chosen.
func TestReadingsCalledOutNeedFiguresAndSides(t *testing.T) {
	const readings = "652\n+84\nL40\nR310\n110\n195\n"
	require.Regexp(t, `^[0-9+LR\n]*$`, readings)
	for _, letters := range []string{readings, strings.ToLower(readings)} {
		b, _ := van(t)
		b.keys(screentest.TheFloor).keys(screentest.TheHooks).keys(`1 n c`)
		for _, letter := range letters {
			if letter == '\n' {
				b.press("enter")
				continue
			}
			b.press(string(letter))
		}
		require.Len(t, b.desk.State.Job.Obstructions, 1)
		o := b.desk.State.Job.Obstructions[0]
		assert.Equal(t, "crossmember", o.Kind)
		var got []string
		for _, reading := range []string{o.X[0].Text, o.X[1].Text, o.Y[0].Text, o.Y[1].Text} {
			got = append(got, strings.ToUpper(strings.ReplaceAll(reading, " ", "")))
		}
		assert.Equal(t, []string{"652", "+84", "L40", "R310"}, got)
		assert.Equal(t, vehicles.Span{From: 110, To: 195, Set: true}, o.Drop)
		assert.True(t, o.Measured)
		assert.Empty(t, b.desk.State.Job.Refused())
	}
}

// oneFinger are what does with one key, elsewhere or in a field, what a chord does; all is on Job but for emptying a field: what is selected goes
// with the first letter, Delete takes the rest; and for moving a view, which q takes over the whole floor.
var oneFinger = map[string]struct{ title, key string }{
	"ctrl+s": {"Job", "s"}, "ctrl+z": {"Job", "z"}, "ctrl+y": {"Job", "y"}, "ctrl+c": {"Job", "q"}, "ctrl+u": {"", "delete"},
	"shift+tab": {"", "up"}, // and q, on Runs ;, for what follows
	"shift+up":  {"", "q"}, "shift+left": {"", "q"}, "shift+down": {"", "q"}, "shift+right": {"", "q"},
}

// Nothing needs a function key, Alt, or two hands.
func TestOneHandReachesEverything(t *testing.T) {
	chord := regexp.MustCompile(`^(f\d+|alt\+.*|ctrl\+.*|shift\+.*)$`)
	job := map[string]bool{}
	hold := func(b *bench, where string, bindings []key.Binding) {
		for _, k := range bindings {
			easy := len(k.Keys()) == 0
			for _, name := range k.Keys() {
				if !chord.MatchString(name) {
					easy = true
				} else if other, has := oneFinger[name]; has {
					easy = true
					if other.title != "" {
						job[other.key] = true
					}
				}
			}
			assert.True(t, easy, "%s: %s %s needs two hands", where, k.Help().Key, k.Help().Desc)
		}
	}
	for _, size := range windows {
		b, _ := wholeVan(t, size[0], size[1])
		hold(b, "everywhere", b.everywhere())
		b.plain = true
		hold(b, "everywhere, in lines", b.everywhere())
		b.plain = false
		for i, s := range b.screens {
			b.goTo(i)
			for _, keys := range tappable[s.Title()] {
				b.keys(strings.NewReplacer("<", " ", ">", " ").Replace(keys))
				hold(b, s.Title()+" "+keys, append(b.screens[b.at].Keys(b.desk.State), b.hints()...))
				b.keys("esc esc")
			}
		}
		b.goTo(b.titled("Job"))
		var there []string
		for _, k := range b.screens[b.at].Keys(b.desk.State) {
			there = append(there, k.Keys()...)
		}
		for name := range job {
			assert.Contains(t, there, name, "what does without a chord what one does elsewhere")
		}
	}
}

// What a chord does elsewhere a single key does on Job, and says the same.
func TestJobUndoesWithOneFinger(t *testing.T) {
	b, _ := van(t)
	b.keys(screentest.TheFloor)
	job := string(b.desk.State.Job.Format())
	b.goTo(b.titled("Job"))
	b.press("z")
	assert.True(t, b.shows("took back: "))
	assert.NotEqual(t, job, string(b.desk.State.Job.Format()))
	b.press("y")
	assert.True(t, b.shows("done again: "))
	assert.Equal(t, job, string(b.desk.State.Job.Format()))
	b.press("s")
	assert.False(t, b.desk.State.Dirty, "saved")
}

// No key stands for two things at once: what does without a chord what one does would not be reached.
func TestNoKeyMeansTwoThings(t *testing.T) {
	for _, size := range windows {
		for title, states := range tappable {
			for _, keys := range states {
				b, _ := wholeVan(t, size[0], size[1])
				b.goTo(b.titled(title))
				b.keys(strings.NewReplacer("<", " ", ">", " ").Replace(keys))
				means := map[string]string{}
				for _, k := range b.screens[b.at].Keys(b.desk.State) {
					for _, name := range sentBy(k) {
						assert.Empty(t, means[name], "%s %s: %s is also %s", title, keys, name, k.Help().Desc)
						means[name] = k.Help().Desc
					}
				}
			}
		}
	}
}
