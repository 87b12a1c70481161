// Package plan is the pane that shows the plan: it moves the camera that all plans share, and turns a tap into a place.
//
// A Pane only knows its size and whether its legend is open; what it shows comes with the desk's state and the screen's Options:
// where a place is seen rests on both, so Update and View must have the same. Mouse messages must be counted from the pane's own
// top left.
package plan

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/field"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
)

// Options are what a screen wants to see on the plan beside the job.
type Options struct {
	Focus  *rules.Finding   // the finding picked out
	Shown  []*rules.Finding // those with a mark or a line and their figure, the most important first
	Follow bool             // a small pane looks at what is picked out, rather than at the cut
	Here   *geometry.Point3 // the place in hand: keys zoom about it, and a small pane that looks at the cut looks this way as far as it takes to see it, too
	Marks  bool             // the places to mark, done or not
	Wishes []geometry.Point

	LeftOver *drawing.LeftOver // how the ties fit each other
	MayMove  bool              // where the centre may go once the pilot hole is drilled
	Calm     bool              // what is shown is a step on from the picture before: names stay where they are
	Room     bool              // the floor shaded by how much room it leaves for the cut
	Areas    bool              // with Room: the open areas have their letters, as while the letters are explained
	Area     string            // the letter of the open area that the cut is in, which stands beside its ring; "" for none
	Signs    []geometry.Point3 // where the screen puts signs of its own on the picture
	Letters  []Letter          // what those mean
}

// Pane is the plan.
type Pane struct {
	w, h    int
	legend  legend
	rooms   *rooms
	painter *canvas.Painter // of this pane's pictures, whatever becomes of the pane's value
}

// New returns a pane without a size: it must be Sized before it is asked about the mouse or the camera.
func New() Pane { return Pane{rooms: &rooms{}, painter: &canvas.Painter{}} }

// Sized returns the pane for w columns and h rows, the same that View is called with.
func (p Pane) Sized(w, h int) Pane {
	p.w, p.h = w, h
	return p
}

// Keys are the pane's bindings, most useful first.
func (p Pane) Keys() []key.Binding {
	return []key.Binding{keyTurnOver, keyIn, keyOut, keyAll, keyCut, keyOnward, keyPan, keyLegend}
}

// KeysBut are its bindings where a screen has a key of theirs for something else: they go by their other key there.
func (p Pane) KeysBut(taken key.Binding) []key.Binding {
	all := p.Keys()
	for i, b := range all {
		if keys := b.Keys(); len(keys) > 1 && keys[0] == taken.Keys()[0] {
			all[i] = bind(keys[1], b.Help().Desc, keys[1:]...)
		}
	}
	return all
}

func bind(name, what string, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, what))
}

var (
	keyTurnOver = bind("v", "from "+sides(), "v")
	keyIn       = bind("+", "nearer", "+", "=")
	keyOut      = bind("-", "farther", "-", "_")
	keyAll      = bind("f", "the whole floor", "f")
	keyCut      = bind("g", "go to the cut", "g")
	keyLegend   = bind("l", "what the letters mean", "l")
	keyOnward   = bind("q", "on to the next part of the floor", "q", ";")
	keyPan      = bind("Shift-arrows", "move the view", "shift+up", "shift+down", "shift+left", "shift+right")
)

// sides says from where the views look: "below or above".
func sides() string {
	first := scene.View(0)
	names := []string{first.Projection().From}
	for v := first.Next(); v != first; v = v.Next() {
		names = append(names, v.Projection().From)
	}
	return strings.Join(names, " or ")
}

// Update answers a message: a key or the wheel with a change of the camera, a tap with the place of the floor tapped, mm,
// and the obstruction there as the change's Select. What it does not know it leaves alone.
func (p Pane) Update(msg tea.Msg, s desk.State, opts Options) (Pane, desk.Change, *geometry.Point) {
	switch msg := msg.(type) {
	case tea.KeyMsg:
		p, change := p.keys(msg, s, opts)
		return p, change, nil
	case tea.MouseMsg:
		return p.mouse(msg, s, opts)
	}
	return p, desk.Change{}, nil
}

func (p Pane) keys(msg tea.KeyMsg, s desk.State, opts Options) (Pane, desk.Change) {
	var change desk.Change
	if msg.Paste {
		return p, change
	}
	if key.Matches(msg, keyLegend) {
		p.legend = legend{open: !p.legend.open}
	} else if camera, ok := p.moved(msg, s, opts); ok {
		change.Camera = &camera
	}
	return p, change
}

// moved returns the camera after a key.
func (p Pane) moved(press tea.KeyMsg, s desk.State, opts Options) (camera desk.Camera, ok bool) {
	switch {
	case key.Matches(press, keyTurnOver):
		return turnedOver(s.Camera), true
	case key.Matches(press, keyIn):
		return p.zoomedHere(s, opts, 1/step), true
	case key.Matches(press, keyOut):
		return p.zoomedHere(s, opts, step), true
	case key.Matches(press, keyAll):
		return desk.Camera{View: s.Camera.View, Whole: true}, true
	case key.Matches(press, keyCut) && s.Job.Cut != nil:
		return p.atCut(s), true
	case key.Matches(press, keyOnward):
		return p.onward(s, opts), true
	case key.Matches(press, keyPan):
		return p.panned(s, opts, press.String()), true
	}
	return s.Camera, false
}

func (p Pane) mouse(msg tea.MouseMsg, s desk.State, opts Options) (Pane, desk.Change, *geometry.Point) {
	if next, mine := p.tapped(msg, s, opts); mine {
		return next, desk.Change{}, nil
	}
	at, ok := p.lay(s, opts).Point(msg.X, msg.Y)
	if !ok {
		return p, desk.Change{}, nil
	}
	switch {
	case msg.Button == tea.MouseButtonWheelUp:
		camera := p.zoomed(s, opts, 1/step, at)
		return p, desk.Change{Camera: &camera}, nil
	case msg.Button == tea.MouseButtonWheelDown:
		camera := p.zoomed(s, opts, step, at)
		return p, desk.Change{Camera: &camera}, nil
	case msg.Button == tea.MouseButtonLeft && msg.Action == tea.MouseActionPress:
		return p, desk.Change{Select: p.pick(s, opts, at)}, onFloor(s.Camera.View.Projection(), at)
	}
	return p, desk.Change{}, nil
}

// onFloor is the place of the floor that a tap means; nil in a picture that shows the floor's edge only.
func onFloor(seen scene.Projection, at geometry.Point) *geometry.Point {
	if !seen.FacesFloor() {
		return nil
	}
	place := seen.Unproject(at).Plan()
	return &place
}

// pick returns the obstruction that a tap at a place of the plane means; nil where there is none.
func (p Pane) pick(s desk.State, opts Options, at geometry.Point) *int {
	seen := s.Camera.View.Projection()
	var shapes []geometry.Footprint
	var of []int
	for i := range s.Result.Plan.Obstructions {
		if f, ok := seen.Prism(&s.Result.Plan.Obstructions[i].Prism); ok {
			shapes, of = append(shapes, f), append(of, i)
		}
	}
	wide, _ := p.lay(s, opts).CellSize()
	near := geometry.Point{X: wide, Y: wide}
	i, ok := field.New(at.Sub(near), at.Add(near), drawing.Square, shapes).Pick(at, wide)
	if !ok {
		return nil
	}
	return &of[i]
}

// View paints the plan into exactly w columns and h rows.
func (p Pane) View(s desk.State, w, h int, opts Options) string {
	p = p.Sized(w, h)
	in := p.parted(w, h)
	if in.w > 0 {
		w, h = in.w, in.h
	}
	plan := p.draw(s, opts)
	colour := s.Settings.Colour
	if s.Pictures() {
		colour = desk.TrueColour // who shows pictures has all colours
	}
	look := canvas.Look{
		Camera: p.camera(plan, s, opts), Units: s.Settings.Units,
		Left: desk.Left(s.Settings), Right: desk.Right(s.Settings), Datum: s.Job.Datum.Name,
		Faces: colour.Faces(s.Settings.Look), Few: colour == desk.Colours16, Codes: p.legend.open && len(opts.Letters) == 0, Signs: opts.Signs,
		Calm: opts.Calm,
	}
	room := opts.Room && s.Result.Book != nil && plan.Projection.FacesFloor()
	if room {
		look = p.shaded(plan, s, w, h, look)
	}
	c := p.painter.Paint(plan, w, h, look)
	if room {
		signs(&c, scaleBar(&c, s.Settings.Units), unnamed(&c, s))
	} else {
		unnamed := unnamed(&c, s)
		signs(&c, roles(&c, plan, wide(unnamed, fewestWords-1)), unnamed)
	}
	switch {
	case room && (p.legend.open || opts.Areas):
		p.letters(&c, s, opts.Area)
	case opts.Area != "" && s.Job.Cut != nil:
		letterAtRing(&c, lettered(opts.Area), s)
	}
	if s.Pictures() && (in.w > 0 || !p.legend.open) {
		inPixels(&c, plan, look, s)
	}
	view := c.Encode(colour, s.Settings.Look)
	if p.legend.open {
		view = p.explained(view, &c, s, opts, in)
	}
	return view
}

// draw is the scene. The matching points are a matter of Match, which has a plan of its own; elsewhere they stand where signs are explained.
func (p Pane) draw(s desk.State, opts Options) scene.Scene {
	o := drawing.Options{
		NoTies: !p.legend.open,
		View:   s.Camera.View, Selected: s.Selected, Focus: opts.Focus, Shown: opts.Shown, Wishes: opts.Wishes,
		LeftOver: opts.LeftOver, MayMove: opts.MayMove,
	}
	if opts.Marks {
		o.Marks, o.Ticked = s.Marks.Marks, s.Ticked
	}
	return drawing.Draw(s.Result, o)
}
