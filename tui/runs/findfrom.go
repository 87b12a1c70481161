package runs

import (
	"cmp"
	"fmt"
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// begins is the job with runs to find in it; why says why it can't be.
func (m screen) begins(s desk.State, runs ...vehicles.RunKind) (q quest, why string) {
	q = quest{runs: runs, of: s.Result}
	if len(s.Faults) > 0 {
		return q, desk.PutRight
	}
	sought := rules.ToSeek
	if len(runs) > 1 {
		sought = rules.ToPair
	}
	if err := sought.May(&s.Result); err != nil {
		return q, "Nothing is sought: " + err.Error() + "."
	}
	for _, of := range runs {
		mouth, there := moving.Stub(s, of)
		if !there {
			return q, noStub
		}
		if s.Job.Run(of) != nil {
			continue
		}
		run, taken := m.usual(s, of, mouth)
		if of == vehicles.FuelRun && len(run.Path) == 0 {
			return q, "Where does the line begin? " + words.Upper(rules.FuelLacks(&s.Job)) + ". " + keyAdd.Help().Key + " begins it: put its first point where it leaves, then " + keyFind.Help().Key + " finds the rest."
		}
		q.of.Job = q.of.Job.WithRun(of, &run)
		q.taken = append(q.taken, taken)
	}
	return q, ""
}

// usual is a run to begin with, with what usually hangs on it, and what was taken for granted.
func (m screen) usual(s desk.State, of vehicles.RunKind, mouth vehicles.RunPoint) (run vehicles.Run, taken string) {
	if of == vehicles.FuelRun {
		run, _ = m.usualFuel(s, mouth)
		return run, strings.TrimSpace(run.Supply.Kind+" fuel line from "+cmp.Or(run.Supply.From, asItBegan)) + ", usual pump"
	}
	run = vehicles.UsualWhole(of)
	with := ""
	for _, thing := range run.Hanging.Things() {
		with += ", usual " + thing.Name()
	}
	return run, fmt.Sprintf("%s %s%s", of, desk.Length(run.Across, s.Settings.Units), with)
}
