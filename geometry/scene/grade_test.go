package scene

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Each kind of room begins where the one before it ends: at nothing left for sure, nothing possible, and at 20 and 50 mm
// beyond doubt.
func TestHowMuchRoomThereIs(t *testing.T) {
	for _, c := range []struct {
		possible, sure float64
		want           Grade
	}{
		{-1, -3, NoRoom}, {0, -2, NoRoom}, {0.001, -2, DoubtfulRoom}, {5, -0.001, DoubtfulRoom},
		{5, 0, LittleRoom}, {25, 19.999, LittleRoom}, {25, 20, FairRoom}, {55, 49.999, FairRoom}, {55, 50, MuchRoom}, {999, 900, MuchRoom},
	} {
		assert.Equal(t, c.want, GradeOf(c.possible, c.sure), "%+v", c)
	}
	assert.Equal(t, 6, Grades)
	for r := Unknown; r < MuchRoom; r++ {
		assert.Less(t, r, r+1, "from less to more")
	}
}
