package vehicles

import "math"

// Straight returns the places between which a leg, from 1, is straight, mm from its unrounded corner: what hangs on a leg stays
// clear of the bends there.
func (r *LaidRun) Straight(leg int) (from, to float64) {
	l := r.Line.Legs[leg-1]
	return r.Line.OnLeg(leg-1, l.Begin), r.Line.OnLeg(leg-1, l.End)
}

// Legs is how many legs the run has.
func (r *LaidRun) Legs() int { return len(r.Path) - 1 }

// HasRoom tells whether a thing of a length fits on the straight part of a leg, from 1.
func (r *LaidRun) HasRoom(leg int, length float64) bool {
	from, to := r.Straight(leg)
	return to-from >= length-AlongNoise
}

// Slid is where a thing of a length comes to that lies start mm along a leg, from 1, when it is slid by so many mm along the run,
// back for less than 0: up to the bend first, and from there over the bend to the next leg that has room for it. ok is false where
// there is none.
func (r *LaidRun) Slid(leg int, start, length, by float64) (toLeg int, to float64, ok bool) {
	if r.HasRoom(leg, length) {
		from, end := r.Straight(leg)
		to = max(from, min(start+by, end-length))
		if math.Abs(to-start) > AlongNoise {
			return leg, settled(to), true
		}
	}
	step := 1
	if by < 0 {
		step = -1
	}
	for l := leg + step; l >= 1 && l <= r.Legs(); l += step {
		if !r.HasRoom(l, length) {
			continue
		}
		from, end := r.Straight(l)
		if by < 0 {
			from = end - length
		}
		return l, settled(from), true
	}
	return leg, start, false
}

// levelEnough is how steep a leg may be, mm of height a mm of plan, for a thing that has to hang level to be put there first.
const levelEnough = 0.3

// Seat is a leg, from 1, and a place on it for a thing of a length: the middle of the longest of the legs that are as good as
// level, or else of the longest of all that have room. ok is false where no leg has.
func (r *LaidRun) Seat(length float64) (leg int, start float64, ok bool) {
	longest, level := 0.0, false
	for l := 1; l <= r.Legs(); l++ {
		if !r.HasRoom(l, length) {
			continue
		}
		from, to := r.Straight(l)
		d := r.Path[l].Sub(r.Path[l-1])
		flat := math.Abs(d.Z) <= levelEnough*d.Plan().Norm()
		if flat && !level || flat == level && to-from > longest {
			longest, level = to-from, flat
			leg, start, ok = l, math.Round(from+(to-from-length)/2), true
		}
	}
	if ok {
		from, to := r.Straight(leg)
		start = max(from, min(start, to-length))
	}
	return leg, settled(start), ok
}

// SeatAt is a leg, from 1, and a place on it for a thing of a length with its middle as near as can be to a place along the run: on
// the leg that is straight there, or else that ends in the bend there. ok is false where that leg has no room.
func (r *LaidRun) SeatAt(along, length float64) (leg int, start float64, ok bool) {
	leg = r.Legs()
	for l := 1; l < leg; l++ {
		if along <= r.CornerAlong(l)+AlongNoise {
			leg = l
		}
	}
	if !r.HasRoom(leg, length) {
		return leg, 0, false
	}
	from, to := r.Straight(leg)
	return leg, settled(max(from, min(math.Round(r.Line.OnLeg(leg-1, along)-length/2), to-length))), true
}

// Where is how far along the rounded run a place lies that counts on a leg, from 1.
func (r *LaidRun) Where(leg int, start float64) float64 { return r.Line.Along(leg-1, start) }

// CornerAlong is the place along the rounded run of a corner of its path, from 0: the middle of its bend.
func (r *LaidRun) CornerAlong(corner int) float64 {
	switch {
	case corner <= 0:
		return 0
	case corner >= r.Legs():
		return r.Line.Length()
	}
	return (r.Line.Legs[corner-1].End + r.Line.Legs[corner].Begin) / 2
}
