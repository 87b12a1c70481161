package drawing

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// How far the van's ends are drawn beyond the floor, mm: signs of which end is which, in the proportions of a van. Nobody
// measures them, and nothing is held to them.
const (
	bumperGap   = 25
	bumperDepth = 70
	bumperWider = 25 // than the floor, on either side
	noseDepth   = 260
	noseIn      = 30 // from the floor's sides
)

// ends draws a bumper along the rear end of the floor and a nose before its front.
func (d *drawer) ends() {
	low, high := d.plan.FloorMin, d.plan.FloorMax
	bumper := geometry.NewRectangle(
		geometry.Point{X: low.X - bumperGap - bumperDepth, Y: low.Y - bumperWider},
		geometry.Point{X: low.X - bumperGap, Y: high.Y + bumperWider}, 0)
	d.add(scene.Item{Role: scene.Bumper, Solid: d.through(bumper), Label: "bumper"})

	radius := noseDepth / 2.0
	x, in := high.X+radius, min(noseIn+radius, (high.Y-low.Y)/2)
	nose := geometry.NewLine([]geometry.Point{{X: x, Y: low.Y + in}, {X: x, Y: high.Y - in}}, radius)
	d.add(scene.Item{Role: scene.Nose, Solid: d.through(nose), Label: "nose"})
}
