package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
	"bench.example/undermark/vehicles/harmless"
)

// sharedFlags are the flags of every command.
type sharedFlags struct{ book string }

// path is where the book lies that load reads.
func (f sharedFlags) path() string {
	if f.book == "" {
		return rules.WorkshopPath()
	}
	return f.book
}

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
	from string // the most private of the files that the answer is made of, "" for none
}

// errTwoForms refuses both at once.
var errTwoForms = errors.New("--json and --csv are two forms of one answer: keep one of them")

func (f *answerFlags) add(c *cobra.Command) {
	c.Flags().BoolVar(&f.json, "json", false, "answer in JSON, one object a line")
	c.Flags().StringVarP(&f.out, "output", "o", "", "write the answer to `FILE` and not to standard output")
	_ = c.MarkFlagFilename("output") // fails only for a flag that isn't there
}

// forSpreadsheet adds the flag for an answer in rows, each of one such thing.
func forSpreadsheet(c *cobra.Command, table *bool, one string) {
	c.Flags().BoolVar(table, "csv", false, "answer as comma-separated values, one row "+one+", for a spreadsheet")
}

// file is where the answer goes, "" for standard output, which "-" is, too (POSIX.1-2017, 12.2, guideline 13).
func (f *answerFlags) file() string {
	if f.out == "-" {
		return ""
	}
	return f.out
}

// someFile is what a command that reads jobs needs.
const someFile = "a job file, " + orInput

const orInput = "or - for standard input"

func noFile(command string) error { return fmt.Errorf("%s needs %s", command, someFile) }

// fileBehind is for a command that got only the word which stands before its jobs.
func fileBehind(command, word string) error {
	return fmt.Errorf("%s needs a job file behind %s, %s", command, word, orInput)
}

func someJobs(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return noFile(c.Name())
	}
	return nil
}

// answerJobs runs a command over jobs: each is judged, told makes its text, and the texts are written together, in
// order. What is wrong with a job goes to standard error, a line each; the others are answered all the same, and the
// error says so. worst is the worst verdict.
func answerJobs(
	files []string, shared *sharedFlags, f *answerFlags, s streams, told func(rules.Result) (string, error),
) (worst rules.Verdict, err error) {
	if err := f.spares(append(files[:len(files):len(files)], shared.path()), s); err != nil {
		return 0, err
	}
	book, err := shared.load()
	if err != nil {
		return 0, err
	}
	var text strings.Builder
	var unread error
	worst = rules.Clear
	for _, file := range files {
		verdict, t, err := answer(file, book, s.in, told)
		if err != nil {
			s.complain(err)
			unread = exit(exitFailed)
			continue
		}
		worst = max(worst, verdict)
		text.WriteString(t)
	}
	if text.Len() > 0 {
		err = f.write(text.String(), s)
	}
	return worst, errors.Join(err, unread)
}

// answer reads and judges a job and makes its text. The error has a line for everything that is wrong.
func answer(file string, book *rules.Book, in io.Reader, told func(rules.Result) (string, error)) (rules.Verdict, string, error) {
	job, data, err := read(file, book, in)
	if err != nil {
		return 0, "", err
	}
	result, faults := rules.Judge(job, book)
	if len(faults) > 0 {
		return 0, "", vehicles.FaultsIn(data, file, faults)
	}
	text, err := told(result)
	var wrong lacking
	switch {
	case errors.As(err, &wrong):
		return 0, "", vehicles.FaultsIn(data, file, []vehicles.Fault{vehicles.Fault(wrong)})
	case err != nil:
		return 0, "", fmt.Errorf("%s: %w", file, err)
	}
	return result.Verdict, text, nil
}

// lacking is why a job that can be judged can't be answered about: it lacks the key.
type lacking vehicles.Fault

func (l lacking) Error() string { return l.Text }

// read reads a job file that the book judges, or standard input for "-", and returns what it holds too.
func read(file string, book *rules.Book, in io.Reader) (vehicles.Job, []byte, error) {
	data, err := bytesOf(file, in)
	if err != nil {
		return vehicles.Job{}, nil, err
	}
	job, err := vehicles.ParseJob(data, file, book)
	return job, data, err
}

// bytesOf is what a job file holds, or standard input for "-": unlike the screens, a command can take what a pipe brings from there.
func bytesOf(file string, in io.Reader) ([]byte, error) {
	if file != "-" {
		data, err := vehicles.ReadFile(file)
		if errors.Is(err, vehicles.ErrPipe) {
			err = fmt.Errorf("%w, or write - for standard input", err)
		}
		return data, err
	}
	data, err := io.ReadAll(io.LimitReader(in, vehicles.LargestFile+1))
	if err != nil {
		return nil, fmt.Errorf("-: standard input can't be read: %w", err)
	}
	return data, nil
}

// spares returns an error when the answer would be written over a file that the command reads, under whatever name.
func (f *answerFlags) spares(inputs []string, s streams) error {
	f.from = mostPrivate(inputs)
	out, err := os.Stat(f.file())
	if f.file() == "" || err != nil {
		return nil // what is not there is not read either
	}
	for _, in := range inputs {
		read, err := os.Stat(in)
		if file, isFile := s.in.(*os.File); in == "-" && isFile {
			read, err = file.Stat()
		}
		if err == nil && os.SameFile(read, out) {
			return fmt.Errorf("the answer would be written over %s, which is read here: name another file with -o", in)
		}
	}
	return nil
}

// mostPrivate is the file of several that the fewest may read; "" where none is there.
func mostPrivate(files []string) (most string) {
	const others = 0o077
	least := fs.FileMode(others + 1)
	for _, file := range files {
		if info, err := os.Stat(file); err == nil && info.Mode().IsRegular() && info.Mode()&others < least {
			most, least = file, info.Mode()&others
		}
	}
	return most
}

// write puts an answer where it is wanted: all of it, or an error. What others wrote is harmless in it: shown as
// stand-ins to people, spelled in ASCII to programs.
func (f *answerFlags) write(text string, s streams) error {
	safe := harmless.Lines
	if f.json {
		safe = harmless.JSON
	}
	text = safe(text)
	if f.file() == "" {
		_, err := io.WriteString(s.out, text)
		return asFailed(err)
	}
	return asFailed(vehicles.WriteLike(f.from, f.out, []byte(text)))
}
