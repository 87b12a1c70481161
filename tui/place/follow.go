package place

import (
	"strings"

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

// withIt says what hangs on a run and could not stay where it hung.
func withIt(shifts []vehicles.Rehung, s desk.State) string {
	switch len(shifts) {
	case 0:
		return ""
	case 1:
		return moving.WhereNow(&shifts[0], s)
	}
	return moving.Kinds(shifts) + " too"
}

// newlyDrilled tells whether a hole was measured that was not measured there before.
func newlyDrilled(now, before *vehicles.Cut) bool {
	return now.Drilled != nil && (before.Drilled == nil || *now.Drilled != *before.Drilled)
}
