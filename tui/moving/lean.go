package moving

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/lipgloss"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// KeyUpright puts runs straight under their stubs.
var KeyUpright = Bind("o", "lay the stub legs straight again", "o")

// Stub is the mouth of the stub of a run; without a heater there is none, and without a cut neither.
func Stub(s desk.State, of vehicles.RunKind) (p vehicles.RunPoint, there bool) {
	if len(s.Faults) > 0 {
		return p, false
	}
	job := s.Job // it alone is put on the heap, and not all of the state
	mouth, there := job.Stub(of)
	return vehicles.RunPoint{X: mouth.X, Y: mouth.Y, Drop: -mouth.Z}, there
}

// Lean is how far a run's end at the heater lies beside its stub in plan, mm.
type Lean struct {
	Of    vehicles.RunKind
	Aside float64
}

// leanSeen is how far aside, mm, such an end must lie to be spoken of.
const leanSeen = 1

// Leaning tells which runs' ends at the heater do not lie under their stubs, as where a hole was drilled beside its mark: a path
// does not follow it.
func Leaning(s desk.State) (all []Lean) {
	if len(s.Faults) > 0 {
		return nil
	}
	job := s.Job // as in Stub
	for _, of := range vehicles.RunKinds {
		run := job.Run(of)
		if run == nil || len(run.Path) == 0 {
			continue
		}
		stub, there := job.Stub(of)
		if !there {
			continue
		}
		end := run.Path[atStub(of, run)]
		aside := geometry.Point{X: end.X - stub.X, Y: end.Y - stub.Y}.Norm()
		if aside > leanSeen {
			all = append(all, Lean{of, aside})
		}
	}
	return all
}

// atStub is which point of a run is the one at the heater.
func atStub(of vehicles.RunKind, run *vehicles.Run) int {
	if of == vehicles.FuelRun {
		return len(run.Path) - 1
	}
	return 0
}

// tight are the legs that are too short for the bends at their ends, in words: "exhaust leg 2".
func tight(s desk.State) (legs []string) {
	for _, of := range vehicles.RunKinds {
		if laid := s.Plan.Run(of); laid != nil {
			for _, leg := range laid.Line.ShortLegs {
				legs = append(legs, fmt.Sprintf("%s leg %d", of, leg+1))
			}
		}
	}
	return legs
}

// LeanRows say which runs slope from their stubs, and what puts that right, and where a corner is too tight for its bend.
func LeanRows(s desk.State, w int) (rows []string) {
	if legs := tight(s); len(legs) > 0 {
		rows = desk.Wrapped(s.Settings.Styles().Doubtful, "Too short for their bends: "+strings.Join(legs, ", "), w)
	}
	all := Leaning(s)
	if len(all) == 0 {
		return rows
	}
	names, aside := make([]string, len(all)), make([]string, len(all))
	for i, l := range all {
		names[i] = l.Of.String()
		aside[i] = names[i] + " " + desk.Length(l.Aside, s.Settings.Units)
	}
	text := "Stub legs slope (" + KeyUpright.Help().Key + " straightens): "
	if short := text + strings.Join(names, ", "); w < desk.SideBySide && desk.Width(short) <= w { // rows are few
		return append([]string{s.Settings.Styles().Doubtful.Render(short)}, rows...)
	}
	return append(desk.Wrapped(s.Settings.Styles().Doubtful, text+strings.Join(aside, ", "), w), rows...)
}

// Leaned are the rows above a list of the worst with what there is to say of sloping stub legs: behind the head where a panel has few rows and
// the words fit there, else below.
func Leaned(rows []string, s desk.State, w int) []string {
	told := LeanRows(s, w)
	if Under(w) && len(told) == 1 && len(Leaning(s)) > 0 {
		for _, few := range []string{"  o: stub legs slope", "  o: legs slope", "  o: slopes"} { // KeyUpright
			if lipgloss.Width(rows[0])+desk.Width(few) <= w {
				rows[0] += s.Settings.Styles().Doubtful.Render(few)
				return rows
			}
		}
	}
	return append(rows, told...)
}

// LeanKeys is the key that a leaning run calls for.
func LeanKeys(s desk.State) []key.Binding {
	if len(Leaning(s)) == 0 {
		return nil
	}
	return []key.Binding{KeyUpright}
}

// Upright puts the ends at the heater of the leaning runs straight under their stubs.
func Upright(s desk.State) desk.Change {
	var say []string
	var straightened []vehicles.RunKind
	for _, l := range Leaning(s) {
		stub, _ := Stub(s, l.Of)
		run := s.Job.Run(l.Of)
		i := atStub(l.Of, run)
		end := vehicles.RunPoint{X: Hundredth(stub.X), Y: Hundredth(stub.Y), Drop: run.Path[i].Drop}
		job, shifts, ok := s.Job.WithPath(l.Of, run.Path.With(i, end))
		straightened = append(straightened, l.Of)
		switch {
		case !ok:
			say = append(say, HangsFromTheStubOn)
		case len(shifts) > 0:
			say = append(say, fmt.Sprintf("%s point %d moved", l.Of, i+1)+Shifted(shifts, s))
		}
		s.Job = job
	}
	for _, of := range straightened {
		if job, spread := clippedAnew(of, s); spread {
			s.Job, say = job, append(say, fmt.Sprintf("%s: its clips would be too far apart, so they are spread anew", of))
		}
	}
	return desk.Change{Job: &s.Job, Say: strings.Join(say, ". ")}
}

// clippedAnew is the job with the clips of a run spread anew, where they stand too far apart on it as it lies now: a sloping leg has other
// bends, and what hangs behind them another way to them.
func clippedAnew(of vehicles.RunKind, s desk.State) (job vehicles.Job, spread bool) {
	run := s.Job.Run(of)
	if run == nil || len(run.Clips) == 0 || s.Result.Book == nil {
		return s.Job, false
	}
	result, faults := rules.Rejudge(&s.Result, s.Job, s.Book)
	laid := s.Job.Laid(of)
	if len(faults) > 0 || laid == nil || !slices.ContainsFunc(result.Findings, func(f rules.Finding) bool {
		return f.OfClips(of) && f.Verdict == rules.Foul
	}) {
		return s.Job, false
	}
	clipped := *run
	clipped.Clips = rules.SpreadClips(&result, of, laid).Along
	return s.Job.WithRun(of, &clipped), true
}

// PlaceCutAndChooseHeater is how a run gets the stub that it starts from.
const PlaceCutAndChooseHeater = "place a cut and choose a heater first."

// HangsFromTheStubOn is said when it is not known where what hangs on a run hangs.
const HangsFromTheStubOn = "What hangs on a run has its place from the stub on: " + PlaceCutAndChooseHeater

// Shifted goes on with things that went along and could not stay where they hung: with where one is now, with several by what they are, as a row
// of moves says it again and again.
func Shifted(shifts []vehicles.Rehung, s desk.State) string {
	switch len(shifts) {
	case 0:
		return ""
	case 1:
		return "; " + WhereNow(&shifts[0], s)
	}
	return ", with it " + Kinds(shifts)
}

// WhereNow says where a thing is now that could not stay.
func WhereNow(shift *vehicles.Rehung, s desk.State) string {
	text := shift.Name() + ": "
	if shift.Leg > 0 {
		text += fmt.Sprintf("leg %d, ", shift.Leg)
	}
	return text + desk.Length(shift.Along, s.Settings.Units) + " along"
}

// Kinds names things that could not stay by what they are: "muffler, 2 clips".
func Kinds(shifts []vehicles.Rehung) string {
	var kinds []*vehicles.HangingKind
	count := map[*vehicles.HangingKind]int{}
	for _, shift := range shifts {
		if count[shift.Kind]++; count[shift.Kind] == 1 {
			kinds = append(kinds, shift.Kind)
		}
	}
	names := make([]string, len(kinds))
	for i, kind := range kinds {
		if names[i] = kind.Name; count[kind] > 1 {
			names[i] = survey.Counted(count[kind], kind.Name)
		}
	}
	return strings.Join(names, ", ")
}
