package screentest

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/history"
	"bench.example/undermark/vehicles"
)

// Driver drives a screen with a job on its desk the way the program does: it gives it messages and has its changes done by what
// does them in the program.
type Driver struct {
	T      testing.TB
	Screen desk.Screen
	*history.Desk
	Said  string // the last line said
	Asked desk.Ask
	Cmd   tea.Cmd // the command that the screen gave last
}

// New puts a job before a screen of w columns and h rows.
func New(t testing.TB, screen desk.Screen, job vehicles.Job, w, h int) *Driver {
	r := &Driver{T: t, Screen: screen, Desk: onDesk(Judged(desk.State{Selected: -1}, job))}
	r.Send(tea.WindowSizeMsg{Width: w, Height: h})
	return r
}

// After has a screen answer messages one by one, and returns screen and state after them and all the changes.
func After(screen desk.Screen, s desk.State, msgs ...tea.Msg) (desk.Screen, desk.State, []desk.Change) {
	r := &Driver{Screen: screen, Desk: onDesk(s)}
	var changes []desk.Change
	for _, msg := range msgs {
		changes = append(changes, r.Send(msg))
	}
	return r.Screen, r.State, changes
}

// Judged puts a job on the desk that has just been opened, by the built-in book unless the desk has another. With faults the
// last result stays.
func Judged(s desk.State, j vehicles.Job) desk.State {
	if s.Book == nil {
		s.Book = rules.Builtin()
	}
	d := onDesk(s)
	d.Begin(j, true)
	return d.State
}

// Send gives the screen a message, does what it asks for and returns that.
func (r *Driver) Send(msg tea.Msg) desk.Change {
	screen, change, cmd := r.Screen.Update(msg, r.State)
	r.Screen, r.Asked, r.Cmd = screen, change.Ask, cmd
	switch done := r.Apply(change); {
	case done.Refused != "":
		r.Said = done.Refused
	case change.Say != "":
		r.Said = change.Say
	case change.Unsay != "" && change.Unsay == r.Said:
		r.Said = ""
	}
	if change.Goto == r.Screen.Title() && change.Focus != nil {
		r.State.Focus = change.Focus
		r.Send(desk.Reveal{})
	}
	return change
}

// Work does what the screen's last command begins, the first of several: what goes on beside the screen and not what looks how far it
// is. It returns what came of it and does not send it.
func (r *Driver) Work() tea.Msg {
	msg := r.Cmd()
	if all, several := msg.(tea.BatchMsg); several {
		return all[0]()
	}
	return msg
}

// Undo takes the last undo step back.
func (r *Driver) Undo() { require.True(r.T, r.Desk.Undo(), "nothing to undo") }

// Paste pastes a text.
func (r *Driver) Paste(text string) {
	r.Send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true})
}

// Tap taps column x of row y.
func (r *Driver) Tap(x, y int) {
	r.Send(tea.MouseMsg{X: x, Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
}

// Tapped is what a screen asks for when it is tapped.
func Tapped(d *Driver, x, y int) desk.Change {
	_, change, _ := d.Screen.Update(tea.MouseMsg{X: x, Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress}, d.State)
	return change
}

// Pressed is what a screen asks for when a letter is pressed.
func Pressed(d *Driver, letter rune) desk.Change {
	_, change, _ := d.Screen.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{letter}}, d.State)
	return change
}

// View is the screen without colours; it must be exactly w columns wide and h rows high.
func (r *Driver) View(w, h int) string { return Filled(r.T, r.Screen, r.State, w, h) }

// Golden compares the screen with testdata/name.txt, where row ends are marked; with UPDATE_GOLDEN=1 it writes it.
func (r *Driver) Golden(name string, w, h int) {
	r.T.Helper()
	golden(r.T, name, r.View(w, h))
}

// onDesk is a desk with a state as it is, judged before, and no job before it.
func onDesk(s desk.State) *history.Desk {
	d := &history.Desk{State: s, Made: history.Ticks{}}
	d.Begin(s.Job, !s.Dirty)
	d.State = s
	d.State.Ticked = nil
	for name, on := range s.Ticked {
		if on {
			d.Apply(desk.Change{Tick: name})
		}
	}
	d.State = s
	return d
}
