package vector

import (
	"image/color"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// Screen is what a picture on a screen has that one on paper does without.
type Screen struct {
	Ring     float64     // the least radius of the ring that stands for the cut, mm of the board: smaller it would not be seen
	Width    float64     // of the ring's line
	Thin     float64     // what runs along a line and is thinner than this is drawn as a line, mm of the board
	Conflict color.NRGBA // of what lies in the ring of a thing that is foul
	Foul     *Foul       // how a thing that is foul is drawn round the ring; nil for no other way than elsewhere
	OnFloor  func()      // draws what lies on the floor, under all else; nil for nothing
	Words    []Word      // what is written, and where: nothing else is
}

// onFace tells whether an item on a screen has a face: that tells it from the others, so that its line goes on unbroken, unless it
// is not measured, and its rim is outside.
func (d *drawing) onFace(p *part) bool {
	return d.look.Screen != nil && p.Primitive == scene.Area && p.ink.Ground.A > 0 && !d.slender(p)
}

// leastSlender is how much wider than other lines one is that stands for a thing.
const leastSlender = 1.4

// slender tells whether an area on a screen is drawn as a line.
func (d *drawing) slender(p *part) bool {
	return d.look.Screen != nil && p.Primitive == scene.Area && p.Area.Shape == geometry.Line && 2*p.Area.Radius < d.look.Screen.Thin*d.frame.Scale
}

// faceDashes are the dashes of the line round a face.
func (d *drawing) faceDashes(p *part, width float64) []float64 {
	if p.Unsure {
		return dashesOf(scene.Dotted, width)
	}
	return nil
}

// onFloor draws what lies on the floor, once that is there.
func (d *drawing) onFloor(p *part) {
	if screen := d.look.Screen; screen != nil && screen.OnFloor != nil && p.Role == scene.Floor {
		screen.OnFloor()
	}
}
