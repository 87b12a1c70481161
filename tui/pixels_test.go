package tui

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"image"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/ansi/kitty"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
	"bench.example/undermark/tui/pixels"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
	"bench.example/undermark/vehicles/harmless"
)

// gallery is a terminal that shows pictures, and those that it was sent.
type gallery struct {
	*pixels.Terminal
	sent chan []byte // picture by picture
}

func newGallery(t testing.TB, cell image.Point) *gallery {
	from, to, err := os.Pipe()
	require.NoError(t, err)
	g := &gallery{sent: make(chan []byte, 100)}
	go g.read(from)
	t.Cleanup(func() { _ = to.Close() })
	g.Terminal = screentest.Answering(t, to, cell)
	return g
}

// read takes apart what is sent into pictures.
func (g *gallery) read(from *os.File) {
	var all []byte
	for b := make([]byte, 1<<16); ; {
		n, err := from.Read(b)
		all = append(all, b[:n]...)
		for {
			first := bytes.Index(all, []byte(ansi.SetModeSynchronizedOutput))
			end := bytes.Index(all, []byte(ansi.ResetModeSynchronizedOutput))
			if first < 0 || end < 0 {
				break
			}
			g.sent <- bytes.Clone(all[first:end])
			all = all[end+len(ansi.ResetModeSynchronizedOutput):]
		}
		if err != nil {
			return
		}
	}
}

// next is the next picture, and how many cells it fills.
func (g *gallery) next(t testing.TB) (p image.Image, cols, rows int) {
	t.Helper()
	select {
	case sent := <-g.sent:
		return decodedPicture(t, sent)
	case <-time.After(20 * time.Second):
		require.Fail(t, "no picture came")
		return nil, 0, 0
	}
}

// none makes sure that no picture was sent.
func (g *gallery) none(t testing.TB) {
	t.Helper()
	select {
	case <-g.sent:
		require.Fail(t, "a picture was sent")
	case <-time.After(150 * time.Millisecond):
	}
}

var piece = regexp.MustCompile("\x1b_G([^;]*);([^\x1b]*)\x1b\\\\")

// decodedPicture takes a picture apart by the protocol's rules.
func decodedPicture(t testing.TB, sent []byte) (p image.Image, cols, rows int) {
	t.Helper()
	var text strings.Builder
	options := map[string]int{}
	for i, m := range piece.FindAllSubmatch(sent, -1) {
		text.Write(m[2])
		for option := range strings.SplitSeq(string(m[1]), ",") {
			name, value, _ := strings.Cut(option, "=")
			if n, err := strconv.Atoi(value); err == nil && i == 0 {
				options[name] = n
			}
		}
	}
	require.Equal(t, pixels.ID, options["i"])
	require.Equal(t, 1, options["U"])
	data, err := base64.StdEncoding.DecodeString(text.String())
	require.NoError(t, err)
	d := kitty.Decoder{Decompress: true, Format: options["f"], Width: options["s"], Height: options["v"]}
	p, err = d.Decode(bytes.NewReader(data))
	require.NoError(t, err)
	return p, options["c"], options["r"]
}

// inPixels is a program at work in a terminal that shows pictures.
func inPixels(t testing.TB, path string, w, h int, screen string) (*Root, *gallery) {
	r := working(t, path)
	g := newGallery(t, image.Pt(10, 20))
	r.desk.State.Pixels = g.Terminal
	r.Update(tea.WindowSizeMsg{Width: w, Height: h})
	r.goTo(r.titled(screen))
	return r, g
}

// A key that does not change the picture sends none; one that does sends one, and so does what changes its place or its colours.
func TestAPictureIsSentWhenItChanges(t *testing.T) {
	r, g := inPixels(t, "", 100, 30, "Place")
	_ = r.View()
	first, cols, rows := g.next(t)
	press := func(names ...string) image.Image {
		for _, name := range names {
			msg, known := keyNamed(name)
			require.True(t, known)
			r.Update(msg)
			_ = r.View()
		}
		p, _, _ := g.next(t)
		return p
	}
	for _, name := range []string{"s", "pgdown", "?", "esc", "s"} {
		msg, _ := keyNamed(name)
		r.Update(msg)
		_ = r.View()
	}
	r.Update(tea.MouseMsg{X: 3, Y: 3, Action: tea.MouseActionMotion})
	_ = r.View()
	g.none(t)
	moved := press("up")
	assert.NotEqual(t, first, moved)
	press("v")
	assert.Equal(t, moved, press("v"), "from below again")
	r.goTo(r.titled("Marks"))
	_ = r.View()
	r.goTo(r.titled("Place"))
	_ = r.View()
	g.none(t)
	r.desk.State.Settings.Look = looks.Light
	_ = r.View()
	light, c, n := g.next(t)
	assert.NotEqual(t, moved, light)
	assert.Equal(t, [2]int{cols, rows}, [2]int{c, n})
	r.Update(tea.WindowSizeMsg{Width: 120, Height: 40})
	_ = r.View()
	_, c, n = g.next(t)
	assert.Greater(t, c, cols)
	assert.Greater(t, n, rows)
	r.desk.State.Settings.Plan = desk.InCells
	assert.NotContains(t, r.View(), string(pixels.First))
	g.none(t)
}

// On each screen with a plan, at each size: the placeholders are a box of cells, numbered from its corner, and the picture is one of so
// many cells; all that lies beside it is as it is without pictures.
func TestPlaceholdersFillThePlan(t *testing.T) {
	for _, size := range [][2]int{{60, 20}, {100, 30}, {160, 50}} {
		for _, screen := range []string{"Underneath", "Match", "Place", "Runs"} {
			t.Run(fmt.Sprintf("%s-%dx%d", screen, size[0], size[1]), func(t *testing.T) {
				r, g := inPixels(t, "", size[0], size[1], screen)
				r.desk.State.Settings.Colour = desk.TrueColour
				with := cellsOf(r.View())
				_, cols, rows := g.next(t)
				r.desk.State.Settings.Plan = desk.InCells
				without := cellsOf(r.View())
				box := image.Rectangle{}
				for y, row := range with {
					require.Len(t, row, len(without[y]))
					for x, cell := range row {
						col, of, n := pixels.Placed(cell)
						if n == 0 {
							assert.Equal(t, without[y][x], cell, "%d %d", x, y)
							continue
						}
						box = box.Union(image.Rect(x, y, x+1, y+1))
						require.Equal(t, image.Pt(col, of), image.Pt(x, y).Sub(box.Min), "numbered from the corner")
					}
				}
				assert.LessOrEqual(t, box.Dx(), cols)
				assert.Equal(t, rows, box.Dy())
				assert.GreaterOrEqual(t, box.Dx(), cols-1)
			})
		}
	}
}

// cellsOf is what stands in each cell of a view, without colours.
func cellsOf(view string) (rows [][]string) {
	for line := range strings.SplitSeq(ansi.Strip(view), "\n") {
		var row []string
		for line != "" {
			_, n := utf8.DecodeRuneInString(line)
			if _, _, long := pixels.Placed(line); long > 0 {
				n = long
			}
			row = append(row, line[:n])
			line = line[n:]
		}
		rows = append(rows, row)
	}
	return rows
}

// A tap on a cell means the same place, drawn in pixels or in cells.
func TestATapMeansTheSameInPixels(t *testing.T) {
	at := func(pictures bool, x, y int) [2]float64 {
		r, _ := inPixels(t, "", 100, 30, "Place")
		if !pictures {
			r.desk.State.Settings.Plan = desk.InCells
		}
		_ = r.View()
		r.Update(tea.MouseMsg{X: x, Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
		cut := r.desk.State.Job.Cut
		return cut.At
	}
	was := at(true, 0, 29)
	for _, tap := range [][2]int{{20, 8}, {30, 12}, {40, 20}} {
		there := at(true, tap[0], tap[1])
		assert.Equal(t, at(false, tap[0], tap[1]), there)
		assert.NotEqual(t, was, there, "it moved the cut")
	}
}

// Whatever others wrote, none of it shows a part of the picture: each screen of a job full of placeholders shows what it does of one
// with their stand-ins.
func TestOthersCanShowNoPartOfThePicture(t *testing.T) {
	feigned := partOf(3, 2) + "\x1b[38;2;0;117;109m" + partOf(0, 0) + "\U0010eeee"
	document, err := vehicles.Load(jobOfCases(t, "24-everything.toml"))
	require.NoError(t, err)
	put := func(text string) func(string) string { return func(s string) string { return s + text } }
	for name, script := range scripts {
		t.Run(name, func(t *testing.T) {
			hostile := spoiler(t, spoilt(document.Job, put(feigned), put(feigned)), put(feigned))
			twin := spoiler(t, spoilt(document.Job, put(harmless.Text(feigned)), put(harmless.Text(feigned))), put(harmless.Text(feigned)))
			for _, b := range []*bench{hostile, twin} {
				b.desk.State.Settings.Colour, b.desk.State.Pixels = desk.TrueColour, screentest.Pictures(t, image.Pt(10, 20))
				b.send(tea.WindowSizeMsg{Width: 100, Height: 30})
			}
			for i, key := range strings.Split(script, "|") {
				for _, b := range []*bench{hostile, twin} {
					msg, known := keyNamed(key)
					require.True(t, known, key)
					b.Update(msg)
				}
				got := hostile.View()
				require.Equal(t, twin.View(), got, "after %d keys, %q", i+1, key)
				corner := image.Pt(-1, -1)
				for y, row := range cellsOf(got) {
					for x, cell := range row {
						col, of, n := pixels.Placed(cell)
						if n == 0 {
							require.NotContains(t, cell, string(pixels.First))
							continue
						}
						if corner.X < 0 {
							corner = image.Pt(x-col, y-of)
						}
						require.Equal(t, corner, image.Pt(x-col, y-of), "after %d keys", i+1)
					}
				}
			}
		})
	}
}

// No screen takes the parts of the picture for a text of others.
func TestNoScreenSpoilsThePicture(t *testing.T) {
	for _, size := range [][2]int{{60, 20}, {100, 30}} {
		for name, script := range scripts {
			r, _ := inPixels(t, jobOfCases(t, "24-everything.toml"), size[0], size[1], "Underneath")
			for _, key := range strings.Split(script, "|") {
				msg, known := keyNamed(key)
				require.True(t, known, key)
				r.Update(msg)
				view := r.View()
				require.NotContains(t, view, "▯", "%s at %v after %s", name, size, key)
			}
		}
	}
}

// Where no pictures are shown no placeholder gets through, whoever forgot what.
func TestWithoutPicturesNoPlaceholderGetsThrough(t *testing.T) {
	r := working(t, "")
	r.Update(tea.WindowSizeMsg{Width: 100, Height: 30})
	assert.NotContains(t, r.View(), string(pixels.First))
	assert.NotContains(t, harmless.Painted(partOf(0, 0)), string(pixels.First))
}

// A fitter moves the cut and looks: from the key to the last byte of the picture that shows it. Arrows held come thirty times a second;
// a picture that takes longer than that is left out for the next.
func BenchmarkKeyToPicture(b *testing.B) {
	for _, size := range [][2]int{{100, 30}, {160, 50}} {
		b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
			r, g := inPixels(b, "", size[0], size[1], "Place")
			_ = r.View()
			<-g.sent
			keys := []tea.KeyMsg{{Type: tea.KeyRight}, {Type: tea.KeyLeft}}
			bytes, i := 0, 0
			for b.Loop() {
				r.Update(keys[i%2])
				_ = r.View()
				bytes += len(<-g.sent)
				i++
			}
			b.ReportMetric(float64(bytes)/float64(i), "bytes/picture")
		})
	}
}

// What a message costs that changes nothing, in pixels and in cells: both paint all cells, pixels compare what the picture is of besides.
func BenchmarkPaintingNothingNew(b *testing.B) {
	for _, plan := range []desk.PlanIn{desk.InCells, desk.InPixels} {
		b.Run(desk.PlanWord(plan), func(b *testing.B) {
			r, g := inPixels(b, "", 160, 50, "Place")
			r.desk.State.Settings.Plan, r.desk.State.Settings.Colour = plan, desk.TrueColour
			_ = r.View()
			if plan == desk.InPixels {
				<-g.sent
			}
			for b.Loop() {
				_ = r.View()
			}
		})
	}
}

// partOf is the text of a cell that shows a part of the picture.
func partOf(col, row int) string { return string(pixels.AppendPlaceholder(nil, col, row)) }
