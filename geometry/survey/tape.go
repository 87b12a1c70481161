package survey

import "math"

// Class is the accuracy class of a tape: "I", "II" or "III".
type Class string

// Limits returns a, b and c of the maximum permissible error a + b L + c, all mm, L in whole metres and c for
// the hook end. Source: 2014/32/EU annex X, MI-008 chapter I, table 1. For any other class ok is false and the
// limits are those of class III, the coarsest, so that nothing is believed too well.
func (c Class) Limits() (a, b, c0 float64, ok bool) {
	switch c {
	case "I":
		return 0.1, 0.1, 0.1, true
	case "II":
		return 0.3, 0.2, 0.2, true
	}
	return 0.6, 0.4, 0.3, c == "III"
}

// Tape is how well the tape reads and the fitter marks: every +/- error is the half width of a uniform spread,
// whose variance is a third of its square (JCGM 100:2008, 4.3.7).
type Tape struct {
	Class  Class
	Read   float64 // reading the tape, +/- mm
	Mark   float64 // putting a mark where the tape says, +/- mm
	Height float64 // any drop, rise or hook height, +/- mm
	Turn   float64 // any turn, +/- degrees
}

// metreNoise is how far over a whole metre a length still counts as that metre, mm. Lengths that come out of
// arithmetic carry rounding noise below 1e-10 mm within 20 m; the finest length a job states is far coarser.
const metreNoise = 1e-6

// Gauge is a tape with all looked up that does not depend on the reading: what many readings are reduced with. Its
// methods are those of the Tape.
type Gauge struct {
	a, b, c            float64 // of the class
	read, mark, height float64 // variances of the uniform errors, mm^2
}

// Gauge returns the tape made ready.
func (t Tape) Gauge() Gauge {
	a, b, c, _ := t.Class.Limits()
	return Gauge{a: a, b: b, c: c, read: uniform(t.Read), mark: uniform(t.Mark), height: uniform(t.Height)}
}

// mpe returns the tape's maximum permissible error for a reading of length mm (its sign does not matter), +/- mm.
// The length counts in metres rounded up: 1000 is one, 1000.001 is two, 0 is none. hook adds the error of the
// hook end; all readings but those that run on have it.
func (g *Gauge) mpe(length float64, hook bool) float64 {
	mpe := g.a + g.b*max(0, math.Ceil((math.Abs(length)-metreNoise)/1000))
	if hook {
		mpe += g.c
	}
	return mpe
}

// Variance returns the variance of one reading, mm^2: a third of mpe^2 + read^2.
func (t Tape) Variance(length float64, hook bool) float64 { return t.Terms(length, hook).Sum() }

// HeightU returns the standard uncertainty of any height, mm.
func (t Tape) HeightU() float64 { return t.Height / math.Sqrt(3) }

// TurnU returns the standard uncertainty of any turn, radians.
func (t Tape) TurnU() float64 { return t.Turn * math.Pi / 180 / math.Sqrt(3) }

// RunOn returns where a reading that runs on from a coordinate ends; length is negative when it runs down the
// axis. Its variance adds to that of the reading it runs on from, whose zero it goes with, and what was loose stays so.
func (g *Gauge) RunOn(from Coord, length float64) Coord {
	return Coord{
		Value: from.Value + length, U: math.Sqrt(g.variance(length, false) + from.U*from.U), Tilt: from.Tilt, Loose: from.Loose,
	}
}

// uniform is the variance of a uniform +/- error.
func uniform(half float64) float64 { return half * half / 3 }
