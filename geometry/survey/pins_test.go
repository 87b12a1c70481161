package survey

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

// Source: Heron's 13-14-15 triangle (Metrica), altitude 12 at 5 from the corner between 13 and 14. The left pin is
// that corner, the base of 14 runs to the right pin. With the hook 5 lower the altitude of 12 is seen as 13.
func TestPinsHeronsTriangle(t *testing.T) {
	left, right := Pins(geometry.Point{X: 12, Y: 7 - 5}, 0, 7, 0)
	assert.InDelta(t, 13, left, 1e-12)
	assert.InDelta(t, 15, right, 1e-12)
	left, right = Pins(geometry.Point{X: 1280, Y: 200}, 80, 700, 0)
	assert.InDelta(t, 1300, left, 1e-9)
	assert.InDelta(t, 1500, right, 1e-9)
	left, _ = Pins(geometry.Point{X: 12}, 0, 0, 5)
	assert.InDelta(t, 13, left, 1e-12)
}

// Source: the worked sample of the job-file contract.
func TestPinsContractSample(t *testing.T) {
	left, right := Pins(geometry.Point{X: 1210, Y: 240}, 0, 700, 60)
	assert.InDelta(t, 1295.9, left, 0.05)
	assert.InDelta(t, 1533.4, right, 0.05)
}

// The two tapes meet at the place again: on the radical line of their circles, and Pythagoras forward of the pins.
func TestTheTapesFromThePinsMeetAtThePlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		x, y := draw("x", 200, 4000), draw("y", -1000, 1000)
		shift, pins, hook := draw("shift", -100, 100), draw("pins", 200, 900), draw("hook", 0, 120)
		left, right := Pins(geometry.Point{X: shift + x, Y: y}, shift, pins, hook)
		across := (right - left) * (right + left) / (4 * pins)
		assert.InDelta(t, y, across, 1e-7)
		assert.InDelta(t, x, math.Sqrt(left*left-hook*hook-(across-pins)*(across-pins)), 1e-7)
	})
}
