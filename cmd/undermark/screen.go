package main

import (
	"bufio"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/adrg/xdg"
	"github.com/charmbracelet/x/term"

	"bench.example/undermark/tui"
	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
)

// screen opens the screens on a job, or on the sample when none is named; plain, in lines.
func screen(shared sharedFlags, plain bool, args []string, s streams) error {
	out, isFile := s.terminal.(*os.File)
	seen := isFile && term.IsTerminal(out.Fd())
	if !seen && !plain {
		return errors.New("the screens need a terminal; --plain, check, marks and rules answer without one")
	}
	book, err := shared.load()
	if err != nil {
		return err
	}
	o := tui.Options{
		Book:         book,
		Screens:      tui.Screens(),
		SettingsPath: desk.SettingsPath(),
		StateDir:     filepath.Join(xdg.StateHome, "undermark"),
	}
	if len(args) == 1 {
		o.Path = args[0]
	}
	if o.Settings, err = desk.LoadSettings(o.SettingsPath); err != nil {
		o.Notes = append(o.Notes, strings.Split(err.Error(), "\n")...)
	}
	o.Settings.Colour = desk.Detect(os.Getenv)
	switch {
	case !seen:
		return asFailed(tui.WritePlain(o, s.out, aloud.UsualWidth))
	case plain || s.inLines() != "" && wantsLines(s):
		o.Letters = s.letters
		return asFailed(tui.RunPlain(o, out, s.err))
	}
	return asFailed(tui.Run(o, s.err))
}

// inLines is why the terminal may not show what is drawn, "" for no reason.
func (s streams) inLines() string {
	switch {
	case os.Getenv("TERM") == "dumb":
		return "TERM=dumb: this terminal can't draw."
	case s.letters != nil:
		return s.letters.Said + ": this terminal may not know UTF-8, which the screens are drawn with."
	}
	return ""
}

// wantsLines asks on such a terminal whether to go on in lines.
func wantsLines(s streams) bool {
	s.tell("%s Enter: go on in lines (undermark --plain); n, then Enter: draw all the same.", s.inLines())
	answer, _ := bufio.NewReader(byteByByte{s.in}).ReadString('\n')
	return !strings.HasPrefix(strings.ToLower(strings.TrimSpace(answer)), "n")
}

// byteByByte leaves in the terminal what was typed behind the line that is read.
type byteByByte struct{ from io.Reader }

func (b byteByByte) Read(p []byte) (int, error) { return b.from.Read(p[:min(len(p), 1)]) }
