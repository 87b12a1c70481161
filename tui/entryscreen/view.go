package entryscreen

import (
	"strings"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/features"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/plan"
)

// View paints the screen; panel, when it is not nil, in place of list and form.
func (e Entry) View(s desk.State, w, h int, panel func(s desk.State, w, h int) string) string {
	e = e.Synced(s)
	a := e.arranged(s, w, h, panel != nil)
	var column []string
	for _, part := range []struct {
		area  Area
		paint func(s desk.State, w, h int) string
	}{{a.list, e.paintList}, {a.panel, panel}, {a.form, e.paintForm}} {
		if part.area.H > 0 && part.area.X == 0 {
			column = append(column, part.paint(s, part.area.W, part.area.H))
		}
	}
	below := a.form.H > 0 && a.under.H > 0 && a.under.X == a.form.X
	if below {
		column = append(column, e.paintUnder(s, a.under, a.under.W-desk.Margin, a.under.H))
	}
	text := strings.Join(column, "\n")
	if below {
		a.under = Area{}
	}
	pictures := e.paintPictures(s, a)
	switch {
	case text == "":
		return pictures
	case pictures == "":
		return desk.Fit(text, w, h)
	case w < desk.SideBySide:
		return desk.Fit(text, w, h-1-strings.Count(pictures, "\n")) + "\n" + pictures
	}
	return desk.Beside(desk.Fit(text, w-1-max(a.picture.W, a.drawing.W, beside(a.form)), h), pictures, s.Settings.Styles())
}

// beside is how many columns a part has that stands beside the list, 0 for one in its column.
func beside(a Area) int {
	if a.X == 0 {
		return 0
	}
	return a.W
}

// paintPictures paints the drawing, the plan, and what it all comes to, one under the other.
func (e Entry) paintPictures(s desk.State, a areas) string {
	var out []string
	if d := a.drawing; d.H > 0 {
		text, _ := e.spec.Beside(e, s, d.W, d.H)
		out = append(out, desk.Fit(text, d.W, d.H))
	}
	if f := a.form; f.H > 0 && f.X > 0 {
		out = append(out, desk.Indented(e.paintForm(s, f.W-desk.Margin, f.H)))
	}
	if p := a.picture; p.H > 0 {
		out = append(out, e.pane.View(e.shown(s), p.W, p.H, e.options(s)))
	}
	if u := a.under; u.H > 0 {
		out = append(out, e.paintUnder(s, u, u.W, a.picture.H+u.H))
	}
	return strings.Join(out, "\n")
}

// paintUnder paints what it all comes to, asked for in w columns and h rows.
func (e Entry) paintUnder(s desk.State, in Area, w, h int) string {
	return desk.Indented(desk.Fit(strings.Join(e.spec.Under(e, s, w, h), "\n"), in.W, in.H))
}

// Panel is where the screen's panel is in the body.
func (e Entry) Panel(s desk.State) Area { return e.arranged(s, e.w, e.h, true).panel }

// paintList paints the list under its title, and below it what is wrong.
func (e Entry) paintList(s desk.State, w, h int) string {
	look := s.Settings.Styles()
	warn := e.warnings(s, w, h)
	room := h - 1 - len(warn)
	rows, all, here, fresh := e.listed(s)
	from, to := form.Shown(rows, e.top, here, room)
	for i := from; i < to; i++ {
		if say, fault := e.standing(all[i], s); say != "" && i != fresh {
			rows[i].Right, rows[i].Fault = say, fault
		}
	}
	body := ""
	if len(rows) > 0 {
		body = form.PaintRows(rows, e.top, here, w, room, look)
	} else {
		body = desk.Fit(strings.Join(desk.Wrap(e.spec.Empty, w), "\n"), w, room)
	}
	unseen := form.Unseen(rows, e.top, here, room)
	title := look.ListTitle(e.spec.Title(s), unseen[0], unseen[1], w)
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
		record, _ = e.formOf(record, s)
		e.Editor = e.Editor.Show(record)
	}
	id := record.ID()
	if _, isFeature := record.(features.Record); !isFeature {
		_, id = form.NameOf(record, s.Job)
	}
	title := look.Title.Render(strings.ToUpper(id[:1]) + id[1:])
	if feature, isFeature := record.(features.Record); isFeature {
		name, _ := feature.Name(s.Job)
		title += " " + look.Strong.Render(name)
		if !feature.Real(s.Job) && !feature.Fresh {
			title += look.Faint.Render("  needs " + feature.Lacks(s.Job))
		}
	}
	return desk.FitPainted(title, w) + "\n" + e.Editor.View(s, w, h-1)
}

// options are what the screen shows on the plan beside the job. While a field is typed in names stay where they are.
func (e Entry) options(s desk.State) plan.Options {
	o := plan.Options{Follow: true}
	if e.spec.Plan != nil {
		o = e.spec.Plan(e, s)
	}
	o.Calm = e.Typing()
	return o
}

// shown is the state as the plan shows it: with the obstruction that the list is at picked out, even before a key picked one, and with what is known of
// the thing being entered.
func (e Entry) shown(s desk.State) desk.State {
	if e.spec.Above {
		s.Camera.View = e.view
	}
	here, ok := e.Here(s)
	if at := obstruction(here, s); ok && at >= 0 {
		s.Selected = at
	}
	record, isFeature := here.(features.Record)
	if !ok || !isFeature || record.Fresh || record.Real(s.Job) || len(s.Faults) > 0 {
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
