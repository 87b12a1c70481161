package main

import (
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

func rulesCommand(shared *sharedFlags, s streams) *cobra.Command {
	var f answerFlags
	c := &cobra.Command{
		Use:   "rules [JOB]",
		Short: "List the rules that hold, with their sources",
		Long: "Of rules, the nearest book that says anything about an id speaks: the job's own, then the workshop's, then\n" +
			"the built-in one. A rule without a value is for the heater's instructions to give.",
		ValidArgsFunction: jobFiles,
		Args:              takes(1, "one job file"),
		RunE: func(_ *cobra.Command, args []string) error {
			if err := f.spares(append(args[:len(args):len(args)], shared.path()), s); err != nil {
				return err
			}
			book, err := shared.load()
			if err != nil {
				return err
			}
			if len(args) == 1 {
				if book, err = jobBook(args[0], book, s); err != nil {
					return err
				}
			}
			text := rulesText(book)
			if f.json {
				if text, err = jsonLine(book); err != nil {
					return failed{err}
				}
			}
			return f.write(text, s)
		},
	}
	f.add(c)
	return c
}

// jobBook returns the book with the job's own rules in front.
func jobBook(file string, book *rules.Book, s streams) (*rules.Book, error) {
	job, data, err := read(file, book, s.in)
	if err != nil {
		return nil, failed{err}
	}
	book, faults := book.ForJob(job)
	return book, asFailed(vehicles.FaultsIn(data, file, faults))
}

// rulesText writes a book for a person, by group; all groups have the same columns.
func rulesText(book *rules.Book) string {
	var b strings.Builder
	t := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	for i := range rules.Groups {
		g := &rules.Groups[i]
		row(t, "", "", "", "", "", "")
		row(t, strings.ToUpper(g.Name), "", "", "", "", "")
		for _, r := range g.Limits(book) {
			row(t, r.Key(), desk.Asked(r, desk.Millimetres), r.Danger().String(), r.Title, r.Source, r.Book)
		}
	}
	_ = t.Flush() // a builder takes everything
	rows := strings.Split(b.String(), "\n")
	for i := range rows {
		rows[i] = strings.TrimRight(rows[i], " ")
	}
	return strings.Join(rows[1:], "\n")
}
