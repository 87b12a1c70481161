package main

import (
	"encoding/csv"
	"strings"

	"github.com/spf13/cobra"

	"bench.example/undermark/rules"
	"bench.example/undermark/rules/cutlist"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// notHeld goes on behind "what" in the help of commands that count.
const notHeld = "the job does not hold is not counted, and named."

func cutlistCommand(shared *sharedFlags, s streams) *cobra.Command {
	var f answerFlags
	var table bool
	c := &cobra.Command{
		Use:   "cutlist JOB...",
		Short: "Say " + cutlist.CutFromAndHungWith,
		Long: "Pipe, hose and fuel line as they are cut, with their bends, what joins and holds them, how much of the usual\n" +
			"lengths that takes, and what the usual kit holds. What " + notHeld,
		Args: someJobs, ValidArgsFunction: jobFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			if f.json && table {
				return errTwoForms
			}
			head := table
			_, err := answerJobs(args, shared, &f, s, func(r rules.Result) (string, error) {
				l := cutlist.Of(&r, cutlist.Usual())
				switch {
				case f.json:
					data, err := l.JSON()
					return string(data) + "\n", err
				case table:
					text, err := csvText(&l, r.Job.Ref, head)
					head = false
					return text, err
				}
				p := f.paperFor(s)
				p.line("%s: %s. All in mm.", r.Job.Ref, cutlist.CutFromAndHungWith)
				for _, line := range words.CutList(l, desk.Millimetres) {
					p.item(line)
				}
				return p.String(), nil
			})
			return err
		},
	}
	f.add(c)
	forSpreadsheet(c, &table, "a thing")
	return c
}

// csvText is a list as comma-separated values, the first of several with their head.
func csvText(l *cutlist.List, job string, head bool) (string, error) {
	var text strings.Builder
	if head {
		w := csv.NewWriter(&text)
		if err := w.Write(cutlist.Columns); err != nil {
			return "", err
		}
		w.Flush()
	}
	err := l.CSV(&text, job)
	return text.String(), err
}
