package moving

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/tui/desk"
)

// What is no number, and what is one that the job file does not take, are told apart.
func TestANumberSaysWhatIsWrongWithIt(t *testing.T) {
	for _, c := range []struct {
		reads      Reader
		text, says string
	}{
		{Count, "2000000", "must be more than 0 and at most 1000000"}, {Count, "0", "must be more than 0 and at most 1000000"}, {Count, "x", `"x" is no number`},
		{Tilt, "181", "must be from -180 to 180 degrees"}, {Tilt, "-200°", "must be from -180 to 180 degrees"}, {Tilt, "up", `"up" is no number`},
	} {
		_, err := c.reads.Read(c.text, desk.State{})
		assert.ErrorContains(t, err, c.says, c.text)
	}
	for text, want := range map[string]float64{"22": 22, "1,5": 1.5, "1000000": 1e6} {
		v, err := Count.Read(text, desk.State{})
		assert.NoError(t, err)
		assert.Equal(t, want, v.Number.Value)
	}
	v, err := Tilt.Read("-12,5°", desk.State{})
	assert.NoError(t, err)
	assert.Equal(t, -12.5, v.Number.Value)
}
