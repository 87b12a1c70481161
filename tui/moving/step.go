// Package moving is what the screens share on which things are moved on the plan: how far an arrow moves, fields that are typed
// and taken together, a view that follows, and the clearances beside the plan.
package moving

import (
	"math"

	"github.com/charmbracelet/bubbles/key"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
)

// Bind is a binding.
func Bind(name, what string, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, what))
}

// The keys that mean the same wherever something is moved.
var (
	KeyMove = Bind("arrows", "move", "up", "down", "left", "right")
	KeyStep = Bind("s", "step", "s")
	KeyTake = Bind("Enter", "next, then take it", "enter")
)

// millimetreSteps and inchSteps are how far an arrow moves, mm: marks that a tape of those units has. They go from the usual one to the
// long one and the fine one by turns, as from one of these to the other is a leap.
var (
	millimetreSteps = [...]float64{10, 50, 10, 1}
	inchSteps       = [...]float64{survey.Inch * 3 / 8, survey.Inch * 2, survey.Inch * 3 / 8, survey.Inch / 16}
)

// Step is one of the lengths that an arrow moves by.
type Step int

// Usual is the step to begin with.
const Usual Step = 0

// Next is the next one, longer or finer by one: usual, long, usual, fine.
func (n Step) Next() Step { return (n + 1) % Step(len(millimetreSteps)) }

// Length is how far that is in the workshop's units, mm.
func (n Step) Length(s desk.State) float64 {
	if s.Settings.Units == desk.Inches {
		return inchSteps[n]
	}
	return millimetreSteps[n]
}

// ways are how far to the right and up the arrows point in the picture.
var ways = map[string][2]float64{"right": {1, 0}, "left": {-1, 0}, "up": {0, 1}, "down": {0, -1}}

// Seen is the step in space that is seen from a place as the way an arrow points.
func (n Step) Seen(arrow string, at geometry.Point3, s desk.State) geometry.Point3 {
	return n.Along(arrow, at, s, s.Camera.View.Projection())
}

// Along is that step in a picture of any projection whose scale is true.
func (n Step) Along(arrow string, at geometry.Point3, s desk.State, seen scene.Projection) geometry.Point3 {
	way := ways[arrow]
	return seen.Step(at, way[0], way[1]).Scale(n.Length(s))
}

// Bounded brings a coordinate or a drop back to what a job may hold.
func Bounded(v float64) float64 { return max(-survey.Longest, min(survey.Longest, v)) }

// Hundredth rounds a place to 0.01 mm: finer than any tape, and short in the file.
func Hundredth(v float64) float64 { return math.Round(v*100) / 100 }
