package match

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// untied is the sample van without its matching points.
func untied() vehicles.Job {
	job := vehicles.Demo()
	job.Ties = nil
	return job
}

// The sample's two points and two more, as they are typed. From the first two the top is turned by -0.027 degrees and
// shifted by (0.74, 0.29) mm; with that and the hooks 150 and 60 below the floor, a place 1400 forward and 560 left below
// reads 1408.0, L 328 below and 1402.3, L 324.4 above, one 2300 forward and 400 right 2304.9, R 487 and 2301.3, R 482.2.
// What stands here is rounded as a tape is read. Worked out apart from the program, from the job file's description.
const (
	first  = "nseat bolt, front left<enter>2954<enter>l328<enter>2952<enter>l325<enter>"
	second = "lashing eye, rear right<enter>455<enter>r287<enter>434<enter>r283<enter>"
	third  = "drain, left<enter>1408<enter>l328<enter>1402<enter>l324.5<enter>"
	fourth = "bolt, right<enter>2305<enter>r487<enter>2301<enter>r482<enter>"
)

// tied is the sample van, tied from both sides by keys.
func tied(t testing.TB, w, h int, points ...string) *screentest.Driver {
	r := screentest.New(t, New(), untied(), w, h)
	r.Type(strings.Join(points, "") + "<esc>")
	require.Empty(t, r.State.Faults)
	require.Len(t, r.State.Job.Ties, len(points))
	return r
}

func TestTyingAVanFromBothSides(t *testing.T) {
	r := tied(t, 100, 27, first, second)
	assert.Equal(t, vehicles.Demo().Ties, r.State.Job.Ties, "the sample's own points, typed")
	view := flat(r.View(100, 27))
	assert.Contains(t, view, "Matching points: 2 in the fit")
	assert.Contains(t, view, "2954 L 328 │ 2952 L 325")
	assert.Contains(t, view, "clear: the points agree as well as their tapes can tell, left over 0.2 mm in all (arrows x200)")
	assert.Contains(t, view, "turned 0.03° clockwise")
	assert.Contains(t, view, "shifted 0.7 mm forward, 0.3 mm left")
	r = tied(t, 160, 47, first, second, third, fourth)
	view = flat(r.View(160, 47))
	assert.Contains(t, view, "Matching points: 4 in the fit")
	assert.Contains(t, view, "If one were left out, the others would say")
	assert.Contains(t, view, "drain, left: ")
	assert.Contains(t, view, "arrows x200")
}

func pt(x, y float64) geometry.Point { return geometry.Point{X: x, Y: y} }

// flat is a view with its rows run together, blanks taken out: what stands left of the line that parts it, then the rest.
func flat(view string) string {
	rows := strings.Split(view, "\n")
	cells := make([][]rune, len(rows))
	for i, row := range rows {
		cells[i] = []rune(row)
	}
	at := slices.Index(cells[0], '│') // no picture has a line in its first row
	var left, right []string
	for _, row := range cells {
		left, right = append(left, string(row[:at])), append(right, string(row[at+1:]))
	}
	return strings.Join(strings.Fields(strings.Join(append(left, right...), " ")), " ")
}

func TestSwappedSidesAreSaidAndRepaired(t *testing.T) {
	for _, c := range []struct{ below, key string }{{"below", "s"}, {"above", "t"}} {
		r := tied(t, 100, 27, first, second, third)
		before := r.State.Job
		wrong := before.WithTieSidesSwapped(c.below == "below")
		typed := screentest.New(t, New(), untied(), 100, 27)
		typed.Type(keysOf(wrong) + "<esc>")
		require.Len(t, typed.State.Job.Ties, 3, "readings are taken though they contradict each other")
		require.NotEmpty(t, typed.State.Faults)
		assert.Contains(t, typed.State.Faults[0].Text, "swapped")
		view := flat(typed.View(100, 27))
		assert.Contains(t, view, "Left and right are swapped on one side")
		assert.Contains(t, view, "s: swap the sides of the readings below. t: of those above.")
		assert.Contains(t, view, "! swapped?")
		typed.Type(c.key)
		assert.Empty(t, typed.State.Faults)
		assert.Equal(t, before.Ties, typed.State.Job.Ties)
		assert.Contains(t, typed.Said, c.below+" swapped")
		assert.Contains(t, flat(typed.View(100, 27)), "clear: the points agree")
		typed.Undo()
		assert.NotEmpty(t, typed.State.Faults, "one undo step")
		typed.Type(map[string]string{"s": "t", "t": "s"}[c.key])
		assert.Empty(t, typed.State.Faults, "mirrored as a whole the points agree as well: which side it was only the van says")
	}
	r := tied(t, 100, 27, first, second)
	steps := len(r.Steps())
	r.Type("st")
	assert.Len(t, r.Steps(), steps, "nothing to swap back while nothing is swapped")
}

// keysOf are the keys that enter a job's points.
func keysOf(j vehicles.Job) string {
	keys := "n"
	for _, t := range j.Ties {
		keys += fmt.Sprintf("%s<enter>%s<enter>%s<enter>%s<enter>%s<enter>", t.Name, t.Below[0], t.Below[1], t.Above[0], t.Above[1])
	}
	return keys
}

func TestOnePointWithItsSideSwapped(t *testing.T) {
	good := tied(t, 100, 27, first, second, third).State.Job
	r := tied(t, 100, 27, first, second, strings.Replace(third, "l328", "r328", 1))
	view := flat(r.View(100, 27))
	assert.Contains(t, view, "drain, left: left and right seem swapped, below or above.")
	r.Type("s")
	assert.Equal(t, good.Ties, r.State.Job.Ties)
	assert.Contains(t, flat(r.View(100, 27)), "clear: the points agree")
}

func TestALeftOutPointKeepsItsReadings(t *testing.T) {
	r := tied(t, 100, 27, first, second, third)
	r.Type("<home>o")
	tie := r.State.Job.Ties[0]
	assert.False(t, tie.Use)
	assert.Equal(t, "L 328", tie.Below[1].Text)
	assert.Equal(t, 2, r.State.Result.Plan.Fit.N)
	view := flat(r.View(100, 27))
	assert.Contains(t, view, "Matching points: 2 in the fit, 1 left out")
	assert.Contains(t, view, "It is left out; its readings are kept.")
	assert.Contains(t, r.Said, "left out of the fit")
	r.Type("o")
	assert.True(t, r.State.Job.Ties[0].Use)
	assert.Equal(t, 3, r.State.Result.Plan.Fit.N)
}

// Four points and one of them 60 mm off: the contract names a suspect from an RMS of 5 mm on when leaving one out brings
// that below a third.
func TestTheSuspectIsNamedWithWhatToDo(t *testing.T) {
	r := tied(t, 160, 47, first, second, third, strings.Replace(fourth, "2301", "2361", 1))
	assert.Equal(t, "bolt, right", r.State.Result.Plan.Fit.Suspect)
	view := flat(r.View(160, 47))
	assert.Contains(t, view, "bolt, right seems wrong: the others say it is 59")
	assert.Contains(t, view, "Measure it again on both sides, or o: leave it out of the fit.")
	assert.Contains(t, view, "doubtful: the points differ by more than their tapes explain")
	r.Type("<end>o")
	assert.Contains(t, flat(r.View(160, 47)), "clear: the points agree")
}

// Two points need no fit to contradict each other: they are as far apart below as above.
func TestTwoPointsThatDisagreeInTheirDistance(t *testing.T) {
	r := tied(t, 160, 47, first, strings.Replace(second, "434", "464", 1))
	pairs := rules.TiesApart(r.State.Result.Plan)
	require.Len(t, pairs, 1)
	assert.InDelta(t, -30, pairs[0].Difference, 3, "30 mm nearer to each other along the van")
	assert.Contains(t, flat(r.View(160, 47)), "seat bolt, front left and lashing eye, rear right are 2774.7 mm apart below")
}

func TestPointsAtOnePlace(t *testing.T) {
	r := screentest.New(t, New(), untied(), 100, 27)
	r.Type(first + strings.Replace(first[1:], "seat", "other", 1) + "<esc>")
	require.Len(t, r.State.Job.Ties, 2)
	assert.Contains(t, flat(r.View(100, 27)), "all at one place")
}

func TestAnUnfinishedPointIsKept(t *testing.T) {
	r := screentest.New(t, New(), untied(), 100, 27)
	r.Type("nhole<enter>1400<enter>l300<esc>")
	assert.Empty(t, r.State.Job.Ties)
	assert.Contains(t, r.View(100, 27), "! needs")
	again, err := vehicles.ParseJob(r.State.Job.Format(), "again.toml")
	require.NoError(t, err)
	s := r.State
	s.Job = again
	r = screentest.New(t, New(), again, 100, 27)
	r.Type("<enter>1395<enter>l297")
	require.Len(t, r.State.Job.Ties, 1)
	assert.Equal(t, "L 300", r.State.Job.Ties[0].Below[1].Text)
}

func TestAReadingThatRunsOnIsRefused(t *testing.T) {
	r := screentest.New(t, New(), vehicles.Demo(), 100, 27)
	r.Type("<enter><down><wipe>+84")
	assert.Equal(t, "2954", r.State.Job.Ties[0].Below[0].Text)
	assert.Contains(t, r.View(100, 27), "! ")
}

func TestWordsForTheMotion(t *testing.T) {
	for deg, want := range map[float64]string{
		0.004: "not turned", 0.12: "turned 0.12° anticlockwise (seen from above)", -0.5: "turned 0.50° clockwise (seen from above)",
	} {
		assert.Equal(t, want, turned(deg))
	}
	var p page
	assert.Equal(t, "not shifted", p.shifted(pt(0.04, -0.01)))
}

var looks = map[string][]string{
	"none": {}, "one": {first}, "two": {first, second}, "four": {first, second, third, fourth},
	"suspect": {first, second, third, strings.Replace(fourth, "2301", "2361", 1)},
}

func TestGoldens(t *testing.T) {
	for _, size := range [][2]int{{60, 17}, {100, 27}, {160, 47}} {
		w, h := size[0], size[1]
		for name, points := range looks {
			r := tied(t, w, h, points...)
			r.Golden(fmt.Sprintf("%s-%dx%d", name, w, h), w, h)
		}
		r := screentest.New(t, New(), untied(), w, h)
		r.Type("nseat bolt<enter>2954<enter>l328")
		r.Golden(fmt.Sprintf("typing-%dx%d", w, h), w, h)
		swapped := screentest.New(t, New(), tied(t, w, h, first, second, third).State.Job.WithTieSidesSwapped(true), w, h)
		swapped.Golden(fmt.Sprintf("swapped-%dx%d", w, h), w, h)
	}
}

func TestWildHands(t *testing.T) {
	screentest.Wild(t, New, vehicles.Demo())
	screentest.Wild(t, New, tied(t, 100, 27, first, second, third).State.Job.WithTieSidesSwapped(true))
}

// A key on the screen while points disagree: the picture and the keys that hold ask for the fit in every row.
func BenchmarkPointsAtOdds(b *testing.B) {
	r := tied(b, 160, 47, first, second, third, fourth)
	r.Begin(r.State.Job.WithTieSideSwapped(3, true), true)
	if matched(r.State).oneSided != 3 {
		b.Fatal("no point is on the wrong side")
	}
	for b.Loop() {
		r.View(160, 47)
		r.Screen.Keys(r.State)
	}
}
