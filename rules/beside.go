package rules

import (
	"math"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// What a saw and its pilot bit do, mm; source: Practice.
const (
	SawKerf     = 4  // what the teeth turn into swarf, on the radius
	GuideWithin = 12 // nearer to the old pilot hole than that a new pilot bit runs into it
	PilotOnMark = 1  // a pilot hole no farther off its mark is on it: a centre punch's own error
)

// Beside is what becomes of a pilot hole when a hole is sawn round a centre beside it.
type Beside uint8

// The places of the old pilot hole, from the new centre outwards.
const (
	OnTheHole     Beside = iota // the centre is the hole
	NearTheHole                 // a new pilot bit would run into it
	InTheDisc                   // it comes out with the disc
	UnderTheTeeth               // the teeth meet it
	OutsideTheCut               // it stays in the floor
)

// BesidePilot tells where the pilot hole of a cut is from a centre so many mm beside it.
func BesidePilot(cut *vehicles.Cut, by float64) Beside {
	switch {
	case by < PilotOnMark:
		return OnTheHole
	case by < GuideWithin:
		return NearTheHole
	case by <= MostBeside(cut):
		return InTheDisc
	case by <= cut.Across/2+cut.PilotAcross()/2:
		return UnderTheTeeth
	}
	return OutsideTheCut
}

// MostBeside is how far the centre of a cut may go beside its drilled pilot hole, mm, and that hole still comes out with the disc:
// half the cut less the kerf less half the pilot; 0 where it never does.
func MostBeside(cut *vehicles.Cut) float64 {
	return math.Max(0, cut.Across/2-SawKerf-cut.PilotAcross()/2)
}

// OldPilot is how far beside its old pilot hole the cut's centre is, mm, and what becomes of that hole; there is false without one.
func OldPilot(r *Result) (by float64, beside Beside, there bool) {
	if r.Job.Cut == nil || r.Plan.Cut.Old == nil {
		return 0, OnTheHole, false
	}
	by = r.Plan.Cut.At.Sub(*r.Plan.Cut.Old).Norm()
	return by, BesidePilot(r.Job.Cut, by), true
}

// Takes says in a few words what the centre takes.
func (b Beside) Takes() string {
	return [...]string{"saw it as it is", "guide board", "new pilot", "new pilot, guide board", "new pilot, close the old"}[b]
}

// Board tells whether a guide board leads the saw.
func (b Beside) Board() bool { return b == NearTheHole || b == UnderTheTeeth }

// Why says in a sentence or two why that is so, and what is done.
func (b Beside) Why() string {
	return [...]string{
		"The pilot hole is where the cut is meant.",
		"A new pilot bit would run into the old hole: a clamped board leads the saw.",
		"The old hole lies in the disc and comes out with it. Drill a new pilot, and look from below again.",
		"The old hole lies under the teeth, which snatch there. Drill a new pilot for looking from below alone: the saw runs in a clamped board.",
		"The old hole stays in the floor: drill a new pilot, and close the old one with metal, sealed on both faces.",
	}[b]
}

// WhyAtLength is Why, with how a guide board is made where one leads the saw.
func (b Beside) WhyAtLength() string {
	if b.Board() {
		return b.Why() + " " + GuideBoard()
	}
	return b.Why()
}

// GuideBoard says how a guide board is made and set.
func GuideBoard() string {
	return "The board is sawn through with the same saw: its hole leads the teeth from outside, so the saw needs no pilot bit. " +
		"Set the board by its hole's edge; the cut is as wide as that, and the kerf of " + survey.InMM(SawKerf) + " lies within."
}

// BesideInGeneral says what a centre beside the pilot hole of a cut takes by how far it is; say writes a length.
func BesideInGeneral(cut *vehicles.Cut, say func(mm float64) string) string {
	most := MostBeside(cut)
	if most <= GuideWithin {
		return "A centre beside the pilot hole takes a clamped guide board"
	}
	return "A centre beside the pilot hole takes a clamped guide board nearer than " + say(GuideWithin) + ", a new pilot up to " + say(most) +
		": the old hole goes with the disc"
}
