package main

import (
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
				return marksText(f.paperFor(s), r, rules.Marks(r)), nil
			})
			return err
		},
	}
	f.add(c)
	return c
}

// marksText writes the marks for a person.
func marksText(p *paper, r rules.Result, sheet rules.MarkSheet) string {
	p.line("%s: the place is %s. All readings in mm.", r.Job.Ref, words.Standing(&r))
	dangersText(p, &r)
	datum := r.Job.Datum.Called()
	head := []string{"mark", "below: " + datum, "left", "right", "above: " + datum, "left", "right", "left pin", "right pin"}
	var rows [][]string
	for _, m := range sheet.Listed() {
		cells := []string{m.Words, survey.Figure(m.Below.Bumper), survey.Figure(m.Below.Left), survey.Figure(m.Below.Right)}
		if a := m.Above; a != nil {
			cells = append(cells, survey.Figure(a.Bumper), survey.Figure(a.Left), survey.Figure(a.Right), survey.Figure(a.PinLeft), survey.Figure(a.PinRight))
		}
		rows = append(rows, cells)
	}
	p.grid(grid{head, rows, 1, len(head)})
	for _, text := range words.MarkSpreads(&r, sheet) {
		p.line("%s", text)
	}
	for _, text := range words.BlockedTapes(&r, sheet, desk.Settings{}) {
		p.line("%s", text)
	}
	checksText(p, sheet.Checks)
	if pilot := sheet.Pilot; pilot != nil && pilot.Drilled != nil {
		p.blank()
		p.line("%s. %s", words.PilotOff(*pilot, desk.Settings{}), rules.SetOffHole)
		p.line("%s.", words.BesidePilot(r.Job.Cut, desk.Settings{}))
		for _, text := range words.MovedMarks(sheet.Moved, desk.Settings{}) {
			p.line("%s.", text)
		}
	}
	if text := words.OldPilot(&r, desk.Settings{}); text != "" {
		p.blank()
		p.line("%s", text)
	}
	return p.String()
}

// checksText lists the lengths to tape between marks.
func checksText(p *paper, checks []rules.Check) {
	if len(checks) == 0 {
		return
	}
	p.blank()
	p.line("To check with the tape, above; both diagonals of a thing that is square are alike:")
	rows := make([][]string, len(checks))
	for i, c := range checks {
		rows[i] = []string{words.CheckText(c, desk.Settings{}), survey.Figure(c.Length)}
	}
	p.grid(grid{nil, rows, 1, 2})
}
