package main

import (
	"strings"

	"github.com/spf13/cobra"

	"bench.example/undermark/rules"
	"bench.example/undermark/rules/cutlist"
	"bench.example/undermark/rules/parts"
)

func partsCommand(shared *sharedFlags, s streams) *cobra.Command {
	var f answerFlags
	var table bool
	c := &cobra.Command{
		Use:   "parts JOB...",
		Short: "Say what is ordered before the van comes",
		Long: "One list of all that a job takes: heater, collar, screws, pipe, hose and fuel line with what joins and holds them,\n" +
			"sealant, wiring. How many are wanted, how many the usual kit holds, how many are bought beside it. What nobody has\n" +
			"reckoned has no count; what " + notHeld,
		Example: "  undermark parts van.toml\n  undermark parts --csv van.toml > order.csv",
		Args:    someJobs, ValidArgsFunction: jobFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			if f.json && table {
				return errTwoForms
			}
			head := true
			_, err := answerJobs(args, shared, &f, s, func(r rules.Result) (string, error) {
				l := parts.Of(&r, cutlist.Usual())
				switch {
				case f.json:
					data, err := l.JSON()
					return string(data) + "\n", err
				case table:
					var text strings.Builder
					err := l.CSV(&text, r.Job.Ref, head)
					head = false
					return text.String(), err
				}
				return partsText(f.paperFor(s), &r, &l), nil
			})
			return err
		},
	}
	f.add(c)
	forSpreadsheet(c, &table, "a part")
	return c
}

// partsText writes the list for a person, a row each.
func partsText(p *paper, r *rules.Result, l *parts.List) string {
	p.line("%s: what it takes. The usual kit is taken to hold what stands under kit: count yours.", r.Job.Ref)
	p.blank()
	rows := make([][]string, len(l.Rows))
	for i, row := range l.Rows {
		text := row.Note
		if row.Source != "" {
			text = strings.TrimPrefix(text+" ("+row.Source+")", " ")
		}
		rows[i] = []string{row.For, row.Of, row.Size, row.Count.Text(), row.Kit.Text(), row.Buy().Text(), row.Unit, text}
	}
	p.grid(grid{[]string{"for", "part", "size", "wanted", "kit", "buy", "", "note"}, rows, 3, 6})
	for _, text := range l.Absent {
		p.item("not counted: " + text)
	}
	return p.String()
}
