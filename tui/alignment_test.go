package tui

import (
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// lists are the screens with figures in columns, the keys that lead there, and what a row of them looks like: each group is a
// figure, and those of a group stand under each other.
var lists = []struct {
	screen, keys string
	row          *regexp.Regexp
	least        int // such rows that a body of 17 has
}{
	{"Checks", "", regexp.MustCompile(`(?:foul|doubtful|clear) .* (-?[\d.]+)\S* +(?:± +([\d.]+))`), 2},
	{"Checks", "e", regexp.MustCompile(`█.* (\d+) % ± +([\d.]+)`), 3},
	{"Place", "", regexp.MustCompile(`(?:foul|doubtful|clear) .* (-?[\d.]+) +± +([\d.]+)`), 1},
	{"Runs", "", regexp.MustCompile(`(?:foul|doubtful|clear) .* (-?[\d.]+) +± +([\d.]+)`), 1},
	{"Match", "", regexp.MustCompile(`(\d+)  [LR] (\d+) │ +(\d+)  [LR] (\d+) +left over ([\d.]+)`), 2},
	{"Work", "<end><up><up><up><up><enter>1315", regexp.MustCompile(`[^,\d] +(-?\d[\d.]*) +(-?\d[\d.]*) *$`), 2},
	{"Sizing", "<down><down>", regexp.MustCompile(`^[▸ ] [a-z][^│]* {2,}([\d.]+) (?:mm|ml|h|W|V|nights|strokes|s)(?:[ ,│]|$)`), 3},
	{"Job", "<end>", regexp.MustCompile(` ([\d.]+) mm +(?:built in|this job)`), 2},
}

func TestFiguresStandUnderEachOtherOnEveryScreen(t *testing.T) {
	for _, l := range lists {
		for _, size := range screentest.Sizes {
			r := onScreen(t, l.screen, vehicles.Demo(), size.W, size.H)
			r.Type(l.keys)
			view := r.View(size.W, size.H)
			var points map[int]int
			rows := 0
			for _, row := range strings.Split(view, "\n") {
				at := l.row.FindStringSubmatchIndex(row)
				if at == nil {
					continue
				}
				rows++
				if points == nil {
					points = map[int]int{}
				}
				for group := 1; group < len(at)/2; group++ {
					point := pointIn(row, at[2*group], at[2*group+1])
					if rows == 1 {
						points[group] = point
					}
					assert.Equal(t, points[group], point, "%s %s, figure %d: %s\n%s", l.screen, size.Name, group, row, view)
				}
			}
			require.GreaterOrEqual(t, rows, l.least, "%s %s\n%s", l.screen, size.Name, view)
		}
	}
}

// pointIn is the column of a figure's point, or of where it would be.
func pointIn(row string, from, to int) int {
	whole, _, _ := strings.Cut(row[from:to], ".")
	return utf8.RuneCountInString(row[:from]) + utf8.RuneCountInString(whole)
}

// A column of figures may end in blanks where their last places would be; a margin follows it.
const mostBlank = len(".00u²") + desk.Margin

// Beside a finding that nothing measured enters the column of its ± is blank.
var noPlusMinus = regexp.MustCompile(`^[ ▶]?(foul|doubtful|clear) [^±]*$`)

func TestNothingIsCutBesideBlankSpace(t *testing.T) {
	for _, screen := range Screens() {
		for _, size := range screentest.Sizes {
			for _, keys := range []string{"", "<down><down><down><down><down>", "<end>", "<enter>"} {
				r := onScreen(t, screen.Title(), vehicles.Demo(), size.W, size.H)
				r.Type(keys)
				for _, row := range strings.Split(r.View(size.W, size.H), "\n") {
					for _, part := range strings.Split(row, "│") {
						if strings.Contains(part, "…") {
							blank := len(part) - len(strings.TrimRight(part, " "))
							most := mostBlank
							if noPlusMinus.MatchString(part) {
								most += len("  ± 12.5")
							}
							assert.LessOrEqual(t, blank, most, "%s %s %s: %q", screen.Title(), size.Name, keys, row)
						}
					}
				}
			}
		}
	}
}
