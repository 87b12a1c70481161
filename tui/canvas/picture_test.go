package canvas

import (
	"image"
	"image/color"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
	"bench.example/undermark/tui/pixels"
)

var facesLook = Look{Left: "left", Right: "right", Faces: true}

var darkly = looks.Dark.Table()

// painted is a scene on a canvas and in pixels, so many of them to a cell.
func painted(s scene.Scene, w, h int, look Look, cell image.Point) (Canvas, *image.RGBA) {
	c := Paint(s, w, h, look)
	return c, c.Picture(s, look, looks.Dark.Table())(image.Pt(c.Cols*cell.X, c.Rows*cell.Y))
}

func inkAt(p *image.RGBA, x, y int) color.RGBA { return p.RGBAAt(x, y) }

func opaque(rgb int) color.RGBA {
	return color.RGBA{R: uint8(rgb >> 16), G: uint8(rgb >> 8), B: uint8(rgb), A: 255}
}

// A cell of the picture covers the same mm as the cell of the canvas: what fills just that one is seen in its pixels and in no others,
// whatever the view, the scale and the proportions of the terminal's cells.
func TestACellOfThePictureCoversWhatItCoversOnTheCanvas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		view := rapid.SampledFrom([]scene.View{scene.Below, scene.Above}).Draw(t, "view")
		units := rapid.SampledFrom([]survey.Units{desk.Millimetres, desk.Inches}).Draw(t, "units")
		cell := rapid.SampledFrom([]image.Point{{X: 10, Y: 20}, {X: 9, Y: 19}, {X: 12, Y: 24}, {X: 11, Y: 18}}).Draw(t, "cell")
		camera := desk.Camera{View: view, Middle: pt(rapid.Float64Range(0, 3000).Draw(t, "x"), rapid.Float64Range(-900, 900).Draw(t, "y")), Scale: rapid.Float64Range(0.5, 30).Draw(t, "scale")}
		s := scene.Scene{Projection: view.Projection(), Min: pt(0, -900), Max: pt(3000, 900)}
		look := facesLook
		look.Camera, look.Units = camera, units
		m := NewMap(s, 60, 24, camera, units)
		col, row := m.Left+rapid.IntRange(1, m.Cols-2).Draw(t, "col"), m.Top+rapid.IntRange(1, m.Rows-2).Draw(t, "row")
		at, ok := m.Point(col, row)
		require.True(t, ok)
		wide, high := m.CellSize()
		s.Items = []scene.Item{{Role: scene.Rail, Solid: flat(box(at.X-wide/2, at.X+wide/2, at.Y-high/2, at.Y+high/2)), Ref: -1}}
		_, p := painted(s, 60, 24, look, cell)
		left, top := (col-m.Left)*cell.X, (row-m.Top)*cell.Y
		tint, bare := opaque(darkly.Faces[looks.RailFace]), opaque(darkly.Paper.RGB)
		const edge = 2 // pixels of the line round it, to either side
		for y := range p.Rect.Dy() {
			for x := range p.Rect.Dx() {
				within := x >= left+edge && x < left+cell.X-edge && y >= top+edge && y < top+cell.Y-edge
				without := x < left-edge || x >= left+cell.X+edge || y < top-edge || y >= top+cell.Y+edge
				if got := inkAt(p, x, y); within && got != tint || without && got != bare {
					t.Fatalf("%d %d, within %v: %v", x, y, within, got)
				}
			}
		}
	})
}

// What is under the van is where it is measured, in the colour that its cells have: the middle of each thing that nothing lies on.
func TestThePictureHasTheColoursOfTheCells(t *testing.T) {
	for _, view := range []scene.View{scene.Below, scene.Above} {
		s := van(view)
		look := facesLook
		look.Camera.View = view
		look.Camera.Middle, look.Camera.Scale = view.Projection().Point(geometry.Point3{X: 2000, Y: 200}), 5
		c, p := painted(s, 160, 50, look, image.Pt(10, 20))
		same := 0
		for row := c.Top; row < c.Top+c.Rows; row++ {
			for col := c.Left; col < c.Left+c.Cols; col++ {
				cell := c.At(col, row)
				plain := true
				for y := max(row-2, c.Top); y <= min(row+2, c.Top+c.Rows-1); y++ {
					for x := max(col-2, c.Left); x <= min(col+2, c.Left+c.Cols-1); x++ {
						plain = plain && c.At(x, y).Rune == ' ' && c.At(x, y).Ground == cell.Ground
					}
				}
				if tint, ok := tintIn(cell.Ground, darkly); plain && ok && cell.Ground.Role.Pen().Fill != scene.Hatched {
					require.Equal(t, opaque(tint), inkAt(p, (col-c.Left)*10+5, (row-c.Top)*20+10), "cell %d %d: %v", col, row, cell.Ground)
					same++
				}
			}
		}
		assert.Greater(t, same, 300)
	}
}

// However far away the cut is, its ring is seen: as large as in cells, white, whole, over everything.
func TestTheRingIsWhole(t *testing.T) {
	for _, scale := range []float64{1, 4, 12, 40} {
		cut := pt(1210, 240)
		s := van(scene.Below)
		look := facesLook
		look.Camera = desk.Camera{Middle: cut, Scale: scale}
		c, p := painted(s, 100, 40, look, image.Pt(10, 20))
		require.Positive(t, c.ring)
		radius := c.ring/c.Scale*5 - ringWidth/2/cellHigh*20 // to the middle of its stroke; a dot is 5 pixels wide, a cell 20 high
		assert.GreaterOrEqual(t, radius, RingCells*10/2.0-5)
		dot := c.dot(cut)
		middle := geometry.Point{X: dot.x * 5, Y: dot.y * 5}
		if c.over {
			middle.Y = float64(p.Rect.Dy()) - middle.Y
		}
		for turn := range 360 {
			at := middle.Add(geometry.Point{X: radius}.Turn(float64(turn)))
			x, y := int(math.Floor(at.X)), int(math.Floor(at.Y))
			if image.Pt(x, y).In(p.Rect) {
				assert.Equal(t, opaque(darkly.Marks[looks.Cut].RGB), inkAt(p, x, y), "scale %g, %d degrees", scale, turn)
			}
		}
	}
}

// What is foul is red in the ring, and nowhere else.
func TestWhatIsInTheWayIsRedInTheRing(t *testing.T) {
	s := van(scene.Below)
	for i := range s.Items {
		it := &s.Items[i]
		if it.Role == scene.Cut {
			it.Solid = flat(geometry.NewRound(pt(840, 240), 63.5)) // on the rear crossmember, which is foul
		}
	}
	look := facesLook
	look.Camera = desk.Camera{Middle: pt(840, 240), Scale: 2}
	c, p := painted(s, 100, 40, look, image.Pt(10, 20))
	red := opaque(darkly.Faces[looks.FoulFace])
	n := 0
	for y := range p.Rect.Dy() {
		for x := range p.Rect.Dx() {
			if inkAt(p, x, y) != red {
				continue
			}
			n++
			at := c.Middle().Add(geometry.Point{X: (float64(x) + 0.5 - float64(p.Rect.Dx())/2) / 5 * c.Scale, Y: (float64(y) + 0.5 - float64(p.Rect.Dy())/2) / 5 * c.Scale})
			require.LessOrEqual(t, at.Sub(pt(840, 240)).Norm(), 63.5+c.Scale)
			require.LessOrEqual(t, math.Abs(at.X-842), 42+c.Scale, "of the crossmember")
		}
	}
	assert.Greater(t, n, 1000)
}

// What is foul is red round the ring as it is in cells: a face half as much, a line heavy and all red, a hole's sign, however far away.
func TestWhatIsFoulIsAsRedAsInCells(t *testing.T) {
	for _, scale := range []float64{4, 9, 20} {
		s := van(scene.Below)
		for i := range s.Items {
			if s.Items[i].Role == scene.Cut {
				s.Items[i].Solid = flat(geometry.NewRound(pt(840, 240), 63.5)) // on the rear crossmember, which is foul
			}
		}
		s.Items = append(s.Items,
			scene.Item{Role: scene.Lines, Code: "B", Label: "pipe", State: scene.Foul, Solid: flat(line(6, pt(870, -800), pt(870, 800)))},
			scene.Item{Role: scene.Hole, State: scene.Foul, Primitive: scene.Outline, Solid: flat(geometry.NewRound(pt(840-30*scale, 240), 4))})
		look := facesLook
		look.Camera = desk.Camera{Middle: pt(840, 240), Scale: scale}
		c, p := painted(s, 100, 40, look, image.Pt(10, 20))
		red, half, lines, holes := opaque(darkly.Marks[looks.Foul].RGB), 0, 0, 0
		for row := c.Top + 1; row < c.Top+c.Rows-1; row++ {
			for col := c.Left + 1; col < c.Left+c.Cols-1; col++ {
				cell := c.At(col, row)
				x, y := (col-c.Left)*10, (row-c.Top)*20
				count := func(want color.RGBA) (n int) {
					for i := range 10 {
						for j := range 20 {
							if inkAt(p, x+i, y+j) == want {
								n++
							}
						}
					}
					return n
				}
				switch {
				case cell.Ink.Role == scene.Hole && cell.Ink.State == scene.Foul:
					holes++
					assert.Greater(t, count(red), 60, "the hole's sign, at scale %g", scale)
				case cell.Ink.Role == scene.Lines && strings.ContainsRune("▌┃", cell.Rune):
					lines++
					assert.Greater(t, count(red), 20, "the pipe at %d %d, at scale %g", col, row, scale)
				case cell.Ground.Foul && c.At(col, row-1).Ground.Foul && c.At(col, row+1).Ground.Foul:
					tint, _ := tintIn(cell.Ground, darkly)
					half++
					assert.Greater(t, count(opaque(tint)), 25, "the crossmember at %d %d, at scale %g", col, row, scale)
				}
			}
		}
		assert.Equal(t, 1, holes, "scale %g", scale)
		assert.Positive(t, lines, "scale %g", scale)
		if scale < 9 {
			assert.Positive(t, half)
		}
	}
}

// Each text of the cells stands in the picture in its own cells: there, and only there and at leaders, does a picture with texts differ
// from one without.
func TestTextsStandWhereTheirCellsAre(t *testing.T) {
	s := van(scene.Below)
	c := Paint(s, 160, 50, facesLook)
	require.NotEmpty(t, c.Texts)
	size := image.Pt(c.Cols*10, c.Rows*20)
	with := c.Picture(s, facesLook, looks.Dark.Table())(size)
	bare := c
	bare.Texts = nil
	without := bare.Picture(s, facesLook, looks.Dark.Table())(size)
	for _, text := range c.Texts {
		length := len([]rune(text.Name + text.Tail))
		box := image.Rect(0, 0, 10*length, 20).Add(image.Pt((text.Col-c.Left)*10, (text.Row-c.Top)*20))
		if text.down {
			box = image.Rect(0, 0, 10, 20*length).Add(box.Min)
		}
		changed := 0
		for y := box.Min.Y; y < box.Max.Y; y++ {
			for x := box.Min.X; x < box.Max.X; x++ {
				if with.RGBAAt(x, y) != without.RGBAAt(x, y) {
					changed++
				}
				with.SetRGBA(x, y, without.RGBAAt(x, y))
			}
		}
		assert.Greater(t, changed, 15*length, "%s%s", text.Name, text.Tail)
	}
	rest := 0
	for i := range with.Pix {
		if with.Pix[i] != without.Pix[i] {
			rest++
		}
	}
	assert.Less(t, rest, len(with.Pix)/100, "rims, leaders, the letters on the van's ends")
}

// A canvas whose picture is in pixels has a placeholder in each cell of that, by column and row, and all else as it was.
func TestCellsOfAPictureHoldPlaceholders(t *testing.T) {
	s := van(scene.Below)
	c := Paint(s, 100, 30, facesLook)
	was := strings.Split(c.Encode(desk.NoColour, looks.Dark), "\n")
	require.True(t, c.Pictured())
	c.Put(c.Left+3, c.Top+2, "here", strong)
	c.Put(c.Left+9, c.Top+2, partOf(4, 4), strong)
	for row, line := range strings.Split(c.Encode(desk.TrueColour, looks.Dark), "\n") {
		if row < c.Top || row >= c.Top+c.Rows {
			assert.NotContains(t, line, string(pixels.First))
			continue
		}
		assert.Equal(t, string([]rune(was[row])[:c.Left]), string([]rune(bare(line))[:c.Left]))
		text := bare(line)
		_, cells, _ := strings.Cut(text, string([]rune(text)[:c.Left]))
		n := 0
		for col := 0; col < c.Cols; col++ {
			if x, y, long := pixels.Placed(cells); long > 0 {
				require.Equal(t, [2]int{col, row - c.Top}, [2]int{x, y})
				cells = cells[long:]
				n++
				continue
			}
			cells = string([]rune(cells)[1:])
		}
		if row != c.Top+2 {
			assert.Equal(t, c.Cols, n)
		} else {
			assert.Equal(t, c.Cols-4-3, n, "a word before the picture, and in place of a text of others that feigns a part of it three boxes")
		}
	}
	large := Canvas{Map: Map{Cols: pixels.Most + 1, Rows: 5}}
	assert.False(t, large.Pictured())
}

// bare is a line without its colours.
func bare(line string) string {
	var out strings.Builder
	for line != "" {
		before, after, found := strings.Cut(line, "\x1b[")
		out.WriteString(before)
		if !found {
			break
		}
		_, line, _ = strings.Cut(after, "m")
	}
	return out.String()
}

// Shaded floor has the colours of its grades, with edges as fine as the pixels are.
func TestTheShadeHasFineEdges(t *testing.T) {
	s := scene.Scene{Projection: scene.Below.Projection(), Min: pt(0, -900), Max: pt(3000, 900)}
	s.Items = []scene.Item{{Role: scene.Floor, Solid: flat(box(0, 3000, -900, 900)), Ref: -1}}
	round := func(p geometry.Point) scene.Grade {
		if p.Sub(pt(1500, 0)).Norm() < 400 {
			return scene.MuchRoom
		}
		return scene.NoRoom
	}
	look := facesLook
	m := NewMap(s, 100, 40, look.Camera, look.Units)
	look.Shade = NewShade(m, round).Finer(round)
	c, p := painted(s, 100, 40, look, image.Pt(10, 20))
	green, floorTint := opaque(darkly.Faces[looks.MuchRoomFace]), opaque(darkly.Faces[looks.FloorFace])
	mm := c.Scale / 5
	for y := range p.Rect.Dy() {
		for x := range p.Rect.Dx() {
			at := c.Middle().Add(pt((float64(x)+0.5-float64(p.Rect.Dx())/2)*mm, (float64(y)+0.5-float64(p.Rect.Dy())/2)*mm))
			got, off := inkAt(p, x, y), at.Sub(pt(1500, 0)).Norm()-400
			onFloor := math.Abs(at.Y) < 880 && at.X > 20 && at.X < 2980
			if off < -mm && got != green || off > mm && onFloor && got != floorTint {
				t.Fatalf("%d %d, %g mm off: %v", x, y, off, got)
			}
		}
	}
}

// partOf is the text of a cell that shows a part of the picture.
func partOf(col, row int) string { return string(pixels.AppendPlaceholder(nil, col, row)) }
