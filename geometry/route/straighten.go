package route

import (
	"cmp"
	"context"
	"encoding/binary"
	"math"
	"slices"

	"bench.example/undermark/geometry"
)

// Worth is what a run comes to: by how much it falls short of what is asked, in all, and how long it is. Less is better, first of the
// one and then of the other.
type Worth struct{ Short, Length float64 }

// Better tells whether a run is worth more than another, rounding aside.
func (w Worth) Better(than Worth) bool {
	if math.Abs(w.Short-than.Short) > touching {
		return w.Short < than.Short
	}
	return w.Length < than.Length-touching
}

// Straightener works on a run's corners until no single move makes it better.
type Straightener struct {
	Bend float64 // the radius that the run's corners are rounded with
	// Worth is what a run comes to. It is asked whether one falls short by no more than most: beyond that, rounding aside, any
	// greater figure will do.
	Worth   func(corners []geometry.Point3, most float64) Worth
	LastMay func(at geometry.Point3) bool // whether the last corner may be there; nil: it stays
	Steps   []float64                     // how far corners are moved, mm, from far to near; each a whole number
	Heads   bool                          // a run that falls short keeps the corner that its last leg has its direction from
	Most    float64                       // a run that falls short by more than so many times a step, once that has done what it can, is left as it is; 0: none is
	Tries   int                           // how many runs are tried for each corner at the most; 0: as many as may ever help
}

// Straighten returns the corners of a run, all but the first whole mm, that no move makes better: of a corner, of a leg, or one left
// out. It stops where it is once ctx is done.
func (s *Straightener) Straighten(ctx context.Context, corners []geometry.Point3) ([]geometry.Point3, Worth) {
	best := s.whole(corners)
	w := work{s: s, ctx: ctx, corners: best, worth: s.Worth(best, math.Inf(1)), left: cmp.Or(s.Tries, triesEach) * len(best), tried: map[string]bool{}}
	for _, step := range s.Steps {
		for w.goesOn() && (w.leaveOut() || w.moveAll(step)) {
		}
		if s.Most > 0 && w.worth.Short > s.Most*step {
			break
		}
	}
	return w.corners, w.worth
}

// triesEach is how many runs are tried for each corner at the most where nothing else is said. Those that can be mended are in a quarter of it; others creep along
// what they can't get past.
const triesEach = 800

// whole are corners in whole mm, but for the first and a last one that stays; such as are one then are left out.
func (s *Straightener) whole(corners []geometry.Point3) []geometry.Point3 {
	all := slices.Clone(corners)
	last := len(all) - 1
	for i := 1; i < last || i == last && s.LastMay != nil; i++ {
		all[i] = Whole(all[i])
	}
	kept := all[:1]
	for i := 1; i < last; i++ {
		if all[i].Sub(kept[len(kept)-1]).Norm() >= OneCorner && all[i].Sub(all[last]).Norm() >= OneCorner {
			kept = append(kept, all[i])
		}
	}
	if last > 0 {
		kept = append(kept, all[last])
	}
	return kept
}

// OneCorner is how near to each other two corners are one, mm: the grid of whole mm that corners stand on holds none nearer.
const OneCorner = 0.5

// Whole is a corner as Straighten has it: in whole mm.
func Whole(p geometry.Point3) geometry.Point3 {
	return geometry.Point3{X: math.Round(p.X), Y: math.Round(p.Y), Z: math.Round(p.Z)}
}

// work is a run being worked on.
type work struct {
	s       *Straightener
	ctx     context.Context
	corners []geometry.Point3
	worth   Worth
	left    int             // how many runs may still be tried
	tried   map[string]bool // by their corners: what came to no more once never will, as the run only gets better
	key     []byte
	run     geometry.Run // the one that is tried, rounded
}

func (w *work) goesOn() bool { return w.left > 0 && w.ctx.Err() == nil }

// try takes corners where they are better.
func (w *work) try(corners []geometry.Point3) bool {
	if w.worth.Short <= touching {
		if w.run.Round(corners, w.s.Bend); w.run.Length() >= w.worth.Length-touching {
			return false // one that falls short of nothing has to be shorter
		}
	}
	w.left--
	if w.key = keyOf(w.key[:0], corners); w.tried[string(w.key)] {
		return false
	}
	w.tried[string(w.key)] = true
	worth := w.s.Worth(corners, w.worth.Short)
	if !worth.Better(w.worth) {
		return false
	}
	w.corners, w.worth = slices.Clone(corners), worth
	return true
}

// keyOf appends what tells corners from all others.
func keyOf(key []byte, corners []geometry.Point3) []byte {
	for _, c := range corners {
		for _, v := range [...]float64{c.X, c.Y, c.Z} {
			key = binary.LittleEndian.AppendUint64(key, math.Float64bits(v))
		}
	}
	return key
}

// heads tells whether a run's last leg would point elsewhere without a corner.
func (w *work) heads(corner int) bool {
	at, end := w.corners[corner], w.corners[len(w.corners)-1]
	return geometry.Angle(end.Sub(at), end.Sub(w.corners[corner-1])) > elsewhere
}

// elsewhere is by how much another direction is another, radians.
const elsewhere = math.Pi / 8

// leaveOut leaves out a corner where the run is better without.
func (w *work) leaveOut() bool {
	for i := 1; i < len(w.corners)-1; i++ {
		if w.s.Heads && i == len(w.corners)-2 && w.worth.Short > touching && w.heads(i) {
			continue
		}
		if w.try(slices.Delete(slices.Clone(w.corners), i, i+1)) {
			return true
		}
	}
	return false
}

// ways are the directions in which a corner is moved.
var ways = []geometry.Point3{
	{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {Z: 1}, {Z: -1},
	{X: 1, Y: 1}, {X: -1, Y: -1}, {X: 1, Y: -1}, {X: -1, Y: 1},
	{X: 1, Z: 1}, {X: -1, Z: -1}, {X: 1, Z: -1}, {X: -1, Z: 1},
	{Y: 1, Z: 1}, {Y: -1, Z: -1}, {Y: 1, Z: -1}, {Y: -1, Z: 1},
}

// moveAll moves each corner, alone and with the next, as far as it gets better; better tells whether any did.
func (w *work) moveAll(step float64) (better bool) {
	for i := 1; i < len(w.corners); i++ {
		for _, way := range ways {
			for w.goesOn() && w.move(i, 1, way.Scale(step)) {
				better = true
			}
		}
	}
	for i := 1; i < len(w.corners)-1; i++ {
		for _, way := range ways {
			for w.goesOn() && w.move(i, 2, way.Scale(step)) {
				better = true
			}
		}
	}
	return better
}

// move tries so many corners, from the i-th on, moved by so much.
func (w *work) move(i, many int, by geometry.Point3) bool {
	moved := slices.Clone(w.corners)
	for k := i; k < min(i+many, len(moved)); k++ {
		moved[k] = moved[k].Add(by)
	}
	if last := len(moved) - 1; i+many > last && (w.s.LastMay == nil || !w.s.LastMay(moved[last])) {
		return false
	}
	return w.try(moved)
}
