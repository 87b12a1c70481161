package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// deviated is the sample van with what was made otherwise, planned and built, and what deviates.
func deviated(t *testing.T, made vehicles.Built) []Deviation {
	planned, faults := Judge(vehicles.Demo().WithBuilt(made), Builtin())
	require.Empty(t, faults)
	built, faults := AsBuilt(&planned, planned.Book)
	require.Empty(t, faults)
	return Deviations(&planned, &built)
}

func readAt(x, y string) vehicles.Pair {
	along, _ := survey.Typed(x, survey.X)
	across, _ := survey.Typed(y, survey.Y)
	return vehicles.Pair{along, across}
}

// A hole that was read from below deviates by what the readings come to less what was planned, as uncertain as they are: by hand, the
// sample's tape hangs 150 mm below the floor, so 1273 comes to the root of 1273^2 - 150^2 = 1264.13.
func TestWhatAReadHoleDeviatesBy(t *testing.T) {
	demo := vehicles.Demo()
	cut := demo.ReadSawn(demo.ReadSawn(*demo.Cut, survey.X, readAt("1273", "")[0]), survey.Y, readAt("1273", "193")[1])
	list := deviated(t, vehicles.Built{Cut: &cut})
	require.Len(t, list, 2)
	assert.Equal(t, Measured{Of: MeasuredAlong}, list[0].What)
	assert.InDelta(t, 1264.13, list[0].Built.Value, 0.01)
	by, ok := list[0].By()
	assert.True(t, ok)
	assert.InDelta(t, 9.13, by, 0.01)
	assert.Equal(t, Measured{Of: MeasuredAcross}, list[1].What)
	assert.InDelta(t, 193, list[1].Built.Value, 0.01)
	plan, _ := Reduce(demo.WithDrilled(&cut.Sawn), nil)
	assert.Equal(t, vehicles.Some(plan.Cut.UX), list[0].Sigma)
	assert.Equal(t, Foul, list[0].Verdict, "the sample's cut is foul of the brake pipe")
}

// What no tape explains is told of the hole, as it would be of the pilot: it was sawn elsewhere, or misread.
func TestAHoleFartherOffThanTheTapesExplainIsTold(t *testing.T) {
	for text, unexplained := range map[string]bool{"1264": false, "1364": true} {
		demo := vehicles.Demo()
		cut := demo.ReadSawn(*demo.Cut, survey.X, readAt(text, "")[0])
		pilot, faults := Judge(demo.WithDrilled(&vehicles.Pair{cut.Sawn[0], readAt("", "195")[1]}), Builtin())
		require.Empty(t, faults)
		check, _ := PilotCheck(pilot)
		list := deviated(t, vehicles.Built{Cut: &cut})
		require.Len(t, list, 1, text)
		assert.Equal(t, unexplained, list[0].Unexplained, text)
		assert.Equal(t, check.Explained, !list[0].Unexplained, "as the pilot's")
	}
}

// Each figure of heater and runs that came out otherwise has its row; a table that differs in none of those has one without figures.
func TestEachFigureThatCameOutOtherwiseHasItsRow(t *testing.T) {
	demo := vehicles.Demo()
	heater, run, other := *demo.Heater, *demo.Exhaust, *demo.Intake
	heater.Turret = vehicles.Some(50)
	run.Path = run.Path.With(1, vehicles.RunPoint{X: run.Path[1].X, Y: run.Path[1].Y + 20, Drop: run.Path[1].Drop - 4})
	other.Across += 2
	list := deviated(t, vehicles.Built{Heater: &heater, Exhaust: &run, Intake: &other})
	var what []string
	for _, d := range list {
		what = append(what, d.Table.String()+" "+d.What.String())
		assert.False(t, d.Sigma.Set, "nobody read it")
	}
	assert.Equal(t, []string{"heater collar", "exhaust point 2 across", "exhaust point 2 drop", "intake "}, what)
	by, _ := list[1].By()
	assert.InDelta(t, 20, by, 1e-9)
}

// A run that was built with a point more has a row for it without what was planned, one with a point less a row without what was built.
func TestAPointMoreOrLessHasItsRows(t *testing.T) {
	demo := vehicles.Demo()
	plan := demo.Exhaust.Path
	last := len(plan) - 1
	more, less := *demo.Exhaust, *demo.Exhaust
	more.Path = plan.Insert(len(plan), vehicles.RunPoint{X: plan[last].X - 100, Y: plan[last].Y, Drop: plan[last].Drop})
	less.Path = plan.Without(last)
	more.Hanging, less.Hanging = vehicles.Hanging{}, vehicles.Hanging{} // what hung farther along than they go
	for points, run := range map[int]*vehicles.Run{len(plan) + 1: &more, len(plan): &less} {
		list := deviated(t, vehicles.Built{Exhaust: run})
		require.Len(t, list, 3, "%d points: along, across and below of one", points)
		for c, d := range list {
			assert.Equal(t, Measured{points, MeasuredAlong + MeasuredOf(c)}, d.What)
			assert.Equal(t, points > len(plan), d.Built.Set)
			assert.Equal(t, points == len(plan), d.Planned.Set)
			_, ok := d.By()
			assert.False(t, ok, "there is nothing to be off from")
		}
	}
}

// What was read of the hole as built is judged as a pilot measured there is, but for the pilot's own findings.
func TestAHoleAsBuiltIsJudgedAsAPilotReadThere(t *testing.T) {
	demo := vehicles.Demo()
	at := readAt("1264", "L693")
	cut := demo.ReadSawn(demo.ReadSawn(*demo.Cut, survey.X, at[0]), survey.Y, at[1])
	planned, faults := Judge(demo.WithBuilt(vehicles.Built{Cut: &cut}), Builtin())
	require.Empty(t, faults)
	built, faults := AsBuilt(&planned, planned.Book)
	require.Empty(t, faults)
	pilot, faults := Judge(demo.WithDrilled(&at), Builtin())
	require.Empty(t, faults)
	want := map[string]Finding{}
	for _, f := range pilot.Findings {
		want[f.key()] = f
	}
	for _, f := range built.Findings {
		p, there := want[f.key()]
		require.True(t, there, f.key())
		assert.InDelta(t, p.Margin.Value, f.Margin.Value, 1e-9, f.key())
		assert.InDelta(t, p.Sigma, f.Sigma, 1e-9, f.key())
		delete(want, f.key())
	}
	for key := range want {
		assert.Contains(t, key, "pilot.", "nothing else is left out")
	}
}

// Turns are told within a half turn either way, and how much more was turned the shorter way round; a whole turn is none.
func TestATurnedHeaterDeviatesByTheShorterWay(t *testing.T) {
	for _, c := range []struct{ planned, is, plan, built, by float64 }{
		{180, -90, 180, -90, 90}, {170, -170, 170, -170, 20}, {-170, 170, -170, 170, -20}, {-270, 100, 90, 100, 10}, {0, 180, 0, 180, 180},
	} {
		demo := vehicles.Demo()
		was, is := *demo.Heater, *demo.Heater
		was.Yaw, is.Yaw = c.planned, c.is
		demo = demo.WithHeater(was)
		planned, faults := Judge(demo.WithBuilt(vehicles.Built{Heater: &is}), Builtin())
		require.Empty(t, faults)
		built, _ := AsBuilt(&planned, planned.Book)
		list := Deviations(&planned, &built)
		require.Len(t, list, 1)
		assert.Equal(t, Measured{Of: MeasuredPoints}, list[0].What)
		assert.Equal(t, [2]vehicles.Number{vehicles.Some(c.plan), vehicles.Some(c.built)}, [2]vehicles.Number{list[0].Planned, list[0].Built})
		by, ok := list[0].By()
		assert.True(t, ok)
		assert.Equal(t, c.by, by, "%v", c)
	}
	demo := vehicles.Demo()
	is := *demo.Heater
	is.Yaw -= 360
	assert.Equal(t, Measured{}, deviated(t, vehicles.Built{Heater: &is})[0].What, "the same way")
}
