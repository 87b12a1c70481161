package runs

import (
	"math"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

func TestPointsOfARun(t *testing.T) {
	s := screentest.State(t)
	old := s.Job.Exhaust.Path

	p, after, _ := screentest.After(New(), s, screentest.Keys("a")...)
	require.Len(t, after.Job.Exhaust.Path, 5)
	assert.Equal(t, vehicles.RunPoint{X: 300, Y: 1070, Drop: 200}, after.Job.Exhaust.Path[4], "on in the same direction")
	assert.Equal(t, 4, p.(screen).picked.index, "the new point is the one the arrows move")
	assert.Equal(t, 3, after.Job.Exhaust.Muffler.Leg)

	_, after, _ = screentest.After(New(), s, screentest.Keys("n i")...)
	require.Len(t, after.Job.Exhaust.Path, 5)
	assert.Equal(t, vehicles.RunPoint{X: 1072.5, Y: 442.5, Drop: 135}, after.Job.Exhaust.Path[1])
	assert.Equal(t, 4, after.Job.Exhaust.Muffler.Leg, "the muffler stays on the leg it was on")

	_, after, changes := screentest.After(New(), s, screentest.Keys("n n i")...)
	assert.Nil(t, changes[2].Job)
	assert.Contains(t, changes[2].Say, "muffler")
	assert.Equal(t, old, after.Job.Exhaust.Path)

	_, after, _ = screentest.After(New(), s, screentest.Keys("n x")...)
	assert.Equal(t, vehicles.List[vehicles.RunPoint]{old[0], old[2], old[3]}, after.Job.Exhaust.Path)
	assert.Equal(t, 2, after.Job.Exhaust.Muffler.Leg)

	_, after, _ = screentest.After(New(), s, screentest.Keys("x x x")...)
	assert.Equal(t, 1, after.Job.Exhaust.Muffler.Leg)
	_, after, changes = screentest.After(New(), s, screentest.Keys("x x x x")...)
	assert.Nil(t, after.Job.Exhaust, "with its last point the run goes")
	assert.Contains(t, changes[3].Say, "takes it back")
}

func TestHeightOfAPoint(t *testing.T) {
	s := screentest.State(t)
	_, after, changes := screentest.After(New(), s, screentest.Keys("d d r")...)
	assert.Equal(t, 120., after.Job.Exhaust.Path[0].Drop)
	assert.Equal(t, "height of exhaust point 1", changes[0].Step)
}

func TestPointsAreTypedAsTheTapeReads(t *testing.T) {
	s := screentest.State(t)
	// 3, 4, 5: the hook hangs 150 below the floor, the point 450, so that the tape slopes by 300 over 400.
	_, after, _ := screentest.After(New(), s, screentest.Keys("t 500 enter R300 enter backspace backspace backspace 450 enter")...)
	assert.Equal(t, vehicles.RunPoint{X: 400, Y: -590, Drop: 450}, after.Job.Exhaust.Path[0])
}

func TestANewRunStartsUnderItsStub(t *testing.T) {
	s := screentest.State(t)
	s.Job.Intake = nil
	s = screentest.Judged(s, s.Job)
	p, after, changes := screentest.After(New(), s, screentest.Keys("tab up a")...)
	assert.Contains(t, changes[1].Say, "No intake")
	require.NotNil(t, after.Job.Intake)
	// the stub of the sample job: 35 behind the cut's centre, 25 to its left
	assert.Equal(t, vehicles.List[vehicles.RunPoint]{{X: 1175, Y: 265, Drop: 110}}, after.Job.Intake.Path)
	_, after, _ = screentest.After(p, after, screentest.Keys("a")...)
	assert.Equal(t, vehicles.RunPoint{X: 975, Y: 265, Drop: 110}, after.Job.Intake.Path[1])

	s = screentest.Judged(s, withoutCut(s.Job))
	_, after, changes = screentest.After(New(), s, screentest.Keys("tab a")...)
	assert.Nil(t, after.Job.Intake)
	assert.Contains(t, changes[1].Say, "place a cut")
}

// What a fitter calls a thing does not make it a part of the exhaust.
func TestOnlyTheExhaustsFindingsStandBesideIt(t *testing.T) {
	s := screentest.State(t)
	o := s.Job.Obstructions[0]
	o.Name = "exhaust"
	job := s.Job
	job.Obstructions = job.Obstructions.With(0, o)
	s = screentest.Judged(s, job)
	for _, f := range s.Result.Findings {
		if f.Against.Is(rules.AnObstruction, 0) && f.Subject.Sort != rules.TheExhaust {
			assert.False(t, screen{of: vehicles.ExhaustRun}.concerns(&f), "%s: the vehicle's own", f.ID())
		}
		if f.Subject.Sort == rules.TheExhaust {
			assert.True(t, screen{of: vehicles.ExhaustRun}.concerns(&f), f.ID())
		}
	}
}

// The muffler ends 270.85 mm before point 3, which stays: 600.85 mm, the way there from point 2, less 150 and 180. The way from
// point 1 to point 3 is 1019.42 mm, so that it begins at 1019.42 - 270.85 - 180.
func TestDeletingAPointLeavesTheMufflerWhereThePipeStillIs(t *testing.T) {
	s := screentest.State(t)
	_, after, changes := screentest.After(New(), s, screentest.Keys("n x")...)
	muffler := after.Job.Exhaust.Muffler
	assert.Equal(t, 2, muffler.Leg)
	assert.InDelta(t, math.Sqrt(945*945+375*375+75*75)-math.Sqrt(600*600+20*20+25*25)+150, muffler.Start, 1e-6)
	assert.Equal(t, "exhaust point 2 deleted; muffler: leg 2, 568.6 mm along; 3 clips elsewhere. Ctrl-Z takes it back.", changes[1].Say)
}

func TestWhatIsSaidOfAPathThatIsEdited(t *testing.T) {
	s := screentest.State(t)
	bare := s.Job
	run := *bare.Exhaust
	run.Hanging = vehicles.Hanging{}
	bare = bare.WithRun(vehicles.ExhaustRun, &run)
	short := *s.Job.Exhaust // the muffler stands in the near half of its leg
	muffler := *short.Muffler
	muffler.Start, muffler.Length = 20, 100
	short.Muffler, short.Clips = &muffler, nil
	alone := *s.Job.Exhaust
	alone.Clips = nil
	for _, c := range []struct {
		name, keys, says string
		job              vehicles.Job
	}{
		{"a point inserted where nothing moves", "n i", "", s.Job},
		{"a point inserted on the muffler's leg, behind it", "n n i", "", s.Job.WithRun(vehicles.ExhaustRun, &short)},
		{"a point inserted where the muffler is", "n n i", "The muffler is where the point would go: insert the point on another leg.", s.Job},
		// 10 mm down: the way on to point 3 is then hypot(600, 20, 15) = 600.52 mm in place of 600.85, and the muffler keeps its way to there
		{"a point moved from which the muffler's leg starts", "n d", "exhaust point 2 moved, with it muffler, 3 clips", s.Job},
		{"a point moved behind which one thing hangs", "n d", "exhaust point 2 moved; muffler: leg 3, 149.7 mm along", s.Job.WithRun(vehicles.ExhaustRun, &alone)},
		{"nothing hangs on it", "n d", "", bare},
		{"nothing hangs on it, and a point goes", "n x", "exhaust point 2 deleted. Ctrl-Z takes it back.", bare},
		{"no cut, and nothing hangs on it", "n x", "exhaust point 2 deleted. Ctrl-Z takes it back.", withoutCut(bare)},
		{"no cut", "n x", moving.HangsFromTheStubOn, withoutCut(s.Job)},
		{"no cut, a point moved", "n d", moving.HangsFromTheStubOn, withoutCut(s.Job)},
	} {
		_, after, changes := screentest.After(New(), screentest.Judged(s, c.job), screentest.Keys(c.keys)...)
		last := changes[len(changes)-1].Say
		if c.says == "" {
			assert.Empty(t, last, c.name)
		} else {
			assert.Contains(t, last, c.says, c.name)
		}
		assert.Equal(t, len(last) > 0 && !strings.Contains(last, "point 2"), changes[len(changes)-1].Job == nil, c.name)
		require.NotNil(t, after.Job.Exhaust, c.name)
	}
}

func withoutCut(j vehicles.Job) vehicles.Job {
	j.Cut = nil
	return j
}

func planArea(w, h int) screentest.Area {
	planW, planH := moving.Sizes(w, h)
	if !wholePanel(w, h) { // the profile below it is compared
		planH = canvas.MinHeight
	}
	return screentest.Area{W: planW, H: planH}
}

func TestPictures(t *testing.T) {
	s := screentest.State(t)
	run, _, _ := screentest.After(New(), s, screentest.Keys("n")...)
	screentest.Golden(t, "exhaust", run, s, planArea)
}

// Seen from above with the nose to the right the van's left is at the top; seen from below it is at the bottom.
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
		_, after, changes := screentest.After(New(), s, screentest.Keys("n "+c.arrow)...)
		assert.Equal(t, vehicles.RunPoint{X: 900 + c.dx, Y: 620 + c.dy, Drop: 160}, after.Job.Exhaust.Path[1])
		assert.Equal(t, "move exhaust point 2", changes[1].Step)
	}
}

func TestTheViewFollowsWhatIsMoved(t *testing.T) {
	s := screentest.State(t)
	s.Camera = desk.Camera{Middle: geometry.Point{X: 1210, Y: 240}, Scale: 2}
	p, _, _ := screentest.After(New(), s, tea.WindowSizeMsg{Width: 60, Height: 17})
	_, after, _ := screentest.After(p, s, screentest.Keys("n n")...)
	assert.Equal(t, geometry.Point{X: 300, Y: 640}, after.Camera.Middle)
	assert.Equal(t, 2., after.Camera.Scale)
}

// Zoomed from the side and from behind the point in hand stays in the picture, and comes back into it when it is moved.
func TestTheViewsFromTheSideFollowWhatIsMoved(t *testing.T) {
	for _, size := range screentest.Sizes {
		for _, keys := range []string{"nz++", "nzz++", "nz" + "++++++++", "nzz" + "++++++++"} {
			d := screentest.New(t, New(), screentest.State(t).Job, size.W, size.H)
			d.Type(keys)
			inPicture := func() bool {
				m := d.Screen.(screen)
				a := m.arranged(d.State, m.w, m.h)
				here, _ := m.here(d.State)
				at, ok := m.place(here, d.State)
				require.True(t, ok)
				_, _, seen := m.pane.Sized(a.plan.W, a.plan.H).Cell(inSpace(at), m.looking(d.State), m.shown(d.State))
				return seen
			}
			require.NotZero(t, d.Screen.(screen).camera.Scale)
			assert.True(t, inPicture(), "%s, %s: zoomed", keys, size.Name)
			d.Type("<up>")
			assert.True(t, inPicture(), "%s, %s: moved", keys, size.Name)
			d.Type(strings.Repeat("<shift+left>", 12))
			require.False(t, inPicture(), "the view was moved away")
			d.Type("<down>")
			assert.True(t, inPicture(), "%s, %s: moved out of sight", keys, size.Name)
			assert.Zero(t, d.State.Camera, "the plan of the others stays as it is")
		}
	}
}

func TestPipe(t *testing.T) {
	s := screentest.State(t)
	_, after, _ := screentest.After(New(), s, screentest.Keys("k backspace backspace 24 enter backspace backspace 75 enter")...)
	assert.Equal(t, 24., after.Job.Exhaust.Across)
	assert.Equal(t, vehicles.Some(75), after.Job.Exhaust.Bend)
}

// A thumb on the plan may have meant nothing: what it moved is said, and how to take that back.
func TestATapSaysWhichPointItMoved(t *testing.T) {
	bare := screentest.State(t).Job
	run := *bare.Exhaust
	run.Hanging = vehicles.Hanging{}
	for name, job := range map[string]vehicles.Job{"bare": bare.WithRun(vehicles.ExhaustRun, &run), "hung": screentest.State(t).Job} {
		d := screentest.New(t, New(), job, 100, 27)
		d.State.Camera = desk.Camera{Middle: geometry.Point{X: 1210, Y: 240}, Scale: 2}
		d.Tap(20, 5)
		require.NotEqual(t, job.Exhaust.Path, d.State.Job.Exhaust.Path, name)
		assert.Regexp(t, `^exhaust point 1 moved.* Ctrl-Z takes it back\.$`, d.Said, name)
		d.Undo()
		assert.Equal(t, job.Exhaust.Path, d.State.Job.Exhaust.Path, name)
	}
}

func TestATypedPointIsNamedWithItsPlace(t *testing.T) {
	d := screentest.New(t, New(), screentest.State(t).Job, 60, 17)
	d.Type("nt")
	view := strings.Join(strings.Fields(d.View(60, 17)), " ")
	assert.Contains(t, view, "The exhaust point 2 of 4, read from below; now x 900, 620 mm left, 160 mm below floor.")
}

// No key that one run has is dead on another: it says why it does nothing there.
func TestKeysOfAnotherRunSayWhyTheyDoNothing(t *testing.T) {
	for of, keys := range map[string]string{"<tab>": "ymh", "<tab><tab>": "ywh"} {
		for _, key := range keys {
			d := screentest.New(t, New(), roomy(), 100, 27)
			d.Type(of)
			before := d.State.Job
			d.Type(string(key))
			assert.NotEmpty(t, d.Said, "%s %c", of, key)
			assert.Equal(t, before, d.State.Job)
		}
	}
	for of := range vehicles.RunKinds {
		d := screentest.New(t, New(), stripped(roomy(), vehicles.IntakeRun, vehicles.ExhaustRun), 100, 27)
		d.Type(strings.Repeat("<tab>", of) + "y")
		assert.NotEmpty(t, d.Said)
	}
	d := screentest.New(t, New(), stripped(roomy(), vehicles.IntakeRun), 100, 27)
	d.Type("<tab><enter>")
	assert.NotNil(t, d.State.Job.Intake, "Enter does what stands first at the foot")
}

// What is done to points alone says so where something else is picked; in a job with a fault the profile's place says what brings it back.
func TestWhatIsDoneToPointsSaysSo(t *testing.T) {
	for _, key := range []string{"r", "d", "i"} {
		d := screentest.New(t, New(), screentest.State(t).Job, 100, 27)
		for d.Screen.(screen).picked.sort != pipe {
			d.Type(".")
		}
		before := d.State.Job
		d.Type(key)
		assert.Equal(t, "That is done to a point: n picks one.", d.Said, key)
		assert.Equal(t, before, d.State.Job)
	}
	job := screentest.State(t).Job
	run := *job.Intake
	run.Clips = []float64{90000}
	d := screentest.New(t, New(), job.WithRun(vehicles.IntakeRun, &run), 100, 27)
	require.NotEmpty(t, d.State.Faults)
	d.Type("<tab>e")
	assert.Contains(t, strings.Join(strings.Fields(d.View(100, 27)), " "), "How it falls is seen here once the fault is put right.")
}
