package work

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

var now = time.Date(2026, 11, 27, 10, 15, 30, 0, time.UTC)

const at = "2026-11-27T10:15:00"

func driver(t *testing.T, job vehicles.Job, w, h int) *screentest.Driver {
	r := screentest.New(t, New(), job, w, h)
	r.State.Now = now
	return r
}

// seats is the sample van with a seat mount, so that seats come out.
func seats() vehicles.Job {
	job := vehicles.Demo()
	o := job.Obstructions[0]
	o.Name, o.Kind = "seat mount, left", "seat mount"
	job.Obstructions = job.Obstructions.Insert(0, o)
	return job
}

// done is a job with its steps before one done.
func done(job vehicles.Job, before string) vehicles.Job {
	of := screentest.Judged(desk.State{Selected: -1}, job)
	for _, s := range of.WorkSteps() {
		if s.ID == before {
			break
		}
		job = job.WithDone(vehicles.Done{Step: s.ID, At: at})
	}
	return job
}

// One key says that a step is done; pressed again it goes on to the next that is not, and says that of it.
func TestOneKeyTicksAndGoesOn(t *testing.T) {
	r := driver(t, vehicles.Demo(), 100, 27)
	r.Type("<space>")
	assert.Equal(t, vehicles.Done{Step: "instructions", At: at}, r.State.Job.DoneOf("instructions"))
	assert.Equal(t, "instructions: done 2026-11-27 10:15", r.Said)
	r.Type("<space>")
	assert.Equal(t, at, r.State.Job.DoneOf("stands").At)
	assert.Contains(t, r.View(100, 27), "▸ [x] stands", "it stays in sight")
	assert.Equal(t, "next one done", r.Screen.Keys(r.State)[0].Help().Desc)
	r.Undo()
	assert.Empty(t, r.State.Job.DoneOf("stands").At)
	r.Type("<space>")
	assert.Equal(t, at, r.State.Job.DoneOf("stands").At, "what was taken back is done again")
	r.Undo()
	r.Undo()
	assert.Equal(t, vehicles.Demo().Format(), r.State.Job.Format())
}

// A note that is typed after a step was ticked is of that step.
func TestANoteBehindATickIsOfThatStep(t *testing.T) {
	r := driver(t, vehicles.Demo(), 100, 27)
	r.Type("<space><enter>read twice<esc>")
	assert.Equal(t, vehicles.Done{Step: "instructions", At: at, Note: "read twice"}, r.State.Job.DoneOf("instructions"))
	assert.Len(t, r.State.Job.Done, 1)
	r.Type("<down><space><up><space>")
	assert.Equal(t, at, r.State.Job.DoneOf("stands").At)
	assert.Empty(t, r.State.Job.DoneOf("instructions").At, "whoever went elsewhere in between means the one in sight")
}

// The next step that is not done is in view when the screen is come to, and n goes to it again.
func TestTheNextStepIsInView(t *testing.T) {
	r := driver(t, done(vehicles.Demo(), "exhaust-tight"), 60, 17)
	assert.Contains(t, r.View(60, 17), "▸ [ ] exhaust tight")
	r.Type("<home>")
	assert.Contains(t, r.View(60, 17), "▸ [x] instructions")
	r.Type("n")
	assert.Contains(t, r.View(60, 17), "▸ [ ] exhaust tight")
}

// Where something is measured the figures follow the tick at once, and Enter goes on.
func TestFiguresFollowTheTick(t *testing.T) {
	r := driver(t, done(vehicles.Demo(), "depth"), 100, 27)
	r.Type("<space>")
	require.True(t, r.Screen.Typing())
	assert.Equal(t, &desk.Taped{Text: "", Unit: "mm", Label: "depth of the floor"}, r.Screen.Plain(r.State).Taped, "in big figures")
	r.Type("31,5 mm<enter>")
	assert.False(t, r.Screen.Typing())
	assert.Equal(t, vehicles.Done{Step: "depth", At: at, Value: vehicles.Some(31.5)}, r.State.Job.DoneOf("depth"))
	assert.Contains(t, r.View(100, 27), "▸ [ ] sawn")
	r.Type("<up><enter><wipe>9x")
	assert.Equal(t, "9x", r.State.Job.Refused()[0].Text, "what can't be read is kept, and told")
	assert.Contains(t, r.View(160, 47), `"9x" is no number: write figures, like 12 or 0.5`)
	r.Type("<wipe>40<esc>")
	assert.Empty(t, r.State.Job.Refused())
	assert.Contains(t, r.View(100, 27), "! 40 mm: 8 to 34 mm is expected")
}

// A step that must not come before another is ticked all the same, and what comes of it is said, then and as long as it is so.
func TestOutOfOrderIsSaidAndTaken(t *testing.T) {
	r := driver(t, seats(), 160, 47)
	for range vehicles.StepIndex("seat-connectors") - 1 { // no high voltage in this van
		r.Type("<down>")
	}
	assert.Contains(t, r.View(160, 47), "▸ [ ] seat connectors")
	r.Type("<space>")
	assert.Equal(t, at, r.State.Job.DoneOf("seat-connectors").At)
	assert.Equal(t, "seat connectors is ticked, but not done before it: battery off, seat wait. A belt or an airbag can go off in your hands.", r.Said)
	assert.Contains(t, r.View(160, 47), "! before battery off, seat wait")
	r.Type("<home><down><down><space><space>12<enter>")
	assert.Equal(t, vehicles.Some(12), r.State.Job.DoneOf("seat-wait").Value)
	assert.NotContains(t, r.View(160, 47), "! before")
}

// How long it is since the battery was off stands where the wait is typed.
func TestHowLongAWaitIsStandsByIt(t *testing.T) {
	job := done(seats(), "seat-wait").WithDone(vehicles.Done{Step: "battery-off", At: "2026-11-27T10:03:00"})
	r := driver(t, job, 100, 27)
	r.Type("<space>")
	assert.Contains(t, r.View(160, 47), "as long as the van maker says; 12 min since battery off")
}

// A tick is taken back by the same key; what was measured and noted stays.
func TestATickIsTakenBack(t *testing.T) {
	job := vehicles.Demo().WithDone(vehicles.Done{Step: "depth", At: at, Value: vehicles.Some(31), Note: "at the rim"})
	r := driver(t, job, 100, 27)
	for range r.State.WorkSteps().Index("depth") - r.State.WorkSteps().Next() {
		r.Type("<down>")
	}
	require.Contains(t, r.View(100, 27), "▸ [x] depth")
	r.Type("<space>")
	assert.Equal(t, vehicles.Done{Step: "depth", Value: vehicles.Some(31), Note: "at the rim"}, r.State.Job.DoneOf("depth"))
	r.Type("<space>")
	assert.False(t, r.Screen.Typing(), "the figure is there already")
	assert.Equal(t, job.DoneOf("depth"), r.State.Job.DoneOf("depth"))
}

func TestNotesPhotosAndTimes(t *testing.T) {
	r := driver(t, vehicles.Demo(), 100, 27)
	r.Type("<enter>two lines↵of it<down>a.jpg, b 2.jpg<down>2026-11-26 8:")
	assert.Equal(t, vehicles.Done{Step: "instructions", Note: "two lines\nof it", Photos: vehicles.List[string]{"a.jpg", "b 2.jpg"}},
		r.State.Job.DoneOf("instructions"), "8: is no time yet")
	r.Type("<wipe>2026-11-26 8:05<up><end>, ../c.jpg")
	d := r.State.Job.DoneOf("instructions")
	assert.Equal(t, "2026-11-26T08:05:00", d.At)
	assert.Equal(t, vehicles.List[string]{"a.jpg", "b 2.jpg"}, d.Photos)
	assert.Contains(t, r.View(160, 47), `a file's name alone`)
}

// The day on which the clamps are tightened once more is agreed before it is done.
func TestADayIsAgreed(t *testing.T) {
	r := driver(t, done(vehicles.Demo(), "retorque"), 160, 47)
	require.Contains(t, r.View(160, 47), "▸ [ ] retorque")
	r.Type("<enter>2026-12-11<enter>")
	assert.Equal(t, "2026-12-11", r.State.Job.DoneOf("retorque").Due)
	assert.Contains(t, r.View(160, 47), "due 2026-12-11")
}

// What was recorded of a step that the job has no longer stands behind the others, and may be taken out.
func TestWhatIsOfNoStepStandsLast(t *testing.T) {
	job := vehicles.Demo().WithDone(vehicles.Done{Step: "seat-wait", At: at, Value: vehicles.Some(12)})
	r := driver(t, job, 100, 27)
	r.Type("<end><up><up><up><up><up>")
	assert.Contains(t, r.View(100, 27), "Recorded, and no step of this job")
	assert.Contains(t, r.View(100, 27), "▸ [x] seat wait")
	r.Type("<space><enter><wipe><esc>")
	assert.Equal(t, vehicles.Demo().Format(), r.State.Job.Format())
}

// A tap on the box ticks, one on the row goes there.
func TestTaps(t *testing.T) {
	r := driver(t, vehicles.Demo(), 60, 17)
	r.Tap(20, 4)
	assert.Contains(t, r.View(60, 17), "▸ [ ] battery off")
	assert.Empty(t, r.State.Job.Done)
	r.Tap(3, 3)
	assert.Equal(t, at, r.State.Job.DoneOf("stands").At)
}

func TestGoldens(t *testing.T) {
	for name, keys := range map[string]string{"list": "", "built": "<end><up><up><up><up><enter>1315<enter>L693", "early": "<end><up><up><up><up><up><up><up><up><up><space>", "value": "<to depth><enter>36.5"} {
		for _, size := range screentest.Sizes {
			r := driver(t, done(seats(), "seat-wait"), size.W, size.H)
			to := strings.Repeat("<down>", r.State.WorkSteps().Index("depth"))
			r.Type("<home>" + strings.ReplaceAll(keys, "<to depth>", to))
			r.Golden(name+"-"+size.Name, size.W, size.H)
		}
	}
}

// What came out otherwise is typed where it was made; the job as it was planned stays, and blanks are as planned again.
func TestWhatWasMadeOtherwiseIsTyped(t *testing.T) {
	r := driver(t, vehicles.Demo(), 160, 47)
	r.Type("<end><up><up><up><up>")
	assert.Contains(t, r.View(160, 47), "All as planned.")
	assert.Contains(t, r.View(160, 47), "from the bumper as planned")
	assert.NotContains(t, r.View(160, 47), "1255", "what the tape should say is told after it was read, or it would be copied")
	r.Type("<space>")
	assert.Nil(t, r.State.Job.Built, "nothing to tick")
	r.Type("<enter>1315<enter><esc>")
	require.NotNil(t, r.State.Job.Built)
	assert.Equal(t, [2]float64{1306.42, 195}, r.State.Job.Built.Cut.At, "1315 with the tape 150 mm below the floor")
	assert.Equal(t, vehicles.Pair{survey.FromNumber(1315, true)}, r.State.Job.Built.Cut.Sawn)
	assert.Equal(t, [2]float64{1255, 195}, r.State.Job.Cut.At)
	assert.Contains(t, r.View(160, 47), "otherwise")
	assert.Regexp(t, `foul † cut: brake pipe across +-33.1 +-84.6`, r.View(160, 47))
	var lines []string
	for _, line := range r.Screen.Plain(r.State).All() {
		if strings.Contains(line, "cut: brake pipe across") {
			lines = append(lines, line)
		}
	}
	assert.Equal(t, []string{"foul: cut: brake pipe across, 33.1 mm short, planned 84.6 mm short"}, lines)
	assert.Contains(t, r.Screen.Plain(r.State).All(), "foul: cut along otherwise, planned 1255, built 1306.4, by +51.4 ± 1.6")
	r.Type("<enter><wipe><esc>")
	assert.Nil(t, r.State.Job.Built)
	assert.Equal(t, vehicles.Demo().Format(), r.State.Job.Format())

	r.Type("<down><enter>50<down><wipe>170<esc>")
	assert.Equal(t, vehicles.Some(50), r.State.Job.Built.Heater.Turret)
	assert.InDelta(t, 170, r.State.Job.Built.Heater.Yaw, 0)
	r.Type("<down><enter><down><wipe>1370.58 540 190<esc>")
	assert.Equal(t, vehicles.RunPoint{X: 1370, Y: 540, Drop: 190}, r.State.Job.Built.Exhaust.Path[1], "1370.6 with the tape 40 mm above the point")
	r.Type("<enter>1370 540<esc>")
	assert.Contains(t, r.State.Job.Refused()[0].Why, "a point is along, across and below the floor")
	again, err := vehicles.ParseJob(r.State.Job.Format(), "a.toml")
	require.NoError(t, err)
	assert.Equal(t, r.State.Job.Built, again.Built)
}

// tapesTo is a job with its frames as its matching points have them.
func tapesTo(job *vehicles.Job) tapeTo {
	plan, _ := rules.Reduce(*job, nil)
	return tapeTo{job, plan.Fit}
}

// A point of a run is read with a tape as on Runs: from an edge, sloping to where it hangs, on from the point before, and from above where it is
// above the floor. What is shown of it reads as the same point.
func TestPointsOfARunAreReadWithATape(t *testing.T) {
	job := vehicles.Demo()
	at := func(kind vehicles.RunKind, i int, text string) vehicles.RunPoint {
		t.Helper()
		after, err := runSlots(kind, tapesTo(&job))[i].Set(job, text)
		require.NoError(t, err, text)
		p := after.BuiltOtherwise().Run(kind).Path[i]
		shown := runSlots(kind, tapesTo(&after))[i].Get(desk.State{Job: after})
		assert.Equal(t, text, shown, "as the tape said it")
		again, err := runSlots(kind, tapesTo(&job))[i].Set(job, shown)
		require.NoError(t, err, shown)
		assert.Equal(t, p, again.BuiltOtherwise().Run(kind).Path[i], shown)
		return p
	}
	// 3, 4, 5: the hook hangs 150 below the floor, the point 450, so that the tape slopes by 300 over 400.
	assert.Equal(t, vehicles.RunPoint{X: 400, Y: -587, Drop: 450}, at(vehicles.ExhaustRun, 0, "500, R300, 450"))
	assert.Equal(t, vehicles.RunPoint{X: 400, Y: 578, Drop: 450}, at(vehicles.ExhaustRun, 0, "500 l 310 450"))
	before := job.Exhaust.Path[0]
	assert.Equal(t, vehicles.RunPoint{X: before.X + 52, Y: before.Y, Drop: 184}, at(vehicles.ExhaustRun, 1, "+52, +0, 184"))
	assert.Equal(t, vehicles.RunPoint{X: before.X + 52, Y: 540, Drop: 184}, at(vehicles.ExhaustRun, 1, "+ 52 540 184"))

	// Above, its zero 60 over the floor's top, by the marks there: the cut's centre is read so.
	marks, last := rules.Marks(screentest.Judged(desk.State{Selected: -1}, job).Result).Marks[0], len(job.Fuel.Path)-1
	p := at(vehicles.FuelRun, last, fmt.Sprintf("%v, %v, -80", marks.Above.Bumper, marks.Above.Y))
	assert.InDelta(t, job.Cut.At[0], p.X, 0.01)
	assert.InDelta(t, job.Cut.At[1], p.Y, 0.01)

	// What the tape said is kept with the job; where it comes to another place by now, the place is what holds, and one as planned keeps no text.
	slots := runSlots(vehicles.ExhaustRun, tapesTo(&job))
	after, err := slots[1].Set(job, "1378, L 368, 190")
	require.NoError(t, err)
	read, err := vehicles.ParseJob(after.Format(), "a.toml")
	require.NoError(t, err)
	assert.Equal(t, vehicles.List[string]{"", "1378, L 368, 190", ""}, read.Built.Exhaust.Taped)
	assert.Equal(t, after.Format(), read.Format())
	read.Datum.HookBelow = vehicles.Some(250)
	assert.NotContains(t, runSlots(vehicles.ExhaustRun, tapesTo(&read))[1].Get(desk.State{Job: read}), "L 368")
	after, err = runSlots(vehicles.ExhaustRun, tapesTo(&read))[1].Set(after, "")
	require.NoError(t, err)
	assert.Equal(t, job.Format(), after.Format())

	for text, why := range map[string]string{"+5, L 300, 184": "nothing stands before it", "R 5, 3, 1": "L and R count across", "1, 2": "a point is along, across and below"} {
		_, err := slots[0].Set(job, text)
		assert.ErrorContains(t, err, why)
	}
	for i, slot := range slots { // what is read as planned is as planned
		after, err := slot.Set(job, pointText(tapesTo(&job), job.Exhaust.Path, i))
		require.NoError(t, err)
		assert.Equal(t, job.Format(), after.Format())
	}
}

// The hole is read as the pilot is: from an edge or from the centreline, and what the tape should have said follows what it said.
func TestAHoleIsReadWithATape(t *testing.T) {
	const farther = "The hole is farther off than marks and tapes explain"
	r := driver(t, vehicles.Demo(), 160, 47)
	r.Type("<end><up><up><up><up><enter>1264")
	assert.Regexp(t, `x 1255.1 ± 1.6; planned: 1263.9, it is 0.1\s+mm forward`, r.View(160, 47))
	r.Type("<enter>l 691")
	assert.Regexp(t, `197 mm left ± 1.\d; planned: L 693, it is 2 mm\s+left`, r.View(160, 47))
	assert.NotContains(t, r.View(160, 47), farther)
	r.Type("<wipe>R1084<esc>")
	assert.Equal(t, "R 1084", r.State.Job.Built.Cut.Sawn[1].Text)
	assert.Equal(t, [2]float64{1255.07, 197}, r.State.Job.Built.Cut.At)
	again, err := vehicles.ParseJob(r.State.Job.Format(), "a.toml")
	require.NoError(t, err)
	assert.Equal(t, r.State.Job.Built, again.Built)
	r.Type("<enter><down><wipe>+20")
	require.Len(t, r.State.Job.Refused(), 1)
	assert.Contains(t, r.State.Job.Refused()[0].Why, "nothing stands before it to run on from")
	r.Type("<wipe>L500<esc>")
	assert.Contains(t, r.View(160, 47), "! "+farther)
	assert.Contains(t, r.Screen.Plain(r.State).All(), farther+": read it again, unless it was sawn there on purpose.")
}

// A pilot that was measured is worth what it was once the hole is as planned again.
func TestBlankReadingsBringThePilotBack(t *testing.T) {
	x, y := survey.FromNumber(1258, true), survey.FromNumber(196, true)
	job := vehicles.Demo().WithDrilled(&vehicles.Pair{x, y})
	r := driver(t, job, 160, 47)
	r.Type("<end><up><up><up><up><enter>1262<enter>190<esc><enter><wipe><down><wipe><esc>")
	assert.Equal(t, job.Format(), r.State.Job.Format())
}

// What can't have been made so is refused as it is in the plan, and kept as it was typed.
func TestWhatCantHaveBeenMadeIsRefused(t *testing.T) {
	r := driver(t, vehicles.Demo(), 160, 47)
	r.Type("<end><up><up><enter><down><down><wipe>1370 525 184<esc>")
	require.Len(t, r.State.Job.Refused(), 1)
	assert.Contains(t, r.State.Job.Refused()[0].Why, "as built: the muffler ends 240 mm along leg 3, which is 5 mm long")
	assert.Nil(t, r.State.Job.Built)
}

// What was built stays in sight when it is planned no more.
func TestWhatIsPlannedNoMoreStaysInSight(t *testing.T) {
	run := *vehicles.Demo().Exhaust
	job := vehicles.Demo().WithBuilt(vehicles.Built{Exhaust: &run}).WithRun(vehicles.ExhaustRun, nil)
	r := driver(t, job, 160, 47)
	r.Type("<end><up><up>")
	assert.Regexp(t, `▸ +exhaust +! built, and planned no more`, r.View(160, 47))
	r.Type("<enter>")
	assert.False(t, r.Screen.Typing())
	assert.Equal(t, job.Format(), r.State.Job.Format())
}

// What is kept of the last comparison is what is made anew: whatever is typed next.
func TestWhatIsKeptOfAComparisonIsMadeAnew(t *testing.T) {
	r := driver(t, vehicles.Demo(), 160, 47)
	r.Type("<end><up><up><up><up><enter>")
	for _, keys := range []string{"1315", "<wipe>1300", "<enter>200", "<esc><down><down><enter><down><wipe>1370 540 190", "<esc><up><up><enter><wipe>1320"} {
		r.Type(keys)
		r.View(160, 47)
		c, otherwise := compared(r.State)
		require.True(t, otherwise)
		anew := compare(r.State)
		assert.Equal(t, anew.head(), c.head(), keys)
		assert.Equal(t, anew.lines(r.State), c.lines(r.State), keys)
	}
}

// A pilot that was measured says nothing of a hole that was sawn elsewhere.
func TestASawnHoleIsNoLongerThePilots(t *testing.T) {
	x, y := survey.FromNumber(1258, true), survey.FromNumber(196, true)
	r := driver(t, vehicles.Demo().WithDrilled(&vehicles.Pair{x, y}), 160, 47)
	r.Type("<end><up><up><up><up><enter>1262<esc>")
	require.NotNil(t, r.State.Job.Built)
	assert.Nil(t, r.State.Job.Built.Cut.Drilled)
	assert.NotNil(t, r.State.Job.Cut.Drilled)
}

func TestWildHands(t *testing.T) { screentest.Wild(t, New, seats()) }

// Enter goes from the note to the photos: a name that is typed next is no row of keys that tick steps.
func TestEnterGoesFromTheNoteToThePhotos(t *testing.T) {
	r := driver(t, vehicles.Demo(), 60, 17)
	r.Type("<enter>")
	for range 4 {
		if strings.Contains(r.View(60, 17), "▸ note") {
			break
		}
		r.Type("<down>")
	}
	r.Type("ok<enter>IMG 1.jpg<enter>")
	assert.Equal(t, vehicles.Done{Step: "instructions", Note: "ok", Photos: []string{"IMG 1.jpg"}}, r.State.Job.DoneOf("instructions"))
	assert.Len(t, r.State.Job.Done, 1)
}

// Marks that were ticked on Marks are known here, and so is a pilot hole that was measured there.
func TestWhatWasDoneOnMarksIsKnown(t *testing.T) {
	x, y := survey.FromNumber(1271.9, false), survey.FromNumber(195, false)
	r := driver(t, vehicles.Demo(), 100, 30)
	to := func(id string) {
		r.Type("<home>" + strings.Repeat("<down>", r.State.WorkSteps().Index(id)))
	}
	to("marked")
	assert.NotContains(t, r.View(100, 30), "on Marks")
	r.State.Ticked = map[string]bool{"cut centre": true, "plate 1": true, "bolt 2": true, "clip 1": true, "diagonal": true}
	made, all := onTop(r.State)
	assert.Equal(t, 3, made, "a clip is marked from below")
	assert.Regexp(t, `marked +3 of 9 on Marks`, r.View(100, 30))
	assert.Contains(t, strings.Join(r.Screen.Plain(r.State).All(), " "), "3 of 9 are ticked on Marks.")
	assert.Equal(t, 9, all)
	r = driver(t, vehicles.Demo().WithDrilled(&vehicles.Pair{x, y}), 100, 30)
	to("pilot-looked")
	assert.Regexp(t, `pilot drilled +the job has it`, r.View(100, 30))
	assert.Contains(t, strings.Join(r.Screen.Plain(r.State).All(), " "), "The job has it: measured on Marks, 8")
	r.Type("<space>")
	assert.NotContains(t, r.Said, "not done before it")
}

// A turn is shown and taken within a half turn either way, whatever number of turns the job file says.
func TestATurnAsBuiltIsToldWithinAHalfTurn(t *testing.T) {
	job := vehicles.Demo()
	h := *job.Heater
	h.Yaw = -270
	s := desk.State{Job: job.WithHeater(h)}
	yaw := func(s desk.State) form.Field {
		for _, f := range (builtRecord{builtHeater}).Fields(s, nil) {
			if f.Key == "yaw" {
				return f
			}
		}
		t.Fatal("no field for it")
		return form.Field{}
	}
	assert.Equal(t, "as planned: 90", yaw(s).Blank)
	for text, want := range map[string]string{"460": "100", "-200": "160", "450": ""} {
		job, _, err := (builtRecord{builtHeater}).Set(s, map[string]string{"yaw": text})
		require.NoError(t, err)
		assert.Equal(t, want, yaw(desk.State{Job: job}).Text, text)
	}
}
