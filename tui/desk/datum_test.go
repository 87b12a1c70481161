package desk

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/vehicles"
)

func TestTheFirstWordsOfANameStandForIt(t *testing.T) {
	for w, short := range map[int]string{24: "step of the sliding door", 23: "step of the sliding…", 12: "step of the…", 11: "step of…", 6: "step…", 4: "ste…", 1: "…"} {
		got := FirstWords("step of the sliding door", w)
		assert.Equal(t, short, got)
		assert.LessOrEqual(t, Width(got), w)
	}
	assert.Equal(t, "bumper", Datum(&vehicles.Datum{}, 9))
}

// A name takes no more room in a drawing than the bumper does, and no less.
func TestADrawingNamesTheDatum(t *testing.T) {
	drawing := "BUMPER LINE ┃\nBUMPER │"
	assert.Equal(t, "bumper line ┃\nbumper │", DatumIn(drawing, &vehicles.Datum{}))
	assert.Equal(t, "step of…    ┃\nstep…  │", DatumIn(drawing, &vehicles.Datum{Name: "step of the sliding door"}))
}

func TestWhereXLies(t *testing.T) {
	assert.Equal(t, "x 1210", AtX(1210, Millimetres))
	assert.Equal(t, "x -420, behind", AtX(-420, Millimetres))
	assert.Equal(t, "x 0", AtX(-0.001, Millimetres))
}

// A minus at the end of one row would leave the number in the next without it.
func TestAMinusStaysWithItsNumber(t *testing.T) {
	text := "From below: step of the sliding door -421.9 behind, (-3), left-hand, 590"
	for w := 8; w < 80; w++ {
		rows := Wrap(text, w)
		for _, row := range rows {
			assert.False(t, strings.HasSuffix(row, " -") || strings.HasSuffix(row, "(-"), "%d: %q", w, row)
			assert.LessOrEqual(t, Width(row), w)
		}
		assert.Equal(t, strings.ReplaceAll(text, " ", ""), strings.ReplaceAll(strings.Join(rows, ""), " ", ""))
	}
}
