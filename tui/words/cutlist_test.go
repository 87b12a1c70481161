package words_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/rules/cutlist"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// A piece that nobody can saw and hold is said to be one where it is listed, and no other is.
func TestAPieceThatIsTooShortIsSaidInItsLine(t *testing.T) {
	piece := cutlist.Piece{Of: cutlist.ExhaustPipe, Across: 26, From: "muffler", To: "outlet", Developed: 2.9, Cut: 37.9, Bits: []cutlist.Bit{{Length: 2.9}}}
	short := piece
	short.Short = true
	lines := words.CutList(cutlist.List{Pieces: []cutlist.Piece{piece, short}}, desk.Millimetres)
	assert.Equal(t, lines[0]+"; "+cutlist.TooShort, lines[1])
}
