package rules

import (
	"encoding/binary"
	"math"
	"slices"
	"sync"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
	"bench.example/undermark/vehicles"
)

// straighten works on the corners of a way until it is as good as it gets, judged by the rules themselves.
func (s *seeker) straighten(corners []geometry.Point3, c *course, bands float64, lower int) *attempt {
	by := finely
	if s.stub != "" {
		by = roughly
	}
	return s.came.of(s.keyOf(corners, c, bands, lower), func() *attempt { return s.straightened(corners, c, bands, lower, by) })
}

// straightened is that by a straightener of so many steps and tries.
func (s *seeker) straightened(corners []geometry.Point3, c *course, bands float64, lower int, st route.Straightener) *attempt {
	t := s.trialOf(c, bands, lower)
	t.haste = newHaste(c, bands, t.spare, t.shortWith)
	found := s.straightenBy(t, corners, c, st)
	whole := s.trialOf(c, bands, lower) // sums in haste are added up in another order
	found.worth = whole.worth(found.corners, c.beyond(found.corners), math.Inf(1))
	if found.keeps() && crampedMuffler(whole.plan.Run(s.kind)) > 0 {
		found = s.eased(t, whole, found, c, st)
	}
	if found.keeps() {
		whole.spare = 0 // a bend that nobody can make is no room gained
		found.corners = whole.joined(whole.pulled(found.corners, c), c)
		found.worth = whole.worth(found.corners, c.beyond(found.corners), math.Inf(1))
	}
	if found.keeps() && !c.uncut {
		found.worth.Short = s.shortHung(whole, found.corners)
	}
	return found
}

// eased is a run that keeps what is asked, with more room for its muffler on its leg where that can be had with all of it kept.
func (s *seeker) eased(t, whole *trial, found *attempt, c *course, st route.Straightener) *attempt {
	t.eased = true
	eased := s.straightenBy(t, found.corners, c, st)
	if eased.worth = whole.worth(eased.corners, c.beyond(eased.corners), math.Inf(1)); eased.keeps() {
		return eased
	}
	return found
}

// trialOf is a trial of a run by a course. Where an intake may rise, nobody minds its low points: each is given a drain hole.
func (s *seeker) trialOf(c *course, bands float64, lower int) *trial {
	t := s.trial(bands, lower)
	t.spare, t.upright = s.to.Spare, c.upright
	if c.rising {
		t.order = slices.DeleteFunc(t.order, func(r *Rule) bool { return r == intakeDrains })
	}
	return t
}

// straightenBy works on corners as a trial judges them.
func (s *seeker) straightenBy(t *trial, corners []geometry.Point3, c *course, st route.Straightener) *attempt {
	st.Bend = t.run.Bend.Value
	st.Heads = c.query.TurnBefore // or the corner that turns it is the first to be left out
	st.Worth = func(corners []geometry.Point3, most float64) route.Worth {
		return t.worth(corners, c.beyond(corners), most)
	}
	if !s.to.exactly() {
		st.LastMay = s.onEdge
	}
	if c.orNone {
		st.Most = beyondMending
	}
	corners, worth := st.Straighten(s.ctx, corners)
	return &attempt{corners, worth, t.lower}
}

// beyondMending is how many of the steps that a run's corners were moved by it may still fall short by, for smaller ones to be worth trying. Of some
// thousand that were found on random floors, none that fell short by more than 3 was mended.
const beyondMending = 7

// mufflerLegs is on how many legs a muffler is tried, from the outlet back.
func (s *seeker) mufflerLegs() int {
	if s.hanging.Muffler == nil {
		return 1
	}
	return 2
}

// straightening remembers what ways came to, once straightened: several demands mostly lead to the same ways, and judge them alike.
type straightening struct {
	mutex sync.Mutex
	known map[string]*cameTo
}

// cameTo is what a way came to, worked out by whoever asks for it first.
type cameTo struct {
	once sync.Once
	came *attempt
}

// of is what a way came to that is known by a key.
func (m *straightening) of(key string, straighten func() *attempt) *attempt {
	m.mutex.Lock()
	if m.known == nil {
		m.known = map[string]*cameTo{}
	}
	one := m.known[key]
	if one == nil {
		one = &cameTo{}
		m.known[key] = one
	}
	m.mutex.Unlock()
	one.once.Do(func() { one.came = straighten() })
	return one.came
}

// keyOf is alike for ways that come to the same: their corners once they are whole mm, and all that a course has a run judged by.
func (s *seeker) keyOf(corners []geometry.Point3, c *course, bands float64, lower int) string {
	var key []byte
	add := func(values ...float64) {
		for _, v := range values {
			key = binary.LittleEndian.AppendUint64(key, math.Float64bits(v))
		}
	}
	low, high := c.query.Min, c.query.Max
	add(bands, float64(lower), s.to.Spare, low.X, low.Y, low.Z, high.X, high.Y, high.Z)
	for _, is := range [...]bool{c.upright, c.rising && s.kind == vehicles.IntakeRun, c.uncut, c.orNone, c.query.TurnBefore} {
		add(float64(asNumber(is)))
	}
	for i, at := range corners {
		if i > 0 {
			at = route.Whole(at)
		}
		add(at.X, at.Y, at.Z)
	}
	return string(key)
}
