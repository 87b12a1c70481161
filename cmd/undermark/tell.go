package main

import (
	"fmt"
	"io"

	"bench.example/undermark/vehicles/harmless"
)

// streams are where a command reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
	terminal io.Writer // standard output as it was given, for the screens alone
	watched  io.Writer // standard error as it was given, for the program's own words of how far it is
}

// guarded returns the streams with all that commands write made harmless: none can forget it.
func (s streams) guarded() streams {
	s.terminal, s.watched = s.out, s.err
	s.out, s.err = harmless.Writer{To: s.out}, harmless.Writer{To: s.err}
	return s
}

// complain writes what went wrong, a line each.
func (s streams) complain(err error) {
	if all, several := err.(interface{ Unwrap() []error }); several {
		for _, one := range all.Unwrap() {
			s.complain(one)
		}
		return
	}
	line(s.err, "%v", err)
}

// line writes one line. What others wrote is harmless in it, and can't end it.
func line(to io.Writer, format string, args ...any) {
	fmt.Fprintln(to, harmless.Text(fmt.Sprintf(format, args...)))
}
