package rules

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// shelved is a job with the cut at 1000, 200 of a floor 3000 by 1700, and a fitting with these edges.
func shelved(t testing.TB, x, y, rise string) Result {
	job, err := vehicles.ParseJob([]byte(`format = 1
[job]
ref = "T"
[floor]
from = 40
length = 3000
width = 1700
thickness = 30
ground = 400
[datum]
pins = 600
[cut]
at = [1000, 200]
across = 127
[[fitting]]
name = "shelf"
x = `+x+`
y = `+y+`
rise = `+rise+`
`), "shelved")
	require.NoError(t, err)
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	return result
}

func TestWhatStandsWhereATapeLies(t *testing.T) {
	const all = 0b11111
	for name, c := range map[string]struct {
		x, y, rise string
		met        int     // a bit each way
		aside      float64 // of the tape from the datum
	}{
		"on the line from the bumper":      {"[400, 600]", "[150, 240]", "[0, 500]", 1 << FromDatum, 60},
		"on stilts":                        {"[400, 600]", "[150, 240]", "[30, 500]", 0, 0},
		"inside the floor":                 {"[400, 600]", "[150, 240]", "[-20, -5]", 0, 0},
		"between the mark and the left":    {"[900, 1100]", "[300, 500]", "[0, 500]", 1 << FromLeft, 0},
		"between the mark and the right":   {"[900, 1100]", "[-500, -300]", "[0, 500]", 1 << FromRight, 0},
		"beside the line, a blade's width": {"[400, 600]", "[212.5, 300]", "[0, 500]", 0, 0},
		"on the mark":                      {"[900, 1100]", "[100, 300]", "[0, 500]", all, 0},
	} {
		r := shelved(t, c.x, c.y, c.rise)
		mark := Marks(r).Marks[0]
		met := 0
		for _, way := range TapeWays {
			if OnFloor(&r, mark, way).Fittings != nil {
				met |= 1 << way
			}
		}
		assert.Equal(t, c.met, met, name)
		aside := OnFloor(&r, mark, FromDatum).Aside
		if c.aside == 0 {
			assert.Nil(t, aside, name)
			continue
		}
		require.NotNil(t, aside, name)
		assert.InDelta(t, c.aside, aside.Off, 1e-9, name)
		assert.InDelta(t, 1000, aside.Reading, 1e-9, "level tape: as far from the bumper there")
	}
}

// A tape that is called free has no point of its middle line in any fitting; one that is not passes within half its width of each that is
// named. Looked at by points along it, not by the distances of shapes.
func TestAFreeTapeTouchesNothing(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		job := furnished(furnishings[4], 10, rapid.Uint64Range(1, 1e6).Draw(rt, "seed"))
		job.Cut = &vehicles.Cut{At: [2]float64{rapid.Float64Range(300, 2900).Draw(rt, "x"), rapid.Float64Range(-700, 700).Draw(rt, "y")}, Across: 127}
		r, faults := Judge(job, Builtin())
		require.Empty(rt, faults)
		for _, mark := range Marks(r).Marks {
			if mark.Above == nil {
				continue
			}
			for _, way := range TapeWays {
				held := map[int]bool{}
				for _, i := range OnFloor(&r, mark, way).Fittings {
					held[i] = true
				}
				l := taping{r: &r, end: geometry.Point{X: mark.Above.X, Y: mark.Above.Y}}
				from, to := r.Plan.Fit.Down(l.zero(mark.Above, way)), r.Plan.Fit.Down(l.end)
				for i := range r.Plan.Fittings {
					p := &r.Plan.Fittings[i].Prism
					if p.High <= r.Job.Floor.Thickness || p.Low >= r.Job.Floor.Thickness+tapeUnder {
						require.False(rt, held[i])
						continue
					}
					least := math.Inf(1)
					for s := 0.0; s <= 1; s += 1.0 / 2000 {
						least = min(least, p.Footprint.GapOnly(from.Add(to.Sub(from).Scale(s))))
					}
					if held[i] {
						require.Less(rt, least, tapeAcross/2.0+1)
					} else {
						require.Greater(rt, least, tapeAcross/2.0-1e-6)
					}
				}
			}
		}
	})
}

func TestCornersAreCalledByTheVan(t *testing.T) {
	at := func(yaw float64) [4]string {
		var corners [4]geometry.Point
		for i, c := range [...]geometry.Point{{X: 95, Y: 75}, {X: -95, Y: 75}, {X: -95, Y: -75}, {X: 95, Y: -75}} {
			corners[i] = c.Turn(yaw).Add(geometry.Point{X: 1000, Y: -300})
		}
		return cornersOf(corners)
	}
	assert.Equal(t, [4]string{"front left", "rear left", "rear right", "front right"}, at(0))
	assert.Equal(t, [4]string{"rear right", "front right", "front left", "rear left"}, at(180))
	assert.Equal(t, [4]string{"rear left", "rear right", "front right", "front left"}, at(90))
	assert.Equal(t, [4]string{"left", "rear", "right", "front"}, at(50))
	thin := [4]geometry.Point{{X: 200, Y: 20}, {X: -200, Y: 20}, {X: -200, Y: -20}, {X: 200, Y: -20}}
	assert.Equal(t, [4]string{}, cornersOf(thin), "two would be called alike")
}

// The demo's class of heater, 2 kW: its stubs 35 before and behind, 25 left; turned by 180 degrees the other way round.
func TestStubsAreMarkedWhereTheHeaterHasThem(t *testing.T) {
	r := shelved(t, "[400, 600]", "[-600, -500]", "[0, 500]")
	require.Empty(t, Marks(r).Stubs, "no heater yet")
	for yaw, want := range map[float64][3]geometry.Point{
		0:   {{X: 1035, Y: 225}, {X: 965, Y: 225}, {X: 1000, Y: 165}},
		180: {{X: 965, Y: 175}, {X: 1035, Y: 175}, {X: 1000, Y: 235}},
	} {
		job := r.Job
		heater, _ := vehicles.HeaterClass("2 kW")
		heater.Yaw = yaw
		job.Heater = &heater
		turned, faults := Judge(job, Builtin())
		require.Empty(t, faults)
		stubs := Marks(turned).Stubs
		require.Len(t, stubs, 3)
		for i, name := range [...]string{"exhaust stub", "intake stub", "fuel line stub"} {
			assert.Equal(t, name, stubs[i].Name)
			assert.InDelta(t, want[i].X, stubs[i].Plan.X, 1e-9, name)
			assert.InDelta(t, want[i].Y, stubs[i].Plan.Y, 1e-9, name)
			assert.InDelta(t, want[i].X, stubs[i].Below.Bumper, 1e-9, "tape held level")
		}
	}
}
