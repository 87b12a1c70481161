package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// The rules of the intake.
var intakeRules = []*Rule{
	{
		ID: "intake.clearance", Unit: MM, Sense: Least, Weight: Damages, ByKind: AnObstruction,
		Word:   "intake",
		Title:  "Intake clear of what is under the floor",
		Ask:    "The hose must not be rubbed through, pinched or cooked.",
		Advice: moveIntake,
		short:  tooClose,
		check:  intakeClearance,
		keep:   keeper{AStub, keepIntakeStub},
		way:    func(c *course, r *Rule) { c.clearOf(c.byKindOf(r)) },
	},
	intakeLength,
	{
		ID: "intake.bends", Unit: Degree, Sense: Most, Weight: Damages,
		Word:   "intake bends",
		Title:  "Bends of the intake together",
		Ask:    bendsChoke,
		Advice: "straighten the intake: fewer and wider bends.",
		short:  degreesTooMany,
		check:  ofRun(TheIntake, turnsOf),
		way:    noMoreBends,
	},
	{
		ID: "intake.bend-room", Unit: Count, Sense: Most, Weight: Damages,
		Word:   "intake legs too short",
		Title:  "Legs of the intake too short for their bends",
		Ask:    "A hose bent tighter than it can take kinks.",
		Advice: mendShortLegs,
		check:  shortLegs(TheIntake),
	},
	{
		ID: "intake.floor", Unit: MM, Sense: Least, Weight: Nuisance,
		Word:   "intake",
		Title:  "Intake below the floor",
		Ask:    "The hose hangs from clips and must not rub on the floor.",
		Advice: moveIntake,
		short:  tooClose,
		check:  belowFloor(TheIntake),
		way:    belowTheFloor,
	},
	{
		ID: "intake.ground", Unit: MM, Sense: Least, Weight: Damages,
		Word:   "intake",
		Title:  "Intake above the ground",
		Ask:    "What hangs low is torn off, and draws water.",
		Advice: "raise the lowest point of the intake.",
		short:  tooClose,
		check:  aboveGround(TheIntake),
		way:    aboveTheGround,
	},
	intakeUnder,
	{
		ID: "intake.facing", Unit: Degree, Sense: Least, Weight: Nuisance,
		Word:   "intake mouth, from straight ahead",
		Title:  "Intake mouth turned away from the airstream",
		Ask:    "Driving wind and spray must not blow into the mouth.",
		Advice: "turn the intake's mouth away from the airstream.",
		short:  tooFarForward,
		check:  facing(TheIntake, geometry.Point3{X: 1}),
		way:    notFacing(geometry.Point3{X: 1}),
	},
	{
		ID: "intake.up", Unit: Degree, Sense: Least, Weight: Damages,
		Word:   "intake mouth, from straight up",
		Title:  "Intake mouth not pointing up",
		Ask:    "A mouth that points up takes in rain, spray and snow.",
		Advice: "turn the intake's mouth level or down.",
		short:  tooFarUp,
		check:  facing(TheIntake, geometry.Point3{Z: 1}),
	},
	intakeDrains,
	intakeExhaust,
	intakeMouth,
	intakeUpwind,
	intakeSpray,
}

var intakeDrains = &Rule{
	ID: "intake.drains", Unit: Count, Sense: Most, Weight: Damages,
	Word:   "intake low points",
	Title:  "Low points of the intake without a drain",
	Ask:    "Water that stands in the intake is drawn into the burner, or freezes and stops the air.",
	Advice: "let the intake fall all the way to its mouth, or drill a drain hole at the low point.",
	check:  lowPoints(TheIntake),
	way:    neverRises,
}

var intakeLength = &Rule{
	ID: "intake.length", Unit: MM, Sense: Most, Weight: Damages,
	Word:   "intake length",
	Title:  "Length of the intake",
	Ask:    "Too long an intake starves the heater: see its instructions.",
	Advice: "shorten the intake; " + longestGiven,
	short:  tooMuch,
	check:  ofRun(TheIntake, lengthOf),
	way:    noLonger,
}

var intakeExhaust = &Rule{
	ID: "intake.exhaust", Unit: MM, Sense: Least, Weight: Kills,
	Word:   "intake",
	Title:  "Intake away from the exhaust",
	Ask:    "A hot pipe melts the hose, and what it then breathes is not air. " + stubsApart + ".",
	Advice: "lead the intake away from the exhaust.",
	short:  tooClose,
	check:  intakeFromExhaust,
	way:    wayOfBoth,
}

var intakeMouth = &Rule{
	ID: "intake.apart", Unit: MM, Sense: Least, Weight: Kills,
	Word:   "intake mouth",
	Title:  "Intake mouth away from the exhaust",
	Ask:    "A heater that breathes its own exhaust burns badly and makes carbon monoxide.",
	Advice: "move the intake's mouth away from the exhaust: it must not breathe exhaust gas.",
	short:  tooClose,
	check:  intakeApart,
	ends:   true,
}

func intakeClearance(j *judge, r *Rule) {
	if j.plan.Intake != nil {
		j.clearances(TheIntake, j.byKindOf(r))
	}
}

func keepIntakeStub(j *judge, r *Rule) []keep {
	run, h := j.job.Intake, j.job.Heater
	if run == nil || h == nil {
		return nil
	}
	return j.keepStub(j.byKindOf(r), h.IntakeStub, run.Across)
}

// intakeFromExhaust judges what the two fill, behind the first of each at its stub.
func intakeFromExhaust(j *judge, r *Rule) {
	in, out := j.plan.Intake, j.plan.Exhaust
	if in == nil || out == nil || in.Line.Length() <= AtStub || out.Line.Length() <= AtStub {
		return
	}
	f := j.open(j.book.of(r), the(TheIntake), the(TheExhaust))
	j.put(f, apart(j.stretch(in, AtStub, in.Line.Length()), j.stretch(out, AtStub, out.Line.Length())))
}

// wayOfBoth keeps the one that is sought of intake and exhaust away from the other, behind the first of it.
func wayOfBoth(c *course, r *Rule) {
	other := c.plan.Exhaust
	if c.kind == vehicles.ExhaustRun {
		other = c.plan.Intake
	}
	if other != nil {
		c.apartFrom(other, AtStub, other.Line.Length(), c.book.of(r))
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
