package main

import (
	"fmt"
	"math"
	"strings"

	"github.com/spf13/cobra"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

func marksCommand(shared *sharedFlags, s streams) *cobra.Command {
	var f answerFlags
	c := &cobra.Command{
		Use:   "marks JOB...",
		Short: "Say what the tape must read at every mark",
		Long:  "Each mark has the readings of the tape below and above the floor, in mm. Read the cautions on the screen first.",
		Args:  someJobs, ValidArgsFunction: jobFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			_, err := answerJobs(args, shared, &f, s, func(r rules.Result) (string, error) {
				if f.json {
					data, err := rules.MarksJSON(r)
					return string(data) + "\n", err
				}
				return marksText(r, rules.Marks(r)), nil
			})
			return err
		},
	}
	f.add(c)
	return c
}

// marksText writes the marks for a person.
func marksText(r rules.Result, sheet rules.MarkSheet) string {
	var b strings.Builder
	line(&b, "%s: the place is %s. All readings in mm.", r.Job.Ref, standing(r))
	dangersText(&b, &r)
	datum := r.Job.Datum.Called()
	head := []string{"mark", "below: " + datum, "left", "right", "above: " + datum, "left", "right", "left pin", "right pin"}
	var rows [][]string
	for _, m := range sheet.Marks {
		cells := []string{m.Words, survey.Figure(m.Below.Bumper), survey.Figure(m.Below.Left), survey.Figure(m.Below.Right)}
		if a := m.Above; a != nil {
			cells = append(cells, survey.Figure(a.Bumper), survey.Figure(a.Left), survey.Figure(a.Right), survey.Figure(a.PinLeft), survey.Figure(a.PinRight))
		}
		rows = append(rows, cells)
	}
	grid(&b, head, rows, 1, len(head))
	checksText(&b, sheet.Checks)
	if p := sheet.Pilot; p != nil && p.Drilled != nil {
		fmt.Fprintf(&b, "\nThe pilot hole came out %s forward and %s to the left of where it was meant.\n", survey.Figure(p.Off.X), survey.Figure(p.Off.Y))
		fmt.Fprintf(&b, "\nThe centre may still move %s; that takes a new pilot hole in the new centre, and the old one goes with the disc.\n",
			survey.Figure(math.Max(0, p.MayMove)))
	}
	return b.String()
}

// checksText lists the lengths to tape between marks.
func checksText(b *strings.Builder, checks []rules.Check) {
	if len(checks) == 0 {
		return
	}
	fmt.Fprintln(b, "\nTo check with the tape, above; both diagonals of a thing that is square are alike:")
	rows := make([][]string, len(checks))
	for i, c := range checks {
		rows[i] = []string{words.CheckText(c, desk.Settings{}), survey.Figure(c.Length)}
	}
	grid(b, nil, rows, 1, 2)
}
