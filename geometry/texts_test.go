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
		if literal, is := n.(*ast.BasicLit); is && literal.Kind == token.STRING {
			if text, _ := strconv.Unquote(literal.Value); utf8.RuneCountInString(text) >= longText {
				texts = append(texts, text)
			}
		}
		return true
	})
	return texts, nil
}

// textsIn tells of each long text below a folder which files hold it, tests apart.
func textsIn(t *testing.T, folder string) map[string][]string {
	files := map[string][]string{}
	require.NoError(t, filepath.WalkDir(folder, func(path string, _ fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		texts, err := textsOf(path)
		for _, text := range texts {
			if !slices.Contains(files[text], path) {
				files[text] = append(files[text], path)
			}
		}
		return err
	}))
	return files
}

func TestALongTextStandsInOneFile(t *testing.T) {
	files := map[string][]string{}
	for _, tier := range tiers {
		for text, in := range textsIn(t, filepath.Join("..", tier)) {
			files[text] = append(files[text], in...)
		}
	}
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
