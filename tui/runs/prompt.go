package runs

import (
	"fmt"
	"slices"

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
func asked(p placed) int {
	kinds := len(vehicles.HangingKinds) + 1
	return 1 + int(p.sort) + int(tank+1)*(slices.Index(vehicles.HangingKinds, p.kind)+1+kinds*p.index)
}

// heading says what a prompt asks for.
func (m screen) heading(p placed, s desk.State) string {
	switch p.sort {
	case point:
		path := m.run(s).Path
		return fmt.Sprintf("The %s point %d of %d, read from below; now %s. Both blank: it stays there.", m.of, p.index+1, len(path), where(path[p.index], s))
	case tank:
		return "Where is the tank's outlet, and how high is the tank? Both places blank: where it is."
	case pipe:
		return "How wide is the pipe, and how tight may it bend?"
	}
	if p.alone() {
		return "Where is the " + p.kind.Name + p.kind.Asks + "? Along its leg, from the corner there."
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
	case tank:
		return m.asksTank(run.Supply.Tank, s)
	}
	if p.alone() {
		now := *run
		return asksHung(now.Hanging.Thing(p.kind, 0))
	}
	return []moving.Ask{{Label: "along the run", Text: survey.Exact(p.along), Reads: moving.Distance, Unit: "mm", Blank: vehicles.NotMeasured}}
}

// onItsLeg is how many fields a place on a leg has.
const onItsLeg = 2

// asksHung are the fields of a thing on its leg: its place, then its details.
func asksHung(thing *vehicles.Hung) []moving.Ask {
	asks := []moving.Ask{
		{Label: "on leg", Text: fmt.Sprint(thing.Leg()), Reads: moving.Count},
		{Label: "along it", Text: survey.Exact(thing.Start()), Reads: moving.Distance, Unit: "mm", Blank: vehicles.NotMeasured},
	}
	for _, d := range thing.Details() {
		ask := moving.Ask{Label: d.Label, Text: d.Text(), Reads: moving.Count, Unit: d.Unit}
		switch {
		case d.Word != nil:
			ask.Text, ask.Reads = orNotKnown(d.Text()), moving.OneOf
			for _, word := range append(d.Words[:len(d.Words):len(d.Words)], vehicles.NotKnown) {
				ask.Choices = append(ask.Choices, form.Choice{Letter: rune(word[0]), Name: word})
			}
		case d.Figure != nil:
			ask.Blank = vehicles.NotKnown
		case d.Unit == "mm":
			ask.Reads = moving.Size
		case d.Unit == "°":
			ask.Reads = moving.Tilt
		}
		asks = append(asks, ask)
	}
	return asks
}

// belowFloor is the field of how far below the floor a point is.
const belowFloor = "below floor"

func (m screen) asksPoint(p placed, s desk.State) []moving.Ask {
	drop, note := m.run(s).Path[p.index].Drop, ""
	if m.prompt.Kind == asked(p) {
		if v, err := moving.Height.Read(m.prompt.Text(2), s); err == nil {
			note = m.prompt.Note(s, v.Number.Value)
		}
	}
	return append(moving.PlaceAsks(s, "", "", note),
		moving.Ask{Label: belowFloor, Text: survey.Exact(drop), Reads: moving.Height, Unit: "mm", Blank: vehicles.NotMeasured, Note: note})
}

func (m screen) asksPipe(run *vehicles.Run) []moving.Ask {
	across := moving.Ask{Label: "pipe across", Text: survey.Exact(run.Across), Reads: moving.Size, Unit: "mm", Blank: vehicles.NotMeasured}
	if m.of != vehicles.FuelRun {
		return []moving.Ask{across, {Label: "bend radius", Text: run.Bend.Text(), Reads: moving.Distance, Unit: "mm", Blank: "sharp"}}
	}
	across.Label = "line across"
	return []moving.Ask{
		across,
		{Label: "inside", Text: run.Supply.Bore.Text(), Reads: moving.Size, Unit: "mm", Blank: vehicles.NotMeasured},
		{Label: "floor hole", Text: run.Supply.Hole.Text(), Reads: moving.Size, Unit: "mm", Blank: survey.Exact(run.Supply.HoleAcross())},
	}
}

// The sides of the floor on which a tank may be.
const (
	tankBelow = "below the floor's underside"
	tankAbove = desk.AboveFinished
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
		moving.Ask{Label: "from", Text: from, Reads: moving.Height, Unit: "mm", Blank: vehicles.NotMeasured},
		moving.Ask{Label: "to", Text: to, Reads: moving.Height, Unit: "mm", Blank: vehicles.NotMeasured})
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
