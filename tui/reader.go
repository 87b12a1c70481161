package tui

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// reader shows a text to read that may be longer than the body. Enter turns its pages and, on the last one,
// closes it; a text that must be read isn't closed in any other way.
type reader struct {
	title string
	text  func(r *rules.Result, styles desk.Styles, w int) []string
	must  bool
	done  func() tea.Cmd // nil: nothing
	// tapped answers a tap in column x of a row of the text, which is w columns wide; nil: nothing does.
	tapped func(x, row, w int) tea.Cmd
	top    int // first row that shows
}

func (d *reader) waits() bool { return false }

// page returns the rows of the text for w columns and how many show in h rows, less the title and the page line.
func (d *reader) page(r *Root, w, h int) (rows []string, room int) {
	return d.text(&r.desk.State.Result, r.desk.State.Settings.Styles(), w-2*readerIndent), max(h-readerHead-1, 1)
}

func (d *reader) update(r *Root, msg tea.Msg) tea.Cmd {
	rows, room := d.page(r, r.w, r.bodyHeight())
	end := max(len(rows)-room, 0)
	scroll := func(by int) { d.top = min(max(d.top+by, 0), end) }
	switch msg := msg.(type) {
	case tea.MouseMsg:
		switch msg.Button {
		case tea.MouseButtonWheelUp:
			scroll(-3)
		case tea.MouseButtonWheelDown:
			scroll(3)
		default:
			return d.tap(r, msg, len(rows), room)
		}
	case tea.KeyMsg:
		switch {
		case key.Matches(msg, desk.KeyUp):
			scroll(-1)
		case key.Matches(msg, desk.KeyDown):
			scroll(1)
		case key.Matches(msg, desk.KeyPageUp):
			scroll(-room)
		case key.Matches(msg, desk.KeyEnter) && d.top >= end, !d.must && key.Matches(msg, desk.KeyLeave, desk.KeyHelp):
			r.shut(d)
			r.deaf = r.now().Add(eager)
			if d.done != nil {
				return d.done()
			}
		case key.Matches(msg, desk.KeyPageDown, desk.KeyEnter):
			scroll(room)
		}
	}
	return nil
}

// The text stands so far from the body's edge, below the title.
const readerIndent, readerHead = 2, 2

// tap answers a tap on a row of the text.
func (d *reader) tap(r *Root, msg tea.MouseMsg, rows, room int) tea.Cmd {
	row := msg.Y - readerHead
	if _, tap := isTap(msg); !tap || d.tapped == nil || row < 0 || row >= room {
		return nil
	}
	if row += min(d.top, max(rows-room, 0)); row >= rows {
		return nil
	}
	return d.tapped(msg.X-readerIndent, row, r.w-2*readerIndent)
}

func (d *reader) view(r *Root, w, h int) string {
	styles := r.desk.State.Settings.Styles()
	rows, room := d.page(r, w, h)
	top := min(d.top, max(len(rows)-room, 0))
	shown := rows[top:min(top+room, len(rows))]
	out := []string{"  " + styles.Title.Render(d.title), ""}
	for _, row := range shown {
		out = append(out, "  "+row)
	}
	for len(out) < h-1 {
		out = append(out, "")
	}
	return strings.Join(append(out, "  "+styles.Faint.Render(d.left(len(rows)-top-len(shown)))), "\n")
}

// left says how many rows are left to read.
func (d *reader) left(rows int) string {
	if rows > 0 {
		return fmt.Sprintf("%d more rows below", rows)
	}
	return "the end"
}

// onward says what Enter does.
func (d *reader) onward() string {
	if d.must {
		return "read on; at the end: I have read this"
	}
	return "read on, close at the end"
}

func (d *reader) keys() []key.Binding {
	keys := []key.Binding{desk.Named(desk.KeyEnter, d.onward()), desk.KeyDown, desk.KeyUp}
	if !d.must {
		keys = append(keys, desk.Named(desk.KeyLeave, "close"))
	}
	return keys
}
