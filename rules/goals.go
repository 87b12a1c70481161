package rules

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
	"bench.example/undermark/vehicles"
)

// ends are where a run may end, and whether that keeps what is asked of an end.
type ends struct {
	goals []route.Goal
	keep  bool
}

// endsAsked is what ends are asked of: along an edge, by so many sigma, and from how high the run comes.
type endsAsked struct {
	edge    Edge
	judged  float64
	upright bool
}

// endsBy are the ends that a demand asks of along an edge.
func (d *demand) endsBy(edge Edge) endsAsked { return endsAsked{edge, d.judged, d.upright} }

// goals are where the run may end; keep tells whether that keeps what is asked of an end. They are shared by all who ask for the same: nobody
// changes them.
func (s *seeker) goals(d demand) (list []route.Goal, keep bool) {
	s.asking.Lock()
	defer s.asking.Unlock()
	found, known := s.ends[d.endsBy(s.to.Edge)]
	if !known {
		found = s.endsFor(d)
		s.ends[d.endsBy(s.to.Edge)] = found
	}
	return found.goals, found.keep
}

// endsFor works them out.
func (s *seeker) endsFor(d demand) ends {
	t := newTrial(s.judge, s.kind, d.judged)
	if at := s.to.At; s.to.exactly() {
		g := route.Goal{At: geometry.Point{X: at.X, Y: at.Y}, Low: -at.Drop, High: -at.Drop}
		return ends{[]route.Goal{g}, s.endShort(t, endRules(t), g.At.At(g.High), math.Inf(1)) == 0}
	}
	low, high := s.heights(d)
	rules := endRules(t)
	var all, good []route.Goal
	nearest := math.Inf(1)
	for _, g := range s.alongEdges() {
		if s.to.far(g.At) {
			continue
		}
		top, short := s.highestEnd(t, rules, g.At, [2]float64{low, high}, nearest)
		g.Low, g.High = low, top
		if short == 0 {
			good, nearest = append(good, g), 0
		} else if short < nearest {
			nearest, all = short, []route.Goal{g}
		}
	}
	if len(good) == 0 {
		return ends{all, false} // the one that misses by least
	}
	return ends{good, true}
}

// highestEnd is the greatest height at a place, within heightStep, at which a run may end, or by how much it falls short where it falls
// short by least; where that is no less than most, any greater figure will do. What an end keeps away from lies above it, or at its own height.
func (s *seeker) highestEnd(t *trial, rules []*Rule, at geometry.Point, between [2]float64, most float64) (top, short float64) {
	short = math.Inf(1)
	for z := between[1]; z >= between[0] && short > 0; z -= heightStep {
		if lacks := s.endShort(t, rules, at.At(z), min(short, most)); lacks < short {
			top, short = z, lacks
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

// endRules are those of a trial that rest on where the run ends alone.
func endRules(t *trial) (list []*Rule) {
	for _, r := range t.rules {
		if r.ends {
			list = append(list, r)
		}
	}
	return list
}

// endShort is by how much a run that ends at a place falls short of what is asked of its end alone. It may be less than that where it is more than
// most.
func (s *seeker) endShort(t *trial, rules []*Rule, at geometry.Point3, most float64) (short float64) {
	if len(rules) == 0 {
		return 0
	}
	run := t.run
	run.Path, run.Hanging = []vehicles.RunPoint{{X: at.X, Y: at.Y, Drop: -at.Z}}, vehicles.Hanging{}
	if !t.put(&run) {
		return math.Inf(1)
	}
	t.begin()
	for _, r := range rules {
		before := len(t.last.findings)
		r.check(&t.last, r)
		if short += t.short(t.last.findings[before:]); short > most {
			break
		}
	}
	return short
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
