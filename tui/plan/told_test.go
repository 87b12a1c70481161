package plan

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
)

// inSmallest is lookedAt with the picture that the smallest screen has, which looks at the cut.
func inSmallest(t *testing.T, see func(s desk.State, c *canvas.Canvas, what string)) {
	lookedAt(t, see)
	s := demo(t)
	o := Options{Shown: drawing.Worst(s.Result.Findings, func(f *rules.Finding) bool { return f.WithCut() }, 3)}
	p := New().Sized(60, 8)
	shown := p.draw(s, o)
	c := canvas.Paint(shown, 60, 8, canvas.Look{Camera: p.camera(shown, s, o), Faces: true, Left: "left", Right: "right"})
	see(s, &c, "60x8\n"+ansi.Strip(c.Encode(desk.NoColour, 0)))
}

// Both chassis rails, from which all else is found, are named in every picture: on them, or at the edge beyond which they are; below one of few rows.
func TestBothRailsAreNamed(t *testing.T) {
	inSmallest(t, func(_ desk.State, c *canvas.Canvas, what string) {
		named := 0
		for _, text := range c.Texts {
			if text.Ink.Role == scene.Rail && strings.Contains(text.Name, "rail") {
				named++
			}
		}
		if c.Height < 12 {
			assert.Regexp(t, `rails ▲ ?\d+ ▼ ?\d+ .*mm out of view`, what)
			return
		}
		assert.Equal(t, 2, named, what)
	})
}

// The cut's name says how far it is across, however large its ring is drawn.
func TestTheCutSaysHowLargeItIs(t *testing.T) {
	inSmallest(t, func(_ desk.State, c *canvas.Canvas, what string) {
		if c.Enlarged(63.5) {
			assert.Contains(t, what, "cut 127")
		}
	})
}

// No name stands in a row with a line of another thing, as if it were that line's.
func TestNoNameIsTheCaptionOfAnotherLine(t *testing.T) {
	lookedAt(t, func(_ desk.State, c *canvas.Canvas, what string) {
		for _, text := range c.Texts {
			length := utf8.RuneCountInString(text.Name + text.Tail)
			if length < 4 || text.Row < c.Top || text.Row >= c.Top+c.Rows {
				continue
			}
			for _, col := range [2]int{text.Col - 1, text.Col + length} {
				if col < c.Left || col >= c.Left+c.Cols {
					continue
				}
				beside := c.At(col, text.Row)
				if strings.ContainsRune("─━╌╍", beside.Rune) && beside.Ink.Role == scene.Lines {
					assert.Equal(t, text.Ink.Role, beside.Ink.Role, "%q, %s", text.Name, what)
				}
			}
		}
	})
}
