package runs

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// On the smallest screen plan and profile stay where they are whichever place of a run is picked, whatever is done to it and however it is said: a
// muffler that is slid is seen to hang level, a drain hole to be where the run is lowest.
func TestBothPicturesStayWhileARunIsWorkedOn(t *testing.T) {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1405, 195}
	job = job.WithCut(cut)
	work := map[string][]string{
		"of the exhaust":   {"m", "<right>", "<left>", "<space>", "<space>", "<right>", "c", "<right>", "w", "<right>", "n", "d", "r", "i", "x", "y", "o"},
		"of the intake":    {"<tab>", "c", "<right>", "w", "<left>", "n", "d", "i"},
		"of the fuel line": {"<tab>", "<tab>", "m", "<right>", "<left>", "c", "<right>", "n", "d", "i"},
	}
	for of, keys := range work {
		d := screentest.New(t, New(), job, 60, 17)
		pressed := ""
		for _, k := range keys {
			d.Said = ""
			d.Type(k)
			pressed += k
			assertBoth(t, d, of+", after "+pressed)
		}
	}
	{ // each place of each run
		d := screentest.New(t, New(), job, 60, 17)
		for range vehicles.RunKinds {
			for range d.Screen.(screen).parts(d.State) {
				if here, _ := d.Screen.(screen).here(d.State); here.lies() {
					assertBoth(t, d, name(here))
				}
				d.Type(".")
			}
			d.Type("<tab>")
		}
	}
}

// assertBoth looks that plan and profile are seen beside what was said last, in a terminal of 60 by 20.
func assertBoth(t *testing.T, d *screentest.Driver, when string) {
	t.Helper()
	said := len(desk.Wrap(d.Said, 60))
	require.LessOrEqual(t, said, 2, "%s: %s", when, d.Said)
	view := d.View(60, 17-max(said, 1))
	assert.Contains(t, view, "SEEN FROM BELOW", when)
	assert.Contains(t, view, "SEEN FROM BESIDE THE RUN", "%s: %s", when, d.Said)
	m := d.Screen.(screen)
	if here, ok := m.here(d.State); ok {
		told := strings.Fields(m.told(here, d.State))
		assert.Contains(t, view, strings.Join(told[:2], " "), "%s: what is picked is told", when)
	}
}

// A danger has a row beside both pictures, as much of its words as that holds, and all of them where e shows the whole panel.
func TestADangerLeavesThePictures(t *testing.T) {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1405, 195}
	text := string(job.WithCut(cut).Format()) + `
[[obstruction]]
name = "second tank"
kind = "fuel tank"
x = [1500, 1600]
y = [-60, -20]
drop = [60, 320]
`
	job, err := vehicles.ParseJob([]byte(text), "two-tanks.toml")
	require.NoError(t, err)
	const brief, whole = "Fuel tank within 300 mm, not known to hold diesel (e: more)", "lower it and take it out, or choose another place."
	d := screentest.New(t, New(), job, 60, 17)
	require.Len(t, rules.Dangers(&d.State.Result), 1)
	assertBoth(t, d, "beside a danger")
	assert.Contains(t, d.View(60, 16), brief)
	assert.NotContains(t, d.View(60, 16), whole)
	d.Type("e")
	assert.Contains(t, strings.Join(strings.Fields(d.View(60, 16)), " "), whole)
	assert.Contains(t, strings.Join(strings.Fields(d.View(100, 27)), " "), "not known to │", "beside the pictures is room")
}

// What is dangerous is told in a row of its own down to the smallest screen, and never without what it forbids.
func TestADangerIsToldInARow(t *testing.T) {
	for _, c := range rules.Cautions() {
		if c.Brief == "" {
			continue
		}
		row := moving.InARow(c.Brief, keyProfile, 60)
		assert.LessOrEqual(t, desk.Width(row), 60, row)
		assert.True(t, strings.HasSuffix(row, " (e: more)"), row)
		assert.Equal(t, strings.Contains(c.Brief, "do not"), strings.Contains(row, "do not"), row)
		assert.Equal(t, c.Brief, moving.InARow(c.Brief, keyProfile, 200))
	}
}

// What is shown, from Checks, has a row there, too.
func TestWhatIsShownLeavesThePictures(t *testing.T) {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1405, 195}
	d := screentest.New(t, New(), job.WithCut(cut), 60, 17)
	found := 0
	for i := range d.State.Result.Findings {
		if f := &d.State.Result.Findings[i]; d.Screen.(screen).concerns(f) {
			found++
			d.State.Focus = f
			assertBoth(t, d, f.About())
			assert.Contains(t, d.View(60, 16), f.About(), "and its name is whole")
		}
	}
	assert.Greater(t, found, 50)
}

// A worst finding of a long name takes no more than the row that is there for it, and the picture nothing.
func TestALongNameLeavesThePictures(t *testing.T) {
	const long = "tank of reductant behind the right-hand panel"
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1405, 195}
	job = job.WithCut(cut)
	for i := range job.Obstructions {
		if job.Obstructions[i].Name == "reductant tank" {
			o := job.Obstructions[i]
			o.Name = long
			job.Obstructions = job.Obstructions.With(i, o)
		}
	}
	d := screentest.New(t, New(), job, 60, 17)
	assertBoth(t, d, long)
	assert.Regexp(t, `(?m)^doubtful +exhaust: tank of reductant behind … +1070\.3 +± 2\.6`, d.View(60, 16))
	assert.Regexp(t, `(?m)^doubtful +exhaust: tank of reductant behind +1070\.3 .*\n +the right-hand panel *$`, d.View(60, 14), "whole where there is room")
}

// So it is where a run is begun, point by point.
func TestBothPicturesStayWhileARunIsBegun(t *testing.T) {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1405, 195}
	job = stripped(job.WithCut(cut), vehicles.RunKinds[:]...)
	for _, kind := range []string{vehicles.Diesel, ""} {
		for i, o := range job.Obstructions {
			if o.Is(vehicles.VanTank) {
				o.Holds = kind
				job.Obstructions = job.Obstructions.With(i, o)
			}
		}
		for _, of := range vehicles.RunKinds {
			d := screentest.New(t, New(), job, 60, 17)
			d.Type(strings.Repeat("<tab>", int(of)) + "a")
			require.NotNil(t, d.State.Job.Run(of))
			assertBoth(t, d, of.String()+" begun")
			d.Said = ""
			d.Type("a")
			assertBoth(t, d, of.String()+" gone on with")
		}
	}
}
