package runs

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// bare is the trial job with nothing hung on its runs, before the screen.
func bare(t *testing.T, w, h int) *screentest.Driver {
	job := screentest.State(t).Job
	for _, of := range vehicles.RunKinds {
		if run := job.Run(of); run != nil {
			bare := *run
			bare.Hanging = vehicles.Hanging{}
			job = job.WithRun(of, &bare)
		}
	}
	return screentest.New(t, New(), job, w, h)
}

func TestAMufflerIsHungSlidAndSaid(t *testing.T) {
	d := bare(t, 60, 17)
	d.Type("m")
	h := d.State.Job.Exhaust.Muffler
	require.NotNil(t, h)
	assert.Equal(t, [2]float64{vehicles.UsualMuffler.Length, vehicles.UsualMuffler.Across}, [2]float64{h.Length, h.Across})
	assert.Empty(t, h.Drain, "nobody has said")
	assert.Contains(t, d.View(60, 17), "drain hole? (Space)")
	assert.Contains(t, d.View(100, 27), "drain hole is")
	d.Said = ""
	d.Type("<right>")
	assert.InDelta(t, h.Start+10, d.State.Job.Exhaust.Muffler.Start, 1e-6)
	assert.Empty(t, d.Said, "where it is now stands in the panel, and the worst below it")
	assert.Regexp(t, `(?m)^Muffler: leg 3, [0-9.]+ mm along it; drain hole\? \(Space\) *\n.* ± `, d.View(60, 17))
	assert.Contains(t, strings.Join(d.Screen.Plain(d.State).Here, "\n"), "Muffler: leg 3, "+desk.Length(h.Start+10, desk.Millimetres)+" along it", "and is told in lines")
	d.Type("<left><left>")
	assert.InDelta(t, h.Start-10, d.State.Job.Exhaust.Muffler.Start, 1e-6)
	d.Type("<space>")
	assert.Equal(t, vehicles.DrainDown, d.State.Job.Exhaust.Muffler.Drain)
	d.Type("<space>")
	assert.Equal(t, vehicles.DrainAside, d.State.Job.Exhaust.Muffler.Drain)
	d.Type("t3<enter>20<enter>200<enter>70<enter>d<enter>")
	assert.Equal(t, vehicles.Muffler{Leg: 3, Start: 20, Length: 200, Across: 70, Drain: vehicles.DrainDown}, *d.State.Job.Exhaust.Muffler)
	d.Type("t9<enter><enter><enter><enter><enter>")
	assert.Equal(t, "the exhaust has legs 1 to 4: say which", d.Said)
	for _, start := range []string{"5000", "590"} { // at the latter it begins on its leg, and ends past that
		d.Type("<esc>t3<enter>" + start + "<enter><enter><enter><enter>")
		assert.Contains(t, d.Said, "start it earlier, or choose another leg", start)
		d.Said = ""
	}
	d.Type("<esc>x")
	assert.Nil(t, d.State.Job.Exhaust.Muffler)
	d.Undo()
	assert.NotNil(t, d.State.Job.Exhaust.Muffler)
}

// The muffler goes where the cursor is: on the leg that leads to the point picked, or at the clip picked; where that is no place for it,
// where there is most room.
func TestAMufflerIsDroppedAtTheCursor(t *testing.T) {
	for keys, want := range map[string]int{"nm": 2, "nnm": 3, "m": 3} { // leg 1 is the short one below the stub; leg 3 is the longest
		d := bare(t, 60, 17)
		d.Type(keys)
		assert.Equal(t, want, d.State.Job.Exhaust.Muffler.Leg, keys)
	}
	d := bare(t, 60, 17)
	d.Type("c")
	clip := d.State.Job.Exhaust.Clips[0]
	d.Type("s<right>m")
	laid, h := d.State.Job.Laid(vehicles.ExhaustRun), d.State.Job.Exhaust.Muffler
	assert.InDelta(t, clip+50, laid.Where(h.Leg, h.Start+h.Length/2), 1)
}

// Clips that nobody has spoken of and no clips are two things, and one key says either.
func TestNoClipsIsNotTheSameAsNothingSaid(t *testing.T) {
	d := bare(t, 60, 17)
	require.Nil(t, d.State.Job.Exhaust.Clips)
	for d.Screen.(screen).picked.sort != clips {
		d.Type(".")
	}
	assert.Contains(t, d.View(60, 17), "Clips: nobody has said.")
	d.Type("<space>")
	assert.NotNil(t, d.State.Job.Exhaust.Clips)
	assert.Empty(t, d.State.Job.Exhaust.Clips)
	assert.Contains(t, d.View(60, 17), "Clips: there are none")
	again, err := vehicles.ParseJob(d.State.Job.Format(), "again.toml")
	require.NoError(t, err)
	assert.NotNil(t, again.Exhaust.Clips)
	d.Type("<space>")
	assert.Nil(t, d.State.Job.Exhaust.Clips)
}

func TestClipsAreSpreadSlidAddedAndDeletedOneByOne(t *testing.T) {
	d := bare(t, 100, 27)
	d.Type("c")
	clips := d.State.Job.Exhaust.Clips
	require.Greater(t, len(clips), 1)
	for _, f := range d.State.Result.Findings {
		if f.ID() == "exhaust.clip-span" {
			assert.Equal(t, rules.Clear, f.Verdict)
		}
	}
	d.Type("<right>")
	assert.Equal(t, clips[0]+10, d.State.Job.Exhaust.Clips[0])
	d.Type("t333<enter>")
	assert.Equal(t, 333., d.State.Job.Exhaust.Clips[0])
	d.Type("t19999<enter>")
	assert.Contains(t, d.Said, "less than that")
	d.Type("<esc>i")
	require.Len(t, d.State.Job.Exhaust.Clips, len(clips)+1)
	assert.InDelta(t, (333+clips[1])/2, d.State.Job.Exhaust.Clips[1], 0.5, "halfway to the next")
	d.Type("xx")
	assert.Len(t, d.State.Job.Exhaust.Clips, len(clips)-1)
	for d.Screen.(screen).picked.kind == vehicles.AClip {
		d.Type("x")
	}
	assert.Equal(t, []float64{}, d.State.Job.Exhaust.Clips, "the last one taken off, there are none")
	d.Type("i")
	assert.Len(t, d.State.Job.Exhaust.Clips, 1)
}

func TestDrainHolesAreDrilledWhereWaterStands(t *testing.T) {
	d := bare(t, 100, 27)
	laid := d.State.Job.Laid(vehicles.IntakeRun)
	low := rules.Undrained(laid, nil)
	d.Type("<tab>w")
	drains := d.State.Job.Intake.Drains
	if len(low) == 0 {
		low = []float64{laid.CornerAlong(1)}
	}
	require.Len(t, drains, len(low))
	assert.InDelta(t, low[0], drains[0], 0.5)
	d.Type("<left>")
	assert.InDelta(t, drains[0]-10, d.State.Job.Intake.Drains[0], 1e-6)
	for range drains {
		d.Type("x")
	}
	assert.Nil(t, d.State.Job.Intake.Drains)
}

func TestAFuelLineIsBegunAtItsTankAndSaid(t *testing.T) {
	job := screentest.Full(t)
	job = job.WithRun(vehicles.FuelRun, nil)
	d := screentest.New(t, New(), job, 60, 17)
	d.Type("<tab><tab>a")
	fuel := d.State.Job.Fuel
	require.NotNil(t, fuel)
	require.Len(t, fuel.Path, 2)
	stub, _ := d.State.Job.Stub(vehicles.FuelRun)
	assert.InDelta(t, stub.X, fuel.Path[1].X, 0.005)
	assert.InDelta(t, stub.Y, fuel.Path[1].Y, 0.005)
	d.Type("a")
	require.Len(t, d.State.Job.Fuel.Path, 3)
	assert.Equal(t, fuel.Path[1], d.State.Job.Fuel.Path[2], "the end at the heater stays the end")
	d.Type("m")
	assert.Equal(t, float64(vehicles.UsualPump.Tilt), d.State.Job.Fuel.Pump.Tilt)
	d.Type("t1<enter>30<enter>45<enter>22<enter>3<enter>")
	assert.Equal(t, vehicles.Pump{Leg: 1, Start: 30, Tilt: 45, MlPer1000: vehicles.Some(22), Hz: vehicles.Some(3)}, *d.State.Job.Fuel.Pump)
	d.Type("k6<enter>3<enter>9<enter>")
	assert.Equal(t, [3]float64{6, 3, 9}, [3]float64{d.State.Job.Fuel.Across, d.State.Job.Fuel.Supply.Bore.Value, d.State.Job.Fuel.Supply.HoleAcross()})
	pick := func(of sort) {
		for i := 0; d.Screen.(screen).picked.sort != of; i++ {
			require.Less(t, i, 30)
			d.Type(".")
		}
	}
	pick(burns)
	d.Type("<space>")
	assert.Equal(t, vehicles.Diesel, d.State.Job.Fuel.Supply.Kind)
	pick(from)
	was := d.State.Job.Fuel.Supply.From
	d.Type("<space>")
	assert.NotEqual(t, was, d.State.Job.Fuel.Supply.From)
	pick(tank)
	d.Type("t2500<enter>500<enter>a50<enter>350<enter>")
	assert.Equal(t, vehicles.Tank{At: d.State.Job.Fuel.Supply.Tank.At, Rise: vehicles.Span{From: 50, To: 350, Set: true}}, *d.State.Job.Fuel.Supply.Tank)
	assert.InDelta(t, 500, d.State.Job.Fuel.Supply.Tank.At[1], 1e-9)
	d.Type("t<enter><enter>b60<enter>320<enter>")
	assert.Equal(t, vehicles.Span{From: 60, To: 320, Set: true}, d.State.Job.Fuel.Supply.Tank.Drop, d.Said)
	d.Type("t<enter><enter><enter>400<enter>320<enter>")
	assert.Contains(t, d.Said, "less than its second")
	d.Type("<esc>x")
	assert.Nil(t, d.State.Job.Fuel.Supply.Tank)
	for len(d.Steps()) > 0 {
		d.Undo()
	}
	assert.Equal(t, string(job.Format()), string(d.State.Job.Format()))
}

// From its stub, or from what is said of all of it, a run is deleted whole: one key, one step.
func TestARunIsDeletedWhole(t *testing.T) {
	for _, picked := range []sort{stub, pipe} {
		d := screentest.New(t, New(), screentest.State(t).Job, 100, 27)
		before := string(d.State.Job.Format())
		m := d.Screen.(screen)
		m.picked = part{sort: picked}
		d.Screen = m
		assert.Contains(t, m.Keys(d.State), desk.Named(keyDelete, "delete all of it"))
		d.Type("x")
		require.Nil(t, d.State.Job.Exhaust)
		assert.Contains(t, d.Said, "exhaust deleted, all of it. Ctrl-Z takes it back.")
		assert.Len(t, d.Steps(), 1)
		d.Undo()
		assert.Equal(t, before, string(d.State.Job.Format()))
	}
}

// The key spreads them as the search for runs does, by the book's own limits.
func TestClipsSpreadByHandAreThoseOfTheSearch(t *testing.T) {
	job := roomy()
	job.Rules = map[string]float64{"runs.first-clip": 100, "runs.clip-span": 250, "exhaust.clip-span": 320}
	for _, of := range vehicles.RunKinds {
		d := screentest.New(t, New(), job, 60, 17)
		d.Type(strings.Repeat("<tab>", int(of)))
		find(d, "j")
		found := d.State.Job.Run(of).Clips
		require.NotEmpty(t, found)
		d.Type("c")
		assert.Equal(t, found, d.State.Job.Run(of).Clips, of)
		for _, f := range d.State.Result.Findings {
			if f.Rule.ID == "runs.first-clip" && f.Subject.Sort == rules.SortOf(of) {
				assert.Equal(t, rules.Clear, f.Verdict, "%s: %v mm", of, f.Value)
			}
		}
	}
}

// A filter goes in before the pump, is slid, typed and deleted, and hangs on the line that is found anew.
func TestAFilterIsPutInBeforeThePump(t *testing.T) {
	job := roomy()
	d := screentest.New(t, New(), job, 60, 17)
	d.Type("<tab><tab>")
	for d.Screen.(screen).picked.kind != vehicles.AFilter {
		d.Type(".")
	}
	assert.Contains(t, d.View(60, 17), "Filter: none. t puts one in.")
	d.Type("t")
	h := d.State.Job.Fuel.Filter
	require.NotNil(t, h, d.Said)
	laid := d.State.Job.Laid(vehicles.FuelRun)
	assert.InDelta(t, laid.Pump.Value-100, laid.Filter.Value, 1)
	assert.Contains(t, d.View(60, 17), "Filter: leg ")
	d.Type("<left>")
	assert.InDelta(t, laid.Filter.Value-10, d.State.Job.Laid(vehicles.FuelRun).Filter.Value, 1e-6, d.Said)
	d.Type("t1<enter>30<enter>")
	assert.Equal(t, vehicles.Filter{Leg: 1, Start: 30}, *d.State.Job.Fuel.Filter, d.Said)
	find(d, "j")
	found := d.State.Job.Laid(vehicles.FuelRun)
	require.True(t, found.Filter.Set)
	assert.Less(t, found.Filter.Value, found.Pump.Value, "the pump is behind it")
	for _, f := range d.State.Result.Findings {
		if f.Rule.ID == "fuel.filter-reach" {
			assert.Equal(t, rules.Clear, f.Verdict)
		}
	}
	for d.Screen.(screen).picked.kind != vehicles.AFilter {
		d.Type(".")
	}
	d.Type("x")
	assert.Nil(t, d.State.Job.Fuel.Filter)
}

// A run too short for any clip is said to need none, not to have none so far apart.
func TestARunThatNeedsNoClipIsSaidTo(t *testing.T) {
	s := screentest.State(t)
	assert.Equal(t, "exhaust: no clips: what holds it anyway is within 400 mm, the book's span for this run.", screen{}.spreadSo(rules.Clips{Apart: 400, Asked: true}, s))
	assert.Equal(t, "exhaust: 1 clip at most 400 mm apart, a usual span. Slide each to where it can be fixed.", screen{}.spreadSo(rules.Clips{Along: []float64{100}, Apart: 400}, s))
}

// Pump and filter of a line that goes through the floor are put below it, whichever point is picked: within the floor no hand gets at them.
func TestNothingIsHungWithinTheFloor(t *testing.T) {
	line := *vehicles.Demo().Fuel
	line.Hanging, line.Supply.From = vehicles.Hanging{}, ""
	line.Path = []vehicles.RunPoint{{X: 1900, Y: 300, Drop: -90}, {X: 1900, Y: 300, Drop: 60}, {X: 1500, Y: 250, Drop: 60}, {X: 1430, Y: 235, Drop: 45}}
	demo := vehicles.Demo()
	job := demo.WithRun(vehicles.FuelRun, &line)
	for i := range line.Path {
		d := screentest.New(t, New(), job, 100, 27)
		d.Type("<tab><tab>" + strings.Repeat("n", i) + "m")
		for d.Screen.(screen).picked.kind != vehicles.AFilter {
			d.Type(".")
		}
		d.Type("t")
		laid := d.State.Job.Laid(vehicles.FuelRun)
		for _, at := range []vehicles.Number{laid.Pump, laid.Filter} {
			require.True(t, at.Set, "point %d", i)
			drop := laid.Station(at.Value).Drop
			assert.False(t, drop < rules.UnderHole-1 && !rules.PointAbove(&d.State.Job, drop), "point %d: drop %v", i, drop)
		}
	}
}

// A place just below the hole is a hand's room below it, too: the middle of a leg from 90 above to 100 below is 5 below.
func TestAPumpAtTheHoleIsBelowIt(t *testing.T) {
	line := *vehicles.Demo().Fuel
	line.Hanging, line.Supply.From = vehicles.Hanging{}, ""
	line.Path = []vehicles.RunPoint{{X: 1900, Y: 300, Drop: -90}, {X: 1900, Y: 300, Drop: 100}, {X: 1500, Y: 250, Drop: 60}, {X: 1430, Y: 235, Drop: 45}}
	demo := vehicles.Demo()
	d := screentest.New(t, New(), demo.WithRun(vehicles.FuelRun, &line), 100, 27)
	d.Type("<tab><tab>m")
	laid := d.State.Job.Laid(vehicles.FuelRun)
	require.True(t, laid.Pump.Set, d.Said)
	assert.InDelta(t, rules.UnderHole, laid.Station(laid.Pump.Value).Drop, 1)
}

// So is a filter that would come within the floor by being so far before a pump below it.
func TestAFilterBeforeAPumpJustBelowTheFloorIsBelowIt(t *testing.T) {
	line := *vehicles.Demo().Fuel
	line.Hanging, line.Supply.From = vehicles.Hanging{Pump: &vehicles.Pump{Leg: 1, Start: 90 + 85, Tilt: 30}}, ""
	line.Path = []vehicles.RunPoint{{X: 1900, Y: 300, Drop: -90}, {X: 1900, Y: 300, Drop: 160}, {X: 1500, Y: 250, Drop: 60}, {X: 1430, Y: 235, Drop: 45}}
	demo := vehicles.Demo()
	d := screentest.New(t, New(), demo.WithRun(vehicles.FuelRun, &line), 100, 27)
	d.Type("<tab><tab>")
	for d.Screen.(screen).picked.kind != vehicles.AFilter {
		d.Type(".")
	}
	d.Type("t")
	laid := d.State.Job.Laid(vehicles.FuelRun)
	require.True(t, laid.Filter.Set)
	assert.InDelta(t, rules.UnderHole, laid.Station(laid.Filter.Value).Drop, 1)
}
