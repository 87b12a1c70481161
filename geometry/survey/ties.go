package survey

import (
	"errors"
	"fmt"
	"math"

	"bench.example/undermark/geometry"
)

// Tie is one feature seen from both sides of the floor.
type Tie struct {
	Name         string
	Below, Above geometry.Point
	Use          bool       // false: kept, but left out of the fit
	U, Tilt      [4]float64 // of x and y below, x and y above: the standard uncertainties, mm; how they go with their zeros (Coord)
}

// Variance is that of the tie's place above less its place below, along one direction on the mean of x and y, mm^2.
func (t Tie) Variance() float64 {
	sum := 0.0
	for _, u := range t.U {
		sum += u * u
	}
	return sum / 2
}

// Residual is what a tie says above less what the fit says of it, mm.
type Residual struct {
	Name   string
	DX, DY float64
	Used   bool // false: the tie was left out of the fit
}

// Fit is the rigid motion from the frame below to the frame above, above = R(Theta) below + Shift, and how well
// it holds. Fewer than two ties in use leave the identity.
type Fit struct {
	N         int            // ties in use
	Theta     float64        // degrees, anticlockwise seen from above, over -180 to 180
	Shift     geometry.Point // mm
	RMS       float64        // root of the mean of dx^2 + dy^2 over the ties in use, mm
	Residuals []Residual     // of the ties in use, in their order
	LeftOut   []Residual     // of the ties left out, in their order
	Suspect   string         // the tie that seems wrong, "" for none; it is still in the fit
	UT2       float64        // mean of the ties' variances, mm^2
	Statistic float64        // N RMS^2 / UT2, to be held against ChiSquared99(2N-3)
	Centroid  geometry.Point // of the ties' places below
	SumR2     float64        // sum of their squared distances from it, mm^2
	carry     carry
}

// ErrSwapped says that left and right were swapped on one side of the floor.
var ErrSwapped = errors.New("left and right were swapped on one side of the floor: the ties match as in a mirror; " +
	"change the sign or the side (L, R) of the y readings below, or of those above")

// ErrOnePlace says that the ties in use lie on one another, so that they fix no direction.
var ErrOnePlace = errors.New("the ties in use are all at one place below: measure one more, well apart, or leave all but one out")

// Bounds of the contract for swapped sides and for a suspect: a fit less than a third of the RMS, and an RMS, mm,
// below which nobody asks.
const (
	muchBetter   = 1. / 3
	swappedOver  = 10
	suspectOver  = 5
	onePlaceOver = 1e-6 // sum of squared distances, mm^2: a thousandth of a mm is no baseline
)

// FitTies returns the least-squares rigid motion (rotation and shift, no scale, no mirror, equal weights) of the
// ties in use. With ErrSwapped the fit comes too, for showing; with ErrOnePlace only its N.
// heightU is the standard uncertainty of any height, mm.
func FitTies(ties []Tie, heightU float64) (Fit, error) {
	used := inUse(ties)
	f := Fit{N: len(used)}
	if f.N < 2 {
		f.Residuals, f.LeftOut = f.residuals(ties)
		return f, nil
	}
	m, centre, sumR2 := rigid(used, false)
	if sumR2 < onePlaceOver {
		return f, ErrOnePlace
	}
	f.Theta, f.Shift, f.Centroid, f.SumR2 = m.theta, m.shift, centre, sumR2
	f.Residuals, f.LeftOut = f.residuals(ties)
	f.RMS = m.rms(used)
	f.UT2 = meanVariance(used)
	f.Statistic = statistic(f.N, f.RMS, f.UT2)
	f.carry = newCarry(used, &f, heightU)
	if mirrored := MirroredRMS(ties); f.N >= 3 && f.RMS > swappedOver && mirrored < f.RMS*muchBetter {
		return f, fmt.Errorf("%w (off by %s as it is, by %s mirrored)", ErrSwapped, InMM(f.RMS), InMM(mirrored))
	}
	f.Suspect = suspect(used, f.RMS)
	return f, nil
}

// Up carries a place from the frame below to the frame above.
func (f Fit) Up(p geometry.Point) geometry.Point { return p.Turn(f.Theta).Add(f.Shift) }

// Down carries a place from the frame above to the frame below.
func (f Fit) Down(p geometry.Point) geometry.Point { return p.Sub(f.Shift).Turn(-f.Theta) }

// Tied tells whether there are ties enough to fix the motion.
func (f Fit) Tied() bool { return f.N >= 2 }

func (f Fit) residuals(ties []Tie) (used, leftOut []Residual) {
	for _, t := range ties {
		off := t.Above.Sub(f.Up(t.Below))
		r := Residual{Name: t.Name, DX: off.X, DY: off.Y, Used: t.Use}
		if t.Use {
			used = append(used, r)
		} else {
			leftOut = append(leftOut, r)
		}
	}
	return used, leftOut
}

func inUse(ties []Tie) []Tie {
	var used []Tie
	for _, t := range ties {
		if t.Use {
			used = append(used, t)
		}
	}
	return used
}

func meanVariance(ties []Tie) float64 {
	sum := 0.0
	for _, t := range ties {
		sum += t.Variance()
	}
	return sum / float64(len(ties))
}

// statistic is n RMS^2 / u^2; exact ties (u of 0) that do not fit give the largest number there is.
func statistic(n int, rms, u2 float64) float64 {
	square := float64(n) * rms * rms
	switch {
	case square == 0:
		return 0
	case u2 == 0:
		return math.MaxFloat64
	}
	return math.Min(square/u2, math.MaxFloat64)
}
