package vehicles

import (
	"bench.example/undermark/geometry/survey"
)

// side is the side of the floor a tape is used from: where its zeros hang and where the edges are.
type side struct {
	tape        *survey.Gauge
	hook, edges survey.Slope // of the bumper's zero, and of the side edges'
	left, right float64      // from the centreline to the side edges
	shift       float64      // the bumper's zero lies this far forward of the datum
	bow         []BowPoint   // how far forward of that the bumper's edge is, by y
	above       bool
	datum       string // what the line that x starts at is called
}

// spot is what reducing a reading must know of the point measured.
type spot struct {
	drop  float64
	known bool    // somebody knows the drop
	y     float64 // where a tape from the bumper ran
}

// end is where a reading ended and how the next may run on from it.
type end struct {
	survey.Coord
	there, broken bool // a reading stands here; it could not be reduced
	rightward     bool // a chain in y runs on to the van's right
	unclosed      bool // its chain does not come out at the overall reading
}

// trail is where the next thing of a table may run on from, and whether the tape sloped by an unknown amount to there.
type trail struct {
	x, y  end
	loose bool
}

// along reduces a reading to its end e. What is wrong is said in a few words, "" for nothing.
func (s *side) along(e *end, axis survey.Axis, r *survey.Reading, at *spot, before *end) (wrong string) {
	switch {
	case r.Start == survey.On:
		return s.on(e, axis, r, before)
	case axis == survey.X:
		wrong = s.sloped(e, r.Length, &s.hook, at)
	case r.Start == survey.Datum:
		wrong = s.sloped(e, r.Length, &survey.Slope{}, at) // the centreline is level
	default:
		wrong = s.sloped(e, r.Length, &s.edges, at)
	}
	switch {
	case axis == survey.X:
		e.Value += s.shift
		if len(s.bow) > 0 {
			e.Value += bowAt(s.bow, at.y)
		}
	case r.Start == survey.FromLeft:
		e.Value, e.Tilt, e.rightward = s.left-e.Value, -e.Tilt, true
	case r.Start == survey.FromRight:
		e.Value -= s.right
	}
	return wrong
}

// zero is where the zero of a reading hangs; a reading from the centreline is level.
func (s *side) zero(axis survey.Axis, start survey.Start) survey.Slope {
	switch {
	case axis == survey.X:
		return s.hook
	case start == survey.Datum:
		return survey.Slope{}
	}
	return s.edges
}

// on reduces a reading that runs on from the one before: forward in x, in y as its chain began.
func (s *side) on(e *end, axis survey.Axis, r *survey.Reading, before *end) (wrong string) {
	switch {
	case before.broken:
		*e = end{broken: true}
		return ""
	case !before.there:
		*e = end{broken: true}
		return "it runs on, but nothing stands before it: measure it from " + zeros(s.datum)
	}
	length := r.Length
	if axis == survey.Y && before.rightward {
		length = -length
	}
	coord := s.tape.RunOn(before.Coord, length)
	*e = *before
	e.Coord = coord
	return ""
}

// sloped reduces a reading from a zero. From above a zero that hangs nowhere is level, and the point has no height.
func (s *side) sloped(e *end, length float64, zero *survey.Slope, at *spot) (wrong string) {
	*e = end{there: true}
	var err error
	rise := 0.0
	if s.above {
		e.Value, e.U, err = s.tape.ReduceAbove(length, zero.Hook)
		rise = zero.Hook
	} else {
		e.Value, e.U, e.Loose, err = s.tape.Reduce(length, *zero, at.drop, at.known)
		if zero.Set && at.known {
			rise = zero.Hook - at.drop
		}
	}
	if err != nil {
		*e = end{broken: true}
		return err.Error()
	}
	e.Tilt = survey.Lean(e.Value, rise)
	return ""
}
