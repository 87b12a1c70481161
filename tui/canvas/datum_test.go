package canvas

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
)

// The low end of a picture is the van's rear; with a datum line of its own that lies within the picture, at 0.
func TestTheRulerNamesTheDatumAndTheEndsTheVan(t *testing.T) {
	look := plainLook
	assert.Contains(t, Paint(van(scene.Below), 160, 47, look).lines()[0], "◄ bumper")
	look.Datum = "step of the sliding door"
	lines := Paint(van(scene.Below), 160, 47, look).lines()
	assert.Contains(t, lines[0], "◄ rear")
	amid := look
	amid.Camera = desk.Camera{Middle: pt(300, 0), Scale: 10}
	assert.Contains(t, strings.Join(Paint(van(scene.Below), 160, 47, amid).lines(), "\n"), "┴──step… 0┴")
	assert.NotContains(t, strings.Join(lines, "\n"), "bumper")
	assert.Contains(t, lines[45], "head at the rear")
	small := Paint(van(scene.Below), 60, 17, look).lines()
	assert.Contains(t, strings.Join(small, "\n"), "─0┴──", "no room for a name beside the figure")
}
