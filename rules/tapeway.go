package rules

import (
	"math"

	"bench.example/undermark/geometry"
)

// TapeWay is one of the ways by which a mark's place is taped on top.
type TapeWay uint8

// The ways, as AboveReadings has their readings.
const (
	FromDatum TapeWay = iota
	FromLeft
	FromRight
	FromLeftPin
	FromRightPin
)

// TapeWays are all of them.
var TapeWays = [...]TapeWay{FromDatum, FromLeft, FromRight, FromLeftPin, FromRightPin}

// OfPin tells whether it is taped from a pin.
func (w TapeWay) OfPin() bool { return w > FromRight }

const (
	// tapeAcross is how wide a floor the tape needs, mm. common practice, no source: blades are 16 to 32 wide.
	tapeAcross = 25
	// tapeUnder is how high over the floor a fitting's foot lets a tape pass below it, mm. common practice, no source.
	tapeUnder = 30
	// How far a tape may be moved aside and its line carried square to the mark, and in which steps, mm. common practice, no source:
	// a large square is 600 long.
	mostAside, asideStep = 600.0, 10.0
)

// Standing is what stands on the floor where a tape has to lie.
type Standing struct {
	Fittings []int // by the job's list; all that the tape would pass through
	Aside    *Aside
}

// Aside is the nearest place beside its own at which a tape is free, so that its line can be carried square to the mark.
type Aside struct {
	Off     float64 // how far beside: of a tape from the datum, to the left, else forward; mm, signed
	Reading float64 // what the tape says there, mm
}

// OnFloor returns what stands in the way of a mark's tape, as it is taped on top; nothing for a mark from below. What hangs clear of
// the floor, and what runs inside it, lets the tape pass. A fitting may be one that is only planned: nobody tells those apart.
func OnFloor(r *Result, mark Mark, way TapeWay) Standing {
	if mark.Above == nil {
		return Standing{}
	}
	t := taping{r: r, end: geometry.Point{X: mark.Above.X, Y: mark.Above.Y}}
	zero := t.zero(mark.Above, way)
	s := Standing{Fittings: t.met(zero, t.end)}
	if len(s.Fittings) > 0 && !way.OfPin() {
		s.Aside = t.aside(zero, way)
	}
	return s
}

// taping lays tapes over the floor, in the frame above.
type taping struct {
	r   *Result
	end geometry.Point // the mark
}

// zero is where a way's tape begins.
func (t *taping) zero(a *AboveReadings, way TapeWay) geometry.Point {
	job := &t.r.Job
	switch way {
	case FromLeft:
		return geometry.Point{X: a.X, Y: job.AboveLeft()}
	case FromRight:
		return geometry.Point{X: a.X, Y: -job.AboveRight()}
	case FromLeftPin:
		return geometry.Point{X: job.Datum.ShiftAbove.Value, Y: job.Pins()}
	case FromRightPin:
		return geometry.Point{X: job.Datum.ShiftAbove.Value, Y: -job.Pins()}
	}
	return geometry.Point{X: a.X - job.AboveBumper(t.end), Y: a.Y}
}

// met are the fittings that a tape from one place to another passes through.
func (t *taping) met(from, to geometry.Point) (fittings []int) {
	tape := t.tape(from, to)
	for i := range t.r.Plan.Fittings {
		if t.meets(tape, i) {
			fittings = append(fittings, i)
		}
	}
	return fittings
}

// tape is what a tape from one place to another covers of the floor, in the frame below.
func (t *taping) tape(from, to geometry.Point) geometry.Footprint {
	fit := &t.r.Plan.Fit
	return geometry.NewLine([]geometry.Point{fit.Down(from), fit.Down(to)}, tapeAcross/2.0)
}

// meets tells whether a tape passes through a fitting.
func (t *taping) meets(tape geometry.Footprint, fitting int) bool {
	p, top := &t.r.Plan.Fittings[fitting].Prism, t.r.Job.Floor.Thickness
	return p.High > top && p.Low < top+tapeUnder && geometry.Between(tape, p.Footprint).Gap < 0
}

// aside is the nearest place to both sides where tape and square lie free, nil where there is none.
func (t *taping) aside(zero geometry.Point, way TapeWay) *Aside {
	along := geometry.Point{X: 1}
	if way == FromDatum {
		along = geometry.Point{Y: 1}
	}
	for off := asideStep; off <= mostAside; off += asideStep {
		for _, signed := range [...]float64{off, -off} {
			by := along.Scale(signed)
			if end := t.end.Add(by); t.met(zero.Add(by), end) == nil && t.met(end, t.end) == nil && t.onFloor(end) {
				return &Aside{Off: signed, Reading: t.reading(end, way)}
			}
		}
	}
	return nil
}

// onFloor tells whether a place is on the floor.
func (t *taping) onFloor(p geometry.Point) bool {
	down, least, most := t.r.Plan.Fit.Down(p), t.r.Plan.FloorMin, t.r.Plan.FloorMax
	return down.X >= least.X && down.X <= most.X && math.Abs(down.Y) <= most.Y
}

// reading is what a way's tape says at a place of the frame above.
func (t *taping) reading(p geometry.Point, way TapeWay) float64 {
	m := marker{job: &t.r.Job, fit: &t.r.Plan.Fit}
	return m.both("", t.r.Plan.Fit.Down(p)).Above.By(way)
}

// By is the reading of a way, mm.
func (a *AboveReadings) By(way TapeWay) float64 {
	return [...]float64{FromDatum: a.Bumper, FromLeft: a.Left, FromRight: a.Right, FromLeftPin: a.PinLeft, FromRightPin: a.PinRight}[way]
}

// SigmaOf is the mark's standard uncertainty along the tape of a way, mm; 0 for a mark from below.
func SigmaOf(r *Result, mark Mark, way TapeWay) float64 {
	a := mark.Above
	switch {
	case a == nil:
		return 0
	case way == FromDatum:
		return a.Sigma[0]
	case !way.OfPin():
		return a.Sigma[1]
	}
	end := geometry.Point{X: a.X, Y: a.Y}
	t := taping{r: r, end: end}
	along := end.Sub(t.zero(a, way))
	if along.Norm() == 0 {
		return math.Max(a.Sigma[0], a.Sigma[1])
	}
	return math.Hypot(along.X*a.Sigma[0], along.Y*a.Sigma[1]) / along.Norm()
}
