package plan

import (
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
	"bench.example/undermark/tui/pixels"
)

// shown is what a picture in pixels is of.
type shown struct {
	plan  scene.Scene
	lay   canvas.Map
	texts []canvas.Text
	shade *canvas.Shade
	look  looks.Look
}

// inPixels has the terminal show the picture of a canvas in pixels, where it has room for that.
func inPixels(c *canvas.Canvas, plan scene.Scene, look canvas.Look, s desk.State) {
	paint := c.Picture(plan, look, s.Settings.Look.Table())
	if !c.Pictured() {
		return
	}
	s.Pixels.Show(pixels.Picture{
		Cols: c.Cols, Rows: c.Rows, Paint: paint,
		Of: shown{plan: plan, lay: c.Map, texts: c.Texts, shade: look.Shade, look: s.Settings.Look},
	})
}
