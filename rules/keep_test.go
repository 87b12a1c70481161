package rules

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// The room for the cut, which the field works out, is that of what its rules keep it from, one by one.
func TestTheRoomForTheCutIsWhatItsRulesKeep(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	for _, result := range append(heatedCases(t), judged(t, tidy()), judged(t, vehicles.Demo())) {
		j := newJudge(&result.Job, &result.Plan, result.Book)
		room, keeps := RoomForCut(&result), j.keeps(TheCut)
		for range 50 {
			at := anywhere(r, &result)
			want, which := worst(keeps, at)
			got := room.Margins.At(at)
			require.InDelta(t, want, got.Margin, 1e-9, "%s at %v", result.Job.Ref, at)
			require.InDelta(t, want, keeps[which].Margin(at), 1e-9)
		}
	}
}

// By hand: without a value there is nothing to ask for but that the hole's rim, the flange, the body and the stubs hit
// nothing and stay on the floor. It is the same for a suggested place, for a better one near the pilot and for the stubs.
func TestARuleWithoutAValueAsksThatNothingIsHit(t *testing.T) {
	job := tidy()
	job.Obstructions = []vehicles.Obstruction{box("rail", "chassis rail", 1500, 1600, -800, 800, 0, 90)}
	result := judged(t, job)
	result.Book = newBook(nil)
	at := geometry.Point{X: 1400, Y: 0}
	for _, f := range judgedBy(t, job, result.Book).Findings {
		if f.Rule.keep.of != Nothing {
			assert.False(t, f.Margin.Set, f.Rule.ID)
			assert.Equal(t, Doubtful, f.Verdict, f.Rule.ID)
		}
	}
	assert.InDelta(t, 100-63.5, RoomForCut(&result).Margins.At(at).Margin, 1e-9, "100 mm to the rail, less half the cut")
	margins := map[string]float64{}
	for _, k := range result.keeps() {
		margins[k.name] = min(k.Margin(at), 1e9)
	}
	assert.InDelta(t, 100-63.5, margins["rail"], 1e-9)
	assert.Contains(t, margins, "floor")
	assert.Contains(t, margins, "battery box")
	stubs := result.stubsAt(0)
	require.Len(t, stubs, 2, "exhaust and intake, each from the rail")
	assert.InDelta(t, 100-35-26./2, stubs[0].Margin(at), 1e-9, "the exhaust's stub is 35 mm ahead and 26 mm across")
	assert.InDelta(t, 100+35-28./2, stubs[1].Margin(at), 1e-9, "the intake's 35 mm behind and 28 mm across")
}

// By hand. The stub's mouth is 45 below the floor. Beside the stub what lies under the floor is as far as in plan; what lies
// lower than its mouth, or higher than the floor, is farther by its height.
func TestAStubIsAsHighAsItReachesDown(t *testing.T) {
	job := tidy()
	job.Obstructions = []vehicles.Obstruction{box("pipe", "brake line", 1500, 1600, -800, 800, 0, 60)}
	job.Heater.StubDrop, job.Heater.ExhaustStub = 45, [2]float64{}
	result := judged(t, job)
	for _, c := range []struct{ high, low, aside, far float64 }{
		{0, -60, 200, 200},
		{-44, -90, 200, 200},
		{-45, -90, 30, 30},
		{-65, -90, 30, 36.0555}, // 20 lower than the mouth
		{-75, -90, 30, 42.4264}, // 30 lower
		{-75, -90, -20, 30},     // right under it
		{60, 20, 30, 36.0555},   // 20 higher than the floor
		{60, -20, 30, 30},
		{0, -60, -20, 0}, // through it
	} {
		result.Plan.Obstructions[0].Prism.Low, result.Plan.Obstructions[0].Prism.High = c.low, c.high
		asked := result.stubsAt(0)[0].Margin(geometry.Point{X: 1500 - c.aside})
		assert.InDelta(t, c.far-26./2-120, asked, 1e-4, "%+v: 26 across, and 120 asked", c)
	}
}

func judged(t require.TestingT, job vehicles.Job) Result { return judgedBy(t, job, Builtin()) }

func judgedBy(t require.TestingT, job vehicles.Job, book *Book) Result {
	result, faults := Judge(job, book)
	require.Empty(t, faults)
	return result
}
