package ontop

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

func TestTheFloor(t *testing.T) {
	r := screentest.New(t, New(), vehicles.NewJob("TL-09"), 100, 27)
	r.Type("<enter><wipe>40<enter><wipe>3.2m<enter><wipe>1780<enter><wipe>31<enter><wipe>460<enter>")
	assert.Equal(t, vehicles.Floor{From: 40, Length: 3200, Width: 1780, Thickness: 31, Ground: 460}, r.State.Job.Floor)
	assert.False(t, r.Screen.Typing(), "Enter behind the last field goes back to the list")
	assert.Contains(t, r.Steps(), "floor thickness")
	r.Type("<enter><down><down><wipe>0")
	assert.Equal(t, 1780.0, r.State.Job.Floor.Width)
	assert.Contains(t, r.View(100, 27), "must be more than 0")
}

// The deck is chosen by a letter, and can be unknown again; Enter goes past it.
func TestTheDeck(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("<enter><down><down><down><down><down>t")
	assert.Equal(t, vehicles.Timber, r.State.Job.Floor.Deck)
	assert.Contains(t, r.View(100, 27), "steel plate above")
	r.Type("s")
	assert.Equal(t, vehicles.Steel, r.State.Job.Floor.Deck)
	r.Type("n")
	assert.Empty(t, r.State.Job.Floor.Deck)
}

func TestTheHooks(t *testing.T) {
	r := screentest.New(t, New(), vehicles.NewJob("TL-09"), 100, 27)
	r.Type("<down><enter>s150")
	assert.Equal(t, vehicles.Some(150), r.State.Job.Datum.HookBelow)
	assert.Contains(t, r.View(100, 27), "the slope takes 17.5 mm", "650 - sqrt(650^2 - 150^2), by hand 17.53")
	r.Type("<up>l<up>")
	assert.False(t, r.State.Job.Datum.HookBelow.Set, "held level")
	assert.Contains(t, r.View(100, 27), "642.3 mm in plan: 7.7 mm", "650 - sqrt(650^2 - 100^2), by hand 7.74")
	r.Type("s150<esc>")
	assert.Contains(t, r.View(100, 27), "? where the zeros are", "180 below the finished floor and level with it")
	r.Type("<enter><down><down><down><down><down><down>0<esc>")
	assert.NotContains(t, r.View(100, 27), "? where the zeros are", "answered")
	assert.Equal(t, vehicles.Some(0), r.State.Job.Datum.ShiftAbove)
}

func TestHooksOnOneEdgeAreNotAskedAbout(t *testing.T) {
	job := vehicles.NewJob("TL-09")
	job.Floor.Thickness = 30
	job.Datum.HookBelow, job.Datum.HookAbove = vehicles.Some(130), vehicles.Some(160)
	assert.False(t, askShift(job))
	job.Datum.HookAbove = vehicles.Some(139)
	assert.True(t, askShift(job))
}

func TestRowsOfABowArePasted(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("<down><down><enter>")
	r.Paste("-600\n0\n0\n20\n600\n4 furlongs")
	assert.Equal(t, []vehicles.BowPoint{{Y: -600, Offset: 0}, {Y: 0, Offset: 20}}, r.State.Job.Bow)
	assert.Equal(t, "4 of 6 lines taken, 2 refused and not in the job", r.Said, "half a row is none")
	r.Undo()
	assert.Empty(t, r.State.Job.Bow)
}

func TestABlankLineMeasuresNothing(t *testing.T) {
	r := screentest.New(t, New(), vehicles.NewJob("TL-09"), 100, 27)
	r.Type("<enter>")
	r.Paste("40\n\n1780\n31\n460\n")
	assert.Equal(t, "4 lines taken", r.Said)
	assert.Equal(t, []string{"floor.length"}, r.State.Job.Guesses, "nor does it take a guess as measured")
	r.Paste("460\n40")
	assert.Equal(t, "too long: 2 lines, 1 field left; nothing was changed", r.Said)
}

// A row is taken when it is whole, and taken out when it is wiped; the readings follow: 652 from a bumper whose edge is
// 10 forward where the crossmember's middle is.
func TestABumperThatBows(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	before := r.State.Result.Plan.Obstructions[0].Prism.Footprint.Middle.X
	r.Type("<down><down><enter>600")
	assert.Empty(t, r.State.Job.Bow)
	assert.Contains(t, r.View(100, 27), "! and how far forward?")
	r.Type("<enter>20<enter>-600<enter>0<enter>-600<enter>4")
	assert.Equal(t, []vehicles.BowPoint{{Y: 600, Offset: 20}, {Y: -600, Offset: 0}}, r.State.Job.Bow)
	assert.Contains(t, r.View(100, 27), "each place once")
	assert.InDelta(t, before+10, r.State.Result.Plan.Obstructions[0].Prism.Footprint.Middle.X, 1e-9, "half way between 20 and 0")
	r.Type("<wipe><up><wipe><up><up><up><up><wipe>")
	assert.Len(t, r.State.Job.Bow, 2, "half a row stays what it was")
	r.Type("<down><wipe>")
	assert.Equal(t, []vehicles.BowPoint{{Y: -600, Offset: 0}}, r.State.Job.Bow)
	r.Type("<up>")
	assert.Contains(t, r.View(100, 27), "= 600 mm right")
	assert.Contains(t, string(r.State.Job.Format()), "[[datum.bow]]")
}

func TestTheHeater(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 40)
	r.Type("<down><down><down><down><enter>4")
	assert.Equal(t, "4 kW", r.State.Job.Heater.Class)
	r.Type("<right><right>")
	assert.Equal(t, 30.0, r.State.Job.Heater.Yaw, "two steps of 15 degrees")
	r.Type("<left><left><left>")
	assert.Equal(t, -15.0, r.State.Job.Heater.Yaw)
	r.Type("<wipe>-90<enter>")
	assert.Equal(t, -90.0, r.State.Job.Heater.Yaw)
	r.Type("<up><wipe>-270")
	assert.Equal(t, 90.0, r.State.Job.Heater.Yaw, "one range, whatever was typed")
	r.Type("<enter><up>")
	assert.Regexp(t, `warm air points +90 `, r.View(100, 40))
	turned := *r.State.Job.Heater
	turned.Yaw = -270 // as a file may have it
	r.State.Job = r.State.Job.WithHeater(turned)
	assert.Regexp(t, `warm air points +90 `, r.View(100, 40))
	r.Type("<down>333<up><up>2")
	h := r.State.Job.Heater
	assert.Equal(t, "2 kW", h.Class)
	assert.Equal(t, 333.0, h.Body[0], "a size of the job's own outlives another class")
	assert.Equal(t, 125.0, h.Body[1], "the others are the class's")
	r.Type("<down><wipe>")
	assert.Equal(t, 320.0, r.State.Job.Heater.Body[0], "blank is what the class says")
	assert.Zero(t, r.State.Job.Heater.Given&vehicles.HasBody)
	assert.NotZero(t, r.State.Job.Heater.Given&vehicles.HasYaw)
}

// Another class gives other sizes, and takes nothing away that the job says.
func TestAnotherClassKeepsWhatTheHeaterHas(t *testing.T) {
	job := screentest.Van(t)
	h, _ := vehicles.HeaterClass("2 kW")
	h.Bolts, h.Bolt, h.Packed = vehicles.List[[2]float64]{{80, 60}}, 8, true
	h.Duct, h.ReturnArea, h.Air, h.Stored = vehicles.Ends{Rear: true}, vehicles.Some(90), vehicles.Locker, vehicles.Stored{Gas: true}
	h.Given |= vehicles.HasBolts | vehicles.HasBolt | vehicles.HasPacked | vehicles.HasDuct | vehicles.HasReturnArea | vehicles.HasAir | vehicles.HasStored
	r := screentest.New(t, New(), job.WithHeater(h), 100, 40)
	r.Type("<down><down><down><down><enter>4")
	want, _ := vehicles.HeaterClass("4 kW")
	want.Bolts, want.Bolt, want.Packed, want.Duct, want.ReturnArea, want.Air, want.Stored = h.Bolts, h.Bolt, h.Packed, h.Duct, h.ReturnArea, h.Air, h.Stored
	want.Given = h.Given
	want.Yaw = h.Yaw
	assert.Equal(t, want, *r.State.Job.Heater)
	assert.Equal(t, 90.0, r.State.Job.Heater.DuctAcross)
}

func TestWhichWayTheWarmAirPoints(t *testing.T) {
	var plain, road desk.Settings
	road.Nearside = desk.NearsideLeft
	for deg, want := range map[float64]string{
		0: "to the front", 30: "to the front and left", 90: "to the left", -90: "to the right", 180: "to the rear",
		-180: "to the rear", -270: "to the left", 359: "to the front", -135: "to the rear and right",
	} {
		assert.Equal(t, want, Points(deg, plain), "%v degrees anticlockwise from straight ahead", deg)
	}
	assert.Equal(t, "to the nearside", Points(90, road))
}

func TestAFitting(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("nbattery box 2<enter><enter>r1000<enter>+200<enter>l10<enter>+300<enter>0<enter>400")
	require.Len(t, r.State.Job.Fittings, 2)
	f := r.State.Job.Fittings[1]
	assert.Equal(t, "battery box 2", f.Name)
	assert.Equal(t, "L 10", f.Y[0].Text)
	assert.Equal(t, vehicles.Span{From: 0, To: 400, Set: true}, f.Rise)
}

func TestANewFloorIsAGuessUntilMeasured(t *testing.T) {
	r := screentest.New(t, New(), vehicles.NewJob("TL-09"), 100, 27)
	assert.Contains(t, r.View(100, 27), "? 5 guesses: measure")
	r.Type("<enter>")
	assert.Contains(t, r.View(100, 27), "▸ from bumper")
	assert.Contains(t, r.View(100, 27), "? length")
	assert.Contains(t, r.View(100, 27), "a guess: not measured yet")
	r.Type("<down><up>")
	assert.Len(t, r.State.Job.Guesses, 5, "to look is not to measure")
	r.Type("<enter>3200<enter>")
	assert.Equal(t, []string{"floor.from", "floor.width", "floor.thickness", "floor.ground"}, r.State.Job.Guesses, "nor is going on")
	r.Type("y")
	assert.Equal(t, []string{"floor.from", "floor.thickness", "floor.ground"}, r.State.Job.Guesses, "y takes it as it is")
	assert.Equal(t, vehicles.Floor{From: 40, Length: 3200, Width: 1750, Thickness: 30, Ground: 450}, r.State.Job.Floor)
	r.Undo()
	r.Undo()
	assert.Len(t, r.State.Job.Guesses, 5)
	r.Type("<esc><enter>x<enter>")
	assert.Len(t, r.State.Job.Guesses, 5, "a refused text measures nothing")
	r.Type("<up>41<enter>yyyy")
	assert.True(t, r.State.Job.Settled())
	assert.NotContains(t, r.View(100, 27), "guess")
}

func TestANewJobAsks(t *testing.T) {
	r := screentest.New(t, New(), vehicles.NewJob("TL-09"), 60, 17)
	view := r.View(60, 17)
	for _, ask := range []string{"? 5 guesses: measure", "? level or sloping", "? straight", "? how far off"} {
		assert.Contains(t, view, ask)
	}
	r.Type("<down><down><down><enter><wipe>8<enter><wipe>1<enter><enter><wipe>2")
	assert.Equal(t, vehicles.Some(8), r.State.Job.Datum.Frames)
	assert.Equal(t, vehicles.Some(1), r.State.Job.Tape.Read)
	assert.Equal(t, vehicles.Some(2), r.State.Job.Tape.Height)
}

func TestDrawingsFitASmallScreen(t *testing.T) {
	for _, all := range topics() {
		for name, topic := range all {
			rows := strings.Split(strings.Trim(topic.drawing, "\n"), "\n")
			assert.LessOrEqual(t, len(rows), 7, name)
			for _, row := range rows {
				assert.LessOrEqual(t, len([]rune(row)), 50, row)
			}
		}
	}
}

var looks = map[string]string{
	"list": "", "floor": "<enter>", "hooks": "<down><enter>", "side": "<down><enter><down><down><down><down>",
	"shift": "<down><enter><down><down><down><down><down><down>", "frames": "<down><down><down><enter>",
	"heater": "<down><down><down><down><enter><down>", "fitting": "<down><down><down><down><down><enter>",
	"bow":   "<down><down><enter>600<enter>14<enter>",
	"pins":  "<down><enter>" + strings.Repeat("<down>", 10),
	"above": "<down><enter><down><down><down><down><down>",
}

func TestGoldens(t *testing.T) {
	for _, size := range [][2]int{{60, 17}, {100, 27}, {160, 47}} {
		w, h := size[0], size[1]
		for name, keys := range looks {
			t.Run(fmt.Sprintf("%s-%dx%d", name, w, h), func(t *testing.T) {
				r := screentest.New(t, New(), screentest.Van(t), w, h)
				r.Type(keys)
				r.Golden(fmt.Sprintf("%s-%dx%d", name, w, h), w, h)
			})
		}
	}
}

func TestWildHands(t *testing.T) { screentest.Wild(t, New, screentest.Van(t)) }

func TestAFittingOfAnotherVanIsConfirmed(t *testing.T) {
	job := screentest.Van(t)
	box := job.Fittings[0]
	box.Unconfirmed = true
	job.Fittings = job.Fittings.With(0, box)
	r := screentest.New(t, New(), job, 100, 27)
	assert.Contains(t, r.View(100, 27), "not confirmed")
	r.Type("<end>m")
	assert.False(t, r.State.Job.Fittings[0].Unconfirmed)
	assert.NotContains(t, r.View(100, 27), "not confirmed")
	r.Undo()
	r.Type("<enter><down><down><down><wipe>1905")
	assert.False(t, r.State.Job.Fittings[0].Unconfirmed, "a reading confirms it too")
}

// The van's skin is entered with the floor: each side by itself, blank again, and taken back step by step.
func TestTheSkin(t *testing.T) {
	job := screentest.Van(t)
	r := screentest.New(t, New(), job, 100, 27)
	assert.Contains(t, r.View(100, 27), "The van's skin at the outlet's height")
	r.Type("<enter><down><down><down><down><down><down><down><wipe>990<down><wipe>985<down><wipe>-20<esc>")
	assert.Equal(t, vehicles.Outline{Left: vehicles.Some(990), Right: vehicles.Some(985), Rear: vehicles.Some(-20)}, r.State.Job.Floor.Outline)
	assert.Len(t, r.Steps(), 3)
	r.Undo()
	assert.Equal(t, vehicles.Outline{Left: vehicles.Some(990), Right: vehicles.Some(985)}, r.State.Job.Floor.Outline)
	r.Type("<enter><down><down><down><down><down><down><down><wipe>-5<esc>")
	assert.Contains(t, r.View(100, 27), "must be more than 0")
	for len(r.Steps()) > 0 {
		r.Undo()
	}
	assert.Equal(t, string(job.Format()), string(r.State.Job.Format()))
}
