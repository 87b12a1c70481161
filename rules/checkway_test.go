package rules

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// Pins stand at 0, 600 either way; the floor's front corners at 3040, 850. Each length to check that a fitting takes the room of is known, and
// the place of the centreline that shows the same lies before what stands there: its tape by hand.
func TestWhatStandsWhereALengthIsChecked(t *testing.T) {
	blocked := func(r *Result) (names []string) {
		for _, c := range Marks(*r).Checks {
			if len(OnCheck(r, c)) > 0 {
				names = append(names, c.From+" to "+c.To)
			}
		}
		return names
	}
	free := shelved(t, "[900, 1100]", "[700, 800]", "[0, 500]")
	assert.Empty(t, blocked(&free))
	across := shelved(t, "[1500, 1700]", "[-850, 850]", "[0, 500]")
	assert.Equal(t, []string{"left pin to floor, front right", "right pin to floor, front left"}, blocked(&across))
	even, ok := EvenPlace(&across)
	require.True(t, ok)
	assert.Equal(t, 1450.0, even.Ahead, "the last whole step of 50 before the shelf and the blade's half width")
	assert.InDelta(t, math.Hypot(1450, 600), even.Length, 1e-9)
	near := shelved(t, "[0, 100]", "[-100, 100]", "[0, 500]")
	assert.Equal(t, []string{"left pin to right pin"}, blocked(&near))
	wall := shelved(t, "[550, 700]", "[-850, 850]", "[0, 500]")
	_, ok = EvenPlace(&wall)
	assert.False(t, ok, "nearer than the pins are out nothing shows")
}

// A fitting counts once for each tape that it stands in: across all of the floor, for all of them but those along it and between the pins.
func TestHowManyTapesAFittingStandsIn(t *testing.T) {
	r := shelved(t, "[400, 500]", "[-850, 850]", "[0, 500]")
	sheet := Marks(r)
	require.Len(t, sheet.Marks, 1)
	require.Len(t, sheet.Checks, 3)
	assert.Equal(t, 3+2, TapesMet(&r, sheet, 0), "datum and both pins to the mark, both diagonals")
}

// Along a tape a mark is as sure as the tape's way has it: from the datum and the sides as the axes are, from a pin between both.
func TestHowSureAMarkIsAlongATape(t *testing.T) {
	r := shelved(t, "[900, 1100]", "[700, 800]", "[0, 500]")
	mark := Marks(r).Marks[0]
	mark.Above.Sigma = [2]float64{3, 1}
	for way, want := range map[TapeWay]float64{
		FromDatum: 3, FromLeft: 1, FromRight: 1, FromLeftPin: math.Hypot(1000*3, 400) / math.Hypot(1000, 400), FromRightPin: math.Hypot(1000*3, 800) / math.Hypot(1000, 800),
	} {
		assert.InDelta(t, want, SigmaOf(&r, mark, way), 1e-9, "%d", way)
	}
	mark.Above = nil
	assert.Zero(t, SigmaOf(&r, mark, FromLeftPin))
}

// A pilot that came out beside its mark moves all that the cut carries by as much, and nothing else: the centre stays where it is meant.
func TestWhatMovesWithThePilot(t *testing.T) {
	job := vehicles.Demo()
	judged := func(job vehicles.Job) *Result {
		r, faults := Judge(job, Builtin())
		require.Empty(t, faults)
		return &r
	}
	assert.Empty(t, Marks(*judged(job)).Moved)
	at := job.Cut.At
	cut := *job.Cut
	cut.Drilled = &vehicles.Pair{survey.FromNumber(at[0]+4, false), survey.FromNumber(at[1]-3, false)}
	sheet := Marks(*judged(job.WithCut(cut)))
	var names []string
	for _, m := range sheet.Moved {
		names = append(names, m.Name)
		assert.InDelta(t, 0, m.By.Sub(sheet.Pilot.Off).Norm(), 1e-9, m.Name)
	}
	assert.Equal(t, []string{"plate 1", "plate 2", "plate 3", "plate 4", "bolt 1", "bolt 2", "bolt 3", "bolt 4"}, names)
}
