package main

import (
	"context"
	"runtime"
	"strconv"

	"github.com/spf13/cobra"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

func layoutCommand(shared *sharedFlags, s streams) *cobra.Command {
	var f answerFlags
	c := &cobra.Command{
		Use:   "layout JOB...",
		Short: "Propose whole layouts: cut, heading and runs together",
		Long: "Up to three layouts that differ to the eye by more than a heading, best first; where the job's own breaks no rule it is\n" +
			"one of them, called as it is. Of each the place of the cut, the heading of the heater, exhaust, intake and\n" +
			"the fuel line, from where it begins in the job or from its one tank, judged as check judges a job, and what cut, heater and runs have to spare at the least. A drilled cut stays: then its runs are proposed. Where none that was tried keeps every rule they are near misses, not surely the nearest, and what they break is named: exit " + strconv.Itoa(exitFoul) + ".\n" +
			handsUnknown("a layout"),
		Example: "  undermark layout van.toml\n  undermark layout --json van.toml",
		Args:    someJobs, ValidArgsFunction: jobFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			missed := false
			_, err := answerJobs(args, shared, &f, s, func(r rules.Result) (string, error) {
				text, kept, err := tellLayouts(&r, s, &f)
				missed = missed || err == nil && !kept
				return text, err
			})
			if err == nil && missed {
				return exit(exitFoul)
			}
			return err
		},
	}
	f.add(c)
	return c
}

// tellLayouts seeks the layouts of a judged job and tells of them; kept is whether the best keeps every rule.
func tellLayouts(r *rules.Result, s streams, f *answerFlags) (text string, kept bool, err error) {
	if r.Job.Heater == nil {
		return "", false, lacking{Key: "heater", Text: "there is no [heater] to lay out: enter one"}
	}
	if err := rules.ToLayOut.May(r); err != nil {
		return "", false, lacking{Key: "obstruction", Text: err.Error()}
	}
	var found rules.Layouts
	err = seeking(s, f.json, func(ctx context.Context, p *progress) {
		found, _ = rules.FindLayouts(ctx, r, runtime.GOMAXPROCS(0), func(at rules.Progress) { p.say("%s", words.SoFar(at)) }) // seeking asks whether it was stopped
	})
	if err != nil {
		return "", false, err
	}
	kept = len(found.Best) > 0 && found.Best[0].Verdict() != rules.Foul
	if f.json {
		data, err := rules.LayoutsJSON(found)
		return string(data) + "\n", kept, err
	}
	p := f.paperFor(s)
	layoutsText(p, r, &found)
	return p.String(), kept, nil
}

// handsUnknown is what help says of what is found and proposed.
func handsUnknown(of string) string {
	return "Where the fitter can get a hand or a drill in, it does not know. Check " + of + " before you trust it."
}

// layoutsText writes layouts for a person.
func layoutsText(p *paper, r *rules.Result, found *rules.Layouts) {
	switch {
	case len(found.Best) == 0:
		p.line("%s: nothing can be laid out here: no exhaust leads anywhere.", r.Job.Ref)
	case found.Best[0].Verdict() == rules.Foul:
		p.line("%s: %s, all in mm, and what they break:", r.Job.Ref, words.NoneKept)
	default:
		p.line("%s: %s, best first. All in mm.", r.Job.Ref, words.WholeLayouts)
	}
	if lacks := rules.FuelLacks(&r.Job); r.Job.Fuel == nil && lacks != "" && len(found.Best) > 0 {
		p.line("%s", words.Sentence(words.NoFuelFor(lacks)))
	}
	from := "the middle of the floor"
	switch {
	case r.Job.Wish != nil:
		from = "the wish"
	case r.Job.Cut != nil:
		from = "the job's cut"
	}
	for i := range found.Best {
		p.blank()
		layoutText(p, strconv.Itoa(i+1), from, &found.Best[i])
	}
	if found.Few() {
		p.blank()
		p.line(words.NoMoreLayouts)
	}
	for _, shift := range found.Shifts {
		p.line(words.WouldFit+"%s moved by %s along x, %s along y.", shift.Name, survey.Figure(shift.By.X), survey.Figure(shift.By.Y))
	}
}

// layoutText writes one of them.
func layoutText(p *paper, number, from string, l *rules.Layout) {
	where := ""
	if l.Area != "" {
		where = ", area " + l.Area
	}
	if l.AsItIs {
		where += ", as it is"
	}
	p.line("%s%s: %s. Cut at %s, %s, yaw %s, exhaust out %s, %s from %s", number, where, l.Verdict(), survey.Figure(l.At.X), survey.Figure(l.At.Y),
		survey.InDegrees(l.Yaw), l.Edge, survey.Figure(l.Away), from)
	if l.Least.Set && l.Least.Value >= 0 { // less is a rule broken, and named as such
		p.line("%s to spare at the least (%s)", survey.Figure(l.Least.Value), l.LeastOf)
	}
	for i := range l.Misses {
		if f := &l.Misses[i]; f.Verdict == l.Verdict() {
			p.item(f.About() + ": " + f.Why)
		}
	}
	if l.FuelMiss != nil {
		p.item(words.NoFuelLine(l, survey.Millimetres))
	}
	runs := grid{head: []string{"run", "point", "x", "y", "below floor"}, first: 1, last: 5}
	for _, of := range vehicles.RunKinds {
		run := l.Result.Job.Run(of)
		if run == nil {
			continue
		}
		for i, at := range run.Path {
			runs.rows = append(runs.rows, []string{of.String(), strconv.Itoa(i + 1), survey.Figure(at.X), survey.Figure(at.Y), survey.Figure(at.Drop)})
		}
	}
	p.grid(runs)
}
