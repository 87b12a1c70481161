package survey

import (
	"errors"
	"fmt"
	"math"

	"bench.example/undermark/geometry"
)

// Pins returns the tape distances, mm, to a place p of the frame above from two datum pins at (shift, +pins) and
// (shift, -pins), the tape's zero hook below the floor.
func Pins(p geometry.Point, shift, pins, hook float64) (left, right float64) {
	dx := math.Hypot(p.X-shift, hook)
	return math.Hypot(dx, p.Y-pins), math.Hypot(dx, p.Y+pins)
}

// Errors of two tapes that fix no place.
var (
	ErrNoMeeting = errors.New("the two tapes do not meet: measure again, or correct the distance between the pins")
	ErrOnLine    = errors.New("the place is on the line of the pins, where two tapes do not say how far forward it is: measure x")
)

// FromPins is the inverse of Pins: the place in front of the line of the pins that two tapes say. pins must be
// more than 0.
func FromPins(left, right, shift, pins, hook float64) (geometry.Point, error) {
	if !(pins > 0) || !(left >= 0) || !(right >= 0) {
		return geometry.Point{}, fmt.Errorf("tapes of %.1f and %.1f mm from pins %.1f mm off the centreline: "+
			"none may be negative, and the pins must be apart", left, right, pins)
	}
	y := (right - left) * (right + left) / (4 * pins)
	square := left*left - hook*hook - (y-pins)*(y-pins)
	if !(square >= -meetingNoise) || math.IsInf(square, 0) {
		return geometry.Point{}, ErrNoMeeting
	}
	return geometry.Point{X: shift + math.Sqrt(math.Max(0, square)), Y: y}, nil
}

// meetingNoise is how far the square of the distance forward may come out below 0 by rounding alone, mm^2: lengths
// of 20 m square to 4e8, which doubles hold to 1e-7.
const meetingNoise = 1e-6

// Ellipse is the spread of a place in plan: its variances, mm^2, and the half axes of the one sigma ellipse, mm.
// One sigma in plan covers 39 %.
type Ellipse struct {
	XX, XY, YY   float64
	Major, Minor float64
	Angle        float64 // of the major axis from forward x, degrees anticlockwise, 0 to below 180
}

// FromPinsCovariance returns the spread of the place FromPins finds, from the standard uncertainties of the two
// tapes and of the hook's height, all mm and independent, by the first-order law of JCGM 100:2008, 5.1.2.
func FromPinsCovariance(left, right, shift, pins, hook, uLeft, uRight, uHook float64) (Ellipse, error) {
	p, err := FromPins(left, right, shift, pins, hook)
	if err != nil {
		return Ellipse{}, err
	}
	dx := p.X - shift
	if dx < leastPlan {
		return Ellipse{}, ErrOnLine
	}
	// Each column is the change of the place with one measured length, times its uncertainty.
	yLeft, yRight := -left/(2*pins), right/(2*pins)
	byLeft := geometry.Point{X: (left - (p.Y-pins)*yLeft) / dx, Y: yLeft}.Scale(uLeft)
	byRight := geometry.Point{X: -(p.Y - pins) * yRight / dx, Y: yRight}.Scale(uRight)
	byHook := geometry.Point{X: -hook / dx}.Scale(uHook)
	var e Ellipse
	for _, c := range []geometry.Point{byLeft, byRight, byHook} {
		e.XX += c.X * c.X
		e.XY += c.X * c.Y
		e.YY += c.Y * c.Y
	}
	return e.withAxes(), nil
}

// withAxes works out the half axes from the variances: the roots of the eigenvalues of the covariance.
func (e Ellipse) withAxes() Ellipse {
	mean, split := (e.XX+e.YY)/2, math.Hypot((e.XX-e.YY)/2, e.XY)
	e.Major, e.Minor = math.Sqrt(mean+split), math.Sqrt(math.Max(0, mean-split))
	e.Angle = math.Mod(math.Atan2(2*e.XY, e.XX-e.YY)*90/math.Pi+180, 180)
	return e
}
