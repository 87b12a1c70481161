package main

import (
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"bench.example/undermark/rules"
	"bench.example/undermark/rules/sheet"
	"bench.example/undermark/rules/template"
	"bench.example/undermark/tui/words"
)

// sheetFlags say on what a sheet is printed.
type sheetFlags struct{ out, paper, reader string }

func sheetCommand(shared *sharedFlags, s streams) *cobra.Command {
	var f sheetFlags
	c := &cobra.Command{
		Use:   "sheet JOB -o FILE.pdf",
		Short: "Print the job: plans, marks, runs, checks and all to sign",
		Long: "All that is worked from, on paper that is folded in four: the van from above with its marks, from below with what is there, the runs with\n" +
			"their fall, every check with its source, cut list, parts and sizes, the cautions, the work step by step with the first run, and lines to sign.",
		Args: oneJob, ValidArgsFunction: jobFiles,
		RunE: func(_ *cobra.Command, args []string) error { return f.print(args[0], shared, s) },
	}
	c.Flags().StringVarP(&f.out, "output", "o", "", "print on `FILE`, which ends in .pdf")
	addPaper(c, &f.paper)
	c.Flags().StringVar(&f.reader, "for", forFitter, "for `WHOM`, "+forFitter+" or "+forCustomer+" (one page that goes with the van); else "+forFitter)
	_ = c.MarkFlagFilename("output", "pdf") // fails only for a flag that isn't there
	return c
}

// print prints a job's sheet on the file.
func (f *sheetFlags) print(job string, shared *sharedFlags, s streams) error {
	paper, err := pdfPaper(f.out, f.paper)
	if err != nil {
		return err
	}
	set, known := readers[f.reader]
	if !known {
		return fmt.Errorf("--for %q: say %s or %s", f.reader, forFitter, forCustomer)
	}
	return draws(f.out, job, shared, s, func(r rules.Result) ([]byte, error) {
		printed := set(&r, words.OnPaper())
		return printed.PDF(paper)
	})
}

// Whom a sheet is for.
const (
	forFitter   = "fitter"
	forCustomer = "customer"
)

var readers = map[string]func(*rules.Result, sheet.Words) sheet.Sheet{forFitter: sheet.Of, forCustomer: sheet.ForCustomer}

// addPaper adds the flag that names the paper.
func addPaper(c *cobra.Command, paper *string) {
	c.Flags().StringVar(paper, "paper", "a4", "the `PAPER` of the printer, a4 or letter; else a4")
}

// pdfPaper is the paper of a name, for a file that is to be a PDF.
func pdfPaper(file, name string) (template.Paper, error) {
	paper, known := template.Papers[strings.ToLower(name)]
	switch {
	case !known:
		return paper, fmt.Errorf("--paper %q: say a4 or letter", name)
	case !strings.EqualFold(filepath.Ext(file), ".pdf"):
		return paper, fmt.Errorf("-o %q: name a file that ends in .pdf", file)
	}
	return paper, nil
}
