package main

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"

	"bench.example/undermark/rules"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/tui/words"
)

func workCommand(shared *sharedFlags, s streams) *cobra.Command {
	var f answerFlags
	var firstRun bool
	c := &cobra.Command{
		Use:   "work JOB...",
		Short: "Say the steps of the work, and what of it is done",
		Long: "The steps that apply to the job, in order, from the battery's clamp to the owner's first lesson: what is measured\n" +
			"in each and expected of it, when it was done and what came out. A step that was done before one that must come\n" +
			"first for safety says so. The heater's own instructions go before all of it.",
		Example: "  undermark work van.toml\n  undermark work --json van.toml",
		Args:    someJobs, ValidArgsFunction: jobFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			if f.json && firstRun {
				return errors.New("--first-run is for people, and --json has every step with its part: keep one of them")
			}
			_, err := answerJobs(args, shared, &f, s, func(r rules.Result) (string, error) {
				list := work.Of(&r)
				if f.json {
					data, err := list.JSON(&r.Job)
					return string(data) + "\n", err
				}
				return workText(f.paperFor(s), &r, list, firstRun), nil
			})
			return err
		},
	}
	f.add(c)
	c.Flags().BoolVar(&firstRun, "first-run", false, "the record of the first run alone")
	return c
}

// workText writes steps for a person: a row each, below the part of the work that they are of.
func workText(p *paper, r *rules.Result, list work.List, firstRun bool) string {
	all := list.Rows()
	if firstRun {
		all = list.FirstRun()
	}
	p.line("%s: the work, step by step; %s.", r.Job.Ref, words.WorkTally(list))
	dangersText(p, r)
	var rows [][]string
	for _, step := range all {
		if p.width > 0 && step.Part != "" {
			rows = append(rows, []string{step.Part})
		}
		rows = append(rows, workRow(step))
	}
	p.grid(grid{[]string{"done", "step", "value", "", "when", "what"}, rows, 2, 3})
	if !firstRun {
		for _, step := range list.Unplaced(&r.Job) {
			p.line(words.OfNoStep+": %s", joined(workRow(step)[1:], " "))
		}
	}
	return p.String()
}

// workRow is a step with all that is said and recorded of it.
func workRow(step work.Row) []string {
	var what []string
	for _, text := range []string{step.Do, step.Barred, step.Wrong, step.Wanted, words.DueOn(step.Due), words.StepNote(step.Note), words.StepPhotos(step.Photos)} {
		if text != "" {
			what = append(what, strings.TrimSuffix(text, ".")+".")
		}
	}
	return []string{words.Box(step.Ticked), step.Name, step.Value, step.Unit, step.When, strings.Join(what, " ")}
}
