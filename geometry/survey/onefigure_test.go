package survey

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ownFigures writes a number by hand: to so many decimals, or as a library has it.
var ownFigures = regexp.MustCompile(`%[+0-9]*\.[0-9*]+[fge]|FormatFloat\(`)

// What people read has one way of writing figures, FigureTo and Fixed here: halves go one way on screen, paper and command line. What
// quotes a file's own number, and says so, does not round it.
func TestFiguresAreWrittenInOnePlace(t *testing.T) {
	var own []string
	for _, room := range []string{"cmd", "tui", "rules", "vehicles"} {
		require.NoError(t, filepath.WalkDir(filepath.Join("..", "..", room), func(path string, entry fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			text, err := os.ReadFile(path)
			for n, line := range strings.Split(string(text), "\n") {
				if ownFigures.MatchString(line) && !strings.HasSuffix(path, filepath.Join("vehicles", "found.go")) {
					own = append(own, path+":"+Exact(float64(n+1))+": "+line)
				}
			}
			return err
		}))
	}
	assert.Empty(t, own)
}
