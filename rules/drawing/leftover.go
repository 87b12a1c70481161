package drawing

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
)

// LeftOver says how to show what the fit of the ties leaves over, on a floor with nothing but the cut: an arrow at each tie, from where the fit has it to
// where it was read above, drawn Times as long as it is.
type LeftOver struct {
	Times float64
	Tie   int // the tie picked out; -1 for none
}

// Times returns how many times its length what is left over is best drawn, a round number from 1 to 200: the longest
// arrow of the ties in the fit is then at most 250 mm of the plan, well seen and not across it.
func Times(fit survey.Fit) float64 {
	const longest, most = 250, 200
	worst := 0.0
	for _, r := range fit.Residuals {
		worst = max(worst, math.Hypot(r.DX, r.DY))
	}
	best := 1.0
	for _, decade := range []float64{1, 10, 100} {
		for _, step := range []float64{1, 2, 5} {
			if times := step * decade; times <= most && times*worst <= longest {
				best = max(best, times)
			}
		}
	}
	return best
}

// tied is the plan of the ties alone.
func (d *drawer) tied() scene.Scene {
	d.floor()
	d.leftOver()
	for i, tie := range d.plan.Ties {
		it := scene.Item{
			Role: scene.Tie, Primitive: scene.Spot, At: tie.Below.At(0), Label: tie.Name, Ref: i,
			Unsure: !tie.Use, Selected: i == d.opts.LeftOver.Tie,
		}
		if tie.Name == d.plan.Fit.Suspect {
			it.State = scene.Doubtful
		}
		d.items = append(d.items, it)
	}
	d.cut()
	return d.scene()
}

// leftOver draws the arrows. They lie in the frame below, as everything of the plan does.
func (d *drawer) leftOver() {
	if !d.plan.Fit.Tied() {
		return
	}
	fit := &d.plan.Fit
	for i, t := range d.plan.Ties {
		off := t.Above.Sub(fit.Up(t.Below))
		length := off.Norm() * d.opts.LeftOver.Times
		if length < 1 {
			continue
		}
		it := scene.Item{
			Role: scene.Tie, Primitive: scene.Stroke, Path: pointer(t.Below, off.Turn(-fit.Theta).Scale(d.opts.LeftOver.Times)),
			Ref: i, Unsure: !t.Use, Selected: i == d.opts.LeftOver.Tie,
			Measure: &scene.Measure{Value: off.Norm(), Unit: scene.MM, Bare: true},
		}
		if t.Name == fit.Suspect {
			it.State = scene.Doubtful
		}
		d.items = append(d.items, it)
	}
}

// pointer is the path of an arrow from a place of the floor's underside.
func pointer(from, by geometry.Point) scene.Path {
	const barb, spread = 0.25, 30 // of its length; degrees
	tip := from.Add(by)
	left, right := by.Scale(-barb).Turn(spread), by.Scale(-barb).Turn(-spread)
	return scene.Straight(from.At(0), tip.At(0), tip.Add(left).At(0), tip.At(0), tip.Add(right).At(0))
}
