package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

func newCommand(shared *sharedFlags, s streams) *cobra.Command {
	var from, van string
	c := &cobra.Command{
		Use:   "new FILE",
		Short: "Start a job file",
		Long: "Starts a job for an empty van, for one of the library's (--van), or for one surveyed before (--from): its floor,\n" +
			"obstructions and openings are then carried over as not confirmed on this van, and nothing on them is clear before\n" +
			"each has been measured or confirmed. A file that is there already is left as it is.",
		Args: oneFile, ValidArgsFunction: jobFiles,
		RunE: func(_ *cobra.Command, args []string) error { return startJob(args[0], from, van, shared, s) },
	}
	c.Flags().StringVar(&from, "from", "", "carry the van of `JOB` over, an earlier one")
	c.Flags().StringVar(&van, "van", "", "start from the van `NAME` of the library")
	_ = c.MarkFlagFilename("from", "toml") // fails only for a flag that isn't there
	_ = c.RegisterFlagCompletionFunc("van", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return vanNames(), cobra.ShellCompDirectiveNoFileComp
	})
	return c
}

func oneFile(_ *cobra.Command, args []string) error {
	if len(args) != 1 || args[0] == "-" {
		return fmt.Errorf("new needs the name of one job file to write")
	}
	return nil
}

func vanNames() []string {
	var names []string
	for _, v := range vehicles.Library() {
		names = append(names, v.Name)
	}
	return names
}

// vans are the library's names and what they are.
func vans() (title string, pairs [][2]string) {
	for _, v := range vehicles.Library() {
		pairs = append(pairs, [2]string{v.Name, v.Title})
	}
	return "The library's vans, all invented", pairs
}

// startJob writes a new job file where there is none.
func startJob(path, from, van string, shared *sharedFlags, s streams) error {
	if from != "" && van != "" {
		return errors.New("--from and --van both say which van: keep one of them")
	}
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return failed{fmt.Errorf("%s: it is a folder: say which job file to write in it", path)}
	}
	book := rules.Builtin()
	if from != "" { // only a van that was surveyed has readings for a book to judge
		var err error
		if book, err = shared.load(); err != nil {
			return err
		}
	}
	job, err := newJob(strings.TrimSuffix(filepath.Base(path), filepath.Ext(path)), from, van, book, s)
	if err != nil {
		return failed{err}
	}
	_, _, err = vehicles.Document{Path: path, Like: from}.Save(job, book)
	switch {
	case errors.Is(err, vehicles.ErrChangedOnDisk):
		return failed{fmt.Errorf("%s: there already, and left as it is: give a new job another name", path)}
	case err != nil:
		return failed{err}
	}
	s.tell("%s: a new job, %d things not confirmed on this van", path, unconfirmed(job))
	return nil
}

// newJob is the job to start with; its ref is that of the file's name.
func newJob(ref, from, van string, book *rules.Book, s streams) (vehicles.Job, error) {
	switch {
	case from != "":
		old, _, err := read(from, book, s.in)
		if err != nil {
			return old, err
		}
		return vehicles.CarryOver(old, ref), nil
	case van != "":
		job, ok := vehicles.FromLibrary(van)
		if !ok {
			return job, fmt.Errorf("there is no van %q in the library; there are: %s", van, strings.Join(vanNames(), ", "))
		}
		job.Ref = ref
		return job, nil
	}
	return vehicles.NewJob(ref), nil
}

// unconfirmed counts what was not measured on the job's van.
func unconfirmed(j vehicles.Job) int {
	n := 0
	for _, o := range j.Obstructions {
		if !o.Measured {
			n++
		}
	}
	for _, o := range j.Openings {
		if o.Unconfirmed {
			n++
		}
	}
	for _, f := range j.Fittings {
		if f.Unconfirmed {
			n++
		}
	}
	return n
}
