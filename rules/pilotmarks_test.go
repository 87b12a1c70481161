package rules

import (
	"encoding/json"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// pilotOff is the tidy job with its pilot hole so far ahead of the mark.
func pilotOff(t *testing.T, by float64) Result {
	job := tidy()
	at := job.Cut.At
	result, faults := Judge(drilled(job, survey.FromNumber(at[0]+by, false), survey.FromNumber(at[1], false)), Builtin())
	require.Empty(t, faults)
	return result
}

// The ring is drawn round the hole that is there, never round the centre that was meant: both have a row, by names that nobody takes for each
// other, and the hole's readings are those of the plate's middle. Programs get the marks of the contract alone.
func TestAMeasuredPilotHasItsOwnReadings(t *testing.T) {
	for _, by := range []float64{2, 7} {
		r := pilotOff(t, by)
		sheet := Marks(r)
		require.Len(t, sheet.Holes, 1)
		listed := sheet.Listed()
		assert.Equal(t, []string{"cut centre as meant", "pilot hole as drilled"}, []string{listed[0].Words, listed[1].Words})
		assert.Len(t, listed, len(sheet.Marks)+1+len(sheet.Stubs))
		meant, hole := listed[0], listed[1]
		assert.InDelta(t, by, hole.Below.Bumper-meant.Below.Bumper, 0.2, "a tape that slopes says a little less")
		assert.InDelta(t, by, hole.Above.X-meant.Above.X, 1e-6)
		assert.Zero(t, hole.Above.Sigma, "nobody marks a hole")
		var x, y float64
		for _, m := range sheet.Marks[1:5] {
			x, y = x+m.Above.X/4, y+m.Above.Y/4
		}
		assert.InDelta(t, x, hole.Above.X, 1e-6, "the plate lies round it")
		assert.InDelta(t, y, hole.Above.Y, 1e-6)

		text, err := MarksJSON(r)
		require.NoError(t, err)
		var out struct{ Marks []struct{ Name string } }
		require.NoError(t, json.Unmarshal(text, &out))
		require.Len(t, out.Marks, len(sheet.Marks))
		assert.Equal(t, "cut centre", out.Marks[0].Name)
		assert.NotContains(t, string(text), "as drilled")
	}
	before := Marks(pilotless(t))
	assert.Empty(t, before.Holes)
	assert.Equal(t, "cut centre", before.Marks[0].Words)
}

func pilotless(t *testing.T) Result {
	result, faults := Judge(tidy(), Builtin())
	require.Empty(t, faults)
	return result
}

// A hole that the centre was moved from is there still: where it is and how far beside is told, and a mark has no uncertainty of it.
func TestTheOldPilotIsFoundAgain(t *testing.T) {
	job := drilled(tidy(), survey.FromNumber(1210, false), survey.FromNumber(234, false))
	for by, want := range map[float64]Beside{0.5: OnTheHole, 8: NearTheHole, 30: InTheDisc, 60: UnderTheTeeth, 90: OutsideTheCut} {
		at := [2]float64{1210 + by, 234}
		left := job.LeavingPilot(at)
		r, faults := Judge(left, Builtin())
		require.Empty(t, faults)
		off, beside, there := OldPilot(&r)
		require.True(t, there)
		assert.InDelta(t, by, off, 0.2)
		assert.Equal(t, want, beside, fmt.Sprint(by))
		assert.False(t, r.Plan.Cut.Drilled, "all is judged round the new centre")
		sheet := Marks(r)
		require.Len(t, sheet.Holes, 1)
		assert.Equal(t, "old pilot hole", sheet.Holes[0].Words)
	}
	_, _, there := OldPilot(&Result{})
	assert.False(t, there)
	assert.Nil(t, vehicles.Job{}.LeavingPilot([2]float64{}).Cut, "without a cut nothing is left")
}
