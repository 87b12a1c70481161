package vector

import (
	"bytes"
	"strings"
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

// A file that the library wrote in another way than it does is refused, and nothing that is not asked for is added.
func TestAFileIsPrintedUnscaledWhereThatIsAsked(t *testing.T) {
	file := func(trueSize bool) []byte {
		b := NewPDF("a page")
		b.TrueSize = trueSize
		b.Page(210, 297)
		data, err := b.Bytes()
		require.NoError(t, err)
		return data
	}
	assert.NotContains(t, string(file(false)), "PrintScaling")
	assert.Equal(t, 1, strings.Count(string(file(true)), "/PrintScaling /None"))
	for _, foreign := range []string{"", "%PDF-1.4\n", "%PDF\ntrailer\n<<\n/Size 3\n/Root 9 0 R\n/Info 2 0 R\n>>\nstartxref\n5\n%%EOF\n"} {
		_, err := asTrueSize([]byte(foreign))
		assert.ErrorIs(t, err, errForeign)
	}
}
