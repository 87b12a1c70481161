package work

import (
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules/work"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/vehicles"
)

// tick says of the step the keys act on that it is done now, or that it is not. Where something is measured in it and nothing is noted
// yet its field opens, so that the figure can be typed at once; else it stays in sight for a note, and the next tick is of the next step.
func (m Screen) tick(s desk.State) (Screen, desk.Change) {
	record, isStep := m.here(s)
	if !isStep {
		return m, desk.Change{}
	}
	if record.id == m.just && s.Job.DoneOf(m.just).At != "" {
		m = m.onward(s)
		if record, isStep = m.here(s); !isStep || record.id == m.just {
			return m, desk.Change{Say: "Every step is done."}
		}
	}
	m.just = ""
	d := s.Job.DoneOf(record.id)
	if d.At != "" {
		d.At = ""
		return m, changed(s, d, record.Name()+": not done")
	}
	d.At = vehicles.Moment(s.Now)
	change := changed(s, d, said(record, d))
	s.Job = *change.Job
	if kind := record.kind(); kind.Measures() && !d.Value.Set || record.dated() && d.Due == "" {
		m.entry.Editor = m.entry.Editor.Open(record, "", s)
		return m, change
	}
	m.just = record.id
	return m, change
}

// said is what is told of a step that was ticked: what should have been done before it comes first.
func said(record stepRecord, d vehicles.Done) string {
	text := record.Name() + ": done " + d.When()
	if i := record.list.Index(record.id); i >= 0 {
		if warning := record.list.Warning(i); warning != "" {
			return record.Name() + " is ticked, but " + warning
		}
	}
	return text
}

// changed is the change that records a step anew. A key that bounces must not tick the next.
func changed(s desk.State, d vehicles.Done, say string) desk.Change {
	job := s.Job.WithDone(d)
	return desk.Change{Job: &job, Step: "", Say: say, Once: true}
}

// here is the step the keys act on.
func (m Screen) here(s desk.State) (stepRecord, bool) {
	record, there := m.entry.Here(s)
	if !there {
		return stepRecord{}, false
	}
	step, isStep := record.(stepRecord)
	return step, isStep
}

// tapped ticks the step whose box was tapped.
func (m Screen) tapped(msg tea.MouseMsg, s desk.State) (ticked Screen, change desk.Change, mine bool) {
	if !entryscreen.IsTap(msg) || msg.X >= desk.BoxColumns {
		return m, desk.Change{}, false
	}
	row, ok := m.entry.RowAt(msg.X, msg.Y, s)
	if !ok {
		return m, desk.Change{}, false
	}
	m.entry.At, m.just = row, ""
	if _, isStep := m.here(s); !isStep {
		return m, desk.Change{}, false
	}
	m, change = m.tick(s)
	return m, change, true
}

// kindOf is the step of an id as a file knows it.
func kindOf(id string) vehicles.StepKind {
	if i := vehicles.StepIndex(id); i >= 0 {
		return vehicles.StepKinds[i]
	}
	return vehicles.StepKind{ID: id}
}

// stepOf is the step of an id in a list, one with nothing but its name where the job has none such.
func stepOf(list work.List, id string, j *vehicles.Job) (step work.Step, i int) {
	if i = list.Index(id); i >= 0 {
		step = list[i]
	} else {
		step = work.Step{StepKind: kindOf(id)}
	}
	step.Done = j.DoneOf(id)
	return step, i
}
