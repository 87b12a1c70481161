package geometry_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What a number of a job may be stands in vehicles/limits.go, and a number that is typed is read by form.Number or, with a unit or a
// start, by the grammar of readings. A limit or a reader of its own beside a field would take what the file refuses, or tell it otherwise.

// readers are the files that make a number of a text themselves, with why.
var readers = map[string]string{
	"geometry/survey/reading.go": "the grammar of readings",
	"tui/form/number.go":         "the one reader of plain numbers",
	"cmd/undermark/route.go":     "places of a command line, parted by commas and without limits",
	"cmd/undermark/suggest.go":   "a place of a command line, parted by a comma and without limits",
}

// bounds are the numbers that limit a job's numbers. One that is common is a limit only where something is compared with it, or bears its name.
var bounds = []struct {
	value  float64
	common bool
}{{180, true}, {20000, false}, {36000, false}, {1e6, false}, {1e9, false}}

// noBounds are such numbers in the screens and commands that limit no number of a job: the file and the number, with why.
var noBounds = map[string]string{
	"tui/canvas/hides.go 20000": "how many ends of lines are looked at",
	"tui/aloud/areas.go 1e6":    "mm² of a square metre",
}

// ownLimits are the bounds of the job's numbers that a file writes itself, and where it makes a number of a text.
func ownLimits(path string) (limits []string, reads bool, err error) {
	file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
	if err != nil {
		return nil, false, err
	}
	literal := func(e ast.Node, compared bool) {
		if sign, is := e.(*ast.UnaryExpr); is {
			e = sign.X
		}
		number, is := e.(*ast.BasicLit)
		if !is || number.Kind != token.INT && number.Kind != token.FLOAT {
			return
		}
		v, _ := strconv.ParseFloat(strings.ReplaceAll(number.Value, "_", ""), 64)
		for _, b := range bounds {
			if v == b.value && b.common == compared {
				limits = append(limits, number.Value)
			}
		}
	}
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BinaryExpr:
			if slices.Contains([]token.Token{token.LSS, token.LEQ, token.GTR, token.GEQ}, n.Op) {
				literal(n.X, true)
				literal(n.Y, true)
			}
		case *ast.ValueSpec:
			for _, value := range n.Values {
				literal(value, true)
			}
		case *ast.BasicLit:
			literal(n, false)
		case *ast.SelectorExpr:
			of, is := n.X.(*ast.Ident)
			reads = reads || is && of.Name == "strconv" && n.Sel.Name == "ParseFloat"
		}
		return true
	})
	return limits, reads, nil
}

func TestALimitAndAReaderOfNumbersHaveOneHome(t *testing.T) {
	metReaders, metBounds := map[string]bool{}, map[string]bool{}
	eachSource(t, func(path string) error {
		limits, reads, err := ownLimits(path)
		path, _ = filepath.Rel("..", path)
		path = filepath.ToSlash(path)
		if reads {
			metReaders[path] = true
			assert.NotEmpty(t, readers[path], "%s reads numbers by itself: form.Number reads what is typed", path)
		}
		if strings.HasPrefix(path, "tui/") || strings.HasPrefix(path, "cmd/") {
			for _, limit := range limits {
				metBounds[path+" "+limit] = true
				assert.NotEmpty(t, noBounds[path+" "+limit], "%s: %s limits a number of a job, and stands in vehicles/limits.go", path, limit)
			}
		}
		return err
	})
	for path, why := range readers {
		assert.True(t, metReaders[path], "%s needs no leave any more: %s", path, why)
	}
	for at, why := range noBounds {
		assert.True(t, metBounds[at], "%s needs no leave any more: %s", at, why)
	}
}

func TestLimitsAndReadersOfTheirOwnAreSeen(t *testing.T) {
	limits, reads, err := ownLimits("testdata/limits.go.txt")
	require.NoError(t, err)
	assert.True(t, reads)
	assert.Equal(t, []string{"1e6", "180.0", "180", "20_000"}, limits)
}
