package vector_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene/vector"
)

// Letters behind what was cut off at a box are as they are without it, as poppler paints them: black, whatever was filled within and before,
// and in the size and weight that is asked for.
func TestLettersBehindABoxAreAsEver(t *testing.T) {
	if _, err := exec.LookPath("pdftoppm"); err != nil {
		t.Skip("pdftoppm is not installed")
	}
	square := []geometry.Point{{X: 1, Y: 1}, {X: 3, Y: 1}, {X: 3, Y: 3}, {X: 1, Y: 3}}
	word := func(b *vector.PDF, bold bool) {
		b.Write(geometry.Point{X: 2, Y: 12}, vector.Text{Words: "behind it", Size: 4, Bold: bold, Colour: vector.Ink})
	}
	dark := func(boxed, bold bool) int {
		b := vector.NewPDF("t")
		b.Page(40, 20)
		if boxed {
			b.Face(square, vector.White)
			b.Windowed(vector.Box{Left: 1, Top: 1, Width: 4, Height: 4}, func() {
				b.Face(square, vector.White)
				b.Write(geometry.Point{X: 2, Y: 3}, vector.Text{Words: ".", Size: 4, Bold: bold, Colour: vector.White})
				b.Face(square, vector.Ink)
				b.Face(square, vector.White)
				b.Face(square, vector.Ink)
			})
			b.Face(square, vector.White)
			b.Windowed(vector.Box{Left: 1, Top: 1, Width: 4, Height: 4}, func() { b.Face([]geometry.Point{{X: 1, Y: 1}, {X: 1.01, Y: 1}, {X: 1, Y: 1.01}}, vector.Ink) })
		}
		word(b, bold)
		data, err := b.Bytes()
		require.NoError(t, err)
		return darkBelow(t, data, 6)
	}
	for _, bold := range []bool{false, true} {
		plain := dark(false, bold)
		assert.Greater(t, plain, 100)
		assert.Equal(t, plain, dark(true, bold), "bold: %t", bold)
	}
}

// darkBelow is how many dots of a file's first page are dark below so many mm, at 150 dots an inch.
func darkBelow(t *testing.T, pdf []byte, mm float64) (n int) {
	file := filepath.Join(t.TempDir(), "t.pdf")
	require.NoError(t, os.WriteFile(file, pdf, 0o600))
	out, err := exec.Command("pdftoppm", "-r", "150", "-gray", "-singlefile", file).Output()
	require.NoError(t, err)
	var wide, high, most int
	_, err = fmt.Fscanf(bytes.NewReader(out), "P5\n%d %d\n%d\n", &wide, &high, &most)
	require.NoError(t, err)
	dots := out[len(out)-wide*high:]
	for _, d := range dots[int(mm/25.4*150)*wide:] {
		if d < 100 {
			n++
		}
	}
	return n
}
