package desk

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestFiguresStandUnderEachOtherByTheirPoint(t *testing.T) {
	for _, c := range []struct {
		name     string
		in, want []string
	}{
		{"lengths", []string{"-84.6", "620", "1198.7", "?"}, []string{" -84.6", " 620  ", "1198.7", "   ?  "}},
		{"uncertainties, one without", []string{"± 3", "± 12.5", ""}, []string{"±  3  ", "± 12.5", "      "}},
		{"what is asked", []string{"≥ 60", "≤ 1000", "≥ 80°"}, []string{"≥   60 ", "≤ 1000 ", "≥   80°"}},
		{"inches", []string{`25 11/16"`, `3/8"`, `-3/8"`, `7"`, `-1 1/2"`}, []string{`25 11/16"`, `   3/8"  `, `  -3/8"  `, ` 7"      `, `-1 1/2"  `}},
		{"words", []string{"15 mm", "9.21u²", "any depth", "?"}, []string{"  15 mm", "   9.21u²", "any depth", "   ?"}},
		{"other units", []string{"90.5°", "0.5/m", "9.21u²"}, []string{"90.5° ", " 0.5/m", " 9.21u²"}},
	} {
		column := FiguresOf(c.in...)
		for i, text := range c.in {
			got := column.Write(text)
			assert.Equal(t, strings.TrimRight(c.want[i], " "), strings.TrimRight(got, " "), c.name)
			assert.Equal(t, column.Width(), Width(got), "%s: %q", c.name, got)
		}
	}
	assert.Equal(t, "1234.5", FiguresOf("1.5").Write("1234.5"), "what is too wide for its column is whole")
}
