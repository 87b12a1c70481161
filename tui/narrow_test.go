package tui

import (
	"regexp"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
)

// places are keys that lead to every list, form and panel of the screens.
var places = map[string][]string{
	"Underneath": {"", "<end>", "<down><enter><down><down><down>", "<down><down><enter><down><down><down>", "<down><down><down><down>", "n", "nc1000<enter>", "a", "a<tab>", "a<tab><tab>", "x", "p"},
	"On top": {
		"", "<down>", "<down><down>", "<down><down><down><enter>", "<down><enter><down>", "<down><down><enter>", "<down><down><down><down><enter><down>",
		"<down><down><down><down><enter>" + strings.Repeat("<down>", 14), "<end><enter><down><down><down>", "n",
	},
	"Match":  {"", "<down>", "<enter><down>", "n", "o", "<down>o"},
	"Place":  {"", "t", "m", "k", "d", "s", "c", "e"},
	"Runs":   {"", "n", "<tab>", "<tab>n", "k", "t", "h", "<tab>t", "/", "j", "q"},
	"Marks":  {"", "<down>", "<down><down>", "l", "<enter>", "<tab>"},
	"Checks": {"", "<down>", "<down><down><down>", "<end>", "<enter>", "w", "e", "n"},
	"Job":    {"", "<enter><down>", "<down><enter><down>", "<down><down><enter>", "<down><down><down><enter>", strings.Repeat("<down>", 8) + "<enter>", strings.Repeat("<down>", 12), "<end>"},
	"Sizing": {"", "<enter>", "<down><down><down><down><down>", "<enter><down><down>", "<end>", "<end><enter>"},
}

// cutNumber is a number before what stands for the rest of a row.
var (
	cutNumber = regexp.MustCompile(`([0-9]+(?:[.,][0-9]+)?)[.,]?…`)
	aNumber   = regexp.MustCompile(`[0-9]+(?:[.,][0-9]+)?`)
)

// wholeNumbers holds that what a narrow row has of a number is all of it: 65… of 652 is another reading. Wide is the same with room
// for all.
func wholeNumbers(t require.TestingT, narrow, wide string) {
	for _, cut := range cutNumber.FindAllStringSubmatch(narrow, -1) {
		require.Contains(t, aNumber.FindAllString(wide, -1), cut[1], narrow)
	}
}

// However wide the window is, a row is not cut in the middle of a number.
func TestNoRowIsCutInTheMiddleOfANumber(t *testing.T) {
	job := screentest.Full(t)
	rapid.Check(t, func(rt *rapid.T) {
		title := rapid.SampledFrom([]string{"Underneath", "On top", "Match", "Place", "Runs", "Marks", "Checks", "Job", "Sizing"}).Draw(rt, "screen")
		keys := rapid.SampledFrom(places[title]).Draw(rt, "keys")
		w, h := rapid.IntRange(60, 170).Draw(rt, "w"), rapid.SampledFrom([]int{17, 27, 47}).Draw(rt, "h")
		r := onScreen(t, title, job, w, h)
		if rapid.Bool().Draw(rt, "inches") {
			r.State.Settings.Units = desk.Inches
		}
		r.Type(keys)
		narrow := r.View(w, h)
		if cutNumber.MatchString(narrow) {
			wholeNumbers(rt, narrow, r.View(400, 100))
		}
	})
}

// The same for what the program itself says above and below a screen.
func TestNoLineOfTheFrameIsCutInTheMiddleOfANumber(t *testing.T) {
	ofWholeRun(t)
	b, _ := van(t)
	b.desk.Begin(screentest.Full(t), true)
	for w := 60; w <= 170; w++ {
		for b.at = range b.screens {
			b.w, b.h = 400, 20
			wide := b.rows()
			b.w = w
			rows := b.rows()
			for _, y := range []int{0, 1, 2, 18, 19} {
				wholeNumbers(t, rows[y], wide[y])
				require.LessOrEqual(t, ansi.StringWidth(rows[y]), w)
			}
		}
	}
}
