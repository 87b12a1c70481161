package runs

import (
	"cmp"
	"fmt"
	"slices"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

// farTank is how far ahead of the stub a line begins that comes from nothing entered, until the fitter says otherwise, mm. common practice,
// no source
const farTank = 500

// noSource is what stands where a line comes from nothing entered; asItBegan names the beginning of a line that was taken away.
const (
	noSource  = "nothing entered"
	asItBegan = "where it began"
)

func orNotKnown(text string) string { return cmp.Or(text, vehicles.NotKnown) }
func orNone(text string) string     { return cmp.Or(text, noSource) }
func beginsAt(from string) string   { return "The line begins at: " + orNone(from) + "." }

// usualFuel is the fuel line that a job begins with which has none: of the one that was taken away on this screen it has what it carries, its
// tank, its pipe and its pump, which stay true wherever the line goes. known is false where it is not known where it begins.
func (m screen) usualFuel(s desk.State, mouth vehicles.RunPoint) (run vehicles.Run, known bool) {
	run, known = rules.UsualFuel(&s.Result, inSpace(mouth))
	was := m.away
	if was == nil || was.Supply.From != "" && !slices.Contains(s.Job.FuelSources(), was.Supply.From) {
		return run, known
	}
	if !known || was.Supply.From != run.Supply.From {
		run.Path, known = vehicles.List[vehicles.RunPoint]{was.Path[0], exactly(mouth)}, true
	}
	run.Across, run.Supply = was.Across, was.Supply
	m.pumpAsBefore(&run)
	return run, known
}

// pumpAsBefore gives a pump the flow of that of the line that was taken away, and tells whether it had one.
func (m screen) pumpAsBefore(run *vehicles.Run) bool {
	if m.away == nil || m.away.Pump == nil || run.Pump == nil {
		return false
	}
	pump := *run.Pump
	pump.MlPer1000, pump.Hz = m.away.Pump.MlPer1000, m.away.Pump.Hz
	run.Pump = &pump
	return pump.MlPer1000.Set || pump.Hz.Set
}

// begun is a fuel line from the one tank there is, or from where the one that was taken away began, or from ahead of the stub where there is
// no tank or are several, to its stub.
func (m screen) begun(s desk.State, mouth vehicles.RunPoint) (run vehicles.Run, say string) {
	run, known := m.usualFuel(s, mouth)
	run.Pump = nil
	for i := range run.Path {
		run.Path = run.Path.With(i, exactly(run.Path[i]))
	}
	say = "From " + cmp.Or(run.Supply.From, asItBegan) + ": move point 1 to where it leaves."
	if !known {
		start := vehicles.RunPoint{X: mouth.X + farTank, Y: mouth.Y, Drop: mouth.Drop}
		run.Path = vehicles.List[vehicles.RunPoint]{exactly(start), exactly(mouth)}
		say = "Where does it begin? Type its first point, and what it begins at."
	}
	u := s.Settings.Units
	what := "line"
	if run.Supply.Kind != "" {
		what = run.Supply.Kind + " line"
	}
	inside := ""
	if bore := run.Supply.Bore; bore.Set {
		inside = ", " + desk.Length(bore.Value, u) + " inside"
	}
	taken := fmt.Sprintf("Taken as a %s %s across%s; %s: other. ", what, desk.Length(run.Across, u), inside, keyPipe.Help().Key)
	return run, taken + say
}

// exactly is a point to 0.01 mm that a job may hold.
func exactly(p vehicles.RunPoint) vehicles.RunPoint {
	return held(vehicles.RunPoint{X: moving.Hundredth(p.X), Y: moving.Hundredth(p.Y), Drop: moving.Hundredth(p.Drop)})
}
