package tui

import (
	"cmp"
	"fmt"
	"os"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/vehicles"
	"bench.example/undermark/vehicles/harmless"
)

// journalPause is how long changes gather before the journal is written: a row of arrow moves is one write.
const journalPause = 150 * time.Millisecond

// keepJournal remembers what is unsaved now and has it written shortly.
func (r *Root) keepJournal() tea.Cmd {
	j := r.journal
	if j == nil {
		return nil
	}
	switch {
	case r.desk.State.Dirty:
		j.unsaved.Store(&work{r.desk.State.Job, r.document.Base()})
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

func (m journalWritten) happened(r *Root) tea.Cmd { return r.unkeptBecause(m.err) }

// unkeptBecause notes why unsaved work can't be kept safe, nil when it can. It is said above the foot for as long as it
// holds, in as many rows as it takes: the screens have less room then.
func (r *Root) unkeptBecause(err error) tea.Cmd {
	was := r.bodyHeight()
	if r.unkept = ""; err != nil {
		r.unkept = err.Error()
	}
	if r.bodyHeight() == was {
		return nil
	}
	return r.toAll(tea.WindowSizeMsg{Width: r.w, Height: r.bodyHeight()})
}

// warning says that unsaved work is not kept safe and why, "" while there is none or it is.
func (r *Root) warning() string {
	if r.unkept == "" || !r.desk.State.Dirty {
		return ""
	}
	return "! Unsaved work is in this window only: " + r.unkept + ". Ctrl-S saves it, also elsewhere."
}

// keptWords says where unsaved work is for now.
func (r *Root) keptWords() string {
	if r.unkept != "" || r.journal == nil {
		return "the work is in this window only"
	}
	return "the work is kept safe until it is saved"
}

// offer asks what to do with work that was left behind.
func (r *Root) offer(f *found) {
	if f.err != nil {
		r.open(&question{
			asks:    "Unsaved work was left behind, but it can't be read.",
			because: fmt.Sprintf("It stays in %s. %v", harmless.Text(r.journal.path), f.err),
			answers: []answer{{"Go on without it", r.leaveFound}},
		})
		return
	}
	q := &question{
		asks:    "Unsaved work from " + when(f.when, r.now()) + " was found: " + f.job.Ref + ".",
		because: "The program ended then without saving it." + otherWindows(f.others),
		answers: []answer{
			{"Take it up", func() tea.Cmd { return r.takeUp(f) }},
			{"Throw it away", r.dropFound},
			{"Leave it: ask again next time", r.leaveFound},
		},
	}
	if r.document.OnDisk() && f.base != r.document.Base() {
		q.because = r.meanwhile(f)
		q.answers[0].text = "Take the unsaved work up; saving asks before it writes over the file"
		q.answers[1].text = "Keep what the file holds, throw the unsaved work away"
	}
	r.open(q)
}

// otherWindows says that other windows left work behind too.
func otherWindows(n int) string {
	switch n {
	case 0:
		return ""
	case 1:
		return " Another window left work behind too: it is asked about next time."
	}
	return fmt.Sprintf(" %d other windows left work behind too: they are asked about next time.", n)
}

// mostDifferences is how many differences a question shows: as many as leave its answers in sight in the smallest window.
const mostDifferences = 4

// meanwhile says that the file is not what the work was begun from, and in what the two differ.
func (r *Root) meanwhile(f *found) string {
	text := "The file has been changed since that work was begun"
	if saved, err := os.Stat(r.document.Path); err == nil {
		text = "The file was saved " + when(saved.ModTime(), r.now()) + ", after that work was begun"
	}
	return text + ", and they differ:" + otherWords(r.document.Job, f.job) + otherWindows(f.others)
}

// otherWords lists where the file and the unsaved work differ, a line each.
func otherWords(file, unsaved vehicles.Job) string {
	all := vehicles.Differences(file, unsaved)
	shown := all[:min(len(all), mostDifferences)]
	var b strings.Builder
	for _, d := range shown {
		line := fmt.Sprintf("  %s: file %s, unsaved %s", d.Where, cmp.Or(d.One, "nothing"), cmp.Or(d.Other, "nothing"))
		b.WriteString("\n" + harmless.Text(line))
	}
	if n := len(all) - len(shown); n > 0 {
		fmt.Fprintf(&b, "\n  and in %d more", n)
	}
	return b.String() + "\n"
}

// takeUp puts work that was left behind on the desk. It keeps what it was begun from, so that a save over a file that
// somebody else has changed since asks.
func (r *Root) takeUp(f *found) tea.Cmd {
	r.sample = false
	if r.document.OnDisk() {
		r.document = r.document.BasedOn(f.base)
	}
	return r.put(f.job)
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
	r.journal = m.journal
	return tea.Batch(r.unkeptBecause(m.err), r.keepJournal())
}

// when writes a time for a person: the hour alone when it was today.
func when(t, now time.Time) string {
	if t.Format(time.DateOnly) == now.Format(time.DateOnly) {
		return "today " + t.Format("15:04")
	}
	return t.Format("2 January 2006, 15:04")
}
