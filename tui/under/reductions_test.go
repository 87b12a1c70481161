package under

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// reductions is how often a job is reduced while something is done.
func reductions(do func()) int64 {
	before := vehicles.Reductions.Load()
	do()
	return vehicles.Reductions.Load() - before
}

func TestAnUnfinishedThingIsReducedOnceAChange(t *testing.T) {
	r := screentest.New(t, New(), empty(), 100, 40)
	r.Type("nk210<enter>+30")
	require.Empty(t, r.State.Job.Obstructions)
	require.Contains(t, r.View(100, 40), "= 2", "what the readings come to")
	assert.Zero(t, reductions(func() { r.View(100, 40); r.View(160, 47) }), "pictures of the same job")
	r.Type("0")
	assert.EqualValues(t, 1, reductions(func() { r.View(100, 40); r.View(100, 40) }))
	r.Undo()
	assert.EqualValues(t, 1, reductions(func() { r.View(100, 40); r.View(100, 40) }))
}

// A text is tried once, and the job that keeps it is judged once.
func TestARefusedTextIsTriedOnce(t *testing.T) {
	r := tank(t)
	r.Type("<enter>" + toBottom)
	for _, key := range []string{"2", "5"} {
		assert.EqualValues(t, 2, reductions(func() { r.Type(key) }), "taken: tried, judged")
	}
	assert.EqualValues(t, 2, reductions(func() { r.Type("0") }), "250 is refused")
	assert.EqualValues(t, 2, reductions(func() { r.Type("0") }), "2500 is too")
	assert.Len(t, r.State.Job.Refused(), 1)
	assert.Contains(t, r.State.Job.Refused()[0].Why, "the tape reads 210 mm")
}
