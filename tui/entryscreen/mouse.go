package entryscreen

import (
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
)

// IsTap says whether an event of the mouse is a tap.
func IsTap(msg tea.MouseMsg) bool {
	return msg.Action == tea.MouseActionPress && msg.Button == tea.MouseButtonLeft
}

// mouse answers the mouse: a tap on a row or a field; the plan has what happens on it.
func (e Entry) mouse(msg tea.MouseMsg, s desk.State) (Entry, desk.Change) {
	a := e.arranged(s, e.w, e.h, false)
	switch {
	case a.picture.Holds(msg.X, msg.Y):
		msg.X, msg.Y = msg.X-a.picture.X, msg.Y-a.picture.Y
		return e.planned(msg, s)
	case a.list.Holds(msg.X, msg.Y):
		return e.onList(msg, a.list, s)
	case a.form.Holds(msg.X, msg.Y) && IsTap(msg):
		return e.tapForm(msg.X-a.form.X, msg.Y-a.form.Y-1, a.form, s)
	}
	return e, desk.Change{}
}

// onList goes to the tapped row, or on with the wheel; a tap on the row one is at opens its form.
func (e Entry) onList(msg tea.MouseMsg, a Area, s desk.State) (Entry, desk.Change) {
	n := len(e.spec.Records(s))
	var change desk.Change
	switch {
	case n == 0:
	case msg.Button == tea.MouseButtonWheelUp:
		e.At = max(0, e.At-1)
	case msg.Button == tea.MouseButtonWheelDown:
		e.At = min(n-1, e.At+1)
	case IsTap(msg):
		rows, _, here, fresh := e.listed(s)
		row, ok := form.RowAt(rows, e.top, here, e.listRoom(s, a), msg.Y-a.Y-1)
		if ok && row == fresh {
			return e, desk.Change{}
		}
		if fresh >= 0 && row > fresh {
			row--
		}
		again := ok && row == e.At && !e.Typing()
		change.Say = e.Editor.Leaving(s)
		e.Editor = e.Editor.Close()
		if ok {
			e.At = row
		}
		if record, there := e.Here(s); again && there {
			return e.enter(record, s)
		}
	default:
		return e, desk.Change{}
	}
	return e.picked(change, s)
}

// RowAt is the row of the list at a cell of the body, false where there is none.
func (e Entry) RowAt(x, y int, s desk.State) (row int, ok bool) {
	a := e.arranged(s, e.w, e.h, false).list
	if !a.Holds(x, y) {
		return 0, false
	}
	rows, _, here, _ := e.listed(s)
	return form.RowAt(rows, e.top, here, e.listRoom(s, a), y-a.Y-1)
}

// listRoom is how many lines the rows of the list have in its area: a title stands above them, below them what is wrong.
func (e Entry) listRoom(s desk.State, a Area) int { return a.H - 1 - len(e.warnings(s, a.W, a.H)) }

// tapForm answers a tap at column x of row y of the form in area a.
func (e Entry) tapForm(x, y int, a Area, s desk.State) (Entry, desk.Change) {
	record, ok := e.Here(s)
	if !ok {
		return e, desk.Change{}
	}
	if !e.Typing() {
		of, _ := e.formOf(record, s)
		e.Editor = e.Editor.Show(of)
	}
	editor, change, event := e.Editor.Tap(x, y, a.W, a.H-1, s)
	e.Editor = editor
	return e.edited(change, event, s)
}

// planArea is where the plan is.
func (e Entry) planArea(s desk.State) Area {
	all := e.arranged(s, e.w, e.h, false)
	if all.picture.H == 0 {
		return all.drawing // the plan is as large when it shows
	}
	return all.picture
}

// legendKey answers the keys of an open legend.
func (e Entry) legendKey(k tea.KeyMsg, s desk.State) (Entry, bool) {
	if e.spec.NoPlan {
		return e, false
	}
	a := e.planArea(s)
	pane, mine := e.pane.Sized(a.W, a.H).Legend(k, e.shown(s), e.options(s))
	if mine {
		e.pane = pane
	}
	return e, mine
}

// planned gives a message to the plan. An obstruction tapped there is picked out in the list too.
func (e Entry) planned(msg tea.Msg, s desk.State) (Entry, desk.Change) {
	if e.spec.NoPlan {
		return e, desk.Change{}
	}
	a := e.planArea(s)
	pane, change, tapped := e.pane.Sized(a.W, a.H).Update(msg, e.shown(s), e.options(s))
	e.pane = pane
	if tapped != nil {
		e.Editor = e.Editor.Close()
	}
	if change.Camera != nil && e.spec.Above {
		e.view = change.Camera.View // this screen's own: the others keep the side they look from
		change.Camera.View = s.Camera.View
	}
	return e, change
}
