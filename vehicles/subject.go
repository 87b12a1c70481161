package vehicles

// Subject is what a value of a job file is of, as far as whoever tells of it has words of its own for that.
type Subject uint8

// The subjects.
const (
	OfOther Subject = iota // of any other table
	OfObstruction
	OfOpening
	OfFitting
	OfTie
	OfSurface
	OfStep
	OfCut
	OfHeater
	OfExhaust
	OfIntake
	OfFuel
	OfBuilt
	OfLookedAtCut
	OfLookedAtRuns
	OfLookedAtOutlet
	// What the screens keep, and others.
	OfBegunObstruction
	OfBegunOpening
	OfBegunFitting
	OfBegunTie
	OfRefused
	OfGuesses
	OfHeld
	OfLookedRound
	OfOthers
)

// subjects are those of the file's tables.
var subjects = map[string]Subject{
	"obstruction": OfObstruction, "opening": OfOpening, "fitting": OfFitting, "tie": OfTie, "surface": OfSurface, "done": OfStep,
	"cut": OfCut, "heater": OfHeater, ExhaustRun.Table(): OfExhaust, IntakeRun.Table(): OfIntake, FuelRun.Table(): OfFuel, "built": OfBuilt,
	"looked": OfLookedAtCut, "looked_runs": OfLookedAtRuns, "looked_openings": OfLookedAtOutlet, "extra": OfOthers,
}

// subjectKept is that of what lies under a name in [extra].
func subjectKept(name string) Subject {
	for _, k := range ours {
		if k.name == name {
			return k.of
		}
	}
	return OfOthers
}
