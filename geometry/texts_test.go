package geometry_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// longText is from how many letters on a text has one home: it is a sentence or much of one, and one that was mended in one file
// alone would contradict the other.
const longText = 25

// twoHomes are the long texts that may stand in two files, with why.
var twoHomes = map[string]string{
	`json:"as_it_is,omitempty"`: "the key of a field in two answers: a tag can be no constant",
}

// textsOf are the long texts of a file of Go, without the paths that it imports.
func textsOf(path string) (texts []string, err error) {
	file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	ast.Inspect(file, func(n ast.Node) bool {
		if _, imports := n.(*ast.ImportSpec); imports {
			return false
		}
		if literal, is := n.(*ast.BasicLit); is {
			if text := textOf(literal); utf8.RuneCountInString(text) >= longText {
				texts = append(texts, text)
			}
		}
		return true
	})
	return texts, nil
}

// textOf is what a literal of a text says; "" of any other expression.
func textOf(e ast.Expr) string {
	literal, is := e.(*ast.BasicLit)
	if !is || literal.Kind != token.STRING {
		return ""
	}
	text, _ := strconv.Unquote(literal.Value)
	return text
}

// eachSource goes through the files of Go of the whole program, tests apart.
func eachSource(t *testing.T, look func(path string) error) {
	for _, tier := range tiers {
		require.NoError(t, filepath.WalkDir(filepath.Join("..", tier), func(path string, _ fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			return look(path)
		}))
	}
}

func TestALongTextStandsInOneFile(t *testing.T) {
	files := map[string][]string{}
	eachSource(t, func(path string) error {
		texts, err := textsOf(path)
		for _, text := range texts {
			if !slices.Contains(files[text], path) {
				files[text] = append(files[text], path)
			}
		}
		return err
	})
	require.Greater(t, len(files), 1000, "the texts of the whole program")
	for text, in := range files {
		if twoHomes[text] == "" {
			assert.Len(t, in, 1, "%q has two homes", text)
		}
	}
	for text, why := range twoHomes {
		assert.Greater(t, len(files[text]), 1, "%q needs no leave any more: %s", text, why)
	}
}
