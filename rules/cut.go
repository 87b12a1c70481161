package rules

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// ties judges whether the ties agree with each other. It comes first: what rests on them is held back by it.
func (b *bench) ties() {
	fit := &b.plan.Fit
	if !fit.Tied() {
		return
	}
	f := b.open("ties.fit", b.book.find("ties.fit", ""), the(TheTies), Thing{})
	f.Value = fit.Statistic
	if !f.Required.Set {
		f.Required.Value, f.Required.Set = survey.ChiSquared99(2*fit.N-3), true
	}
	b.close(f, 0)
	if f.Verdict == Foul { // above its limit the fit is doubtful, never foul by itself
		f.Verdict = Doubtful
		f.Why = why(f, 0)
		b.tiesApart = true
	}
}

// cut judges the cut against what is under the floor and against the floor's edges.
func (b *bench) cut() {
	if b.job.Cut == nil {
		return
	}
	radius, place := b.job.Cut.Across/2, &b.plan.Cut
	rules := b.book.ofKinds("cut.clearance")
	mark, reach := b.cutMark(), b.reach()
	for i := range b.plan.Obstructions {
		thing := &b.plan.Obstructions[i]
		if !reached(thing, reach) {
			continue
		}
		o := &b.job.Obstructions[i]
		s := thing.Prism.Footprint.GapCircle(place.At, radius)
		n := s.N.At(0)
		f := b.open("cut.clearance", rules.of(o.Kind), the(TheCut), b.obstruction(i))
		f.Kind, f.Value, f.N = o.Kind, s.Gap, n
		f.Spread = spread(thing, s.B, n, mark)
		b.flat(f, s.A, s.B)
		h := rests(thing)
		if !place.Drilled {
			h |= b.across(f, n)
		}
		b.close(f, h)
	}
	b.onFloor("cut.on-floor", TheCut, geometry.NewRound(place.At, radius))
}

// reached tells whether saw or pilot bit, which go down to a drop of reach, may get to a thing under the floor.
func reached(thing *vehicles.Placed, reach float64) bool {
	return thing.Assumed || -thing.Prism.High <= reach+coverage*thing.UTop
}

// reach is the drop to which saw or pilot bit may reach: the book's, or the ground when it has none.
func (b *bench) reach() float64 {
	if rule := b.book.find("cut.reach", ""); rule != nil && rule.Value.Set {
		return rule.Value.Value
	}
	return b.job.Floor.Ground
}

// onFloor judges how far inside the floor's edges something lies. The floor is laid out in the frame below.
func (b *bench) onFloor(id string, subject Sort, outline geometry.Footprint) {
	s := outline.Inside(b.plan.FloorMin, b.plan.FloorMax)
	n := s.N.At(0)
	f := b.open(id, b.book.find(id, ""), the(subject), the(TheFloor))
	f.Value, f.N = s.Gap, n
	f.Spread.Mark = b.cutMark().along(n)
	b.flat(f, s.A, s.B)
	var h hold
	if !b.plan.Cut.Drilled {
		h = b.across(f, n)
	}
	b.close(f, h)
}
