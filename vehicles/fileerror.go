package vehicles

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// FileError is one thing wrong with a job file: where, what is wrong and what to do. Line is 0 where no line is
// at fault.
type FileError struct {
	File string
	Line int
	Key  string // path of the key, as in Fault; "" when the text is no TOML
	Text string

	reading bool // a reading contradicts another or itself; the job is whole
}

// Error is FILE:LINE: TEXT on one line.
func (e FileError) Error() string {
	if e.Line == 0 {
		return oneLine(e.File) + ": " + e.Text
	}
	return fmt.Sprintf("%s:%d: %s", oneLine(e.File), e.Line, e.Text)
}

// FileErrors is all that is wrong with a job file, in the order of its lines.
type FileErrors []FileError

// Error is every fault on a line of its own.
func (e FileErrors) Error() string {
	lines := make([]string, len(e))
	for i, fault := range e {
		lines[i] = fault.Error()
	}
	return strings.Join(lines, "\n")
}

// WholeJob says whether the job that ParseJob or Load returned beside the error is whole: all that is wrong is that
// readings contradict each other or themselves. Such a job can be put right on the screen, but not judged.
func (e FileErrors) WholeJob() bool {
	return !slices.ContainsFunc(e, func(f FileError) bool { return !f.reading })
}

// oneLine is a file's name as it stands, in quotes when it would break the line.
func oneLine(name string) string {
	if strings.ContainsFunc(name, unicode.IsControl) {
		return strconv.Quote(name)
	}
	return name
}
