// Package entry is what the entry screens are made of: a list of what there is, the form of what is picked out,
// and the plan or a drawing beside them. A screen says what is in the list, and what may be made new.
package entryscreen

import (
	"cmp"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/features"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/plan"
	"bench.example/undermark/vehicles"
)

// Spec is what one screen has that the others have not.
type Spec struct {
	Title   func(s desk.State) string
	Records func(s desk.State) []form.Record                    // the rows of the list
	Row     func(record form.Record, s desk.State) form.Row     // one row as it is painted
	Warn    func(s desk.State) []string                         // what is wrong, under the list; may be nil
	Beside  func(e Entry, s desk.State, w, h int) (string, int) // a drawing in place of the plan, and its rows; may be nil
	Tells   func(e Entry, s desk.State) []string                // in lines, what Beside says in words; may be nil
	Around  func(s desk.State) []string                         // in lines, what the plan shows of this screen; may be nil
	Empty   string                                              // in place of a list without rows
	Fresh   []Fresh
	Under   func(e Entry, s desk.State, w, h int) []string // what it all comes to, under the plan; may be nil
	Plan    func(e Entry, s desk.State) plan.Options       // what the plan shows beside the job; may be nil
	Above   bool                                           // the plan is seen from above
	NoPlan  bool                                           // there is only ever a drawing
	Brief   bool                                           // and that is a few words: the list has the room
	Form    int                                            // how many rows its forms usually take, with the title; 0 for usualForm
	// Enter answers Enter, or a tap again, on a row that is no form; nil or false: it opens the row's form.
	Enter func(record form.Record, s desk.State) (desk.Change, bool)
	// Opens is the form that a row opens, and at which field, "" for the first, where that is another record; nil: each row its own.
	Opens func(record form.Record, s desk.State) (of form.Record, field string)
}

// Fresh is a key that makes a new thing of a list.
type Fresh struct {
	Key  key.Binding
	List features.List
}

// Entry is the list, the form and the picture. It is a plain value.
type Entry struct {
	Editor form.Editor
	At     int // the row of the list that the keys act on
	top    int // the first line of the list in sight
	spec   *Spec
	pane   plan.Pane
	view   scene.View
	asked  int  // the obstruction this screen last picked out
	whole  bool // the plan has the whole body
	w, h   int  // the body
}

// New returns an entry of what spec says.
func New(spec *Spec) Entry {
	e := Entry{spec: spec, pane: plan.New(), asked: -1}
	if spec.Above {
		e.view = scene.Above
	}
	return e
}

// Typing says whether letters belong to a field.
func (e Entry) Typing() bool { return e.Editor.Typing() }

// Sized returns the entry for a body of w columns and h rows.
func (e Entry) Sized(w, h int) Entry {
	if w != e.w || h != e.h {
		e.top = 0 // of another list
	}
	e.w, e.h = w, h
	return e
}

// SideBySide tells whether what is beside the list stands at its side, and not under it.
func (e Entry) SideBySide() bool { return e.w >= desk.SideBySide }

// Height is how many rows the body has.
func (e Entry) Height() int { return e.h }

// Update answers one key or one event of the mouse.
func (e Entry) Update(msg tea.Msg, s desk.State) (Entry, desk.Change) {
	e = e.Synced(s).Seen(s)
	e, change := e.answer(msg, s)
	if change.Job != nil {
		return e, change // what the list is then waits for the job to be judged
	}
	_, tapped := msg.(tea.MouseMsg)
	return e.seen(s, !tapped), change
}

// Seen is the entry with its list where it shows the row that the keys act on: from there it goes on.
func (e Entry) Seen(s desk.State) Entry { return e.seen(s, false) }

// seen is that; filled leaves no line of the list free at its end, as a tap does where the words below the list are fewer since.
func (e Entry) seen(s desk.State, filled bool) Entry {
	if e.w == 0 || e.whole || e.Typing() && !e.SideBySide() {
		return e // there is no list
	}
	if a := e.arranged(s, e.w, e.h, false).list; a.H > 0 {
		rows, _, here, _ := e.listed(s)
		e.top = form.Top(rows, e.top, here, e.listRoom(s, a), filled)
	}
	return e
}

func (e Entry) answer(msg tea.Msg, s desk.State) (Entry, desk.Change) {
	switch msg := msg.(type) {
	case tea.KeyMsg:
		if e.Typing() {
			was := e.Editor
			editor, change, event := e.Editor.Update(msg, s)
			if e.Editor = editor; change.Say == "" && was.On() != editor.On() {
				change.Say = corrected(was, s)
			}
			return e.edited(change, event, s)
		}
		if msg.Paste {
			return e, desk.Change{} // no field has the keys
		}
		return e.listKey(msg, s)
	case tea.MouseMsg:
		return e.mouse(msg, s)
	}
	return e, desk.Change{}
}

// corrector is a record that has something to say of a value once its field is left: that a slope corrected it by much, or a question.
type corrector interface {
	Corrected(s desk.State, key string) string
}

// corrected says of a value that is left what its record has to say of it.
func corrected(was form.Editor, s desk.State) string {
	record, ok := was.Record().(corrector)
	if !ok || !was.Edited(s) {
		return ""
	}
	return record.Corrected(s, was.On())
}

// turned says that a thing became one of another kind, and how that is taken back: another is asked to keep away from it.
func (e Entry) turned(was, is vehicles.Job) string {
	feature, ok := e.Editor.Record().(features.Record)
	if !ok {
		return ""
	}
	return feature.Turned(was, is)
}

// edited goes on after something was typed or tapped in the form.
func (e Entry) edited(change desk.Change, event form.Event, s desk.State) (Entry, desk.Change) {
	if change.Job != nil {
		change.Say = cmp.Or(change.Say, e.turned(s.Job, *change.Job))
		s.Job = *change.Job
	}
	e.At = e.rowOf(e.Editor.Record(), s)
	if event.Past {
		say := ""
		e, say = e.past(s)
		change.Say = cmp.Or(change.Say, say)
	}
	return e.picked(change, s)
}

// past goes on behind the last field: to what a thing still needs, then to a new thing of its list; from any other
// form, back to the list. It says why it went to a field that is needed.
func (e Entry) past(s desk.State) (Entry, string) {
	feature, isFeature := e.Editor.Record().(features.Record)
	if !isFeature {
		e.Editor = e.Editor.Close()
		return e, ""
	}
	if missing := feature.FirstMissing(s.Job); missing != "" {
		e.Editor = e.Editor.Open(feature, missing, s)
		return e, feature.Lacking(missing, s.Job) + " is needed first. Esc leaves it for later."
	}
	return e.Begin(feature.List, s), ""
}

// Begin opens the form of a new thing.
func (e Entry) Begin(l features.List, s desk.State) Entry {
	fresh := features.New(l, s.Job)
	e.Editor, e.whole = e.Editor.Open(fresh, "", s), false
	return e
}

// OpenAt opens the form of a thing of the job at a field, named as in the job file; of a thing that is not there, it does
// nothing.
func (e Entry) OpenAt(record features.Record, field string, s desk.State) (Entry, desk.Change) {
	if record.Row < 0 || !record.Real(s.Job) {
		return e, desk.Change{}
	}
	e.Editor, e.whole = e.Editor.Open(record, features.FieldOf(field), s), false
	e.At = e.rowOf(record, s)
	return e.picked(desk.Change{}, s)
}

// enter opens the form of a row, or does what the row is for.
func (e Entry) enter(record form.Record, s desk.State) (Entry, desk.Change) {
	if e.spec.Enter != nil {
		if change, done := e.spec.Enter(record, s); done {
			return e, change
		}
	}
	of, field := e.formOf(record, s)
	if feature, isFeature := of.(features.Record); isFeature && field == "" {
		field = feature.First(s.Job)
	}
	e.Editor, e.whole = e.Editor.Open(of, field, s), false
	return e.picked(desk.Change{}, s)
}

// formOf is the record whose form a row opens, and at which field.
func (e Entry) formOf(record form.Record, s desk.State) (of form.Record, field string) {
	if e.spec.Opens == nil {
		return record, ""
	}
	return e.spec.Opens(record, s)
}

// Here is the record the keys act on: that of the form while it is typed in, otherwise that of the list's row.
func (e Entry) Here(s desk.State) (form.Record, bool) {
	if e.Typing() {
		return e.Editor.Record(), true
	}
	all := e.spec.Records(s)
	if len(all) == 0 {
		return nil, false
	}
	return all[max(0, min(e.At, len(all)-1))], true
}

// rowOf is where a record is in the list; the row it was for one that is not there, or where that row opens the record's form.
func (e Entry) rowOf(record form.Record, s desk.State) int {
	feature, isFeature := record.(features.Record)
	if isFeature && feature.Fresh || record == nil {
		return e.At
	}
	all := e.spec.Records(s)
	if e.spec.Opens != nil && e.At < len(all) {
		if of, _ := e.formOf(all[e.At], s); of.ID() == record.ID() {
			return e.At
		}
	}
	for i, other := range all {
		if o, ok := other.(features.Record); ok && o == feature || !ok && !isFeature && other.ID() == record.ID() {
			return i
		}
	}
	return e.At
}

// Synced goes to the obstruction that was picked out elsewhere, and stays within the list. When an undo has taken
// back the thing that is being typed, its form is that of a new one again.
func (e Entry) Synced(s desk.State) Entry {
	all := e.spec.Records(s)
	if feature, ok := e.Editor.Record().(features.Record); ok && e.Typing() && feature.Gone(s.Job) {
		e = e.Begin(feature.List, s)
	}
	if s.Selected != e.asked {
		e.asked = s.Selected
		for i, record := range all {
			if !e.Typing() && obstruction(record, s) == s.Selected && s.Selected >= 0 {
				e.At = i
			}
		}
	}
	e.At = max(0, min(e.At, len(all)-1))
	return e
}

// obstruction is which of the job's obstructions a record is of, -1 for none.
func obstruction(record form.Record, s desk.State) int {
	feature, ok := record.(features.Record)
	if !ok || feature.List != features.Obstructions || !feature.Real(s.Job) {
		return -1
	}
	return feature.Row
}

// picked adds to a change that the plan is to pick out the obstruction the keys act on.
func (e Entry) picked(change desk.Change, s desk.State) (Entry, desk.Change) {
	pick := -1
	if record, ok := e.Here(s); ok {
		pick = obstruction(record, s)
	}
	if pick != e.asked {
		change.Select, e.asked = &pick, pick
		if pick >= 0 && pick < len(s.Plan.Obstructions) && change.Camera == nil {
			change.Camera = e.follow(s, s.Plan.Obstructions[pick].Prism.Footprint)
		}
	}
	return e, change
}

// Seeing is the state with the plan moved so that a place is in the picture; a camera of its own, moved there by hand, stays.
func (e Entry) Seeing(at geometry.Point, own desk.Camera, s desk.State) desk.State {
	if s.Camera == own {
		return s
	}
	if camera := e.follow(s, geometry.NewRectangle(at, at, 0)); camera != nil {
		s.Camera = *camera
	}
	return s
}

// follow is the camera that has a footprint in the picture, nil where it is.
func (e Entry) follow(s desk.State, f geometry.Footprint) *desk.Camera {
	if s.Camera.Scale == 0 || e.w == 0 {
		return nil
	}
	a := e.arranged(s, e.w, e.h, false)
	low, high := f.Bounds()
	middle := low.Add(high).Scale(0.5).At(0)
	if _, _, seen := e.pane.Sized(a.picture.W, a.picture.H).Cell(middle, s, plan.Options{}); seen || a.picture.H == 0 {
		return nil
	}
	camera := s.Camera
	camera.Middle = camera.View.Projection().Point(middle)
	return &camera
}
