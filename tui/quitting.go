package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/vehicles"
	"bench.example/undermark/vehicles/harmless"
)

// quit leaves, after a question when there is unsaved work or a reading that was refused.
func (r *Root) quit() tea.Cmd {
	refused := vehicles.RefusedWords(r.desk.State.Job.Refused())
	if !r.desk.State.Dirty && refused == "" {
		return tea.Quit
	}
	for _, o := range r.overlays {
		if q, ok := o.(*question); ok && (q.asks == quitAsks || q.asks == refusedAsks) {
			return nil // it is being asked
		}
	}
	if !r.desk.State.Dirty {
		r.open(&question{asks: refusedAsks, because: refused, answers: []answer{
			{"Quit: the file keeps what was typed as refused", func() tea.Cmd { return tea.Quit }},
			{"Stay here and put it right", nil},
		}})
		return nil
	}
	answers := []answer{{"Save and quit", func() tea.Cmd { r.leaving = true; return r.save() }}}
	if (r.failed || len(r.desk.State.Faults) > 0) && r.journal != nil && r.unkept == "" {
		answers = append(answers, answer{"Quit; the work is kept safe and asked about next time", func() tea.Cmd { return tea.Quit }})
	}
	answers = append(answers, answer{"Quit without saving: the changes are gone then", r.giveUp}, answer{"Stay here", nil})
	r.open(&question{asks: quitAsks, because: r.withRefused(r.unsavedWords()), answers: answers})
	return nil
}

const (
	quitAsks    = "There is work that is not saved."
	refusedAsks = "Not everything that was typed is in the job."
)

func (r *Root) unsavedWords() string {
	if r.document.Path == "" {
		return "This job has no file yet."
	}
	return "The file is " + harmless.Text(r.document.Path) + "."
}

// giveUp quits and takes the journal away, as the fitter asked for.
func (r *Root) giveUp() tea.Cmd {
	r.givenUp = true
	j := r.journal
	if j == nil {
		return tea.Quit
	}
	j.unsaved.Store(nil)
	return tea.Sequence(r.syncJournal(), tea.Quit)
}

// left quits when that is what the save was for; what was edited during the save is saved first.
func (r *Root) left() tea.Cmd {
	switch {
	case !r.leaving:
		return nil
	case r.desk.State.Dirty:
		return r.save()
	}
	return tea.Quit
}
