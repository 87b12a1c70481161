package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// spreadClips are places for the clips of a laid run, whole mm along it: between its ends and those of its muffler, evenly, no farther
// apart than is asked, and where they can on straight pipe: a clip in a bend turns.
func spreadClips(r *vehicles.LaidRun, limit *Limit) (clips []float64) {
	apart := usualSpan
	if limit.Value.Set && limit.Value.Value >= 1 {
		apart = limit.Value.Value
	}
	length := r.Line.Length()
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
	if m := r.Muffler; m != nil {
		spread(0, m.From)
		spread(m.To, length)
		return clips
	}
	spread(0, length)
	return clips
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
