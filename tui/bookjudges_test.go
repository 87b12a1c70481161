package tui

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// A job whose own limit leaves a chain as it was read is opened, saved and taken up again by that limit.
func TestAJobIsSavedByTheLimitThatJudgesIt(t *testing.T) {
	job := string(vehicles.NewJob("TL-07").Format()) + `[[obstruction]]
name = "box"
kind = "other"
x = [652, "+0.5"]
y = [100, 200]
total = { x = 650 }
[rules]
"chain.closure" = 0.1
`
	o := options(t)
	require.NoError(t, os.WriteFile(o.Path, []byte(job), 0o644))
	b := started(t, o)
	require.Empty(t, b.desk.State.Faults)
	b.press("e", "ctrl+s")
	assert.False(t, b.desk.State.Dirty)
	document, err := vehicles.Load(o.Path, o.Book)
	require.NoError(t, err)
	assert.Equal(t, b.desk.State.Job.Notes, document.Job.Notes)
}
