package canvas

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
)

var views = map[scene.View]string{scene.Below: "below", scene.Above: "above"}

// lines are the picture's characters without colours.
func (c Canvas) lines() []string {
	lines := make([]string, c.Height)
	runes := make([]rune, c.Width)
	for row := range lines {
		for col := range runes {
			runes[col] = c.At(col, row).Rune
		}
		lines[row] = string(runes)
	}
	return lines
}

// The pictures were looked at; run with UPDATE_GOLDEN=1 to write them anew.
func TestGoldenPictures(t *testing.T) {
	for view, name := range views {
		for _, size := range [][2]int{{60, 17}, {100, 27}, {160, 47}} {
			file := filepath.Join("testdata", fmt.Sprintf("van-%s-%dx%d.txt", name, size[0], size[1]))
			t.Run(file, func(t *testing.T) {
				got := strings.Join(Paint(van(view), size[0], size[1], plainLook).lines(), "|\n") + "|\n"
				if os.Getenv("UPDATE_GOLDEN") != "" {
					require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
				}
				want, err := os.ReadFile(file)
				require.NoError(t, err)
				assert.Equal(t, string(want), got)
			})
		}
	}
}

func TestAnySizeIsFilledExactly(t *testing.T) {
	for _, size := range [][2]int{{0, 0}, {1, 1}, {7, 3}, {39, 5}, {40, 6}, {60, 9}, {63, 20}, {64, 20}, {70, 21}, {71, 22}, {333, 100}} {
		for view := range views {
			lines := Paint(van(view), size[0], size[1], plainLook).lines()
			require.Len(t, lines, size[1])
			for _, line := range lines {
				require.Equal(t, size[0], utf8.RuneCountInString(line))
				require.Equal(t, size[0], ansi.StringWidth(line), "a terminal counts columns otherwise: %q", line)
			}
		}
	}
}

// unnamed leaves out what is written, which reads the same in both views.
func unnamed(s scene.Scene) scene.Scene {
	items := s.Items[:0:0]
	for _, it := range s.Items {
		it.Label, it.Code, it.Measure = "", "", nil
		if it.Primitive != scene.Spot {
			items = append(items, it)
		}
	}
	s.Items = items
	return s
}

func TestBelowIsAboveMirrored(t *testing.T) {
	turned := map[rune]rune{' ': ' '}
	for dots := range upright {
		turned[upright[dots]] = mirrored[dots]
		turned[blockTable().all[dots].char] = blockTable().all[turnedOver(uint8(dots))].char
	}
	for arms := range 16 {
		over := arms&^(north|south) | arms&north<<2 | arms&south>>2
		turned[pieces[0][arms]], turned[pieces[1][arms]] = pieces[0][over], pieces[1][over]
	}
	for _, dashes := range broken {
		turned[dashes[0]], turned[dashes[1]] = dashes[0], dashes[1]
	}
	for _, size := range [][2]int{{60, 17}, {100, 27}, {161, 46}} {
		above := Paint(unnamed(van(scene.Above)), size[0], size[1], plainLook)
		below := Paint(unnamed(van(scene.Below)), size[0], size[1], plainLook)
		for _, c := range []*Canvas{&above, &below} {
			for _, text := range c.Texts { // what is said of the ring's size stands where there is room for it
				c.Put(text.Col, text.Row, strings.Repeat(" ", utf8.RuneCountInString(text.Name)), Ink{})
			}
		}
		compared := 0
		for row := range above.Rows {
			for col := range above.Cols {
				a := above.At(above.Left+col, above.Top+row)
				b := below.At(below.Left+col, below.Top+below.Rows-1-row)
				want, ok := turned[a.Rune]
				require.True(t, ok, "%q can't be turned over", a.Rune)
				require.Equal(t, string(want), string(b.Rune), "row %d, column %d", row, col)
				require.Equal(t, a.Ground, b.Ground)
				compared++
			}
		}
		require.Greater(t, compared, size[0]*size[1]/2)
	}
}

func TestEveryViewSaysWhereItIsSeenFrom(t *testing.T) {
	for _, c := range []struct {
		view               scene.View
		title, top, bottom string
		leftAtTop          bool
	}{
		{scene.Below, "SEEN FROM BELOW", "▲ van's right", "▼ van's left", false},
		{scene.Above, "SEEN FROM ABOVE", "▲ van's left", "▼ van's right", true},
	} {
		p := Paint(van(c.view), 60, 17, plainLook)
		lines := p.lines()
		assert.Contains(t, lines[0], c.title)
		assert.Contains(t, lines[0], "◄ bumper")
		assert.Contains(t, lines[0], c.top)
		assert.True(t, strings.HasSuffix(lines[0], "nose ►"))
		assert.Contains(t, lines[16], c.bottom)
		_, left, _ := p.Cell(pt(1000, 800))
		_, right, _ := p.Cell(pt(1000, -800))
		assert.Equal(t, c.leftAtTop, left < right)
	}
}

// Whoever lies under a van with the head to the rear has the left hand at the van's left: the foot line says so. The head points
// to -x and the face to +z; the left hand is towards head x face, as for anyone standing: z x x = y.
func TestTheFootSaysWhoseHandIsAtTheBottom(t *testing.T) {
	head, face := geometry.Point3{X: -1}, geometry.Point3{Z: 1}
	left := geometry.Point3{
		X: head.Y*face.Z - head.Z*face.Y, Y: head.Z*face.X - head.X*face.Z, Z: head.X*face.Y - head.Y*face.X,
	}
	require.Equal(t, geometry.Point3{Y: 1}, left, "the left hand is at the van's left")
	p := Paint(van(scene.Below), 100, 27, plainLook)
	assert.Contains(t, strings.Join(p.lines(), "\n"), "▼ van's left: your left hand, head at the bumper")
	_, vanLeft, _ := p.Cell(pt(1000, 800))
	_, vanRight, _ := p.Cell(pt(1000, -800))
	assert.Less(t, vanRight, vanLeft, "and the van's left is at the bottom")
}

func TestRulersReadWhatTheTapeReads(t *testing.T) {
	for _, c := range []struct {
		units survey.Units
		mm    float64
		text  string
	}{{survey.Millimetres, 1500, "1500"}, {survey.Inches, 50 * 25.4, "50"}} {
		p := Paint(van(scene.Below), 100, 27, Look{Units: c.units, Left: "left", Right: "right"})
		col, _, ok := p.Cell(pt(c.mm, 0))
		require.True(t, ok)
		line := []rune(p.lines()[p.Top+p.Rows])
		assert.Equal(t, "─"+c.text+"┴─", string(line[col-len(c.text)-1:col+2]), "it ends at its tick, which stands at what it counts")
	}
	p := Paint(van(scene.Below), 100, 27, plainLook)
	_, row, _ := p.Cell(pt(0, -500))
	assert.True(t, strings.HasPrefix(p.lines()[row], " -500┤"))
}

func TestNoWordCoversTheCut(t *testing.T) {
	for _, scale := range []float64{0, 12, 6, 3, 1.5} {
		for view := range views {
			look := plainLook
			look.Camera = desk.Camera{Middle: pt(1210, 240), Scale: scale}
			p := Paint(van(view), 100, 27, look)
			for row := range p.Height {
				for col := range p.Width {
					at, ok := p.Point(col, row)
					if r := p.At(col, row).Rune; ok && at.Sub(pt(1210, 240)).Norm() < 63.5 {
						own := p.At(col, row).Ink.Role == scene.Cut && strings.ContainsRune("cut127mmtoscale", r) // its own name, how large it is, and that it is drawn so
						assert.False(t, !own && (unicode.IsLetter(r) || unicode.IsDigit(r)), "%q at scale %g", r, scale)
					}
				}
			}
		}
	}
}

func TestNamesFromAFileCannotSteerTheTerminal(t *testing.T) {
	s := van(scene.Below)
	s.Items[1].Label = "wheel\x1b[2J\n車\u0301\u202e\u00ad\u05b0"
	p := Paint(s, 100, 27, plainLook)
	all := strings.Join(p.lines(), "\n")
	assert.Contains(t, all, "wheel␛[2J␊▯▯▯")
	for _, line := range strings.Split(ansi.Strip(p.Encode(desk.TrueColour, looks.Dark)), "\n") {
		assert.Equal(t, 100, ansi.StringWidth(line))
	}
}

func TestWhatIsWrongIsSaidWithoutColourToo(t *testing.T) {
	all := strings.Join(Paint(van(scene.Below), 160, 47, plainLook).lines(), "\n")
	for _, want := range []string{"rear crossmember!", "brake pipe, right?", "loom?"} {
		assert.Contains(t, all, want)
	}
	look := plainLook
	look.Codes = true
	coded := strings.Join(Paint(van(scene.Below), 160, 47, look).lines(), "\n")
	for _, code := range []string{"C!", "B?", "W?"} {
		assert.NotContains(t, all, code, "letters are shown when asked for")
		assert.Contains(t, coded, code)
	}
}

// A figure is written in the units of whoever looks; what is no length has one way to be written.
func TestFiguresAreWrittenInTheUnitsOfWhoeverLooks(t *testing.T) {
	for _, c := range []struct {
		m          scene.Measure
		mm, inches string
	}{
		{scene.Measure{Value: 287.96, Unit: scene.MM}, "288 mm", `11 5/16"`},
		{scene.Measure{Value: 6.45, Unit: scene.MM, Bare: true}, "6.5", `1/4"`},
		{scene.Measure{Value: 151.26, Unit: "deg"}, "151.3°", "151.3°"},
		{scene.Measure{Value: 2.5}, "2.5u²", "2.5u²"},
	} {
		for units, want := range map[survey.Units]string{survey.Millimetres: c.mm, survey.Inches: c.inches} {
			s := hanging(scene.Below.Projection(), pt(-30, -920), pt(1530, 920))
			s.Items = append(s.Items, scene.Item{
				Role: scene.Dimension, Primitive: scene.Stroke, Path: way(pt(300, -600), pt(600, -600)), Measure: &c.m,
			})
			look := plainLook
			look.Units = units
			assert.Contains(t, strings.Join(Paint(s, 100, 27, look).lines(), "\n"), " "+want+" ")
		}
	}
}

// Cells have a way to show whatever a pen may ask for, and a colour for each role.
func TestEveryPenCanBePainted(t *testing.T) {
	seen := map[string]scene.Role{}
	for i := range scene.Roles {
		role := scene.Role(i)
		assert.True(t, (marks[role] == looks.Foul) == (role == scene.Conflict), "role %d has no colour", role) // foul is what a role has that has none
		switch pen := role.Pen(); pen.Told {
		case scene.ByFill, scene.ByLine:
			c := Canvas{Width: 4, Height: 1, Cells: make([]Cell, 4)}
			c.Patch(0, 0, 4, role)
			line := c.lines()[0]
			if pen.Weight == scene.Fine {
				assert.NotContains(t, seen, line, "role %d looks like role %d", role, seen[line])
				seen[line] = role
			}
		case scene.BySign:
			sign := Sign(role)
			assert.Equal(t, 1, ansi.StringWidth(sign))
			assert.NotContains(t, seen, sign, "role %d looks like role %d", role, seen[sign])
			seen[sign] = role
		}
	}
}
