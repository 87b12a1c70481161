package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
)

// What rules of several runs ask of the way of one that is sought. Each has its check in run_checks.go.

func noLonger(c *course, r *Rule) {
	if l := c.book.of(r); l.Value.Set && !c.uncut {
		c.query.MostLength = l.Value.Value
	}
}

func noMoreBends(c *course, r *Rule) {
	if l := c.book.of(r); l.Value.Set && !c.uncut {
		c.query.MostTurn = l.Value.Value * math.Pi / 180
	}
}

// belowTheFloor and aboveTheGround keep the surface between both.
func belowTheFloor(c *course, r *Rule) {
	if c.uncut {
		return
	}
	c.query.Max.Z = -c.book.of(r).least() - c.radius - c.searched*c.tape.HeightU()
}

func aboveTheGround(c *course, r *Rule) {
	if c.uncut {
		return
	}
	c.query.Min.Z = c.book.of(r).least() + c.radius + c.searched*c.tape.HeightU() - c.job.Floor.Ground
}

// neverRises lets the run fall, or lie level: then water stands nowhere.
func neverRises(c *course, _ *Rule) {
	if !c.rising {
		c.query.Fall = max(c.query.Fall, 0)
	}
}

func falls(c *course, r *Rule) {
	if l := c.book.of(r); l.Value.Set && !c.rising && !c.flat {
		c.query.Fall = max(c.query.Fall, l.Value.Value/1000)
	}
}

// notFacing keeps the last leg from pointing in a direction.
func notFacing(from geometry.Point3) func(*course, *Rule) {
	return func(c *course, r *Rule) {
		if l := c.book.of(r); l.Value.Set && !c.uncut {
			c.query.Facing = append(c.query.Facing, route.Facing{From: from, Least: l.Value.Value * math.Pi / 180})
		}
	}
}
