package runs

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// The exhaust is led to the skin of the side that it ends nearer to, and falls on the way as the book asks: 20 mm in each metre of the leg from the
// point before, which is that from the last point where that leg turns off there.
func TestTheExhaustIsLedOutAtItsSide(t *testing.T) {
	job := vehicles.Demo()
	job.Floor.Outline.Left, job.Floor.Outline.Right = vehicles.Some(900), vehicles.Some(870)
	point := func(x, y, drop float64) vehicles.RunPoint { return vehicles.RunPoint{X: x, Y: y, Drop: drop} }
	for _, c := range []struct {
		name       string
		path, want vehicles.List[vehicles.RunPoint]
	}{
		// 800 mm across take 16
		{"the last leg goes there already, left", vehicles.List[vehicles.RunPoint]{point(1370, 100, 120), point(1370, 500, 121)}, vehicles.List[vehicles.RunPoint]{point(1370, 100, 120), point(1370, 900, 136)}},
		// 720 mm take 14.4, in whole mm 15
		{"and right", vehicles.List[vehicles.RunPoint]{point(1370, -150, 120), point(1370, -500, 121)}, vehicles.List[vehicles.RunPoint]{point(1370, -150, 120), point(1370, -870, 135)}},
		{"it is deeper there than it must be", vehicles.List[vehicles.RunPoint]{point(1370, 100, 120), point(1370, 500, 150)}, vehicles.List[vehicles.RunPoint]{point(1370, 100, 120), point(1370, 900, 150)}},
		// 400 mm take 8
		{"it turns off, left", vehicles.List[vehicles.RunPoint]{point(1370, 100, 120), point(1000, 500, 130)}, vehicles.List[vehicles.RunPoint]{point(1370, 100, 120), point(1000, 500, 130), point(1000, 900, 138)}},
		// 370 mm take 7.4
		{"and right", vehicles.List[vehicles.RunPoint]{point(1370, 100, 120), point(1000, -500, 130)}, vehicles.List[vehicles.RunPoint]{point(1370, 100, 120), point(1000, -500, 130), point(1000, -870, 138)}},
	} {
		run := *job.Exhaust
		run.Path, run.Hanging = c.path, vehicles.Hanging{}
		d := screentest.New(t, New(), job.WithRun(vehicles.ExhaustRun, &run), 60, 17)
		d.Type("y")
		assert.Equal(t, c.want, d.State.Job.Exhaust.Path, c.name)
		assert.Equal(t, len(c.want)-1, d.Screen.(screen).picked.index, "%s: the outlet is picked", c.name)
	}
}

// So is the pump put on the leg of the fuel line that leads to the point picked, and on the first where that is its beginning.
func TestAPumpIsDroppedAtTheCursor(t *testing.T) {
	job := vehicles.Demo()
	line := *job.Fuel
	line.Pump, line.Clips = nil, nil
	line.Path = vehicles.List[vehicles.RunPoint]{{X: 2170, Y: 600, Drop: 33}, {X: 2170, Y: 330, Drop: 133}, {X: 1800, Y: 330, Drop: 130}, {X: 1290, Y: 230, Drop: 100}, {X: 1290, Y: 230, Drop: 45}}
	for at, leg := range []int{1, 1, 2, 3} {
		d := screentest.New(t, New(), job.WithRun(vehicles.FuelRun, &line), 60, 17)
		d.Type("<tab><tab>" + strings.Repeat("n", at) + "m")
		if assert.NotNil(t, d.State.Job.Fuel.Pump, d.Said) {
			assert.Equal(t, leg, d.State.Job.Fuel.Pump.Leg, "at point %d", at+1)
		}
	}
}

// A tank has two heights, the first the less, or none; one of no height is none.
func TestATanksHeightsAreTwoOrNone(t *testing.T) {
	d := screentest.New(t, New(), vehicles.Demo(), 60, 17)
	d.Type("<tab><tab>")
	for d.Screen.(screen).picked.sort != tank {
		d.Type(".")
	}
	was := *d.State.Job.Fuel.Supply.Tank
	for _, c := range []struct{ from, to, says string }{
		{"60", "60", "less than its second"},
	} {
		d.Said = ""
		d.Type("t<enter><enter><enter>" + c.from + "<enter>" + c.to + "<enter>")
		assert.Contains(t, d.Said, c.says, c)
		assert.Equal(t, was, *d.State.Job.Fuel.Supply.Tank)
		d.Type("<esc>")
	}
	d.Type("t<enter><enter><enter>60<enter>61<enter>")
	assert.Equal(t, vehicles.Span{From: 60, To: 61, Set: true}, d.State.Job.Fuel.Supply.Tank.Drop, d.Said)
}
