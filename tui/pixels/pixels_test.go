package pixels

import (
	"bytes"
	"encoding/base64"
	"image"
	"image/color"
	"io"
	"os"
	"regexp"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/ansi/kitty"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
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
func decoded(t *testing.T, sent []byte) (image.Image, string) {
	pieces := regexp.MustCompile("\x1b_G([^;]*);([^\x1b]*)\x1b\\\\").FindAllSubmatch(sent, -1)
	require.NotEmpty(t, pieces)
	var all []byte
	length := 0
	for i, piece := range pieces {
		length += len(piece[0])
		last := i == len(pieces)-1
		assert.Equal(t, !last, strings.Contains(string(piece[1])+",", "m=1,"), "piece %d of %d: %s", i, len(pieces), piece[1])
		assert.LessOrEqual(t, len(piece[2]), 4096)
		all = append(all, piece[2]...)
	}
	assert.Equal(t, len(sent), length, "nothing between the pieces")
	data, err := base64.StdEncoding.DecodeString(string(all))
	require.NoError(t, err)
	d := kitty.Decoder{Decompress: true, Format: kitty.RGBA, Width: 300, Height: 200}
	p, err := d.Decode(bytes.NewReader(data))
	require.NoError(t, err)
	return p, string(pieces[0][1])
}

func TestWhatIsSentIsThePicture(t *testing.T) {
	want := chequer(300, 200)
	got, options := decoded(t, Encode(want, 30, 10))
	assert.Equal(t, want.Bounds(), got.Bounds())
	for y := range 200 {
		for x := range 300 {
			require.Equal(t, color.RGBAModel.Convert(want.At(x, y)), color.RGBAModel.Convert(got.At(x, y)), "%d %d", x, y)
		}
	}
	for _, option := range []string{"a=T", "U=1", "i=30061", "q=2", "c=30", "r=10", "s=300", "v=200", "o=z"} {
		assert.Contains(t, strings.Split(options, ","), option)
	}
	assert.Equal(t, 30061, ID, "what is asked about is what is sent")
}

// A placeholder takes one column, wherever in the picture.
func TestAPlaceholderIsOneCellWide(t *testing.T) {
	seen := map[string]bool{}
	for row := range 60 {
		for col := range Most {
			p := Placeholder(col, row)
			require.Equal(t, 1, ansi.StringWidth(p), "%d %d", col, row)
			require.False(t, seen[p])
			seen[p] = true
		}
	}
}

// Whatever keys and answers come, in whatever reads: the keys come through, the answers don't, and are heard.
func TestAnswersAreNoKeys(t *testing.T) {
	keys := []string{"a", "\x1b[C", "\x1b", "ä", "\x1b[200~some text\x1b[201~", "\x1bx", " ", "\x1b[<0;3;4M"}
	rapid.Check(t, func(t *rapid.T) {
		var typed, sent strings.Builder
		yes := false
		for range rapid.IntRange(0, 12).Draw(t, "pieces") {
			switch rapid.IntRange(0, 3).Draw(t, "kind") {
			case 0:
				sent.WriteString("\x1b_Gi=30061;OK\x1b\\")
				yes = true
			case 1:
				sent.WriteString("\x1b_Gi=30061;EINVAL: no\x1b\\")
			default:
				k := rapid.SampledFrom(keys).Draw(t, "key")
				typed.WriteString(k)
				sent.WriteString(k)
			}
		}
		terminal := On(nil)
		from := io.Reader(strings.NewReader(sent.String()))
		if rapid.Bool().Draw(t, "in halves") && !strings.Contains(sent.String(), "\x1b\x1b") {
			from = &pieces{text: []byte(sent.String())}
		}
		got, err := io.ReadAll(&Reader{From: from, To: terminal})
		require.NoError(t, err)
		assert.Equal(t, typed.String(), string(got))
		assert.Equal(t, yes, terminal.Shows())
	})
}

// pieces reads answers cut in two.
type pieces struct{ text []byte }

func (p *pieces) Read(b []byte) (int, error) {
	if len(p.text) == 0 {
		return 0, io.EOF
	}
	n := len(p.text)
	if at := bytes.Index(p.text, []byte(begins)); at == 0 {
		n = min(n, 7)
	} else if at > 0 {
		n = at
	}
	n = copy(b, p.text[:n])
	p.text = p.text[n:]
	return n, nil
}

func TestAnErrorOfTheTerminalComesThrough(t *testing.T) {
	_, err := (&Reader{From: iotest.ErrReader(os.ErrClosed), To: On(nil)}).Read(make([]byte, 9))
	assert.ErrorIs(t, err, os.ErrClosed)
}

// What begins like an answer and never ends is no answer.
func TestAnEndlessAnswerComesThrough(t *testing.T) {
	text := begins + strings.Repeat("x", 2*longest)
	got, err := io.ReadAll(&Reader{From: strings.NewReader(text), To: On(nil)})
	require.NoError(t, err)
	assert.Equal(t, text, string(got))
}

// Pictures and cells are written one after the other, and of many pictures the last one is sent.
func TestTheLastPictureIsSent(t *testing.T) {
	r, w, err := os.Pipe()
	require.NoError(t, err)
	terminal := On(w)
	assert.False(t, terminal.Shows())
	begun, done := make(chan bool, 1), make(chan bool)
	terminal.Show(1, 1, func() *image.RGBA { begun <- true; <-done; return chequer(300, 200) })
	<-begun
	for range 20 {
		terminal.Show(1, 1, func() *image.RGBA { t.Error("this one is left out"); return chequer(1, 1) })
	}
	terminal.Show(7, 5, func() *image.RGBA { return chequer(300, 200) })
	_, err = terminal.Write([]byte("cells"))
	require.NoError(t, err)
	close(done)
	want := len(Encode(chequer(300, 200), 1, 1)) + len(Encode(chequer(300, 200), 7, 5)) + len("cells")
	data := make([]byte, want)
	_, err = io.ReadFull(r, data)
	require.NoError(t, err)
	assert.True(t, bytes.HasPrefix(data, []byte("cells")))
	assert.Contains(t, string(data), "c=7,r=5")
	require.NoError(t, w.Close())
}
