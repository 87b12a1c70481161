package main

import (
	"errors"

	"github.com/spf13/cobra"

	"bench.example/undermark/rules"
	"bench.example/undermark/rules/template"
	"bench.example/undermark/tui/words"
)

// templateFlags say on what a template is drawn.
type templateFlags struct{ out, paper string }

func templateCommand(shared *sharedFlags, s streams) *cobra.Command {
	var f templateFlags
	c := &cobra.Command{
		Use:   "template JOB -o FILE.pdf",
		Short: "Draw what is cut and drilled at its true size",
		Long: "Cut, pilot, plate, bolts and stubs at their true size, on pages to be taped to the floor: one face for above, its mirror for below.\n" +
			"What is larger than a page comes in several, which are laid join on join. Print at 100 % and hold a rule to the bars; the marks are taped all the same.",
		Args: oneJob, ValidArgsFunction: jobFiles,
		RunE: func(_ *cobra.Command, args []string) error { return f.draw(args[0], shared, s) },
	}
	c.Flags().StringVarP(&f.out, "output", "o", "", "draw on `FILE`, which ends in .pdf")
	addPaper(c, &f.paper)
	_ = c.MarkFlagFilename("output", "pdf") // fails only for a flag that isn't there
	return c
}

// draw draws a job's template on the file.
func (f *templateFlags) draw(job string, shared *sharedFlags, s streams) error {
	paper, err := pdfPaper(f.out, f.paper)
	if err != nil {
		return err
	}
	return draws(f.out, job, shared, s, func(r rules.Result) ([]byte, error) {
		data, err := template.PDF(&r, paper, words.Standing(&r))
		if errors.Is(err, template.ErrNoCut) {
			return nil, lacking{Key: "cut", Text: "there is no [cut] to draw: place it first"}
		}
		return data, err
	})
}
