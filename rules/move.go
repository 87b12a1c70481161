package rules

import (
	"container/heap"
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// Move is the best place for the cut's centre that still swallows the pilot hole.
type Move struct {
	To      geometry.Point
	By      geometry.Point // To less where the pilot hole is
	Before  float64        // the worst margin where the pilot hole is, mm; 0 when no rule asks anything
	Margin  float64        // the worst margin at To, mm, at most moveWithin below the best there is
	Against string         // what that margin is to
}

// moveWithin is how far, in mm, the margin of a Move may lie below the best.
const moveWithin = 0.1

// keep is something to keep away from: its margin when the cut's centre is at a place, uncertainty left out. It falls by
// no more than a millimetre for each that the centre moves.
type keep struct {
	name   string
	margin func(centre geometry.Point) float64
	floor  func(centre geometry.Point) float64 // what margin is at least, where that is known with less work; or nil
}

// above tells without much work whether the margin is surely no less.
func (k *keep) above(least float64, centre geometry.Point) bool {
	return k.floor != nil && k.floor(centre) >= least
}

// Margin lets a keep be one of the constraints on a place.
func (k keep) Margin(centre geometry.Point) float64 { return k.margin(centre) }

// keeps are what cut.clearance, cut.on-floor, plate.on-floor, plate.fitting and body.space ask of the place of the cut.
// Rules without a value ask nothing.
func (r *Result) keeps() []keep {
	b := bench{job: &r.Job, plan: &r.Plan, book: r.Book, tape: r.Job.SurveyTape()}
	list := b.keepUnder()
	list = append(list, b.keepOnFloor("cut.on-floor", geometry.NewRound(r.Plan.Cut.At, r.Job.Cut.Across/2))...)
	if r.Job.Heater != nil {
		list = append(list, b.keepHeater()...)
	}
	return list
}

// keepHeater is what plate.on-floor, plate.fitting and body.space ask of the place of a heater turned as the job has it.
func (b *bench) keepHeater() []keep {
	return append(b.keepOnFloor("plate.on-floor", Plate(*b.job, *b.plan)), b.keepFittings()...)
}

// keepOnFloor keeps an outline, laid where the cut is now, on the floor.
func (b *bench) keepOnFloor(id string, outline geometry.Footprint) []keep {
	rule, now := b.book.find(id, ""), b.plan.Cut.At
	if rule == nil || !rule.Value.Set {
		return nil
	}
	return []keep{{name: "floor", margin: func(c geometry.Point) float64 {
		return outline.Moved(0, c.Sub(now)).Inside(b.plan.FloorMin, b.plan.FloorMax).Gap - rule.Value.Value
	}}}
}

func (b *bench) keepUnder() (list []keep) {
	rules, radius, reach := b.book.ofKinds("cut.clearance"), b.job.Cut.Across/2, b.reach()
	for i := range b.plan.Obstructions {
		thing, o := &b.plan.Obstructions[i], &b.job.Obstructions[i]
		rule := rules.of(o.Kind)
		if !reached(thing, reach) || rule == nil || !rule.Value.Set {
			continue
		}
		away := radius + rule.Value.Value
		list = append(list, keep{name: o.Name, margin: func(c geometry.Point) float64 { return thing.Prism.Footprint.GapOnly(c) - away }})
	}
	return list
}

func (b *bench) keepFittings() (list []keep) {
	plate, body, now := Plate(*b.job, *b.plan), Body(*b.job, *b.plan, true), b.plan.Cut.At
	onPlate, round := b.book.find("plate.fitting", ""), b.book.find("body.space", "")
	for i := range b.plan.Fittings {
		thing, f := &b.plan.Fittings[i], &b.job.Fittings[i]
		if f.Rise.From <= 0 && onPlate != nil && onPlate.Value.Set {
			list = append(list, keep{f.Name, func(c geometry.Point) float64 {
				return geometry.Between(plate.Moved(0, c.Sub(now)), thing.Prism.Footprint).Gap - onPlate.Value.Value
			}, clearOf(thing, plate, now, onPlate.Value.Value)})
		}
		if round != nil && round.Value.Set {
			list = append(list, keep{f.Name, func(c geometry.Point) float64 {
				moved := body
				moved.Footprint = body.Footprint.Moved(0, c.Sub(now))
				return geometry.BoxGap(moved, thing.Prism).Gap - round.Value.Value
			}, clearOf(thing, body.Footprint, now, round.Value.Value)})
		}
	}
	return list
}

// clearOf returns what the margin of a carried outline to a thing is at least: that of the circle about the centre which
// holds the outline.
func clearOf(thing *vehicles.Placed, outline geometry.Footprint, centre geometry.Point, need float64) func(geometry.Point) float64 {
	reach := 0.0
	for _, corner := range outline.Corners() {
		reach = max(reach, corner.Sub(centre).Norm())
	}
	return func(c geometry.Point) float64 { return thing.Prism.Footprint.GapOnly(c) - reach - need }
}

// worst returns the least margin at a place and which it is; +Inf and -1 without any.
func worst(list []keep, c geometry.Point) (margin float64, which int) {
	margin, which = math.Inf(1), -1
	for i := range list {
		if m := list[i].margin(c); m < margin {
			margin, which = m, i
		}
	}
	return margin, which
}

// bestMove finds the place within reach mm of the pilot hole with the largest worst margin: squares over that disc, the
// most promising first, are parted into four until none can hold a better one. As no margin changes by more than the
// centre moves, a square holds nothing above the margin at its middle plus half its diagonal.
func bestMove(r *Result, reach float64) Move {
	from := r.Plan.Cut.At
	list := binding(r.keeps(), from, reach)
	best, which := Move{To: from}, -1
	if len(list) == 0 {
		return best
	}
	best.Before, which = worst(list, from)
	best.Margin = best.Before
	open := &squares{{middle: from, half: reach, most: best.Before + reach*math.Sqrt2}}
	for open.Len() > 0 && (*open)[0].most > best.Margin+moveWithin {
		s := heap.Pop(open).(square)
		for _, q := range s.quarters() {
			away := q.middle.Sub(from)
			if away.Norm()-q.half*math.Sqrt2 > reach {
				continue
			}
			at := q.middle
			margin, i := worst(list, at)
			q.most = margin + q.half*math.Sqrt2
			if q.most <= best.Margin+moveWithin {
				continue
			}
			if d := away.Norm(); d > reach { // what it can do inside the disc
				at = from.Add(away.Scale(reach / d))
				margin, i = worst(list, at)
			}
			if margin > best.Margin {
				best.To, best.Margin, which = at, margin, i
			}
			heap.Push(open, q)
		}
	}
	best.Against, best.By = list[which].name, best.To.Sub(from)
	return best
}

// binding leaves out what can't be the worst anywhere within reach.
func binding(list []keep, from geometry.Point, reach float64) []keep {
	least, _ := worst(list, from)
	var kept []keep
	for _, k := range list {
		if k.margin(from) <= least+2*reach {
			kept = append(kept, k)
		}
	}
	return kept
}

// square is a part of the disc that may hold the best place; most is what its margin can't be above.
type square struct {
	middle geometry.Point
	half   float64
	most   float64
}

// quarters parts a square into four.
func (s square) quarters() (four [4]square) {
	for i, to := range [4]geometry.Point{{X: 1, Y: 1}, {X: 1, Y: -1}, {X: -1, Y: 1}, {X: -1, Y: -1}} {
		four[i] = square{middle: s.middle.Add(to.Scale(s.half / 2)), half: s.half / 2}
	}
	return four
}

// squares is a heap with the most promising first.
type squares []square

func (s squares) Len() int           { return len(s) }
func (s squares) Less(i, k int) bool { return s[i].most > s[k].most }
func (s squares) Swap(i, k int)      { s[i], s[k] = s[k], s[i] }
func (s *squares) Push(v any)        { *s = append(*s, v.(square)) }
func (s *squares) Pop() any {
	last := len(*s) - 1
	v := (*s)[last]
	*s = (*s)[:last]
	return v
}
