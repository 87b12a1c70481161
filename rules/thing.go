package rules

import (
	"fmt"

	"bench.example/undermark/geometry/scene"
)

// Sort is what sort of thing a finding is of: a part of the heater and its runs, or one of the things measured.
type Sort uint8

// The sorts of thing. Of those that do not begin with The there may be several, told apart by an index.
const (
	Nothing Sort = iota
	TheCut
	ThePlate
	TheBody
	TheHeater
	TheExhaust
	TheIntake
	TheFuel
	TheStack
	TheTies
	TheSurvey
	ThePilot
	ABolt
	AFuelHole
	TheFloor
	TheGround
	TheMuffler
	TheFuelStub
	ALeg
	AStub
	AnObstruction
	AnOpening
	AFitting
	AWheel
)

var sortWords = [...]string{
	Nothing: "", TheCut: "cut", ThePlate: "plate", TheBody: "body", TheHeater: "heater", TheExhaust: "exhaust", TheIntake: "intake", TheFuel: "fuel",
	TheStack: "stack", TheTies: "ties", TheSurvey: "survey", ThePilot: "pilot", ABolt: "bolt",
	AFuelHole: "fuel hole", TheFloor: "floor", TheGround: "ground", TheMuffler: "muffler", TheFuelStub: "fuel stub",
	ALeg: "leg", AStub: "stub", AnObstruction: "obstruction", AnOpening: "opening", AFitting: "fitting", AWheel: "wheel",
}

func (s Sort) String() string { return sortWords[s] }

// Thing is one thing that a finding is of. Two are equal when they are the same thing of the same job.
type Thing struct {
	Sort  Sort
	Index int32  // which of its list in the job or of its run's legs it is, from 0
	Name  string // of what was measured: as the job has it
}

// the is the one thing of its sort.
func the(s Sort) Thing { return Thing{Sort: s} }

// String is the name by which lists and the JSON call it, "" for nothing: "brake pipe, right", "leg 2", "floor".
func (t Thing) String() string {
	switch t.Sort {
	case ALeg, ABolt, AFuelHole, AWheel:
		return fmt.Sprintf("%s %d", t.Sort, t.Index+1)
	case AnObstruction, AnOpening, AFitting:
		return t.Name
	}
	return t.Sort.String()
}

// spoken is what people call it where there are others of that name: the van has an exhaust and fuel lines too.
func (t Thing) spoken() string {
	switch t.Sort {
	case TheExhaust:
		return scene.Exhaust.Pen().Means
	case TheFuel:
		return scene.Fuel.Pen().Means
	case TheFuelStub:
		return "heater's " + t.String()
	case ABolt:
		return fmt.Sprintf("bolt hole %d", t.Index+1)
	}
	return t.String()
}

// Is tells whether it is the one of its list with that index, from 0.
func (t Thing) Is(s Sort, index int) bool { return t.Sort == s && int(t.Index) == index }

// marked tells whether it is put where a mark from above says: all else that is put in place is put up from below.
func (t Thing) marked() bool { return t.onCut() || t.Sort == AFuelHole }

// onCut tells whether it is where the cut is, and goes with it.
func (t Thing) onCut() bool {
	return t.Sort == TheCut || t.Sort == ThePlate || t.Sort == TheBody || t.Sort == ABolt
}

// run tells whether it is a run, which is put up from below.
func (t Thing) run() bool {
	return t.Sort == TheExhaust || t.Sort == TheIntake || t.Sort == TheFuel || t.Sort == TheFuelStub
}
