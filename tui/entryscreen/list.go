package entryscreen

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/features"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

var (
	keyConfirm   = key.NewBinding(key.WithKeys("m"), key.WithHelp("m", "measured or not"))
	keyDuplicate = key.NewBinding(key.WithKeys("d"), key.WithHelp("d", "duplicate"))
	keyDelete    = key.NewBinding(key.WithKeys("x", "delete"), key.WithHelp("x", "delete"))
	keyRaise     = key.NewBinding(key.WithKeys("["), key.WithHelp("[", "up the list"))
	keyLower     = key.NewBinding(key.WithKeys("]"), key.WithHelp("]", "down the list"))
	keyWhole     = key.NewBinding(key.WithKeys("p"), key.WithHelp("p", "plan large"))
)

// Keys are the bindings that hold now; extra are the screen's own, which stand behind those that make new things.
func (e Entry) Keys(s desk.State, extra ...key.Binding) []key.Binding {
	if e.Typing() {
		return e.Editor.Keys(s)
	}
	here, _ := e.Here(s)
	out := []key.Binding{desk.Named(desk.KeyEnter, e.enterSays(here, s))}
	feature, isFeature := here.(features.Record)
	awaits := isFeature && feature.List.Confirmable() && feature.Real(s.Job) && !feature.List.At(s.Job, feature.Row).Measured
	if awaits { // what is asked of it goes before all else
		out = append(out, desk.Named(keyConfirm, "confirm it"))
	}
	for _, f := range e.spec.Fresh {
		out = append(out, f.Key)
	}
	out = append(out, extra...)
	if e.spec.NoPlan {
		return out
	}
	out = append(out, keyWhole)
	if isFeature {
		if feature.List.Confirmable() && !awaits {
			out = append(out, keyConfirm)
		}
		out = append(out, keyDuplicate, keyDelete, keyRaise, keyLower)
	}
	return append(out, e.pane.Keys()...)
}

// enterSays is what Enter does to a row.
func (e Entry) enterSays(here form.Record, s desk.State) string {
	if e.spec.Enter != nil && here != nil {
		if change, done := e.spec.Enter(here, s); done && change.Goto != "" {
			return "go to " + change.Goto
		}
	}
	return "edit"
}

// listKey answers a key in the list; what it has no use for is the plan's.
func (e Entry) listKey(msg tea.KeyMsg, s desk.State) (Entry, desk.Change) {
	if next, mine := e.legendKey(msg, s); mine {
		return next, desk.Change{}
	}
	if to, moved := form.MoveIn(msg.String(), e.At, len(e.spec.Records(s)), max(1, e.h/2)); moved && !e.whole {
		e.At = to
		return e.picked(desk.Change{}, s)
	}
	for _, f := range e.spec.Fresh {
		if key.Matches(msg, f.Key) {
			return e.Begin(f.List, s).picked(desk.Change{}, s)
		}
	}
	record, ok := e.Here(s)
	switch {
	case key.Matches(msg, keyWhole) && !e.spec.NoPlan:
		e.whole = !e.whole
		return e, desk.Change{}
	case e.whole && key.Matches(msg, desk.KeyLeave):
		e.whole = false
		return e, desk.Change{}
	case ok && key.Matches(msg, desk.KeyEnter):
		return e.enter(record, s)
	}
	if feature, isFeature := record.(features.Record); isFeature {
		if next, change, mine := e.act(msg, feature, s); mine {
			return next, change
		}
	}
	return e.planned(msg, s)
}

// act answers a key that does something with the thing picked out.
func (e Entry) act(msg tea.KeyMsg, record features.Record, s desk.State) (next Entry, change desk.Change, mine bool) {
	name, _ := record.Name(s.Job)
	switch {
	case key.Matches(msg, keyConfirm):
		return e, confirm(record, s), true
	case key.Matches(msg, keyDuplicate):
		job, copied, err := record.Duplicate(s)
		next, change = e.reordered(job, copied, err, "duplicate "+name, s)
	case key.Matches(msg, keyDelete):
		job, err := record.Delete(s)
		if next, change = e.reordered(job, record, err, "delete "+name, s); err == nil {
			change.Say = deleted(name, record.Named(s.Job))
		}
	case key.Matches(msg, keyRaise):
		job, moved, err := record.Move(s, -1)
		next, change = e.reordered(job, moved, err, "move "+name, s)
	case key.Matches(msg, keyLower):
		job, moved, err := record.Move(s, 1)
		next, change = e.reordered(job, moved, err, "move "+name, s)
	default:
		return e, desk.Change{}, false
	}
	return next, change, true
}

// deleted says what is gone, with what else of the job said its name.
func deleted(name string, named []string) string {
	if len(named) == 0 {
		return "deleted " + name + ": Ctrl-Z brings it back"
	}
	with := named[len(named)-1]
	if rest := named[:len(named)-1]; len(rest) > 0 {
		with = strings.Join(rest, ", ") + " and " + with
	}
	return "deleted " + name + ", and with it " + with + ": Ctrl-Z brings all of it back"
}

// reordered goes to where a thing is after the list was changed, or says why it was not.
func (e Entry) reordered(job vehicles.Job, record features.Record, err error, step string, s desk.State) (Entry, desk.Change) {
	if err != nil {
		return e, desk.Change{Say: "not done: " + err.Error()}
	}
	s.Job = job
	e.Editor = e.Editor.Close()
	e.At = max(0, min(e.rowOf(record, s), len(e.spec.Records(s))-1))
	return e.picked(desk.Change{Job: &job, Step: step}, s)
}

// confirm says that a thing was measured on this van, or takes it back.
func confirm(record features.Record, s desk.State) desk.Change {
	job, measured, err := record.Confirm(s.Job)
	if err != nil {
		return desk.Change{Say: "not done: " + err.Error()}
	}
	name, _ := record.Name(s.Job)
	say := name + ": measured on this van"
	if !measured {
		say = name + ": not confirmed on this van, so never better than doubtful"
	}
	return desk.Change{Job: &job, Step: record.ID() + " measured", Say: say}
}

// listed are the rows of the list and their records, and the row the keys act on: a new thing that is typed has one where it
// will be, fresh, -1 for none. How they stand is said of those that are seen: see standing.
func (e Entry) listed(s desk.State) (rows []form.Row, all []form.Record, here, fresh int) {
	all, here, fresh = e.spec.Records(s), e.At, -1
	if feature, ok := e.Editor.Record().(features.Record); ok && e.Typing() && feature.Fresh {
		fresh = placeOf(feature, all, s)
		all, here = slices.Insert(slices.Clone(all), fresh, form.Record(feature)), fresh
	}
	rows = make([]form.Row, len(all))
	for i, record := range all {
		rows[i] = e.spec.Row(record, s)
		if i > 0 && i-1 == fresh && rows[fresh].Head != "" {
			rows[i].Head = ""
		}
	}
	return rows, all, here, fresh
}

// placeOf is where a new thing will be among all records: behind the whole things of its list.
func placeOf(fresh features.Record, all []form.Record, s desk.State) int {
	for i, record := range all {
		other, isFeature := record.(features.Record)
		if isFeature && (other.List > fresh.List || other.List == fresh.List && !other.Real(s.Job)) {
			return i
		}
	}
	return len(all)
}

// standing says in a few words how a thing stands, "" for well.
func (e Entry) standing(record form.Record, s desk.State) (say string, fault bool) {
	for _, r := range form.Refused(record, s.Job) {
		if !e.Editor.Writing(record, r.Field) { // not written to its end yet
			return "! refused: " + r.Label, true
		}
	}
	feature, isFeature := record.(features.Record)
	if !isFeature {
		return "", false
	}
	if !feature.Real(s.Job) {
		return "! needs " + feature.Lacks(s.Job), true
	}
	t := feature.List.At(s.Job, feature.Row)
	switch {
	case feature.List == features.Ties:
		return "", false
	case feature.Misses(s) != "":
		return "! " + feature.Misses(s), true
	case !t.Measured:
		return "not confirmed", false
	case !t.Span.Set:
		return fmt.Sprintf("%s not measured", map[bool]string{true: "rise", false: "drop"}[feature.List == features.Fittings]), false
	}
	return "", false
}
