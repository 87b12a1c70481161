package tui

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
)

// tappedLists are the keys that show each list of a screen; what is listed beside a plan that moves things is held by its own screen.
var tappedLists = []struct{ screen, keys string }{
	{"Underneath", ""}, {"Underneath", "a"}, {"On top", ""}, {"Match", ""}, {"Marks", "lm<tab>"}, {"Checks", ""}, {"Checks", "n"},
	{"Job", ""}, {"Work", ""}, {"Sizing", ""},
}

// A row that is tapped stays under the finger, or rises where more is said of it below the list: a second tap on the same cell, as a wet
// screen gives by itself, is never of another row.
func TestNoTappedRowGoesFromUnderAFinger(t *testing.T) {
	ofWholeRun(t)
	job := screentest.Full(t)
	of := screentest.Judged(desk.State{}, job)
	next := desk.Next{Advice: rules.Next(of.Result, of.Book), Known: true}
	for _, l := range tappedLists {
		for _, size := range screentest.Sizes[:2] {
			stayed := 0
			for _, down := range []int{0, 13, 30} {
				for y := range size.H {
					r := onScreen(t, l.screen, job, size.W, size.H)
					r.State.Next = next
					r.Type(l.keys + strings.Repeat("<down>", down))
					was := r.View(size.W, size.H)
					r.Tap(12, y)
					once := r.View(size.W, size.H)
					if at, row := picked(once); at == "" || at == nameOf(picked(was)) {
						continue
					} else if row == y {
						stayed++
					}
					r.Tap(12, y)
					if l.screen == "Checks" && nameOf(picked(r.View(size.W, size.H))) == "" {
						r.Type("<esc>") // the picked one was shown
					}
					if at, _ := picked(r.View(size.W, size.H)); l.keys == "a" || !r.Screen.Typing() { // else its form is open
						assert.Equal(t, nameOf(picked(once)), at, "%s, %q, %s, row %d after %d", l.screen, l.keys, size.Name, y, down)
					}
				}
			}
			assert.NotZero(t, stayed, "%s, %q, %s", l.screen, l.keys, size.Name)
			t.Logf("%s, %q, %s: %d stayed", l.screen, l.keys, size.Name, stayed)
		}
	}
}

var pointer = regexp.MustCompile(`[▸▶] *(?:\[.\] )?([^│]{2,10})( *[^│]{0,20})`)

// picked is the name of the row that a list points at, and where it is; "" for none.
func picked(view string) (name string, row int) {
	for y, line := range strings.Split(view, "\n") {
		line, _, _ = strings.Cut(line, "│") // beside it stands a form
		if at := pointer.FindStringSubmatch(line); at != nil {
			if rest := strings.TrimSpace(at[2]); strings.TrimSpace(at[1]) == "foul" || strings.TrimSpace(at[1]) == "doubtful" || strings.TrimSpace(at[1]) == "clear" {
				return rest, y // the name stands behind the verdict
			}
			return at[1], y
		}
	}
	return "", -1
}

func nameOf(name string, _ int) string { return name }
