package vehicles

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestRefusedTextsAreKeptInTheFile(t *testing.T) {
	was := Demo()
	all := []Refusal{
		{Of: "obstruction fuel tank", Name: "fuel tank", Field: "low", Label: "bottom", Text: "203", Why: "too long", About: "x0"},
		{Of: "floor", Name: "floor", Field: "width", Label: "width", Why: "needed"},
	}
	job := was.WithRefused(all)
	assert.Empty(t, was.Refused(), "the old job stays as it was")
	assert.False(t, job.Settled())
	again, err := ParseJob(job.Format(), "a.toml")
	require.NoError(t, err)
	assert.Equal(t, all, again.Refused())
	assert.Equal(t, string(job.Format()), string(again.Format()))
	assert.Equal(t, was, again.WithRefused(nil))
	assert.Equal(t, "bottom of fuel tank, 203", all[0].String())
	assert.Equal(t, "width of floor, emptied", all[1].String())
}

func TestOnlyTheNewestRefusedTextsCount(t *testing.T) {
	var all []Refusal
	for i := range 2*MostRefused + 1 {
		all = append(all, Refusal{Of: "floor", Name: "floor", Field: fmt.Sprint("f", i), Label: "width", Text: fmt.Sprint(i)})
	}
	job := NewJob("TL-09").WithRefused(all)
	assert.Equal(t, 2*MostRefused+1, job.RefusedCount())
	newest := job.Refused()
	require.Equal(t, all[MostRefused+1:], newest)
	assert.Equal(t, newest, job.RefusedOf("floor"))
	assert.Empty(t, job.RefusedOf("heater"))

	job = job.WithRefused(newest[1:])
	assert.Equal(t, 2*MostRefused, job.RefusedCount(), "one was put right")
	assert.Equal(t, all[MostRefused], job.Refused()[0], "and an older one comes up")
	again, err := ParseJob(job.Format(), "a.toml")
	require.NoError(t, err)
	assert.Equal(t, string(job.Format()), string(again.Format()), "the file keeps all")
	assert.False(t, job.WithRefused(nil).Settled())
	assert.Empty(t, job.WithRefused(nil).WithRefused(nil).WithRefused(nil).Refused())
}

func TestWordsForRefusedTextsAreBounded(t *testing.T) {
	var all []Refusal
	for range MostRefused {
		all = append(all, Refusal{Name: strings.Repeat("n", 2000), Label: "bottom", Text: strings.Repeat("é", 2000)})
	}
	words := RefusedWords(all)
	assert.Contains(t, words, "100 readings were refused and are not in the job: bottom of nnn")
	assert.Contains(t, words, "éé...; and 95 more")
	assert.Less(t, len([]rune(words)), 900)
	assert.NotContains(t, RefusedWords(all[:5]), "more")
}

func TestANewFloorIsAGuess(t *testing.T) {
	job := NewJob("TL-09")
	assert.Equal(t, FloorKeys, job.Guesses)
	assert.False(t, job.Settled())
	again, err := ParseJob(job.Format(), "a.toml")
	require.NoError(t, err)
	assert.Equal(t, FloorKeys, again.Guesses)
	for _, key := range FloorKeys {
		again = again.WithoutGuess(key)
		assert.NotContains(t, again.Guesses, key)
	}
	assert.Empty(t, again.Extra)
	assert.True(t, again.Settled())
	van, _ := FromLibrary(Library()[0].Name)
	assert.Len(t, van.Guesses, len(FloorKeys))
	assert.Len(t, CarryOver(Demo(), "TL-10").Guesses, len(FloorKeys), "another van's floor was not measured on this one")
	assert.Empty(t, Demo().Guesses)
	assert.True(t, extraRead(t, map[string]any{"guesses": "floor.from", "refused": 7}).Settled(), "what others keep there is theirs")
}
