package main

import (
	"fmt"
	"io"
	"os"

	"github.com/charmbracelet/x/term"

	"bench.example/undermark/tui/charset"
	"bench.example/undermark/vehicles/harmless"
)

// streams are where a command reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
	terminal io.Writer    // standard output as it was given, for the screens alone
	watched  io.Writer    // standard error as it was given, for the program's own words of how far it is
	letters  *charset.Set // of the terminals among them
	lost     *firstError  // of standard output
}

// firstError is a writer that keeps why something could not be written, the first time: not each of those who write here looks.
type firstError struct {
	to  io.Writer
	err error
}

func (w *firstError) Write(p []byte) (int, error) {
	n, err := w.to.Write(p)
	if w.err == nil {
		w.err = err
	}
	return n, err
}

// guarded returns the streams with all that commands write made harmless: none can forget it.
func (s streams) guarded() streams {
	s.terminal, s.watched = s.out, s.err
	s.letters = charset.Of(os.Getenv)
	s.lost = &firstError{to: s.lettered(s.out)}
	s.out, s.err = harmless.Writer{To: s.lost}, harmless.Writer{To: s.lettered(s.err)}
	return s
}

// lettered is a writer that puts what goes to a terminal into its own letters.
func (s streams) lettered(to io.Writer) io.Writer {
	if file, is := to.(*os.File); is && term.IsTerminal(file.Fd()) {
		return s.letters.Writer(to)
	}
	return to
}

// complain writes what went wrong, a line each.
func (s streams) complain(err error) {
	if all, several := err.(interface{ Unwrap() []error }); several {
		for _, one := range all.Unwrap() {
			s.complain(one)
		}
		return
	}
	s.complainOf("%v", err)
}

// complainOf writes what went wrong: into a pipe or a file one line, on a terminal as many as its width takes.
func (s streams) complainOf(format string, args ...any) {
	line(s.err, columns(s.watched), format, args...)
}

// tell writes one line of an answer that is no list.
func (s streams) tell(format string, args ...any) { line(s.out, s.width(), format, args...) }

// line writes one line, broken where the terminal has so many columns; 0: where it has no end. What others wrote is harmless in it, and
// can't end it.
func line(to io.Writer, columns int, format string, args ...any) {
	p := paper{width: columns}
	p.line(format, args...)
	fmt.Fprint(to, p.String())
}
