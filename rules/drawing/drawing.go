// Package drawing turns a judged job into scenes: what is under the van's floor, in it and on it, for any view.
// What is drawn where is decided here once, for the screen and for paper.
//
// Places are in space, as geometry has it: mm, X forward of the bumper datum, Y to the van's left, Z up from the floor's
// underside. Nothing here holds state.
package drawing

import (
	"cmp"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/field"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// Square is the side of the squares the floor is divided into, mm.
const Square = 100

// Options say what a scene shows beside the job itself.
type Options struct {
	View     scene.View
	Selected int              // the obstruction picked out; -1 for none
	Focus    *rules.Finding   // the finding picked out, with its dimension line
	Shown    []*rules.Finding // findings with a mark or a line and their figure, the most important first
	Marks    []rules.Mark     // places to mark
	Ticked   map[string]bool
	Pins     bool             // the datum pins and the arcs from them to the first mark
	Wishes   []geometry.Point // places the cut could go
	LeftOver *LeftOver        // how the ties fit each other; nil: not shown
	NoTies   bool             // without the matching points
	MayMove  bool             // where the centre may go with the pilot hole swallowed by the cut
}

// Draw returns the scene of a judged job. Thick things come first, so that thin ones are seen on them.
func Draw(result rules.Result, opts Options) scene.Scene {
	d := drawer{
		result: &result, job: &result.Job, plan: &result.Plan, opts: &opts, states: statesOf(&result),
		projection: opts.View.Projection(),
	}
	return d.draw()
}

func (d *drawer) draw() scene.Scene {
	const heaterCutRunsEndsAndPins = 33
	things := len(d.plan.Obstructions) + len(d.plan.Openings) + len(d.plan.Fittings) + len(d.plan.Ties) + len(d.job.Wheels)
	d.items = make([]scene.Item, 0, things+len(d.opts.Marks)+len(d.opts.Wishes)+len(d.opts.Shown)+heaterCutRunsEndsAndPins)
	if d.opts.LeftOver != nil {
		return d.tied()
	}
	d.ends()
	d.floor()
	d.obstructions()
	d.wheels()
	d.fittings()
	d.openings()
	d.ties()
	d.heater()
	d.runs()
	d.cut()
	d.holes()
	d.mayMove()
	d.dimensions()
	d.marks()
	d.pins()
	return d.scene()
}

func (d *drawer) scene() scene.Scene {
	low, high := d.bounds()
	return scene.Scene{Projection: d.projection, Min: low, Max: high, Grid: Square, Items: d.items}
}

type drawer struct {
	result     *rules.Result
	job        *vehicles.Job
	plan       *vehicles.Plan
	opts       *Options
	states     states
	projection scene.Projection
	items      []scene.Item
}

// add appends an item that stands for nothing in a list of the job.
func (d *drawer) add(it scene.Item) {
	it.Ref = -1
	d.items = append(d.items, it)
}

// through returns the solid of what goes through the floor, and of the floor itself.
func (d *drawer) through(f geometry.Footprint) scene.Solid {
	return scene.Upright(f, 0, d.job.Floor.Thickness)
}

func (d *drawer) floor() {
	d.add(scene.Item{Role: scene.Floor, Solid: d.through(geometry.NewRectangle(d.plan.FloorMin, d.plan.FloorMax, 0))})
}

// obstructions are hidden by the floor from above, and drawn all the same: they are what a saw would meet.
func (d *drawer) obstructions() {
	order, thickness := make([]int, len(d.plan.Obstructions)), make([]float64, len(d.plan.Obstructions))
	for i := range order {
		order[i], thickness[i] = i, field.Thickness(&d.plan.Obstructions[i].Prism.Footprint)
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(thickness[j], thickness[i]) })
	for _, i := range order {
		placed, kind, layer := &d.plan.Obstructions[i], vehicles.KindOf(d.job.Obstructions[i].Kind), scene.Under
		if kind.Is(vehicles.InSheetMetal) {
			layer = scene.Through // the sheet's own shape is seen from both sides
		}
		d.items = append(d.items, scene.Item{
			Role: kind.Role, State: d.states.obstructions[i], Solid: scene.Solid{Prism: placed.Prism}, Layer: layer,
			Label: d.job.Obstructions[i].Name, Code: kind.Code, Ref: i,
			Selected: i == d.opts.Selected, Unsure: !placed.Measured || placed.Assumed, Aside: !kind.Landmark(), Deadly: kind.DeadlyPipe(),
		})
	}
}

// wheels stand on the ground, their axles across the van. One whose width was left out is drawn 1 mm wide, one that is wholly ahead
// of the floor or behind it is not drawn: all else would be small beside it.
func (d *drawer) wheels() {
	for _, w := range d.job.Wheels {
		if w.At[0]-w.Across/2 > d.plan.FloorMax.X || w.At[0]+w.Across/2 < d.plan.FloorMin.X {
			continue
		}
		hub := geometry.Point3{X: w.At[0], Y: w.At[1], Z: w.Across/2 - d.job.Floor.Ground}
		half := geometry.Point3{Y: max(w.Width, 1) / 2}
		d.add(scene.Item{
			Role: scene.Wheel, Primitive: scene.Outline, Solid: scene.Barrel(hub.Sub(half), hub.Add(half), w.Across/2),
		})
	}
}

// fittings stand on the floor: from below it hides them. What runs inside it is seen from either side, with the letters of its
// kind: a saw meets it from both.
func (d *drawer) fittings() {
	for i := range d.plan.Fittings {
		d.items = append(d.items, d.fitting(i))
	}
}

func (d *drawer) fitting(i int) scene.Item {
	f, layer, code := &d.job.Fittings[i], scene.Upon, ""
	if rules.InsideFloor(f) {
		layer, code = scene.Through, vehicles.KindOf(f.Kind).Code
	}
	return scene.Item{
		Role: scene.Fitting, State: d.states.fittings[i], Primitive: scene.Outline,
		Solid: scene.Solid{Prism: d.plan.Fittings[i].Prism}, Layer: layer, Label: f.Name, Code: code, Ref: i,
	}
}

func (d *drawer) openings() {
	for i := range d.plan.Openings {
		d.items = append(d.items, scene.Item{
			Role: scene.Opening, State: d.states.openings[i], Primitive: scene.Edge,
			Solid: scene.Solid{Prism: d.plan.Openings[i].Prism}, Label: d.job.Openings[i].Name, Ref: i,
		})
	}
}

func (d *drawer) ties() {
	if d.opts.NoTies {
		return
	}
	for i, tie := range d.plan.Ties {
		d.items = append(d.items, scene.Item{
			Role: scene.Tie, Primitive: scene.Spot, At: tie.Below.At(0), Ref: i, Unsure: !tie.Use,
		})
	}
}

// bounds returns what there is to see: floor and datum, and what of the runs and openings lies beyond them.
func (d *drawer) bounds() (low, high geometry.Point) {
	const rim, off = 15, 0.1 // mm; what a bend is drawn off by is lost in the rim
	low = d.projection.Point(geometry.Point3{})
	high = low
	for i := range d.items {
		it := &d.items[i]
		if it.Role == scene.Space || it.Role == scene.Dimension {
			continue
		}
		if f, ok := d.projection.Seen(it, off); ok {
			p, q := f.Bounds()
			low = geometry.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
			high = geometry.Point{X: max(high.X, q.X), Y: max(high.Y, q.Y)}
		}
	}
	pad := geometry.Point{X: rim, Y: rim}
	return low.Sub(pad), high.Add(pad)
}
