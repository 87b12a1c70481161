package geometry

import (
	"math"
	"slices"
)

// Run is a centreline with rounded corners; make it with Rounded. Places along it are given in mm from its start.
type Run struct {
	Legs      []Leg
	ShortLegs []int // legs too short for the bends at their ends, as indices into Legs, in order
	path      []Point3
	pieces    []element
	length    float64
}

// Leg is a leg of the path a run was made from.
type Leg struct {
	A, B       Point3  // the unrounded corners
	Begin, End float64 // the places along the run between which the leg is straight
	cut        float64 // what the bend at A takes off the leg
}

// Rounded returns the run along path (one point or more) with every inner corner rounded by an arc of radius bend
// tangent to both legs. All tangents are found first; at both ends of a leg that is too short for its two the corners
// stay sharp. A corner where the path folds straight back needs an endless tangent, so it stays sharp too, as does one
// at a leg without length; a bend of 0 rounds nothing.
func Rounded(path []Point3, bend float64) Run {
	var r Run
	r.Round(path, bend)
	return r
}

// Round makes the run that of a path as Rounded does, in the memory of what it was: whoever holds that, or a copy of it, holds nothing any more.
func (r *Run) Round(path []Point3, bend float64) {
	n := len(path)
	*r = Run{path: append(r.path[:0], path...), ShortLegs: r.ShortLegs[:0], Legs: slices.Grow(r.Legs[:0], n), pieces: slices.Grow(r.pieces[:0], 2*n)}
	var headingsOfFew [fewCorners]Point3
	var tangents [fewCorners]float64
	var sharps [fewCorners]bool
	heading := headings(headingsOfFew[:0], path)
	tangent := append(tangents[:0], make([]float64, n)...)
	for i := 1; i < len(heading); i++ {
		tangent[i] = bend * math.Tan(turnAt(i, heading)/2)
	}
	sharp := append(sharps[:0], make([]bool, n)...)
	for i := 1; i < len(path); i++ {
		if tangent[i-1]+tangent[i] > path[i].Sub(path[i-1]).Norm()+legSlack {
			r.ShortLegs = append(r.ShortLegs, i-1)
			sharp[i-1], sharp[i] = true, true
		}
	}
	for i := range path {
		if sharp[i] {
			tangent[i] = 0
		}
	}
	r.build(heading, tangent, bend)
}

// fewCorners is how many corners a run may have to be rounded without memory of its own for what that takes: runs are laid by the hundred thousand
// where one is sought.
const fewCorners = 16

// headings returns the unit direction of every leg, in the memory of a list where that has room; one without length takes that of the next leg
// that has one, or else of the last that has.
func headings(heading, path []Point3) []Point3 {
	for i := 1; i < len(path); i++ {
		d := path[i].Sub(path[i-1])
		if n := d.Norm(); n > flat {
			d = d.Scale(1 / n)
		} else {
			d = Point3{} // what is left of two equal points that were worked out has no direction
		}
		heading = append(heading, d)
	}
	for i := len(heading) - 2; i >= 0; i-- {
		if heading[i] == (Point3{}) {
			heading[i] = heading[i+1]
		}
	}
	for i := 1; i < len(heading); i++ {
		if heading[i] == (Point3{}) {
			heading[i] = heading[i-1]
		}
	}
	return heading
}

// turnAt returns by how much a path bends at an inner point, radians, 0 where it goes straight on. Each leg is given by its direction.
func turnAt(point int, heading []Point3) float64 {
	if turn := Angle(heading[point-1], heading[point]); turn > straight {
		return turn
	}
	return 0
}

// build lays the straight pieces and the arcs one after the other.
func (r *Run) build(heading []Point3, tangent []float64, bend float64) {
	for i, along := range heading {
		a, b := r.path[i], r.path[i+1]
		leg := Leg{A: a, B: b, Begin: r.length, cut: tangent[i]}
		straight := max(0, b.Sub(a).Norm()-tangent[i]-tangent[i+1])
		end := b.Sub(along.Scale(tangent[i+1]))
		r.add(element{Piece: Piece{A: a.Add(along.Scale(tangent[i])), B: end, Along: along}, corner: end, length: straight})
		leg.End = r.length
		r.Legs = append(r.Legs, leg)
		if tangent[i+1] > 0 {
			next := heading[i+1]
			arc := Piece{A: end, B: b.Add(next.Scale(tangent[i+1])), Along: along, Inward: unit3(next.Sub(along.Scale(along.Dot(next)))), Radius: bend}
			length := bend * Angle(along, next)
			arc.Turn = length / bend
			r.add(element{Piece: arc, corner: b, length: length})
		}
	}
}

func (r *Run) add(p element) {
	p.start = r.length
	r.length += p.length
	r.pieces = append(r.pieces, p)
}

func unit3(v Point3) Point3 { return v.Scale(1 / v.Norm()) }

// Length returns the length of the rounded centreline, mm.
func (r Run) Length() float64 { return r.length }

// Turns returns the sum of the turns in space, degrees; rounding a corner does not change its turn.
func (r Run) Turns() (sum float64) {
	heading := headings(nil, r.path)
	for i := 1; i < len(heading); i++ {
		sum += turnAt(i, heading)
	}
	return sum * 180 / math.Pi
}

// FirstBend returns which leg (an index into Legs) the run's first bend leads into, rounded or sharp: a corner at which the path
// goes straight on is none. ok is false when the run is straight.
func (r Run) FirstBend() (leg int, ok bool) {
	heading := headings(nil, r.path)
	for i := 1; i < len(heading); i++ {
		if turnAt(i, heading) > 0 {
			return i, true
		}
	}
	return 0, false
}

// At returns the point s mm along the run; before its start the start, beyond its end the end.
func (r Run) At(s float64) Point3 {
	for i := range r.pieces {
		if p := &r.pieces[i]; s <= p.start+p.length || i == len(r.pieces)-1 {
			return p.at(clamp(s-p.start, 0, p.length))
		}
	}
	return r.path[0]
}

// Along returns the place along the run of the point that lies distance mm from the unrounded corner at the beginning
// of a leg (an index into Legs). Off the leg's straight part it counts on along the run, so that two places of one leg
// are as far apart along the run as on the leg.
func (r Run) Along(leg int, distance float64) float64 {
	l := r.Legs[leg]
	return clamp(l.Begin+distance-l.cut, 0, r.length)
}

// OnLeg is Along turned round: how far from the unrounded corner at the beginning of a leg the place s mm along the run
// counts as lying, mm; negative before the leg, more than its length behind it.
func (r Run) OnLeg(leg int, s float64) float64 {
	l := r.Legs[leg]
	return s - l.Begin + l.cut
}

// Lowest returns the lowest point of the run.
func (r Run) Lowest() Point3 { return r.LowestOn(0, r.length) }

// LowestOn returns the lowest point of the run between two places along it.
func (r Run) LowestOn(from, to float64) Point3 { return r.farthest(Point3{0, 0, 1}, from, to) }

// HighestOn returns the highest point of the run between two places along it.
func (r Run) HighestOn(from, to float64) Point3 { return r.farthest(Point3{0, 0, -1}, from, to) }

// farthest returns the point of a stretch that has the least component along n.
func (r Run) farthest(n Point3, from, to float64) Point3 {
	best := r.At(from)
	for i := range r.pieces {
		if p, ok := r.part(i, from, to); ok {
			if x := p.at(p.least(n, 0, p.length)); x.Dot(n) < best.Dot(n) {
				best = x
			}
		}
	}
	return best
}

// part returns what of the i-th piece lies between two places along the run; ok is false when nothing does.
func (r *Run) part(i int, from, to float64) (part element, ok bool) {
	p := &r.pieces[i]
	from, to = max(0, from-p.start), min(p.length, to-p.start)
	switch {
	case from >= to:
		return element{}, false
	case from == 0 && to == p.length:
		return *p, true
	}
	return p.part(from, to), true
}
