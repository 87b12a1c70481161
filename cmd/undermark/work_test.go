package main

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// worked is the sample van with some of the work done: one step before its time, one value amiss, one step that is none of its own.
func worked() string {
	job := vehicles.Demo()
	for _, d := range []vehicles.Done{
		{Step: "depth", At: "2026-11-27T10:15:00", Value: vehicles.Some(36.5), Note: "at the rim\nof the pilot", Photos: vehicles.List[string]{"rim.jpg"}},
		{Step: "sawn", At: "2026-11-27T11:00:00"}, {Step: "retorque", Due: "2026-12-11"}, {Step: "seat-wait", At: "2026-11-27", Value: vehicles.Some(12)},
	} {
		job = job.WithDone(d)
	}
	return string(job.Format())
}

func TestWorkAnswersPeopleAndPrograms(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	code, out, complaint := call(worked(), "work", "-")
	require.Zero(t, code, complaint)
	assert.Contains(t, out, "TL-07: the work, step by step; 2 of 58 done.\n")
	assert.Contains(t, out, "[ ]\tstands\t\t\t\tStand the van on firm level ground")
	assert.Contains(t, out, "[x]\tdepth\t36.5\tmm\t2026-11-27 10:15\t")
	assert.Contains(t, out, "36.5 mm: 8 to 34 mm is expected. Depth of the floor, mm: 8 to 34 mm")
	assert.Contains(t, out, "note: at the rim of the pilot. photos: rim.jpg.")
	assert.Contains(t, out, "Saw the hole. Here: 127 mm across; the saw turns 68 rpm, in steel, at most; oil it, and let up before it is through. foul now: cut: brake pipe across, and 3 more. See Checks. Not done before it: pilot looked at. A hole can't be uncut.")
	assert.Contains(t, out, "Not while foul: cut: brake pipe across, and 3 more. See Checks.\n")
	assert.Contains(t, out, "recorded, and no step of this job: seat wait 12 min 2026-11-27\n")
	assert.Contains(t, out, "[ ]\tretorque\t\t\t\tHave the owner back on the day that was agreed")
	assert.Contains(t, out, "looked at. to be done on 2026-12-11.\n")

	code, out, _ = call(worked(), "work", "--first-run", "-")
	require.Zero(t, code)
	assert.Contains(t, out, "\n[ ]\tCO inside\t\tppm\t\t")
	assert.NotContains(t, out, "\tstands\t")

	code, out, _ = call(worked(), "work", "--json", "-")
	require.Zero(t, code)
	var said struct {
		Done  int
		Steps []struct {
			Step, Part, Do, Amiss, Due string
			At                         *string
			Value, Least, Most         *float64
			Early                      bool
			After, Photos              []string
		}
		Elsewhere []struct{ Step string }
	}
	require.NoError(t, json.Unmarshal([]byte(out), &said))
	require.Len(t, said.Steps, 58)
	assert.Equal(t, 2, said.Done)
	assert.Equal(t, "seat-wait", said.Elsewhere[0].Step)
	for _, s := range said.Steps {
		switch s.Step {
		case "depth":
			assert.Equal(t, "2026-11-27T10:15:00", *s.At)
			assert.Equal(t, []float64{36.5, 8, 34}, []float64{*s.Value, *s.Least, *s.Most})
			assert.NotEmpty(t, s.Amiss)
			assert.Equal(t, []string{"rim.jpg"}, s.Photos)
		case "sawn":
			assert.True(t, s.Early)
			assert.Equal(t, []string{"pilot-looked"}, s.After)
		case "retorque":
			assert.Equal(t, "2026-12-11", s.Due)
			assert.Nil(t, s.At)
		default:
			assert.Nil(t, s.At, s.Step)
			assert.False(t, s.Early, s.Step)
		}
	}
}

// What is done changes nothing of what a job is judged to be.
func TestWhatIsDoneIsNotJudged(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	_, plain, _ := call(string(vehicles.Demo().Format()), "check", "--json", "-")
	_, done, complaint := call(worked(), "check", "--json", "-")
	assert.Empty(t, complaint)
	assert.Equal(t, plain, done)
}

func TestWorkSaysWhatIsWrong(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	for _, c := range []struct {
		code     int
		says, in string
		args     []string
	}{
		{exitUsage, "work needs a job file", "", nil},
		{exitUsage, "keep one of them", worked(), []string{"--first-run", "--json", "-"}},
		{exitFailed, "nowhere.toml", "", []string{"nowhere.toml"}},
		{exitFailed, `did you mean "cooled"?`, worked() + "[[done]]\nstep = \"coled\"\n", []string{"-"}},
	} {
		code, out, complaint := call(c.in, append([]string{"work"}, c.args...)...)
		assert.Equal(t, c.code, code, c.args)
		assert.Empty(t, out)
		assert.Contains(t, complaint, c.says)
		assert.Equal(t, 1, strings.Count(complaint, "\n"), complaint)
	}
	code, out, _ := call(bareJob, "work", "-")
	assert.Zero(t, code)
	assert.Contains(t, out, "0 of 6 done")
}
