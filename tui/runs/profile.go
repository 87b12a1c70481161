package runs

import (
	"slices"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// profile is the picture of a run laid out straight, in its room.
type profile struct {
	scene  scene.Scene
	of     vehicles.RunKind
	run    *vehicles.LaidRun
	high   float64 // how many times the heights are drawn as high as they are
	in     size    // of the picture
	words  int     // rows of figures below it
	drains []float64
	units  survey.Units
}

// figuresFrom is from how many columns on the places of the points are written out under the profile, and what is clear has its figure, too.
const figuresFrom = 100

// explainedFrom is from how many rows on the profile says how it is drawn.
const explainedFrom = 10

// beside lays the profile out; ok is false while there is none to be shown.
func (m screen) beside(s desk.State, in size) (p profile, ok bool) {
	p.of, p.run = m.of, s.Result.Plan.Run(m.of)
	run := s.Result.Job.Run(m.of)
	if p.run == nil || run == nil || in.W < canvas.MinWidth {
		return p, false
	}
	p.words, p.drains, p.units = 2, run.Drains, s.Settings.Units
	if in.H < explainedFrom {
		p.words = 1
	} else if in.W >= figuresFrom {
		p.words = 3
	}
	p.in = size{in.W, in.H - p.words}
	p.high = stretched(&s.Result, m.of, p.in, p.units)
	p.scene, ok = drawing.Along(s.Result, m.of, p.high)
	if in.W < figuresFrom {
		p.scene.Items = withoutSpare(p.scene.Items)
	}
	return p, ok
}

// withoutSpare takes from what is clear the figure of what it has to spare: where rows are few that would hide what it is of.
func withoutSpare(items []scene.Item) []scene.Item {
	items = slices.Clone(items)
	for i := range items {
		if items[i].State < scene.Doubtful {
			items[i].Measure = nil
		}
	}
	return items
}

// stretched is how many times the heights of a run may be drawn as high as they are in a picture that shows all of it.
func stretched(r *rules.Result, of vehicles.RunKind, in size, u survey.Units) float64 {
	room := canvas.NewMap(scene.Scene{}, in.W, in.H, desk.Camera{Scale: 1}, u)
	return drawing.Stretch(r, of, float64(room.Cols), 2*float64(room.Rows)) // a cell is twice as high as wide
}

// camera looks at all of the run, its beginning at the left of the picture.
func (p *profile) camera() desk.Camera {
	fitted := canvas.NewMap(p.scene, p.in.W, p.in.H, desk.Camera{}, p.units)
	wide, _ := fitted.CellSize()
	return desk.Camera{Middle: geometry.Point{X: p.scene.Min.X + wide*float64(fitted.Cols)/2, Y: fitted.Middle().Y}, Scale: fitted.Scale}
}

// lay is where places of the run are seen.
func (p *profile) lay() canvas.Map {
	return canvas.NewMap(p.scene, p.in.W, p.in.H, p.camera(), p.units)
}

// cell is the cell of a place along the run.
func (p *profile) cell(lay canvas.Map, along float64) (col, row int, seen bool) {
	return lay.Cell(geometry.Point{X: along, Y: p.run.Line.At(along).Z * p.high})
}

// fall is the profile of the run: how it falls along its way, under what it passes, and what hangs on it.
func (m screen) fall(s desk.State, in size) string {
	st := s.Settings.Styles()
	p, ok := m.beside(s, in)
	if !ok {
		once := "the " + m.of.String() + " has a stub and a point."
		if len(s.Faults) > 0 {
			once = "the fault is put right."
		}
		return desk.Fit(strings.Join(desk.Wrapped(st.Faint, "How it falls is seen here once "+once, in.W), "\n"), in.W, in.H)
	}
	look := canvas.Look{
		Camera: p.camera(), Units: s.Settings.Units, Left: desk.Left(s.Settings), Right: desk.Right(s.Settings), Faces: s.Settings.Colour.Faces(s.Settings.Look),
	}
	lay := p.lay()
	marks := p.marks(m, s, lay)
	for _, k := range marks {
		look.Marked = append(look.Marked, [2]int{k.col, k.row})
	}
	painted := canvas.Paint(p.scene, p.in.W, p.in.H, look)
	told := drawing.FarBelow(&s.Result, p.of) && writeFree(&painted, marks, "▼ "+p.groundBelow(s))
	view := marked(painted.Encode(s.Settings.Colour, s.Settings.Look), marks, in.W)
	falls := p.falls(lay, s)
	for _, more := range []string{p.groundBelow(s), p.offLevel(s)} {
		if p.words > 1 || more == "" || told && more == p.groundBelow(s) {
			continue
		}
		falls.goOn(more, in.W)
	}
	rows := append(strings.Split(view, "\n"), falls.painted(in.W, st.Strong))
	if p.words == 3 {
		rows = append(rows, p.places(lay, s).painted(in.W, st.Plain))
	}
	if p.words > 1 {
		rows = append(rows, st.Faint.Render(desk.FitRow(p.explained(s, !told), in.W)))
	}
	return strings.Join(rows, "\n")
}

// marks are what stands on the profile for the places where water stands and for the parts of the run.
func (p *profile) marks(m screen, s desk.State, lay canvas.Map) (marks []mark) {
	st := s.Settings.Styles()
	for _, low := range p.low() {
		if col, row, seen := p.cell(lay, low); seen {
			if row++; row >= lay.Top+lay.Rows {
				row -= 2
			}
			marks = append(marks, mark{row, col, "!", st.Foul})
		}
	}
	return append(marks, m.ofParts(s, func(part placed) (col, row int, seen bool) {
		if !part.lies() {
			return 0, 0, false
		}
		return p.cell(lay, part.middle())
	})...)
}

// writeFree writes a text into a picture where nothing is drawn and no mark will stand, as near to its lower edge and then to its right as can be.
func writeFree(c *canvas.Canvas, marks []mark, text string) bool {
	length := desk.Width(text)
	for row := min(c.Top+c.Rows, c.Height) - 1; row >= c.Top; row-- { // a pane may be smaller than what is painted at the least
		drawn := func(col int) bool {
			return c.At(col, row).Rune != ' ' || slices.ContainsFunc(marks, func(k mark) bool { return k.row == row && k.col == col })
		}
		free := 0
		for col := min(c.Left+c.Cols, c.Width) - 1; col >= c.Left; col-- {
			if free++; drawn(col) {
				free = 0
			}
			if free > length+1 { // a blank on either side
				c.Put(col+1, row, text, canvas.Ink{Role: scene.Floor, Tone: canvas.Bold})
				return true
			}
		}
	}
	return false
}

// low are the places where water stands; a fuel line has none.
func (p *profile) low() []float64 {
	if p.of == vehicles.FuelRun {
		return nil
	}
	return rules.Undrained(p.run, p.drains)
}

// falls writes the fall of each leg, mm in a metre, under it; one that is foul in the ink of that and with the mark that names have.
func (p *profile) falls(lay canvas.Map, s desk.State) *written {
	row, foul := &written{lead: "mm/m"}, p.foulFalls(s)
	for i := range p.run.Line.Legs {
		leg := &p.run.Line.Legs[i]
		col, _, _ := lay.Cell(geometry.Point{X: (p.run.CornerAlong(i) + p.run.CornerAlong(i+1)) / 2})
		word := words.Fall(leg.B.Sub(leg.A))
		if foul[i] {
			row.putInked(col, word+"!", s.Settings.Styles().Verdict(rules.Foul))
		} else {
			row.put(col, word)
		}
	}
	return row
}

// foulFalls tells of each leg whether it falls too little. Nothing measured enters a fall, so that none is doubtful.
func (p *profile) foulFalls(s desk.State) []bool {
	foul := make([]bool, len(p.run.Line.Legs))
	for i := range s.Result.Findings {
		f := &s.Result.Findings[i]
		if leg := int(f.Against.Index); f.Of(rules.ExhaustFall) && p.of == vehicles.ExhaustRun && leg < len(foul) {
			foul[leg] = f.Verdict == rules.Foul
		}
	}
	return foul
}

// places writes how deep each corner is, and how far along.
func (p *profile) places(lay canvas.Map, s desk.State) *written {
	row := &written{lead: "drop"}
	for i, corner := range p.run.Path {
		along := p.run.CornerAlong(i)
		col, _, _ := lay.Cell(geometry.Point{X: along})
		row.put(col, survey.Format(-corner.Z, s.Settings.Units)+" at "+survey.Format(along, s.Settings.Units))
	}
	return row
}

// explained says how the profile is drawn, how level the muffler hangs, where the ground is, unless that is told, and what its signs are.
func (p *profile) explained(s desk.State, ground bool) string {
	var say []string
	if len(p.low()) > 0 {
		say = append(say, "! water stands.")
	}
	if level := p.offLevel(s); level != "" {
		say = append(say, words.Upper(level)+".")
	}
	if p.high > 1 {
		say = append(say, "Heights x"+survey.Exact(p.high)+".")
	}
	if ground {
		say = append(say, words.Upper(p.groundBelow(s))+".")
	}
	return strings.Join(say, " ")
}

// offLevel says how level the muffler hangs; "" where there is none.
func (p *profile) offLevel(s desk.State) string {
	if p.run.Muffler == nil {
		return ""
	}
	return "muffler " + desk.Quantity(drawing.OffLevel(p.run.Muffler), rules.Degree, s.Settings.Units) + " off level"
}

// groundBelow says where the ground is.
func (p *profile) groundBelow(s desk.State) string { return "ground " + p.aboveGround(s) + " lower" }

// aboveGround is how far the run's lowest is above the ground.
func (p *profile) aboveGround(s desk.State) string {
	return survey.Format(drawing.AboveGround(p.run, s.Result.Job.Floor.Ground), s.Settings.Units)
}
