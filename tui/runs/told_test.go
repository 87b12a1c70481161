package runs

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// What the tank of a line that was begun by keys holds is asked on another screen: which one stands by the tank, until somebody has said.
func TestTheTankSaysWhereItsLitresAreEntered(t *testing.T) {
	d := screentest.New(t, New(), stripped(roomy(), vehicles.FuelRun), 100, 27)
	d.Type("<tab><tab>a")
	told := func() string {
		m := d.Screen.(screen)
		for _, p := range m.parts(d.State) {
			if p.sort == tank {
				return strings.Join(strings.Fields(m.told(p, d.State)), " ")
			}
		}
		return ""
	}
	assert.Equal(t, "Tank: not known. t types where it is; what it holds is entered on Sizing (0), under fuel.", told())
	line := *d.State.Job.Fuel
	line.Supply.Tank = &vehicles.Tank{At: [2]float64{2500, 300}, Drop: vehicles.Span{From: 40, To: 250, Set: true}}
	d.Put(d.State.Job.WithRun(vehicles.FuelRun, &line))
	assert.Equal(t, "Tank: x 2500, 300 mm left, 40 to 250 mm below floor; what it holds is entered on Sizing (0), under fuel.", told())
	line.Supply.Tank.Litres = vehicles.Some(12.5)
	d.Put(d.State.Job.WithRun(vehicles.FuelRun, &line))
	assert.Equal(t, "Tank: x 2500, 300 mm left, 40 to 250 mm below floor, holds 12.5 l", told())
}
