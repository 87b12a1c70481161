package tui

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/signal"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/pixels"
	"bench.example/undermark/tui/sparing"
	"bench.example/undermark/vehicles"
	"bench.example/undermark/vehicles/harmless"
)

// New puts the job on the desk. It reads the job file, the journal and what was seen before, and so runs before
// the screen is up. The error is that of a job file which can't be read.
func New(o Options) (*Root, error) {
	r, missing, err := withJob(o)
	if err != nil {
		return nil, err
	}
	left, err := r.takeJournal()
	if err != nil {
		r.unkept = err.Error()
		o.Notes = append(o.Notes, "Unsaved work can't be kept safe here: "+r.unkept+". Save often.")
	}
	if j := r.journal; j != nil && j.beside != nil {
		o.Notes = append(o.Notes, j.beside.Error()+". Unsaved work is kept beside it: look who put it there.")
	}
	if left != nil {
		r.offer(left)
	} else if missing {
		r.askNew()
	}
	if !r.cautionsSeen() {
		first := atStart()
		first.done = r.noteCautions
		r.open(first)
	}
	if len(o.Notes) > 0 {
		notes := slices.Clone(o.Notes)
		for i := range notes {
			notes[i] = harmless.Text(notes[i])
		}
		r.open(&question{asks: "Before you start", because: strings.Join(notes, "\n"), answers: []answer{{"Go on", nil}}})
	}
	return r, nil
}

// withJob puts the job alone on the desk.
func withJob(o Options) (r *Root, missing bool, err error) {
	r = &Root{options: o, screens: append([]desk.Screen(nil), o.Screens...), said: said{now: time.Now, fade: sayAtMost}, pause: journalPause, settle: adviceSettle}
	r.desk.State.Settings, r.desk.State.Book, r.desk.State.Selected = o.Settings, o.Book, -1
	if missing, err = r.openJob(); err != nil {
		return nil, false, err
	}
	r.desk.State.Path = r.document.Path
	r.readTicks()
	r.desk.Begin(r.document.Job, !missing)
	return r, missing, nil
}

// openJob reads the job file, or opens the sample when there is none to read.
func (r *Root) openJob() (missing bool, err error) {
	path := r.options.Path
	if path == "" {
		r.document, r.sample = vehicles.Document{Job: vehicles.Demo()}, true
		r.tell("A sample van: try what you like. Ctrl-S keeps a copy.")
		return false, nil
	}
	r.document, err = loadJob(path, r.options.Book)
	if errors.Is(err, fs.ErrNotExist) {
		ref := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
		r.document = vehicles.Document{Path: path, Job: vehicles.NewJob(ref)}
		return true, nil
	}
	return false, err
}

// loadJob reads a job file that the book judges.
func loadJob(path string, book *rules.Book) (vehicles.Document, error) {
	document, err := vehicles.Load(path, book)
	return document, unlessWhole(err)
}

// unlessWhole is the error of reading a job, or nil when only its readings contradict each other: those are put right
// on the screens.
func unlessWhole(err error) error {
	var faults vehicles.FileErrors
	if errors.As(err, &faults) && faults.WholeJob() {
		return nil
	}
	return err
}

// journalDir is where journals are kept, "" for nowhere.
func (r *Root) journalDir() string {
	if r.options.StateDir == "" {
		return ""
	}
	return filepath.Join(r.options.StateDir, "journal")
}

// takeJournal opens the journal and returns the unsaved work in it that is not what is on the desk anyway. Where that is all there is in the
// newest one, it goes, and the next is looked at.
func (r *Root) takeJournal() (*found, error) {
	if r.options.StateDir == "" {
		return nil, nil
	}
	for {
		j, others, err := openJournal(r.journalDir(), r.document.Path)
		if err != nil {
			return nil, err
		}
		left := j.look(r.options.Book)
		if left != nil && left.err == nil && string(left.job.Format()) == string(r.document.Job.Format()) {
			left = nil
		}
		if left != nil {
			left.others = others
		}
		r.journal = j
		j.mine.Store(left == nil)
		if err := j.sync(); err != nil || left != nil || others == 0 {
			return left, err
		}
		j.close()
	}
}

func (r *Root) seenPath() string { return filepath.Join(r.options.StateDir, "cautions-read") }

func (r *Root) cautionsSeen() bool {
	if r.options.StateDir == "" {
		return true
	}
	data, err := vehicles.ReadFile(r.seenPath())
	return err == nil && string(data) == cautionsVersion
}

func (r *Root) noteCautions() tea.Cmd {
	r.warned = true
	path := r.seenPath()
	return func() tea.Msg { return noted{desk.WriteState(path, []byte(cautionsVersion))} }
}

// Run shows the screens until the fitter quits. Whatever ends the program, unsaved work is in the journal then,
// and a line on complain says so. The error is what went wrong, nil for a plain quit.
func Run(o Options, complain io.Writer) error {
	r, err := New(o)
	if err != nil {
		return err
	}
	leaving := sparing.NewLeaving()
	pictures := pixels.On(leaving.File(os.Stdout))
	screen := sparing.On(pictures)
	r.parting = screen.Settle
	return r.show(screen.Showing(r), complain, leaving, append(r.gated(screen, pictures), tea.WithOutput(screen), tea.WithAltScreen(), tea.WithMouseCellMotion(), tea.WithFPS(120))...)
}

// show runs the program; model is the root, or what stands round it. Whoever writes on the terminal goes through leaving.
func (r *Root) show(model tea.Model, complain io.Writer, leaving *sparing.Leaving, options ...tea.ProgramOption) error {
	p := tea.NewProgram(model, append(options, tea.WithFilter(r.heeded))...)
	if screen := r.desk.State.Pixels; screen != nil {
		screen.Ask(func() { p.Send(pictured{}) })
	}
	unordered, unsuspend := onOrderToEnd(p, leaving), r.onSuspend(p)
	_, err := p.Run()
	unsuspend()
	if err := r.jotted(); err != nil {
		fmt.Fprintln(leaving.Writer(complain), harmless.Text(err.Error()))
	}
	if kept := r.rescue(); kept != "" {
		fmt.Fprintln(leaving.Writer(complain), harmless.Text(kept))
	}
	unordered()
	r.journal.close()
	if errors.Is(err, tea.ErrInterrupted) {
		return nil // asked for from outside
	}
	return err
}

// mostAtEnd is how long a terminal that nobody reads is waited for once the program was told to end.
const mostAtEnd = time.Second

// onOrderToEnd quits in good order when the terminal goes away; the library does when it is told to end. Where nobody reads the terminal
// that would be tidied, either is done without.
func onOrderToEnd(p *tea.Program, leaving *sparing.Leaving) (stop func()) {
	told := make(chan os.Signal, 1)
	signal.Notify(told, syscall.SIGHUP, syscall.SIGTERM, syscall.SIGINT)
	done := make(chan struct{})
	go func() {
		select {
		case sig := <-told:
			if sig == syscall.SIGHUP {
				go p.Quit() // it waits as long as the program does
			}
		case <-done:
			return
		}
		select {
		case <-time.After(mostAtEnd):
			leaving.Leave()
		case <-done:
		}
	}()
	return func() { signal.Stop(told); close(done) }
}

// rescue brings the journal up to date and returns words that say where unsaved work is, "" when there is none.
// Work of another day that nobody has answered about stays as it is.
func (r *Root) rescue() string {
	err := errors.New(r.unkept)
	if r.journal != nil {
		err = r.journal.sync() // a journal with nothing unsaved goes
	}
	switch {
	case !r.unsaved():
		return ""
	case r.journal != nil && err == nil:
		return "Unsaved work is kept in " + r.journal.path + "; start undermark again in the same way to take it up."
	}
	for _, name := range r.lastResorts() {
		if vehicles.WriteNew(name, r.desk.State.Job.Format()) == nil {
			return "Unsaved work could not be kept as usual (" + err.Error() + "). It is in " + name + "."
		}
	}
	return "Unsaved work could not be kept: " + err.Error()
}

// unsaved says whether there is work that is neither saved nor given up.
func (r *Root) unsaved() bool {
	if r.journal != nil {
		return r.journal.unsaved.Load() != nil
	}
	return r.desk.State.Dirty && !r.givenUp
}

// lastResorts are where unsaved work may go when there is no journal: beside the job file, in the folder the program was
// started in, among the temporary files.
func (r *Root) lastResorts() []string {
	name := "job.toml"
	if r.document.Path != "" {
		name = filepath.Base(r.document.Path)
	}
	name += ".unsaved-" + r.now().Format("20060102-150405")
	var all []string
	for _, dir := range []string{filepath.Dir(r.document.Path), ".", os.TempDir()} {
		all = append(all, filepath.Join(dir, name))
	}
	return all
}
