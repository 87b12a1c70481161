package moving

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"bench.example/undermark/geometry"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// KeyUpright puts runs straight under their stubs.
var KeyUpright = Bind("o", "first points under the stubs", "o")

// Stub is the mouth of the stub of exhaust or intake; without a heater there is none, and without a cut neither.
func Stub(s desk.State, of vehicles.RunKind) (p vehicles.RunPoint, there bool) {
	h := s.Job.Heater
	if h == nil || s.Job.Cut == nil || len(s.Faults) > 0 {
		return p, false
	}
	stub := [...][2]float64{h.ExhaustStub, h.IntakeStub, h.FuelStub}[of]
	at := s.Result.Plan.Cut.At.Add(geometry.Point{X: stub[0], Y: stub[1]}.Turn(h.Yaw))
	return vehicles.RunPoint{X: at.X, Y: at.Y, Drop: h.StubDrop}, true
}

// Lean is how far a run's first point lies beside its stub in plan, mm.
type Lean struct {
	Of    vehicles.RunKind
	Aside float64
}

// leanSeen is how far aside, mm, a first point must lie to be spoken of.
const leanSeen = 1

// Leaning tells which runs' first points do not lie under their stubs, as where a hole was drilled beside its mark: a path does
// not follow it.
func Leaning(s desk.State) (all []Lean) {
	for _, of := range []vehicles.RunKind{vehicles.ExhaustRun, vehicles.IntakeRun} {
		run := s.Job.Run(of)
		stub, there := Stub(s, of)
		if run == nil || len(run.Path) == 0 || !there {
			continue
		}
		first := run.Path[0]
		aside := geometry.Point{X: first.X - stub.X, Y: first.Y - stub.Y}.Norm()
		if aside > leanSeen {
			all = append(all, Lean{of, aside})
		}
	}
	return all
}

// LeanRows say which runs slope from their stubs, and what puts that right.
func LeanRows(s desk.State, w int) []string {
	all := Leaning(s)
	if len(all) == 0 {
		return nil
	}
	aside := make([]string, len(all))
	for i, l := range all {
		aside[i] = l.Of.String() + " " + desk.Length(l.Aside, s.Settings.Units)
	}
	return desk.Wrapped(s.Settings.Styles().Doubtful, "Beside its stub: "+strings.Join(aside, ", ")+" ("+KeyUpright.Help().Key+" puts it under)", w)
}

// LeanKeys is the key that a leaning run calls for.
func LeanKeys(s desk.State) []key.Binding {
	if len(Leaning(s)) == 0 {
		return nil
	}
	return []key.Binding{KeyUpright}
}

// Upright puts the first points of the leaning runs straight under their stubs.
func Upright(s desk.State) desk.Change {
	var say []string
	for _, l := range Leaning(s) {
		stub, _ := Stub(s, l.Of)
		run := s.Job.Run(l.Of)
		first := vehicles.RunPoint{X: Hundredth(stub.X), Y: Hundredth(stub.Y), Drop: run.Path[0].Drop}
		job, shifts, ok := s.Job.WithPath(l.Of, run.Path.With(0, first))
		switch {
		case !ok:
			say = append(say, Unstubbed)
		case len(shifts) > 0:
			say = append(say, l.Of.String()+" point 1 moved"+Shifted(shifts, s))
		}
		s.Job = job
	}
	return desk.Change{Job: &s.Job, Say: strings.Join(say, ". ")}
}

// Unstubbed is said when it is not known where what hangs on a run hangs.
const Unstubbed = "What hangs on a run has its place from the stub on: place a cut and choose a heater first."

// Shifted says where things that could not stay are now.
func Shifted(shifts []vehicles.Rehung, s desk.State) string {
	var text strings.Builder
	for _, shift := range shifts {
		text.WriteString("; " + shift.Name + ": ")
		if shift.Leg > 0 {
			fmt.Fprintf(&text, "leg %d, ", shift.Leg)
		}
		text.WriteString(desk.Length(shift.Along, s.Settings.Units) + " along")
	}
	return text.String()
}
