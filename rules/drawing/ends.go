package drawing

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// How far the van's ends are drawn beyond the floor, mm: signs of which end is which, in the proportions of a van. Nobody
// measures them, and nothing is held to them.
const (
	bumperGap   = 60 // a bar stands off what it guards
	bumperDepth = 90
	bumperWider = 25 // than the floor, on either side
	noseDepth   = 205
	noseIn      = 30 // from the floor's sides
)

// ends draws a bumper bar, its ends rounded, along the rear end of the floor and a nose before its front.
func (d *drawer) ends() {
	low, high := d.plan.FloorMin, d.plan.FloorMax
	round, aside := bumperDepth/2.0, bumperWider-bumperDepth/2.0
	back := low.X - bumperGap - round
	bumper := geometry.NewLine([]geometry.Point{{X: back, Y: low.Y - aside}, {X: back, Y: high.Y + aside}}, round)
	d.add(scene.Item{Role: scene.Bumper, Solid: d.through(bumper), Label: "bumper"})

	radius := noseDepth / 2.0
	x, in := high.X+radius, min(noseIn+radius, (high.Y-low.Y)/2)
	nose := geometry.NewLine([]geometry.Point{{X: x, Y: low.Y + in}, {X: x, Y: high.Y - in}}, radius)
	d.add(scene.Item{Role: scene.Nose, Solid: d.through(nose), Label: "nose"})
}
