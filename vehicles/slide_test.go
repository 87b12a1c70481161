package vehicles

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The laid job's exhaust has legs of 100 mm down, 600 to the right and 800 to the rear, bends of 60 mm between them: leg 2 is
// straight from 60 to 540 mm, leg 3 from 60 to its end.
func TestAThingIsSlidOverABendToWhereTheNextLegIsStraight(t *testing.T) {
	job := hungOn(Muffler{3, 200, 300, 70, ""})
	run := job.Laid(ExhaustRun)
	require.NotNil(t, run)
	for _, c := range []struct {
		name         string
		leg          int
		start, by    float64
		toLeg        int
		to           float64
		found        bool
		length, room float64
	}{
		{"along its leg", 3, 200, 10, 3, 210, true, 300, 0},
		{"up to the bend first", 3, 70, -50, 3, 60, true, 300, 0},
		{"over the bend", 3, 60, -10, 2, 240, true, 300, 0},
		{"up to the end", 3, 480, 50, 3, 500, true, 300, 0},
		{"no leg beyond", 3, 500, 10, 3, 500, false, 300, 0},
		{"leg 1 is too short", 2, 60, -10, 2, 60, false, 300, 0},
		{"out of a bend", 2, 20, 1, 2, 60, true, 300, 0},
		{"what has a place only", 2, 60, -10, 1, 40, true, 0, 0},
	} {
		leg, to, ok := run.Slid(c.leg, c.start, c.length, c.by)
		assert.Equal(t, c.found, ok, c.name)
		assert.Equal(t, c.toLeg, leg, c.name)
		assert.InDelta(t, c.to, to, 1e-5, c.name)
	}
}

// The longest leg that is as good as level: 740 mm of leg 3 are straight, from 60 on.
func TestAMufflerIsSeatedOnTheLongestLevelLeg(t *testing.T) {
	job := hungOn(Muffler{3, 200, 300, 70, ""})
	run := job.Laid(ExhaustRun)
	leg, start, ok := run.Seat(300)
	assert.True(t, ok)
	assert.Equal(t, 3, leg)
	assert.InDelta(t, 60+(740-300)/2, start, 0.5)
	_, _, ok = run.Seat(741)
	assert.False(t, ok)

	steep := laid()
	steep.Exhaust.Path = List[RunPoint]{{1035, 225, 145}, {1035, -175, 145}, {35, -175, 745}} // 400 mm level, then 1000 falling 600
	run = steep.Laid(ExhaustRun)
	leg, _, ok = run.Seat(180)
	assert.True(t, ok)
	assert.Equal(t, 2, leg, "level before long")
	leg, _, ok = run.Seat(600)
	assert.True(t, ok)
	assert.Equal(t, 3, leg, "where no level one has room")
}

// By hand: 40 mm of leg 1 are straight, then a bend of 30 pi, then 480 of leg 2 from 60 on, then a bend, then 740 of leg 3.
func TestAThingIsSeatedWhereOnePoints(t *testing.T) {
	const bend = 30 * math.Pi
	job := laid()
	run := job.Laid(ExhaustRun)
	for _, c := range []struct {
		name          string
		along, length float64
		leg           int
		start         float64
		fits          bool
	}{
		{"in the middle of leg 2", 40 + bend + 240, 180, 2, 60 + 240 - 90, true},
		{"at its beginning", 40 + bend, 180, 2, 60, true},
		{"in the bend behind it", 40 + bend + 480 + bend/2, 180, 2, 540 - 180, true},
		{"past that", 40 + bend + 480 + bend/2 + 1, 180, 3, 60, true},
		{"at the end of the run", 40 + bend + 480 + bend + 740, 180, 3, 800 - 180, true},
		{"at the stub, where there is no room", 0, 180, 1, 0, false},
		{"what has a place only", 20, 0, 1, 20, true},
	} {
		leg, start, ok := run.SeatAt(c.along, c.length)
		assert.Equal(t, c.fits, ok, c.name)
		assert.Equal(t, c.leg, leg, c.name)
		assert.InDelta(t, c.start, start, 0.5, c.name)
	}
}
