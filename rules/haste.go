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
}

// nothing is where the next run of a kind is measured: in the memory of the one before, which nobody asks for any more.
func (h *haste) nothing(k vehicles.RunKind) *measured {
	if h == nil {
		return &measured{}
	}
	return &h.measured[k]
}

// beyondTheBox is how far outside the box of its way a run may be that is tried, mm; one that is farther out is judged whole.
const beyondTheBox = 500

// newHaste is that of trials of runs which are to be clear by so many sigma, and to keep something to spare beside that.
func newHaste(c *course, bands, spare float64, short func(*Finding) float64) *haste {
	out := geometry.Point3{X: beyondTheBox, Y: beyondTheBox, Z: beyondTheBox}
	h := &haste{low: c.query.Min.Sub(out), high: c.query.Max.Add(out), short: short}
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
	if h == nil || !t.Within(h.low, h.high) {
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
