package tui

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// refusing starts on a job file in which a reading was refused, its floor measured.
func refusing(t *testing.T) (*bench, Options) {
	job := vehicles.NewJob("TL-07")
	for _, key := range vehicles.FloorKeys {
		job = job.WithoutGuess(key)
	}
	job = job.WithRefused([]vehicles.Refusal{
		{Of: "obstruction fuel tank", Name: "fuel tank", Field: "low", Label: "bottom", Text: "203", Why: "the tape is too short"},
	})
	o := options(t)
	require.NoError(t, os.WriteFile(o.Path, job.Format(), 0o644))
	return started(t, o), o
}

const isRefused = "one reading was refused and is not in the job: bottom of fuel tank, 203"

func TestSavingSaysWhatWasRefused(t *testing.T) {
	b, o := refusing(t)
	assert.Contains(t, b.rows()[1], "1 refused and not in the job")
	b.press("ctrl+s")
	assert.True(t, b.shows(isRefused))
	b.press("e", "ctrl+s")
	assert.True(t, b.shows(isRefused+" (Saved in van.toml)"))
	document, err := vehicles.Load(o.Path)
	require.NoError(t, err)
	assert.Len(t, document.Job.Refused(), 1)
}

func TestQuittingSaysWhatWasRefused(t *testing.T) {
	b, _ := refusing(t)
	b.press("ctrl+c")
	assert.False(t, b.quit)
	assert.True(t, b.shows(isRefused))
	b.press("ctrl+c", "esc")
	assert.False(t, b.quit, "Esc stays")
	b.press("e", "ctrl+c")
	assert.True(t, b.shows(isRefused))
	b.press("1")
	assert.True(t, b.quit)
	b, _ = refusing(t)
	b.press("ctrl+c", "1")
	assert.True(t, b.quit)
}

func TestTheHeadingSaysThatTheFloorIsAGuess(t *testing.T) {
	b, o := opened(t)
	assert.Contains(t, b.rows()[1], "the floor is a guess")
	job := vehicles.NewJob("TL-07").WithoutGuess("floor.width")
	require.NoError(t, os.WriteFile(o.Path, job.Format(), 0o644))
	b.Root.journal.close()
	assert.Contains(t, started(t, o).rows()[1], "4 of the floor's sizes guessed")
}

func TestTheNameToSaveUnderIsGoneOnFrom(t *testing.T) {
	p := newPrompt("Save the job in which file?", "File", "van.toml", nil, func() {})
	b, _ := opened(t)
	msg, _ := keyNamed("2")
	p.update(b.Root, msg)
	assert.Equal(t, "van.toml2", p.fields[0].Text)
}
