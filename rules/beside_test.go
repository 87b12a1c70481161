package rules

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// By hand: a cut of 127, a kerf of 4 and a pilot of 6 leave a disc of 119, in which the old hole lies up to 59.5 - 3 = 56.5 mm from the middle.
func TestHowFarACentreMayGoBesideItsPilot(t *testing.T) {
	cut := &vehicles.Cut{Across: 127}
	assert.InDelta(t, 56.5, MostBeside(cut), 1e-9)
	assert.Zero(t, MostBeside(&vehicles.Cut{Across: 12}))
	for by, want := range map[float64]Beside{
		0: OnTheHole, 0.9: OnTheHole, 1: NearTheHole, 11.9: NearTheHole, 12: InTheDisc, 56.5: InTheDisc, 56.6: UnderTheTeeth, 66.5: UnderTheTeeth, 66.6: OutsideTheCut,
	} {
		assert.Equal(t, want, BesidePilot(cut, by), by)
	}
	mm := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	assert.Equal(t, "A centre beside the pilot hole takes a clamped guide board nearer than 12, a new pilot up to 56.5: the old hole goes with the disc", BesideInGeneral(cut, mm))
	assert.NotContains(t, BesideInGeneral(&vehicles.Cut{Across: 30}, mm), "disc")
}

// Whatever says how far the centre may go says the same, and the best move stays within it, told to hundredths.
func TestAllSayTheSameOfACentreBesideItsPilot(t *testing.T) {
	job := tidy()
	job.Obstructions = []vehicles.Obstruction{box("rail", "chassis rail", 900, 1500, 100, 160, 0, 90)}
	job = drilled(job, survey.FromNumber(1210, false), survey.FromNumber(234, false))
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	most := MostBeside(job.Cut)
	report, ok := PilotCheck(result)
	require.True(t, ok)
	assert.Equal(t, most, report.MayMove)
	assert.Equal(t, most, Marks(result).Pilot.MayMove)
	by := report.Move.By.Norm()
	assert.Greater(t, by, most-0.1, "away from the rail as far as may be")
	assert.Equal(t, InTheDisc, BesidePilot(job.Cut, by+0.01))
}
