package vehicles

import "slices"

// reduced is what the obstructions of a job came to, kept for a job that comes of it by an edit: a key mostly moves one thing, and the
// others are where they were. Its zero value is of no job.
type reduced struct {
	floor  Floor
	datum  Datum
	tape   Tape
	bow    []BowPoint
	things List[Obstruction]
	places []Placed
}

// reducedOf is what the obstructions of a job came to; of one with faults in them or with overall readings, which move what was
// measured before them, nothing is kept.
func (r *reducer) reducedOf(places []Placed) reduced {
	if j := r.job; len(r.faults) == 0 && !j.totalUnder() {
		return reduced{j.Floor, j.Datum, j.Tape, j.Bow, j.Obstructions, places}
	}
	return reduced{}
}

// of is what of it holds for a job: nothing where the tape or its zeros are others, or where there are overall readings.
func (s reduced) of(j *Job) reduced {
	if s.floor == j.Floor && s.datum == j.Datum && s.tape == j.Tape && slices.Equal(s.bow, j.Bow) && !j.totalUnder() {
		return s
	}
	return reduced{}
}

// all tells whether a job's obstructions are the very same.
func (s *reduced) all(things List[Obstruction]) bool {
	n := len(things)
	return n > 0 && n == len(s.things) && &things[0] == &s.things[0]
}

// has tells whether the place of one of a job's obstructions is known: nobody touched it, it does not run on from the one before it,
// and none runs on from it.
func (s *reduced) has(things List[Obstruction], i int) bool {
	return i < len(s.things) && things[i].reducesAs(&s.things[i]) && things[i].startsAnew() && (i+1 == len(things) || things[i+1].startsAnew())
}

// reducesAs tells whether two obstructions have the same place, without overall readings and whatever they are called.
func (o *Obstruction) reducesAs(p *Obstruction) bool {
	return o.Shape == p.Shape && o.X == p.X && o.Y == p.Y && o.Turn == p.Turn && o.Centre == p.Centre && o.Across == p.Across &&
		slices.Equal(o.Path, p.Path) && o.Drop == p.Drop && o.TapedAt == p.TapedAt && o.Measured == p.Measured
}

// startsAnew tells whether a place is measured without what is before it in the list, and what runs on behind it starts from it.
func (p *Place) startsAnew() bool { return !p.runsOn() && (p.Shape != Piped || len(p.Path) > 0) }
