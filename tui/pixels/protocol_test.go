package pixels

import (
	"bytes"
	"encoding/base64"
	"image"
	"image/color"
	"regexp"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/ansi/kitty"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func chequer(wide, high int) *image.RGBA {
	p := image.NewRGBA(image.Rect(0, 0, wide, high))
	for y := range high {
		for x := range wide {
			p.SetRGBA(x, y, color.RGBA{R: uint8(x), G: uint8(y), B: uint8(x * y), A: 255})
		}
	}
	return p
}

// decoded takes what was sent apart by the protocol's rules, with another program's decoder, and returns the options of the first
// piece too.
func decoded(t *testing.T, sent string, wide, high int) (image.Image, []string) {
	sent, begins := strings.CutPrefix(sent, "\x1b[?2026h")
	sent, ends := strings.CutSuffix(sent, "\x1b[?2026l")
	require.True(t, begins && ends, "shown at once")
	pieces := regexp.MustCompile("\x1b_G([^;]*);([^\x1b]*)\x1b\\\\").FindAllStringSubmatch(sent, -1)
	require.NotEmpty(t, pieces)
	var all strings.Builder
	length := 0
	for i, piece := range pieces {
		length += len(piece[0])
		last := i == len(pieces)-1
		assert.Equal(t, !last, strings.Contains(piece[1]+",", "m=1,"), "piece %d of %d: %s", i, len(pieces), piece[1])
		assert.Equal(t, last, strings.Contains(piece[1]+",", "m=0,"), "piece %d of %d: %s", i, len(pieces), piece[1])
		assert.LessOrEqual(t, len(piece[2]), 4096)
		assert.True(t, last || len(piece[2])%4 == 0)
		if i > 0 {
			assert.Regexp(t, `^q=2,m=[01]$`, piece[1], "later pieces say no more")
		}
		all.WriteString(piece[2])
	}
	assert.Equal(t, len(sent), length, "nothing between the pieces")
	data, err := base64.StdEncoding.DecodeString(all.String())
	require.NoError(t, err)
	d := kitty.Decoder{Decompress: true, Format: kitty.RGB, Width: wide, Height: high}
	p, err := d.Decode(bytes.NewReader(data))
	require.NoError(t, err)
	return p, strings.Split(pieces[0][1], ",")
}

func TestWhatIsSentIsThePicture(t *testing.T) {
	for _, size := range []image.Point{{X: 300, Y: 200}, {X: 1, Y: 1}, {X: 64, Y: 48}} {
		want := chequer(size.X, size.Y)
		got, options := decoded(t, string(encoded(rgb(want), size, 30, 10)), size.X, size.Y)
		require.Equal(t, want.Bounds(), got.Bounds())
		for y := range size.Y {
			for x := range size.X {
				require.Equal(t, color.RGBAModel.Convert(want.At(x, y)), color.RGBAModel.Convert(got.At(x, y)), "%d %d", x, y)
			}
		}
		for _, option := range []string{"a=T", "U=1", "i=30061", "q=2", "c=30", "r=10", "o=z", "f=24", "t=d"} {
			assert.Contains(t, options, option)
		}
	}
	assert.Equal(t, 30061, ID, "what is asked about is what is sent")
}

// A part of a picture is sent too: rows that are longer in memory than the picture is wide.
func TestAPartOfAPictureIsSent(t *testing.T) {
	whole := chequer(40, 30)
	part, ok := whole.SubImage(image.Rect(10, 5, 30, 25)).(*image.RGBA)
	require.True(t, ok)
	got, _ := decoded(t, string(encoded(rgb(part), image.Pt(20, 20), 2, 1)), 20, 20)
	assert.Equal(t, color.RGBAModel.Convert(whole.At(17, 12)), color.RGBAModel.Convert(got.At(7, 7)))
}

// However large the pane, a picture is bounded, and has the proportions of its cells.
func TestALargePictureIsPaintedSmaller(t *testing.T) {
	for _, cell := range []image.Point{{X: 10, Y: 20}, {X: 9, Y: 19}, {X: 24, Y: 51}, {X: 3, Y: 6}} {
		for _, cells := range []image.Point{{X: 60, Y: 15}, {X: 110, Y: 44}, {X: Most, Y: Most}, {X: 1, Y: 1}} {
			size := sizeOf(cells.X, cells.Y, cell)
			assert.LessOrEqual(t, size.X*size.Y, mostPixels+size.X+size.Y)
			assert.InDelta(t, float64(size.Y*cells.X*cell.X)/float64(cells.Y*cell.Y), float64(size.X), 1+float64(cells.X*cell.X)/float64(cells.Y*cell.Y))
			if whole := (image.Point{X: cells.X * cell.X, Y: cells.Y * cell.Y}); whole.X*whole.Y <= mostPixels {
				assert.Equal(t, whole, size)
			}
		}
	}
}

// A placeholder takes one column, wherever in the picture, and says where; nothing else is one.
func TestAPlaceholderIsOneCellWide(t *testing.T) {
	for _, row := range []int{0, 1, 59, Most - 1} {
		for col := range Most {
			p := partOf(col, row)
			require.Equal(t, 1, ansi.StringWidth(p), "%d %d", col, row)
			c, r, n := Placed(p + "x")
			require.Equal(t, [3]int{col, row, len(p)}, [3]int{c, r, n})
		}
	}
	first := partOf(0, 0)
	for _, text := range []string{"", "x", "\U0010eeee", first[:4], first[:6], "\U0010eeeex", "\U0010eeee\u0301\u0301", "\U0010eeed" + first[4:], "\u0305\u0305"} {
		_, _, n := Placed(text)
		assert.Zero(t, n, "%q", text)
	}
}

// What a large picture costs to pack, and how many bytes it takes: a plan is mostly even, noise is the worst there is.
func BenchmarkEncoded(b *testing.B) {
	size := image.Pt(1100, 880)
	pixels := rgb(image.NewRGBA(image.Rectangle{Max: size}))
	for b.Loop() {
		b.ReportMetric(float64(len(encoded(pixels, size, 110, 44))), "bytes")
	}
}

// partOf is the text of a cell that shows a part of the picture.
func partOf(col, row int) string { return string(AppendPlaceholder(nil, col, row)) }
