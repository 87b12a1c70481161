package canvas

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
)

// Two pipes across the cut, of which one is in its way: the face of what is foul is where that one crosses the ring, nowhere else. That one is
// red and heavy on either side of the ring, as that may cover it whole; farther off, and the other everywhere, they keep the colour of pipes.
func TestRedIsOnlyWhereTheThingIsInTheWay(t *testing.T) {
	pipe := func(x float64, state scene.State) scene.Item {
		return scene.Item{Role: scene.Lines, Code: "B", State: state, Solid: flat(line(4, pt(x, -400), pt(x, 400)))}
	}
	s := scene.Scene{Projection: scene.Below.Projection(), Min: pt(0, -500), Max: pt(2000, 500), Items: []scene.Item{
		{Role: scene.Floor, Solid: flat(box(0, 2000, -500, 500))},
		pipe(960, scene.Foul), pipe(1040, scene.Plain),
		{Role: scene.Cut, Primitive: scene.Outline, Solid: flat(geometry.NewRound(pt(1000, 0), 63.5))},
	}}
	look := plainLook
	look.Faces, look.Camera = true, desk.Camera{Middle: pt(1000, 0), Scale: 4}
	p := Paint(s, 100, 33, look)
	inWay, crossed, red := 0, 0, 0
	for row := p.Top; row < p.Top+p.Rows; row++ {
		for col := p.Left; col < p.Left+p.Cols; col++ {
			cell, at := p.At(col, row), func() geometry.Point { q, _ := p.Point(col, row); return q }()
			if cell.Ground.Role == scene.Conflict {
				inWay++
				assert.InDelta(t, 960, at.X, 12, "only the pipe that is in the way")
				assert.LessOrEqual(t, at.Sub(pt(1000, 0)).Norm(), 63.5+16.0, "only within the ring")
			} else if cell.Rune == '│' {
				crossed++
				assert.NotEqual(t, scene.Foul, cell.Ink.State, "a pipe has the colour of pipes at %v", at)
			} else if cell.Rune == '▌' && cell.Ink.Role == scene.Lines {
				red++
				assert.Equal(t, scene.Foul, cell.Ink.State, "what is heavy is foul at %v", at)
				assert.InDelta(t, 960, at.X, 12, "only the pipe that is in the way")
				assert.LessOrEqual(t, at.Sub(pt(1000, 0)).Norm(), nearRing*63.5+1, "only near the ring")
			}
		}
	}
	assert.Positive(t, inWay)
	assert.Greater(t, crossed, 20)
	assert.Greater(t, red, 4)
}

// A leader is quiet, whatever colour its name and its end have, and has a pen that nothing else has, whatever it goes to: it would be taken for a pipe.
func TestALeaderIsNoPipe(t *testing.T) {
	p := &painter{}
	p.begin(van(scene.Below), 100, 27, plainLook)
	p.put(label{name: "fuel tank", ink: Ink{Role: scene.Lines, Tone: Bold}}, seat{col: 42, row: 4, align: byStart, led: true, of: [2]int{40, 9}})
	assert.Equal(t, Ink{Role: scene.Lines, Tone: Bold}, p.canvas.At(42, 4).Ink)
	for row := 4; row < 9; row++ {
		assert.Equal(t, quiet, p.canvas.At(40, row).Ink, "row %d", row)
	}
	assert.Equal(t, '╭', p.canvas.At(40, 4).Rune)
	for row := 5; row < 9; row++ {
		assert.Equal(t, leaderUpright, p.canvas.At(40, row).Rune, "row %d", row)
	}
	assert.Equal(t, leaderEnd, p.canvas.At(40, 9).Rune, "it ends on what it is of")
	assert.Equal(t, Ink{Role: scene.Lines}, p.canvas.At(40, 9).Ink)
	for _, style := range []style{light, heavy, lightDashed, lightDotted, heavyDashed} {
		for arms := range uint8(16) {
			s := stroke{arms: arms, style: style}
			assert.NotContains(t, []rune{leaderUpright, leaderLying, leaderEnd}, s.char())
		}
	}
}

// What the leader of a name that stands off ends on is the thing itself, where that is seen: neither the ring nor what lies over the thing.
func TestALeaderEndsOnItsThing(t *testing.T) {
	look := plainLook
	look.Faces = true
	for _, scale := range []float64{0, 12, 6, 3} {
		look.Camera = desk.Camera{Middle: pt(1210, 240), Scale: scale}
		var p Painter
		c := p.Paint(van(scene.Below), 160, 47, look)
		for _, text := range c.Texts {
			if !text.led || text.Ink.Role != scene.Rail && text.Ink.Role != scene.Steel {
				continue
			}
			assert.Equal(t, leaderEnd, c.At(text.of[0], text.of[1]).Rune, "%s at %g", text.Name, scale)
			assert.False(t, p.ringed(text.of[0], text.of[1]), "%s at %g", text.Name, scale)
			assert.Zero(t, p.strokes.cells[text.of[1]*c.Width+text.of[0]].arms, "%s at %g: not on a pipe that passes over it", text.Name, scale)
		}
	}
}

// A hole that is foul is marked however far away, where it is and nowhere else; under a ring that is drawn larger than the cut it is left out. How much
// larger that is is said.
func TestAFoulHoleIsMarkedWhereItIs(t *testing.T) {
	marked, left := 0, 0
	for _, hole := range []geometry.Point{pt(1160, 190), pt(1075, 190), pt(1210, 340)} {
		s := van(scene.Below)
		s.Items = append(s.Items, scene.Item{Role: scene.Hole, State: scene.Foul, Primitive: scene.Outline, Solid: flat(geometry.NewRound(hole, 4)), Label: "bolt hole 1"})
		for _, size := range [][2]int{{60, 17}, {100, 27}, {160, 47}} {
			var p Painter
			c := p.Paint(s, size[0], size[1], plainLook)
			col, row, _ := c.Cell(hole)
			var marks [][2]int
			for i, cell := range c.Cells {
				if cell.Ink.Role == scene.Hole && cell.Ink.State == scene.Foul && string(cell.Rune) == Sign(scene.Hole) {
					marks = append(marks, [2]int{i % c.Width, i / c.Width})
				}
			}
			if p.ringed(col, row) || p.onRing(col, row) {
				left++
				assert.Empty(t, marks, "%v %v", size, hole)
			} else {
				marked++
				assert.Equal(t, [][2]int{{col, row}}, marks, "%v %v", size, hole)
			}
			larger := c.Enlarged(63.5)
			assert.Equal(t, larger, strings.Contains(strings.Join(c.lines(), "\n"), enlargedRing), "%v", size)
			if larger {
				assert.Contains(t, strings.Join(c.lines(), "\n"), fmt.Sprintf("ring drawn %.1f times its size", c.ring/63.5))
			}
		}
	}
	assert.Positive(t, marked)
	assert.Positive(t, left)
	look := plainLook
	look.Camera = desk.Camera{Middle: pt(1210, 240), Scale: 1.5}
	near := Paint(van(scene.Below), 100, 27, look)
	assert.NotContains(t, strings.Join(near.lines(), "\n"), enlargedRing)
}

// No name stands where the screen puts a sign of its own: it would lose a letter.
func TestNoNameStandsUnderASign(t *testing.T) {
	s := van(scene.Below)
	bare := Paint(s, 100, 27, plainLook)
	look := plainLook
	covered := func(c *Canvas, text Text, at geometry.Point3) bool {
		col, row, ok := c.CellOf(at)
		return ok && !text.down && row == text.Row && col >= text.Col && col < text.Col+len([]rune(text.Name+text.Tail))
	}
	for _, text := range bare.Texts { // a sign under the second letter of each name
		if at, ok := bare.Point(text.Col+1, text.Row); ok && !text.down && len(text.Name) > 1 {
			look.Signs = append(look.Signs, at.At(0))
		}
	}
	signed := Paint(s, 100, 27, look)
	names := 0
	for _, text := range signed.Texts {
		if len(text.Name) < 2 {
			continue
		}
		names++
		for _, at := range look.Signs {
			assert.False(t, covered(&signed, text, at), text.Name)
		}
	}
	assert.Greater(t, names, 3)
}

// A ring that is larger than the cut may touch what the cut is clear of: the note that says so says, too, that what is in the way is red, where something
// is, where there is room for it, and where there are faces to be red.
func TestALargerRingSaysWhatIsInTheWay(t *testing.T) {
	const red = " times its size: red is in its way"
	for _, c := range []struct {
		state scene.State
		faces bool
		w     int
		says  bool
	}{{scene.Foul, true, 100, true}, {scene.Clear, true, 100, false}, {scene.Foul, false, 100, false}, {scene.Foul, true, MinWidth, false}} {
		s := scene.Scene{Projection: scene.Below.Projection(), Min: pt(0, -900), Max: pt(6000, 900), Items: []scene.Item{
			{Role: scene.Lines, Code: "B", State: c.state, Solid: flat(line(20, pt(900, -400), pt(1100, 400)))},
			{Role: scene.Cut, Primitive: scene.Outline, Solid: flat(geometry.NewRound(pt(1000, 0), 63.5))},
		}}
		look := plainLook
		look.Faces = c.faces
		p := Paint(s, c.w, 27, look)
		text := strings.Join(p.lines(), "\n")
		assert.Contains(t, text, enlargedRing)
		assert.Equal(t, c.says, strings.Contains(text, red), text)
	}
}

// A pipe that ends past the cut, but under a ring that is drawn larger, comes out of the ring with a short end; one that ends before the cut or in it does
// not.
func TestWhatCrossesTheCutComesOutOfTheRing(t *testing.T) {
	for _, c := range []struct {
		end float64
		out bool
	}{{110, true}, {80, true}, {40, false}, {-80, false}} {
		s := scene.Scene{Projection: scene.Below.Projection(), Min: pt(0, -900), Max: pt(3000, 900), Items: []scene.Item{
			{Role: scene.Floor, Solid: flat(box(0, 3000, -900, 900))},
			{Role: scene.Lines, Code: "B", State: scene.Foul, Solid: flat(line(4, pt(1000, -500), pt(1000, c.end)))},
			{Role: scene.Cut, Primitive: scene.Outline, Solid: flat(geometry.NewRound(pt(1000, 0), 63.5))},
		}}
		look := plainLook
		look.Faces, look.Camera = true, desk.Camera{Middle: pt(1000, 0), Scale: 36}
		var p Painter
		canvas := p.Paint(s, 100, 27, look)
		ends := 0
		for row := canvas.Top; row < canvas.Top+canvas.Rows; row++ {
			for col := canvas.Left; col < canvas.Left+canvas.Cols; col++ {
				if cell := canvas.At(col, row); cell.Ink.Role == scene.Lines && cell.Rune == '╹' {
					ends++
					at, _ := canvas.Point(col, row)
					assert.Greater(t, at.Y, 63.5, "on the side where the pipe ends")
					assert.Equal(t, scene.Foul, cell.Ink.State)
					assert.True(t, p.onRing(col, row-1), "next to the ring")
				}
			}
		}
		assert.Equal(t, c.out, ends == 1, "an end at %g: %d", c.end, ends)
	}
}

// A name beside its thing has something of that next to it: it would point at nothing. One over its thing leaves some of it in sight.
func TestANameIsNextToWhatIsSeenOfItsThing(t *testing.T) {
	p := &painter{}
	look := plainLook
	look.Faces = true
	s := scene.Scene{Projection: scene.Below.Projection(), Min: pt(0, -900), Max: pt(3000, 900), Items: []scene.Item{
		{Role: scene.Floor, Solid: flat(box(0, 3000, -900, 900))},
		{Role: scene.Steel, Code: "C", Label: "member", Solid: flat(box(1400, 1500, -600, 600))},
	}}
	p.begin(s, 100, 27, look)
	p.areas()
	p.develop()
	var of *part
	for i := range p.parts {
		if p.parts[i].Role == scene.Steel {
			of = &p.parts[i]
		}
	}
	col, row, _ := p.Cell(pt(1450, 0))
	beside := seat{col: col + 3, row: row, align: byStart}
	assert.False(t, p.astray(of, beside, len("member")))
	assert.True(t, p.astray(of, seat{col: col + 12, row: row, align: byStart}, len("member")), "too far off")
	for y := row - 1; y <= row+1; y++ {
		for x := col - 3; x <= col+3; x++ {
			p.taken.add(y*p.canvas.Width + x)
		}
	}
	assert.True(t, p.astray(of, beside, len("member")), "other names hide it")
	assert.False(t, p.buries(of, len("member")))
	of.Area = box(1400, 1500, -30, 30)
	assert.True(t, p.buries(of, len("member")))
}

// The mark of a line in the way stands in the ring on that line, also where the ring is drawn larger than the cut is and hides the place itself.
func TestAConflictIsMarkedOnItsLine(t *testing.T) {
	marked := 0
	for _, scale := range []float64{8, 14, 18, 24, 36} {
		for off := -55.0; off <= 55; off += 11 {
			s := scene.Scene{Projection: scene.Below.Projection(), Min: pt(0, -900), Max: pt(3000, 900), Items: []scene.Item{
				{Role: scene.Floor, Solid: flat(box(0, 3000, -900, 900))},
				{Role: scene.Lines, Code: "B", Label: "pipe", State: scene.Foul, Solid: flat(line(4, pt(1000+off, -500), pt(1000+off, 500)))},
				{Role: scene.Cut, Primitive: scene.Outline, Solid: flat(geometry.NewRound(pt(1000, 0), 63.5))},
				{Role: scene.Conflict, Primitive: scene.Spot, At: pt(1000+off, 0).At(0), Label: "pipe"},
			}}
			look := facesLook
			look.Camera = desk.Camera{Middle: pt(1000+scale*math.Mod(off, 3), scale*math.Mod(off, 4)), Scale: scale}
			var p Painter
			c := p.Paint(s, 100, 27, look)
			red, on, where := 0, 0, ""
			for row := c.Top; row < c.Top+c.Rows; row++ {
				for col := c.Left; col < c.Left+c.Cols; col++ {
					line := p.strokes.cells[row*c.Width+col]
					onIt := line.foul && line.arms != 0
					if onIt && p.ringed(col, row) && !p.onRing(col, row) {
						red++
					}
					if c.At(col, row).Rune == '╳' {
						marked++
						where = fmt.Sprint(col, row, " ")
						assert.True(t, onIt, "%g mm off, scale %g: marked at %s", off, scale, where)
						on++
					}
				}
			}
			assert.LessOrEqual(t, on, 1, "%g mm off, scale %g", off, scale)
			assert.True(t, red == 0 || on == 1, "%g mm off, scale %g: marked at %s", off, scale, where)
		}
	}
	assert.Greater(t, marked, 20)
}

// Round a ring that is drawn larger than the cut is, that mark stands on the ring, where the thing crosses it as it is drawn: a pipe, or the edge of a beam; the
// ring stays whole round it. What does not cross it is marked in it or beside it, as it is round one to scale.
func TestAConflictIsMarkedOnALargerRing(t *testing.T) {
	larger := 0
	for name, shape := range map[string]geometry.Footprint{"pipe": line(4, pt(1020, -500), pt(1020, 500)), "beam": box(900, 980, -500, 500)} {
		for _, scale := range []float64{6, 14, 18, 24, 36} {
			s := scene.Scene{Projection: scene.Below.Projection(), Min: pt(0, -900), Max: pt(3000, 900), Items: []scene.Item{
				{Role: scene.Floor, Solid: flat(box(0, 3000, -900, 900))},
				{Role: scene.Steel, Code: "C", Label: name, State: scene.Foul, Solid: flat(shape)},
				{Role: scene.Cut, Primitive: scene.Outline, Solid: flat(geometry.NewRound(pt(1000, 0), 63.5))},
				{Role: scene.Conflict, Primitive: scene.Spot, At: pt(980, 0).At(0), Label: name},
			}}
			look := facesLook
			look.Camera = desk.Camera{Middle: pt(1000, 0), Scale: scale}
			var p Painter
			c := p.Paint(s, 100, 27, look)
			onRing := 0
			for row := c.Top; row < c.Top+c.Rows; row++ {
				for col := c.Left; col < c.Left+c.Cols; col++ {
					if c.At(col, row).Rune == '╳' && p.onRing(col, row) {
						onRing++
						cell := p.box(col, row, 1)
						assert.Zero(t, geometry.Apart(&cell, &shape), "%s, scale %g", name, scale)
					}
				}
			}
			if c.Enlarged(63.5) {
				larger++
				assert.Equal(t, 1, onRing, "%s, scale %g", name, scale)
			} else {
				assert.Zero(t, onRing, "%s, scale %g", name, scale)
			}
		}
	}
	assert.Equal(t, 8, larger)
}

// A name that stands on another thing's line is parted from what goes on of it; from its own, and from a line in the way, it is not.
func TestANameIsPartedFromAnotherThingsLine(t *testing.T) {
	for _, c := range []struct {
		own, foul bool
		want      string
	}{{false, false, "──  loom  ──"}, {true, false, "────loom────"}, {false, true, "────loom────"}} {
		p := &painter{}
		p.begin(van(scene.Below), 100, 27, plainLook)
		for col := 36; col < 48; col++ {
			p.strokes.cells[4*p.canvas.Width+col] = stroke{arms: east | west, of: 7, foul: c.foul, ink: Ink{Role: scene.Lines}}
			p.canvas.Put(col, 4, "─", Ink{Role: scene.Lines})
		}
		l := label{name: "loom", ink: Ink{Role: scene.Lines, Tone: Bold}, names: &part{stroke: 3}}
		if c.own {
			l.names.stroke = 7
		}
		p.put(l, seat{col: 40, row: 4, align: byStart})
		got := ""
		for col := 36; col < 48; col++ {
			got += string(p.canvas.At(col, 4).Rune)
		}
		assert.Equal(t, c.want, got)
	}
}
