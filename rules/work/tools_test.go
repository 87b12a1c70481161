package work

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// Tools are those that the job calls for, in its sizes: no saw where nothing is cut, no pipe cutter where there is no heater.
func TestToolsAreThoseOfTheJob(t *testing.T) {
	all := strings.Join(Tools(judged(t, demo)), "; ")
	for _, want := range []string{"the template, printed at 100 %, either face", "bit of 6 mm", "hole saw of 127 mm, 68 rpm", "bit of 7 mm for the bolts", "level", "carbon monoxide meter", "torque wrench"} {
		assert.Contains(t, all, want)
	}
	all = strings.Join(Tools(judged(t, bare)), "; ")
	assert.Contains(t, all, "stands")
	for _, not := range []string{"template", "saw", "bit", "level", "meter", "pipe cutter"} {
		assert.NotContains(t, all, not)
	}
	all = strings.Join(Tools(judged(t, demo.WithRun(vehicles.ExhaustRun, nil))), "; ")
	assert.Contains(t, all, "pipe cutter", "an exhaust that nobody has laid is laid before the heater runs")
}

// A centre that was moved from its pilot hole: how far, and what that takes, stands in the steps, and what the board takes is at hand. So near that a board
// leads the saw there is no new pilot to drill; farther off the hole is drilled and looked at anew, and what was recorded of the first is a note.
func TestACentreThatWasMovedIsSawnAsItTakes(t *testing.T) {
	job := demo.WithDrilled(&vehicles.Pair{survey.FromNumber(demo.Cut.At[0], false), survey.FromNumber(demo.Cut.At[1], false)})
	job = job.WithDone(vehicles.Done{Step: "pilot-drilled", At: "2026-11-27T10:15:00"}).WithDone(vehicles.Done{Step: "pilot-looked", At: "2026-11-27T10:20:00", Note: "dry"})
	drilledAt := judged(t, job).Plan.Cut.At
	for by, want := range map[float64]struct {
		takes       string
		board, anew bool
	}{8: {"guide board", true, false}, 30: {"new pilot", false, true}, 60: {"new pilot, guide board", true, true}, 90: {"new pilot, close the old", false, true}} {
		r := judged(t, job.LeavingPilot([2]float64{drilledAt.X + by, drilledAt.Y}))
		l := Of(r)
		sawn, pilot, looked := l[l.Index("sawn")], l[l.Index("pilot-drilled")], l[l.Index("pilot-looked")]
		assert.Contains(t, sawn.Of, "centre beside the old pilot "+survey.InMM(by)+", "+want.takes+". ")
		assert.Equal(t, want.board, strings.Contains(sawn.Of, "sawn through with the same saw"), want.takes)
		assert.Equal(t, want.board && want.anew, strings.Contains(sawn.Of, "Drill a new pilot for looking from below alone: the saw runs in a clamped board"), want.takes)
		assert.Equal(t, want.board, strings.Contains(strings.Join(Tools(r), "; "), "two clamps"), want.takes)
		assert.Equal(t, want.anew, pilot.Known == "", want.takes)
		assert.Equal(t, want.anew, strings.Contains(pilot.Of, "a new one, "), want.takes)
		assert.False(t, pilot.Ticked() || looked.Ticked())
		assert.Equal(t, "dry\nThe old pilot hole: 2026-11-27 10:20.", looked.Done.Note)
	}
	assert.NotContains(t, strings.Join(Tools(judged(t, job)), "; "), "two clamps")
}

// Whoever has the list alone can do what the steps say: the bit for the fuel line's hole, what scrapes and what measures a depth.
func TestToolsReachForEachStep(t *testing.T) {
	assert.Contains(t, strings.Join(Tools(judged(t, demo)), "; "), "bit for the clips' screws or rivets, riveter or spanner; depth gauge; scraper")
	job := demo
	run := *job.Fuel
	first := run.Path[0]
	first.Drop = -100
	run.Path, run.Pump = run.Path.Insert(0, first), nil
	assert.Contains(t, strings.Join(Tools(judged(t, job.WithRun(vehicles.FuelRun, &run))), "; "), "bit of 12 mm for the fuel line")
}

// Of clips that nobody has placed it is said that nobody has.
func TestClipsThatNobodyPlaced(t *testing.T) {
	run := *demo.Intake
	for _, c := range []struct {
		clips []float64
		want  string
	}{{nil, "nobody has said where its clips go"}, {[]float64{}, "no clips"}, {[]float64{300}, "1 clip"}, {[]float64{300, 600}, "2 clips"}} {
		run.Clips = c.clips
		l := Of(judged(t, demo.WithRun(vehicles.IntakeRun, &run)))
		assert.Equal(t, c.want, l[l.Index("intake-hung")].Of)
	}
}

// A heater's collar that is too short for the floor is ordered deeper, and that one is cut to what the floor takes.
func TestACollarThatIsOrderedIsCut(t *testing.T) {
	job := demo
	job.Stack = append(vehicles.List[vehicles.Layer]{{Kind: vehicles.Ply, Thick: 18}}, job.Stack...)
	l := Of(judged(t, job))
	require.GreaterOrEqual(t, l.Index("collar-cut"), 0)
	cut := l[l.Index("collar-cut")]
	assert.Equal(t, "the one that was ordered, 60 mm, may be cut to 54 mm", cut.Of)
	assert.Equal(t, [2]vehicles.Number{vehicles.Some(54), vehicles.Some(60)}, [2]vehicles.Number{cut.Expected.Least, cut.Expected.Most})
}
