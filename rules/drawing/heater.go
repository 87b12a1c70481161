package drawing

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// heater draws plate, body, the space round it and the way the warm air blows. They stand on the floor.
func (d *drawer) heater() {
	if d.job.Heater == nil || d.job.Cut == nil {
		return
	}
	body, top := rules.Body(*d.job, *d.plan, false), d.job.Floor.Thickness
	d.add(scene.Item{
		Role: scene.Space, State: d.states.subjects[rules.TheBody], Primitive: scene.Outline,
		Solid: scene.Solid{Prism: rules.Body(*d.job, *d.plan, true)},
	})
	d.add(scene.Item{Role: scene.Body, Primitive: scene.Outline, Solid: scene.Solid{Prism: body}, Layer: scene.Upon})
	d.add(scene.Item{
		Role: scene.Plate, State: d.states.subjects[rules.ThePlate], Primitive: scene.Outline,
		Solid: scene.Upright(rules.Plate(*d.job, *d.plan), top, top), Layer: scene.Upon,
	})
	d.add(scene.Item{Role: scene.Body, Primitive: scene.Stroke, Path: arrow(body, d.job.Heater.Kept().Front), Label: "warm air"})
}

// arrow returns an arrow from the front of a body, halfway up, through most of the space before it.
func arrow(body geometry.Prism, room float64) scene.Path {
	shaft, f := max(room*0.7, 60), &body.Footprint
	at := func(x, y float64) geometry.Point3 {
		return geometry.Point{X: f.Half.X + x, Y: y}.Turn(f.Turn).Add(f.Middle).At((body.Low + body.High) / 2)
	}
	tip, barb := at(shaft, 0), shaft*0.3
	return scene.Straight(at(0, 0), tip, at(shaft-barb, barb), tip, at(shaft-barb, -barb))
}

// cut draws the hole where it is and, once the pilot is drilled beside it, where it was meant.
func (d *drawer) cut() {
	if d.job.Cut == nil {
		return
	}
	place, radius := &d.plan.Cut, d.job.Cut.Across/2
	d.add(scene.Item{
		Role: scene.Cut, State: d.states.subjects[rules.TheCut], Primitive: scene.Outline,
		Solid: d.through(geometry.NewRound(place.At, radius)), Label: "cut",
	})
	if !place.Drilled {
		d.add(scene.Item{Role: scene.CutCentre, Primitive: scene.Spot, At: place.At.At(0)})
	} else {
		d.add(scene.Item{Role: scene.Pilot, Primitive: scene.Spot, At: place.At.At(0), Label: "pilot"})
		d.add(scene.Item{Role: scene.CutCentre, Primitive: scene.Spot, At: place.Intended.At(0)})
		d.add(scene.Item{Role: scene.Wish, Primitive: scene.Outline, Solid: d.through(geometry.NewRound(place.Intended, radius)), Label: "meant"})
	}
	if place.Old != nil {
		d.add(scene.Item{Role: scene.Pilot, Primitive: scene.Spot, At: place.Old.At(0), Label: "old pilot"})
	}
	for _, w := range d.opts.Wishes {
		d.add(scene.Item{Role: scene.Wish, Primitive: scene.Outline, Solid: d.through(geometry.NewRound(w, radius))})
	}
}

// holes draws what is drilled beside the cut: the bolts' holes and the fuel line's. One that no finding is of has no state: it is no
// nearer to anything than another.
func (d *drawer) holes() {
	for i, at := range rules.Bolts(d.job, d.plan) {
		d.hole(rules.ABolt, i, at, d.job.Heater.Bolt/2)
	}
	for i, at := range rules.FuelHoles(d.job, d.plan) {
		d.hole(rules.AFuelHole, i, at, d.job.Fuel.Supply.HoleAcross()/2)
	}
}

func (d *drawer) hole(of rules.Sort, i int, at geometry.Point, radius float64) {
	it := scene.Item{Role: scene.Hole, Primitive: scene.Outline, Solid: d.through(geometry.NewRound(at, radius)), Label: rules.HoleName(of, i)}
	for n := range d.result.Findings {
		if f := &d.result.Findings[n]; f.Subject.Is(of, i) {
			it.State = max(it.State, stateOf(f.Verdict))
		}
	}
	d.add(it)
}

// runs draws exhaust, intake and fuel line in their thickness, with their ends.
func (d *drawer) runs() {
	if f := d.plan.Fuel; f != nil {
		d.pipe(scene.Fuel, rules.TheFuel, f)
	}
	if r := d.plan.Intake; r != nil {
		d.pipe(scene.Intake, rules.TheIntake, r)
		d.end(scene.Mouth, r, "heater's air comes in")
	}
	if r := d.plan.Exhaust; r != nil {
		d.pipe(scene.Exhaust, rules.TheExhaust, r)
		if m := r.Muffler; m != nil {
			barrel := scene.Barrel(m.Axis[0], m.Axis[len(m.Axis)-1], m.Radius)
			d.add(scene.Item{Role: scene.Muffler, State: d.states.subjects[rules.TheExhaust], Solid: barrel, Label: "muffler"})
		}
		d.end(scene.Outlet, r, "heater's exhaust outlet")
	}
}

func (d *drawer) pipe(role scene.Role, of rules.Sort, run *vehicles.LaidRun) {
	d.add(scene.Item{Role: role, State: d.states.subjects[of], Solid: scene.Pipe(run.Line.Pieces(), run.Radius), Label: role.Pen().Means})
}

func (d *drawer) end(role scene.Role, run *vehicles.LaidRun, name string) {
	d.add(scene.Item{Role: role, Primitive: scene.Spot, At: run.Path[len(run.Path)-1], Label: name})
}
