package plan

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
)

// legend is what the letters and patterns mean, beside the drawing, below it, or in its place: never over it.
type legend struct {
	open bool
	top  int // the first entry that is seen
}

// column is how wide a column of the legend is, its blanks included.
const column = 27

// strip is how wide a legend beside the drawing is: its last row fits.
const strip = 32

// leastBeside is how many columns a drawing has at least that has its legend beside it, leastAbove how many rows one that has it
// below, and mostBelow what share of the rows that has.
const (
	leastBeside = 70
	leastAbove  = 22
	mostBelow   = 0.4
)

// split is how a pane is parted: the drawing, and the legend beside or below it. A drawing without columns has given way.
type split struct {
	w, h       int // of the drawing
	left, top  int // of the legend, in the pane
	cols, rows int // of it
}

// parted is how a pane of w columns and h rows is parted.
func (p Pane) parted(w, h int) split {
	below := int(mostBelow * float64(h))
	switch {
	case !p.legend.open:
		return split{w: w, h: h}
	case w >= leastBeside+strip:
		return split{w: w - strip, h: h, left: w - strip, cols: strip, rows: h}
	case h >= leastAbove:
		return split{w: w, h: h - below, top: h - below, cols: w, rows: below}
	}
	return split{cols: w, rows: h}
}

// The keys of the legend while it is open.
var (
	keyLegendDown  = bind("PgDn", "on in the legend", "pgdown")
	keyLegendUp    = bind("PgUp", "back in the legend", "pgup")
	keyLegendClose = bind("Esc", "close the legend", "esc")
)

// Legend answers the keys of an open legend, which go before those of any list; mine is false for any other key.
func (p Pane) Legend(k tea.KeyMsg, s desk.State, opts Options) (next Pane, mine bool) {
	if !p.legend.open {
		return p, false
	}
	w, h := p.size()
	switch {
	case key.Matches(k, keyLegendClose):
		p.legend = legend{}
	case key.Matches(k, keyLegendDown):
		p = p.scrolled(s, opts, p.parted(w, h).seats())
	case key.Matches(k, keyLegendUp):
		p = p.scrolled(s, opts, -p.parted(w, h).seats())
	default:
		return p, false
	}
	return p, true
}

// tapped answers the wheel and taps on an open legend: the wheel scrolls it, a tap on its last row closes it.
func (p Pane) tapped(msg tea.MouseMsg, s desk.State, opts Options) (next Pane, mine bool) {
	w, h := p.size()
	in := p.parted(w, h)
	if !p.legend.open || msg.X < in.left || msg.Y < in.top {
		return p, false
	}
	switch {
	case msg.Button == tea.MouseButtonWheelDown:
		p = p.scrolled(s, opts, 1)
	case msg.Button == tea.MouseButtonWheelUp:
		p = p.scrolled(s, opts, -1)
	case msg.Button == tea.MouseButtonLeft && msg.Action == tea.MouseActionPress && msg.Y == in.top+in.rows-1:
		p.legend = legend{}
	}
	return p, true
}

// seats are how many entries the legend shows at once, above its last row.
func (l split) seats() int { return max(l.rows-1, 1) * max(l.cols/column, 1) }

// scrolled is the pane with its legend so many entries on.
func (p Pane) scrolled(s desk.State, opts Options, by int) Pane {
	w, h := p.size()
	p.legend.top = p.first(len(entries(s, opts, false)), p.parted(w, h), p.legend.top+by)
	return p
}

// first is the first entry that is seen of so many, when that from top on is wanted.
func (p Pane) first(all int, in split, top int) int { return max(0, min(top, all-in.seats())) }

// Letter is a sign that a screen puts on its picture, and what it means.
type Letter struct{ Sign, Means string }

// entries are what the legend says: what is asked first, first. Where a screen has letters of its own the kinds have none, as one letter has
// one meaning in a view.
func entries(s desk.State, opts Options, enlarged bool) []entry {
	all := append(verdicts[:len(verdicts):len(verdicts)], asked(s, enlarged)...)
	for _, l := range opts.Letters {
		all = append(all, entry{role: scene.Cut, code: l.Sign, means: l.Means})
	}
	if len(opts.Letters) == 0 {
		for _, k := range drawing.Legend(s.Result.Job) {
			all = append(all, entry{role: k.Role, code: k.Code, means: k.Name})
		}
	}
	return append(all, patterns()...)
}

// explained puts the legend beside a painted drawing, below it or in its place, and says what of it is seen.
func (p Pane) explained(view string, c *canvas.Canvas, s desk.State, opts Options, in split) string {
	colour := s.Settings.Colour
	all := entries(s, opts, s.Job.Cut != nil && c.Enlarged(s.Job.Cut.Across/2))
	page := canvas.Bare(in.cols, in.rows, colour.Faces(s.Settings.Look))
	top, rows := p.first(len(all), in, p.legend.top), max(in.rows-1, 1)
	shown := all[top:min(len(all), top+in.seats())]
	for i, e := range shown {
		e.put(&page, i/rows*column, i%rows)
	}
	if in.rows > 1 {
		foot := "Esc closes"
		if len(shown) < len(all) {
			foot = fmt.Sprintf("%d-%d of %d (PgDn)  ", top+1, top+len(shown), len(all)) + foot
		}
		page.Put(1, in.rows-1, foot, canvas.Ink{Role: scene.Floor, Tone: canvas.Bold})
	}
	legend := page.Encode(colour, s.Settings.Look)
	switch {
	case in.w == 0:
		return legend
	case in.left == 0:
		return view + "\n" + legend
	}
	beside := strings.Split(legend, "\n")
	rowsOf := strings.Split(view, "\n")
	for i := range rowsOf {
		rowsOf[i] += beside[i]
	}
	return strings.Join(rowsOf, "\n")
}
