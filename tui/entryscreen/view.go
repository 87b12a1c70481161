package entryscreen

import (
	"strings"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/features"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/plan"
)

// Area is a part of the body, in cells.
type Area struct{ X, Y, W, H int }

// Holds says whether a cell of the body is in the area.
func (a Area) Holds(x, y int) bool { return x >= a.X && x < a.X+a.W && y >= a.Y && y < a.Y+a.H }

// areas are the parts of the body; a part without rows does not show. The first row of list and form is a title.
type areas struct{ list, form, panel, picture, under Area }

// leastStrip is how many rows a plan under the list has at least.
const leastStrip = 5

// arranged says what stands where in a body of w columns and h rows. With panel, the screen's own panel has the
// place of list and form.
func (e Entry) arranged(s desk.State, w, h int, panel bool) areas {
	a := e.parts(s, w, h, panel)
	if e.spec.Under == nil || a.picture.H <= leastStrip || e.drawn(s, a.picture.W, a.picture.H) > 0 {
		return a
	}
	rows := min(len(e.spec.Under(e, s, a.picture.W, a.picture.H)), a.picture.H-max(leastStrip, a.picture.H/3))
	a.picture.H -= rows
	a.under = Area{a.picture.X, a.picture.Y + a.picture.H, a.picture.W, rows}
	return a
}

// drawn is how many rows the screen's drawing takes in place of the plan.
func (e Entry) drawn(s desk.State, w, h int) int {
	if e.spec.Beside == nil || e.whole {
		return 0
	}
	_, rows := e.spec.Beside(e, s, w, h)
	return rows
}

// parts are list, form, panel and picture.
func (e Entry) parts(s desk.State, w, h int, panel bool) areas {
	switch {
	case e.whole:
		return areas{picture: Area{0, 0, w, h}}
	case w >= desk.SideBySide:
		left := max(48, min(64, w*45/100))
		a := areas{picture: Area{left + 1, 0, w - left - 1, h}}
		list := h / 2
		if e.Typing() {
			list = h / 3
		}
		if panel {
			a.panel = Area{0, 0, left, h}
		} else {
			a.list, a.form = Area{0, 0, left, list}, Area{0, list, left, h - list}
		}
		return a
	}
	strip := e.strip(s, w, h, panel)
	rest := Area{0, 0, w, h - strip}
	a := areas{picture: Area{0, h - strip, w, strip}}
	switch {
	case panel:
		a.panel = rest
	case e.Typing():
		a.form = rest
	default:
		a.list = rest
	}
	return a
}

// strip is how many rows the picture has under the list: a panel and choices need them all.
func (e Entry) strip(s desk.State, w, h int, panel bool) int {
	if panel || e.Editor.Picking(s) {
		return 0
	}
	if rows := e.drawn(s, w, h); rows > 0 {
		return min(rows, h-leastStrip)
	}
	if e.spec.Under != nil && !e.Typing() {
		return max(2*leastStrip, h/2)
	}
	return max(leastStrip, h/3)
}

// View paints the screen; panel, when it is not nil, in place of list and form.
func (e Entry) View(s desk.State, w, h int, panel func(s desk.State, w, h int) string) string {
	e = e.Synced(s)
	a := e.arranged(s, w, h, panel != nil)
	var column []string
	for _, part := range []struct {
		area  Area
		paint func(s desk.State, w, h int) string
	}{{a.list, e.paintList}, {a.panel, panel}, {a.form, e.paintForm}} {
		if part.area.H > 0 {
			column = append(column, part.paint(s, part.area.W, part.area.H))
		}
	}
	text := strings.Join(column, "\n")
	picture := ""
	if a.picture.H > 0 {
		picture = e.paintPicture(s, a.picture.W, a.picture.H)
	}
	if a.under.H > 0 {
		under := strings.Join(e.spec.Under(e, s, a.under.W, a.picture.H+a.under.H), "\n")
		picture += "\n" + desk.Fit(under, a.under.W, a.under.H)
	}
	switch {
	case text == "":
		return desk.Fit(picture, w, h)
	case picture == "":
		return desk.Fit(text, w, h)
	case a.picture.X == 0:
		return desk.Fit(text+"\n"+picture, w, h)
	}
	return desk.Beside(desk.Fit(text, a.picture.X-1, h), picture, s.Settings.Styles())
}

// Panel is where the screen's panel is in the body.
func (e Entry) Panel(s desk.State) Area { return e.arranged(s, e.w, e.h, true).panel }

// paintList paints the list under its title, and below it what is wrong.
func (e Entry) paintList(s desk.State, w, h int) string {
	look := s.Settings.Styles()
	warn := e.warnings(s, w, h)
	room := h - 1 - len(warn)
	rows, all, here, fresh := e.listed(s)
	from, to := form.Shown(rows, here, room)
	for i := from; i < to; i++ {
		if say, fault := e.standing(all[i], s); say != "" && i != fresh {
			rows[i].Right, rows[i].Fault = say, fault
		}
	}
	body := ""
	if len(rows) > 0 {
		body = form.PaintRows(rows, here, w, room, look)
	} else {
		body = desk.Fit(strings.Join(desk.Wrap(e.spec.Empty, w), "\n"), w, room)
	}
	title := desk.FitPainted(look.Title.Render(e.spec.Title(s)), w)
	return strings.Join(append([]string{title, body}, warn...), "\n")
}

// warnings are rows of what is wrong, at most a third of h and the title's row.
func (e Entry) warnings(s desk.State, w, h int) []string {
	if e.spec.Warn == nil {
		return nil
	}
	var out []string
	look := s.Settings.Styles()
	for _, text := range e.spec.Warn(s) {
		for _, row := range desk.Wrap("! "+text, w) {
			if len(out) == (h+1)/3 {
				return out
			}
			out = append(out, look.Fault.Render(desk.FitRow(row, w)))
		}
	}
	return out
}

// paintForm paints the form of what is being typed, or else of what the list is at.
func (e Entry) paintForm(s desk.State, w, h int) string {
	look := s.Settings.Styles()
	record, ok := e.Here(s)
	if !ok {
		return desk.Fit("", w, h)
	}
	if !e.Typing() {
		e.Editor = e.Editor.Show(record)
	}
	id := record.ID()
	if _, isThing := record.(features.Record); !isThing {
		_, id = form.NameOf(record, s.Job)
	}
	title := look.Title.Render(strings.ToUpper(id[:1]) + id[1:])
	if thing, isThing := record.(features.Record); isThing {
		name, _ := thing.Name(s.Job)
		title += " " + look.Strong.Render(name)
		if !thing.Real(s.Job) && !thing.Fresh {
			title += look.Faint.Render("  needs " + thing.Lacks(s.Job))
		}
	}
	return desk.FitPainted(title, w) + "\n" + e.Editor.View(s, w, h-1)
}

// paintPicture paints the screen's drawing, or else the plan.
func (e Entry) paintPicture(s desk.State, w, h int) string {
	if e.spec.Beside != nil && !e.whole {
		if text, rows := e.spec.Beside(e, s, w, h); rows > 0 {
			return desk.Fit(text, w, h)
		}
	}
	return e.pane.View(e.shown(s), w, h, e.options(s))
}

// options are what the screen shows on the plan beside the job.
func (e Entry) options(s desk.State) plan.Options {
	if e.spec.Plan == nil {
		return plan.Options{Follow: true}
	}
	return e.spec.Plan(e, s)
}

// shown is the state as the plan shows it: with what is known of the thing being entered.
func (e Entry) shown(s desk.State) desk.State {
	if e.spec.Above {
		s.Camera.View = e.view
	}
	here, ok := e.Here(s)
	record, isThing := here.(features.Record)
	if !ok || !isThing || record.Fresh || record.Real(s.Job) || len(s.Faults) > 0 {
		return s
	}
	sketch := record.Sketch(s)
	if sketch.Row < 0 || len(sketch.Faults) > 0 {
		return s
	}
	s.Job, s.Plan, s.Result.Job, s.Result.Plan = sketch.Job, sketch.Plan, sketch.Job, sketch.Plan
	if record.List == features.Obstructions {
		s.Selected = sketch.Row
	}
	return s
}
