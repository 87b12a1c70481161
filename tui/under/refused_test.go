package under

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// tank is a van with a fuel tank whose near edge is read 210 mm from a bumper's hook 10 mm below the floor.
func tank(t *testing.T) *screentest.Driver {
	job := empty()
	job.Datum.HookBelow = vehicles.Some(10)
	r := screentest.New(t, New(), job, 100, 40)
	r.Type("nk210<enter>+300<enter>-100<enter>100<enter>0<enter>150<esc>")
	require.Len(t, r.State.Job.Obstructions, 1)
	assert.Empty(t, r.Said, "a top that waits for its bottom is nothing to tell of")
	return screentest.New(t, New(), r.State.Job, 100, 40)
}

// toBottom goes from a rectangle's near edge to its bottom.
const toBottom = "<down><down><down><down><down><down>"

// A tape of 210 mm reaches 200 mm up or down at most: 10 + 200 is as far as it spans, 20 and 203 are, 250 is not.
func TestNoPartOfARefusedReadingIsTaken(t *testing.T) {
	r := tank(t)
	low := func() float64 { return r.State.Job.Obstructions[0].Drop.To }
	r.Type("<enter>" + toBottom)
	require.Contains(t, r.View(100, 40), "▸ bottom")
	r.Type("2")
	assert.Equal(t, 2.0, low())
	r.Type("5")
	assert.Equal(t, 25.0, low())
	r.Type("0")
	assert.Equal(t, 150.0, low(), "what it was when the field was entered, and not 25")
	r.Type("<esc>")
	assert.Equal(t, 150.0, low())
	assert.Equal(t, "one reading was refused and is not in the job: bottom of fuel tank, 250", r.Said)

	again, err := vehicles.ParseJob(r.State.Job.Format(), "again.toml")
	require.NoError(t, err)
	later := screentest.New(t, New(), again, 100, 40)
	assert.Contains(t, later.View(100, 40), "! refused: bottom", "the file keeps it")
	assert.Contains(t, later.View(100, 40), "250")
	later.Type("<enter>" + toBottom + "140")
	assert.Equal(t, 140.0, later.State.Job.Obstructions[0].Drop.To, "it is selected as any text is")
	assert.Empty(t, later.State.Job.Refused())

	r.Undo()
	assert.Empty(t, r.State.Job.Refused(), "the whole typing is one step")
	assert.NotContains(t, r.View(100, 40), " 250 ")
}

func TestAnUndoInAFieldShowsWhatTheJobHolds(t *testing.T) {
	r := tank(t)
	r.Type("<enter>" + toBottom + "250")
	r.Undo()
	assert.NotContains(t, r.View(100, 40), " 250 ")
	r.Type("160")
	assert.Equal(t, 160.0, r.State.Job.Obstructions[0].Drop.To)
	r.Type("<esc><enter>" + toBottom + "25")
	r.Type("0")
	assert.Equal(t, 160.0, r.State.Job.Obstructions[0].Drop.To, "entered afresh")
}

func TestARefusedReadingOfANewThing(t *testing.T) {
	r := screentest.New(t, New(), empty(), 100, 40)
	r.Type("nc8\"x<esc>")
	assert.Contains(t, r.View(100, 40), "! refused: near edge")
	assert.Empty(t, r.State.Job.Obstructions)
	x := r.State.Job.Unfinished.Obstructions
	require.Len(t, x, 1)
	assert.NotContains(t, x[0].Texts, "x0", "not 8 inches")
	r.Type("n<down><down><down>7x") // no kind, no name: still somewhere
	require.Len(t, r.State.Job.Refused(), 2)
	r.Type("<esc>")
	assert.Contains(t, r.View(100, 40), "new obstruction")
	r.Type("x")
	require.Len(t, r.State.Job.Refused(), 1, "what it was typed for is gone")
	assert.Equal(t, "crossmember", r.State.Job.Refused()[0].Name)
}

func TestARefusedReadingGoesWithItsThing(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 40)
	r.Type("<down><down><enter>7x<up><up>wheel<esc>")
	require.Len(t, r.State.Job.Refused(), 1)
	assert.Equal(t, "wheel", r.State.Job.Refused()[0].Name)
	r.Type("[[")
	assert.Contains(t, r.View(100, 40), "! refused: middle", "with its place")
	r.Type("<home>x")
	assert.Empty(t, r.State.Job.Refused())
	r.Undo()
	assert.Len(t, r.State.Job.Refused(), 1)
}

// With the hook 120 below the floor, 100 mm of tape can't reach a pipe 10 below it: they are 110 apart.
func TestTheRealReasonStandsWithItsField(t *testing.T) {
	job := empty()
	job.Datum.HookBelow = vehicles.Some(120)
	r := screentest.New(t, New(), job, 100, 40)
	r.Type("nb100<enter>r400<enter>900<enter>r400<enter><enter>8<enter>6<enter>10")
	view := r.View(100, 40)
	assert.NotContains(t, view, "needed")
	rows := strings.Split(view, "\n")
	at := slices.IndexFunc(rows, func(row string) bool { return strings.Contains(row, "point 1") })
	require.Positive(t, at)
	assert.Contains(t, rows[at], "! point 1")
	assert.Contains(t, rows[at+1], "100: the tape reads 100 mm, but its ends are")
	assert.Contains(t, view, "! point 1: 100: the tape reads", "and at the fields that wait for it")
	assert.NotContains(t, view, "brake line\":", "the form is that thing's")
	r.Type("<up><up><up><up><up><up><up><up>")
	require.Contains(t, r.View(100, 40), "▸ point 1")
	r.Type("300")
	assert.Empty(t, r.State.Job.Refused(), "what waited for it is taken with it")
	assert.Equal(t, vehicles.Span{From: 6, To: 10, Set: true}, r.State.Job.Obstructions[0].Drop)
}

func TestNeededIsOfBlankFieldsOnly(t *testing.T) {
	r := screentest.New(t, New(), empty(), 100, 40)
	r.Type("nb300<enter>r400<enter>900<enter>r400<enter><enter>8<enter>6")
	assert.Contains(t, r.View(100, 40), "! needed: bottom")
	r.Type("<enter>7 feet")
	assert.NotContains(t, r.View(100, 40), "needed")
	assert.Contains(t, r.View(100, 40), "! waits for bottom")
}

// 600 mm of tape from 0 down to 200 is 565.7 in plan: nobody reads a tape 34 mm off, so it is said when the reading is left.
func TestAReadingThatSlopesMuchSaysSo(t *testing.T) {
	job := empty()
	job.Datum.HookBelow = vehicles.Some(0)
	r := screentest.New(t, New(), job, 100, 40)
	r.Type("nk500<enter>+300<enter>-100<enter>100<enter>0<enter>200<esc>")
	r.Type("<enter>600<enter>")
	assert.Equal(t, "Sloping tape: 600 counts 34.3 mm less. Was it held level? On top, where the tape hooks, says so.", r.Said)
	r.Said = ""
	r.Type("<up><enter>")
	assert.Empty(t, r.Said, "said once")
}

// Half a reading is no fault yet: nothing is said of it until it can't become one, or its field is left.
func TestWhatIsStillBeingTypedIsNotCalledRefused(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 40)
	r.Type("<enter><down><down>")
	for _, key := range []string{"L", " ", "2", "4", ".", "5", "c"} {
		r.Type(key)
		view := r.View(100, 40)
		require.NotContains(t, view, "refused", key)
		require.NotContains(t, view, "a reading is", key)
	}
	r.Type("x")
	assert.Contains(t, r.View(100, 40), "a reading is", "this becomes none")
	assert.NotContains(t, r.View(100, 40), "! refused")
	r.Type("<back><enter>")
	assert.Contains(t, r.View(100, 40), "! refused: one side", "it was left")
}
