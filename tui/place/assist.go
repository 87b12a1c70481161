package place

import (
	"fmt"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

var (
	keyChoose = bind("c", "where the whole heater fits", "c")
	keyChosen = bind("letter", "put it there", "a")
)

// choose opens the list of places for the heater, or says why it can't.
func (m screen) choose(s desk.State) (screen, desk.Change) {
	var change desk.Change
	switch {
	case s.Job.Heater == nil:
		change.Say = noHeater
	case s.Job.Cut != nil:
		change = refused(s)
	case len(s.Faults) > 0 || len(s.Result.Findings) == 0:
		change.Say = "Nothing is judged yet: put the floor in first."
	}
	if change.Say != "" {
		return m, change
	}
	m.choosing, m.seeking = true, true
	return m, desk.Change{}
}

// left closes the list; what is still sought is sought no longer.
func (m screen) left() screen {
	m.choosing, m.places = false, m.places.Stop()
	return m
}

// outdated tells whether the job has changed since the places were looked for.
func (m screen) outdated(s desk.State) bool {
	return m.choosing && m.places.Outdated(s)
}

// pick answers a key while the places are listed: a letter takes one.
func (m screen) pick(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	i := -1
	if len(k.Runes) == 1 {
		i = int(k.Runes[0] - 'a')
	}
	switch {
	case key.Matches(k, desk.KeyLeave):
		m = m.left()
	case i >= 0 && i < len(m.places.Said.Options):
		m.choosing = false
		o := m.places.Said.Options[i]
		o.At = openHundredth(rules.RoomForHeater(&s.Result, o.Yaw.Value), o.At)
		job := o.Taken(s.Job)
		return m, desk.Change{Job: &job, Say: "Put there; " + desk.KeyUndo.Help().Key + " takes it back."}
	}
	return m, desk.Change{}
}

// wished are the places to show on the plan.
func (m screen) wished() (at []geometry.Point) {
	if m.choosing {
		for _, o := range m.places.Said.Options {
			at = append(at, o.At)
		}
	}
	return at
}

// choices list where the heater fits, each with its letter and what it costs, or what stands in the way.
func (m screen) choices(s desk.State, w int) []string {
	st, u := s.Settings.Styles(), s.Settings.Units
	wish, within := rules.WishOf(&s.Result)
	rows := desk.Wrapped(st.Title, "Where the whole heater fits, of what was entered, within "+desk.Length(within, u)+" of "+desk.AtX(wish.X, u)+", "+
		desk.Across(wish.Y, s.Settings), w)
	switch {
	case m.places.Failed:
		return append(rows, desk.Wrapped(st.Fault, "It could not be worked out. Nothing was changed; Esc leaves.", w)...)
	case !m.places.Done:
		return append(rows, desk.Wrapped(st.Plain, "Looking..."+m.progress(), w)...)
	case len(m.places.Said.Options) == 0:
		return append(rows, m.inTheWay(s, w)...)
	}
	for i, o := range m.places.Said.Options {
		for n, row := range desk.Wrap(option(o, s), w-2) {
			letter := "  "
			if n == 0 {
				letter = st.Key.Render(string(rune('a'+i))) + " "
			}
			rows = append(rows, letter+row)
		}
	}
	return rows
}

// progress says how far the search is.
func (m screen) progress() string {
	if m.places.Far == "" {
		return ""
	}
	return " " + m.places.Far + ". " + desk.KeyLeave.Help().Key + " stops it."
}

// option says where a place is and what it costs.
func option(o rules.Option, s desk.State) string {
	u := s.Settings.Units
	return fmt.Sprintf("%s, %s, warm air %s: %s to spare (%s), %s from there; %s", desk.AtX(o.At.X, u), desk.Across(o.At.Y, s.Settings),
		facing(o.Yaw.Value, s), survey.Format(o.Margin, u), o.Against, survey.Format(o.Away, u), desk.VerdictWord(o.Verdict))
}

// inTheWay says what would make room, and where the nearest place is.
func (m screen) inTheWay(s desk.State, w int) []string {
	st, said := s.Settings.Styles(), m.places.Said
	rows := desk.Wrapped(st.Strong, "No place holds every distance.", w)
	for _, shift := range said.Shifts {
		rows = append(rows, desk.Wrapped(st.Plain, "It would fit with "+shift.Name+" moved "+words.Way(shift.By, s.Settings)+".", w)...)
	}
	if len(said.Shifts) == 0 {
		rows = append(rows, desk.Wrapped(st.Plain, "Nothing that can be moved by itself makes room.", w)...)
	}
	if o := said.Beyond; o != nil {
		rows = append(rows, desk.Wrapped(st.Plain, "The nearest place beyond: "+option(*o, s)+".", w)...)
	}
	return rows
}
