package runs

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// Falls by hand: 1245, 265 to 900, 620 is 495.03 mm of plan and 50 down, 101/m; on to 300, 640 it is 600.33 and 25, 42/m; then 230 and 15, 65/m.
func TestTheProfileSaysHowEachLegFalls(t *testing.T) {
	for _, size := range screentest.Sizes {
		d := screentest.New(t, New(), screentest.State(t).Job, size.W, size.H)
		view := d.View(size.W, size.H)
		assert.Contains(t, view, "SEEN FROM BESIDE THE RUN")
		for _, fall := range []string{"mm/m", "down", "↓101", "↓42", "↓65"} {
			assert.Contains(t, view, fall, size.Name)
		}
		d.Type("nrr")
		assert.Contains(t, d.View(size.W, size.H), "↓61", "20 mm higher: 30 in 495.03, as soon as the point has moved")
	}
}

// A leg that falls too little, or rises, has its fall in the ink of its verdict and with its mark; a good one and those behind the muffler do not.
// By hand: 20 mm a metre are asked; point 2 of the run without a muffler 40 mm higher falls 10 in 495.03, 50 higher it is level with the first.
func TestAFallThatIsTooLittleIsMarked(t *testing.T) {
	for _, size := range screentest.Sizes {
		d := bare(t, size.W, size.H)
		d.State.Settings.Colour = desk.TrueColour
		foul := d.State.Settings.Styles().Foul
		in := func(word string) string { return foul.Render(word) }
		d.Type("nrrrr")
		assert.Contains(t, ansi.Strip(d.Screen.View(d.State, size.W, size.H)), " ↓20 ", size.Name)
		d.Type("r")
		assert.Contains(t, d.Screen.View(d.State, size.W, size.H), in("level!"), size.Name)
		d.Type("r")
		assert.Contains(t, d.Screen.View(d.State, size.W, size.H), in("↑20!"), size.Name)
		d.State.Settings.Colour = desk.NoColour
		assert.Contains(t, ansi.Strip(d.Screen.View(d.State, size.W, size.H)), "↑20! ", size.Name)
	}
	d := bare(t, 100, 27)
	d.Type("nrrrrrr")
	require.Contains(t, ansi.Strip(d.Screen.View(d.State, 100, 27)), "↑20!")
	d.Type("<tab>")
	assert.NotRegexp(t, `(?m)^mm/m.*!`, ansi.Strip(d.Screen.View(d.State, 100, 27)), "another run is marked for none of that")
	var row written
	row.put(4, "101")
	row.putInked(9, "34!", desk.Style{})
	row.putInked(20, "20?", desk.Style{})
	assert.Equal(t, " 101 34! 20?", row.painted(12, desk.Style{}))
	assert.Equal(t, " 101 34!…", row.painted(9, desk.Style{}))
	assert.Equal(t, "   101  34!        20?  ", row.painted(24, desk.Style{}))
}

// A point that is typed is seen where the figures have it so far, by hand as above, and on the smallest screen the profile stands where the
// plan did as soon as its drop is typed; the job has it once it is taken.
func TestATypedPointIsSeenAsItIsTyped(t *testing.T) {
	for _, size := range screentest.Sizes {
		d := screentest.New(t, New(), screentest.State(t).Job, size.W, size.H)
		before := d.State.Job
		d.Type("nt<enter><enter>")
		assert.Contains(t, d.View(size.W, size.H), "↓101", size.Name)
		d.Type("140")
		assert.Contains(t, d.View(size.W, size.H), "↓61", size.Name)
		assert.Equal(t, before, d.State.Job)
		d.Type("<esc>")
		assert.Contains(t, d.View(size.W, size.H), "↓101", size.Name)
		d.Type("t<enter><enter>140<enter>")
		assert.Contains(t, d.View(size.W, size.H), "↓61", size.Name)
		assert.Equal(t, 140., d.State.Job.Exhaust.Path[1].Drop)
	}
}

func TestFallsInWords(t *testing.T) {
	for want, leg := range map[string]geometry.Point3{
		"down": {Z: -65}, "up": {X: 0.5, Z: 10}, "level": {X: 100, Y: 3}, "↓20": {X: 30, Y: 40, Z: -1}, "↑7": {Y: 1000, Z: 7.2},
	} {
		assert.Equal(t, want, words.Fall(leg))
	}
}

// In a window of 100 by 30 the muffler's level and how far the ground is stand in figures: the sample's muffler hangs 180 mm along a leg that
// falls 3 in 350, half a degree.
func TestTheProfileHasTheMufflersLevelAndTheGroundInFigures(t *testing.T) {
	d := screentest.New(t, New(), vehicles.Demo(), 100, 27)
	view := d.View(100, 27)
	assert.Contains(t, view, "Muffler 0.5° off level.")
	assert.Contains(t, view, "▼ ground 239")
	d.Type("<tab>")
	assert.NotContains(t, d.View(100, 27), "off level")
}

// What is foul with the run has in its profile by how much; in the largest window what is clear and near has what it has to spare, and each
// corner its drop and its place along the run. The figures are the findings'.
func TestTheProfileHasDimensions(t *testing.T) {
	job := screentest.State(t).Job
	for _, size := range screentest.Sizes {
		d := screentest.New(t, New(), job, size.W, size.H)
		view := d.View(size.W, size.H)
		profile := view[strings.Index(view, "SEEN FROM BESIDE"):]
		figures := regexp.MustCompile(`([0-9.]+) (mm )?short!`).FindAllStringSubmatch(profile, -1)
		require.NotEmpty(t, figures, size.Name)
		for _, figure := range figures {
			assert.True(t, slices.ContainsFunc(d.State.Result.Findings, func(f rules.Finding) bool {
				return f.Verdict == rules.Foul && (screen{}).concerns(&f) && survey.Figure(-f.Margin.Value) == figure[1]
			}), "%s %s", size.Name, figure[0])
		}
		large := size.W >= 160
		assert.Equal(t, large, strings.Contains(profile, "to spare"), size.Name)
		assert.Equal(t, large, strings.Contains(profile, "110 at "), size.Name)
	}
}

// How far the ground is below each run stands in its profile at every size, in the picture where that does not go down to it. By hand: the
// intake of the sample hangs 136 mm down with 14 of its pipe below that, the ground is 460 down: 310 lower.
func TestTheGroundIsNeverGone(t *testing.T) {
	for _, size := range screentest.Sizes {
		d := screentest.New(t, New(), vehicles.Demo(), size.W, size.H)
		for _, of := range vehicles.RunKinds {
			view := d.View(size.W, size.H)
			lower := regexp.MustCompile(`▼ ground [0-9.]+ lower`).FindAllString(view, -1)
			require.Len(t, lower, 1, "%s %s", size.Name, of)
			assert.NotContains(t, view, "Ground ", "once is enough")
			if of == vehicles.IntakeRun {
				assert.Equal(t, "▼ ground 310 lower", lower[0])
			}
			d.Type("<tab>")
		}
		job := d.State.Job
		job.Floor.Ground = 300 // near enough to be drawn
		d.Put(job)
		assert.NotContains(t, d.View(size.W, size.H), "▼ ground 7")
		assert.Contains(t, strings.ToLower(d.View(size.W, size.H)), "ground 79.9 lower", size.Name)
	}
}

// Water stands where the run is lowest without a drain; a drain there takes the mark away.
func TestLowPointsAreMarked(t *testing.T) {
	job := screentest.State(t).Job
	intake := *job.Intake
	intake.Path = vehicles.List[vehicles.RunPoint]{{X: 1175, Y: 265, Drop: 110}, {X: 1600, Y: 265, Drop: 180}, {X: 2000, Y: 265, Drop: 90}, {X: 2000, Y: 600, Drop: 260}}
	intake.Hanging = vehicles.Hanging{}
	job = job.WithRun(vehicles.IntakeRun, &intake)
	d := screentest.New(t, New(), job, 100, 27)
	d.Type("<tab>")
	assert.Contains(t, d.View(100, 27), "! water stands")
	for _, size := range screentest.Sizes {
		m := d.Screen.(screen)
		p, ok := m.beside(d.State, m.arranged(d.State, size.W, size.H).profile)
		require.True(t, ok)
		lay, said := p.lay(), 0
		col, row, seen := p.cell(lay, p.low()[0])
		require.True(t, seen)
		for _, k := range p.marks(m, d.State, lay) {
			if k.text == "!" {
				said++
				assert.Equal(t, [2]int{col, 1}, [2]int{k.col, max(k.row-row, row-k.row)}, "%s: beside the run where it is lowest", size.Name)
			}
		}
		assert.Equal(t, 1, said, size.Name)
	}
	d.Type("w")
	assert.NotContains(t, d.View(100, 27), "! water stands")
	require.Len(t, d.State.Job.Intake.Drains, 1)
	laid := d.State.Job.Laid(vehicles.IntakeRun)
	assert.InDelta(t, laid.CornerAlong(2), d.State.Job.Intake.Drains[0], 0.5)
}

// What is picked has its sign in the plan and in the profile, in both inverse; so it has in the smallest window.
func TestOneCursorInPlanAndProfile(t *testing.T) {
	for _, size := range screentest.Sizes {
		d := screentest.New(t, New(), screentest.State(t).Job, size.W, size.H)
		both := 0
		for range 8 {
			m := d.Screen.(screen)
			a := m.arranged(d.State, size.W, size.H)
			here, _ := m.here(d.State)
			p, ok := m.beside(d.State, a.profile)
			require.True(t, ok)
			col, row, seen := p.cell(p.lay(), here.middle())
			rows := strings.Split(d.View(size.W, size.H), "\n")
			if seen && sign(here) != "" && a.sees == together {
				both++
				assert.Equal(t, sign(here), string([]rune(rows[a.plan.H+row])[col]), "%s %s", size.Name, name(here))
				place, _ := m.place(here, d.State)
				col, row, seen = m.pane.Sized(a.plan.W, a.plan.H).Cell(inSpace(place), d.State, m.shown(d.State))
				require.True(t, seen, "%s %s", size.Name, name(here))
				assert.Equal(t, sign(here), string([]rune(rows[row])[col]), "%s %s", size.Name, name(here))
			}
			d.Type(".")
		}
		assert.Greater(t, both, 5, size.Name)
	}
}

// Alone in the smallest window the profile is walked along and its points are raised and lowered by the arrows.
func TestTheProfileIsWalkedAlong(t *testing.T) {
	d := bare(t, 60, 17)
	d.Type("ee<right><down>")
	assert.Equal(t, part{sort: point, index: 1}, d.Screen.(screen).picked)
	assert.Equal(t, 170., d.State.Job.Exhaust.Path[1].Drop)
	d.Type("<up><up><left>")
	assert.Equal(t, 150., d.State.Job.Exhaust.Path[1].Drop)
	assert.Equal(t, part{sort: point, index: 0}, d.Screen.(screen).picked)
	assert.Contains(t, d.View(60, 17), "SEEN FROM BESIDE THE RUN")
	d.Golden("profile-60x17", 60, 17)
}

// With fifteen rows both are seen, whatever the width: a picture takes six, the falls below it one, and the panel two, with one more for the
// worst. With less the plan is seen, and e shows the profile; with few more e shows one of them with the whole panel, both, and so round.
func TestPlanAndProfileStandTogetherWhereBothHaveRoom(t *testing.T) {
	const plan, profile = "SEEN FROM BELOW", "SEEN FROM BESIDE THE RUN"
	both, list := []string{plan, profile}, "[insert]"
	for _, size := range []struct {
		w, h int
		sees [][]string
	}{
		{60, 14, [][]string{{plan, list}, {profile, list}, {plan, list}}},
		{60, 15, [][]string{both, {plan, list}, {profile, list}, both}},
		{60, 16, [][]string{both, {plan, list}, {profile, list}, both}},
		{60, 17, [][]string{both, {plan, list}, {profile, list}, both}},
		{60, 20, [][]string{append(both, list), {plan, list}, {profile, list}, append(both, list)}},
		{60, 21, [][]string{append(both, list), append(both, list)}},
		{100, 12, [][]string{{plan, list}, {profile, list}, {plan, list}}},
		{100, 13, [][]string{append(both, list), append(both, list)}},
		{160, 47, [][]string{append(both, list), append(both, list)}},
	} {
		d := screentest.New(t, New(), screentest.State(t).Job, size.w, size.h)
		for i, sees := range size.sees {
			view := d.View(size.w, size.h)
			for _, text := range []string{plan, profile} {
				assert.Equal(t, slices.Contains(sees, text), strings.Contains(view, text), "%dx%d after %d: %s", size.w, size.h, i, text)
			}
			if slices.Contains(sees, list) {
				assert.Contains(t, view, " muffler ", "%dx%d after %d", size.w, size.h, i)
			}
			assert.Contains(t, view, "Point 1 of 4: x 1245", "%dx%d after %d", size.w, size.h, i)
			if size.h > leastBoth+leastTold || slices.Contains(sees, list) {
				assert.Contains(t, view, "foul  ", "%dx%d after %d: the worst of the run", size.w, size.h, i)
			}
			d.Type("e")
		}
	}
}

// Where the pictures leave the panel few rows a field, a list or a search has all of them; what is done
// is seen in both once it is left.
func TestWhatNeedsRowsTakesTheProfilesPlace(t *testing.T) {
	d := screentest.New(t, New(), screentest.State(t).Job, 60, 17)
	const profile = "SEEN FROM BESIDE THE RUN"
	require.Contains(t, d.View(60, 17), profile)
	for keys, says := range map[string]string{"t": "point 1 of 4, read from below", "h": "brake pipe, left", "q": "pipe", "/": "wherever it is best", "z": "SEEN FROM THE LEFT"} {
		d.Type(keys)
		assert.NotContains(t, d.View(60, 17), profile, keys)
		assert.Contains(t, d.View(60, 17), says, keys)
		if keys == "z" {
			d.Type(strings.Repeat("z", len(scene.Sides))) // and the others, and the plan again
		} else {
			d.Type("<esc>")
		}
		assert.Contains(t, d.View(60, 17), profile, keys)
	}
}

// In so few rows that the picture has more than there are, the ground is told in the words below: nothing is written beside the picture.
func TestTheGroundIsToldInTheFewestRows(t *testing.T) {
	for rows := 1; rows < 8; rows++ {
		for _, columns := range []int{20, 60} {
			c := canvas.Paint(scene.Scene{}, columns, rows, canvas.Look{Camera: desk.Camera{Scale: 1}})
			c.Rows, c.Cols = rows+2, columns+2
			assert.NotPanics(t, func() { writeFree(&c, nil, "▼ ground") }, "%d rows of %d", rows, columns)
		}
	}
}
