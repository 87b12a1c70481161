package geometry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// The pieces are the run: put one after the other they have its length, and every place of it is where the run has it.
func TestPiecesAreTheRun(t *testing.T) {
	r := seeded(t, 10)
	bends := 0
	for range 300 {
		run := geometry.Rounded(randomPath3(r, 2+r.IntN(4)), r.Float64()*150)
		along, end := 0.0, run.At(0)
		for _, p := range run.Pieces() {
			assertNear(t, end, p.A, 1e-9)
			length := p.B.Sub(p.A).Norm()
			if p.Radius > 0 {
				bends++
				length = p.Radius * p.Turn
				require.InDelta(t, 0, p.Along.Dot(p.Inward), 1e-9)
				require.Less(t, p.Turn, math.Pi)
			}
			for _, share := range []float64{0, 0.25, 0.5, 0.9, 1} {
				assertNear(t, run.At(along+share*length), p.At(share), 1e-9)
			}
			along, end = along+length, p.B
		}
		require.InDelta(t, run.Length(), along, 1e-9)
		assertNear(t, run.At(run.Length()), end, 1e-9)
	}
	assert.Greater(t, bends, 100)
}

// A quarter bend of 60 mm: cut into 10 parts its chords leave it by 60 (1 - cos 4.5 degrees), 0.185 mm (plane geometry).
func TestChordsOfABend(t *testing.T) {
	bend := geometry.Rounded([]pt3{{0, 0, 0}, {200, 0, 0}, {200, 0, -300}}, 60).Pieces()[1]
	require.Equal(t, 60.0, bend.Radius)
	leaves := 60 * (1 - math.Cos(4.5*math.Pi/180))
	assert.InDelta(t, 0.185, leaves, 1e-4)
	assert.Equal(t, 10, bend.Chords(leaves+1e-9))
	assert.Equal(t, 11, bend.Chords(leaves-1e-9))
	assert.Equal(t, 1, bend.Chords(1e6), "never none")
	assert.Equal(t, 1, geometry.Piece{B: pt3{X: 100}}.Chords(0.01), "a straight line is its own chord")
}

func TestARunOfOnePlaceIsOnePiece(t *testing.T) {
	at := pt3{1, 2, 3}
	assert.Equal(t, []geometry.Piece{{A: at, B: at}}, geometry.Rounded([]pt3{at}, 60).Pieces())
	assert.Equal(t, []geometry.Piece{{A: at, B: at}}, geometry.Rounded([]pt3{at, at}, 60).Pieces())
}
