package place

import (
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

// carried has the runs go along with an edit that moves the stubs: the ends that were under them stay so, in the same undo step, and
// it is said. No path follows a hole that is measured beside its mark: there the note says that it slopes.
func carried(change desk.Change, s desk.State) desk.Change {
	if change.Job == nil || change.Job.Cut == nil || s.Job.Cut == nil || newlyDrilled(change.Job.Cut, s.Job.Cut) {
		return change
	}
	job, runs := change.Job.Following(s.Job)
	if len(runs) == 0 {
		return change
	}
	names := make([]string, len(runs))
	for i, run := range runs {
		names[i] = run.Run.String()
		if hung := withIt(run.Shifts, s); hung != "" {
			names[i] += " (" + hung + ")"
		}
	}
	say := "Gone along: " + strings.Join(names, ", ") + " (J on Runs: anew)." // how they are found again
	change.Job, change.Say = &job, strings.TrimSpace(change.Say+" "+say)
	return change
}

// withIt says what hangs on a run and could not stay where it hung: one thing with its place, several by what they are, as a row of moves
// says it again and again.
func withIt(shifts []vehicles.Rehung, s desk.State) string {
	if len(shifts) < 2 {
		return strings.TrimPrefix(moving.Shifted(shifts, s), "; ")
	}
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
	return strings.Join(names, ", ") + " too"
}

// newlyDrilled tells whether a hole was measured that was not measured there before.
func newlyDrilled(now, before *vehicles.Cut) bool {
	return now.Drilled != nil && (before.Drilled == nil || *now.Drilled != *before.Drilled)
}
