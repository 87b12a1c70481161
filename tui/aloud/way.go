package aloud

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
)

// Lying says how the hands are meant in Towards; it follows the view from below, which knows how whoever is at work lies.
func Lying(datum string) string {
	return "Hands are meant lying under the van on your back, head to the " + below.Across.Low.Called(datum) + "."
}

var below = scene.Below.Projection()

// hand is which hand lies to the van's left, or to its right.
func hand(left bool) string {
	leftIsHigh := below.Up.High == scene.ToLeft
	if below.Lying && left == leftIsHigh {
		return "left hand"
	}
	return "right hand"
}

// sideways is how near to straight along or across a way is to be called so: the tangent of an eighth of a turn's half.
var sideways = math.Tan(math.Pi / 8)

// Towards says which way something lies for somebody lying under the van: "towards the nose and left (left hand)"; "" for no way at
// all.
func Towards(by geometry.Point, s desk.State) string { return towards(by, true, s) }

// towards says it along the van, across it, or both; lying, also by which hand.
func towards(by geometry.Point, lying bool, s desk.State) string {
	along, across := math.Abs(by.X), math.Abs(by.Y)
	text := ""
	if along > 0 && along >= sideways*across {
		way := below.Across.High
		if by.X < 0 {
			way = below.Across.Low
		}
		text = "towards the " + way.Called(s.Job.Datum.Name)
	}
	if across > 0 && across >= sideways*along {
		side := desk.SideOf(by.Y, s.Settings)
		if lying {
			side += " (" + hand(by.Y > 0) + ")"
		}
		if text == "" {
			return "to the " + side
		}
		text += " and " + side
	}
	return text
}

// Spot says where a place of the plan is: "x 1210, 240 mm left".
func Spot(at geometry.Point, s desk.State) string {
	return desk.AtX(at.X, s.Settings.Units) + ", " + desk.Across(at.Y, s.Settings)
}

// Arrows says which way of the van each arrow points in the view that is picked.
func Arrows(s desk.State) string {
	p := s.Camera.View.Projection()
	called := func(w scene.Way) string {
		switch w {
		case scene.ToLeft:
			return desk.Left(s.Settings)
		case scene.ToRight:
			return desk.Right(s.Settings)
		}
		return w.Called(s.Job.Datum.Name)
	}
	return "Arrows, as seen from " + p.From + ": Right to the " + called(p.Across.High) + ", Left to the " + called(p.Across.Low) +
		", Up to the " + called(p.Top()) + ", Down to the " + called(p.Bottom())
}
