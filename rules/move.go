package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/field"
)

// Move is the best place for the cut's centre that still swallows the pilot hole.
type Move struct {
	To      geometry.Point
	By      geometry.Point // To less where the pilot hole is
	Before  float64        // the worst margin where the pilot hole is, mm
	Margin  float64        // the worst margin at To, mm, at most moveWithin below the best there is
	Against string         // what that margin is to
}

// moveWithin is how far, in mm, the margin of a Move may lie below the best.
const moveWithin = 0.01

// toldTo is how far a place that is told to hundredths of a mm may lie off.
const toldTo = 0.01

// bestMove finds the place on the floor so many mm from the pilot hole with the largest worst margin.
func bestMove(r *Result, within float64) Move {
	from, around := r.Plan.Cut.At, geometry.Point{X: within, Y: within}
	room, edge := RoomForSaw(r).part(from.Sub(around), from.Add(around))
	asks := []keep{edge}
	if h := r.Job.Heater; h != nil {
		asks = append(asks, r.heaterAt(h.Yaw)...)
	}
	room = room.with(asks)
	best := room.Margins.At(from)
	move := Move{Before: best.Margin}
	aim := field.Aim{From: from, Within: within, Enough: math.Inf(1)}
	if to, ok := room.Margins.Best(aim, moveWithin); ok && to.Margin > best.Margin {
		best = to
	}
	found := room.suggestion(best)
	move.To, move.By, move.Margin, move.Against = found.At, found.At.Sub(from), found.Margin, found.Against
	return move
}
