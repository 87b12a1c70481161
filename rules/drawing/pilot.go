package drawing

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
)

// mayMove draws the disc in which the cut's centre may still go once the pilot hole is drilled.
func (d *drawer) mayMove() {
	if !d.opts.MayMove || !d.plan.Cut.Drilled {
		return
	}
	if by := rules.MostBeside(d.result.Job.Cut); by > 0 {
		d.add(scene.Item{
			Role: scene.Wish, Primitive: scene.Outline, Solid: d.through(geometry.NewRound(d.plan.Cut.At, by)), Label: "centre may go",
		})
	}
}
