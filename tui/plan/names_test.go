package plan

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// lookedAt are the sample van's plans as Place and Underneath have them, whole, at the cut and nearer there, in the sizes that they have on the screens.
func lookedAt(t *testing.T, see func(s desk.State, c *canvas.Canvas, what string)) {
	s := demo(t)
	place := Options{Shown: drawing.Worst(s.Result.Findings, func(f *rules.Finding) bool { return f.WithCut() }, 3)}
	for _, size := range [][2]int{{50, 27}, {57, 27}, {58, 27}, {93, 47}, {100, 27}} {
		p, o := New().Sized(size[0], size[1]), place
		if size[0] == 50 {
			o = Options{Follow: true}
		}
		for _, scale := range []float64{0, 20, 12, 8, 5} {
			if s.Camera = (desk.Camera{Whole: true}); scale > 0 {
				s.Camera = p.atCut(s)
				s.Camera.Scale = scale
			}
			c := canvas.Paint(p.draw(s, o), size[0], size[1], canvas.Look{Camera: s.Camera, Faces: true, Left: "left", Right: "right"})
			see(s, &c, fmt.Sprint(size, scale, "\n", ansi.Strip(c.Encode(desk.NoColour, 0))))
		}
	}
}

// sought are what people look for by its name.
var sought = map[scene.Role]bool{scene.Rail: true, scene.Steel: true, scene.Lines: true, scene.Hot: true}

// No name stands on another rail, crossmember, tank or hot thing, which would be read as what that is called: but for the letters of one that
// stands beside its thing, and for the ends of the heater's pipes and of the van, which every picture names.
func TestNoNameStandsOnAnotherThing(t *testing.T) {
	onMoving, moves := 0, map[string]bool{}
	for _, o := range demo(t).Job.Obstructions {
		moves[o.Name] = vehicles.KindOf(o.Kind).Role == scene.Movable
	}
	lookedAt(t, func(s desk.State, c *canvas.Canvas, what string) {
		seen := s.Camera.View.Projection()
		for _, text := range c.Texts {
			words := text.Name + text.Tail
			if utf8.RuneCountInString(words) < 6 || strings.Contains(words, "heater's") || text.Ink.Role == scene.Exhaust || strings.Contains(words, "rear ") || text.Ink.Role == scene.Bumper || text.Ink.Role == scene.Nose {
				continue
			}
			on := map[string]int{}
			for k := range utf8.RuneCountInString(words) {
				at, _ := c.Point(text.Col+k, text.Row)
				if other := under(s, seen.Unproject(at).Plan(), words); other != "" {
					on[other]++
				}
			}
			for other, letters := range on {
				if moves[other] {
					if letters >= utf8.RuneCountInString(words)*3/4 && !strings.ContainsAny(words, "►▼◄▲") {
						onMoving++
					}
					continue
				}
				assert.Less(t, letters, utf8.RuneCountInString(words)*3/4, "%q on %q, %s", words, other, what)
			}
		}
	})
	assert.Zero(t, onMoving, "on what moves, neither")
}

// under is the name of the thing that people look for at a place of the floor, which is not that of a few words; "" for none.
func under(s desk.State, at geometry.Point, words string) (other string) {
	for i := range s.Result.Plan.Obstructions {
		f, o := &s.Result.Plan.Obstructions[i].Prism.Footprint, &s.Job.Obstructions[i]
		switch {
		case !f.Contains(at):
		case strings.Contains(words, o.Name):
			return ""
		case (sought[vehicles.KindOf(o.Kind).Role] || vehicles.KindOf(o.Kind).Role == scene.Movable) && (f.Shape != geometry.Line || f.Radius > 25):
			other = o.Name
		}
	}
	return other
}

// What is out of the picture and looked for is named at its edge with how far that is: the tank, and the nearer rail where none is seen.
func TestWhatLiesBeyondSaysHowFar(t *testing.T) {
	s := demo(t)
	p := New().Sized(120, 14)
	s.Camera = p.atCut(s)
	s.Camera.Scale = 5
	text := ansi.Strip(p.View(s, 120, 14, Options{}))
	lay := p.lay(s, Options{})
	low, high := lay.Corners()
	for i, o := range s.Job.Obstructions {
		f := &s.Result.Plan.Obstructions[i].Prism.Footprint
		from, to := f.Bounds()
		off := max(from.X-high.X, low.X-to.X, from.Y-high.Y, low.Y-to.Y)
		if o.Name == "fuel tank" || o.Name == "chassis rail, left" {
			assert.Positive(t, off, o.Name)
			assert.Regexp(t, fmt.Sprintf("%s %d mm out of view|rail ▼", o.Name, int(off/10+0.5)*10), text)
		}
	}
	assert.Regexp(t, "rail(, right.*)? ▲", text, "the one on the other side is named, too")
	assert.Regexp(t, `heater's exhaust(, outlet)? \d+ mm out of view [►▼◄▲]`, text)
}

// A diamond that nobody explains stands on no plan: the matching points show with the legend, which says what they are.
func TestMatchingPointsShowWithTheLegend(t *testing.T) {
	s := demo(t)
	assert.NotEmpty(t, s.Job.Ties)
	p := New().Sized(160, 40)
	assert.NotContains(t, ansi.Strip(p.View(s, 160, 40, Options{})), "◆")
	p, _, _ = p.Update(typed("l"), s, Options{})
	assert.Regexp(t, `◆[^\n]*\n(.*\n)*.*◆|◆.*◆`, ansi.Strip(p.View(s, 160, 40, Options{})))
}

// What has no name in the picture is explained below it: the signs of holes, the dots of the fuel line.
func TestWhatHasNoNameIsExplainedBelow(t *testing.T) {
	s := demo(t)
	for _, room := range []bool{true, false} {
		p, o := New().Sized(58, 27), Options{Room: room}
		s.Camera = desk.Camera{Whole: true}
		whole := ansi.Strip(p.View(s, 58, 27, o))
		assert.NotContains(t, whole, "ø", "none is seen, none is explained")
		if room {
			assert.Regexp(t, `┈┈ .*fuel`, whole)
		}
		s.Camera = p.atCut(s)
		rows := strings.Split(ansi.Strip(p.View(s, 58, 27, o)), "\n")
		if room {
			assert.Regexp(t, `ø .*hole.*┈┈ .*fuel`, rows[len(rows)-1])
		}
	}
}

// Few leaders go far across the picture: names go to the side of the van that they are on.
func TestLeadersAreShort(t *testing.T) {
	lookedAt(t, func(_ desk.State, c *canvas.Canvas, what string) {
		far := 0
		for col := range c.Width {
			rows := 0
			for row := range c.Height {
				if rows++; c.At(col, row).Rune != '┆' { // which nothing but a leader has
					rows = 0
				}
				if rows == 8 {
					far++
				}
			}
		}
		assert.LessOrEqual(t, far, 2, what)
	})
}

// A name beside which a leader of another ends would be taken for the name of what that goes to.
func TestNoLeaderEndsBesideAnothersName(t *testing.T) {
	const beside = 2
	ends := 0
	lookedAt(t, func(_ desk.State, c *canvas.Canvas, what string) {
		for _, text := range c.Texts {
			long := utf8.RuneCountInString(text.Name) + utf8.RuneCountInString(text.Tail)
			for col := max(text.Col-beside, 0); col < min(text.Col+long+beside, c.Width); col++ {
				if c.At(col, text.Row).Rune == '•' {
					ends++
					t.Log(what, text.Name)
				}
			}
		}
	})
	assert.Zero(t, ends)
}

// However few rows a pane has, the ring is whole in it.
func TestTheRingIsWholeInTheSmallestPane(t *testing.T) {
	for _, y := range []string{"195", "230", "-100", "0"} {
		s := demo(t)
		cut := *s.Job.Cut
		cut.At[1], _ = strconv.ParseFloat(y, 64)
		result, faults := rules.Judge(s.Job.WithCut(cut), rules.Builtin())
		assert.Empty(t, faults)
		s.Job, s.Result = result.Job, result
		for _, h := range []int{canvas.MinHeight, 7, 8, 9, 12} {
			p := New().Sized(60, h)
			lay := p.lay(s, Options{})
			_, north := lay.Corners()
			south, _ := lay.Corners()
			at := s.Camera.View.Projection().Point(s.Result.Plan.Cut.At.At(0))
			assert.GreaterOrEqual(t, north.Y-at.Y, cut.Across/2, "%d rows, y %s", h, y)
			assert.GreaterOrEqual(t, at.Y-south.Y, cut.Across/2, "%d rows, y %s", h, y)
		}
	}
}

// How far out of the view a thing is says so: a figure with "farther" or "on" was asked about, from what.
func TestFiguresSayFromWhat(t *testing.T) {
	told := regexp.MustCompile(`(\d|mm) (farther|on)\b`)
	out := 0
	lookedAt(t, func(_ desk.State, c *canvas.Canvas, what string) {
		for _, text := range c.Texts {
			words := text.Name + text.Tail
			assert.NotRegexp(t, told, words, what)
			out += strings.Count(words, " mm out of view")
		}
	})
	assert.Positive(t, out)
}
