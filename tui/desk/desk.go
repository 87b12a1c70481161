// Package desk is what every screen shares: the state on the desk, how a screen hands back a change, and the
// words, styles and keys they have in common. It does no arithmetic about vans.
package desk

import (
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/looks"
	"bench.example/undermark/tui/pixels"
	"bench.example/undermark/vehicles"
)

// State is what a screen sees. It is a plain value: a screen reads it and hands back a Change.
type State struct {
	Job      vehicles.Job
	Book     *rules.Book      // what jobs are judged by, without this job's own rules
	Plan     vehicles.Plan    // where all of the job is, as it is: with faults, places that could not be reduced are zero
	Result   rules.Result     // what the job comes to
	Faults   []vehicles.Fault // why there is no result: then Result is of the last job that had one
	Marks    rules.MarkSheet
	Ticked   map[string]bool // marks made and lengths checked, by name
	Settings Settings
	Camera   Camera           // where every plan looks, kept from screen to screen
	Selected int              // the obstruction picked out on every plan; -1 for none
	Path     string           // where the job is saved; "" for nowhere yet
	Dirty    bool             // there are changes that are not saved
	Focus    *rules.Finding   // the finding to show on the plan, until the next change of job or screen; nil for none
	Next     Next             // what to measure next
	Pixels   *pixels.Terminal // the terminal, where it may show pictures; nil where it is not asked
	Now      time.Time        // when the message came that a screen answers
	Sketch   *Sketch          // the last one made of the job, so that it is made once a change; nil keeps none
	Kept     *Kept            // what else was made of it; nil keeps nothing
}

// Sketch is a job with what is known of an unfinished thing put in, for the eye only, and where all of it is.
type Sketch struct {
	Of     string // the thing, by its record's ID
	Job    vehicles.Job
	Row    int // of the thing in its list, -1 where there is nothing to show; the job is then not reduced
	Plan   vehicles.Plan
	Faults []vehicles.Fault
}

// Next is what to measure next. It takes longer than a frame to work out, and so comes a moment after the job has changed.
type Next struct {
	Advice []rules.Advice // best first
	Known  bool           // Advice is of the job as it is; else of the job as it was a moment ago, or there is none yet
	Failed bool           // it could not be worked out
}

// Settings are the workshop's ways, kept between runs.
type Settings struct {
	Units    survey.Units
	Nearside Side // how left and right are spoken of
	Look     looks.Look
	Big      bool // what is being taped is shown in big figures
	Colour   Colour
	Plan     PlanIn // where the terminal shows pictures
	Letter   bool   // the printer's paper is letter, not A4
}

// PlanIn says what plans are drawn in.
type PlanIn uint8

// What plans are drawn in.
const (
	InPixels PlanIn = iota
	InCells
)

// Pictures tells whether plans are drawn in pixels: where the terminal shows them, and nobody wants cells.
func (s *State) Pictures() bool { return s.Settings.Plan == InPixels && s.Pixels.Shows() }

// Side says how left and right are spoken of: left and right, or nearside and offside.
type Side uint8

// The ways to speak of sides.
const (
	LeftRight    Side = iota
	NearsideLeft      // nearside is the van's left: it keeps to the left of the road
	NearsideRight
)

// Colour is how much colour the terminal can show.
type Colour uint8

// The colours of a terminal.
const (
	NoColour Colour = iota
	Colours16
	Colours256
	TrueColour
)

// Faces tells whether a look has colours for whole faces there: what is solid is shown by them.
func (c Colour) Faces(l looks.Look) bool {
	return c >= Colours256 || c == Colours16 && l.FacesOfSixteen()
}

// Camera is where a plan looks: from which side, the middle of the picture, how many mm a dot is wide.
type Camera struct {
	View   scene.View
	Middle geometry.Point // mm, of the view's plane
	Scale  float64        // mm a dot; 0: fit everything
	Whole  bool           // of a camera that fits everything: on a small pane, too, where it would look at the cut alone
}

// Change is what a screen asks for. The zero Change asks for nothing.
type Change struct {
	Job      *vehicles.Job // the job after an edit, nil for none
	Step     string        // edits in a row with the same non-empty Step are one undo step
	Anew     bool          // it begins a step, also behind one with the same Step
	Called   string        // what undo and redo call the edit, "" where they say what it changed
	Select   *int          // pick out this obstruction
	Camera   *Camera
	Settings *Settings
	Tick     string         // tick or untick the mark or the length of this name
	Once     bool           // Enter and Space count no more for a moment: a key that bounces must not do it to what comes next
	Goto     string         // go to the screen of this title
	Focus    *rules.Finding // with Goto: show this finding on the plan
	Open     *Open          // with Goto: open this form there
	Say      string         // a line to show at the foot
	Unsay    string         // a line that was said before and is so no more: it goes, if it is still there
	Ask      Ask            // something only the root does
}

// Open is a message to a screen: open the form of an obstruction or an opening at a field, named as in the job file.
type Open struct {
	Obstruction, Opening int // from 0; -1 for none
	Field                string
	Back                 string // the screen to go on with afterwards, "" to stay
}

// Ask is something a screen asks the root to do.
type Ask uint8

// What a screen can ask the root for.
const (
	Nothing Ask = iota
	Save
	SaveAs
	Undo
	Redo
	Quit
	Cautions       // all of them, to be read
	BeforeDrilling // those to be read before anything is drilled in this job
	FirstRun       // those to be read before the heater is first switched on
	PrintSheet     // the job on paper
	PrintTemplate  // what is cut and drilled, at its true size
	PrintCustomer  // the page that goes with the van
)

// Lister is a screen that may have a list, or a search for what it lists, open: that has the keys, but takes no letters and digits that mean
// the same everywhere. Whoever goes elsewhere leaves the list.
type Lister interface{ Listing() bool }

// Prompter is a screen that may have a prompt open: what is typed there is nowhere else until it is taken.
type Prompter interface{ Prompting() bool }

// Screen is one screen of the program.
type Screen interface {
	Title() string
	// Update answers one message: of keys, one key, or one pasted text, which is for a field and is no key. It never touches a
	// disk and never takes longer than a frame.
	Update(msg tea.Msg, s State) (Screen, Change, tea.Cmd)
	// View paints the screen into w columns and h rows, no more and no fewer.
	View(s State, w, h int) string
	// Plain is what View shows, in lines that a screen reader reads well: no less than that.
	Plain(s State) Plain
	// Typing says whether a field has the keys, so that letters belong to it and not to the program.
	Typing() bool
	// Keys are the bindings that hold now, for the foot line and the help, most useful first.
	Keys(s State) []key.Binding
}
