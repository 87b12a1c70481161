package geometry_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Lengths and angles for people are written by survey.InMM, InMMTo and InDegrees, so that a figure and its unit stand together in one way. Whole numbers (%d) are constants of the program.
var (
	figureWithUnit = regexp.MustCompile(`%[-+# 0-9.\[\]]*[sqvgeEfFG]( mm\b| ?°)`)
	unitBehind     = regexp.MustCompile(`^( mm\b| ?°)`)
)

// unitsByHand are the texts that have a figure's unit in them for all that, with why.
var unitsByHand = map[string]string{
	"%s mm too close":                  anAmountShort,
	"%s mm too much":                   anAmountShort,
	"%s mm too near the rim":           anAmountShort,
	"collar %s mm too short":           anAmountShort,
	"ends %s mm too far under the van": anAmountShort,
	"sticks out %s mm too far":         anAmountShort,
	"falls %s mm per m too little":     anAmountShort,
	"points %s° too far forward":       anAmountShort,
	"points %s° too far up":            anAmountShort,
	"outlet %s° up from level":         "a detail of what hangs on a run is told by its row, whatever its unit",
}

const anAmountShort = "what a rule says of an amount, in its own unit, stands in the rule's file as one sentence"

// unitsIn are the texts of a file that put a unit behind a figure: within a format, or joined on by a plus.
func unitsIn(path string) (texts []string, err error) {
	file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BasicLit:
			if text := textOf(n); figureWithUnit.MatchString(text) {
				texts = append(texts, text)
			}
		case *ast.BinaryExpr:
			if text := textOf(n.Y); n.Op == token.ADD && unitBehind.MatchString(text) {
				texts = append(texts, text)
			}
		}
		return true
	})
	return texts, nil
}

func TestAFigureGetsItsUnitFromOneFormatter(t *testing.T) {
	met := map[string]bool{}
	eachSource(t, func(path string) error {
		texts, err := unitsIn(path)
		for _, text := range texts {
			met[text] = true
			assert.NotEmpty(t, unitsByHand[text], "%s: %q writes a unit by hand", path, text)
		}
		return err
	})
	for text, why := range unitsByHand {
		assert.True(t, met[text], "%q needs no leave any more: %s", text, why)
	}
}

func TestUnitsWrittenByHandAreSeen(t *testing.T) {
	texts, err := unitsIn("testdata/units.go.txt")
	require.NoError(t, err)
	assert.Equal(t, []string{"%s mm long", "turned %.1f°", "%[1]v mm", " mm", "° left"}, texts)
}
