package tui

import (
	"fmt"
	"strings"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/pixels"
	"bench.example/undermark/vehicles/harmless"
)

const (
	leastWidth, leastHeight = 60, 20

	headRows = 2 // the header and the heading
	noteRows = 1 // what is said, else what to measure next; what is said takes more of them where it is longer
	footRows = 1 // the keys, and nothing else ever
)

func (r *Root) bodyHeight() int {
	return max(r.h-headRows-r.bandHeight()-len(r.warningRows())-max(noteRows, len(r.sayRows()))-footRows, 0)
}

// warningRows are the rows above the note that say why unsaved work is not kept safe; none while it is.
func (r *Root) warningRows() []string {
	text := r.warning()
	if text == "" || r.w == 0 {
		return nil
	}
	return desk.Wrap(text, r.w)
}

// roomy says whether there is room to show anything.
func (r *Root) roomy() bool { return r.w >= leastWidth && r.h >= leastHeight }

// View paints the whole screen. What leaves here goes to the terminal: whoever forgot to make a text harmless, only
// colours get through, and where plans are drawn in pixels the placeholders of their parts.
func (r *Root) View() string {
	if r.desk.State.Pictures() {
		return r.desk.State.Settings.Dress(harmless.PaintedWith(r.paint(), placeholder))
	}
	return r.desk.State.Settings.Dress(harmless.Painted(r.paint()))
}

// placeholder is how long the placeholder is that a text begins with, bytes; 0 for none.
func placeholder(s string) int {
	_, _, n := pixels.Placed(s)
	return n
}

// paint is header, heading, body, warnings, note, foot. What is said stands in the note's rows, and the screen in those above it: nothing lies
// over anything.
func (r *Root) paint() string {
	switch {
	case r.w == 0:
		return "" // the terminal's size is not known yet
	case !r.roomy():
		return r.cramped()
	}
	body := ""
	if o := r.overlay(); o != nil {
		body = desk.Fit(o.view(r, r.w, r.bodyHeight()), r.w, r.bodyHeight())
	} else {
		body = r.screens[r.at].View(r.desk.State, r.w, r.bodyHeight())
	}
	rows := append([]string{r.header(), r.headingRow()}, r.bandRows()...)
	rows = append(rows, strings.Split(body, "\n")...)
	styles := r.desk.State.Settings.Styles()
	for _, row := range r.warningRows() {
		rows = append(rows, styles.Fault.Render(desk.FitRow(row, r.w)))
	}
	said := r.sayRows()
	for _, row := range said {
		rows = append(rows, styles.Strong.Render(desk.FitRow(row, r.w)))
	}
	if len(said) == 0 {
		rows = append(rows, r.adviceLine(r.w))
	}
	return strings.Join(append(rows, r.foot()), "\n")
}

// sayRows are the rows of what is said, a quarter of the window at most; none while nothing is.
func (r *Root) sayRows() []string {
	if !r.saying() || r.w == 0 {
		return nil
	}
	rows, most := desk.Wrap(r.say, r.w), max(r.h/4, noteRows)
	if len(rows) > most {
		rows[most-1] = desk.Cut(rows[most-1]+" "+rows[most], r.w)
		rows = rows[:most]
	}
	return rows
}

// cramped is what a window shows that is too small for the screens: a question that waits for its answer, else
// what is needed.
func (r *Root) cramped() string {
	if r.answerable() {
		return desk.Fit(r.overlay().view(r, r.w, r.h), r.w, r.h)
	}
	text := fmt.Sprintf("This window is %d x %d. undermark needs at least %d columns and %d rows: make it larger, "+
		"or the letters smaller. Nothing is lost. Ctrl-S saves, Ctrl-C quits.", r.w, r.h, leastWidth, leastHeight)
	return desk.Fit(strings.Join(desk.Wrap(text, r.w), "\n"), r.w, r.h)
}

// button is a piece of the header or the foot that can be tapped.
type button struct {
	from, width int    // columns
	near        int    // columns on both sides that belong to it: half of the gap to its neighbours
	key         string // the key that a tap on it sends
	text, more  string
	style       desk.Style // of text
}

// holds tells whether a tap at column x is meant for the button: a gloved finger may miss it by so much.
func (p button) holds(x int) bool { return x >= p.from-p.near && x < p.from+p.width+p.near }

func (r *Root) header() string {
	var b strings.Builder
	x := 0
	for _, p := range r.titleButtons() {
		b.WriteString(strings.Repeat(" ", p.from-x) + p.style.Render(p.text))
		x = p.from + p.width
	}
	b.WriteString(r.whichJob(r.w - x))
	return desk.FitPainted(b.String(), r.w)
}

// whichJob is the job's ref at the right end of room columns, as much of it as there is room for; work that is
// not saved has a dot and, with room, words.
func (r *Root) whichJob(room int) string {
	styles := r.desk.State.Settings.Styles()
	ref, dot, words := r.ref(), "", ""
	if r.desk.State.Dirty {
		dot, words = "●", " "+notSaved
	}
	for _, text := range []string{ref + " " + dot + words, ref + " " + dot, dot} {
		text = strings.TrimSpace(text)
		if n := desk.Width(text); n < room || text == dot && n <= room {
			style := styles.Plain
			if dot != "" {
				style = styles.Unsaved
			}
			return strings.Repeat(" ", room-n) + style.Render(text)
		}
	}
	return ""
}

const notSaved = "not saved"

// ref is what the job is called.
func (r *Root) ref() string {
	if r.sample {
		return r.desk.State.Job.Ref + " (sample)"
	}
	return r.desk.State.Job.Ref
}

// saying says whether a line is said above the foot. What lies over the screens has no such line.
func (r *Root) saying() bool { return r.say != "" && r.overlay() == nil }
