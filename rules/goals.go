package rules

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
	"bench.example/undermark/vehicles"
)

// goals are where the run may end; keep tells whether that keeps what is asked of an end.
func (s *seeker) goals(d demand) (list []route.Goal, keep bool) {
	t := newTrial(s.judge, s.kind, d.judged)
	if at := s.to.At; s.to.exactly() {
		g := route.Goal{At: geometry.Point{X: at.X, Y: at.Y}, Low: -at.Drop, High: -at.Drop}
		return []route.Goal{g}, s.endShort(t, g.At.At(g.High)) == 0
	}
	low, high := s.heights(d)
	var all, good []route.Goal
	nearest := math.Inf(1)
	for _, g := range s.alongEdges() {
		if s.to.far(g.At) {
			continue
		}
		top, short := s.highestEnd(t, g.At, low, high)
		g.Low, g.High = low, top
		if short == 0 {
			good = append(good, g)
		} else if short < nearest {
			nearest, all = short, []route.Goal{g}
		}
	}
	if len(good) == 0 {
		return all, false // the one that misses by least
	}
	return good, true
}

// highestEnd is the greatest height at a place, within heightStep, at which a run may end, or by how much it falls short where it falls
// short by least. What an end keeps away from lies above it, or at its own height.
func (s *seeker) highestEnd(t *trial, at geometry.Point, low, high float64) (top, short float64) {
	short = math.Inf(1)
	for z := high; z >= low; z -= heightStep {
		if lacks := s.endShort(t, at.At(z)); lacks < short {
			top, short = z, lacks
		}
		if short == 0 {
			break
		}
	}
	return top, short
}

// heightStep is how far apart the heights are that an outlet is tried at, mm.
const heightStep = 20

// heights are between which an outlet may be: below the floor, above the ground.
func (s *seeker) heights(d demand) (low, high float64) {
	c := newCourse(s.judge, s.kind, nil, demand{searched: d.judged, upright: d.upright})
	return math.Ceil(c.query.Min.Z), math.Floor(min(c.query.Max.Z, c.query.From.Z))
}

// endShort is by how much a run that ends at a place falls short of what is asked of its end alone.
func (s *seeker) endShort(t *trial, at geometry.Point3) float64 {
	var ends []*Rule
	for _, r := range t.rules {
		if r.ends {
			ends = append(ends, r)
		}
	}
	if len(ends) == 0 {
		return 0
	}
	run := t.run
	run.Path, run.Hanging = []vehicles.RunPoint{{X: at.X, Y: at.Y, Drop: -at.Z}}, vehicles.Hanging{}
	if !t.put(&run) {
		return math.Inf(1)
	}
	return t.short(t.findings(ends))
}

// edgeStep is how far apart the places along an edge are from which a search starts, mm; an outlet is then moved by less.
const edgeStep = 25

// edges are those along which the run may end.
func (s *seeker) edges() []Edge {
	switch {
	case s.to.Edge != AnyEdge:
		return []Edge{s.to.Edge}
	case s.kind == vehicles.IntakeRun:
		return append(slices.Clone(Edges), UnderVan)
	}
	return Edges
}

// alongEdges are places along the edges, as goals without heights, where an outlet may be as far inside the outline as the rules let it.
func (s *seeker) alongEdges() (list []route.Goal) {
	for _, edge := range s.edges() {
		for _, at := range s.alongEdge(edge) {
			list = append(list, route.Goal{At: at, Open: edge == UnderVan})
		}
	}
	return list
}

func (s *seeker) alongEdge(edge Edge) (list []geometry.Point) {
	p, inside := s.judge.plan, s.inside()
	if edge == UnderVan {
		return s.underVan()
	}
	if edge == RearEdge {
		rear, ok := s.judge.job.OutlineRear()
		if !ok {
			return nil
		}
		x := math.Floor(rear + inside)
		for y := math.Ceil(-s.judge.job.OutlineRight()); y <= s.judge.job.OutlineLeft(); y += edgeStep {
			list = append(list, geometry.Point{X: x, Y: y})
		}
		return list
	}
	y := math.Floor(s.judge.job.OutlineLeft() - inside)
	if edge == RightEdge {
		y = -math.Floor(s.judge.job.OutlineRight() - inside)
	}
	for x := math.Ceil(p.FloorMin.X); x <= p.FloorMax.X; x += edgeStep {
		list = append(list, geometry.Point{X: x, Y: y})
	}
	return list
}

// underStep is how far apart the places under the van are from which a search for an intake starts, mm; a mouth is then moved by less.
const underStep = 150

// underVan are places under the van that a run of the greatest length may come to.
func (s *seeker) underVan() (list []geometry.Point) {
	job, p := s.judge.job, s.judge.plan
	from, most := p.Mouth(job, s.kind).Plan(), s.judge.book.of(intakeLength).Value.Or(math.Inf(1))
	for x := math.Ceil(p.FloorMin.X) + underStep/2; x <= p.FloorMax.X; x += underStep {
		for y := math.Ceil(-job.OutlineRight()) + underStep/2; y <= job.OutlineLeft(); y += underStep {
			if at := (geometry.Point{X: x, Y: y}); at.Sub(from).Norm() <= most {
				list = append(list, at)
			}
		}
	}
	return list
}

// inside is how far inside the van's outline a run along an edge ends, mm: half of what the outlet's rules let it, so that it stays
// within both of them whatever is uncertain.
func (s *seeker) inside() float64 {
	most, least := s.judge.book.of(outletInsideRule), s.judge.book.of(outletOutsideRule)
	return math.Round((most.least() - least.least()) / 2)
}

// onEdge tells whether an outlet may be moved to a place: along the edges, and up and down.
func (s *seeker) onEdge(at geometry.Point3) bool {
	return !s.to.far(at.Plan()) && slices.ContainsFunc(s.edges(), func(e Edge) bool { return s.along(e, at) })
}

// along tells whether a place is along an edge.
func (s *seeker) along(edge Edge, at geometry.Point3) bool {
	p, inside := s.judge.plan, s.inside()
	left, right := s.judge.job.OutlineLeft(), s.judge.job.OutlineRight()
	switch edge {
	case LeftEdge:
		return at.Y >= left-2*inside && at.Y <= left && at.X >= p.FloorMin.X && at.X <= p.FloorMax.X
	case RightEdge:
		return at.Y <= 2*inside-right && at.Y >= -right && at.X >= p.FloorMin.X && at.X <= p.FloorMax.X
	case UnderVan:
		return at.Y <= left && at.Y >= -right && at.X >= p.FloorMin.X && at.X <= p.FloorMax.X
	}
	rear, ok := s.judge.job.OutlineRear()
	return ok && at.X <= rear+2*inside && at.X >= rear && at.Y <= left && at.Y >= -right
}
