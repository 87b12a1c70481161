package survey

import (
	"math"
	"strconv"
	"strings"
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
	assert.Equal(t, []string{"300 mm (12 in)", "2000 mm (79 in)"}, []string{InMMAndInches(300), InMMAndInches(2000)})
	assert.Equal(t, []any{"mm", "mm", 1.0}, []any{Millimetres.String(), Millimetres.Sign(), Millimetres.Size()})
	assert.Equal(t, []any{"inches", "in", 25.4}, []any{Inches.String(), Inches.Sign(), Inches.Size()})
}

func TestOnlyTextsThatAreThereAreJoined(t *testing.T) {
	assert.Equal(t, "a, b", Joined(", ", "", "a", "", "b", ""))
	assert.Equal(t, []string{"a", ""}, []string{Joined(", ", "a"), Joined(", ", "", "")})
}

// What rounds to 0 is told with the decimals that it takes.
func TestALittleIsNotNothing(t *testing.T) {
	for v, want := range map[float64]string{4.55: "4.6", -0.05: "-0.1", 0.04: "0.04", -0.0004: "-0.0004", 2e-9: "0.000000002", 0: "0"} {
		assert.Equal(t, want, Told(v))
	}
}

// A figure to so many decimals is the nearest there is, to half of the last of them; what Go's own formatter parses of it is the same number.
func TestFiguresAreTheNearestOfTheirDecimals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, n := rapid.Float64Range(-1e5, 1e5).Draw(t, "v"), rapid.IntRange(0, 9).Draw(t, "decimals")
		fixed, err := strconv.ParseFloat(Fixed(v, n), 64)
		require.NoError(t, err)
		assert.InDelta(t, v, fixed, 0.5*math.Pow10(-n)+1e-10)
		short, err := strconv.ParseFloat(FigureTo(v, n), 64)
		require.NoError(t, err)
		assert.Equal(t, [2]float64{fixed, fixed}, [2]float64{short, Rounded(v, n)})
	})
	for said, is := range map[string]string{
		"2.5 to 0":   FigureTo(2.5, 0) + "|3", // halves away from zero
		"-2.5 to 0":  FigureTo(-2.5, 0) + "|-3",
		"-0.04 to 1": Fixed(-0.04, 1) + "|0.0",
		"0.125 to 2": FigureTo(0.125, 2) + "|0.13",
		"1.50 to 2":  FigureTo(1.5, 2) + "|1.5",
		"1.5 of 2":   Fixed(1.5, 2) + "|1.50",
		"120 to 0":   FigureTo(120, 0) + "|120",
	} {
		got, want, _ := strings.Cut(is, "|")
		assert.Equal(t, want, got, said)
	}
}
