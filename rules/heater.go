package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// Plate returns the mounting flange's outline where the heater will sit. Its corners are anticlockwise from front left.
func Plate(job vehicles.Job, plan vehicles.Plan) geometry.Footprint {
	h := job.Heater
	half := geometry.Point{X: h.Plate[0] / 2, Y: h.Plate[1] / 2}
	return geometry.NewRectangle(half.Scale(-1), half, 0).Moved(h.Yaw, plan.Cut.At)
}

// Body returns the heater's body where it will sit: from the finished floor up, and grown by the space kept free round
// it when spaced.
func Body(job vehicles.Job, plan vehicles.Plan, spaced bool) geometry.Prism {
	h := job.Heater
	at, half := geometry.Point{X: h.BodyAt[0], Y: h.BodyAt[1]}, geometry.Point{X: h.Body[0] / 2, Y: h.Body[1] / 2}
	low, high, top := at.Sub(half), at.Add(half), h.Body[2]
	if spaced {
		low = low.Sub(geometry.Point{X: h.Space.Rear, Y: h.Space.Sides})
		high = high.Add(geometry.Point{X: h.Space.Front, Y: h.Space.Sides})
		top += h.Space.Top
	}
	return geometry.Prism{
		Footprint: geometry.NewRectangle(low, high, 0).Moved(h.Yaw, plan.Cut.At),
		Low:       job.Floor.Thickness, High: job.Floor.Thickness + top,
	}
}

// heater judges what stands on the floor round the cut, and the collar through it.
func (b *bench) heater() {
	h := b.job.Heater
	if h == nil {
		return
	}
	if h.Turret.Set {
		b.plain("stack.turret", the(TheStack), the(TheFloor), h.Turret.Value-b.job.Floor.Thickness)
	}
	if b.job.Cut == nil {
		return
	}
	plate := Plate(*b.job, *b.plan)
	b.onFloor("plate.on-floor", ThePlate, plate)
	b.plateFittings(plate)
	b.bodySpace(Body(*b.job, *b.plan, true))
	b.stubs()
}

func (b *bench) plateFittings(plate geometry.Footprint) {
	rule := b.book.find("plate.fitting", "")
	for i := range b.plan.Fittings {
		if b.job.Fittings[i].Rise.From > 0 {
			continue
		}
		thing := &b.plan.Fittings[i]
		s := geometry.Between(plate, thing.Prism.Footprint)
		f := b.open("plate.fitting", rule, the(ThePlate), b.fitting(i))
		f.Value = s.Gap
		b.flat(f, s.A, s.B)
		b.fromAbove(f, thing, s.B, s.N.At(0))
	}
}

func (b *bench) bodySpace(body geometry.Prism) {
	rule := b.book.find("body.space", "")
	for i := range b.plan.Fittings {
		thing := &b.plan.Fittings[i]
		s := geometry.BoxGap(body, thing.Prism)
		f := b.open("body.space", rule, the(TheBody), b.fitting(i))
		f.Value = s.Gap
		b.at(f, s.A, s.B)
		b.fromAbove(f, thing, s.B.Plan(), s.N)
	}
}

// fromAbove ends a finding between what is put from above and what was measured from above.
func (b *bench) fromAbove(f *Finding, thing *vehicles.Placed, q geometry.Point, n geometry.Point3) {
	f.N = n
	f.Spread = spread(thing, q, n, b.cutMark())
	h := rests(thing)
	if b.plan.Cut.Drilled {
		h |= b.across(f, n)
	}
	b.close(f, h)
}

// stubs judges whether the stubs go down inside the cut.
func (b *bench) stubs() {
	h, radius := b.job.Heater, b.job.Cut.Across/2
	judge := func(subject Sort, stub [2]float64, across float64) {
		f := b.open("stub.in-cut", b.book.find("stub.in-cut", subject.String()), the(subject), Thing{})
		f.Value = radius - (math.Hypot(stub[0], stub[1]) + across/2)
		b.close(f, 0)
	}
	if b.job.Exhaust != nil {
		judge(TheExhaust, h.ExhaustStub, b.job.Exhaust.Across)
	}
	if b.job.Intake != nil {
		judge(TheIntake, h.IntakeStub, b.job.Intake.Across)
	}
	if b.job.Fuel != nil {
		judge(TheFuel, h.FuelStub, b.job.Fuel.Across.Value)
	}
}
