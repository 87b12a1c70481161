package cutlist

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"bench.example/undermark/vehicles"
)

// straight is the sample van with its cut at a place and an exhaust that goes level to the front for so long, and nothing else laid.
func straight(at [2]float64, long float64) func(j vehicles.Job) vehicles.Job {
	return func(j vehicles.Job) vehicles.Job {
		cut := *j.Cut
		cut.At = at
		j.Cut = &cut
		mouth, _ := j.Stub(vehicles.ExhaustRun)
		j.Intake, j.Fuel = nil, nil
		return j.WithRun(vehicles.ExhaustRun, &vehicles.Run{Across: 26, Path: []vehicles.RunPoint{{X: mouth.X + long, Y: mouth.Y, Drop: -mouth.Z}}})
	}
}

// An exhaust of 965 mm is cut to 965 + 25 for the stub + 5 at each end, 1000 mm: one length as it is sold, with nothing left, wherever the heater stands. In
// tenths of a millimetre places do not add up exactly, and a hair more would be bought as a piece of its own.
func TestAPieceAsLongAsALengthTakesOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := [2]float64{float64(rapid.IntRange(10000, 15000).Draw(t, "x")) / 10, float64(rapid.IntRange(-3000, 3000).Draw(t, "y")) / 10}
		l := Of(judged(t, straight(at, 965)), Usual())
		if s := l.Stock[0]; s.Needed != 1 || len(s.TooLong) > 0 || s.Left[0] < 0 || s.Left[0] > 1e-6 || s.Lacks() != 0 {
			t.Fatalf("%+v", s)
		}
	})
}

// A tenth more than a length is no length any more.
func TestAPieceATenthTooLongIsBoughtLonger(t *testing.T) {
	l := Of(judged(t, straight([2]float64{1255, 195}, 965.1)), Usual())
	assert.Zero(t, l.Stock[0].Needed)
	assert.InDeltaSlice(t, []float64{1000.1}, l.Stock[0].TooLong, 1e-6)
	assert.Equal(t, 1, l.Stock[0].Lacks())
}

// Pieces in tenths that come to a length are cut from one, in whatever order they are asked for, and never more than it holds.
func TestPiecesThatComeToALengthTakeOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := maker{kit: Usual()}
		left := 10000
		for range rapid.IntRange(1, 5).Draw(t, "pieces") {
			tenths := rapid.IntRange(1, max(1, left/2)).Draw(t, "tenths")
			left -= tenths
			m.Pieces = append(m.Pieces, Piece{Of: IntakeHose, Cut: float64(tenths) / 10})
		}
		m.Pieces = append(m.Pieces, Piece{Of: IntakeHose, Cut: float64(left) / 10})
		m.Pieces = rapid.Permutation(m.Pieces).Draw(t, "order")
		m.pack(IntakeHose)
		if s := m.Stock[0]; s.Needed != 1 || len(s.TooLong) > 0 || s.Left[0] < 0 || s.Left[0] > 1e-6 {
			t.Fatalf("%+v of %v", s, m.Pieces)
		}
	})
}

// What a kit holds is not bought: of lengths and parts alike, by hand, and never less than nothing.
func TestWhatIsLackingBesideAKit(t *testing.T) {
	for _, c := range []struct{ needed, long, holds, lengths, all int }{{2, 0, 1, 1, 1}, {1, 0, 1, 0, 0}, {0, 0, 1, 0, 0}, {0, 2, 1, 0, 2}, {3, 1, 0, 3, 4}, {1, 1, 5, 0, 1}} {
		s := Stock{Needed: c.needed, TooLong: make([]float64, c.long), Holds: c.holds}
		assert.Equal(t, [2]int{c.lengths, c.all}, [2]int{s.LacksLengths(), s.Lacks()}, "%+v", c)
	}
	for _, c := range [][3]int{{4, 1, 3}, {4, 4, 0}, {1, 4, 0}, {0, 0, 0}} {
		assert.Equal(t, c[2], Part{Count: c[0], Holds: c[1]}.Lacks())
	}
}
