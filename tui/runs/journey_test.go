package runs

import (
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// mostKeys is how many keys it may take a fitter to lay exhaust, intake and fuel line of the sample van.
const mostKeys = 60

// The sample van with the cut where it can be: all three runs are taken away and laid anew by keys alone in the smallest window, with muffler,
// its drain answered, clips and pump, and break no rule that the runs as they were did not. Undo takes all of it back.
func TestTheSampleVansRunsAreLaidByKeys(t *testing.T) {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1405, 195}
	job = job.WithCut(cut)
	unclear := func(s *screentest.Driver) (names []string) {
		for _, f := range rules.ForPeople(s.State.Result.Findings) {
			if _, run := f.Subject.Sort.Run(); run && f.Verdict != rules.Clear {
				names = append(names, f.About())
			}
		}
		return names
	}
	before := unclear(screentest.New(t, New(), job, 60, 17))
	said := func(j vehicles.Job) []any { // of the runs beside their ways and what hangs where
		pump := *j.Fuel.Pump
		pump.Leg, pump.Start = 0, 0
		return []any{
			j.Exhaust.Across, j.Exhaust.Bend, j.Exhaust.Muffler.Length, j.Exhaust.Muffler.Across, j.Intake.Across, j.Intake.Bend,
			j.Fuel.Across, j.Fuel.Supply, pump,
		}
	}
	d := screentest.New(t, New(), job, 60, 17)
	n := d.Type("X<tab>X<tab>X<tab>") // each run taken away
	for _, of := range vehicles.RunKinds {
		require.Nil(t, d.State.Job.Run(of), of)
	}
	for _, keys := range []string{
		"a", "ddddddd", "y", "m", "<space>", "c", // below the stub, lower, out at the side; muffler and what its drain hole does; clips
		"<tab>", "a", "d", "a", "t2480<enter>150<enter><enter>", "a", "t2420<enter>300<enter>136<enter>", "c",
		"<tab>", "a", "s", "dd", "a", "d", "m", "c", // from the tank, below the rail
	} {
		n += d.Type(keys)
		d.View(60, 17)
	}
	t.Logf("%d keys", n)
	assert.Less(t, n, mostKeys)
	assert.Equal(t, vehicles.DrainDown, d.State.Job.Exhaust.Muffler.Drain)
	assert.NotEmpty(t, d.State.Job.Exhaust.Clips)
	assert.Equal(t, said(job), said(d.State.Job))
	assert.ElementsMatch(t, before, unclear(d))
	_, err := vehicles.ParseJob(d.State.Job.Format(), "laid.toml")
	require.NoError(t, err)
	for len(d.Steps()) > 0 {
		d.Undo()
		d.View(60, 17)
	}
	assert.Equal(t, string(job.Format()), string(d.State.Job.Format()))
}

// shownKeys is how many of a screen's keys the foot shows at the most.
const shownKeys = 6

// Somebody who presses only what the foot shows lays the three runs as well, with muffler, clips and pump: each key of this walk stands
// there when it is pressed.
func TestTheFootLeadsToWholeRuns(t *testing.T) {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1405, 195}
	job = job.WithCut(cut)
	for _, of := range vehicles.RunKinds {
		job = job.WithRun(of, nil)
	}
	d := screentest.New(t, New(), job, 60, 17)
	n := 0
	press := func(name string) {
		shown := d.Screen.Keys(d.State)[:shownKeys]
		msg := screentest.Keys(name)[0].(tea.KeyMsg)
		require.True(t, slices.ContainsFunc(shown, func(b key.Binding) bool { return key.Matches(msg, b) }), "%s after %d keys: %v", name, n, shown)
		d.Send(msg)
		n++
	}
	for _, name := range strings.Fields(plainWay) {
		press(name)
	}
	t.Logf("%d keys", n)
	assert.Less(t, n, mostKeys)
	for _, of := range vehicles.RunKinds {
		assert.Equal(t, []string{of.String() + ": reductant tank"}, unclear(of, d), "that one was not measured")
		assert.NotEmpty(t, d.State.Job.Run(of).Clips, of)
	}
	assert.NotNil(t, d.State.Job.Exhaust.Muffler)
	assert.NotNil(t, d.State.Job.Fuel.Pump)
	assert.Equal(t, vehicles.Diesel, d.State.Job.Fuel.Supply.Kind, "its tank holds that")
}

// plainWay is that walk: below the stub, lower, out at the side; ahead in long steps, then aside and back; from the tank below the rail.
var plainWay = "a d d d d d d d y m c" +
	" tab a a s" + strings.Repeat(" right", 25) + " a left left left left left down down down d c" +
	" tab a d d a d m c"

// The screen says what is picked and where it is, at every size, whatever it is.
func TestWhatIsPickedIsNamedWithItsPlace(t *testing.T) {
	for _, job := range []vehicles.Job{screentest.Full(t), screentest.State(t).Job} {
		for _, size := range screentest.Sizes {
			d := screentest.New(t, New(), job, size.W, size.H)
			for range vehicles.RunKinds {
				for range 25 {
					m := d.Screen.(screen)
					here, ok := m.here(d.State)
					if !ok {
						break
					}
					words := strings.Fields(m.told(here, d.State))
					assert.Contains(t, d.View(size.W, size.H), strings.Join(words[:3], " "), "%s of the %s", name(here), m.of)
					d.Type(".")
				}
				d.Type("<tab>")
			}
		}
	}
}
