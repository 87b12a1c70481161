package rules

import (
	"math"

	"bench.example/undermark/geometry"
)

// The rules of the intake.
var intakeRules = []*Rule{
	{
		ID: "intake.clearance", Unit: MM, Sense: Least, Weight: Damages, ByKind: AnObstruction,
		Word:   "intake",
		Title:  "Intake clear of what is under the floor",
		Ask:    "The hose must not be rubbed through, pinched or cooked.",
		Advice: "move the points of the intake, in Place.",
		short:  tooClose,
		check:  intakeClearance,
		keep:   keeper{AStub, keepIntakeStub},
	},
	{
		ID: "intake.length", Unit: MM, Sense: Most, Weight: Damages,
		Word:   "intake length",
		Title:  "Length of the intake",
		Ask:    "Too long an intake starves the heater: see its instructions.",
		Advice: "shorten the intake; the heater's instructions give the longest.",
		short:  tooMuch,
		check:  ofRun(TheIntake, lengthOf),
	},
	{
		ID: "intake.bends", Unit: Degree, Sense: Most, Weight: Damages,
		Word:   "intake bends",
		Title:  "Bends of the intake together",
		Ask:    "Every bend chokes the flow: see the heater's instructions.",
		Advice: "straighten the intake: fewer and wider bends.",
		short:  degreesTooMany,
		check:  ofRun(TheIntake, turnsOf),
	},
	{
		ID: "intake.bend-room", Unit: Count, Sense: Most, Weight: Damages,
		Word:   "intake short legs",
		Title:  "Legs of the intake too short for their bends",
		Ask:    "A hose bent tighter than it can take kinks.",
		Advice: "lengthen the short legs, or use a tighter bend.",
		short:  tooMany,
		check:  ofRun(TheIntake, shortLegs),
	},
	{
		ID: "intake.floor", Unit: MM, Sense: Least, Weight: Nuisance,
		Word:   "intake",
		Title:  "Intake below the floor",
		Ask:    "The hose hangs from clips and must not rub on the floor.",
		Advice: "move the points of the intake, in Place.",
		short:  tooClose,
		check:  belowFloor(TheIntake),
	},
	{
		ID: "intake.ground", Unit: MM, Sense: Least, Weight: Damages,
		Word:   "intake",
		Title:  "Intake above the ground",
		Ask:    "What hangs low is torn off, and draws water.",
		Advice: "raise the lowest point of the intake.",
		short:  tooClose,
		check:  aboveGround(TheIntake),
	},
	{
		ID: "intake.facing", Unit: Degree, Sense: Least, Weight: Nuisance,
		Word:   "intake mouth's direction",
		Title:  "Intake mouth turned away from the airstream",
		Ask:    "Driving wind and spray must not blow into the mouth.",
		Advice: "turn the intake's mouth away from the airstream.",
		short:  degreesTooFew,
		check:  intakeFacing,
	},
	{
		ID: "intake.apart", Unit: MM, Sense: Least, Weight: Kills,
		Word:   "intake mouth",
		Title:  "Intake mouth away from the exhaust",
		Ask:    "A heater that breathes its own exhaust burns badly and makes carbon monoxide.",
		Advice: "move the intake's mouth away from the exhaust: it must not breathe exhaust gas.",
		short:  tooClose,
		check:  intakeApart,
	},
}

func intakeClearance(j *judge, r *Rule) {
	if j.plan.Intake != nil {
		j.clearances(r, TheIntake, tubeOf(j.plan.Intake))
	}
}

func keepIntakeStub(j *judge, r *Rule) []keep {
	run, h := j.job.Intake, j.job.Heater
	if run == nil || h == nil {
		return nil
	}
	return j.keepStub(r, h.IntakeStub, run.Across)
}

func intakeFacing(j *judge, r *Rule) {
	if j.plan.Intake == nil {
		return
	}
	path := j.plan.Intake.Path
	last := len(path) - 1
	if along := path[last].Sub(path[last-1]); along != (geometry.Point3{}) {
		j.plain(r, the(TheIntake), Thing{}, math.Atan2(math.Hypot(along.Y, along.Z), along.X)*180/math.Pi)
	}
}

// intakeApart judges the intake's mouth against the outlet and the muffler.
func intakeApart(j *judge, r *Rule) {
	if j.plan.Intake == nil || j.plan.Exhaust == nil {
		return
	}
	path, exhaust := j.plan.Intake.Path, j.plan.Exhaust
	mouth, nearest := path[len(path)-1:], surface{value: math.Inf(1)}
	nearest.nearer(geometry.BetweenPaths(mouth, exhaust.Path[len(exhaust.Path)-1:]), 0)
	if m := exhaust.Muffler; m != nil {
		nearest.nearer(geometry.BetweenPaths(mouth, m.Axis), m.Radius)
	}
	j.put(j.open(j.book.of(r), the(TheIntake), the(TheExhaust)), nearest)
}
