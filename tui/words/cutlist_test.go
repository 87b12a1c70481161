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

// The hose of joints is said by the piece and in all, with whose word goes before it; what is only counted is a number.
func TestTheHoseOfJointsIsSaid(t *testing.T) {
	parts := cutlist.List{Parts: []cutlist.Part{{Of: cutlist.FuelJoint, Count: 4, Holds: 4, Each: 50}, {Of: cutlist.FuelClamp, Count: 8, Holds: 8}}}
	assert.Equal(t, []string{
		"fuel joint: 4 of 50 mm of hose, 200 mm in all, unless the heater's instructions say another; the usual kit holds 4",
		"fuel clamp: 8; the usual kit holds 8",
	}, words.CutList(parts, desk.Millimetres))
}
