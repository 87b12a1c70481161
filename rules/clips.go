package rules

import (
	"cmp"
	"math"
	"slices"

	"bench.example/undermark/vehicles"
)

// Clips are places for the clips of a run.
type Clips struct {
	Along []float64 // whole mm along it, in order; never nil
	Apart float64   // how far apart they are at the most, mm
	Asked bool      // by a book; else it is the usual
	Loose int       // how many have nothing within reach that would hold them
}

// SpreadClips spreads clips along a laid run of a judged job: no farther apart than they may be, its ends, its muffler and its pump
// counting as held; in a job that asks its runs for everything the first within reach of the stub; and as far as that can be each where it
// has something to hold it, and on straight pipe, as a clip in a bend turns. They are as few as that takes, and spaced as evenly.
func SpreadClips(r *Result, kind vehicles.RunKind, laid *vehicles.LaidRun) Clips {
	j := newJudge(&r.Job, &r.Plan, r.Book)
	return j.spreadClips(SortOf(kind), laid)
}

// OfClips tells whether a finding is of how far apart the clips of a run are: spreading them anew mends it.
func (f *Finding) OfClips(of vehicles.RunKind) bool {
	return f.Subject.Sort == SortOf(of) && (f.Rule == clipSpanRule || f.Rule == otherClipSpan || f.Rule == firstClip)
}

func (j *judge) spreadClips(of Sort, laid *vehicles.LaidRun) Clips {
	return newSpreader(j, of, laid).spread()
}

// clipHalf is half of how much straight pipe a clip takes, mm. common practice, no source
const clipHalf = 10

// spreader spreads the clips of one run.
type spreader struct {
	*judge
	laid    *vehicles.LaidRun
	fromEnd bool    // its stub is at its end
	hold    *Limit  // how near a clip is to what holds it
	first   float64 // how near the first clip is to the stub, mm; 0: that is not asked
	apart   float64
	asked   bool
}

func newSpreader(j *judge, of Sort, laid *vehicles.LaidRun) *spreader {
	s := &spreader{judge: j, laid: laid, fromEnd: of == TheFuel, hold: j.book.ofKinds(clipHold).of(of.String())}
	span := j.book.of(clipSpanRule)
	if j.inFull() {
		s.first = math.Floor(j.book.ofKinds(firstClip).of(of.String()).Value.Or(0))
		if of != TheExhaust {
			span = j.book.ofKinds(otherClipSpan).of(of.String())
		}
	}
	s.apart, s.asked = span.Value.Value, span.Value.Set && span.Value.Value >= 1
	if !s.asked {
		s.apart = Builtin().of(clipSpanRule).Value.Value // the usual
	}
	return s
}

// spread spreads them over each stretch between what holds the run anyway.
func (s *spreader) spread() Clips {
	clips := Clips{Along: []float64{}, Apart: s.apart, Asked: s.asked}
	held := s.held()
	if at, ok := s.firstOf(held); ok {
		clips.Along = append(clips.Along, at)
		held = append(held, at)
		slices.Sort(held)
	}
	for i := 1; i < len(held); i++ {
		if m := s.laid.Muffler; m == nil || held[i-1] < m.From || held[i] > m.To {
			clips.Along = append(clips.Along, s.between(held[i-1], held[i])...)
		}
	}
	slices.Sort(clips.Along)
	for _, at := range clips.Along {
		clips.Loose += s.loose(at)
	}
	return clips
}

// held are the places along the run that need no clip, in order.
func (s *spreader) held() []float64 {
	held := []float64{0, s.laid.Line.Length()}
	if m := s.laid.Muffler; m != nil {
		held = append(held, m.From, m.To)
	}
	if p := s.laid.Pump; p.Set && !s.inThickness(s.laid.Line.At(p.Value)) {
		held = append(held, p.Value)
	}
	slices.Sort(held)
	return held
}

// firstOf is where the clip goes that spares the stub the run's weight: about halfway to where it may be at the most. ok is false where
// what holds the run anyway is within that, or no book says how far it is.
func (s *spreader) firstOf(held []float64) (along float64, ok bool) {
	length, next := s.laid.Line.Length(), held[1]
	if s.fromEnd {
		next = length - held[len(held)-2]
	}
	if s.first < 1 || next <= s.first {
		return 0, false
	}
	var best spreading
	half := math.Floor(s.first / 2)
	for off := 0.0; off <= half; off++ {
		for _, from := range [...]float64{half - off, half + off} {
			at := from
			if s.fromEnd {
				at = math.Ceil(length - from)
			}
			worth := s.at(at)
			worth.uneven = off
			if !ok || worth.less(best) {
				along, best, ok = at, worth, true
			}
		}
		if best.loose+best.bent == 0 {
			break // those farther off are no better
		}
	}
	return along, ok
}

// spreading is what clips come to: less is better, first of the one and then of the next.
type spreading struct {
	loose, clips, bent int
	uneven             float64
}

func (a spreading) less(b spreading) bool {
	return cmp.Or(cmp.Compare(a.loose, b.loose), cmp.Compare(a.clips, b.clips), cmp.Compare(a.bent, b.bent), cmp.Compare(a.uneven, b.uneven)) < 0
}

func (a spreading) plus(b spreading) spreading {
	return spreading{a.loose + b.loose, a.clips + b.clips, a.bent + b.bent, a.uneven + b.uneven}
}

// at is what one clip at a place comes to.
func (s *spreader) at(along float64) spreading {
	one := spreading{loose: s.loose(along), clips: 1, bent: 1}
	for _, l := range s.laid.Line.Legs {
		if along >= l.Begin+clipHalf && along <= l.End-clipHalf {
			one.bent = 0
		}
	}
	return one
}

// loose is 1 for a clip that has nothing within reach, or none can be put, else 0.
func (s *spreader) loose(along float64) int {
	at := s.laid.Line.At(along)
	if s.inThickness(at) || s.hold.Value.Set && !s.heldWithin(s.hold.Value.Value, at, s.laid.Radius) {
		return 1
	}
	return 0
}

// between are the clips between two places that are held: of all choices among some places the best, by the least that leads to each.
func (s *spreader) between(from, to float64) (clips []float64) {
	if to-from <= s.apart+marginNoise {
		return nil
	}
	places := s.places(from, to)
	last := len(places) - 1
	best, before := make([]spreading, last+1), make([]int, last+1)
	for k := 1; k <= last; k++ {
		own, found := spreading{}, false
		if k < last {
			own = s.at(places[k])
		}
		for i := k - 1; i >= 0 && places[k]-places[i] <= s.apart+marginNoise; i-- {
			apart := places[k] - places[i]
			whole := best[i].plus(own).plus(spreading{uneven: apart * apart})
			if !found || whole.less(best[k]) {
				best[k], before[k], found = whole, i, true
			}
		}
	}
	for k := before[last]; k > 0; k = before[k] {
		clips = append(clips, places[k])
	}
	return clips
}

// clipStep is how far apart the places are that are thought of for a clip, mm: nobody sets one closer.
const clipStep = 5.0

// places are those thought of between two that are held, both included: in steps, and where the fewest would be evenly spaced.
func (s *spreader) places(from, to float64) (list []float64) {
	step := max(1, math.Floor(min(clipStep, s.apart/4)))
	for at := math.Ceil((from+1)/step) * step; at < to; at += step {
		list = append(list, at)
	}
	parts := math.Ceil((to-from)/s.apart - marginNoise)
	for k := 1.0; k < parts; k++ {
		list = append(list, math.Round(from+(to-from)*k/parts))
	}
	slices.Sort(list)
	list = slices.DeleteFunc(slices.Compact(list), func(at float64) bool { return at <= from || at >= to })
	return append(append([]float64{from}, list...), to)
}

// drainsOf are drain holes for a laid run, whole mm along it: one at each low point; nil where it has none.
func drainsOf(r *vehicles.LaidRun) (drains []float64) {
	for _, along := range Undrained(r, nil) {
		drains = append(drains, math.Round(along))
	}
	return drains
}
