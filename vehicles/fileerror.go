package vehicles

import (
	"fmt"
	"slices"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles/harmless"
)

// FileError is one thing wrong with a file: where, what is wrong and what to do. Line is 0 where no line is
// at fault.
type FileError struct {
	File string
	Line int
	Key  string // path of the key, as in Fault; "" when the text is no TOML
	Text string

	reading bool // a reading contradicts another or itself; the job is whole
	more    int  // of one of a file's: how many there are beside these that were only counted
}

// Error is FILE:LINE: TEXT on one line that is fit to be shown.
func (e FileError) Error() string {
	if e.Line == 0 {
		return oneLine(e.File + ": " + e.Text)
	}
	return oneLine(fmt.Sprintf("%s:%d: %s", e.File, e.Line, e.Text))
}

// FileErrors is all that is wrong with a file, in the order of its lines.
type FileErrors []FileError

// mostTold is how many faults of a file people are told: who mends those mends most of the others.
const mostTold = 20

// FaultsIn gives the faults of a file the lines of their keys; it is nil when there are none.
func FaultsIn(data []byte, file string, faults []Fault) error {
	if len(faults) == 0 {
		return nil
	}
	return located(faults, data, file).sorted()
}

// Error is every fault on a line of its own: the first twenty, and how many more there are.
func (e FileErrors) Error() string {
	var lines []string
	for _, err := range e.Unwrap() {
		lines = append(lines, err.Error())
	}
	return strings.Join(lines, "\n")
}

// Unwrap is what people are told, an error a line: the first twenty faults, and how many more there are.
func (e FileErrors) Unwrap() []error {
	var told []error
	for i, fault := range e {
		if i == mostTold {
			more := len(e) - mostTold
			for _, one := range e {
				more += one.more
			}
			return append(told, FileError{File: fault.File, Text: "and " + survey.Counted(more, "more fault") + ": mend these first, then read it again"})
		}
		told = append(told, fault)
	}
	return told
}

// WholeJob says whether the job that ParseJob or Load returned beside the error is whole: all that is wrong is that
// readings contradict each other or themselves. Such a job can be put right on the screen, but not judged.
func (e FileErrors) WholeJob() bool {
	return !slices.ContainsFunc(e, func(f FileError) bool { return !f.reading })
}

// oneLine is a text, or a file's name, as a line for people has it.
func oneLine(text string) string { return harmless.Text(text) }
