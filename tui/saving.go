package tui

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// saved is what came of a save.
type saved struct {
	number   uint64 // of the version that was written
	document vehicles.Document
	report   vehicles.SaveReport
	journal  *journal // a new one, when the job has got another file
	err      error
	unkept   error // why unsaved work can't be kept safe
}

// save writes the job to its file, or asks for a name when it has none.
func (r *Root) save() tea.Cmd {
	switch {
	case r.document.Path == "":
		r.askName()
		return nil
	case r.saving:
		r.tell("still saving")
		return nil
	case !r.desk.State.Dirty && r.document.OnDisk():
		return r.lookAtFile()
	}
	return r.saveThere()
}

// saveThere writes the job to its file.
func (r *Root) saveThere() tea.Cmd {
	document := r.document
	return r.saveBy(func(job vehicles.Job, by *rules.Book) (vehicles.Document, vehicles.SaveReport, error) {
		return document.Save(job, by)
	})
}

// saveBy runs a way of saving the job as it is now, beside the screens; the way gets the book that judges it.
func (r *Root) saveBy(way func(vehicles.Job, *rules.Book) (vehicles.Document, vehicles.SaveReport, error)) tea.Cmd {
	if len(r.desk.State.Faults) > 0 {
		r.leaving = false
		r.askFaulty()
		return nil
	}
	r.saving = true
	r.desk.Seal()
	job, book, number := r.desk.State.Job, r.desk.State.Book, r.desk.Number()
	about, dir, j := r.document.Path, r.journalDir(), r.journal
	return func() tea.Msg {
		document, report, err := way(job, book)
		m := saved{number: number, document: document, report: report, err: err}
		switch {
		case err != nil && j != nil:
			m.unkept = j.sync() // what is said of the work is to be true
		case err == nil && dir != "" && (document.Path != about || j == nil): // there may be room for one by now
			m.journal, m.unkept = openFreeJournal(dir, document.Path)
		}
		return m
	}
}

func (m saved) happened(r *Root) tea.Cmd {
	r.saving = false
	switch changed := errors.Is(m.err, vehicles.ErrChangedOnDisk); {
	case changed && m.document.Path != r.document.Path:
		return nameChosen{m.document.Path, true}.happened(r) // somebody took the name meanwhile
	case changed:
		r.askChanged()
		return nil
	}
	if r.failed = m.err != nil; r.failed {
		r.leaving = false
		return r.askFailed(m)
	}
	r.document, r.desk.State.Path, r.sample = m.document, m.document.Path, false
	r.desk.Saved(m.number)
	r.tell(r.withRefused(savedWords(m.document.Path, m.report)))
	return tea.Sequence(tea.Batch(r.unkeptBecause(m.unkept), r.changeJournal(m.journal), r.keepTicks()), r.left())
}

// askFailed says that a save failed, and where the work is now.
func (r *Root) askFailed(m saved) tea.Cmd {
	cmd := r.knownUnkept(m.unkept)
	because := m.err.Error()
	if r.unkept != "" {
		because += "\nNor can unsaved work be kept safe: " + r.unkept + ". Save it elsewhere before you close this window."
	}
	r.open(&question{asks: "The job was not saved.", because: because, answers: []answer{
		{"Save it under another name", func() tea.Cmd { r.askName(); return nil }},
		{"Go on; " + r.keptWords(), nil},
	}})
	return cmd
}

// knownUnkept notes a fault of the journal that a save came upon; without a journal the one known stays.
func (r *Root) knownUnkept(err error) tea.Cmd {
	if r.journal == nil {
		return nil
	}
	return r.unkeptBecause(err)
}

// askFaulty says why a job can't be saved: whoever reads the file would refuse it.
func (r *Root) askFaulty() {
	because := r.desk.State.Faults[0].Text + more(len(r.desk.State.Faults)-1)
	r.open(&question{
		asks: "The job can't be saved as it is: " + vehicles.WouldBeRefused + ".", because: because,
		answers: []answer{
			{"Take the last change back (Ctrl-Z)", func() tea.Cmd { return r.ask(desk.Undo) }},
			{"Go on and put it right; " + r.keptWords(), nil},
		},
	})
}

// lookAtFile looks whether the file still holds what is on the desk, where nothing is unsaved.
func (r *Root) lookAtFile() tea.Cmd {
	document := r.document
	return func() tea.Msg {
		now, err := document.Now()
		return lookedAt{document.Path, document.Base(), now, err}
	}
}

type lookedAt struct {
	path      string
	base, now vehicles.Base
	err       error
}

func (m lookedAt) happened(r *Root) tea.Cmd {
	switch {
	case m.err != nil:
		r.leaving = false
		r.tell(m.err.Error())
		return nil
	case m.now == m.base:
		r.tell(r.withRefused("all is saved in " + m.path))
		return r.left()
	case m.now == vehicles.Base{}:
		return r.saveThere() // the file has gone; it is written anew
	}
	r.askChanged()
	return nil
}

func savedWords(path string, report vehicles.SaveReport) string {
	if report.Before != "" {
		return "Saved. What the file held before, comments and all, is in " + filepath.Base(report.Before)
	}
	return "Saved in " + filepath.Base(path)
}

// changeJournal clears the journal after a save, or moves over to that of the new file.
func (r *Root) changeJournal(next *journal) tea.Cmd {
	if next == nil || r.journal == nil {
		if next != nil {
			r.journal = next
		}
		return r.keepJournal()
	}
	old := r.journal
	old.unsaved.Store(nil)
	r.journal = next
	return tea.Batch(r.keepJournal(), func() tea.Msg {
		err := old.sync()
		old.close()
		return journalWritten{err}
	})
}

// askName asks for the file to save in.
func (r *Root) askName() {
	name := r.document.Path
	if name == "" {
		name = strings.NewReplacer("/", "-", `\`, "-").Replace(r.desk.State.Job.Ref) + ".toml"
	}
	ask := newPrompt("Save the job in which file?", "File", name, func(path string) tea.Cmd {
		path = fromHome(path)
		return func() tea.Msg {
			_, err := os.Lstat(path)
			return nameChosen{path, !errors.Is(err, fs.ErrNotExist)}
		}
	}, func() { r.leaving = false })
	if r.document.Path == "" {
		ask.afresh()
	}
	r.open(ask)
}

// fromHome puts the home folder in the place of a leading ~, as a shell would.
func fromHome(path string) string {
	rest, short := strings.CutPrefix(path, "~"+string(filepath.Separator))
	home, err := os.UserHomeDir()
	if !short || err != nil {
		return path
	}
	return filepath.Join(home, rest)
}

type nameChosen struct {
	path  string
	taken bool
}

func (m nameChosen) happened(r *Root) tea.Cmd {
	if like := r.document.Path; !m.taken {
		return r.saveBy(func(job vehicles.Job, by *rules.Book) (vehicles.Document, vehicles.SaveReport, error) {
			return vehicles.Document{Path: m.path, Like: like}.Save(job, by)
		})
	}
	write := func() tea.Cmd {
		return r.saveBy(func(job vehicles.Job, by *rules.Book) (vehicles.Document, vehicles.SaveReport, error) {
			return vehicles.SaveAs(m.path, job, by)
		})
	}
	r.open(&question{asks: m.path + " is there already.", answers: []answer{
		{"Choose another name", func() tea.Cmd { r.askName(); return nil }},
		{"Write over it", write},
		{"Don't save now", func() tea.Cmd { r.leaving = false; return nil }},
	}})
	return nil
}

// askChanged asks what to do about a file that somebody else has changed since it was read.
func (r *Root) askChanged() {
	path := r.document.Path
	because := "Nothing has been written yet. Whichever you choose, the work on this screen stays on the undo list."
	if !r.desk.State.Dirty {
		because = "Nothing is unsaved here, and nothing has been written."
	}
	r.open(&question{
		asks:    path + " was changed by somebody else since it was read here.",
		because: because,
		answers: []answer{
			{"Save under another name, keep both", func() tea.Cmd { r.askName(); return nil }},
			{"Take up what is in the file now (Ctrl-Z brings this back)", func() tea.Cmd { return r.reload(path) }},
			{"Write over the file with what is here; what it holds now is kept beside it", func() tea.Cmd {
				return r.saveBy(func(job vehicles.Job, by *rules.Book) (vehicles.Document, vehicles.SaveReport, error) {
					return vehicles.SaveAs(path, job, by)
				})
			}},
			{"Not now", func() tea.Cmd { r.leaving = false; return nil }},
		},
	})
}

func (r *Root) reload(path string) tea.Cmd {
	book := r.desk.State.Book
	return func() tea.Msg {
		document, err := loadJob(path, book)
		return reloaded{document, err}
	}
}

type reloaded struct {
	document vehicles.Document
	err      error
}

func (m reloaded) happened(r *Root) tea.Cmd {
	r.leaving = false
	if m.err != nil {
		r.open(&question{asks: "The file can't be read as it is now.", because: m.err.Error(), answers: []answer{{"Go on", nil}}})
		return nil
	}
	r.document = m.document
	cmd := r.put(m.document.Job)
	r.desk.Saved(r.desk.Number())
	r.tell("This is what is in the file now; Ctrl-Z brings back what was here.")
	return tea.Batch(cmd, r.keepJournal())
}

// withRefused is a line with what is not in the job, as it was refused, in front of it.
func (r *Root) withRefused(line string) string {
	if words := vehicles.RefusedWords(r.desk.State.Job.Refused()); words != "" {
		return words + " (" + line + ")"
	}
	return line
}
