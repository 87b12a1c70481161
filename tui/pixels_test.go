package tui

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"image"
	"image/png"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/ansi/kitty"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/pixels"
)

// gallery is a terminal that shows pictures, and those that it was sent.
type gallery struct {
	*pixels.Terminal
	sent chan []byte // picture by picture
}

// what the terminal says: it shows pictures, its cells are so large, and its cursor did not move.
func answersOf(cell image.Point) string {
	return fmt.Sprintf("\x1b[6;%d;%dt\x1b_Gi=30061;OK\x1b\\\x1b[1;1R", cell.Y, cell.X)
}

func newGallery(t testing.TB, cell image.Point) *gallery {
	from, to, err := os.Pipe()
	require.NoError(t, err)
	g := &gallery{Terminal: pixels.On(to), sent: make(chan []byte, 100)}
	g.Ask(func() {})
	go g.read(from)
	t.Cleanup(func() { _ = to.Close() })
	_, err = g.WriteString(ansi.SetModeAltScreenSaveCursor)
	require.NoError(t, err)
	reader := &pixels.Reader{From: strings.NewReader(answersOf(cell)), To: g.Terminal}
	n, err := reader.Read(make([]byte, 256))
	require.NoError(t, err)
	require.Zero(t, n)
	require.True(t, g.Shows())
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

// With LOOK=folder the pictures are written there, to be looked at.
func TestLook(t *testing.T) {
	folder := os.Getenv("LOOK")
	if folder == "" {
		t.Skip("LOOK names no folder")
	}
	for _, size := range [][2]int{{60, 20}, {100, 30}, {160, 50}} {
		for _, screen := range []string{"Underneath", "Place", "Runs"} {
			for _, job := range []string{"", "24-everything.toml"} {
				path := ""
				if job != "" {
					path = jobOfCases(t, job)
				}
				r, g := inPixels(t, path, size[0], size[1], screen)
				_ = r.View()
				p, _, _ := g.next(t)
				f, err := os.Create(fmt.Sprintf("%s/%s-%dx%d-%s.png", folder, screen, size[0], size[1], strings.TrimSuffix(job, ".toml")))
				require.NoError(t, err)
				require.NoError(t, png.Encode(f, p))
				require.NoError(t, f.Close())
			}
		}
	}
}
