package vehicles

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestAnyJobIsReadBackAsItWasWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := anyJob(t)
		text := job.Format()
		again, faults := parse(text, "again.toml")
		require.Empty(t, faults, "%s", text)
		require.Equal(t, job, again, "%s", text)
		require.Equal(t, string(text), string(again.Format()))
	})
}

// The sample of the file format, in its own order and style, is what Format writes, comments and defaults aside.
func TestFormatWritesTheHouseStyle(t *testing.T) {
	text := `format = 1

[job]
ref = "TL-07"
date = 2026-11-25
notes = """
Rear "half" measured
on the ramp."""

[floor]
from = 40
length = 3200
width = 1780
thickness = 31
ground = 460.5

[datum]
hook_below = 150
frames = 2

[tape]
class = "II"

[[obstruction]]
name = "rear crossmember"
kind = "crossmember"
x = [652, "+84"]
y = [-850, 850.0]
drop = [0, 95]
turn = -5.5
taped_at = 95

[[obstruction]]
name = "brake pipe, right"
kind = "brake line"
path = [[300, "R 410"], [1500, "2'6 1/2\""]]
across = 8
measured = false

[[opening]]
name = "sliding door"
kind = "door"
path = [[1900, -890], [3000, -890]]
drop = [-1500, -22]

[[fitting]]
name = "battery box"
x = [1900, 2300]
y = [300, 840]
rise = [0, 400]

[[tie]]
name = "seat bolt, rear left"
below = [1458, "L 320"]
above = [1452, "L 316"]
use = false

[heater]
class = "2 kW"
body = [320, 125, 125]
space = { front = 200, rear = 150, sides = 50, top = 50 }

[cut]
at = [1210, 240]
across = 127
drilled = ["1222", "L 652"]

[exhaust]
across = 26
path = [[1245, 265, 110], [300, 640, 185]]
muffler = { leg = 2, start = 150, length = 180, across = 68 }
clips = [250, 600, 1000]

[fuel]
kind = "diesel"
across = 4.5
tank = { at = [2600, 500], rise = [50, 350] }
path = [[2600, 500, -72], [1210, 205, 45]]
pump = { leg = 1, start = 100, tilt = 45, hz = 1 }

[looked]
"brake line" = true
wiring = false

[[wheel]]
at = [900, 780]
across = 690
width = 215

[rules]
"cut.clearance.brake line" = 60

[extra]
"a b" = 1979-05-27
c = 4.0
[extra.d]
e = [1, "x"]
`
	job, faults := parse([]byte(text), "a.toml")
	require.Empty(t, faults)
	assert.Equal(t, text, string(job.Format()))
}

func TestWhatIsLeftOutStaysLeftOut(t *testing.T) {
	job, faults := parse([]byte(head+"[heater]\nyaw = 90\n"), "a.toml")
	require.Empty(t, faults)
	text := string(job.Format())
	assert.True(t, strings.HasSuffix(text, "\n[heater]\nyaw = 90\n"), text)
	assert.Equal(t, [3]float64{320, 125, 125}, job.Heater.Body)
	for _, word := range []string{"class", "datum", "tape", "vehicle", "date"} {
		assert.NotContains(t, text, word)
	}
}

// A date that is none is kept for the fitter to put right, and not saved as if it were one.
func TestADateThatIsNoneIsNotLost(t *testing.T) {
	job := NewJob("TL-09")
	job.Date = "next week"
	assert.Contains(t, string(job.Format()), `date = "next week"`)
	_, faults := parse(job.Format(), "a.toml")
	require.Len(t, faults, 1)
}

// What a person types or pastes into a text is no TOML, however much it looks like it.
func TestTextsMayHoldAnyNumberOfBrackets(t *testing.T) {
	for _, text := range []string{
		strings.Repeat("[", 500), strings.Repeat("a.", 500), strings.Repeat(`{"`, 500), strings.Repeat("[\n", 500), strings.Repeat(`'[#"`, 500),
		strings.Repeat(`"""[`, 500), strings.Repeat(`\[`, 500), "it's " + strings.Repeat(" [31m", 500), strings.Repeat("# [", 500),
	} {
		job := NewJob("TL-09")
		job.Notes, job.Fitter = text, strings.ReplaceAll(text, "\n", " ")
		job = job.WithRefused([]Refusal{{Of: "floor", Name: text, Field: text, Label: "width", Text: text}})
		again, err := ParseJob(job.Format(), "a.toml")
		require.NoError(t, err, "%.20q", text)
		assert.Equal(t, job.Notes, again.Notes)
		assert.Equal(t, job.Refused(), again.Refused())
	}
}

func TestDepthBehindTextsIsFound(t *testing.T) {
	for _, text := range []string{
		"", "# it's [[[\n", `b = "it's \" [[["` + "\n", `b = 'it is " [[[\'` + "\n", "b = '''\n\"[[[\n'''\n", "b = \"\"\"\n'\\\"[[[ \"\"\"\"\n",
	} {
		_, err := ParseJob([]byte("format = 1\n[extra]\n"+text+"a = "+strings.Repeat("[", deepest+1)), "a.toml")
		assert.ErrorContains(t, err, "more than 100 deep", "%q", text)
	}
}

func FuzzParseJobNeverPanicsAndWhatItReadsIsWrittenBack(f *testing.F) {
	for _, b := range broken {
		f.Add([]byte(head + b.text))
	}
	for _, file := range sampleJobs(f) {
		f.Add(mustRead(f, file))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 20000 {
			return
		}
		_, err := ParseJob(data, "a.toml")
		if err != nil {
			for _, line := range strings.Split(err.Error(), "\n") {
				require.True(t, strings.HasPrefix(line, "a.toml:"), "%q", line)
			}
		}
		job, faults := parse(data, "a.toml")
		if len(faults) > 0 {
			return
		}
		text := job.Format()
		again, faults := parse(text, "again.toml")
		require.Empty(t, faults, "%s", text)
		require.Equal(t, string(text), string(again.Format()))
	})
}

// However many quotes and backslashes notes end with, a file gives them back as they were, save after save.
func TestNotesThatEndInQuotesAreKept(t *testing.T) {
	for quotes := range 8 {
		for _, before := range []string{"a\n", "a\n\\", "a\nb", "\n\\\\"} {
			notes := before + strings.Repeat(`"`, quotes)
			job := NewJob("TL-07")
			job.Notes = notes
			for range 3 {
				again, err := ParseJob(job.Format(), "job")
				require.NoError(t, err, "%q", notes)
				require.Equal(t, notes, again.Notes)
				job = again
			}
		}
	}
}
