package runs

import (
	"cmp"
	"fmt"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

// farTank is how far ahead of the stub a line begins that comes from nothing entered, until the fitter says otherwise, mm. common practice,
// no source
const farTank = 500

// notKnown and none are what stands where nobody knows, and where there is none.
const (
	notKnown = "not known"
	noSource = "nothing entered"
)

func orNotKnown(text string) string { return cmp.Or(text, notKnown) }
func orNone(text string) string     { return cmp.Or(text, noSource) }

// begun is a fuel line from the one tank there is, or from ahead of the stub where there is none or are several, to its stub.
func begun(s desk.State, mouth vehicles.RunPoint) (run vehicles.Run, say string) {
	run, known := rules.UsualFuel(&s.Result, inSpace(mouth))
	run.Pump = nil
	for i := range run.Path {
		run.Path = run.Path.With(i, exactly(run.Path[i]))
	}
	say = "From " + run.Supply.From + " to the heater: move its first point to where it leaves."
	if !known {
		start := vehicles.RunPoint{X: mouth.X + farTank, Y: mouth.Y, Drop: mouth.Drop}
		run.Path = vehicles.List[vehicles.RunPoint]{exactly(start), exactly(mouth)}
		say = "Where does it begin? Type its first point, and what it begins at."
	}
	u := s.Settings.Units
	taken := fmt.Sprintf("Taken as a line %s across, %s inside: %s changes it. ", desk.Length(run.Across, u), desk.Length(run.Supply.Bore.Value, u), keyPipe.Help().Key)
	return run, taken + say
}

// exactly is a point to 0.01 mm that a job may hold.
func exactly(p vehicles.RunPoint) vehicles.RunPoint {
	return held(vehicles.RunPoint{X: moving.Hundredth(p.X), Y: moving.Hundredth(p.Y), Drop: moving.Hundredth(p.Drop)})
}
