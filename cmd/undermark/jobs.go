package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// sharedFlags are the flags of every command.
type sharedFlags struct{ book string }

// load returns the book that holds: the one named, or the workshop's own, over the built-in one.
func (f sharedFlags) load() (*rules.Book, error) {
	if f.book == "" {
		book, err := rules.WorkshopBook()
		return book, asFailed(err)
	}
	book, err := rules.LoadBook(f.book)
	if err != nil {
		return nil, failed{err}
	}
	return book.Over(rules.Builtin()), nil
}

func asFailed(err error) error {
	if err == nil {
		return nil
	}
	return failed{err}
}

// answerFlags are the flags of a command that answers with a text.
type answerFlags struct {
	json bool
	out  string
}

func (f *answerFlags) add(c *cobra.Command) {
	c.Flags().BoolVar(&f.json, "json", false, "answer in JSON, one object a line")
	c.Flags().StringVarP(&f.out, "output", "o", "", "write the answer to `FILE` and not to standard output")
	_ = c.MarkFlagFilename("output") // fails only for a flag that isn't there
}

func someJobs(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return fmt.Errorf("%s needs a job file, or - for standard input", c.Name())
	}
	return nil
}

// answerJobs runs a command over jobs: each is judged, told makes its text, and the texts are written together, in
// order. What is wrong with a job goes to standard error, a line each; the others are answered all the same, and the
// error says so. worst is the worst verdict.
func answerJobs(
	files []string, shared *sharedFlags, f *answerFlags, s streams, told func(rules.Result) (string, error),
) (worst rules.Verdict, err error) {
	book, err := shared.load()
	if err != nil {
		return 0, err
	}
	var text strings.Builder
	var unread error
	worst = rules.Clear
	for _, file := range files {
		result, err := judge(file, book, s.in)
		if err != nil {
			fmt.Fprintln(s.err, err)
			unread = exit(exitFailed)
			continue
		}
		worst = max(worst, result.Verdict)
		t, err := told(result)
		if err != nil {
			return worst, failed{err}
		}
		text.WriteString(t)
	}
	if text.Len() > 0 {
		err = f.write(text.String(), s)
	}
	return worst, errors.Join(err, unread)
}

// judge reads and judges a job. The error has a line for everything that is wrong.
func judge(file string, book *rules.Book, in io.Reader) (rules.Result, error) {
	job, err := read(file, in)
	if err != nil {
		return rules.Result{}, err
	}
	result, faults := rules.Judge(job, book)
	var wrong []error
	for _, f := range faults {
		wrong = append(wrong, fmt.Errorf("%s: %s", file, f.Text))
	}
	return result, errors.Join(wrong...)
}

// read reads a job file, or standard input for "-".
func read(file string, in io.Reader) (vehicles.Job, error) {
	if file != "-" {
		document, err := vehicles.Load(file, rules.CheckRules)
		return document.Job, err
	}
	data, err := io.ReadAll(io.LimitReader(in, vehicles.LargestFile+1))
	if err != nil {
		return vehicles.Job{}, fmt.Errorf("-: standard input can't be read: %w", err)
	}
	return vehicles.ParseJob(data, file, rules.CheckRules)
}

// write puts an answer where it is wanted: all of it, or an error.
func (f *answerFlags) write(text string, s streams) error {
	if f.out == "" {
		_, err := io.WriteString(s.out, text)
		return asFailed(err)
	}
	return asFailed(vehicles.WriteFile(f.out, []byte(text)))
}
