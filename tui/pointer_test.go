package tui

import (
	"math"
	"strconv"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// rulers are what a painted plan's rulers say: which place, mm, is in which column and row of the screen.
type rulers struct {
	across, up     map[int]float64
	left, top, end int // the picture's first column, its first row, and the row behind its last
}

// rulersOf reads the rulers of the plan, the upper of two pictures, on a painted screen; there is false without a plan. A plan of few rows has none
// at its foot.
func rulersOf(rows [][]rune) (r rulers, there bool) {
	r = rulers{across: map[int]float64{}, up: map[int]float64{}}
	for y, row := range rows {
		if head, _, found := strings.Cut(string(row), " SEEN FROM"); found && !there {
			r.left, r.top, there = len([]rune(head))+6, y+1, true
		}
	}
	if !there {
		return r, false
	}
	side := r.left - 1
	for r.end = r.top; r.end < len(rows) && strings.ContainsRune("│┤", rows[r.end][side]); r.end++ {
		if v, err := strconv.ParseFloat(strings.TrimSpace(string(rows[r.end][side-5:side])), 64); err == nil {
			r.up[r.end] = v
		}
	}
	if r.end == len(rows) || rows[r.end][side] != '└' {
		return r, true
	}
	for x := r.left; x < len(rows[r.end]) && rows[r.end][x] != '│'; x++ { // as far as the picture goes
		if rows[r.end][x] != '┴' {
			continue
		}
		before := strings.Map(figure, string(rows[r.end][:x]))
		if v, err := strconv.ParseFloat(before[strings.LastIndexByte(before, ' ')+1:], 64); err == nil {
			r.across[x] = v // the tick at which the number ends stands at what it counts
		}
	}
	return r, true
}

// figure leaves what a number is made of, and a blank for all else.
func figure(r rune) rune {
	if strings.ContainsRune("0123456789.-+", r) {
		return r
	}
	return ' '
}

// wide is how many mm a column is by two figures of a ruler; false where neither has two.
func (p rulers) wide() (float64, bool) {
	for _, ruler := range []struct {
		at      map[int]float64
		columns float64
	}{{p.across, 1}, {p.up, 2}} {
		for here, v := range ruler.at {
			for there, w := range ruler.at {
				if there > here {
					return math.Abs(w-v) / float64(there-here) / ruler.columns, true
				}
			}
		}
	}
	return 0, false
}

// pointedAt is the place of the floor under the pointer, mm, and about how large a cell is there: the one place that the wheel leaves
// where it is, nearer and farther.
func pointedAt(r *screentest.Driver, x, y int) (at geometry.Point, about float64, ok bool) {
	wheel := func(button tea.MouseButton) (middle geometry.Point, scale float64, ok bool) {
		_, change, _ := r.Screen.Update(tea.MouseMsg{X: x, Y: y, Button: button, Action: tea.MouseActionPress}, r.State)
		if change.Camera == nil {
			return middle, 0, false
		}
		return change.Camera.Middle, change.Camera.Scale, true
	}
	near, small, ok := wheel(tea.MouseButtonWheelUp)
	far, large, ok2 := wheel(tea.MouseButtonWheelDown)
	if !ok || !ok2 {
		return at, 0, false
	}
	// near = at + (m - at) small/s and far = at + (m - at) large/s, with m and s as they are shown
	ratio := large / small
	at = near.Scale(ratio).Sub(far).Scale(1 / (ratio - 1))
	return at, 2 * math.Sqrt(small*large) * 1.05, true // each is the nearest at which the rulers are even
}

// behindTheBumper is a van with an outlet and an obstruction behind the bumper.
func behindTheBumper(t *testing.T) vehicles.Job {
	job := screentest.State(t).Job
	exhaust := *job.Exhaust
	exhaust.Path = exhaust.Path.Insert(len(exhaust.Path), vehicles.RunPoint{X: -420, Y: 870, Drop: 220})
	job = job.WithRun(vehicles.ExhaustRun, &exhaust)
	job.Obstructions = job.Obstructions.Insert(0, vehicles.Obstruction{Name: "tow bar", Kind: "other", Measured: true, Drop: vehicles.Span{From: 50, To: 150, Set: true}, Place: vehicles.Place{
		X: pair("-260", "40"), Y: pair("-300", "300"),
	}})
	job.Ties = vehicles.List[vehicles.Tie]{
		{Name: "a", Below: pair("700", "L 240"), Above: pair("705", "L 236"), Use: true},
		{Name: "b", Below: pair("2500", "R 310"), Above: pair("2503", "R 312"), Use: true},
	}
	return job
}

func pair(x, y string) (p vehicles.Pair) {
	p[0], _ = survey.Typed(x, survey.X)
	p[1], _ = survey.Typed(y, survey.Y)
	return p
}

// What the rulers say of a cell is what a tap on it answers: on every screen with a plan, whatever else the plan shows.
func TestATapMeansThePlaceThatIsPainted(t *testing.T) {
	ofWholeRun(t)
	drilled := pair("1240", "L 640")
	jobs := map[string]vehicles.Job{
		"plain": screentest.State(t).Job, "behind the bumper": behindTheBumper(t), "drilled": behindTheBumper(t).WithDrilled(&drilled),
	}
	cameras := map[string]string{"whole": "", "nearer": "++", "other side": "v", "other side nearer": "v+"}
	opened := map[string][]string{
		"Underneath": {"", "p", "n"}, "On top": {"<end>", "p"}, "Match": {"", "p", "<down>"}, "Place": {"", "t", "h"}, "Runs": {"", "n", "t"}, "Checks": {"<enter>f", "<down><enter>f"},
	}
	plans := map[string]int{}
	for name, job := range jobs {
		for _, screen := range Screens() {
			for _, size := range screentest.Sizes {
				for camera, keys := range cameras {
					for _, open := range opened[screen.Title()] {
						r := screentest.New(t, screen, job, size.W, size.H)
						require.Empty(t, r.State.Faults)
						r.Type(open + keys)
						what := strings.Join([]string{screen.Title(), open, name, size.Name, camera}, ", ")
						if holdsPlan(t, r, size.W, size.H, what) {
							plans[screen.Title()+" "+size.Name]++
						}
					}
				}
			}
		}
	}
	for title := range opened {
		for _, size := range screentest.Sizes {
			assert.GreaterOrEqual(t, plans[title+" "+size.Name], 12, "%s, %s", title, size.Name)
		}
	}
}

// holdsPlan holds cells all over the plan on a screen to its rulers, and the cell with the sign of the cut to where the hole is; it is false when there is nothing
// to hold them to.
func holdsPlan(t *testing.T, r *screentest.Driver, w, h int, what string) bool {
	view := r.View(w, h)
	var rows [][]rune
	for _, row := range strings.Split(view, "\n") {
		rows = append(rows, []rune(row))
	}
	paper, there := rulersOf(rows)
	if !there {
		return false
	}
	wide, known := paper.wide()
	down := 2.0
	if strings.Contains(view, "SEEN FROM ABOVE") {
		down = -2
	}
	held := false
	for y := paper.top; y < paper.end; y++ {
		for x := paper.left; x < w; x++ {
			cut := rows[y][x] == '◎'
			if !cut && (y%4 != 0 || (x+y)%11 != 0) {
				continue
			}
			at, about, ok := pointedAt(r, x, y)
			if !ok {
				continue
			}
			if !known {
				wide = about
			}
			half := wide/2 + 1e-6
			if !known {
				half = wide / 2 * 1.01 // as near as the wheel tells how large a cell is
			}
			if cut {
				require.InDelta(t, r.State.Result.Plan.Cut.At.X, at.X, half, what)
				require.InDelta(t, r.State.Result.Plan.Cut.At.Y, at.Y, 2*half, what)
			}
			for col, v := range paper.across {
				if !known && col != x {
					continue
				}
				require.InDelta(t, v+float64(x-col)*wide, at.X, half, "%s: column %d", what, x)
			}
			for row, v := range paper.up {
				if !known && row != y {
					continue
				}
				require.InDelta(t, v+float64(y-row)*down*wide, at.Y, wide+1e-6, "%s: row %d", what, y)
			}
			held = held || cut || len(paper.across) > 1 && len(paper.up) > 0
			if r.Screen.Title() == "Place" {
				tapped(t, r, x, y, at, what)
			}
		}
	}
	return held
}

// tapped holds that a tap that moves the cut moves it to a place.
func tapped(t *testing.T, r *screentest.Driver, x, y int, at geometry.Point, what string) {
	_, change, _ := r.Screen.Update(tea.MouseMsg{X: x, Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress}, r.State)
	if change.Job == nil || change.Job.Cut.At == r.State.Job.Cut.At {
		return
	}
	require.InDelta(t, at.X, change.Job.Cut.At[0], 0.5+1e-6, what)
	require.InDelta(t, at.Y, change.Job.Cut.At[1], 0.5+1e-6, what)
}
