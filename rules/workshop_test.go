package rules

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/adrg/xdg"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// A workshop's own book lies where the system keeps settings; one that is wrong is told of, and the built-in one holds.
func TestAWorkshopsBookIsFoundByItself(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", dir)
	xdg.Reload()
	t.Cleanup(xdg.Reload)
	length := func() (limit Limit, err error) {
		book, err := WorkshopBook()
		require.NotNil(t, book)
		limit, ok := book.Lookup("exhaust.length", "")
		require.True(t, ok)
		return limit, err
	}
	limit, err := length()
	require.NoError(t, err)
	assert.Equal(t, BuiltIn, limit.Book)

	require.NoError(t, os.MkdirAll(filepath.Dir(WorkshopPath()), 0o700))
	require.NoError(t, os.WriteFile(WorkshopPath(), []byte("format = 1\n[[rule]]\nid = \"exhaust.length\"\nvalue = 1500\n"), 0o600))
	limit, err = length()
	require.NoError(t, err)
	assert.Equal(t, []any{Workshop, 1500.0, Workshop}, []any{limit.Book, limit.Value.Value, limit.Source}, "without a source it is the workshop's word")

	require.NoError(t, os.WriteFile(WorkshopPath(), []byte("format = 1\n[[rule]]\nid = \"exhaust.lenght\"\nvalue = 1500\n"), 0o600))
	limit, err = length()
	require.ErrorContains(t, err, WorkshopPath()+":3: ")
	assert.Equal(t, BuiltIn, limit.Book)

	_, err = LoadBook(dir)
	require.Error(t, err, "a folder is no book")
}

// What an entry may carry beside what it says: it changes nothing, as unit and words are the rule's.
func TestAWorkshopsBookMayBeACopy(t *testing.T) {
	book, err := LoadBook(writeBook(t, `format = 1
[[rule]]
id = "exhaust.clearance"
unit = "inch"
sense = "least"
title = "Far"
ask = "Why?"
value = 90
[rule.kinds]
wiring = 130
[rule.sources]
wiring = "the loom's maker"
`))
	require.NoError(t, err)
	for kind, want := range map[string][]any{"": {90.0, Workshop}, "wiring": {130.0, "the loom's maker"}} {
		limit, ok := book.Lookup("exhaust.clearance", kind)
		require.True(t, ok)
		assert.Equal(t, want, []any{limit.Value.Value, limit.Source})
		assert.Equal(t, []any{MM, rulesByID()["exhaust.clearance"].Title}, []any{limit.Unit, limit.Title})
	}
}

// The shading of the floor is made afresh only when it would come out otherwise.
func TestTheDoubtOfACutChangesWithTheVanNotWithTheCut(t *testing.T) {
	job := tidy()
	doubt := func(j vehicles.Job) Doubt {
		result := judged(t, j)
		return DoubtOfCut(Doubt{}, &result)
	}
	before := doubt(job)
	moved := *job.Cut
	moved.At = [2]float64{1500, -100}
	assert.True(t, before.Same(doubt(job.WithCut(moved))))
	wider := *job.Cut
	wider.Across = 140
	assert.False(t, before.Same(doubt(job.WithCut(wider))))
	shifted := job.Obstructions[3]
	shifted.X = vehicles.Pair{at(900), at(960)}
	elsewhere := job
	elsewhere.Obstructions = job.Obstructions.With(3, shifted)
	assert.False(t, before.Same(doubt(elsewhere)))
	own := job.WithRule("cut.clearance", 55)
	assert.False(t, before.Same(doubt(own)))
	result := judged(t, job)
	room, other := RoomForCut(&result), judged(t, own)
	assert.True(t, room.Same(RoomForCut(&result)))
	assert.False(t, room.Same(RoomForCut(&other)))

	at := geometry.Point{X: 2600, Y: 100}
	none := RoomForCut(&result).Margins.At(at).Margin
	assert.Greater(t, none, before.Sure.Margins.At(at).Margin, "less is surely open")
	assert.Less(t, none, before.Possible.Margins.At(at).Margin, "more may be")
}

// What is still open is what nobody entered or looked for, and what was looked for elsewhere.
func TestWhatIsStillOpen(t *testing.T) {
	job := tidy()
	job.Obstructions = job.Obstructions[:2] // crossmember and chassis rail
	for _, kind := range vehicles.Kinds[2:] {
		job = job.WithLooked(kind, true)
	}
	result := judged(t, job)
	assert.Empty(t, result.Open())
	job = job.WithLooked("wiring", false)
	result = judged(t, job)
	assert.Equal(t, []string{"wiring"}, result.Open())
	moved := *job.Cut
	moved.At[0] += 51
	result = judged(t, job.WithCut(moved))
	assert.Equal(t, "wiring", result.Open()[0])
	assert.Contains(t, result.LookedElsewhere, "fuel tank", "more than 50 mm from where was looked")
	assert.NotContains(t, result.Open(), "crossmember", "it was entered")
	assert.Len(t, result.Open(), len(vehicles.Kinds)-2)
}
