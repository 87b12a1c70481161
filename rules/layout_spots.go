package rules

import (
	"cmp"
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/field"
	"bench.example/undermark/geometry/scene"
)

// spot is a place of the cut with a heading of the heater, where a layout may begin.
type spot struct {
	at     geometry.Point
	yaw    float64
	margin float64 // of cut, plate, body and stubs there, uncertainty left out
	away   float64 // from the wish
	worth  float64 // the coarse looks' word for it, mm; more is better
}

// How spots are looked for: on nodes so far apart, mm, of which one a block of so many mm each way counts at each heading; headings are so
// many degrees apart.
const (
	spotStep  = 25
	spotBlock = 150
	spotTurn  = 30
)

// spotsApart is how far from each other spots are, mm, that come to much the same layout, whatever their headings.
const spotsApart = 150

// mostSpots is how many spots are looked at with runs.
const mostSpots = 32

// spots are those worth a closer look, the most promising first. A cut that stays has one.
func (l *layouting) spots() []spot {
	if l.fixed {
		at := l.result.Plan.Cut.At
		return []spot{{at: at, yaw: geometry.WithinHalfTurn(l.result.Job.Heater.Yaw), away: at.Sub(l.wish).Norm(), margin: math.Inf(1)}}
	}
	yaws := l.headings()
	found := make([][]spot, len(yaws))
	share(len(yaws), l.workers, func(i int) {
		if l.wanted.Err() == nil {
			found[i] = l.spotsAt(yaws[i])
		}
	})
	all := slices.Concat(found...)
	if open := slices.DeleteFunc(slices.Clone(all), func(s spot) bool { return s.margin < 0 }); len(open) > 0 {
		all = open
	}
	return l.spread(all)
}

// headings are those tried: the one that the heater has, and others all round.
func (l *layouting) headings() (yaws []float64) {
	for turn := 0.; turn < 360; turn += spotTurn {
		yaws = append(yaws, geometry.WithinHalfTurn(l.result.Job.Heater.Yaw+turn))
	}
	return yaws
}

// spotsAt are the best spots of each block of the floor at a heading.
func (l *layouting) spotsAt(yaw float64) (list []spot) {
	room := l.cut.with(l.result.wholeAt(yaw))
	nodes := room.Margins.Map(spotStep, 1)
	cols, rows := nodes.Size()
	outs := l.ways(yaw)
	best := map[[2]int]spot{}
	for row := range rows {
		for col := range cols {
			s := spot{at: nodes.Node(col, row), yaw: yaw, margin: nodes.Margin(col, row)}
			s.away = s.at.Sub(l.wish).Norm()
			s.worth = min(s.margin, scene.MuchSpare)*marginCounts - awayCounts*s.away
			block := [2]int{int(math.Floor(s.at.X / spotBlock)), int(math.Floor(s.at.Y / spotBlock))}
			if was, there := best[block]; !there || s.worth > was.worth {
				best[block] = s
			}
		}
	}
	for _, s := range best {
		list = append(list, s)
	}
	if s, ok := l.nearWish(room, yaw); ok {
		list = append(list, s)
	}
	for i := range list {
		list[i].worth -= outs.cost(list[i].at)
	}
	slices.SortFunc(list, func(a, b spot) int { return cmp.Or(cmp.Compare(a.at.X, b.at.X), cmp.Compare(a.at.Y, b.at.Y)) })
	return list
}

// nearWish is the place of a heading that is worth most near the wish, however little room there is between the nodes.
func (l *layouting) nearWish(room Room, yaw float64) (s spot, ok bool) {
	return l.nearTo(l.wish, l.within, room, yaw)
}

// nearTo is that near any place.
func (l *layouting) nearTo(from geometry.Point, within float64, room Room, yaw float64) (s spot, ok bool) {
	aim := field.Aim{From: from, Within: within, Enough: scene.MuchSpare, PerAway: float64(awayCounts) / marginCounts}
	site, ok := room.Margins.Best(aim, spotWithin)
	if ok && site.Margin < 0 {
		aim.Enough, aim.PerAway = math.Inf(1), 0
		site, ok = room.Margins.Best(aim, spotWithin)
	}
	if !ok || site.Margin < 0 {
		return s, false
	}
	site = wholeNear(room, site, from, within)
	s = spot{at: site.At, yaw: yaw, margin: site.Margin, away: site.At.Sub(l.wish).Norm()}
	s.worth = min(s.margin, scene.MuchSpare)*marginCounts - awayCounts*s.away
	return s, true
}

// wholeNear is a place in whole mm: what a tape is to find is proposed so, before runs are laid from there. Where that is not open, or too far
// off, it is the one of those round it with the most room; where none of them will do, the place stays as it is.
func wholeNear(room Room, at field.Site, from geometry.Point, within float64) field.Site {
	x, y := math.Round(at.At.X), math.Round(at.At.Y)
	fits := func(s field.Site) bool { return s.Margin >= 0 && s.At.Sub(from).Norm() <= within }
	if s := room.Margins.At(geometry.Point{X: x, Y: y}); fits(s) {
		return s
	}
	best, any := at, false
	for i := -1.0; i <= 1; i++ {
		for k := -1.0; k <= 1; k++ {
			if s := room.Margins.At(geometry.Point{X: x + i, Y: y + k}); fits(s) && (!any || s.Margin > best.Margin) {
				best, any = s, true
			}
		}
	}
	return best
}

// spotWithin is how close to the best near the wish a spot there is, mm.
const spotWithin = 0.5

// What counts for how much where spots are compared, mm: a mm of margin, of the way from the wish, a layout beyond the wish, a thing in the
// exhaust's straight way out, one that it may dive below, a spot chosen already that this one is close to, and one that differs from it by
// hardly more than a heading.
const (
	marginCounts = 5
	awayCounts   = 1
	beyondCounts = 1000
	inWayCounts  = 250
	divesCount   = 80
	closeCounts  = 300
	sameCounts   = 900
)

// spread chooses the spots of most worth, each of which makes others close to it worth less.
func (l *layouting) spread(all []spot) (chosen []spot) {
	for i := range all {
		if l.result.Job.Wish != nil && all[i].away > l.within {
			all[i].worth -= beyondCounts
		}
	}
	for len(chosen) < mostSpots && len(all) > 0 {
		at := 0
		for i := range all {
			if all[i].worth > all[at].worth {
				at = i
			}
		}
		s := all[at]
		chosen = append(chosen, s)
		all = slices.Delete(all, at, at+1)
		for i := range all {
			switch off := all[i].at.Sub(s.at).Norm(); {
			case off < spotsApart:
				all[i].worth -= sameCounts
			case off < 2*spotsApart:
				all[i].worth -= closeCounts
			}
		}
	}
	return chosen
}

// straightWays are the straight ways from an exhaust's stub to the van's edges, a coarse look at how it may come out.
type straightWays struct {
	stub        geometry.Point // from the cut's centre
	left, right float64
	rear        float64 // -Inf for none
	blocks      []block
}

// block is a thing that a level pipe from the stub can't pass, what is kept from it, and what that costs.
type block struct {
	shape      geometry.Footprint
	need, cost float64
}

// ways are the straight ways at a heading.
func (l *layouting) ways(yaw float64) straightWays {
	job, h := &l.result.Job, l.result.Job.Heater
	w := straightWays{left: job.OutlineLeft(), right: -job.OutlineRight(), rear: math.Inf(-1)}
	w.stub = geometry.Point{X: h.ExhaustStub[0], Y: h.ExhaustStub[1]}.Turn(yaw)
	if rear, ok := job.OutlineRear(); ok {
		w.rear = rear
	}
	j := newJudge(job, &l.result.Plan, l.result.Book)
	limit, radius := j.ofExhaust(exhaustRules[0]), job.Exhaust.Across/2
	for i := range l.result.Plan.Obstructions {
		thing := &l.result.Plan.Obstructions[i]
		b := block{shape: thing.Prism.Footprint, need: radius + limit(i).least()}
		switch under := thing.Prism.Low - b.need; {
		case under > -h.StubDrop || thing.Prism.High+b.need < -h.StubDrop: // a level pipe passes it
			continue
		case under > -job.Floor.Ground/2:
			b.cost = divesCount
		default:
			b.cost = inWayCounts
		}
		w.blocks = append(w.blocks, b)
	}
	return w
}

// cost is about how hard the easiest of the ways is from a place of the cut, mm.
func (w *straightWays) cost(at geometry.Point) float64 {
	from, best := at.Add(w.stub), math.Inf(1)
	for _, to := range []geometry.Point{{X: from.X, Y: w.left}, {X: from.X, Y: w.right}, {X: w.rear, Y: from.Y}} {
		if math.IsInf(to.X, -1) {
			continue
		}
		cost := to.Sub(from).Norm()
		low := geometry.Point{X: min(from.X, to.X), Y: min(from.Y, to.Y)}
		high := geometry.Point{X: max(from.X, to.X), Y: max(from.Y, to.Y)}
		for i := range w.blocks {
			if w.blocks[i].hinders(low, high, from, to) {
				cost += w.blocks[i].cost
			}
		}
		best = min(best, cost)
	}
	return best
}

// hinders tells whether a straight way comes too close to what blocks it.
func (b *block) hinders(low, high, from, to geometry.Point) bool {
	l, h := b.shape.Bounds()
	if l.X-b.need > high.X || h.X+b.need < low.X || l.Y-b.need > high.Y || h.Y+b.need < low.Y {
		return false
	}
	flat := geometry.Prism{Footprint: b.shape}
	return flat.GapRun([]geometry.Point3{from.At(0), to.At(0)}).Gap < b.need
}
