package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// spreadClips are places for the clips of a laid run, whole mm along it: between its ends and those of its muffler, evenly, no farther
// apart than is asked, and where they can on straight pipe: a clip in a bend turns. With a limit for the first it comes sooner.
func spreadClips(r *vehicles.LaidRun, limit, first *Limit) (clips []float64) {
	apart := usualSpan
	if limit.Value.Set && limit.Value.Value >= 1 {
		apart = limit.Value.Value
	}
	length := r.Line.Length()
	begin := firstOf(r, first)
	clips = []float64{}
	spread := func(from, to float64) {
		n := math.Ceil((to-from)/apart - marginNoise)
		for n > 1 && (to-from)/n > apart-1 { // a whole mm either way
			n++
		}
		for k := 1.0; k < n; k++ {
			at := from + (to-from)*k/n
			spare := (apart - (to-from)/n) / 2 // by how much each may move
			clips = append(clips, math.Round(straightNear(&r.Line, at, max(0, spare-1))))
		}
	}
	if begin > 0 {
		clips = append(clips, begin)
	}
	if m := r.Muffler; m != nil {
		spread(begin, m.From)
		spread(m.To, length)
		return clips
	}
	spread(begin, length)
	return clips
}

// firstOf is where the first clip is to be so that the stub does not carry the run, mm along it; 0 where the run or its muffler
// begins sooner, or no limit asks for one.
func firstOf(r *vehicles.LaidRun, limit *Limit) float64 {
	if limit == nil || !limit.Value.Set || limit.Value.Value < 1 {
		return 0
	}
	most, end := math.Floor(limit.Value.Value), r.Line.Length()
	if r.Muffler != nil {
		end = r.Muffler.From
	}
	if end <= most {
		return 0
	}
	half := math.Floor(most / 2)
	return math.Floor(straightNear(&r.Line, half, half))
}

// clipLimits are what is asked of the clips of a run: how far apart they may be, and, in a job that asks its runs for everything, how
// near to its stub the first is; that is nil in others.
func (j *judge) clipLimits(of Sort) (span, first *Limit) {
	span = j.book.of(clipSpanRule)
	if !j.inFull() {
		return span, nil
	}
	if of != TheExhaust {
		span = j.book.ofKinds(otherClipSpan).of(of.String())
	}
	return span, j.book.ofKinds(firstClip).of(of.String())
}

// usualSpan is how far apart clips are where no book says, mm. common practice, no source
const usualSpan = 400.0

// straightNear is the place nearest to one along a run, and no farther than so many mm, where it is straight; the place itself where
// there is none.
func straightNear(line *geometry.Run, at, within float64) float64 {
	best, off := at, math.Inf(1)
	for _, l := range line.Legs {
		begin, end := l.Begin+clipHalf, l.End-clipHalf
		if begin > end {
			continue
		}
		near := min(max(at, begin), end)
		if far := math.Abs(near - at); far < off && far <= within {
			best, off = near, far
		}
	}
	return best
}

// clipHalf is half of how much straight pipe a clip takes, mm. common practice, no source
const clipHalf = 10

// drainsOf are drain holes for a laid run, whole mm along it: one at each low point; nil where it has none.
func drainsOf(r *vehicles.LaidRun) (drains []float64) {
	for _, along := range Undrained(r, nil) {
		drains = append(drains, math.Round(along))
	}
	return drains
}
