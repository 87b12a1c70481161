package plan

import (
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

func pt(x, y float64) geometry.Point { return geometry.Point{X: x, Y: y} }

// state is a desk with a small van on it.
func state(t testing.TB) desk.State {
	data, err := os.ReadFile("testdata/van.toml")
	require.NoError(t, err)
	job, err := vehicles.ParseJob(data, "van.toml")
	require.NoError(t, err)
	result, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	return desk.State{Job: job, Result: result, Selected: -1, Settings: desk.Settings{Colour: desk.TrueColour}}
}

func typed(keys string) tea.KeyMsg { return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(keys)} }

func press(t *testing.T, p Pane, msg tea.Msg, s *desk.State) (Pane, *geometry.Point) {
	p, change, at := p.Update(msg, *s, Options{})
	if change.Camera != nil {
		s.Camera = *change.Camera
	}
	if change.Select != nil {
		s.Selected = *change.Select
	}
	return p, at
}

func tap(p Pane, s desk.State, at geometry.Point) tea.MouseMsg {
	col, row, _ := p.lay(s, Options{}).Cell(at)
	return tea.MouseMsg{X: col, Y: row, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress}
}

func TestATapGivesThePlaceAndTheObstruction(t *testing.T) {
	for _, view := range []scene.View{scene.Below, scene.Above} {
		s := state(t)
		s.Camera.View = view
		p := New().Sized(100, 27)
		for _, c := range []struct {
			name string
			at   geometry.Point
			want int
		}{
			{"spare wheel", pt(430, 0), 0},
			{"crossmember", pt(872, -200), 1},
			{"brake pipe across the crossmember", pt(872, -430), 2},
			{"bare floor", pt(1800, 500), -1},
		} {
			s.Selected = -1
			_, at := press(t, p, tap(p, s, c.at), &s)
			require.NotNil(t, at, c.name)
			wide, high := p.lay(s, Options{}).CellSize()
			assert.InDelta(t, c.at.X, at.X, wide/2+1e-9, c.name)
			assert.InDelta(t, c.at.Y, at.Y, high/2+1e-9, c.name)
			assert.Equal(t, c.want, s.Selected, c.name)
		}
	}
}

// A picture that shows the floor edge on has heights in it, and no places to put the cut.
func TestATapOnTheFloorsEdgeIsNoPlace(t *testing.T) {
	assert.Nil(t, onFloor(scene.FromRight.Projection(), pt(872, -95)))
	for _, view := range []scene.View{scene.Below, scene.Above} {
		assert.Equal(t, pt(872, -95), *onFloor(view.Projection(), pt(872, -95)))
	}
}

func TestTapsOutsideThePictureAreNone(t *testing.T) {
	s := state(t)
	for _, at := range [][2]int{{0, 0}, {2, 10}, {50, 26}, {200, 5}, {-3, -3}} {
		_, change, place := New().Sized(100, 27).Update(tea.MouseMsg{X: at[0], Y: at[1], Button: tea.MouseButtonLeft}, s, Options{})
		assert.Nil(t, place)
		assert.Equal(t, desk.Change{}, change)
	}
}

func TestTheWheelKeepsThePlaceUnderThePointer(t *testing.T) {
	s := state(t)
	p := New().Sized(100, 27)
	msg := tap(p, s, pt(1300, 300))
	before, _ := p.lay(s, Options{}).Point(msg.X, msg.Y)
	scale := p.lay(s, Options{}).Scale
	msg.Button = tea.MouseButtonWheelUp
	p, _ = press(t, p, msg, &s)
	col, row, _ := p.lay(s, Options{}).Cell(before)
	assert.Equal(t, [2]int{msg.X, msg.Y}, [2]int{col, row}, "in the same cell")
	assert.InDelta(t, scale/1.25, s.Camera.Scale, 1e-9)
	msg.Button = tea.MouseButtonWheelDown
	press(t, p, msg, &s)
	assert.InDelta(t, scale, s.Camera.Scale, 1e-9)
}

func TestEachLetterIsAnswered(t *testing.T) {
	s := state(t)
	p := New().Sized(100, 27)
	scale := p.lay(s, Options{}).Scale
	for _, letter := range []string{"+", "+", "v"} {
		p, _ = press(t, p, typed(letter), &s)
	}
	mm := survey.Millimetres
	assert.InDelta(t, canvas.Even(canvas.Even(scale/1.25, mm)/1.25, mm), s.Camera.Scale, 1e-9, "twice, each to even rulers")
	assert.Equal(t, scene.Below.Next(), s.Camera.View)
	for s.Camera.View != scene.Below {
		next := s.Camera.View.Next()
		p, _ = press(t, p, typed("v"), &s)
		require.Equal(t, next, s.Camera.View)
	}
	p, _ = press(t, p, typed("f"), &s)
	assert.Equal(t, desk.Camera{View: scene.Below, Whole: true}, s.Camera)
	_, change, _ := p.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("vvv"), Paste: true}, s, Options{})
	assert.Equal(t, desk.Change{}, change, "what is pasted is no keys")
}

func TestZoomHasItsEnds(t *testing.T) {
	s := state(t)
	p := New().Sized(60, 17)
	for range 60 {
		p, _ = press(t, p, typed("+"), &s)
	}
	least := s.Camera.Scale
	assert.InDelta(t, canvas.MinScale, least, 0.1*canvas.MinScale)
	assert.GreaterOrEqual(t, least, canvas.MinScale)
	for range 60 {
		p, _ = press(t, p, typed("-"), &s)
	}
	assert.InDelta(t, canvas.MaxScale, s.Camera.Scale, 0.1*canvas.MaxScale)
	assert.LessOrEqual(t, s.Camera.Scale, float64(canvas.MaxScale))
}

func TestArrowsMoveTheViewTheWayTheyPoint(t *testing.T) {
	for _, view := range []scene.View{scene.Below, scene.Above} {
		for arrow, way := range map[tea.KeyType][2]int{
			tea.KeyShiftLeft: {1, 0}, tea.KeyShiftRight: {-1, 0}, tea.KeyShiftUp: {0, 1}, tea.KeyShiftDown: {0, -1},
		} {
			s := state(t)
			s.Camera.View = view
			p := New().Sized(100, 27)
			at := pt(1210, 240)
			col, row, _ := p.lay(s, Options{}).Cell(at)
			p, _ = press(t, p, tea.KeyMsg{Type: arrow}, &s)
			c, r, _ := p.lay(s, Options{}).Cell(at)
			wide, high := p.lay(s, Options{}).Cols/8, p.lay(s, Options{}).Rows/8
			assert.Equal(t, [2]int{way[0] * wide, way[1] * high}, [2]int{c - col, r - row}, "what is seen goes the other way")
		}
	}
}

func TestGoToTheCut(t *testing.T) {
	s := state(t)
	p := New().Sized(100, 27)
	press(t, p, typed("g"), &s)
	m := p.lay(s, Options{})
	for _, corner := range []geometry.Point{pt(911, -59), pt(1509, 539)} {
		_, _, ok := m.Cell(corner)
		assert.True(t, ok, "what is within 300 mm of the cut is in sight")
	}
	assert.Less(t, m.Scale, 10.0)
	s.Job.Cut = nil
	_, change, _ := p.Update(typed("g"), s, Options{})
	assert.Nil(t, change.Camera)
}

func TestViewIsExactlyAsLargeAsAsked(t *testing.T) {
	s := state(t)
	for _, colour := range []desk.Colour{desk.NoColour, desk.Colours16, desk.Colours256, desk.TrueColour} {
		s.Settings.Colour = colour
		for _, size := range [][2]int{{20, 4}, {60, 9}, {60, 17}, {100, 27}, {160, 47}} {
			for _, legend := range []bool{false, true} {
				p := New()
				p.legend.open = legend
				lines := strings.Split(p.View(s, size[0], size[1], Options{Shown: rules.ForPeople(s.Result.Findings)[:3]}), "\n")
				require.Len(t, lines, size[1])
				for _, line := range lines {
					require.Equal(t, size[0], ansi.StringWidth(line))
				}
			}
		}
	}
}

func TestTheLegendExplainsLettersAndPatterns(t *testing.T) {
	s := state(t)
	p := New().Sized(100, 27)
	closed := ansi.Strip(p.View(s, 100, 27, Options{}))
	assert.NotContains(t, closed, "B brake line")
	p, _ = press(t, p, typed("l"), &s)
	open := ansi.Strip(p.View(s, 100, 27, Options{}))
	for _, want := range []string{"steel that carries", "B brake line", "C crossmember", "! foul", "? doubtful", "heater's exhaust"} {
		assert.Contains(t, open, want)
	}
	small := ansi.Strip(p.View(s, 60, 17, Options{}))
	assert.Contains(t, small, "B brake line", "all letters are explained on the smallest screen too")
}

func TestSidesAreCalledAsTheWorkshopCallsThem(t *testing.T) {
	s := state(t)
	s.Settings.Nearside = desk.NearsideLeft
	picture := ansi.Strip(New().View(s, 100, 27, Options{}))
	assert.Contains(t, picture, "▲ van's offside")
	assert.Contains(t, picture, "▼ van's nearside")
}

func TestMarksAndWishesAreShown(t *testing.T) {
	s := state(t)
	s.Marks.Marks = []rules.Mark{{Name: "clip 7", Words: "clip 7", Plan: pt(2300, -300)}}
	assert.NotContains(t, New().View(s, 100, 27, Options{}), "clip 7")
	assert.Contains(t, ansi.Strip(New().View(s, 100, 27, Options{Marks: true})), "clip 7")
	bare, wished := New().View(s, 100, 27, Options{}), New().View(s, 100, 27, Options{Wishes: []geometry.Point{pt(2300, 0)}})
	assert.NotEqual(t, bare, wished)
}

func BenchmarkView(b *testing.B) {
	s := state(b)
	for b.Loop() {
		New().View(s, 160, 47, Options{Shown: rules.ForPeople(s.Result.Findings)[:3]})
	}
}

// One key after another sees every place of the floor, and then the same again.
func TestOneKeyGoesOverTheWholeFloor(t *testing.T) {
	for _, view := range []scene.View{scene.Below, scene.Above} {
		s := state(t)
		s.Camera = desk.Camera{View: view, Middle: pt(1200, 0), Scale: 5}
		pane := New().Sized(70, 18)
		seen := map[geometry.Point]bool{}
		f := s.Job.Floor
		pane, _ = press(t, pane, typed("q"), &s)
		was, rounds := map[desk.Camera]bool{}, 0
		for ; rounds < 150 && !was[s.Camera]; rounds++ {
			was[s.Camera] = true
			for x := f.From; x <= f.From+f.Length; x += 100 {
				for y := -f.Width / 2; y <= f.Width/2; y += 100 {
					if _, _, ok := pane.Cell(pt(x, y).At(0), s, Options{}); ok {
						seen[pt(x, y)] = true
					}
				}
			}
			pane, _ = press(t, pane, typed("q"), &s)
		}
		assert.Less(t, rounds, 150, "it comes back")
		assert.Greater(t, rounds, 3)
		for x := f.From; x <= f.From+f.Length; x += 100 {
			for y := -f.Width / 2; y <= f.Width/2; y += 100 {
				assert.True(t, seen[pt(x, y)], "%v, %v", x, y)
			}
		}
	}
}

// What a newcomer asks of a plan stands first in the legend, so that the smallest has it: why things are marked, what the diamonds are, and
// that the ring is not the cut's size where that could not be seen.
func TestTheLegendSaysWhatTheSignsAre(t *testing.T) {
	s := demo(t)
	legend := New()
	legend.legend.open = true
	for _, size := range [][2]int{{60, 9}, {60, 17}, {100, 27}} {
		s.Camera = desk.Camera{Whole: true}
		far := ansi.Strip(legend.View(s, size[0], size[1], Options{}))
		for _, want := range []string{"! foul", "? doubtful", "◆ matching point"} {
			assert.Contains(t, far, want, size)
		}
		if size[1] > 9 {
			assert.Contains(t, far, "cut, drawn larger", size)
		}
		s.Camera = desk.Camera{Middle: geometry.Point{X: s.Job.Cut.At[0], Y: s.Job.Cut.At[1]}, Scale: 1}
		near := ansi.Strip(legend.View(s, size[0], size[1], Options{}))
		assert.Contains(t, near, "the cut", size)
		assert.NotContains(t, near, "drawn larger", size)
	}
}
