package tui

import (
	"path/filepath"

	"github.com/BurntSushi/toml"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/history"
	"bench.example/undermark/vehicles"
)

// ticksPath is where the marks that were made are kept, as they are about a van and not about its job file: in the state
// folder. "" for nowhere.
func (r *Root) ticksPath() string {
	if r.options.StateDir == "" || r.document.Path == "" {
		return ""
	}
	return filepath.Join(r.options.StateDir, "ticks", journalName(r.document.Path)+".toml")
}

// keepTicks writes the ticks down, for a job that has a file.
func (r *Root) keepTicks() tea.Cmd {
	path, made := r.ticksPath(), r.desk.Made
	if path == "" || made == nil {
		return nil
	}
	return r.ticks.keep(func() error {
		text, err := toml.Marshal(made)
		if err != nil {
			return err
		}
		return desk.WriteState(path, text)
	})
}

// readTicks reads the ticks of an earlier day. Without them the marks are to be made again, which harms nobody.
func (r *Root) readTicks() {
	_, values, err := vehicles.ReadTOML(r.ticksPath())
	if err != nil {
		return
	}
	made := history.Ticks{}
	for name, said := range values {
		text, is := said.(string)
		if !is {
			return
		}
		made[name] = text
	}
	r.desk.Made = made
}
