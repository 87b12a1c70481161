package plan

import (
	"path/filepath"
	"regexp"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// A pipe or wire that can kill where a saw meets it is a heavy stroke, and the row below the plan says what such strokes are, where there is
// room for it; where there is none nothing is said of any.
func TestPipesThatCanKillAreHeavyAndExplained(t *testing.T) {
	files, err := filepath.Glob("../../testdata/cases/*.toml")
	require.NoError(t, err)
	with, without := 0, 0
	for _, file := range files {
		s := sample(t, file)
		if s.Plan.Obstructions == nil {
			continue
		}
		deadly := false
		for _, o := range s.Job.Obstructions {
			deadly = deadly || vehicles.KindOf(o.Kind).DeadlyPipe()
		}
		heavy := false
		for _, it := range drawing.Draw(s.Result, drawing.Options{Selected: -1}).Items {
			heavy = heavy || it.Role == scene.Lines && it.Weight() == scene.Heavy
		}
		assert.Equal(t, deadly, heavy, file)
		for _, size := range [][2]int{{60, 17}, {57, 27}, {100, 27}, {160, 47}} {
			s.Camera = desk.Camera{Whole: true}
			picture := ansi.Strip(New().Sized(size[0], size[1]).View(s, size[0], size[1], Options{}))
			switch said := regexp.MustCompile(canvas.HeavyLine + " [a-z]").MatchString(picture); {
			case !deadly:
				without++
				assert.False(t, said, "%s %v\n%s", file, size, picture)
			case said:
				with++
			}
		}
	}
	assert.Greater(t, without, 3)
	t.Logf("explained in %d pictures", with)
	assert.Greater(t, with, 10)
}
