package place

import (
	"fmt"
	"slices"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/plan"
	"bench.example/undermark/vehicles"
)

// Where there is room for it the layouts stand beside each other, above their lines.
const (
	abreastFrom = 150 // columns
	abreastHigh = 36  // rows
	linesUnder  = 14  // rows that their lines may take
)

// abreast tells whether the layouts stand beside each other in a body of w by h.
func (m screen) abreast(w, h int) bool {
	return len(m.proposed()) > 1 && w >= abreastFrom && h >= abreastHigh
}

// laid is the desk with a layout on it, the whole floor in sight.
func laid(l *rules.Layout, s desk.State) desk.State {
	s.Job, s.Plan, s.Result, s.Focus, s.Selected = l.Result.Job, l.Result.Plan, l.Result, nil, -1
	s.Camera = desk.Camera{View: s.Camera.View, Whole: true}
	return s
}

// roundLayout is how much is seen round a layout, mm: what it passes is told from what it leads to.
const roundLayout = 100

// near is the view of a layout from the cut to the end of each run, with as much of the floor on either side as the picture has room for.
func near(l *rules.Layout, s desk.State, w, h int) desk.Camera {
	places := []geometry.Point3{l.At.At(0)}
	for _, of := range vehicles.RunKinds {
		if run := l.Result.Plan.Run(of); run != nil {
			places = append(places, run.Path...)
		}
	}
	tight := canvas.Fit(s.Camera.View, places, roundLayout, w, h, s.Settings.Units)
	const parts = 10
	for part := parts; part > 0; part-- {
		wide := canvas.Fit(s.Camera.View, widened(places, &s.Job.Floor, float64(part)/parts), roundLayout, w, h, s.Settings.Units)
		if wide.Scale <= tight.Scale {
			return wide
		}
	}
	return tight
}

// widened are places with others on both sides of them: so large a share of the way to the floor's edges.
func widened(places []geometry.Point3, floor *vehicles.Floor, share float64) []geometry.Point3 {
	low, high := places[0], places[0]
	for _, p := range places {
		low.Y, high.Y = min(low.Y, p.Y), max(high.Y, p.Y)
	}
	edge := floor.Width / 2
	low.Y -= share * max(0, low.Y+edge)
	high.Y += share * max(0, edge-high.Y)
	return append(slices.Clip(places), low, high)
}

// pictures are the layouts beside each other, each under its number, and their lines below.
func (m screen) pictures(s desk.State, w, h int) string {
	best, st := m.proposed(), s.Settings.Styles()
	lines := m.under(s, w).rows
	wide, high := (w-len(best)+1)/len(best), h-len(lines)
	var all string
	for i := range best {
		if i == len(best)-1 {
			wide = w - i*(wide+1)
		}
		look := st.Title
		if i == m.at {
			look = st.Here
		}
		one := laid(&best[i], s)
		one.Pixels = nil // a terminal shows one picture at a time
		one.Camera = near(&best[i], one, wide, high-1)
		title := desk.Fit(look.Render(" "+headOf(i, &best[i])+" "), wide, 1)
		picture := title + "\n" + m.small[i].View(one, wide, high-1, plan.Options{Shown: foulOf(&best[i]), Area: best[i].Area})
		if all == "" {
			all = picture
		} else {
			all = desk.Beside(all, picture, st)
		}
	}
	return all + "\n" + desk.Fit(strings.Join(lines, "\n"), w, len(lines))
}

// under are the lines below the pictures: no more rows than they fill.
func (m screen) under(s desk.State, w int) panelRows {
	lines := m.choices(s, w, linesUnder)
	lines.rows = lines.rows[:min(len(lines.rows), linesUnder)]
	return lines
}

// foulOf are the findings that a layout's picture shows: the worst of what it breaks.
func foulOf(l *rules.Layout) []*rules.Finding {
	foul := func(f *rules.Finding) bool { return f.Verdict == rules.Foul }
	return drawing.Worst(l.Result.Findings, foul, moving.Dimensions)
}

// headOf names a layout in a few words: its place among them, its area and its verdict.
func headOf(i int, l *rules.Layout) string {
	text := fmt.Sprint(i + 1)
	if l.Area != "" {
		text += ", area " + l.Area
	}
	if l.AsItIs {
		text += ", as it is"
	}
	if l.FuelMiss != nil {
		text += ", no fuel line"
	}
	return text + ", " + desk.VerdictWord(l.Verdict())
}
