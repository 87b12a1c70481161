package tui

import (
	"fmt"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// journalPause is how long changes gather before the journal is written: a row of arrow moves is one write.
const journalPause = 150 * time.Millisecond

// keepJournal remembers what is unsaved now and has it written shortly.
func (r *Root) keepJournal() tea.Cmd {
	j := r.journal
	if j == nil {
		return nil
	}
	switch job := r.history.now.job; {
	case r.history.dirty():
		j.unsaved.Store(&job)
		j.mine.Store(true)
	case j.unsaved.Swap(nil) == nil:
		return nil
	}
	if j.scheduled.Swap(true) {
		return nil // a write to come takes this change along
	}
	pause := r.pause
	return func() tea.Msg {
		time.Sleep(pause)
		j.scheduled.Store(false)
		return journalWritten{j.sync()}
	}
}

type journalWritten struct{ err error }

func (m journalWritten) happened(r *Root) tea.Cmd {
	if m.err != nil {
		r.tell("Unsaved work could not be kept safe: " + m.err.Error() + ". Save with Ctrl-S.")
	}
	return nil
}

// offer asks what to do with work that was left behind.
func (r *Root) offer(f *found) {
	if f.err != nil {
		r.open(&question{
			asks:    "Unsaved work was left behind, but it can't be read.",
			because: fmt.Sprintf("It stays in %s. %v", r.journal.path, f.err),
			answers: []answer{{"Go on without it", r.leaveFound}},
		})
		return
	}
	r.open(&question{
		asks:    "Unsaved work from " + when(f.when, r.now()) + " was found: " + f.job.Ref + ".",
		because: "The program ended then without saving it.",
		answers: []answer{
			{"Take it up", func() tea.Cmd { r.sample = false; return r.edit(f.job, "") }},
			{"Throw it away", r.dropFound},
			{"Leave it: ask again next time", r.leaveFound},
		},
	})
}

// dropFound takes away what was found.
func (r *Root) dropFound() tea.Cmd {
	r.journal.mine.Store(true)
	return r.syncJournal()
}

func (r *Root) syncJournal() tea.Cmd {
	j := r.journal
	return func() tea.Msg { return journalWritten{j.sync()} }
}

// leaveFound goes on in another journal, so that what was found stays where it is.
func (r *Root) leaveFound() tea.Cmd {
	old, dir := r.journal, r.journalDir()
	r.journal = nil
	return func() tea.Msg {
		j, err := openFreeJournal(dir, old.about)
		old.close()
		return journalOpened{j, err}
	}
}

type journalOpened struct {
	journal *journal
	err     error
}

func (m journalOpened) happened(r *Root) tea.Cmd {
	if m.err != nil {
		r.tell(m.err.Error())
		return nil
	}
	r.journal = m.journal
	return r.keepJournal()
}

// when writes a time for a person: the hour alone when it was today.
func when(t, now time.Time) string {
	if t.Format(time.DateOnly) == now.Format(time.DateOnly) {
		return "today " + t.Format("15:04")
	}
	return t.Format("2 January 2006, 15:04")
}
