package tui

import (
	"reflect"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// What a job refused is tried again when something else changes: it may have waited for just that. While a field is being
// typed in, the change is not whole, and the texts wait until it is left.

// recorder is a screen with forms.
type recorder interface {
	Records(s desk.State) []form.Record
}

// records are the records of all screens.
func (r *Root) records(s desk.State) (all []form.Record) {
	for _, screen := range r.screens {
		if forms, ok := screen.(recorder); ok {
			all = append(all, forms.Records(s)...)
		}
	}
	return all
}

// retried is a changed job with what it refused tried again, unless a field is still being typed in.
func (r *Root) retried(c desk.Change) desk.Change {
	if c.Job == nil || c.Job.RefusedCount() == 0 {
		return c
	}
	if r.waits = r.screens[r.at].Typing(); r.waits {
		return c
	}
	job, taken := r.again(*c.Job)
	c.Job = &job
	if len(taken) > 0 {
		c.Say = strings.TrimPrefix(c.Say+". "+nowTaken(taken), ". ")
	}
	return c
}

// waitsIn is the field that must be left before refused texts are tried again; "" where none is waited for, or none has the keys any more.
func (r *Root) waitsIn() string {
	if !r.waits {
		return ""
	}
	return r.screens[r.at].Plain(r.desk.State).Field
}

// fieldLeft tries again what waited for a field to be left, as a part of the step that the field was. Where what was typed was rubbed out
// again, and nothing was done before it, there is no such step, and nothing has changed.
func (r *Root) fieldLeft() {
	if !r.waits {
		return
	}
	r.waits = false
	step, any := r.desk.Latest()
	if !any {
		return
	}
	job, taken := r.again(r.desk.State.Job)
	if reflect.DeepEqual(job.Refused(), r.desk.State.Job.Refused()) {
		return
	}
	change := desk.Change{Job: &job, Step: step}
	if len(taken) > 0 {
		change.Say = nowTaken(taken)
	}
	r.owed = tea.Batch(r.owed, r.apply(change)) // the journal is among it
}

func (r *Root) again(job vehicles.Job) (vehicles.Job, []vehicles.Refusal) {
	s := r.desk.State
	s.Job = job
	return form.Again(r.records, s)
}

// nowTaken says what was refused once and is in the job now.
func nowTaken(all []vehicles.Refusal) string {
	names := make([]string, len(all))
	for i, t := range all {
		names[i] = t.String()
	}
	return "now taken: " + strings.Join(names, "; ")
}
