//go:build !windows

package main

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// goes presses the keys of a step as a hand does: what follows an Esc before it has been answered would belong to it.
func (s *terminal) goes(t *testing.T, step string) {
	t.Helper()
	for _, key := range screentest.Sent(step) {
		if key == "\x1b" {
			s.quiet(2 * still) // what comes from here on is its answer
		}
		before := len(s.output())
		s.keys(t, key)
		if key == "\x1b" {
			require.True(t, s.comes(patience, func() bool { return len(s.output()) > before }), "Esc is answered")
			s.quiet(2 * still)
		}
	}
	s.quiet(still)
}

// saves has the job saved, and returns it as its file has it.
func (s *terminal) saves(t *testing.T, file string) vehicles.Job {
	t.Helper()
	s.keys(t, "\x13")
	require.True(t, s.comes(patience, func() bool { return !s.dirty() }), "it is saved: %s", s.picture())
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	job, err := vehicles.ParseJob(text, file, rules.Builtin())
	require.NoError(t, err)
	return job
}

// From a van that nobody has measured to its marks, in the smallest terminal: what is typed is the file that a fitter would have written by hand, as it is
// through keys in process. The matching point that does not fit is read again, the cut goes to the best place, the runs are found, each kind is looked for,
// and all marks are made; the file is clear then, by the command too.
func TestFromANewVanToItsMarksInATerminal(t *testing.T) {
	notRaced(t)
	t.Parallel()
	file := filepath.Join(t.TempDir(), "van.toml")
	require.NoError(t, os.WriteFile(file, vehicles.NewJob("TL-07").Format(), 0o600))
	h := readHome(t)
	s := h.start(t, 60, 20, file)
	s.wait(t, "[Under]")
	for _, step := range screentest.VanByHand {
		s.goes(t, step)
	}
	got := s.saves(t, file)
	got.LookedAt, got.RunLooks, got.OpeningLooks = nil, nil, nil // where one looked: no hand writes that
	got.Held = nil                                               // nor that nobody said how the side tape is held
	want, err := vehicles.ParseJob(screentest.Hand, "hand.toml")
	require.NoError(t, err)
	assert.Equal(t, string(want.Format()), string(got.Format()))

	s.wait(t, "doubtful")
	for _, on := range handToTheGate {
		s.goes(t, on.keys)
		s.wait(t, on.shows)
	}
	for n := 0; strings.Contains(s.picture(), "is there any"); n++ {
		require.Less(t, n, len(vehicles.Kinds), s.picture())
		s.goes(t, "n n n n n n n n")
	}
	s.wait(t, "The job is clear of what was entered.")
	s.goes(t, "enter")
	s.wait(t, drilling)
	s.readOn(t)
	s.waitGone(t, drilling)
	s.ticksAll(t)
	s.clear(t, h, file)
	assert.Zero(t, s.quit(t))
}

// handToTheGate leads from the van that was typed to what is asked before its first mark: the keys of each step, and what shows then.
var handToTheGate = []struct{ keys, shows string }{
	{"3 home down enter down down down wipe r314 enter esc", "clear: the points agree as well as their tapes can tell,"},
	{"4 n", "Lay the runs anew"},
	{"5 j", "to spare: exhaust"},
	{"tab j", "to spare: intake"},
	{"6", "is there any"},
}

// clear has a job saved whose marks are made, and holds that it is judged clear, here and by the command, with all that was entered in it.
func (s *terminal) clear(t *testing.T, h home, file string) {
	job := s.saves(t, file)
	result, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	assert.Equal(t, rules.Clear, result.Verdict)
	assert.Empty(t, result.OpenIn(vehicles.AtCut), "each kind was entered or looked for")
	c := exec.Command(program, "check", file)
	c.Env = h.env()
	out, err := c.CombinedOutput()
	require.NoError(t, err, "%s", out)

	hand, err := vehicles.ParseJob(screentest.Hand, "hand.toml")
	require.NoError(t, err)
	assert.NotEqual(t, hand.Cut.At, job.Cut.At)
	assert.NotEqual(t, hand.Exhaust.Path, job.Exhaust.Path)
	require.NotNil(t, job.Intake)
	assert.Equal(t, "R 314", job.Ties[1].Above[1].Text)
	assert.Equal(t, hand.Obstructions, job.Obstructions)
	assert.Equal(t, hand.Heater, job.Heater)
}

// below is what the tape must say from below at the cut's centre, as the command says it of the file.
func (h home) below(t *testing.T, file string) (bumper, left float64) {
	c := exec.Command(program, "marks", "--json", file)
	c.Env = h.env()
	out, err := c.Output()
	require.NoError(t, err)
	var said struct {
		Marks []struct {
			Name  string
			Below struct{ Bumper, Left float64 }
		}
	}
	require.NoError(t, json.Unmarshal(out, &said))
	require.Equal(t, "cut centre", said.Marks[0].Name)
	return said.Marks[0].Below.Bumper, said.Marks[0].Below.Left
}

const bounce = 160 * time.Millisecond // no hand ticks twice within that, so that the program does not either

// ticksAll makes every mark that is left.
func (s *terminal) ticksAll(t *testing.T) {
	for n := 0; !strings.Contains(s.picture(), "All made"); n++ {
		require.Less(t, n, 100, s.picture())
		s.keys(t, "\r")
		time.Sleep(bounce)
		s.quiet(still)
	}
}

// firstRun are the steps of the first run, the last ones before it is cold again, with what is measured in each.
var firstRun = []struct{ step, value string }{
	{"alarm", ""}, {"outside", ""}, {"fuel-primed", "24"}, {"fuel-tight", ""}, {"start-current", "9"}, {"glow-voltage", "11.8"}, {"co-inside", "0"}, {"ran", "30"}, {"cooled", "5"},
	{"power-off", ""},
}

// runsFirst ticks the steps of the first run on Work and types what is measured.
func (s *terminal) runsFirst(t *testing.T) {
	s.goes(t, "9 end")
	on := func(box, step string) string { return "▸ " + box + " " + vehicles.StepName(step) }
	for n := 0; !strings.Contains(s.picture(), on("[ ]", firstRun[0].step)); n++ {
		require.Less(t, n, 40, s.picture())
		s.goes(t, "up")
	}
	for _, f := range firstRun {
		s.wait(t, on("[ ]", f.step))
		time.Sleep(bounce)
		s.keys(t, " ")
		s.wait(t, "[x] "+vehicles.StepName(f.step))
		if f.value != "" {
			s.goes(t, f.value+" esc")
		}
		s.goes(t, "down")
	}
}

// The sample van in a real terminal, from its foul cut to the first run: a whole layout is taken, the pilot hole typed, every mark made, the sheet
// printed, the first run ticked with what was measured; all of it is in the file.
func TestFromTheFoulCutToTheFirstRunInATerminal(t *testing.T) {
	notRaced(t)
	t.Parallel()
	file := filepath.Join(t.TempDir(), "van.toml")
	require.NoError(t, os.WriteFile(file, vehicles.Demo().Format(), 0o600))
	h := readHome(t)
	s := h.start(t, 100, 30, file)
	s.wait(t, "[1 Underneath]")
	for _, step := range screentest.SampleToThePilot {
		if strings.Contains(s.picture(), drilling) {
			s.readOn(t)
			s.waitGone(t, drilling)
			continue
		}
		s.goes(t, step)
		s.waitGone(t, "Looking for whole layouts")
	}
	s.wait(t, "Where did the pilot hole come out?")
	laid := s.saves(t, file)
	require.NotEqual(t, vehicles.Demo().Cut.At, laid.Cut.At)
	require.NotNil(t, laid.Exhaust.Muffler)
	bumper, left := h.below(t, file)
	s.goes(t, fmt.Sprintf("%.0f enter l%.0f enter", bumper, left))
	s.wait(t, "[6 Marks]")
	s.ticksAll(t)
	s.goes(t, "8 p")
	s.wait(t, "The sheet is in ")
	sheet, err := os.ReadFile(strings.TrimSuffix(file, ".toml") + "-sheet.pdf")
	require.NoError(t, err)
	assert.True(t, vector.Sealed(sheet), "it is whole")

	s.runsFirst(t)
	job := s.saves(t, file)
	assert.NotNil(t, job.Cut.Drilled)
	for _, f := range firstRun {
		done := job.DoneOf(f.step)
		assert.NotEmpty(t, done.At, f.step)
		if f.value != "" {
			want, err := strconv.ParseFloat(f.value, 64)
			require.NoError(t, err)
			assert.Equal(t, vehicles.Some(want), done.Value, f.step)
		}
	}
	assert.Zero(t, s.quit(t))
}

const drilling = "Read this before drilling"

// Matching points whose sides were swapped below are typed, named so, and put right with one key.
func TestSwappedPointsArePutRightInATerminal(t *testing.T) {
	notRaced(t)
	t.Parallel()
	file := filepath.Join(t.TempDir(), "van.toml")
	require.NoError(t, os.WriteFile(file, vehicles.NewJob("TL-07").Format(), 0o600))
	s := readHome(t).start(t, 100, 30, file)
	s.wait(t, "[1 Underneath]")
	s.goes(t, screentest.SwappedPoints)
	s.wait(t, "swapped")
	s.goes(t, screentest.PutRight)
	var ties []string
	for _, tie := range s.saves(t, file).Ties {
		ties = append(ties, strings.Join([]string{tie.Name, tie.Below[0].Text, tie.Below[1].Text, tie.Above[0].Text, tie.Above[1].Text}, " "))
	}
	assert.Equal(t, []string{"bolt 2954 L 328 2952 L 325", "eye 439 R 410 434 R 413", "drain 1530 L 520 1528 L 518"}, ties)
	assert.Zero(t, s.quit(t))
}
