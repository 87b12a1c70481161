package sizing

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// A maker's table of bi-metal hole saws in mild steel, mm and rpm, read up to 67 mm; each is within 4 % of one cutting speed. 127 mm is drawn out by that;
// that charts have 60 to 68 rpm there is from memory.
func TestSawSpeedsAsPublished(t *testing.T) {
	for across, rpm := range map[float64]float64{19: 460, 25: 350, 38: 230, 51: 170, 64: 135, 67: 130} {
		assert.InEpsilon(t, rpm, SawSpeed(Usual().Saw.Speed, across), 0.04, "%v mm", across)
	}
	r := judged(t, func(j *vehicles.Job) { j.Floor.Deck = vehicles.Steel })
	row := rowOf(t, r, Saw, "speed")
	assert.Equal(t, "68 rpm, in steel, at most", row.Said())
	assert.InDelta(t, 64, row.Value.Value, 4)
	assert.Empty(t, row.Taken)
	assert.Equal(t, "119 mm", rowOf(t, r, Saw, "disc").Said())
	assert.Contains(t, rowOf(t, judged(t, func(j *vehicles.Job) { j.Floor.Deck = vehicles.Timber }), Saw, "speed").Why, "timber goes through first")
}

// 127 mm with a kerf of 4 and a pilot of 6: a disc of 119, within which an old hole of 6 lies while its centre is nearer than 56.5.
func TestAHoleThatIsMoved(t *testing.T) {
	for by, want := range map[float64]string{
		0: "saw it as it is", 0.9: "saw it as it is", 1: "guide board", 11.9: "guide board", 12: "new pilot", 56.4: "new pilot",
		56.6: "new pilot, guide board", 66.5: "new pilot, guide board", 66.6: "new pilot, close the old", 200: "new pilot, close the old",
	} {
		beside := rules.BesidePilot(&vehicles.Cut{Across: 127}, by)
		assert.Equal(t, want, beside.Takes(), "%v mm", by)
		assert.NotEmpty(t, beside.Why())
	}
	r := judged(t, func(j *vehicles.Job) {
		cut := *j.Cut
		cut.Drilled = &vehicles.Pair{survey.FromNumber(cut.At[0]+8, false), survey.FromNumber(cut.At[1], false)}
		j.Cut, j.Datum.HookBelow = &cut, vehicles.Number{}
	})
	row := rowOf(t, r, Saw, "moved")
	assert.InDelta(t, 8, row.Value.Value, 1e-6)
	assert.Equal(t, "8 mm, to saw round that centre: guide board", row.Said())
	assert.Contains(t, row.Why, "All is judged round the pilot hole")
	assert.Contains(t, row.Why, "sawn through with the same saw")
	_, there := Find(r, OldPilotBeside)
	assert.False(t, there, "nobody has moved it")
	for by, want := range map[float64]string{8: "guide board", 30: "new pilot", 60: "new pilot, guide board", 90: "new pilot, close the old"} {
		left := r.Job.LeavingPilot([2]float64{r.Plan.Cut.At.X + by, r.Plan.Cut.At.Y})
		moved := judged(t, func(j *vehicles.Job) { *j = left })
		_, there = Find(moved, PilotMoved)
		assert.False(t, there, "the hole is no guide any more")
		row = rowOf(t, moved, Saw, "old-pilot")
		assert.InDelta(t, by, row.Value.Value, 1e-6)
		assert.Equal(t, want, row.Text)
		assert.Equal(t, want != "new pilot" && want != "new pilot, close the old", strings.Contains(row.Why, "sawn through with the same saw"))
	}
	r = judged(t, func(j *vehicles.Job) { j.Cut = nil })
	assert.Equal(t, []string{"the cut: give it a place first"}, rowOf(t, r, Saw, "speed").Lacks)
}

// Its teeth go as fast whatever it is across.
func TestTheTeethGoAsFast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, across := rapid.Float64Range(5, 100).Draw(t, "v"), rapid.Float64Range(10, 300).Draw(t, "across")
		require.InEpsilon(t, v, SawSpeed(v, across)*math.Pi*across/1000, 1e-12)
	})
}
