package field

import (
	"math"
	"reflect"
	"slices"

	"bench.example/undermark/geometry"
)

// Obstacle is a thing to keep away from: Need is the least plan distance from the place to its outline, mm (the
// distance asked for, and the radius of what is centred on the place).
type Obstacle struct {
	Footprint geometry.Footprint
	Need      float64
}

// Constraint is any other demand on a place. Margin says by how much it is met at p, mm, negative when it is not, and
// may not change by more than p moves: a distance less a fixed number does not.
type Constraint interface {
	Margin(p geometry.Point) float64
}

// Limits is all that limits a place on the floor from Min to Max.
type Limits struct {
	Min, Max geometry.Point
	// EdgeNeed is the least distance inside the floor's edge, mm, at least 0; or -Inf when places need only be on
	// the floor.
	EdgeNeed    float64
	Obstacles   []Obstacle
	Constraints []Constraint
	// Ways are sets of constraints of which a place has to meet one, the one that suits it best: each is a way in which
	// what is carried there may be turned. None: nothing more is asked.
	Ways [][]Constraint
}

// Same tells whether all that limits a place is the same.
func (l Limits) Same(m Limits) bool {
	plain := len(l.Constraints)+len(l.Ways)+len(m.Constraints)+len(m.Ways) == 0
	return l.Min == m.Min && l.Max == m.Max && l.EdgeNeed == m.EdgeNeed && slices.EqualFunc(l.Obstacles, m.Obstacles, sameObstacle) &&
		(plain || reflect.DeepEqual(l.Constraints, m.Constraints) && reflect.DeepEqual(l.Ways, m.Ways))
}

func sameObstacle(a, b Obstacle) bool { return a.Need == b.Need && a.Footprint.Same(&b.Footprint) }

// Margins knows the margin of every place: the least, over everything that limits it, of the distance less what is
// needed, and of the constraints. It never changes. It changes by no more than the place moves: what is found between
// places follows from that.
//
// What limits a place goes by number: Edge, or an index into Obstacles, or len(Obstacles) plus one into Constraints, or
// when the best of the ways does, the number after those.
type Margins struct {
	limits Limits
	parts  []part  // of the ways last, way after way
	common int32   // number of the first part of a way
	all    []int32 // numbers of all parts
	// outlines are those of the obstacles that are lines of many legs; nil of the others
	outlines []*geometry.Outline
}

// Edge is the number of the floor's edge as what limits a place.
const Edge = -1

// Site is a point of the floor with its margin, mm, and the number of what limits it.
type Site struct {
	At     geometry.Point
	Margin float64
	Limit  int
}

// NewMargins returns the margins within limits, whose slices must not be changed after.
func NewMargins(limits Limits) *Margins {
	m := &Margins{limits: limits, outlines: make([]*geometry.Outline, len(limits.Obstacles))}
	for i, o := range limits.Obstacles {
		m.parts = appendParts(m.parts, o, int32(i))
		if o.Footprint.LongPath() {
			m.outlines[i] = geometry.NewOutline(&o.Footprint)
		}
	}
	if !math.IsInf(limits.EdgeNeed, -1) {
		m.parts = appendSides(m.parts, limits.Min, limits.Max, limits.EdgeNeed)
	}
	owner := int32(len(limits.Obstacles))
	for _, asked := range limits.Constraints {
		m.parts = appendAsked(m.parts, asked, owner, 0)
		owner++
	}
	m.common = int32(len(m.parts))
	if !slices.ContainsFunc(limits.Ways, func(way []Constraint) bool { return len(way) == 0 }) {
		m.addWays(owner)
	}
	for k := range m.parts {
		m.all = append(m.all, int32(k))
	}
	return m
}

// At returns the margin of p, off by at most 1e-9 mm within 20 m of the datum, and what limits it. Beyond the floor's
// edge the edge's own distance is counted straight off the side. With nothing to limit it the margin is +Inf.
func (m *Margins) At(p geometry.Point) Site {
	least, lead := m.lead(m.all, p)
	if lead < 0 {
		return Site{p, least, Edge}
	}
	return Site{p, least, int(m.parts[lead].owner)}
}

// lead returns the least exact margin at p of the parts in list and the part that has it; -1 of an empty list.
func (m *Margins) lead(list []int32, p geometry.Point) (least float64, lead int32) {
	common, ways := m.split(list)
	least, lead = m.least(common, p, math.Inf(-1))
	if len(ways) > 0 {
		if best, by := m.bestWay(ways, p, least); best < least {
			return best, by
		}
	}
	return least, lead
}

// least returns the least exact margin at p in a list without ways or of one of them, and the part that has it; or any that
// is no more than enough.
func (m *Margins) least(list []int32, p geometry.Point, enough float64) (least float64, lead int32) {
	least, lead = math.Inf(1), -1
	in, whole := int32(-1), 0.0 // the line that p was last found to be inside of, and the margin of all of it
	for _, k := range list {
		s := &m.parts[k]
		if s.beyond(p.X, p.Y, least) {
			continue
		}
		d := s.at(p.X, p.Y)
		if m.inside(k, d) {
			if s.owner != in {
				in, whole = s.owner, m.whole(s.owner, p)
			}
			d = whole
		}
		if d < least {
			if least, lead = d, k; d <= enough {
				break
			}
		}
	}
	return least, lead
}

// onFloor says whether p is on the floor, its edge included.
func (m *Margins) onFloor(p geometry.Point) bool {
	return p.X >= m.limits.Min.X && p.X <= m.limits.Max.X && p.Y >= m.limits.Min.Y && p.Y <= m.limits.Max.Y
}

// room returns the margin at p, off the floor -Inf.
func (m *Margins) room(p geometry.Point) float64 {
	if !m.onFloor(p) {
		return math.Inf(-1)
	}
	return m.At(p).Margin
}

// open says whether p may be chosen.
func (m *Margins) open(p geometry.Point) bool { return m.room(p) >= 0 }
