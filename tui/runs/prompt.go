package runs

import (
	"errors"
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

// What the prompts ask for.
const (
	nothing = iota
	pointAt // where a point of the run is to be
	pipe    // the run's width and bend
)

// headings say what a prompt asks for.
var headings = [...]string{
	pointAt: "The %s, read from below; now %s.",
	pipe:    "How wide is the pipe, and how tight may it bend?",
}

// heading is what stands above the fields: of a point, which one it is and where it is now.
func (m screen) heading(s desk.State) string {
	if m.prompt.Kind != pointAt {
		return headings[m.prompt.Kind]
	}
	path := m.run(s).Path
	which := fmt.Sprintf("%s point %d of %d", m.of, m.point+1, len(path))
	return fmt.Sprintf(headings[pointAt], which, placeOf(path[m.point], s))
}

// ask opens a prompt.
func (m screen) ask(kind int, s desk.State) screen {
	m.prompt = m.prompt.Ask(kind, m.asks(kind, s))
	return m
}

// asks are the fields of a prompt.
func (m screen) asks(kind int, s desk.State) []moving.Ask {
	run := m.run(s)
	if kind == pipe {
		return []moving.Ask{
			{Label: "pipe across", Text: survey.Exact(run.Across), Reads: moving.Size, Unit: "mm", Blank: desk.NotMeasured},
			{Label: "bend radius", Text: run.Bend.Text(), Reads: moving.Distance, Unit: "mm", Blank: desk.NotMeasured},
		}
	}
	drop, note := run.Path[m.point].Drop, ""
	if m.prompt.Kind == kind {
		if v, err := moving.Height.Read(m.prompt.Text(2), s); err == nil {
			note = m.prompt.Note(s, v.Number.Value)
		}
	}
	return append(moving.PlaceAsks(s, "", "", note),
		moving.Ask{Label: "below floor", Text: survey.Exact(drop), Reads: moving.Height, Unit: "mm", Blank: desk.NotMeasured, Note: note})
}

// typed answers a key or a pasted text while the fields have the keys.
func (m screen) typed(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	prompt, change, taken := m.prompt.Press(k, m.asks(m.prompt.Kind, s), s)
	if m.prompt = prompt; !taken {
		return m, change
	}
	change, err := m.taken(s)
	if err != nil {
		return m, desk.Change{Say: err.Error()}
	}
	m.prompt = moving.Prompt{}
	return m, change
}

// taken is the change that a prompt comes to.
func (m screen) taken(s desk.State) (desk.Change, error) {
	values, err := m.prompt.Values(m.asks(m.prompt.Kind, s), s)
	if err != nil {
		return desk.Change{}, err
	}
	if m.prompt.Kind == pipe {
		if !values[0].Number.Set {
			return desk.Change{}, errors.New("the pipe's width is wanted")
		}
		run := *m.run(s)
		run.Across, run.Bend = values[0].Number.Value, values[1].Number
		job := s.Job.WithRun(m.of, &run)
		return desk.Change{Job: &job}, nil
	}
	drop := values[2].Number.Value
	at, err := m.prompt.Place(s, drop)
	if err != nil {
		return desk.Change{}, err
	}
	return m.setPoint(s, vehicles.RunPoint{X: moving.Hundredth(at.X), Y: moving.Hundredth(at.Y), Drop: drop}, ""), nil
}
