package runs

import (
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// at is where a text stands on the screen, from a row on.
func at(t *testing.T, d *screentest.Driver, w, h int, text string, from int) (col, row int) {
	rows := strings.Split(d.View(w, h), "\n")
	for y := from; y < len(rows); y++ {
		if before, _, found := strings.Cut(rows[y], text); found {
			return ansi.StringWidth(before), y
		}
	}
	require.Fail(t, "not on the screen: "+text)
	return 0, 0
}

// All that is picked by keys is picked by a tap: run, part, field; a tap on what is picked opens it.
func TestTheListTakesTaps(t *testing.T) {
	for _, size := range screentest.Sizes {
		d := screentest.New(t, New(), screentest.State(t).Job, size.W, size.H)
		tap := func(text string) {
			x, y := at(t, d, size.W, size.H, text, 0)
			d.Tap(x+1, y)
		}
		tap(" intake ")
		assert.Equal(t, vehicles.IntakeRun, d.Screen.(screen).of)
		tap("exhaust  INTAKE")
		assert.Equal(t, vehicles.ExhaustRun, d.Screen.(screen).of)
		if !wholePanel(size.W, size.H) {
			tap("[list]")
		}
		tap(" clip 2 ")
		assert.Equal(t, part{sort: hung, index: 1, kind: vehicles.AClip}, d.Screen.(screen).picked)
		tap(" muffler ")
		assert.Equal(t, part{sort: hung, kind: vehicles.AMuffler}, d.Screen.(screen).picked)
		tap(" muffler ")
		assert.True(t, d.Screen.Typing())
		assert.Contains(t, d.View(size.W, size.H), "Where is the muffler")
		d.Tap(2, 2)
		assert.False(t, d.Screen.Typing(), "a tap beside the fields leaves them")
		tap(" step ")
		assert.Contains(t, d.View(size.W, size.H), "step 50 mm")
	}
}

// What is done to a part is done by a tap too: the words behind the parts press the keys.
func TestActionsTakeTaps(t *testing.T) {
	for _, size := range screentest.Sizes {
		d := bare(t, size.W, size.H)
		tap := func(text string) {
			x, y := at(t, d, size.W, size.H, text, 0)
			d.Tap(x+1, y)
		}
		points := len(d.State.Job.Exhaust.Path)
		if !wholePanel(size.W, size.H) {
			tap("[list]")
		}
		tap("[add]")
		assert.Len(t, d.State.Job.Exhaust.Path, points+1)
		tap("[delete]")
		assert.Len(t, d.State.Job.Exhaust.Path, points)
		tap("[side]")
		assert.Contains(t, d.View(size.W, size.H), "SEEN FROM THE LEFT")
		tap(" no muffler ")
		tap(" no muffler ")
		assert.NotNil(t, d.State.Job.Exhaust.Muffler)
		if !wholePanel(size.W, size.H) {
			tap("[fall]")
			assert.Contains(t, d.View(size.W, size.H), "SEEN FROM BESIDE")
		}
	}
}

// In the smallest window, too, where both are low.
func TestATapPutsAPointInPlanAndInDrop(t *testing.T) {
	for _, size := range []struct{ w, h, x, y, up int }{{160, 47, 60, 8, 4}, {60, 17, 40, 2, 1}} {
		d := bare(t, size.w, size.h)
		d.State.Camera = desk.Camera{Middle: geometry.Point{X: 900, Y: 620}, Scale: 2}
		d.Type("nt<tab><tab>160.4<enter>")
		require.Equal(t, 160.4, d.State.Job.Exhaust.Path[1].Drop, d.Said)
		d.Tap(size.x, size.y)
		moved := d.State.Job.Exhaust.Path[1]
		assert.NotEqual(t, vehicles.RunPoint{X: 900, Y: 620, Drop: 160.4}, moved)
		assert.Equal(t, 160.4, moved.Drop, "a plan says nothing of the drop")
		assert.Equal(t, "exhaust point 2 moved. Ctrl-Z takes it back.", d.Said)
		d.Undo()

		m := d.Screen.(screen)
		a := m.arranged(d.State, size.w, size.h)
		require.Equal(t, together, a.sees)
		p, ok := m.beside(d.State, a.profile)
		require.True(t, ok)
		lay := p.lay()
		col, row, seen := p.cell(lay, p.run.CornerAlong(2))
		require.True(t, seen)
		d.Tap(col, a.plan.H+row)
		assert.Equal(t, part{sort: point, index: 1}, d.Screen.(screen).picked, "the point there is picked already")
		before := d.State.Job.Exhaust.Path[1].Drop
		row -= size.up
		d.Tap(col, a.plan.H+row)
		_, cell := lay.CellSize()
		assert.InDelta(t, before-float64(size.up)*cell/p.high, d.State.Job.Exhaust.Path[1].Drop, cell/p.high)
		assert.Less(t, d.State.Job.Exhaust.Path[1].Drop, before)
		assert.Equal(t, [2]float64{900, 620}, [2]float64{d.State.Job.Exhaust.Path[1].X, d.State.Job.Exhaust.Path[1].Y}, "the profile says nothing of the plan")
		p, _ = d.Screen.(screen).beside(d.State, a.profile)
		col, row, _ = p.cell(p.lay(), 0)
		d.Tap(col, a.plan.H+row)
		assert.Equal(t, part{sort: stub}, d.Screen.(screen).picked)
	}
}

// Where heights are drawn higher than they are a tap on the profile means the drop that is seen there.
func TestATapOnAStretchedProfile(t *testing.T) {
	d := screentest.New(t, New(), vehicles.Demo(), 100, 27)
	d.Type("<tab>n")
	a := d.Screen.(screen).arranged(d.State, 100, 27)
	p, ok := d.Screen.(screen).beside(d.State, a.profile)
	require.True(t, ok)
	require.Greater(t, p.high, 1.)
	lay := p.lay()
	col, row, seen := p.cell(lay, p.run.CornerAlong(2))
	require.True(t, seen)
	const up = 2
	d.Tap(col, a.plan.H+row-up)
	_, high := lay.CellSize()
	assert.InDelta(t, 130-up*high/p.high, d.State.Job.Intake.Path[1].Drop, high/p.high)
}

// From the side a tap and an arrow move a point along the van and up and down, from behind across it; other screens keep their plan.
func TestPointsAreMovedFromTheSideAndFromBehind(t *testing.T) {
	d := bare(t, 100, 27)
	d.Type("nz")
	assert.Contains(t, d.View(100, 27), "SEEN FROM THE LEFT")
	wholeVanIsSeen(t, d)
	d.Type("<right><up>")
	assert.Equal(t, vehicles.RunPoint{X: 890, Y: 620, Drop: 150}, d.State.Job.Exhaust.Path[1])
	d.Tap(30, 8)
	assert.Equal(t, 620., d.State.Job.Exhaust.Path[1].Y)
	assert.NotEqual(t, 890., d.State.Job.Exhaust.Path[1].X)
	assert.NotEqual(t, 150., d.State.Job.Exhaust.Path[1].Drop, "the side says how deep")
	d.Type("+")
	scale := d.Screen.(screen).camera.Scale
	assert.NotZero(t, scale)
	d.Type("+")
	assert.Zero(t, d.State.Camera, "the plan of the others stays as it is")
	assert.Less(t, d.Screen.(screen).camera.Scale, scale)
	d.Type("z")
	assert.Contains(t, d.View(100, 27), "SEEN FROM BEHIND")
	wholeVanIsSeen(t, d)
	y := d.State.Job.Exhaust.Path[1].Y
	d.Type("<right>")
	assert.Equal(t, y-10, d.State.Job.Exhaust.Path[1].Y, "the van's right is at the right")
	for range len(scene.Sides) - 1 { // and the others, and the plan again
		d.Type("z")
	}
	assert.Contains(t, d.View(100, 27), "SEEN FROM BELOW")
	d.Type("zv")
	assert.NotContains(t, d.View(100, 27), "SEEN FROM THE LEFT", "v turns the floor over: to its face")
}

// The van's side is seen from where the run at hand goes out, at the same place when another is taken up.
func TestTheSideIsSeenFromWhereTheRunGoesOut(t *testing.T) {
	d := screentest.New(t, New(), screentest.State(t).Job, 100, 27)
	other := *d.State.Job.Exhaust
	other.Path = slices.Clone(other.Path)
	for i := range other.Path {
		other.Path[i].Y *= -1
	}
	d.Type("z")
	assert.Contains(t, d.View(100, 27), "SEEN FROM THE LEFT  ◄ nose")
	d.Type("+")
	middle := d.Screen.(screen).looking(d.State).Camera.Middle
	d.State.Job = d.State.Job.WithRun(vehicles.ExhaustRun, &other)
	assert.Equal(t, geometry.Point{X: -middle.X, Y: middle.Y}, d.Screen.(screen).looking(d.State).Camera.Middle)
	assert.Contains(t, d.View(100, 27), "SEEN FROM THE RIGHT  ◄ bumper")
	d.State.Job = d.State.Job.WithRun(vehicles.ExhaustRun, nil)
	assert.Contains(t, d.View(100, 27), "SEEN FROM THE RIGHT")
}

// At every size the whole van is seen at first, from the side and from behind.
func TestTheWholeVanIsSeenFromTheSideAndFromBehind(t *testing.T) {
	for _, size := range screentest.Sizes {
		d := screentest.New(t, New(), screentest.State(t).Job, size.W, size.H)
		for range scene.Sides {
			d.Type("z")
			wholeVanIsSeen(t, d)
		}
	}
}

// Under the smallest window's picture from the side or from behind lie the few rows that the run at hand needs; the list stands there when it is asked for.
func TestThePicturesFromTheSideHaveTheRoom(t *testing.T) {
	d := screentest.New(t, New(), screentest.State(t).Job, 60, 17)
	for range scene.Sides {
		d.Type("z")
		a := d.Screen.(screen).arranged(d.State, 60, 17)
		assert.GreaterOrEqual(t, a.plan.H, 17-leastListed+1)
		view := d.View(60, 17)
		assert.Contains(t, view, moreOfIt)
		assert.Contains(t, view, "Point 1 of 4")
		d.Type("e")
		assert.NotContains(t, d.View(60, 17), moreOfIt, "the list whole")
		d.Type("ee")
	}
}

// wholeVanIsSeen tells that the floor's corners and all corners of the runs are in the picture that stands in the plan's place.
func wholeVanIsSeen(t *testing.T, d *screentest.Driver) {
	t.Helper()
	m := d.Screen.(screen)
	a := d.Screen.(screen).arranged(d.State, m.w, m.h)
	where := m.pane.Sized(a.plan.W, a.plan.H).Cells(m.looking(d.State), m.shown(d.State))
	plan := &d.State.Result.Plan
	places := []geometry.Point3{plan.FloorMin.At(0), plan.FloorMax.At(0)}
	for _, of := range vehicles.RunKinds {
		if laid := plan.Run(of); laid != nil {
			places = append(places, laid.Path...)
		}
	}
	for _, at := range places {
		_, _, seen := where(at)
		assert.True(t, seen, "%v", at)
	}
}

func TestATapSlidesWhatHangs(t *testing.T) {
	d := bare(t, 100, 27)
	d.Type("c")
	a := d.Screen.(screen).arranged(d.State, 100, 27)
	p, _ := d.Screen.(screen).beside(d.State, a.profile)
	along := p.run.Line.Length() / 2
	col, row, _ := p.cell(p.lay(), along)
	d.Tap(col+3, a.plan.H+row)
	wide, _ := p.lay().CellSize()
	require.Equal(t, part{sort: hung, index: 0, kind: vehicles.AClip}, d.Screen.(screen).picked)
	assert.InDelta(t, along+3*wide, d.State.Job.Exhaust.Clips[0], wide)
	assert.Equal(t, "exhaust clip 1 moved. Ctrl-Z takes it back.", d.Said)
	once := d.State.Job.Exhaust.Clips
	d.Tap(col+8, a.plan.H+row)
	require.NotEqual(t, once, d.State.Job.Exhaust.Clips)
	d.Undo()
	assert.Equal(t, once, d.State.Job.Exhaust.Clips, "each tap is a step of its own")
	assert.Equal(t, desk.Change{}, d.Screen.(screen).byTap(desk.Change{}, placed{}), "what nothing came of is not said to have moved")
	d.Type("hh<esc>h")
	require.True(t, d.Screen.Typing())
	for y, row := range strings.Split(d.View(100, 27), "\n") { // in the list: the plan may have that name, too
		if before, _, found := strings.Cut(ansi.Cut(row, a.plan.W, 100), "chassis rail, left"); found {
			d.Tap(a.plan.W+ansi.StringWidth(before), y)
			break
		}
	}
	assert.Equal(t, []string{"chassis rail, left"}, d.State.Job.Exhaust.Shielded.Names)
}
