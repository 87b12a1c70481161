package place

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

func stepped(t *testing.T, w, h int) *screentest.Driver {
	document, err := vehicles.Load("../../testdata/cases/32-datum-is-a-step.toml")
	require.NoError(t, err)
	return screentest.New(t, New(), document.Job, w, h)
}

// Behind the datum line the tape's size is sqrt(x^2 + 40^2): 500.1 lands on x = -498.5.
func TestAPlaceBehindTheDatumIsTypedWithAMinus(t *testing.T) {
	d := stepped(t, 60, 17)
	assert.Contains(t, plain(d), "At x -420, behind, 300 mm left")
	assert.Contains(t, plain(d), "From below: step of the sliding door -421.9 behind, left 590")
	d.Type("t")
	assert.Contains(t, plain(d), "from the step of the…")
	d.Type("-500.1<enter>L590<enter>")
	assert.Equal(t, [2]float64{-498.5, 300}, d.State.Job.Cut.At)
	d.Type("tL590<enter>0")
	assert.Equal(t, [2]float64{-498.5, 300}, d.State.Job.Cut.At, "no side along the van")
}

// A pilot measured 100 mm short behind the line: each slip that is offered explains it, with the right sign.
func TestSlipsBehindTheDatumAreReadWithTheirMinus(t *testing.T) {
	d := stepped(t, 100, 27)
	d.Type("m-321.9<enter>L590<enter>")
	p, ok := pilotOf(d.State)
	require.True(t, ok)
	require.False(t, p.Explained)
	var said []string
	for _, slip := range p.Slips {
		said = append(said, slip.Text)
		d2 := screentest.New(t, New(), slip.Apply(d.State.Job), 100, 27)
		after, ok := pilotOf(d2.State)
		assert.True(t, ok && after.Explained, slip.Text)
	}
	assert.Contains(t, said, "from below: the reading from the step of the sliding door was read as -321.9, it is -421.9: a misreading by 100 mm")
	assert.Contains(t, said, "from above: the mark was put at -320.4 mm from the step of the sliding door, not at -420.4: a misreading by 100 mm")
}
