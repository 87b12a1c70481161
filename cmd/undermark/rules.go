package main

import (
	"strings"

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
			text := rulesText(f.paperFor(s), book)
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

// rulesText writes a book for a person: by group on a terminal, elsewhere with the group at the end of each line. All groups have
// the same columns.
func rulesText(p *paper, book *rules.Book) string {
	g := grid{first: 1, last: 1}
	for i := range rules.Groups {
		group := &rules.Groups[i]
		if p.width > 0 {
			g.rows = append(g.rows, []string{""}, []string{strings.ToUpper(group.Name)})
		}
		for _, r := range group.Limits(book) {
			cells := []string{r.Key(), desk.Asked(r, desk.Millimetres), r.Danger().String()}
			if p.width > 0 {
				cells = append(cells, r.Title+"; "+r.Source+"; "+r.Book)
			} else {
				cells = append(cells, r.Title, r.Source, r.Book, group.Name)
			}
			g.rows = append(g.rows, cells)
		}
	}
	p.grid(g)
	return strings.TrimPrefix(p.String(), "\n")
}
