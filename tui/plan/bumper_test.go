package plan

import (
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/desk"
)

// Wherever one looks, at whichever sample job, it is said where its rear end is: its name stands on the bumper, or an arrow with it at the edge
// of the picture, once.
func TestTheRearEndIsNamedWhereverOneLooks(t *testing.T) {
	files, err := filepath.Glob("../../testdata/cases/*.toml")
	require.NoError(t, err)
	seen, beyond, broken := 0, 0, 0
	for _, file := range files {
		s := sample(t, file)
		if s.Plan.FloorMax == s.Plan.FloorMin {
			continue
		}
		o := Options{Shown: drawing.Worst(s.Result.Findings, func(*rules.Finding) bool { return true }, 3)}
		for _, size := range [][2]int{{60, 7}, {57, 11}, {57, 27}, {100, 47}} {
			pane := New().Sized(size[0], size[1])
			for _, camera := range camerasOver(pane, s, o) {
				s.Camera = camera
				picture := ansi.Strip(pane.View(s, size[0], size[1], o))
				lay := pane.lay(s, o)
				low, high := lay.Corners()
				rear := 0.0 // from which all is measured
				if s.Job.Datum.Name != "" || s.Job.Floor.From < 0 {
					rear = s.Job.Floor.From - 40
				}
				word, brief, name := "rear bumper", "bumper", "BUMPER"
				if s.Job.Datum.Name != "" {
					word, brief, name = "rear end", "rear end", "REAR"
				}
				switch {
				case low.X > rear+1:
					beyond++
					assert.Regexp(t, "◄ ("+word+"|"+brief+`) \d+ mm out of view|◄ ?`+brief+` \d+ .*mm out of view`, picture, "with how far: %s %v %v\n%s", file, size, camera, picture)
					if regexp.MustCompile("[╱╲]{2}").MatchString(down(picture)) {
						broken++
					}
					assert.NotContains(t, down(picture), name, "it is not there: %s %v %v\n%s", file, size, camera, picture)
				case size[1] > 7 && low.X < rear-100 && low.Y < 0 && high.Y > 0: // in fewer rows a ring may hide it
					seen++
					assert.True(t, strings.Contains(down(picture), name) || strings.Contains(picture, word), "%s %v %v\n%s", file, size, camera, picture)
				}
			}
		}
	}
	assert.Greater(t, seen, 20)
	assert.Greater(t, beyond, 20)
	assert.Greater(t, broken, 20)
}

// down is a picture read column after column.
func down(picture string) string {
	var columns []string
	for _, line := range strings.Split(picture, "\n") {
		for i, r := range []rune(line) {
			if i == len(columns) {
				columns = append(columns, "")
			}
			columns[i] += string(r)
		}
	}
	return strings.Join(columns, "\n")
}

// camerasOver look at the whole floor, at a few parts of it and, nearer, at the cut.
func camerasOver(pane Pane, s desk.State, o Options) []desk.Camera {
	cameras := []desk.Camera{{Whole: true}}
	f := s.Job.Floor
	for _, share := range []float64{0, 0.5, 1} {
		for _, scale := range []float64{4, 10, 25} {
			cameras = append(cameras, desk.Camera{View: scene.Below, Middle: geometry.Point{X: f.From + share*f.Length}, Scale: scale})
		}
	}
	if s.Job.Cut != nil {
		cameras = append(cameras, pane.atCut(s))
	}
	return cameras
}
