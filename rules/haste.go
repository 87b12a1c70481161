package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// haste is what spares a trial of a run most of the judging: thousands of runs are tried for each that is found. It passes over obstructions
// that are too far away for the run to fall short of anything, and looks first at what the run tried before fell short of, so that
// another of the kind is soon known to be no better. What a trial comes to is the same without it, up to the rounding of sums. Nil
// spares nothing.
type haste struct {
	boxes     [][2]geometry.Point3 // about each obstruction, grown by what is kept beside a limit at the most
	low, high geometry.Point3      // the box in which that holds
	first     int                  // the obstruction that is looked at first
	short     func(*Finding) float64
	left      float64 // how much a run may still fall short of
	measured  [len(vehicles.RunKinds)]measured
	tubes     [len(vehicles.RunKinds)]geometry.Tube
	others    map[stretched]*geometry.Tube // what the runs fill that stay as they are
	own       [2]geometry.Tube             // memory for what the run that is tried does
	next      int                          // which of it is free
}

// tried tells whether a run is the one that is tried: another each time.
func (j *judge) tried(r *vehicles.LaidRun) bool { return j.only != Nothing && r == j.run(j.only) }

// whole is what all of a run fills.
func (j *judge) whole(of Sort) *geometry.Tube {
	if r := j.run(of); j.haste != nil && !j.tried(r) {
		return j.stretch(r, 0, r.Line.Length())
	}
	return j.measuring(of).fills()
}

// stretched is a stretch of a run between two places along it.
type stretched struct {
	run      *vehicles.LaidRun
	from, to float64
}

// stretch is what a run fills between two places along it, mm, good until two more were asked for of the run that is tried.
func (j *judge) stretch(r *vehicles.LaidRun, from, to float64) *geometry.Tube {
	h := j.haste
	switch {
	case h == nil:
		return stretchOf(r, from, to)
	case j.tried(r):
		t := h.own[h.next].Emptied()
		h.next = (h.next + 1) % len(h.own)
		return filledBy(t, r, from, to)
	}
	k := stretched{r, from, to}
	if h.others[k] == nil {
		h.others[k] = stretchOf(r, from, to)
	}
	return h.others[k]
}

// nothing is where the next run of a kind is measured: in the memory of the one before, which nobody asks for any more.
func (h *haste) nothing(k vehicles.RunKind) (*measured, *geometry.Tube) {
	if h == nil {
		return &measured{}, &geometry.Tube{}
	}
	return &h.measured[k], &h.tubes[k]
}

// beyondTheBox is how far outside the box of its way a run may be that is tried, mm; one that is farther out is judged whole.
const beyondTheBox = 500

// newHaste is that of trials of runs which are to be clear by so many sigma, and to keep something to spare beside that.
func newHaste(c *course, bands, spare float64, short func(*Finding) float64) *haste {
	out := geometry.Point3{X: beyondTheBox, Y: beyondTheBox, Z: beyondTheBox}
	h := &haste{low: c.query.Min.Sub(out), high: c.query.Max.Add(out), short: short, others: map[stretched]*geometry.Tube{}}
	longest := h.high.Sub(h.low).Norm() + max(math.Abs(h.low.X), math.Abs(h.high.X))
	mark, height := c.gauge.MarkVariance(longest), c.tape.HeightU()
	for i := range c.plan.Obstructions {
		thing := &c.plan.Obstructions[i]
		low, high := thing.Prism.Footprint.Bounds()
		along := max(thing.X.U, thing.Y.U)
		for _, e := range thing.Edges {
			along = max(along, e.U)
		}
		turn := thing.UTurn * high.Sub(low).Norm() / 2
		sigma := math.Sqrt(mark + along*along + thing.UTop*thing.UTop + height*height + turn*turn)
		keep := 1 + bands*sigma + spare // 1 mm for all rounding
		grown := geometry.Point3{X: keep, Y: keep, Z: keep}
		h.boxes = append(h.boxes, [2]geometry.Point3{low.At(thing.Prism.Low).Sub(grown), high.At(thing.Prism.High).Add(grown)})
	}
	return h
}

// nth is which obstruction is looked at as the n-th: the first one first, the others in their order.
func (h *haste) nth(n int) int {
	switch {
	case h == nil || n > h.first:
		return n
	case n == 0:
		return h.first
	}
	return n - 1
}

// spares tells whether what a run fills is surely too far from an obstruction, which may be higher or lower by some mm, to fall short
// of a limit.
func (h *haste) spares(t *geometry.Tube, i int, limit *Limit, moves float64) bool {
	if h == nil || !t.LiesIn(h.low, h.high) {
		return false
	}
	keep := max(0, limit.least())
	box, grown := &h.boxes[i], geometry.Point3{X: keep, Y: keep, Z: keep + moves}
	return t.Misses(box[0].Sub(grown), box[1].Add(grown))
}

// settles tells whether a run falls short of too much with what is found of an obstruction.
func (h *haste) settles(i int, f *Finding) bool {
	if h == nil {
		return false
	}
	if h.left -= h.short(f); h.left < -marginNoise {
		h.first = i
		return true
	}
	return false
}
