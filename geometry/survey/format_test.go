package survey

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		mm             float64
		metric, inches string
	}{
		{652, "652", `25 11/16"`},
		{652.5, "652.5", `25 11/16"`},
		{652.04, "652", `25 11/16"`},
		{0, "0", `0"`},
		{-0.04, "0", `0"`},
		{25.4, "25.4", `1"`},
		{-25.4, "-25.4", `-1"`},
		{-9.525, "-9.5", `-3/8"`},
		{12.7, "12.7", `1/2"`},
		{1.5875, "1.6", `1/16"`},
		{304.8, "304.8", `12"`},
		{0.9, "0.9", `1/16"`},
		{-0.8, "-0.8", `-1/16"`},
		{-0.7, "-0.7", `0"`},
		{math.Inf(1), "+Inf", "+Inf"},
		{math.Inf(-1), "-Inf", "-Inf"},
	} {
		assert.Equal(t, c.metric, Format(c.mm, Millimetres))
		assert.Equal(t, c.inches, Format(c.mm, Inches))
	}
}

// What is shown in inches reads back to within half a sixteenth.
func TestFormatInchesReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := rapid.Float64Range(0, 19000).Draw(t, "mm")
		r, err := Parse(Format(mm, Inches), X)
		require.NoError(t, err)
		assert.InDelta(t, mm, r.Length, 25.4/32+1e-9)
	})
}

func TestFiguresAndUnits(t *testing.T) {
	for v, c := range map[float64][2]string{652: {"652", "652"}, 4.55: {"4.55", "4.6"}, -0.04: {"-0.04", "0"}, math.Copysign(0, -1): {"0", "0"}, 1e21: {"1000000000000000000000", "1000000000000000000000"}} {
		assert.Equal(t, c, [2]string{Exact(v), Figure(v)})
		assert.Equal(t, c[1]+" mm", InMM(v))
	}
	assert.Equal(t, []any{"mm", "mm", 1.0}, []any{Millimetres.String(), Millimetres.Sign(), Millimetres.Size()})
	assert.Equal(t, []any{"inches", "in", 25.4}, []any{Inches.String(), Inches.Sign(), Inches.Size()})
}
