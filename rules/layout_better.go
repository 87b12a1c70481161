package rules

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
	"bench.example/undermark/vehicles"
)

// headed are sketches laid with the job's heading where those that are going to be proposed have another: a heater is not turned for nothing.
func (l *layouting) headed(sketches []sketch) (list []sketch) {
	if l.fixed {
		return nil
	}
	yaw := geometry.WithinHalfTurn(l.result.Job.Heater.Yaw)
	var room *Room
	for _, b := range chosen(l.ranking(sketches)) {
		if !b.turned || b.broken > 0 {
			continue
		}
		if room == nil {
			whole := l.cut.with(l.result.wholeAt(yaw))
			room = &whole
		}
		if s, ok := l.nearTo(b.At, spotsApart/2, *room, yaw); ok {
			list = append(list, sketch{spot: s})
		}
	}
	share(len(list), l.workers, func(i int) {
		s := l.sketch(list[i].spot, AnyEdge)
		if s.headed = true; s.placed != nil && !s.foul {
			for _, d := range []demand{uprightly(demands[0]), uprightly(keepsRules)} {
				if s.laid == nil && l.wanted.Err() == nil {
					l.lay(&s, d)
				}
			}
		}
		list[i] = s
	})
	return list
}

// How much more than is asked each run of the best layouts is sought with, mm, the most first; what is found is then worked on in steps to have up
// to so much: a search takes longer.
var soughtWider = []float64{40, 0}

const (
	widest    = 40.0
	widerStep = 10.0
)

// finely is how a run of those is straightened.
var finely = route.Straightener{Steps: []float64{32, 8, 2, 1}}

// widen lays those that are going to be proposed anew with more room about their runs, where they can have it: the shortest runs graze what
// they pass.
func (l *layouting) widen(sketches []sketch) {
	best := chosen(l.ranking(sketches))
	share(len(sketches), l.workers, func(i int) {
		s := &sketches[i]
		if s.laid == nil || s.laid.broken > 0 || !s.headed && !slices.ContainsFunc(best, func(b Layout) bool { return better(s.laid, &b) == 0 }) {
			return
		}
		l.widened(s)
	})
}

// widened lays the runs of a sketch anew, each by itself with the most to spare that it can have beside those before it: one that can have little
// holds none of the others back.
func (l *layouting) widened(s *sketch) {
	d := s.rough.demand
	at, ok := l.sparest(*s.placed, vehicles.ExhaustRun, func(spare float64) *rough {
		return l.rough(s.placed, vehicles.ExhaustRun, Target{Edge: s.edge, Spare: spare}, d)
	})
	for _, of := range [...]vehicles.RunKind{vehicles.IntakeRun, vehicles.FuelRun} {
		if !ok {
			break
		}
		before := at
		at, ok = l.sparest(before, of, func(spare float64) *rough { return l.next(&before, of, d, spare) })
		if of == vehicles.FuelRun && !ok && s.laid.Result.Job.Fuel == nil {
			at.Job, ok = before.Job.WithRun(vehicles.FuelRun, nil), true // that one only kept its place
		}
	}
	if ok {
		l.take(s, at.Job)
	}
}

// sparest is a job with a run laid with the most to spare that it can have; ok is false where it can't be laid at all. It is sought with ever less
// of that, and what is found is worked on until it has more.
func (l *layouting) sparest(r Result, of vehicles.RunKind, seek func(spare float64) *rough) (with Result, ok bool) {
	for _, spare := range soughtWider {
		k := seek(spare)
		if k == nil {
			return r, false
		}
		k.by = finely
		best := k.worked()
		if !best.keeps() {
			continue
		}
		for k.to.Spare = spare + widerStep; k.to.Spare <= widest; k.to.Spare += widerStep {
			a := k.straightened(best.corners, k.course, k.demand.judged, best.lower, finely)
			if !a.keeps() {
				break
			}
			best = a
		}
		return putRun(r, of, k.told(k.plainer(best)).Run), true
	}
	return r, false
}

// plainer is a run without the slight bends that gain it less than is told apart of what it keeps to spare: each is one to make, and seen by nobody.
func (k *rough) plainer(best *attempt) *attempt {
	spare := k.to.Spare
	defer func() { k.to.Spare = spare }()
	k.to.Spare = min(k.keptBy(best), widest) - marginGrade
	for i := len(best.corners) - 2; i >= 1; i-- {
		if turnAt(best.corners[i-1], best.corners[i], best.corners[i+1]) >= slightTurn {
			continue
		}
		without := slices.Delete(slices.Clone(best.corners), i, i+1)
		plain := k.straightened(without, k.course, k.demand.judged, best.lower, k.by)
		if plain.keeps() && len(plain.corners) < len(best.corners) && plain.worth.Length < best.worth.Length+cornerCounts {
			best = plain
			i = min(i, len(best.corners)-1) // that behind it may be slight now
		}
	}
	return best
}

// slightTurn is the turn, degrees, below which a bend is hardly seen: a line without it lies a fingerbreadth away. common practice, no source
const slightTurn = 10.0

// keptBy is what a run keeps of every obstruction beside what is asked of it.
func (k *rough) keptBy(a *attempt) float64 {
	t := k.trial(k.demand.judged, a.lower)
	t.worth(a.corners, 0, math.Inf(1))
	return keptSpare(t.last.findings)
}

// detour tells whether a fuel line goes a long way round: any bubble and any leak has so much more of it.
func detour(line *vehicles.LaidRun) bool {
	if line == nil {
		return false
	}
	n := len(line.Path)
	return line.Line.Length() > detourTimes*line.Path[n-1].Sub(line.Path[0]).Norm()+detourMore
}

// A fuel line goes a long way round that is longer than so many times the straight way between its ends, and so many mm more: it has to go
// below what lies between them. common practice, no source
const (
	detourTimes = 2
	detourMore  = 200
)
