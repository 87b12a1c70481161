package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// clearances judges what a run fills against every obstruction.
func (b *bench) clearances(subject Sort, book string, tube *geometry.Tube) {
	id, rules := subject.String()+".clearance", b.book.ofKinds(book)
	for i := range b.plan.Obstructions {
		o, thing := &b.job.Obstructions[i], &b.plan.Obstructions[i]
		f := b.open(id, rules.of(o.Kind), the(subject), b.obstruction(i))
		f.Kind = o.Kind
		s := tube.Gap(&thing.Prism)
		b.measured(f, surfaceOf(s.Separation3, s.Radius), thing)
	}
}

// measured ends a finding between a run and something measured.
func (b *bench) measured(f *Finding, s surface, thing *vehicles.Placed) {
	f.Value, f.N = s.value, s.N
	f.Spread = spread(thing, s.B.Plan(), s.N, b.runMark(s.A))
	b.at(f, s.A, s.B)
	b.close(f, rests(thing))
}

// put ends a finding between two runs: both marks count.
func (b *bench) put(f *Finding, s surface) {
	f.Value, f.N = s.value, s.N
	p, q := b.runMark(s.A), b.runMark(s.B)
	f.Spread.Mark = p.along(s.N) + q.along(s.N)
	f.Spread.Height = s.N.Z * s.N.Z * (p[2] + q[2])
	b.at(f, s.A, s.B)
	b.close(f, 0)
}

// common judges what exhaust and intake share.
func (b *bench) common(subject Sort, r *vehicles.LaidRun) {
	id := subject.String()
	b.plain(id+".length", the(subject), Thing{}, r.Line.Length())
	b.plain(id+".bends", the(subject), Thing{}, r.Line.Turns())
	b.plain(id+".bend-room", the(subject), Thing{}, float64(len(r.Line.ShortLegs)))
	if at, above, ok := highest(r); ok {
		b.level(id+".floor", subject, TheFloor, at, -at.Z-above)
	}
	at, below := lowest(r)
	b.level(id+".ground", subject, TheGround, at, b.job.Floor.Ground+at.Z-below)
}

// level is a finding about a height of a run at a point: only the run's own height is uncertain.
func (b *bench) level(id string, subject, against Sort, at geometry.Point3, value float64) {
	f := b.open(id, b.book.find(id, ""), the(subject), the(against))
	f.Value, f.N = value, geometry.Point3{Z: 1}
	f.Spread.Height = b.runMark(at)[2]
	b.at(f, at)
	b.close(f, 0)
}

// legTilt returns how a leg falls: mm per m of plan length, a vertical one 1000000 down or up, and its tilt in degrees.
// ok is false for a leg without length.
func legTilt(from, to geometry.Point3) (fall, degrees float64, ok bool) {
	down, plan := from.Z-to.Z, to.Plan().Sub(from.Plan()).Norm()
	if plan < marginNoise {
		return math.Copysign(vertical, down), 90, math.Abs(down) >= marginNoise
	}
	return 1000 * down / plan, math.Atan2(math.Abs(down), plan) * 180 / math.Pi, true
}

// vertical is the fall of a vertical leg, mm per m.
const vertical = 1e6
