package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// twoBays is a floor with two bays between crossmembers, joined by a passage at the end of the one between them, so that they are one area. The near bay
// begins so many mm from the bumper and is so wide, the far one wider by more.
func twoBays(t *testing.T, from, wide, more float64) Result {
	const between, passage = 140, 200
	heater, _ := vehicles.HeaterClass("2 kW")
	job := vehicles.Job{Ref: "two bays", Floor: vehicles.Floor{Length: 1600, Width: 1000, Thickness: 31, Ground: 460}, Heater: &heater}
	far := from + wide + between
	job.Obstructions = vehicles.List[vehicles.Obstruction]{
		box("rear crossmember", "crossmember", 0, from, -500, 500, 0, 60),
		box("middle crossmember", "crossmember", from+wide, far, -500, passage, 0, 60),
		box("front crossmember", "crossmember", far+wide+more, 1600, -500, 500, 0, 60),
	}
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	return result
}

// Of two bays too far apart for what is turned to come from one to the other the roomier is suggested, from as little more room on as two readings of
// 1 mm each can hide, wherever the bays lie between the nodes of the grid.
func TestTheRoomierOfTwoBaysIsSuggested(t *testing.T) {
	const readings = 2
	for _, wide := range []float64{320, 360} {
		for from := 100.; from < 120; from += 2 {
			for _, roomier := range []float64{-3.5, -3, -2.5, 2.5, 3, 3.5} { // half of what a bay is wider by
				require.Greater(t, max(roomier, -roomier), float64(readings))
				result := twoBays(t, from, wide, 2*roomier)
				best := RoomForTurning(&result).Best(1, untold)
				require.Len(t, best, 1, "one area")
				far := best[0].At.X > from+wide
				assert.Equal(t, roomier > 0, far, "bays of %g mm from %g mm on, the far one with %g mm more room: %+v", wide, from, roomier, best[0])
			}
		}
	}
}
