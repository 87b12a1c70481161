package rules

import (
	"math"

	"bench.example/undermark/geometry"
)

func (b *bench) intakeRules() {
	r := b.plan.Intake
	if r == nil {
		return
	}
	b.clearances(TheIntake, "intake.clearance", tubeOf(r))
	b.common(TheIntake, r)
	last := len(r.Path) - 1
	if along := r.Path[last].Sub(r.Path[last-1]); along != (geometry.Point3{}) {
		angle := math.Atan2(math.Hypot(along.Y, along.Z), along.X) * 180 / math.Pi
		b.plain("intake.facing", the(TheIntake), Thing{}, angle)
	}
	if b.plan.Exhaust == nil {
		return
	}
	mouth, least := r.Path[last:], surface{value: math.Inf(1)}
	least.nearer(geometry.BetweenPaths(mouth, b.plan.Exhaust.Path[len(b.plan.Exhaust.Path)-1:]), 0)
	if m := b.plan.Exhaust.Muffler; m != nil {
		least.nearer(geometry.BetweenPaths(mouth, m.Axis), m.Radius)
	}
	b.put(b.open("intake.apart", b.book.find("intake.apart", ""), the(TheIntake), the(TheExhaust)), least)
}

func (b *bench) fuelRules() {
	line := b.plan.Fuel
	if line == nil {
		return
	}
	var tube geometry.Tube
	tube.AddPath(line.Path, line.Radius)
	b.clearances(TheFuel, "fuel.clearance", &tube)
	if !line.Pump.Set {
		return
	}
	for _, id := range [...]string{"fuel.pump-tilt.least", "fuel.pump-tilt.most"} {
		f := b.open("fuel.pump-tilt", b.book.find(id, ""), the(TheFuel), Thing{})
		f.Value = b.job.Fuel.Pump.Tilt
		b.close(f, 0)
	}
	b.plain("fuel.suction", the(TheFuel), Thing{}, line.Pump.Value)
	b.plain("fuel.delivery", the(TheFuel), Thing{}, geometry.PathLength(line.Path)-line.Pump.Value)
}
