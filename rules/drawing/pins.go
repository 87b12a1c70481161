package drawing

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// arcTurn is how far an arc from a pin goes on either side of the mark, degrees.
const arcTurn = 12

// pins draws the two datum pins and the arcs that cross on the first mark, which is taped from above, each with what the tape says. They
// lie where the frame above has them.
func (d *drawer) pins() {
	if !d.opts.Pins || len(d.opts.Marks) == 0 || d.opts.Marks[0].Above == nil {
		return
	}
	mark, fit := d.opts.Marks[0], d.plan.Fit
	shift, out := d.job.Datum.ShiftAbove.Value, d.job.Pins()
	for _, pin := range []struct {
		name string
		at   geometry.Point
		tape float64
	}{
		{"left pin", geometry.Point{X: shift, Y: out}, mark.Above.PinLeft}, {"right pin", geometry.Point{X: shift, Y: -out}, mark.Above.PinRight},
	} {
		at := fit.Down(pin.at)
		d.add(scene.Item{Role: scene.Mark, Primitive: scene.Spot, At: at.At(0), Label: pin.name})
		d.add(scene.Item{
			Role: scene.Mark, Primitive: scene.Stroke, Path: arcRound(at, mark.Plan), Label: pin.name,
			Measure: &scene.Measure{Value: pin.tape, Unit: scene.MM, Bare: true},
		})
	}
}

// arcRound is the arc round one place through another, in two pieces that meet there.
func arcRound(middle, through geometry.Point) scene.Path {
	arm := through.Sub(middle)
	radius := arm.Norm()
	if radius == 0 {
		return scene.Straight(through.At(0))
	}
	piece := func(from, to geometry.Point) geometry.Piece {
		out := from.Scale(1 / radius)
		return geometry.Piece{
			A: middle.Add(from).At(0), B: middle.Add(to).At(0), Along: out.Turn(90).At(0), Inward: out.Scale(-1).At(0),
			Radius: radius, Turn: arcTurn * math.Pi / 180,
		}
	}
	return scene.Path{piece(arm.Turn(-arcTurn), arm), piece(arm, arm.Turn(arcTurn))}
}
