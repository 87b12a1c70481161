// Package tui is the program's frame: it holds the job on the desk, gives it to the screens, takes their changes
// back, and does what no screen does: undo, saving, the journal of unsaved work, questions, help and cautions.
//
// The way of one key press: key, the screen's Update, a new job value (the old one goes on the undo list), the
// findings computed from it, the View. Nothing in Update touches a disk: slow work is a command, and what came
// of it is a message.
package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/charset"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/history"
	"bench.example/undermark/vehicles"
)

// Options is what the program is started with.
type Options struct {
	Path         string // the job file; "" for none
	Book         *rules.Book
	Screens      []desk.Screen
	Settings     desk.Settings
	SettingsPath string
	StateDir     string       // where the journal and what was seen are kept
	Notes        []string     // to be told once the screen is up
	Letters      *charset.Set // of the terminal where the program goes on in lines
}

// Root is the whole program as the terminal library sees it. Its methods run one at a time.
type Root struct {
	options Options
	w, h    int // the terminal; 0 until it is known

	screens []desk.Screen
	at      int // the screen that shows
	desk    history.Desk

	document vehicles.Document
	journal  *journal  // nil when there is none to be had
	settings jotting   // the settings, as they are written down
	ticks    jotting   // the marks that were made
	unkept   string    // why unsaved work can't be kept safe, "" while it can
	saving   bool      // a save is on its way
	failed   bool      // the last save failed
	leaving  bool      // quit as soon as it is saved
	warned   bool      // the cautions for every time were read in this run of the program
	deaf     time.Time // until then Enter and Space say nothing to a screen
	waits    bool      // texts that the job refused are to be tried again once the field is left
	givenUp  bool      // what is unsaved is wanted no more
	sample   bool      // the job on the desk is the sample that comes with the program

	overlays []overlay     // the last one shows and has the keys
	plain    bool          // nothing is drawn: lines are said
	taped    *desk.Taped   // what is being typed and shown in big figures, nil for nothing
	said                   // the line above the foot
	pause    time.Duration // before the journal is written
	settle   time.Duration // without a change, before it is worked out what to measure next
	parting  func()        // called before the terminal is let go of; nil for nothing
	owed     tea.Cmd       // what a field that was left has going, until the message is answered
	body     [2]int        // the columns and rows that the screens were told last
	asked    uint64        // how often it was asked what to measure next: an answer to an older question counts no more
	sizing   bool          // the window's size was asked for, and is still to be told
}

// Init reads nothing, as everything is on the desk already; it starts what goes on beside the screen.
func (r *Root) Init() tea.Cmd { return tea.Batch(r.keepJournal(), r.advise(), r.sizeAgain()) }

// sizeAgain asks for the window's size once more a moment after the start: one that changed before the library listened
// for it would never be heard of.
func (r *Root) sizeAgain() tea.Cmd {
	return tea.Tick(r.settle, func(time.Time) tea.Msg { return listening{} })
}

// listening says that changes of the window's size are heard of from now on.
type listening struct{}

func (listening) happened(r *Root) tea.Cmd {
	r.sizing = true
	return tea.WindowSize()
}

// knows tells whether a size is only what was asked for and known already. For any other the library sends the whole picture, as the terminal may have
// moved or cut what stood there: on a slow line that takes as long as the first one.
func (r *Root) knows(window tea.WindowSizeMsg) bool {
	w, h := bounded(window)
	known := r.sizing && w == r.w && h == r.h
	r.sizing = false
	return known
}

// Update answers one message.
func (r *Root) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	cmd := r.answered(msg)
	if r.owed != nil {
		cmd, r.owed = tea.Batch(cmd, r.owed), nil
	}
	r.retaped()
	if resized := r.resized(); resized != nil {
		cmd = tea.Batch(cmd, resized)
	}
	if fade := r.fading(); fade != nil {
		cmd = tea.Batch(cmd, fade)
	}
	return r, cmd
}

// resized tells the screens when they have other columns or rows than before: the window, the big figures or a warning changed, or something
// long is said.
func (r *Root) resized() tea.Cmd {
	body := [2]int{r.w, r.bodyHeight()}
	if r.w == 0 || r.body == body {
		return nil
	}
	r.body = body
	return r.toAll(tea.WindowSizeMsg{Width: body[0], Height: body[1]})
}

func (r *Root) answered(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		r.w, r.h = bounded(msg)
		r.body = [2]int{}
		return r.resized()
	case tea.KeyMsg:
		return r.keyed(msg)
	case tea.MouseMsg:
		return r.moused(msg)
	case tea.ResumeMsg:
		return tea.EnableMouseCellMotion // the library forgets it
	case outcome:
		return msg.happened(r)
	}
	if o := r.overlay(); o != nil {
		return tea.Batch(o.update(r, msg), r.toAll(msg))
	}
	return r.toAll(msg)
}

// The largest screen that is painted: several times what the largest display has in its smallest letters. A terminal may say anything of its size: 65535
// columns and rows would be four thousand million cells.
const (
	mostColumns = 4000
	mostCells   = 400_000
)

// bounded is the size of the screen that is painted in a window.
func bounded(window tea.WindowSizeMsg) (columns, rows int) {
	columns = max(0, min(window.Width, mostColumns))
	return columns, max(0, min(window.Height, mostCells/max(1, columns)))
}

// outcome is what came of one of the root's own commands.
type outcome interface{ happened(r *Root) tea.Cmd }

// toAll sends a message to every screen.
func (r *Root) toAll(msg tea.Msg) tea.Cmd {
	var cmds []tea.Cmd
	for i := range r.screens {
		cmds = append(cmds, r.toScreen(i, msg))
	}
	return tea.Batch(cmds...)
}

// toScreen sends a message to one screen and does what it asks for.
func (r *Root) toScreen(i int, msg tea.Msg) tea.Cmd {
	r.desk.State.Now = r.now()
	in := r.waitsIn()
	screen, change, cmd := r.screens[i].Update(msg, r.desk.State)
	r.screens[i] = screen
	done := r.apply(change)
	if change.Job == nil && i == r.at && (in == "" || in != r.waitsIn()) {
		r.fieldLeft()
	}
	return tea.Batch(done, cmd)
}

// goTo shows the screen with the title.
func (r *Root) goTo(i int) {
	if i >= 0 && i < len(r.screens) && i != r.at {
		r.leave()
		r.fieldLeft()
		r.at, r.desk.State.Focus = i, nil
		r.desk.Seal()
	}
}

// listing tells whether a list has the keys of the screen that shows.
func (r *Root) listing() bool {
	list, is := r.screens[r.at].(desk.Lister)
	return is && list.Listing()
}

// leave leaves the list, and stops what is sought for it, or the field of a form that has the keys: left open it would take the digit of
// another screen into a reading, where each key counts at once. A prompt stays open: Esc would lose what was typed there.
func (r *Root) leave() {
	screen := r.screens[r.at]
	if asks, is := screen.(desk.Prompter); screen.Typing() && !(is && asks.Prompting()) {
		r.toScreen(r.at, tea.KeyMsg{Type: tea.KeyEsc})
	}
}

// takesLetters tells whether letters and digits belong to a field of the screen that shows.
func (r *Root) takesLetters() bool { return r.screens[r.at].Typing() && !r.listing() }

func (r *Root) titled(title string) int {
	for i, s := range r.screens {
		if s.Title() == title {
			return i
		}
	}
	return -1
}
