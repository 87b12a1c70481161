package vector

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// A file is known as the program's own as long as nobody has changed a byte of it, or put more behind it.
func TestAFileThatSomebodyChangedIsNoLongerSealed(t *testing.T) {
	b := NewPDF("a page")
	b.Page(210, 297)
	b.Line([]geometry.Point{{X: 1, Y: 1}, {X: 50, Y: 60}}, Stroke{Width: 1, Colour: Ink})
	file, err := b.Bytes()
	require.NoError(t, err)
	assert.True(t, Sealed(file))
	for at := 0; at < len(file); at += 97 {
		other := bytes.Clone(file)
		other[at] ^= 1
		assert.False(t, Sealed(other), "byte %d", at)
	}
	assert.False(t, Sealed(append(bytes.Clone(file), "1 0 obj"...)))
	assert.False(t, Sealed(file[:len(file)-1]))
	assert.False(t, Sealed(nil))
	assert.False(t, Sealed([]byte("%undermark \n")))
}

// Both fonts have the same letters, so that one text is legible in both; what they lack is a box, seen and measured.
func TestLettersThatTheFontLacksAreBoxes(t *testing.T) {
	assert.Equal(t, "long van Ø 127 ± 3°, é ß ф", Legible("long van Ø 127 ± 3°, é ß ф"))
	assert.Equal(t, "□□ van □", Legible("漢字 van 🚐"))
	for r := rune(' '); r < 0x3000; r++ {
		for _, f := range faces() {
			glyph, err := f.font.GlyphIndex(&f.buf, r)
			require.NoError(t, err)
			assert.Equal(t, glyph != 0, Legible(string(r)) == string(r), "%U", r)
		}
	}
}
