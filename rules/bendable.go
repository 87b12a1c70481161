package rules

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
	"bench.example/undermark/vehicles"
)

// What a run that is sought comes to beside its rules, so that hands can make it. No rule of the book asks it: where it can't be had with
// the rules kept, the rules go first. common practice, no source
const (
	leastTurn    = 5.0  // degrees: a corner of less is pulled straight, nobody bends it
	leastBetween = 50.0 // mm of straight pipe between two bends, for the bender to hold
	legSpare     = 5.0  // mm of straight pipe that a leg has beside its one bend: where the pilot comes out 3 mm off, a bend of 90 degrees takes 3 to 4 more of it
)

// awkwardCosts is how much longer a run may rather be, mm, than have one corner, one leg or one piece between bends that nobody can make.
const awkwardCosts = 100.0

// awkward is how many mm what nobody can make of a run counts for, where runs that are sought are compared.
func awkward(line *geometry.Run) (cost float64) {
	bent := false // the leg begins in a bend
	for i := range line.Legs {
		l := &line.Legs[i]
		turn := 0.0
		if i+1 < len(line.Legs) {
			turn = turnAt(l.A, l.B, line.Legs[i+1].B)
		}
		if turn > noTurn && turn < leastTurn {
			cost += awkwardCosts
		}
		switch straight, bends := l.End-l.Begin, turn > noTurn; {
		case bent && bends && straight < leastBetween:
			cost += awkwardCosts * (2 - straight/leastBetween)
		case bent != bends && straight < legSpare:
			cost += awkwardCosts * (1 - straight/legSpare)
		}
		bent = turn > noTurn
	}
	return cost
}

// besideMuffler is how much straight pipe there is on either side of a muffler, mm: for its clamp, and for a piece behind it that can be sawn and
// held. common practice, no source
const besideMuffler = 25.0

// crampedMuffler is how many mm it counts for that a muffler leaves less than that of its leg.
func crampedMuffler(laid *vehicles.LaidRun) float64 {
	m := laid.Muffler
	if m == nil {
		return 0
	}
	leg := laid.Line.Legs[m.Leg]
	room := max(0, min(m.From-leg.Begin, leg.End-m.To))
	return max(0, awkwardCosts*(1-room/besideMuffler))
}

// turnAt is by how much a path turns at a corner between two others, degrees.
func turnAt(before, at, after geometry.Point3) float64 {
	return geometry.Angle(at.Sub(before), after.Sub(at)) * 180 / math.Pi
}

// pulled are the corners of a run without those that turn too little for anybody to bend and that what the trial asks does not need.
func (t *trial) pulled(corners []geometry.Point3, c *course) []geometry.Point3 {
	for i := len(corners) - 2; i >= 1; i-- {
		if turnAt(corners[i-1], corners[i], corners[i+1]) >= leastTurn {
			continue
		}
		without := slices.Delete(slices.Clone(corners), i, i+1)
		if t.worth(without, c.beyond(without), 0).Short == 0 {
			corners = without
			i = min(i+1, len(corners)-1) // that behind it turns otherwise now
		}
	}
	return corners
}

// joined are the corners of a run with two that stand too near to each other for anybody to bend made one, where what the trial asks is kept so, and
// the run counts for no more. No single move leads there: one of them left out, or moved by itself, comes nearer to what both lead round.
func (t *trial) joined(corners []geometry.Point3, c *course) []geometry.Point3 {
	for i := len(corners) - 3; i >= 1; i-- {
		if corners[i+1].Sub(corners[i]).Norm() >= leastBetween {
			continue
		}
		length := t.worth(corners, c.beyond(corners), 0).Length
		for _, at := range onePlace(corners[i-1 : i+3]) {
			one := slices.Replace(slices.Clone(corners), i, i+2, at)
			if w := t.worth(one, c.beyond(one), 0); w.Short == 0 && w.Length < length {
				corners = one
				break
			}
		}
	}
	return corners
}

// onePlace are the places, in whole mm, that one corner may have instead of the two in the middle of four: where the legs beside them meet, so that it is
// led round all that those are, a mm farther out, and between them.
func onePlace(four []geometry.Point3) []geometry.Point3 {
	between := four[2].Sub(four[1])
	middle := four[1].Add(between.Scale(0.5))
	in, on := four[1].Sub(four[0]), four[3].Sub(four[2])
	turn := geometry.Angle(in, on)
	if turn < leastTurn*math.Pi/180 || turn > mostJoined {
		return []geometry.Point3{route.Whole(middle)}
	}
	out := in.Scale(1 / in.Norm()).Sub(on.Scale(1 / on.Norm()))
	out = out.Scale(1 / out.Norm())
	meet := middle.Add(out.Scale(between.Norm() / 2 * math.Tan(turn/2)))
	return []geometry.Point3{route.Whole(meet), route.Whole(meet.Add(out)), route.Whole(middle)}
}

// mostJoined is how much two corners may turn together, radians, for where the legs beside them meet to be near them.
const mostJoined = math.Pi / 2

// noTurn is how little a path turns where it goes straight on, degrees: rounding.
const noTurn = 1e-6

// stubDown is how far straight down a run leaves its stub, mm, where a way for it is sought: as much as its first bend takes and a leg has
// to spare, at least what its joint does.
func stubDown(run *vehicles.Run) float64 { return max(run.Bend.Value+legSpare, stubJoint) }

// stubJoint is how far straight down a run leaves its stub at the least, mm: its clip and a hand's room. common practice, no source
const stubJoint = 20

// aside is by how much the first corner of a run lies too far beside its stub's mouth, and too little below it, mm.
func aside(corners []geometry.Point3) float64 {
	off := corners[1].Sub(corners[0])
	return max(0, off.Plan().Norm()-asideSeen) + max(0, stubJoint+off.Z)
}

// slopes tells whether the stub leg of a laid run does not lead straight down from the stub.
func slopes(laid *vehicles.LaidRun, of vehicles.RunKind) bool {
	from, n := slices.Clone(laid.Path), len(laid.Path)
	if n < 2 {
		return false
	}
	if of == vehicles.FuelRun {
		slices.Reverse(from)
	}
	return aside(from) > 0
}

// asideSeen is how far aside of its stub a run's first corner may lie, mm: corners lie on whole mm, so that the nearest to any stub is no more
// than half of one off either way, and the next is seen as leaning.
const asideSeen = math.Sqrt2/2 + touchingAside

// touchingAside is what rounding makes of that, mm: places are laid to 0.01.
const touchingAside = 0.005
