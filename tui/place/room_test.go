package place

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/field"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// leastAtCut is the least margin of the findings about where the cut is.
func leastAtCut(s desk.State) float64 {
	worst := math.Inf(1)
	for _, f := range s.Result.Findings {
		if (f.ID() == "cut.clearance" || f.ID() == "cut.on-floor") && f.Margin.Set {
			worst = min(worst, f.Margin.Value)
		}
	}
	return worst
}

// demo is the demo's van, whose floor is crowded and whose cut is foul.
func demo(t require.TestingT) desk.State {
	return screentest.Judged(desk.State{Selected: -1}, vehicles.Demo())
}

// Going from area to area, every place judged again has what the line at the foot says to spare, less each time, and the
// first comes again after the last.
func TestFromAreaToArea(t *testing.T) {
	s := demo(t)
	first, _ := New().(screen).pane.Areas(s)
	require.NotEmpty(t, first)
	p, last := New(), math.Inf(1)
	var began [2]float64
	for i, area := range first {
		var changes []desk.Change
		p, s, changes = screentest.After(p, s, screentest.Keys("n")...)
		margin := leastAtCut(s)
		assert.InDelta(t, area.Best.Margin, margin, 0.02, area.Name)
		assert.LessOrEqual(t, margin, last+0.02)
		assert.Contains(t, changes[0].Say, fmt.Sprintf("Area %s, %d of %d: ", area.Name, i+1, len(first)))
		if last = margin; i == 0 {
			began = s.Job.Cut.At
		}
	}
	_, s, _ = screentest.After(p, s, screentest.Keys("n")...)
	assert.Equal(t, began, s.Job.Cut.At)
}

func TestToTheNearestOpenPlace(t *testing.T) {
	s := demo(t)
	require.Negative(t, leastAtCut(s), "the demo's cut starts foul")
	_, after, _ := screentest.After(New(), s, screentest.Keys("j")...)
	assert.InDelta(t, 0, leastAtCut(after), 0.05)
	assert.GreaterOrEqual(t, leastAtCut(after), 0.)
	_, again, changes := screentest.After(New(), after, screentest.Keys("j")...)
	assert.Equal(t, after.Job.Cut.At, again.Job.Cut.At)
	assert.Contains(t, changes[0].Say, "already")
}

// Whatever arrows are pressed, a cut that stays on open floor stays open when it is judged.
func TestTheArrowsStayOnOpenFloor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, s, _ := screentest.After(New(), demo(t), screentest.Keys("j y s")...)
		before := s.Job.Cut.At
		for range rapid.IntRange(1, 12).Draw(t, "presses") {
			arrow := rapid.SampledFrom([]string{"up", "down", "left", "right", "s"}).Draw(t, "arrow")
			p, s, _ = screentest.After(p, s, screentest.Keys(arrow)...)
			require.GreaterOrEqual(t, leastAtCut(s), -1e-6, "from %v to %v", before, s.Job.Cut.At)
		}
	})
}

func TestOffOpenFloorTheArrowsSayHowToGetThere(t *testing.T) {
	_, s, changes := screentest.After(New(), demo(t), screentest.Keys("y right")...)
	assert.Nil(t, changes[1].Job)
	assert.Contains(t, changes[1].Say, "j goes to the nearest")
	assert.Equal(t, vehicles.Demo().Cut.At, s.Job.Cut.At)
}

func TestADrilledHoleIsNotSentElsewhere(t *testing.T) {
	s := demo(t)
	drilled := vehicles.Pair{survey.FromNumber(1222, false), survey.FromNumber(240, false)}
	s = screentest.Judged(s, s.Job.WithDrilled(&drilled))
	for _, key := range []string{"n", "j"} {
		_, _, changes := screentest.After(New(), s, screentest.Keys(key)...)
		assert.Nil(t, changes[0].Job)
		assert.Contains(t, changes[0].Say, "drilled")
	}
}

func TestTheShadeIsExplainedAndTakenOff(t *testing.T) {
	const key = "mm to spare:"
	s := demo(t)
	for _, size := range screentest.Sizes {
		p, _, _ := screentest.After(New(), s)
		shaded := screentest.Filled(t, p, s, size.W, size.H)
		assert.Equal(t, size.H > 17, strings.Contains(shaded, key), "a row of its own where there is room for one, %s", size.Name)
		bare, _, _ := screentest.After(p, s, screentest.Keys("h")...)
		assert.NotContains(t, screentest.Filled(t, bare, s, size.W, size.H), key, size.Name)
		assert.NotEqual(t, shaded, screentest.Filled(t, bare, s, size.W, size.H))
	}
}

func TestWithoutAnyRoomTheKeysSaySo(t *testing.T) {
	s := demo(t)
	job := s.Job
	job.Rules = map[string]float64{"cut.on-floor": 900}
	s = screentest.Judged(s, job)
	for _, key := range []string{"n", "j"} {
		_, _, changes := screentest.After(New(), s, screentest.Keys(key)...)
		assert.Equal(t, noRoom, changes[0].Say)
	}
}

// Without a cut the best place of the roomiest area is where one begins.
func TestACutBeginsAtTheBestPlace(t *testing.T) {
	job := demo(t).Job
	moved := screentest.New(t, New(), job, 100, 27)
	moved.Type("n")
	job.Cut = nil
	begun := screentest.New(t, New(), job, 100, 27)
	begun.Type("j")
	require.Nil(t, begun.State.Job.Cut)
	assert.Equal(t, "No cut yet: n puts one at the best place, Enter in the middle.", begun.Said)
	begun.Type("n")
	require.NotNil(t, begun.State.Job.Cut)
	assert.InDelta(t, vehicles.UsualAcross, begun.State.Job.Cut.Across, 1e-9)
	assert.Equal(t, moved.State.Job.Cut.At, begun.State.Job.Cut.At)
	begun.Undo()
	assert.Nil(t, begun.State.Job.Cut)
}

// Once the areas are walked along they have their letters in the picture, those that are walked along, wherever nothing else stands; the one
// that the cut was put in has it beside its ring.
func TestAreasThatAreWalkedAlongHaveTheirLettersInThePicture(t *testing.T) {
	s := demo(t)
	s.Settings.Colour = desk.NoColour
	lettered := regexp.MustCompile(`\([A-Z]\)`)
	areas, _ := New().(screen).pane.Areas(s)
	for _, size := range screentest.Sizes {
		d := screentest.New(t, New(), s.Job, size.W, size.H)
		d.State.Settings.Colour = desk.NoColour
		assert.Empty(t, lettered.FindAllString(d.View(size.W, size.H), -1))
		for _, here := range areas[:3] {
			d.Type("n")
			seen := lettered.FindAllString(d.View(size.W, size.H), -1)
			assert.Contains(t, seen, "("+here.Name+")", size.Name)
			for _, letter := range seen {
				assert.True(t, slices.ContainsFunc(areas, func(a field.Area) bool { return "("+a.Name+")" == letter }), letter)
			}
			atRing(t, d.View(size.W, size.H), here.Name, d.Screen.(screen), d.State)
		}
	}
}

// atRing holds that an area's letter stands beside the ring, no farther from its middle than the ring is large and a word long.
func atRing(t *testing.T, view, area string, m screen, s desk.State) {
	t.Helper()
	col, row, seen := m.pane.Sized(moving.Sizes(m.w, m.h)).Cell(plan2(s.Job.Cut.At).At(0), s, m.shown(s))
	require.True(t, seen)
	for y, line := range strings.Split(ansi.Strip(view), "\n") {
		if before, _, found := strings.Cut(line, "("+area+")"); found {
			assert.LessOrEqual(t, math.Hypot(float64(ansi.StringWidth(before)+1-col), 2*float64(y-row)), 18., "area %s in %d by %d", area, m.w, m.h)
		}
	}
}

// However low the window is, the areas' letters find a place or are left out.
func TestAreasHaveLettersAtEverySize(t *testing.T) {
	s := screentest.State(t)
	p, after, _ := screentest.After(New(), s, screentest.Keys("n")...)
	for h := 1; h <= 12; h++ {
		for _, w := range []int{1, 20, 40, 60, 100} {
			assert.NotPanics(t, func() { p.View(after, w, h) }, "%d x %d", w, h)
		}
	}
}
