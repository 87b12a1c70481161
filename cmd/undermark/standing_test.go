package main

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// withCableAtCut is the sample with a high-voltage cable through its cut.
func withCableAtCut() vehicles.Job {
	job := vehicles.Demo()
	at := func(p float64) survey.Reading { return survey.FromNumber(p, false) }
	x, y := job.Cut.At[0], job.Cut.At[1]
	job.Obstructions = job.Obstructions.Insert(len(job.Obstructions), vehicles.Obstruction{
		Name: "orange cable", Kind: "high-voltage cable", Measured: true, Drop: vehicles.Span{From: 20, To: 40, Set: true},
		Place: vehicles.Place{Shape: vehicles.Piped, Path: []vehicles.Pair{{at(x - 100), at(y)}, {at(x + 300), at(y)}}, Across: vehicles.Some(20)},
	})
	return job
}

// Whoever only reads the numbers must not miss what kills: it stands before them.
func TestWhatKillsStandsUnderTheFirstLine(t *testing.T) {
	text := string(withCableAtCut().Format())
	result, faults := rules.Judge(withCableAtCut(), rules.Builtin())
	require.Empty(t, faults)
	dangers := rules.Dangers(&result)
	require.Len(t, dangers, 1)
	for _, command := range []string{"check", "marks"} {
		_, out, complaint := call(text, command, "-")
		require.Empty(t, complaint)
		lines := strings.Split(out, "\n")
		assert.Equal(t, dangers[0], lines[1], command)
		assert.Empty(t, lines[2], command)

		_, out, _ = call(text, command, "--json", "-")
		var read struct{ Dangers []string }
		require.NoError(t, json.Unmarshal([]byte(out), &read))
		assert.Equal(t, dangers, read.Dangers, command)

		_, out, _ = call(string(vehicles.Demo().Format()), command, "--json", "-")
		assert.NotContains(t, out, "dangers", "the sample's tank holds diesel")
	}
}

// A pilot that is not there moves nothing; one that is there, and a centre elsewhere, take another.
func TestWhatMovingTheCentreTakes(t *testing.T) {
	job := vehicles.Demo()
	_, out, _ := call(string(job.Format()), "marks", "-")
	assert.NotContains(t, out, "centre may move", "nothing is drilled yet")
	at := func(p float64) survey.Reading { return survey.FromNumber(p, false) }
	cut := *job.Cut
	drilled := job.WithCut(cut).WithDrilled(&vehicles.Pair{at(cut.At[0] + 2), at(cut.At[1])})
	_, out, _ = call(string(drilled.Format()), "marks", "-")
	assert.Contains(t, out, "the centre may move 56.5 mm. All else here is set off the hole.\nA centre beside the pilot hole takes a clamped guide board nearer than 12 mm, a new pilot up to 56.5 mm: the old hole goes with the disc.\n")
}

// A job is clear of what was entered until nobody is left to be asked anything.
func TestClearIsOfWhatWasEnteredTillAllIsAnswered(t *testing.T) {
	said := func(air string) string {
		var job strings.Builder
		job.WriteString(bareJob +
			"[cut]\nat = [1200, 200]\nacross = 127\n[heater]\nclass = \"2 kW\"\n" + air +
			"[[obstruction]]\nname = \"rail\"\nkind = \"chassis rail\"\nx = [100, 3000]\ny = [700, 780]\ndrop = [0, 90]\n[looked]\n")
		for _, kind := range vehicles.Kinds {
			if kind != "chassis rail" {
				job.WriteString("\"" + kind + "\" = true\n")
			}
		}
		code, out, complaint := call(job.String(), "check", "-")
		require.Zero(t, code, complaint)
		first, _, _ := strings.Cut(out, "\n")
		return first
	}
	assert.Equal(t, "TL-07: clear of what was entered", said(""), "nobody has said where its air comes from")
	assert.Equal(t, "TL-07: clear", said("air = \"outside\"\n"))
}
