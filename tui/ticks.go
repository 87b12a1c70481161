package tui

import (
	"fmt"
	"maps"
	"path/filepath"

	"github.com/BurntSushi/toml"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// ticks are the marks that have been made and the lengths that came out right: by name, what the tape said there. They are kept in the state folder, as
// they are about a van and not about its job file. A map is never changed once it is made.
type ticks map[string]string

// ticked are the marks that count as made: those at which the tape must still say what it said when they were made.
// A mark whose place has moved since is to be made again; when an undo moves it back, it counts again.
func (t ticks) ticked(sheet rules.MarkSheet) map[string]bool {
	made := map[string]bool{}
	for name, says := range sayings(sheet) {
		if said, there := t[name]; there && said == says {
			made[name] = true
		}
	}
	return made
}

// sayings are what the tape must say at each mark and for each length to check, by name.
func sayings(sheet rules.MarkSheet) map[string]string {
	says := map[string]string{}
	for _, m := range sheet.Marks {
		says[m.Name] = readings(m)
	}
	for _, c := range sheet.Checks {
		says[words.CheckID(c)] = fmt.Sprintf("%.1f", c.Length)
	}
	return says
}

// readings is what the tape must say at a mark, to 0.1 mm.
func readings(m rules.Mark) string {
	said := fmt.Sprintf("below %.1f %.1f %.1f", m.Below.Bumper, m.Below.Left, m.Below.Right)
	if a := m.Above; a != nil {
		said += fmt.Sprintf(", above %.1f %.1f %.1f %.1f %.1f", a.Bumper, a.Left, a.Right, a.PinLeft, a.PinRight)
	}
	return said
}

// tick ticks or unticks a mark.
func (r *Root) tick(name string) tea.Cmd {
	made := maps.Clone(r.made)
	if made == nil {
		made = ticks{}
	}
	if r.state.Ticked[name] {
		delete(made, name)
	} else if says, known := sayings(r.state.Marks)[name]; known {
		made[name] = says
	}
	r.made, r.state.Ticked = made, made.ticked(r.state.Marks)
	return r.keepTicks()
}

func (r *Root) ticksPath() string {
	if r.options.StateDir == "" || r.document.Path == "" {
		return ""
	}
	return filepath.Join(r.options.StateDir, "ticks", journalName(r.document.Path)+".toml")
}

// keepTicks writes the ticks down, for a job that has a file.
func (r *Root) keepTicks() tea.Cmd {
	path, made := r.ticksPath(), r.made
	if path == "" || made == nil {
		return nil
	}
	return func() tea.Msg {
		text, err := toml.Marshal(made)
		if err == nil {
			err = desk.WriteState(path, text)
		}
		return noted{err}
	}
}

// readTicks reads the ticks of an earlier day. Without them the marks are to be made again, which harms nobody.
func (r *Root) readTicks() {
	text, err := vehicles.ReadFile(r.ticksPath())
	if err == nil && toml.Unmarshal(text, &r.made) != nil {
		r.made = nil
	}
}
