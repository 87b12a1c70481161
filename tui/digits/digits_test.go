package digits

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
)

func TestBigIsAsDrawn(t *testing.T) {
	var out strings.Builder
	for size := 1; size <= largest; size++ {
		for _, text := range []string{"0123456789", "1295.9", "-38", `25 11/16"`} {
			rows, ok := Big(text, size)
			require.True(t, ok)
			out.WriteString(strings.Join(rows, "|\n") + "|\n\n")
		}
	}
	golden := filepath.Join("testdata", "big.txt")
	if os.Getenv("UPDATE_GOLDEN") != "" {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(golden, []byte(out.String()), 0o644))
	}
	want, err := os.ReadFile(golden)
	require.NoError(t, err)
	assert.Equal(t, string(want), out.String())
}

// Segments a seven-segment figure lights, after the lettering a to g of the trade's displays (from memory): a top, b
// upper right, c lower right, d bottom, e lower left, f upper left, g middle. The second set is the other usual way to
// write the figure. A 7 here leans and a 1 is a stem with a flag, so both are left to the picture.
var segments = map[rune][]string{
	'0': {"abcdef"}, '2': {"abdeg"}, '3': {"abcdg"}, '4': {"bcfg"}, '5': {"acdfg"}, '6': {"acdefg", "cdefg"},
	'8': {"abcdefg"}, '9': {"abcdfg", "abcfg"},
}

func TestFiguresLightTheirSegments(t *testing.T) {
	at := map[rune][2]int{'a': {0, 1}, 'b': {1, 2}, 'c': {3, 2}, 'd': {4, 1}, 'e': {3, 0}, 'f': {1, 0}, 'g': {2, 1}}
	for figure, sets := range segments {
		lit := ""
		for _, s := range "abcdefg" {
			if glyphs[figure][at[s][0]][at[s][1]] == '#' {
				lit += string(s)
			}
		}
		assert.Contains(t, sets, lit, "figure %c", figure)
	}
}

func TestNoTwoFiguresLookAlike(t *testing.T) {
	seen := map[[5]string]rune{}
	for r, g := range glyphs {
		assert.NotContains(t, seen, g, "%c", r)
		seen[g] = r
	}
}

func TestEveryLengthFitsAnEightyColumnHand(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := rapid.Float64Range(-20000, 20000).Draw(t, "mm")
		units := rapid.SampledFrom([]survey.Units{survey.Millimetres, survey.Inches}).Draw(t, "units")
		text := survey.Format(mm, units)
		rows, ok := Big(text, 2)
		require.True(t, ok, text)
		require.Len(t, rows, 5)
		for _, row := range rows {
			require.Equal(t, len([]rune(rows[0])), len([]rune(row)), text)
		}
		if mm >= 0 {
			require.LessOrEqual(t, len([]rune(rows[0])), 60, text)
		}
	})
}

func TestFitTakesTheLargestThatFits(t *testing.T) {
	assert.Len(t, Fit("645", 200, 40), 15)
	assert.Len(t, Fit("645", 200, 9), 8)
	assert.Len(t, Fit("645", 20, 40), 5)
	assert.Len(t, Fit("645", 12, 40), 3)
	assert.Equal(t, []string{"645"}, Fit("645", 8, 40))
	assert.Equal(t, []string{"645"}, Fit("645", 80, 2))
	assert.Equal(t, []string{"NaN"}, Fit("NaN", 80, 20))
	assert.Equal(t, []string{""}, Fit("", 80, 20))
}
