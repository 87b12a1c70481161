package tui

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
)

// leastTarget is how many columns anything is wide that can be tapped: a cell is about 2 mm on a phone held at arm's length, a gloved
// finger three of them. No source.
const leastTarget = 3

// tappable are keys that show what can be tapped on each screen: its list, its forms, what it asks, what it lists.
var tappable = map[string][]string{
	"Underneath": {"", "<enter>", "<enter><down><down>", "a"}, "On top": {"", "<enter>", "<down><down><down><enter>"}, "Match": {"", "<enter>"},
	"Place": {"", "t", "m"}, "Runs": {"", "<tab>", "t"}, "Marks": {"", "l"}, "Checks": {"", "n"}, "Job": {"", "<enter>", "<down><down><enter>"}, "Work": {"", "<enter>"}, "Sizing": {"", "<enter>"},
}

// A target is a stretch of a row in which a tap does the same. On the plan each cell is a place of its own and none is held to this.
func TestWhatCanBeTappedIsWideEnough(t *testing.T) {
	ofWholeRun(t)
	job := screentest.Full(t)
	for _, size := range screentest.Sizes {
		smallest, where := 999, ""
		for _, screen := range Screens() {
			opened := tappable[screen.Title()]
			if screen.Title() == "Job" && size.W > 100 {
				continue // rows all over, and slow to judge
			}
			if size.W > screentest.Sizes[0].W {
				opened = opened[:1] // forms and prompts are laid out as beside the plan of the size before
			}
			for _, keys := range opened {
				r := onScreen(t, screen.Title(), job, size.W, size.H)
				r.Type(keys)
				rows := strings.Split(r.View(size.W, size.H), "\n")
				for _, at := range targets(r, rows, size.W, 1+size.H/20) {
					what := fmt.Sprintf("%s, %q, row %d, columns %d to %d: %s", screen.Title(), keys, at.row, at.from, at.to-1, rows[at.row])
					assert.GreaterOrEqual(t, at.to-at.from, leastTarget, what)
					if at.to-at.from < smallest {
						smallest, where = at.to-at.from, what
					}
				}
			}
		}
		t.Logf("%s: the smallest target is %d columns: %s", size.Name, smallest, where)
	}
}

// target is a stretch of a row that does something when it is tapped, and all over the same.
type target struct{ row, from, to int }

// targets are those of a body, the plan, a profile below it and their edges aside; of larger ones those of each so many rows, as a tap takes its time.
func targets(r *screentest.Driver, view []string, w, each int) (all []target) {
	var rows [][]rune
	for _, row := range view {
		rows = append(rows, []rune(row))
	}
	paper, plan := rulersOf(rows)
	lowest := paper.end
	for y, row := range view { // of two pictures one above the other
		if y > lowest && strings.HasPrefix(row, "mm   └") {
			lowest = y
		}
	}
	came := comesOf(r)
	nothing := came(-1, -1)
	for y := 0; y < len(view); y += each {
		last, from := nothing, 0
		for x := range w + 1 {
			now := nothing
			if x < w && (!plan || x < paper.left-9 || w < 100 && (y < paper.top-1 || y > lowest+2)) {
				now = came(x, y)
			}
			if now != last {
				if last != nothing {
					all = append(all, target{y, from, x})
				}
				last, from = now, x
			}
		}
	}
	return all
}

// comesOf tells in words what a tap on a cell comes to; where it comes to what the cell before came to, it doesn't put it in words again.
func comesOf(r *screentest.Driver) func(x, y int) string {
	var before desk.Screen
	var did desk.Change
	var said string
	return func(x, y int) string {
		screen, change, _ := r.Screen.Update(tea.MouseMsg{X: x, Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress}, r.State)
		if before != nil && reflect.DeepEqual(screen, before) && reflect.DeepEqual(change, did) {
			return said
		}
		job := ""
		if change.Job != nil {
			job = string(change.Job.Format())
		}
		p := screen.Plain(r.State)
		before, did, said = screen, change, fmt.Sprint(job, change.Say, change.Ask, change.Goto, change.Tick, p.Here, p.Field)
		return said
	}
}

// Each hint at the foot, each title in the header is wide enough, and no column between two hints is lost.
func TestHintsTakeTheGapsBetweenThem(t *testing.T) {
	for _, size := range windows {
		b, _ := wholeVan(t, size[0], size[1])
		smallest := 999
		for i := range b.screens {
			b.goTo(i)
			for _, keys := range []string{"", "enter", "esc ?", "esc !"} {
				b.keys(keys)
				for n, buttons := range [][]button{b.titleButtons(), b.hintButtons()} {
					for k, p := range buttons {
						reach := 0
						for x := range b.w {
							if p.holds(x) {
								reach++
							}
						}
						assert.GreaterOrEqual(t, reach, leastTarget, p.text)
						smallest = min(smallest, reach)
						if k > 0 {
							for x := buttons[k-1].from; x < p.from+p.width; x++ {
								one, other := buttons[k-1].holds(x), p.holds(x)
								tight := n == 0 && x == p.from-1
								assert.True(t, one != other || tight, "%s: column %d", p.text, x)
							}
						}
					}
				}
			}
			b.keys("esc esc")
		}
		t.Logf("%dx%d: the smallest hint or title is %d columns", size[0], size[1], smallest)
	}
}
