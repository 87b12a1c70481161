package place

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// unexplained is a van whose pilot hole is 13.5 mm forward of where it was meant, without tapes from it. From the hole at
// x = sqrt(1322^2 - 150^2) = 1313.5, y = 890 - 590 = 300 it is 1313.5 - (sqrt(652^2 - 55^2) + 84) = 579.8 to the crossmember and
// 890 - 160 - 70 - 300 = 360 to the rail.
func unexplained(t *testing.T, w, h int) *screentest.Driver {
	document, err := vehicles.Load("../../testdata/cases/31-unexplained-pilot.toml")
	require.NoError(t, err)
	cut := *document.Job.Cut
	cut.Direct = nil
	return screentest.New(t, New(), document.Job.WithCut(cut), w, h)
}

// plain is the small screen as one line.
func plain(d *screentest.Driver) string { return strings.Join(strings.Fields(d.View(60, 17)), " ") }

func TestAHoleThatIsHeldBackAsksForTapes(t *testing.T) {
	d := unexplained(t, 60, 17)
	view := told(d.State)
	assert.Contains(t, view, "more than the tapes explain")
	assert.Contains(t, view, "Cut, plate, body, bolts: held back. Measure it again (m) or tape from it straight (d).")
	assert.Contains(t, view, "A centre beside the pilot hole takes a clamped guide board nearer than 12 mm, a new pilot up to 56.5 mm: the old hole goes with the disc.")
	small := plain(d)
	assert.Contains(t, small, "Off 13.5 mm (13.5 mm forward), the tapes explain 5.2 mm. Cut, plate, body, bolts: held back.")
	assert.Contains(t, small, "m: measure it again; d: tape from it straight")
	assert.Contains(t, small, "doubtful cut: chassis rail, left 281.5")
	assert.Equal(t, "d", d.Screen.Keys(d.State)[0].Help().Key, "first in the foot line")
	d.Type("d")
	require.True(t, d.Screen.Typing())
	view = d.View(60, 17)
	assert.Contains(t, view, "chassis rail, left")
	assert.Contains(t, view, "rear crossmember: not taped")
	assert.Equal(t, 1, d.State.Selected, "the rail is picked out on the plan")
}

// Who is told what the tape should say reads no tape.
func TestTheExpectedDistanceIsSaidAfterTheReadingOnly(t *testing.T) {
	d := unexplained(t, 100, 27)
	d.Type("d")
	for _, keys := range []string{"", "3", "6"} {
		d.Type(keys)
		assert.NotContains(t, d.View(100, 27), "360")
		assert.NotContains(t, d.View(100, 27), "579.8")
	}
	d.Type("2<enter>")
	assert.Contains(t, plain(d), "chassis rail, left 362: 2 mm over the survey's 360: clear")
	assert.NotContains(t, d.View(100, 27), "579.8")
	assert.Equal(t, 0, d.State.Selected, "on to the crossmember")
}

func TestTwoTapesThatAgreeConfirmTheHole(t *testing.T) {
	d := unexplained(t, 100, 27)
	d.Type("d361<enter>")
	assert.Contains(t, plain(d), "Held back until two agree that lie across one another.")
	d.Type("57.9cm<enter>")
	require.Len(t, d.State.Job.Cut.Direct, 2)
	assert.Equal(t, vehicles.DirectTape{To: "rear crossmember", Gap: survey.Reading{Text: "57.9cm", Length: 579}}, d.State.Job.Cut.Direct[1])
	assert.Contains(t, plain(d), "Two agree across one another: the hole is confirmed where it is.")
	d.Type("<esc>")
	require.False(t, d.Screen.Typing())
	assert.Contains(t, told(d.State), "more than the readings explain, but direct tapes confirm the hole there.")
	assert.Contains(t, plain(d), "Off 13.5 mm (13.5 mm forward), direct tapes confirm it")
	for _, f := range d.State.Result.Findings {
		assert.NotContains(t, f.Why, "where the pilot hole is", f.ID())
	}
}

// Each tape is an undo step of its own; typing over one corrects it, clearing it takes it out.
func TestTapesAreCorrectedTakenOutAndUndone(t *testing.T) {
	d := unexplained(t, 100, 27)
	d.Type("d361<enter>579<enter><up>")
	require.Len(t, d.State.Job.Cut.Direct, 2)
	d.Type("365<down>")
	assert.Equal(t, "365", d.State.Job.Cut.Direct[0].Gap.Text, "typed over")
	d.Type("<up><wipe><enter>")
	require.Len(t, d.State.Job.Cut.Direct, 1)
	assert.Equal(t, "rear crossmember", d.State.Job.Cut.Direct[0].To)
	assert.Contains(t, d.Said, "The tape to chassis rail, left is taken out; Ctrl-Z brings it back.")
	var left []int
	for d.Desk.Undo() {
		left = append(left, len(d.State.Job.Cut.Direct))
	}
	assert.Equal(t, []int{2, 2, 1, 0}, left)
}

func TestALevelTapeTakesNoSides(t *testing.T) {
	d := unexplained(t, 100, 27)
	d.Type("d")
	for _, text := range []string{"L 360", "R360", "+360", ".36", "-360", "36o"} {
		d.Type("<wipe>" + text + "<enter>")
		assert.Empty(t, d.State.Job.Cut.Direct, text)
		assert.Contains(t, d.View(160, 47), "! ", text)
		assert.Equal(t, 1, d.State.Selected, "it stays in the field: %s", text)
	}
	d.Type("<wipe>3")
	assert.NotContains(t, d.View(160, 47), "! ", "the fault is of the text that was there")
	d.Type("<wipe>L 360<esc>")
	assert.False(t, d.Screen.Typing())
	assert.Contains(t, d.Said, "Not taken: no L, R, + or minus")
	d.Type(`d14 3/16"<esc>`)
	require.Len(t, d.State.Job.Cut.Direct, 1, "a text that can be read is taken, whichever way the field is left")
	assert.Equal(t, `14 3/16"`, d.State.Job.Cut.Direct[0].Gap.Text)
}

func TestATapOnThePlanTakesTheTapeThatWasTyped(t *testing.T) {
	d := unexplained(t, 100, 27)
	d.Type("d360")
	d.Tap(20, 10)
	assert.False(t, d.Screen.Typing())
	require.Len(t, d.State.Job.Cut.Direct, 1)
	assert.Equal(t, [2]float64{1300, 300}, d.State.Job.Cut.At, "and moves nothing")
}

func TestTapesArePastedAsOneEdit(t *testing.T) {
	d := unexplained(t, 100, 27)
	d.Type("d")
	d.Paste("361\n579\n")
	require.Len(t, d.State.Job.Cut.Direct, 2)
	d.Undo()
	assert.Empty(t, d.State.Job.Cut.Direct)
	d.Type("<up>")
	d.Paste("361\nL 5")
	require.Len(t, d.State.Job.Cut.Direct, 1)
	assert.Contains(t, d.View(160, 47), "no L, R, +")
}

func TestNothingToTapeToIsSaid(t *testing.T) {
	d := unexplained(t, 100, 27)
	job := d.State.Job
	job.Obstructions = nil
	d = screentest.New(t, New(), job, 100, 27)
	d.Type("d")
	assert.False(t, d.Screen.Typing())
	assert.Contains(t, d.Said, "reaches nothing that was measured")
}

func TestTheListClosesWhenThePilotIsTakenBack(t *testing.T) {
	d := unexplained(t, 100, 27)
	job := d.State.Job.WithDrilled(nil)
	d = screentest.New(t, New(), job, 100, 27)
	d.Type("m1322<enter>L590<enter>d361<enter>")
	require.True(t, d.Screen.Typing())
	d.Undo()
	d.Undo()
	d.Send(tea.WindowSizeMsg{Width: 100, Height: 27})
	assert.False(t, d.Screen.Typing())
}

// The tapes are of the hole: they go with it, and come back with it.
func TestTapesGoWithTheHole(t *testing.T) {
	d := unexplained(t, 100, 27)
	d.Type("d361<enter><esc>m<wipe><enter><wipe><enter>")
	require.Nil(t, d.State.Job.Cut.Drilled)
	assert.Empty(t, d.State.Job.Cut.Direct)
	assert.Contains(t, d.Said, "The tapes straight from it are gone with it: Ctrl-Z brings all back.")
	d.Undo()
	assert.Len(t, d.State.Job.Cut.Direct, 1)
	d.Type("m1323<enter>L590<enter>")
	assert.Len(t, d.State.Job.Cut.Direct, 1, "the hole measured again is the same hole")
	p, ok := rules.PilotCheck(d.State.Result)
	require.True(t, ok)
	change := moveFromPilot(d.State, p)
	assert.Empty(t, change.Job.Cut.Direct)
	assert.Contains(t, change.Job.Notes, "Taped straight from the old pilot hole at 1323, L 590: 361 to chassis rail, left.")
	assert.Contains(t, change.Say, rules.InTheDisc.Why())
	assert.Equal(t, d.State.Job.Cut.Drilled, change.Job.Cut.Old, "the hole is there still")
}

// The centre moved beside a drilled hole: the saw's own bit, then its rim, then nothing meets the old hole. The cut is 127 across,
// the pilot 6, the hole 13.5 forward of the centre. How far that is and what it takes the screen says, and what is said why it does, in few rows: nothing stands
// twice.
func TestMovingTheCentreBesideADrilledHole(t *testing.T) {
	for keys, c := range map[string]struct {
		beside rules.Beside
		by     string
	}{
		"t1330<enter>L590<enter>": {rules.NearTheHole, "8 mm beside the old pilot hole: guide board."},
		"t1378<enter>L590<enter>": {rules.InTheDisc, "56.3 mm beside the old pilot hole: new pilot."},
		"t1382<enter>L590<enter>": {rules.UnderTheTeeth, "60.4 mm beside the old pilot hole: new pilot, guide board."},
		"t1388<enter>L590<enter>": {rules.UnderTheTeeth, "66.4 mm beside the old pilot hole: new pilot, guide board."},
		"t1400<enter>L590<enter>": {rules.OutsideTheCut, "78.5 mm beside the old pilot hole: new pilot, close the old."},
		"t1322<enter>L590<enter>": {rules.OnTheHole, ""},
	} {
		d := unexplained(t, 60, 17)
		before := d.State.Job.Cut.At
		d.Type(keys)
		assert.NotEqual(t, before, d.State.Job.Cut.At, keys)
		if c.by == "" {
			assert.NotNil(t, d.State.Job.Cut.Drilled, keys)
			assert.Empty(t, d.Said, keys)
			continue
		}
		assert.NotNil(t, d.State.Job.Cut.Old, keys)
		assert.Equal(t, c.beside.Why(), d.Said, keys)
		assert.LessOrEqual(t, len(desk.Wrap(d.Said, 60)), 3, keys)
		assert.Equal(t, 1, strings.Count(strings.Join(strings.Fields(d.View(60, 17)), " "), c.by), keys)
	}
	d := unexplained(t, 100, 27)
	d = screentest.New(t, New(), d.State.Job.WithDrilled(nil), 100, 27)
	d.Type("<right>")
	assert.Empty(t, d.Said, "no hole, nothing to say")
}

func TestTapesInPictures(t *testing.T) {
	d := unexplained(t, 100, 27)
	d.Type("d")
	screentest.Golden(t, "tapes", d.Screen, d.State, planArea)
	d.Type("361<enter>")
	screentest.Golden(t, "taped", d.Screen, d.State, planArea)
	d.Type("579<enter>")
	screentest.Golden(t, "confirmed", d.Screen, d.State, planArea)
	d.Type("<wipe>545<enter>")
	screentest.Golden(t, "differs", d.Screen, d.State, planArea)
}
