package main

import (
	"errors"
	"os"
	"path/filepath"
	"strings"

	"github.com/adrg/xdg"
	"github.com/charmbracelet/x/term"

	"bench.example/undermark/tui"
	"bench.example/undermark/tui/desk"
)

// screen opens the screens on a job, or on the sample when none is named.
func screen(shared sharedFlags, args []string, s streams) error {
	out, isFile := s.terminal.(*os.File)
	if !isFile || !term.IsTerminal(out.Fd()) {
		return errors.New("the screens need a terminal; check, marks and rules answer without one")
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
	return asFailed(tui.Run(o, s.err))
}
