package runs

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

// nothing is what a prompt asks for when none is open.
const nothing = 0

// asked is what a prompt asks for that is opened at a part; each sort of part has a prompt of its own, and so has each of a sort.
func asked(p placed) int { return 1 + int(p.sort) + int(tank+1)*p.index }

// heading says what a prompt asks for.
func (m screen) heading(p placed, s desk.State) string {
	switch p.sort {
	case point:
		path := m.run(s).Path
		return fmt.Sprintf("The %s point %d of %d, read from below; now %s. Both blank: it stays there.", m.of, p.index+1, len(path), where(path[p.index], s))
	case muffler:
		return "Where is the muffler, and how large? Along its leg, from the corner there."
	case filter:
		return "Where is the filter? Along its leg, from the corner there."
	case pump:
		return "Where is the pump, and how does it sit? Along its leg, from the corner there."
	case tank:
		return "Where is the tank's outlet, and how high is the tank? Both places blank: where it is."
	case pipe:
		return "How wide is the pipe, and how tight may it bend?"
	}
	return "How far along the run is " + name(p) + "?"
}

// ask opens the prompt of the part that is picked.
func (m screen) ask(s desk.State) screen {
	if here, ok := m.here(s); ok {
		m.prompt = m.prompt.Ask(asked(here), m.asks(here, s))
	}
	return m
}

// asks are the fields of a part.
func (m screen) asks(p placed, s desk.State) []moving.Ask {
	run := m.run(s)
	switch p.sort {
	case point:
		return m.asksPoint(p, s)
	case pipe:
		return m.asksPipe(run)
	case muffler:
		h := run.Muffler
		return append(asksOnLeg(h.Leg, h.Start),
			moving.Ask{Label: "long", Text: survey.Exact(h.Length), Reads: moving.Size, Unit: "mm"},
			moving.Ask{Label: "across", Text: survey.Exact(h.Across), Reads: moving.Size, Unit: "mm"},
			moving.Ask{Label: "drain hole", Text: orNotKnown(h.Drain), Reads: moving.OneOf, Choices: drainChoices})
	case filter:
		return asksOnLeg(run.Filter.Leg, run.Filter.Start)
	case pump:
		h := run.Pump
		return append(asksOnLeg(h.Leg, h.Start),
			moving.Ask{Label: "outlet up", Text: survey.Exact(h.Tilt), Reads: moving.Tilt, Unit: "°"},
			moving.Ask{Label: "1000 strokes", Text: h.MlPer1000.Text(), Reads: moving.Count, Unit: "ml", Blank: notKnown},
			moving.Ask{Label: "at most", Text: h.Hz.Text(), Reads: moving.Count, Unit: "Hz", Blank: notKnown})
	case tank:
		return m.asksTank(run.Supply.Tank, s)
	}
	return []moving.Ask{{Label: "along the run", Text: survey.Exact(p.along), Reads: moving.Distance, Unit: "mm", Blank: desk.NotMeasured}}
}

var drainChoices = []form.Choice{{Letter: 'd', Name: vehicles.DrainDown}, {Letter: 'a', Name: vehicles.DrainAside}, {Letter: 'n', Name: notKnown}}

// asksOnLeg are the fields of a place on a leg.
func asksOnLeg(leg int, start float64) []moving.Ask {
	return []moving.Ask{
		{Label: "on leg", Text: fmt.Sprint(leg), Reads: moving.Count},
		{Label: "along it", Text: survey.Exact(start), Reads: moving.Distance, Unit: "mm", Blank: desk.NotMeasured},
	}
}

func (m screen) asksPoint(p placed, s desk.State) []moving.Ask {
	drop, note := m.run(s).Path[p.index].Drop, ""
	if m.prompt.Kind == asked(p) {
		if v, err := moving.Height.Read(m.prompt.Text(2), s); err == nil {
			note = m.prompt.Note(s, v.Number.Value)
		}
	}
	return append(moving.PlaceAsks(s, "", "", note),
		moving.Ask{Label: "below floor", Text: survey.Exact(drop), Reads: moving.Height, Unit: "mm", Blank: desk.NotMeasured, Note: note})
}

func (m screen) asksPipe(run *vehicles.Run) []moving.Ask {
	across := moving.Ask{Label: "pipe across", Text: survey.Exact(run.Across), Reads: moving.Size, Unit: "mm", Blank: desk.NotMeasured}
	if m.of != vehicles.FuelRun {
		return []moving.Ask{across, {Label: "bend radius", Text: run.Bend.Text(), Reads: moving.Distance, Unit: "mm", Blank: "sharp"}}
	}
	across.Label = "line across"
	return []moving.Ask{
		across,
		{Label: "inside", Text: run.Supply.Bore.Text(), Reads: moving.Size, Unit: "mm", Blank: desk.NotMeasured},
		{Label: "floor hole", Text: run.Supply.Hole.Text(), Reads: moving.Size, Unit: "mm", Blank: survey.Exact(run.Supply.HoleAcross())},
	}
}

// The sides of the floor on which a tank may be.
const (
	tankBelow = "below the floor's underside"
	tankAbove = "above the finished floor"
)

func (m screen) asksTank(t *vehicles.Tank, s desk.State) []moving.Ask {
	side, span := tankBelow, vehicles.Span{}
	if t != nil {
		span = t.Drop
		if t.Rise.Set {
			side, span = tankAbove, t.Rise
		}
	}
	from, to := "", ""
	if span.Set {
		from, to = survey.Exact(span.From), survey.Exact(span.To)
	}
	return append(moving.PlaceAsks(s, "", "", ""),
		moving.Ask{Label: "it is", Text: side, Reads: moving.OneOf, Choices: []form.Choice{{Letter: 'b', Name: tankBelow}, {Letter: 'a', Name: tankAbove}}},
		moving.Ask{Label: "from", Text: from, Reads: moving.Height, Unit: "mm", Blank: desk.NotMeasured},
		moving.Ask{Label: "to", Text: to, Reads: moving.Height, Unit: "mm", Blank: desk.NotMeasured})
}

// typed answers a key or a pasted text while the fields have the keys.
func (m screen) typed(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	here, _ := m.here(s)
	prompt, change, taken := m.prompt.Press(k, m.asks(here, s), s)
	return m.answered(prompt, change, taken, s)
}

// answered goes on after the prompt has answered.
func (m screen) answered(prompt moving.Prompt, change desk.Change, taken bool, s desk.State) (screen, desk.Change) {
	if m.prompt = prompt; !taken {
		return m, change
	}
	here, _ := m.here(s)
	values, err := m.prompt.Values(m.asks(here, s), s)
	if err == nil {
		change, err = m.taken(here, values, s)
	}
	if err != nil {
		return m, desk.Change{Say: err.Error()}
	}
	m.prompt = moving.Prompt{}
	return m, change
}
