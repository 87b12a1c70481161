package vehicles

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWhatTheDatumIsCalled(t *testing.T) {
	var d Datum
	assert.False(t, d.Named())
	assert.Equal(t, []string{"bumper", "bumper edge", "bumper line"}, []string{d.Called(), d.Edge(), d.Line()})
	d.Name = "the step of the sliding door"
	assert.True(t, d.Named())
	for _, said := range []string{d.Called(), d.Edge(), d.Line()} {
		assert.Equal(t, "step of the sliding door", said)
	}
}

// faultsAt are the faults of a job with one obstruction that runs from x0 to x1, with its datum named.
func faultsAt(t *testing.T, x0, x1 string) string {
	text := "format = 1\n[job]\nref = \"TL-41\"\n[floor]\nfrom = -1560\nlength = 3200\nwidth = 1780\nthickness = 31\nground = 460\n" +
		"[datum]\nname = \"door step\"\n[[obstruction]]\nname = \"member\"\nkind = \"crossmember\"\nx = [" + x0 + ", " + x1 + "]\ny = [-850, 850]\n"
	_, err := ParseJob([]byte(text), "job.toml")
	require.Error(t, err)
	return err.Error()
}

func TestFaultsNameTheDatum(t *testing.T) {
	assert.Contains(t, faultsAt(t, "-864", "-948"),
		"give the edge farther behind the door step first: x runs forward, and behind it readings have a minus")
	assert.Contains(t, faultsAt(t, "948", "864"), "give the edge nearest to the door step first, then the farthest")
	assert.Contains(t, faultsAt(t, `"+10"`, "864"), "measure it from the door step, the centreline or a side edge")
}
