package place

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/plan"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

type page = screen

func TestPictures(t *testing.T) {
	s := screentest.State(t)
	screentest.Golden(t, "cut", New(), s, planArea)
	asked, _, _ := screentest.After(New(), s, screentest.Keys("t 1219.3 enter L650")...)
	screentest.Golden(t, "typing", asked, s, planArea)
	_, after, _ := screentest.After(New(), s, screentest.Keys("m 1222 enter L652 enter")...)
	screentest.Golden(t, "drilled", New(), after, planArea)
	s = screentest.Judged(s, withoutCut(s.Job))
	screentest.Golden(t, "none", New(), s, planArea)
	s.Faults = []vehicles.Fault{{Key: "obstruction[0].x", Text: "the tape reads 10 mm, but its ends are 55 mm apart in height"}}
	screentest.Golden(t, "fault", New(), s, planArea)
}

func planArea(w, h int) screentest.Area {
	planW, planH := moving.Sizes(w, h)
	return screentest.Area{W: planW, H: planH}
}

func withoutCut(j vehicles.Job) vehicles.Job {
	j.Cut = nil
	return j
}

// Seen from above with the nose to the right the van's left is at the top; seen from below it is at the bottom: a
// person lying under the van with the nose to the right has the left side at their feet. From the job file's model.
func TestArrowsMoveTheWaySeen(t *testing.T) {
	for _, c := range []struct {
		arrow  string
		view   scene.View
		dx, dy float64
	}{
		{"right", scene.Below, 10, 0}, {"left", scene.Below, -10, 0}, {"up", scene.Below, 0, -10}, {"down", scene.Below, 0, 10},
		{"right", scene.Above, 10, 0}, {"left", scene.Above, -10, 0}, {"up", scene.Above, 0, 10}, {"down", scene.Above, 0, -10},
	} {
		s := screentest.State(t)
		s.Camera.View = c.view
		_, after, changes := screentest.After(New(), s, screentest.Keys(c.arrow)...)
		assert.Equal(t, [2]float64{1210 + c.dx, 240 + c.dy}, after.Job.Cut.At, "%s, view %d", c.arrow, c.view)
		assert.Equal(t, "move cut", changes[0].Step)
	}
}

// The picture itself must agree: what was moved up is drawn higher.
func TestThePictureFollowsTheArrow(t *testing.T) {
	for _, view := range []scene.View{scene.Below, scene.Above} {
		s := screentest.State(t)
		s.Camera = desk.Camera{View: view, Middle: geometry.Point{X: 1210, Y: 240}, Scale: 4}
		p, _, _ := screentest.After(New(), s, tea.WindowSizeMsg{Width: 160, Height: 47})
		_, up, _ := screentest.After(p, s, screentest.Keys("s up up")...)
		before, after := heightOfCut(t, p, s), heightOfCut(t, p, up)
		assert.Less(t, after, before, "view %d", view)
	}
}

// heightOfCut is the row in which the pane has the cut's centre: where a tap gives its place.
func heightOfCut(t *testing.T, p desk.Screen, s desk.State) int {
	best, at := math.Inf(1), -1
	for y := range 47 {
		_, _, spot := p.(page).pane.Update(tea.MouseMsg{X: 50, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft}, s, plan.Options{})
		if spot == nil {
			continue
		}
		if d := math.Abs(spot.Y - s.Job.Cut.At[1]); d < best {
			best, at = d, y
		}
	}
	require.GreaterOrEqual(t, at, 0)
	return at
}

func TestSteps(t *testing.T) {
	s := screentest.State(t)
	_, after, _ := screentest.After(New(), s, screentest.Keys("s right s right s right")...)
	assert.Equal(t, 1210+50+10+1., after.Job.Cut.At[0], "long, usual, fine: never from one end to the other")
	assert.Contains(t, screentest.Filled(t, New(), s, 60, 17), "step 10 mm")
	s.Settings.Units = desk.Inches
	_, after, _ = screentest.After(New(), s, screentest.Keys("s s s right")...)
	assert.InDelta(t, 1210+25.4/16, after.Job.Cut.At[0], 1e-9, "a sixteenth")
	assert.Contains(t, screentest.Filled(t, New(), s, 60, 17), `step 3/8"`)
}

// A row of arrow moves is one undo step: all have one name.
func TestARowOfMovesIsOneStep(t *testing.T) {
	s := screentest.State(t)
	_, _, changes := screentest.After(New(), s, screentest.Keys("up up s left right , . t 1000 enter 100 enter")...)
	steps := []string{}
	for _, c := range changes {
		if c.Job != nil {
			steps = append(steps, c.Step)
		}
	}
	assert.Equal(t, []string{"move cut", "move cut", "move cut", "move cut", "turn heater", "turn heater", ""}, steps)
}

func TestWandering(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, after := screentest.Wander(t, New(), "up", "down", "left", "right", "s", "n", "j", "y", "o", ",", ".", "v",
			"g", "f", "+", "-", "l", "t", "m", "k", "h", "h space", "enter", "esc", "t 900 enter 100 enter", "t 900 enter R300 enter",
			"m 1222 enter L652 enter", "m 1322 enter L590 enter", "w", "e", "m -300 enter 20 enter",
			"d", "d 361 enter 500 esc", "361 down", "d up wipe enter", "d L esc", "k 45 enter 100 enter", "t 1 enter")
		_, err := vehicles.ParseJob(after.Job.Format(), "job.toml")
		require.NoError(t, err, "what the screen makes of a job can be read again")
	})
}

func TestFieldsGoWithWhatTheyAreOf(t *testing.T) {
	s := screentest.State(t)
	gone := screentest.Judged(s, withoutCut(s.Job))
	for _, key := range []string{"t", "m", "k"} {
		p, _, _ := screentest.After(New(), s, screentest.Keys(key)...)
		assert.Contains(t, screentest.Filled(t, p, gone, 60, 17), "No cut yet")
		p, _, _ = screentest.After(p, gone, screentest.Keys("1 enter")...)
		assert.False(t, p.Typing())
	}
}

// The view follows the cut before its ring leaves the picture.
func TestTheViewFollowsTheWholeRing(t *testing.T) {
	s := screentest.State(t)
	for _, c := range []struct{ w, h, scale int }{{100, 27, 4}, {100, 27, 24}, {60, 17, 8}} {
		s.Camera = desk.Camera{Middle: geometry.Point{X: 1210, Y: 240}, Scale: float64(c.scale)}
		p, after, _ := screentest.After(New(), s, tea.WindowSizeMsg{Width: c.w, Height: c.h})
		p, after, _ = screentest.After(p, after, screentest.Keys("s")...)
		followed, ring := 0, canvas.RingReach(63.5, float64(c.scale))
		for range 40 {
			was := after.Camera
			p, after, _ = screentest.After(p, after, screentest.Keys("right")...)
			if after.Camera != was {
				followed++
			}
			pane := p.(screen).pane.Sized(moving.Sizes(c.w, c.h))
			for _, off := range []float64{-ring, ring} {
				_, _, seen := pane.Cell(geometry.Point3{X: after.Job.Cut.At[0] + off, Y: after.Job.Cut.At[1]}, after, p.(screen).shown(after))
				assert.True(t, seen, "%v: at %v", c, after.Job.Cut.At)
			}
		}
		assert.Positive(t, followed, "%v", c)
	}
}

func TestTheViewFollowsWhatIsMoved(t *testing.T) {
	s := screentest.State(t)
	s.Camera = desk.Camera{Middle: geometry.Point{X: 1210, Y: 240}, Scale: 2}
	p, _, _ := screentest.After(New(), s, tea.WindowSizeMsg{Width: 60, Height: 17})
	_, after, changes := screentest.After(p, s, screentest.Keys("right")...)
	assert.Nil(t, changes[0].Camera, "it is in sight")
	_, after, _ = screentest.After(p, after, screentest.Keys("t 500 enter L650 enter")...)
	assert.Equal(t, after.Job.Cut.At, [2]float64{after.Camera.Middle.X, after.Camera.Middle.Y})
	assert.Equal(t, 2., after.Camera.Scale)
}

// The slope of the tape, by Pythagoras: 1219.3 mm to a hook 150 mm below the floor is 1210.04 mm in plan.
func TestTypedPlaces(t *testing.T) {
	for typed, want := range map[string][2]float64{
		"1219.3 enter L650 enter":   {math.Sqrt(1219.3*1219.3 - 150*150), 890 - 650},
		"1219,3 enter r652 enter":   {math.Sqrt(1219.3*1219.3 - 150*150), -890 + 652},
		"1m enter -240 enter":       {math.Sqrt(1000*1000 - 150*150), -240},
		`48" enter 10" enter`:       {math.Sqrt(1219.2*1219.2 - 150*150), 254},
		"1000 up 1100 down 0 enter": {math.Sqrt(11001000*11001000 - 150*150), 0},
	} {
		s := screentest.State(t)
		p, after, changes := screentest.After(New(), s, screentest.Keys("t "+typed)...)
		if want[0] > 20000 {
			assert.Equal(t, s.Job.Cut.At, after.Job.Cut.At, "%s is no place", typed)
			assert.True(t, p.Typing())
			continue
		}
		assert.InDelta(t, want[0], after.Job.Cut.At[0], 0.005+1e-9, typed)
		assert.InDelta(t, want[1], after.Job.Cut.At[1], 0.005+1e-9, typed)
		assert.False(t, p.Typing())
		assert.Empty(t, changes[len(changes)-1].Step)
	}
}

// What the tape must say at a typed place is what was typed.
func TestTypedReadingsComeBack(t *testing.T) {
	base := screentest.State(t)
	rapid.Check(t, func(t *rapid.T) {
		x := float64(rapid.IntRange(3000, 30000).Draw(t, "x")) / 10
		left := float64(rapid.IntRange(500, 17000).Draw(t, "left")) / 10
		_, after, _ := screentest.After(New(), base, screentest.Keys(fmt.Sprintf("t %.1f enter L%.1f enter", x, left))...)
		below := after.Marks.Marks[0].Below
		require.Equal(t, survey.Format(x, desk.Millimetres), survey.Format(below.Bumper, desk.Millimetres))
		require.Equal(t, survey.Format(left, desk.Millimetres), survey.Format(below.Left, desk.Millimetres))
	})
}

func TestWrongPlacesAreNotTaken(t *testing.T) {
	for typed, says := range map[string]string{
		"enter enter":              "both readings are wanted",
		"1200 enter +84 enter":     "put the text right",
		"L1200 enter 100 enter":    "put the text right",
		"100 enter 100 enter":      "100 mm", // the hook hangs 150 mm below: no slope is that steep
		"1200 enter 1e3 enter":     "put the text right",
		"-100 enter 100 enter":     "100 mm", // nor behind the datum line
		"1200 enter L 21000 enter": "put the text right",
	} {
		s := screentest.State(t)
		p, after, changes := screentest.After(New(), s, screentest.Keys("t "+typed)...)
		assert.Equal(t, s.Job.Cut.At, after.Job.Cut.At, typed)
		assert.Contains(t, changes[len(changes)-1].Say, says, typed)
		assert.True(t, p.Typing(), typed)
		p, _, _ = screentest.After(p, s, screentest.Keys("esc")...)
		assert.False(t, p.Typing())
	}
}

func TestLettersBelongToTheField(t *testing.T) {
	s := screentest.State(t)
	p, after, _ := screentest.After(New(), s, screentest.Keys("t svxad")...)
	assert.True(t, p.Typing())
	assert.Equal(t, s.Job.Cut.At, after.Job.Cut.At)
	assert.Equal(t, s.Camera, after.Camera)
}

func TestPilot(t *testing.T) {
	s := screentest.State(t)
	_, after, _ := screentest.After(New(), s, screentest.Keys("m 1222 enter L652 enter")...)
	require.NotNil(t, after.Job.Cut.Drilled)
	assert.Equal(t, "1222", after.Job.Cut.Drilled[0].Text)
	assert.Equal(t, "L 652", after.Job.Cut.Drilled[1].Text)
	assert.Equal(t, [2]float64{1210, 240}, after.Job.Cut.At)
	// The sample of the outputs' contract: off by 2.8 and -2, which is 3.4 mm; the centre may move 59.5.
	assert.Contains(t, told(after), "Pilot 3.4 mm off (2.8 mm forward, 2 mm right): the tapes explain it, up to 5.1 mm that way.")

	p, again, _ := screentest.After(New(), after, screentest.Keys("m backspace backspace backspace backspace enter"+strings.Repeat(" backspace", 5)+" enter")...)
	assert.False(t, p.Typing())
	assert.Nil(t, again.Job.Cut.Drilled, "both blank: not drilled")
}

func TestNoCutYet(t *testing.T) {
	s := screentest.State(t)
	s = screentest.Judged(s, withoutCut(s.Job))
	_, after, changes := screentest.After(New(), s, screentest.Keys("up enter")...)
	assert.Contains(t, changes[0].Say, "No cut")
	require.NotNil(t, after.Job.Cut)
	assert.Equal(t, vehicles.Cut{At: [2]float64{1640, 0}, Across: 127}, *after.Job.Cut, "in the middle of the floor")
	s.Camera = desk.Camera{Middle: geometry.Point{X: 1000.4, Y: -200.6}, Scale: 5}
	_, after, _ = screentest.After(New(), s, screentest.Keys("enter")...)
	assert.Equal(t, [2]float64{1000, -201}, after.Job.Cut.At, "in the middle of the view")
}

func TestTaps(t *testing.T) {
	s := screentest.State(t)
	s.Camera = desk.Camera{Middle: geometry.Point{X: 1210, Y: 240}, Scale: 4}
	p, _, _ := screentest.After(New(), s, tea.WindowSizeMsg{Width: 100, Height: 27})
	tap := tea.MouseMsg{X: 20, Y: 5, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft}
	_, _, spot := p.(page).pane.Update(tap, s, plan.Options{})
	require.NotNil(t, spot)
	_, after, _ := screentest.After(p, s, tap)
	assert.Equal(t, [2]float64{math.Round(spot.X), math.Round(spot.Y)}, after.Job.Cut.At)

	asking, after, _ := screentest.After(p, s, append(screentest.Keys("t"), tap)...)
	assert.False(t, asking.Typing(), "a tap elsewhere leaves the fields")
	assert.Equal(t, s.Job.Cut.At, after.Job.Cut.At)

	beside := tea.MouseMsg{X: 90, Y: 5, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft}
	_, after, _ = screentest.After(p, s, beside)
	assert.Equal(t, s.Job.Cut.At, after.Job.Cut.At, "a tap beside the plan moves nothing")
}

// What was under its stub stays so when the cut moves, in the same undo step and said; the rest of the runs is kept.
func TestTheRunsGoAlongWithTheCutAndTheHeading(t *testing.T) {
	s := screentest.State(t)
	d := screentest.New(t, New(), s.Job, 100, 27)
	d.Type("<right>")
	assert.Contains(t, d.Said, "Gone along: exhaust (clip 1: 250 mm along), intake (J on Runs: anew).")
	assert.Equal(t, vehicles.RunPoint{X: 1255, Y: 265, Drop: 110}, d.State.Job.Exhaust.Path[0])
	assert.Equal(t, vehicles.RunPoint{X: 1185, Y: 265, Drop: 110}, d.State.Job.Intake.Path[0])
	assert.Equal(t, s.Job.Exhaust.Path[1:], d.State.Job.Exhaust.Path[1:])
	assert.Empty(t, moving.Leaning(d.State))
	d.Undo()
	assert.Equal(t, string(s.Job.Format()), string(d.State.Job.Format()), "one step")

	d.Type(",") // from below anticlockwise is the model's minus: 15 degrees on, the stub 35 ahead and 25 left is at 35 cos + 25 sin, 25 cos - 35 sin
	assert.InDelta(t, 1210+35*math.Cos(math.Pi/12)+25*math.Sin(math.Pi/12), d.State.Job.Exhaust.Path[0].X, 0.005)
	assert.InDelta(t, 240+25*math.Cos(math.Pi/12)-35*math.Sin(math.Pi/12), d.State.Job.Exhaust.Path[0].Y, 0.005)
	assert.Equal(t, 110., d.State.Job.Exhaust.Path[0].Drop)

	cut := *s.Job.Cut
	cut.At = [2]float64{1300, 240} // the runs begin elsewhere
	d = screentest.New(t, New(), s.Job.WithCut(cut), 100, 27)
	d.Type("<right>")
	assert.NotContains(t, d.Said, "along")
	assert.Equal(t, s.Job.Exhaust.Path, d.State.Job.Exhaust.Path, "what went another way from its stub stays")
}

func TestAFirstLegThatLeansIsBroughtUpright(t *testing.T) {
	s := screentest.State(t)
	assert.Empty(t, moving.Leaning(s))
	p, after, _ := screentest.After(New(), s, screentest.Keys("m 1230 enter L650 enter")...)
	require.Len(t, moving.Leaning(after), 2, "a hole beside its mark")
	assert.InDelta(t, math.Sqrt(1230*1230-150*150)-1210, moving.Leaning(after)[0].Aside, 1e-6)
	assert.Contains(t, screentest.Filled(t, p, after, 60, 17), "Stub legs slope (o straightens): exhaust, intake")
	_, after, _ = screentest.After(p, after, screentest.Keys("o")...)
	assert.Empty(t, moving.Leaning(after))
	assert.Equal(t, 265., after.Job.Exhaust.Path[0].Y)
}

// A leg that the move leaves too short for its bends is named at once: 60 mm of bend on either side want 120 of a right angle's leg.
func TestACornerThatGetsTooTightIsNamed(t *testing.T) {
	job := screentest.State(t).Job
	run := *job.Exhaust
	run.Path = vehicles.List[vehicles.RunPoint]{{X: 1245, Y: 265, Drop: 210}, {X: 1110, Y: 265, Drop: 210}, {X: 1110, Y: 870, Drop: 225}}
	run.Hanging = vehicles.Hanging{}
	d := screentest.New(t, New(), job.WithRun(vehicles.ExhaustRun, &run), 100, 27)
	assert.NotContains(t, d.View(100, 27), "Too short for")
	d.Type("<left><left><left>")
	assert.Contains(t, d.View(100, 27), "Too short for their bends: exhaust leg 2")
	assert.Empty(t, moving.Leaning(d.State))
}

// Turned as seen: from above anticlockwise is the model's plus, from below it is its minus.
func TestTurning(t *testing.T) {
	for key, want := range map[string]map[scene.View]float64{
		",": {scene.Above: 15, scene.Below: -15}, ".": {scene.Above: -15, scene.Below: 15},
	} {
		for view, yaw := range want {
			s := screentest.State(t)
			s.Camera.View = view
			_, after, _ := screentest.After(New(), s, screentest.Keys(key)...)
			assert.InDelta(t, yaw, after.Job.Heater.Yaw, 1e-9)
			assert.Contains(t, string(after.Job.Format()), "yaw", "it is written to the file")
		}
	}
	s := screentest.State(t)
	_, after, _ := screentest.After(New(), s, screentest.Keys(strings.Repeat(", ", 24))...)
	assert.Zero(t, after.Job.Heater.Yaw, "24 times 15 degrees is once round")
	assert.Equal(t, "15° left", facing(15, s))
	assert.Equal(t, "15° right", facing(345, s))
	assert.Equal(t, "90° left", facing(-270, s))
	assert.Equal(t, "170° left", facing(-190, s))
	assert.Equal(t, "to the rear", facing(-540, s))
	assert.Equal(t, "to the rear", facing(180, s))
	assert.Equal(t, "to the rear", facing(-180, s))
}

// How wide what burns is cut back is asked where the hole is, and Enter goes past it: a steel deck has nothing to say there.
func TestHowWideWoodIsCutBack(t *testing.T) {
	s := screentest.State(t)
	_, after, _ := screentest.After(New(), s, screentest.Keys("k down down 180 enter")...)
	assert.Equal(t, vehicles.Some(180), after.Job.Cut.Relieved)
	assert.Equal(t, s.Job.Cut.Across, after.Job.Cut.Across)
	_, after, _ = screentest.After(New(), after, screentest.Keys("k enter enter")...)
	assert.Equal(t, vehicles.Some(180), after.Job.Cut.Relieved, "nothing else takes it back")
	_, after, _ = screentest.After(New(), after, screentest.Keys("k down down backspace enter")...)
	assert.False(t, after.Job.Cut.Relieved.Set)
	_, after, changes := screentest.After(New(), s, screentest.Keys("k down backspace backspace backspace 6 enter")...)
	assert.Equal(t, s.Job.Cut.Across, after.Job.Cut.Across, "a job whose hole is no wider than its pilot could not be read again")
	assert.Equal(t, "the hole must be wider than its pilot, 6 mm", changes[len(changes)-1].Say)
	_, after, _ = screentest.After(New(), s, screentest.Keys("k down down 80 enter")...)
	assert.False(t, after.Job.Cut.Relieved.Set, "narrower than the hole: no file may say so")
}

func TestCollar(t *testing.T) {
	s := screentest.State(t)
	_, after, _ := screentest.After(New(), s, screentest.Keys("k backspace backspace 60 enter backspace backspace backspace 120 enter")...)
	assert.Equal(t, vehicles.Some(60), after.Job.Heater.Turret)
	assert.Equal(t, 120., after.Job.Cut.Across)
	assert.NotZero(t, after.Job.Heater.Given&vehicles.HasTurret)
}

// Clips that stand too far apart on a run whose stub leg is laid straight are spread anew with it, and that is said.
func TestClipsFollowAStubLegThatIsLaidStraight(t *testing.T) {
	job := vehicles.Demo()
	intake := *job.Intake
	intake.Clips = []float64{150, 800}
	s := screentest.Judged(screentest.State(t), job.WithRun(vehicles.IntakeRun, &intake))
	tooFar := func(s desk.State) bool {
		return slices.ContainsFunc(s.Result.Findings, func(f rules.Finding) bool { return f.OfClips(vehicles.IntakeRun) && f.Verdict == rules.Foul })
	}
	require.True(t, tooFar(s))
	below := s.Marks.Marks[0].Below
	p, s, _ := screentest.After(New(), s, screentest.Keys(fmt.Sprintf("m %.1f enter L%.1f enter", below.Bumper+5, below.Left))...)
	require.NotEmpty(t, moving.Leaning(s))
	_, s, changes := screentest.After(p, s, screentest.Keys("o")...)
	assert.Empty(t, moving.Leaning(s))
	assert.False(t, tooFar(s))
	assert.Contains(t, changes[0].Say, "intake: its clips would be too far apart, so they are spread anew")
	assert.NotContains(t, changes[0].Say, "exhaust: its clips")
}
