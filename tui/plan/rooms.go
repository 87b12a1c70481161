package plan

import (
	"math"
	"runtime"
	"unicode/utf8"

	"bench.example/undermark/geometry/field"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
)

// rooms keeps what was worked out last of where the cut can go. It depends on the things and the rules, not on where the
// cut is: while that moves the same shade is painted.
type rooms struct {
	doubt rules.Doubt
	shade *canvas.Shade

	room  rules.Room
	areas []field.Area
	known bool // room and areas are worked out
}

// shadeOf returns the shade of a layout of the picture.
func (k *rooms) shadeOf(r *rules.Result, m canvas.Map) *canvas.Shade {
	doubt := rules.DoubtOfCut(k.doubt, r)
	same := k.doubt.Same(doubt)
	if k.shade.Of(m) && same {
		return k.shade
	}
	k.known = k.known && same // what is asked lies midway between both sides of the doubt
	low, high := m.Corners()
	shading := drawing.NewShading(r, doubt, low, high, m.Scale, runtime.GOMAXPROCS(0))
	k.doubt, k.shade = doubt, canvas.NewShade(m, shading.At).Finer(shading.Between)
	return k.shade
}

// Areas returns the open areas for the centre of the cut, best first, and the room they are of.
func (p Pane) Areas(s desk.State) ([]field.Area, rules.Room) {
	k := p.rooms
	room := rules.RoomForSaw(&s.Result)
	if !k.known || !k.room.Same(room) {
		k.room, k.known = room, true
		k.areas = room.Areas(runtime.GOMAXPROCS(0))
	}
	return k.areas, k.room
}

// Rank has the open areas go in an order, with its letters, for as long as nothing changes where the cut can go.
func (p Pane) Rank(s desk.State, areas []field.Area) {
	p.rooms.room, p.rooms.areas, p.rooms.known = rules.RoomForSaw(&s.Result), areas, true
}

// letters writes the areas' letters at their best places, where those are clear beyond doubt and no word stands there; that of the area that
// the cut is in, or at whose best place its ring stands, beside the ring. They are in brackets, as kinds of things are letters too. The floor
// has been shaded.
func (p Pane) letters(c *canvas.Canvas, s desk.State, ofCut string) {
	if !p.rooms.known {
		p.Areas(s)
	}
	for _, a := range p.rooms.areas {
		text := lettered(a.Name)
		if s.Job.Cut != nil && (a.Name == ofCut || a.Best.At.Sub(s.Result.Plan.Cut.At).Norm() <= canvas.RingReach(s.Job.Cut.Across/2, c.Scale)) {
			letterAtRing(c, text, s)
			continue
		}
		col, row, ok := c.CellOf(a.Best.At.At(0))
		col -= len(text) / 2
		if ok && p.rooms.doubt.Sure.Margins.At(a.Best.At).Margin >= 0 && wordless(c, col, row, len(text)) {
			writeLetter(c, col, row, text)
		}
	}
}

// lettered is an area's letter as it stands in the picture.
func lettered(name string) string { return "(" + name + ")" }

func writeLetter(c *canvas.Canvas, col, row int, text string) {
	c.Write(canvas.Text{Col: col, Row: row, Name: text, Ink: canvas.Ink{Role: scene.Wish, Tone: canvas.Bold}})
}

// letterAtRing writes a letter beside the ring round the cut, as near as no word stands, and none where there is no room: in the ring is what is in
// the way.
func letterAtRing(c *canvas.Canvas, text string, s desk.State) {
	atCol, atRow, ok := c.CellOf(s.Result.Plan.Cut.At.At(0))
	if !ok {
		return
	}
	wide, _ := c.CellSize()
	ring := int(math.Ceil(canvas.RingReach(s.Job.Cut.Across/2, c.Scale)/wide)) + 1 // columns; a row counts as two
	far := ring + canvas.RingCells                                                 // farther off nobody would read it as the ring's
	most := far * far
	best, col, row := most, 0, 0
	for y := max(c.Top, atRow-far/2); y <= min(c.Top+c.Rows-1, atRow+far/2); y++ {
		for x := atCol - far; x <= atCol+far; x++ {
			across, down := x+len(text)/2-atCol, 2*(y-atRow)
			beside := max(across-len(text)/2, -across-len(text)/2, 0) // to its nearest cell
			if away := across*across + down*down; away < best && beside*beside+down*down >= ring*ring && wordless(c, x, y, len(text)) {
				best, col, row = away, x, y
			}
		}
	}
	if best < most {
		writeLetter(c, col, row, text)
	}
}

// wordless tells whether w cells of the picture hold nothing but dots; of a canvas that is too small for its picture none beyond it do.
func wordless(c *canvas.Canvas, col, row, w int) bool {
	if row >= c.Height {
		return false
	}
	for x := col; x < col+w; x++ {
		if x < c.Left || x >= min(c.Left+c.Cols, c.Width) {
			return false
		}
		if r := c.At(x, row).Rune; r != ' ' && (r < 0x2800 || r > 0x28FF) { // braille
			return false
		}
	}
	return true
}

// scaleBar explains the shades in a row of its own below the picture, where there is one, and returns where the next words may stand.
func scaleBar(c *canvas.Canvas, u survey.Units) (col int) {
	parts := []struct {
		grade scene.Grade
		text  string
	}{
		{scene.LittleRoom, "0-" + survey.Format(scene.FairSpare, u)},
		{scene.FairRoom, survey.Format(scene.FairSpare, u) + "-" + survey.Format(scene.MuchSpare, u)},
		{scene.MuchRoom, "more"},
	}
	title := u.Sign() + " to spare:"
	row, col := explainedIn(c), len(title)+1
	if row >= c.Height {
		return 0
	}
	c.Put(0, row, title, canvas.Ink{Role: scene.Floor})
	for _, part := range parts {
		c.Shades(col, row, patch, part.grade)
		c.Put(col+patch+1, row, part.text, canvas.Ink{Role: scene.Floor})
		col += patch + 3 + utf8.RuneCountInString(part.text)
	}
	return col
}

// shaded returns the look of a plan with the floor shaded.
func (p Pane) shaded(plan scene.Scene, s desk.State, w, h int, look canvas.Look) canvas.Look {
	m := canvas.NewMap(plan, max(w, canvas.MinWidth), max(h, canvas.MinHeight), look.Camera, look.Units)
	look.Shade = p.rooms.shadeOf(&s.Result, m)
	return look
}
