package tui

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
	"bench.example/undermark/vehicles/harmless"
)

// What harms, as a job file may have it in a text of one line, and as it may stand under [extra], in a book, in a file's
// name or in a job that no file was. The second has colours too, and says "clear" in the program's own.
const (
	unseen = " \u202e\u2066\u200b\ufeff\u2028\U000e0041\u00ad\ue000" + "e\u0301\u0301\u0301\u0301\u0301\u0301 z"
	evil   = "\x1b[31m\x1b[0m\x1b[8m\x1b]0;owned\a\x1b[2J\n\r\t\u009b1m\x7f" + unseen
)

// spoilt puts a text behind every text of a job that a person gave it, and into all that was refused or begun.
func spoilt(job vehicles.Job, name, extra func(string) string) vehicles.Job {
	job.Obstructions, job.Openings = slices.Clone(job.Obstructions), slices.Clone(job.Openings)
	job.Fittings, job.Ties = slices.Clone(job.Fittings), slices.Clone(job.Ties)
	for _, text := range []*string{&job.Ref, &job.Vehicle, &job.Fitter, &job.Notes} {
		*text = name(*text)
	}
	job.Notes = strings.NewReplacer("\n", "", "␊", "").Replace(job.Notes) // lines are its own
	for i := range job.Obstructions {
		job.Obstructions[i].Name = name(job.Obstructions[i].Name)
	}
	for i := range job.Openings {
		job.Openings[i].Name = name(job.Openings[i].Name)
	}
	for i := range job.Fittings {
		job.Fittings[i].Name = name(job.Fittings[i].Name)
	}
	for i := range job.Ties {
		job.Ties[i].Name = name(job.Ties[i].Name)
	}
	first := job.Obstructions[0].Name
	job = job.WithRefused([]vehicles.Refusal{
		{Of: "obstruction " + first, Name: first, Field: "low", Label: extra("bottom"), Text: extra("203"), Why: extra("why"), About: extra("top")},
		{Of: "obstruction " + first, Name: extra(first), Field: "x0", Label: extra("from"), Text: extra("12"), Why: extra("reason"), About: "x1"},
		{Of: "obstruction " + first, Name: extra(first), Field: extra("nowhere"), Label: extra("no field"), Text: extra("1"), Why: extra("reason")},
		{Of: "job", Name: "job", Field: "date", Label: "date", Text: extra("never"), Why: extra("reason")},
	})
	u := &job.Unfinished
	for _, list := range []*vehicles.List[vehicles.Begun]{&u.Obstructions, &u.Openings, &u.Fittings, &u.Ties} {
		*list = list.Insert(0, vehicles.Begun{Texts: map[string]string{"name": extra("begun"), "kind": "other", "x0": "700", "x1": extra("+20"), "top": extra("1")}})
	}
	return job
}

// spoiler is a program with such a job, or its twin: the same with the texts made harmless beforehand.
func spoiler(t *testing.T, job vehicles.Job, extra func(string) string) *bench {
	dir := t.TempDir()
	book := filepath.Join(dir, "book.toml")
	source := strings.NewReplacer("\x1b", `\u001b`, "\a", `\u0007`, "\n", `\n`, "\r", `\r`, "\t", `\t`, "\x7f", `\u007f`, "\u009b", `\u009b`).Replace(extra("sheet"))
	require.NoError(t, os.WriteFile(book, []byte("format = 1\n[[rule]]\nid = \"cut.clearance\"\nvalue = 20\nsource = \""+source+"\"\n"), 0o644))
	workshop, err := rules.LoadBook(book)
	require.NoError(t, err)
	r, err := New(Options{Book: workshop.Over(rules.Builtin()), Screens: Screens()})
	require.NoError(t, err)
	r.now, r.settle, r.fade = func() time.Time { return time.Unix(1e9, 0) }, 0, 0
	b := &bench{Root: r, t: t}
	r.sample, r.say = false, ""
	r.document.Job, r.document.Path = job, "nowhere/van"+extra("")+".toml"
	r.desk.State.Path = r.document.Path
	r.desk.Begin(job, true)
	b.do(r.advise())
	return b
}

// twins are a hostile job's program and its twin.
func twins(t *testing.T, name string, inNames bool) (hostile, twin *bench) {
	document, err := vehicles.Load(jobOfCases(t, name))
	require.NoError(t, err)
	text := unseen
	if inNames {
		text = evil
	}
	put := func(text string) func(string) string { return func(s string) string { return s + text } }
	hostile = spoiler(t, spoilt(document.Job, put(text), put(evil)), put(evil))
	twin = spoiler(t, spoilt(document.Job, put(harmless.Text(text)), put(harmless.Text(evil))), put(harmless.Text(evil)))
	return hostile, twin
}

// scripts are keys that lead through every screen and what lies over it.
var scripts = map[string]string{
	"under": "1|down|down|enter|down|down|down|down|left|x|esc|up|up|enter|left|left|backspace|esc|end|enter|down|down|tab|esc|m|x|ctrl+z|n|esc|a|esc|p|p|d",
	"top":   "2|end|up|enter|down|down|esc|x|ctrl+z|up|enter|esc",
	"match": "3|down|down|enter|x|home|delete|esc|o|o|s|t|end|enter",
	"place": "4|c|esc|e|esc|t|esc|m|esc|n|j",
	"runs":  "5|n|n|h|down|esc|t|esc|k|esc|tab|n|t|esc",
	"marks": "6|l|m|enter|enter|enter|enter|6|down|down|enter|tab|down|tab|p|v",
	"check": "7|down|down|down|pgdown|pgdown|end|enter|esc|home|f|n|down|down|end|enter|7|i|x",
	"job":   "8|enter|x|home|right|right|right|right|right|right|delete|down|down|down|x|down|left|left|left|left|left|left|esc|down|down|down|end|enter|w|left|left|left|left|left|left|left|esc|up|up",
	"over":  "1|x|?|pgdown|pgdown|esc|ctrl+c|esc|ctrl+z|ctrl+c|esc|ctrl+s|enter|esc|8|w|x|esc|ctrl+c",
}

// Each screen shows of a hostile job what it shows of its harmless twin, and nothing else: no colour, no column, no row
// more.
func TestScreensShowHostileTextAsItsHarmlessTwin(t *testing.T) {
	for name, script := range scripts {
		for _, size := range [][2]int{{60, 20}, {100, 30}, {160, 50}} {
			t.Run(fmt.Sprintf("%s-%dx%d", name, size[0], size[1]), func(t *testing.T) {
				t.Parallel()
				inNames := name != "over" // what no file can hold can't be saved, and what the twin has can
				hostile, twin := twins(t, "24-everything.toml", inNames)
				for _, b := range []*bench{hostile, twin} {
					b.desk.State.Settings.Colour = desk.TrueColour
					b.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
				}
				slow := name == "over" || name == "place" || name == "check" // what is worked out beside the screens
				seen := false
				for i, key := range strings.Split(script, "|") {
					for _, b := range []*bench{hostile, twin} {
						msg, known := keyNamed(key)
						require.True(t, known, key)
						if _, cmd := b.Update(msg); slow {
							b.do(cmd)
						}
					}
					got := hostile.View()
					filledHarmless(t, got, size[0], size[1])
					seen = seen || strings.Contains(got, "▯")
					if want := twin.View(); want != got {
						require.Equal(t, strings.Split(want, "\n"), strings.Split(got, "\n"), "after %d keys, %q", i+1, key)
					}
				}
				assert.True(t, seen || name == "marks" || name == "place", "there is something to be seen of it")
			})
		}
	}
}

// filledHarmless holds that a picture fills the window exactly and harms nothing.
func filledHarmless(t require.TestingT, view string, w, h int) {
	require.Equal(t, harmless.Painted(view), view)
	rows := strings.Split(view, "\n")
	require.Len(t, rows, h)
	for _, row := range rows {
		require.LessOrEqual(t, ansi.StringWidth(row), w, "%q", row)
		require.Equal(t, harmless.Text(ansi.Strip(row)), ansi.Strip(row), "%q", row)
	}
}

// Whatever is pressed and pasted, the picture fills the window and harms nothing.
func TestWildHandsAndHostileText(t *testing.T) {
	keys := strings.Split(strings.Join([]string{scripts["under"], scripts["job"], scripts["match"], "left|right|backspace|ctrl+k|652|" + evil + "|\u202e|\u0301|\u00ad"}, "|"), "|")
	require.NoError(t, flag.Set("rapid.checks", "30")) // a second or two
	rapid.Check(t, func(rt *rapid.T) {
		b, _ := twins(t, "24-everything.toml", rapid.Bool().Draw(rt, "in names"))
		size := rapid.SampledFrom([][2]int{{60, 20}, {100, 30}, {30, 9}}).Draw(rt, "size")
		b.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		for range rapid.IntRange(1, 15).Draw(rt, "presses") {
			key := rapid.SampledFrom(keys).Draw(rt, "key")
			if rapid.IntRange(0, 5).Draw(rt, "paste") == 0 {
				b.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(evil), Paste: true})
			}
			b.press(key)
			filledHarmless(rt, b.View(), size[0], size[1])
		}
	})
}

// A file with a hostile name and hostile faults is asked about and told of in its own line.
func TestHostileFileNamesAreAskedAboutHarmless(t *testing.T) {
	o := options(t)
	o.Path = filepath.Join(filepath.Dir(o.Path), "a\x1b[31m\nFAKE\u202e\xff.toml")
	o.Notes = []string{"settings\u202e\nFAKE: wrong"}
	o.Screens = Screens()
	b := started(t, o)
	for _, keys := range []string{"", "enter", "1", "5", "8", "ctrl+c", "esc", "ctrl+s", "w", "esc", "ctrl+c"} {
		if keys != "" {
			b.press(keys)
		}
		filledHarmless(t, b.View(), 100, 30)
		for _, row := range b.rows() {
			assert.False(t, strings.HasPrefix(strings.TrimSpace(row), "FAKE"), "%q: %q", keys, row)
		}
	}
}

// careless is a screen that paints what it is given.
type careless struct{ plain }

func (c careless) Update(tea.Msg, desk.State) (desk.Screen, desk.Change, tea.Cmd) {
	return c, desk.Change{}, nil
}

func (c careless) View(s desk.State, _, _ int) string { return s.Job.Notes }

// The last line of defence: of what a screen forgets to make harmless, colours get through and nothing else.
func TestOnlyColoursLeaveForTheTerminal(t *testing.T) {
	o := options(t)
	o.Path, o.Screens = "", []desk.Screen{careless{plain{title: "Careless"}}}
	b := started(t, o)
	b.desk.State.Job.Notes = "\x1b[31mred\x1b[0m\x1b[2J\x1b]0;x\a\u202e\n\u009b1m"
	assert.Contains(t, b.View(), "\x1b[31mred\x1b[0m␛[2J␛]0;x␇▯\n▯1m")
}
