package vector

import (
	"image/color"

	"bench.example/undermark/geometry/scene"
)

// The colours of paper.
var (
	Ink   = color.NRGBA{A: 255}
	White = color.NRGBA{R: 255, G: 255, B: 255, A: 255}
)

// Black is the look for paper: black only, so that pens, patterns and words say all.
func Black(letters float64, length func(scene.Measure) string, name func(string) string) Look {
	return Look{
		Paper: White, Letters: letters, Length: length, Name: name, Widths: PaperWidths,
		Colours: func(it *scene.Item) Colours {
			c := Colours{Line: Ink, Fill: Ink, Words: Ink}
			if it.Primitive == scene.Area && it.Role != scene.Floor {
				c.Ground = White // what lies behind an area is not seen through it
			}
			return c
		},
	}
}
