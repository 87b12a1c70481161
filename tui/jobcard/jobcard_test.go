package jobcard

import (
	"fmt"
	"image"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

func TestTheJob(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("<enter><wipe><enter><wipe>minibus<enter>u. b. 123<enter>2026-11-2")
	assert.Equal(t, "TL-07", r.State.Job.Ref, "a job has a reference")
	assert.Equal(t, "minibus", r.State.Job.Vehicle)
	assert.Equal(t, "u. b. 123", r.State.Job.Fitter, "letters and figures belong to the field")
	assert.Empty(t, r.State.Job.Date, "no date yet")
	r.Type("5<enter>hatch at the back")
	assert.Equal(t, "2026-11-25", r.State.Job.Date)
	assert.Equal(t, "hatch at the back", r.State.Job.Notes)
	assert.Contains(t, r.Steps(), "job vehicle")
	assert.Equal(t, "reference of job, emptied", r.State.Job.Refused()[0].String())
}

func TestNotesKeepTheirLines(t *testing.T) {
	job := screentest.Van(t)
	job.Notes = "one\ntwo"
	r := screentest.New(t, New(), job, 100, 27)
	assert.Contains(t, r.View(100, 27), "one↵two")
	r.Type("<enter><up><down><down><down><down><end>!")
	assert.Equal(t, "one\ntwo!", r.State.Job.Notes)
}

func TestANoteOfSeveralLinesIsPasted(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("<enter><down><down><down><down>")
	r.Paste("hatch at the back,\r\nkey under the seat\r\n")
	assert.Equal(t, "hatch at the back,\nkey under the seat", r.State.Job.Notes)
	assert.Contains(t, r.View(100, 27), "▸ notes")
}

func TestSettingsArePasted(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	before := r.State.Job
	r.Type("<down><down><enter>")
	r.Paste("Inches\nn")
	assert.Equal(t, desk.Inches, r.State.Settings.Units)
	assert.Equal(t, desk.NearsideLeft, r.State.Settings.Nearside)
	assert.Equal(t, before, r.State.Job)
	assert.Contains(t, r.View(100, 27), "▸ look")
}

func TestTheTape(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("<down><enter>31.5<enter>,5<enter>±3<enter>2")
	want := vehicles.Tape{Class: "III", Read: vehicles.Some(1.5), Height: vehicles.Some(3), Turn: vehicles.Some(2)}
	assert.Equal(t, want, r.State.Job.Tape, "a comma without a figure before it is no number")
}

func TestSettingsAreTheWorkshops(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	before := r.State.Job
	r.Type("<down><down><enter>inl")
	assert.Equal(t, desk.Inches, r.State.Settings.Units)
	assert.Equal(t, desk.NearsideLeft, r.State.Settings.Nearside)
	assert.Equal(t, looks.Light, r.State.Settings.Look)
	for key, want := range map[string]looks.Look{"s": looks.Sun, "n": looks.Night, "d": looks.Dark} {
		r.Type("<up>" + key)
		assert.Equal(t, want, r.State.Settings.Look)
	}
	r.Type("b")
	assert.True(t, r.State.Settings.Big)
	r.Type("l")
	assert.True(t, r.State.Settings.Letter)
	r.Type("a")
	assert.False(t, r.State.Settings.Letter)
	r.Type("<up>u")
	assert.False(t, r.State.Settings.Big)
	assert.Equal(t, before, r.State.Job)
	assert.Empty(t, r.Steps())
}

// Where the terminal shows pictures it is asked what the plan is drawn in; elsewhere it is said that it shows none, and nothing is
// asked that would change nothing.
func TestWhatThePlanIsDrawnIn(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("<down><down><enter>")
	assert.NotContains(t, r.View(100, 27), "plan drawn in")
	assert.Contains(t, strings.Join(strings.Fields(strings.ReplaceAll(r.View(160, 47), "│", " ")), " "), "in cells,")

	r = screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.State.Pixels = screentest.Pictures(t, image.Pt(10, 20))
	r.Type("<down><down><enter><down><down><down><down>")
	assert.Contains(t, r.View(100, 27), "▸ plan drawn in pixels")
	assert.Equal(t, desk.InPixels, r.State.Settings.Plan)
	r.Type("c")
	assert.Equal(t, desk.InCells, r.State.Settings.Plan)
	assert.False(t, r.State.Pictures())
	r.Type("<up>p")
	assert.True(t, r.State.Pictures())
}

func TestAsking(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 60, 17)
	for keys, want := range map[string]desk.Ask{"w": desk.SaveAs, "c": desk.Cautions, "f": desk.FirstRun, "s": desk.Save, "z": desk.Undo, "y": desk.Redo, "q": desk.Quit} {
		r.Type(keys)
		assert.Equal(t, want, r.Asked, keys)
	}
	r.Type("<home><down><down><down><enter>")
	assert.Equal(t, desk.Save, r.Asked)
	assert.False(t, r.Screen.Typing())
}

func TestARuleOfThisJob(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	const key = "cut.clearance.brake line"
	for i, record := range records(r.State) {
		if h, ok := record.(ruleRecord); ok && h.key() == key {
			for range i {
				r.Type("<down>")
			}
		}
	}
	require.Contains(t, r.View(100, 27), key)
	assert.Contains(t, r.View(100, 27), "built in")
	r.Type("<enter>6.5cm")
	assert.Equal(t, map[string]float64{key: 65}, r.State.Job.Rules)
	rule, ok := r.State.Result.Book.Lookup("cut.clearance", "brake line")
	require.True(t, ok)
	assert.Equal(t, "this job", rule.Book)
	assert.Contains(t, r.View(100, 27), "This job's own rules")
	r.Type("<wipe>")
	assert.Empty(t, r.State.Job.Rules, "blank takes it back")
	assert.Contains(t, r.View(100, 27), "built in")
}

func TestGoldens(t *testing.T) {
	for _, size := range [][2]int{{60, 17}, {100, 27}, {160, 47}} {
		w, h := size[0], size[1]
		for name, keys := range map[string]string{
			"list": "", "job": "<enter>", "tape": "<down><enter>", "shown": "<down><down><enter>",
			"cautions": "<down><down><down><down><down>", "firstrun": "<down><down><down><down><down><down>",
			"rule": strings.Repeat("<down>", 11) + "<enter>",
		} {
			t.Run(fmt.Sprintf("%s-%dx%d", name, w, h), func(t *testing.T) {
				job := screentest.Van(t)
				job.Rules = map[string]float64{"cut.clearance.brake line": 75}
				r := screentest.New(t, New(), job, w, h)
				r.Type(keys)
				r.Golden(fmt.Sprintf("%s-%dx%d", name, w, h), w, h)
			})
		}
	}
}

func TestWildHands(t *testing.T) { screentest.Wild(t, New, screentest.Van(t)) }

// Beside the list nothing is cut off, and where the words beside it need the room least, names have it.
func TestNamesHaveTheRoomThatWordsDoNotNeed(t *testing.T) {
	for _, size := range [][2]int{{100, 27}, {160, 47}} {
		r := screentest.New(t, New(), screentest.Full(t), size[0], size[1])
		records := r.Screen.(Screen).Records(r.State)
		cut := 0
		for i := range records {
			e := r.Screen.(Screen).entry
			words, rows := beside(e, r.State, 25, 0)
			assert.LessOrEqual(t, rows, size[1], words)
			for line := range strings.SplitSeq(r.View(size[0], size[1]), "\n") {
				if strings.HasPrefix(line, "▸") && strings.Contains(line, "…") {
					cut++
				}
			}
			if i < len(records)-1 {
				r.Type("<down>")
			}
		}
		assert.Less(t, cut, 20, "of %d names, at %v", len(records), size)
		t.Log(size, cut, len(records))
	}
}
