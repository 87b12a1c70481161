package main

import (
	"strings"

	"github.com/spf13/cobra"

	"bench.example/undermark/rules"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/tui/words"
)

func workCommand(shared *sharedFlags, s streams) *cobra.Command {
	var f answerFlags
	c := &cobra.Command{
		Use:   "work JOB...",
		Short: "Say the steps of the work, and what of it is done",
		Long: "The steps that apply to the job, in order, from the battery's clamp to the owner's first lesson: what is measured\n" +
			"in each and expected of it, when it was done and what came out. A step that was done before one that must come\n" +
			"first for safety says so. The heater's own instructions go before all of it.",
		Example: "  undermark work van.toml\n  undermark work --json van.toml",
		Args:    someJobs, ValidArgsFunction: jobFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			_, err := answerJobs(args, shared, &f, s, func(r rules.Result) (string, error) {
				list := work.Of(&r)
				if f.json {
					data, err := list.JSON(&r.Job)
					return string(data) + "\n", err
				}
				return workText(f.paperFor(s), &r, list), nil
			})
			return err
		},
	}
	f.add(c)
	return c
}

// workText writes the steps for a person: a row each, below the part of the work that they are of.
func workText(p *paper, r *rules.Result, list work.List) string {
	p.line("%s: the work, step by step; %s.", r.Job.Ref, words.WorkTally(list))
	dangersText(p, r)
	var rows [][]string
	for i := range list {
		step := &list[i]
		if p.width > 0 && (i == 0 || step.Part != list[i-1].Part) {
			rows = append(rows, []string{step.Part.String()})
		}
		what := []string{step.Sentence()}
		for _, text := range append([]string{list.Wrong(i), step.Wanted()}, words.StepNotes(step.Done)...) {
			if text != "" {
				what = append(what, strings.TrimSuffix(text, ".")+".")
			}
		}
		rows = append(rows, []string{words.Box(step.Ticked()), step.Name(), step.Done.Value.Text(), step.Unit, step.Done.When(), strings.Join(what, " ")})
	}
	p.grid(grid{[]string{"done", "step", "value", "", "when", "what"}, rows, 2, 3})
	for _, d := range list.Elsewhere(&r.Job) {
		p.line("%s.", words.WorkElsewhere(d))
	}
	return p.String()
}
