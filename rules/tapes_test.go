package rules

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// offHole is a job with a pilot hole drilled 20 mm forward of where it was meant, 1000 mm from the datum on the centreline, and
// these things under the floor.
func offHole(things ...vehicles.Obstruction) vehicles.Job {
	job := tidy()
	job.Obstructions, job.Ties, job.Fuel, job.Exhaust, job.Intake = things, nil, nil, nil, nil
	job.Cut = &vehicles.Cut{At: [2]float64{980, 0}, Across: 127}
	return drilled(job, at(1000), at(0))
}

func line(name, kind string, top float64, points ...geometry.Point) vehicles.Obstruction {
	o := vehicles.Obstruction{
		Name: name, Kind: kind, Measured: true, Drop: vehicles.Span{From: top, To: top + 10, Set: true},
		Place: vehicles.Place{Shape: vehicles.Piped, Across: vehicles.Some(10)},
	}
	for _, p := range points {
		o.Path = append(o.Path, vehicles.Pair{at(p.X), at(p.Y)})
	}
	return o
}

func withTape(job vehicles.Job, to string, gap float64) vehicles.Job {
	cut := *job.Cut
	cut.Direct = cut.Direct.Insert(len(cut.Direct), vehicles.DirectTape{To: to, Gap: at(gap)})
	return job.WithCut(cut)
}

// told are tapes in words: "rail 300" to take, "rail 300 clear" taken.
func told(t *testing.T, job vehicles.Job) (told []string) {
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	for _, h := range HoleTapes(&result) {
		text := fmt.Sprintf("%s %s", job.Obstructions[h.To].Name, survey.Figure(h.Is))
		if h.taken() {
			text += " " + h.Verdict.String()
		}
		told = append(told, text)
	}
	return told
}

var (
	aRail    = box("rail", "chassis rail", 100, 3000, 300, 380, 0, 110)
	aMember  = box("member", "crossmember", 500, 600, -800, 800, 0, 95)
	aPipe    = line("pipe", "brake line", 20, geometry.Point{X: 100, Y: -205}, geometry.Point{X: 3000, Y: -205})
	farther  = box("front member", "crossmember", 1700, 1800, -800, 800, 0, 95)
	hidden   = line("pipe behind", "fuel line", 20, geometry.Point{X: 450, Y: -800}, geometry.Point{X: 450, Y: 800})
	deep     = box("low member", "crossmember", 900, 950, -800, 800, 160, 200)
	lonesome = box("tank", "fuel tank", 1300, 1900, -100, 600, 30, 300)
)

func TestTapesToTakeAreToTheNearestOfEachGroup(t *testing.T) {
	assert.Equal(t, []string{"pipe 200", "rail 300", "member 400"}, told(t, offHole(farther, aMember, aRail, aPipe)))
	assert.Nil(t, HoleTapes(&Result{}), "no hole")
}

func TestATapeIsLevelAndMeetsNothingOnItsWay(t *testing.T) {
	assert.Equal(t, []string{"rail 300", "member 400"}, told(t, offHole(aMember, aRail, hidden)), "the pipe lies behind the crossmember")
	assert.Equal(t, []string{"rail 300", "member 400"}, told(t, offHole(deep, aMember, aRail)), "nobody plumbs down to the low one")
	unknown := box("sketched rail", "chassis rail", 100, 3000, -280, -200, 0, 110)
	unknown.Measured = false
	assert.Equal(t, []string{"rail 300", "member 400"}, told(t, offHole(unknown, aMember, aRail)), "a check against what nobody measured is none")
	sunk := aRail
	sunk.Drop = vehicles.Span{}
	assert.Equal(t, []string{"member 400"}, told(t, offHole(sunk, aMember)), "nor against what nobody knows the height of")
}

// A pipe and a rail that run along the van lie in one direction: what lies across them is needed, whatever it is.
func TestTapesToTakeLieAcrossOneAnother(t *testing.T) {
	assert.Equal(t, []string{"rail 300", "tank 300"}, told(t, offHole(aRail, lonesome)), "any other kind, where the usual ones do not cross")
	assert.Equal(t, []string{"pipe 200"}, told(t, offHole(aRail, aPipe)), "nothing does: one is better than none")
	slanting := line("slanting pipe", "brake line", 20, geometry.Point{X: 700, Y: -500}, geometry.Point{X: 1300, Y: -500.1}, geometry.Point{X: 1500, Y: 100})
	assert.Len(t, told(t, offHole(aRail, aPipe, slanting)), 2, "the nearest that crosses before the nearest")
}

func TestTakenTapesStayWhereTheyStand(t *testing.T) {
	job := offHole(aPipe, aMember, aRail, farther)
	job = withTape(job, "member", 401)
	assert.Equal(t, []string{"pipe 200", "rail 300", "member 400 clear"}, told(t, job))
	job = withTape(job, "pipe", 200)
	assert.Equal(t, []string{"pipe 200 clear", "rail 300", "member 400 clear"}, told(t, job))
	result, _ := Judge(job, Builtin())
	assert.False(t, result.Hole.Held, "two across one another agree")
	assert.InDelta(t, 1, result.Hole.Tapes[0].Far, 1e-9)
}

func TestATapeThatDiffersConfirmsNothingAndAnotherIsAsked(t *testing.T) {
	job := withTape(withTape(offHole(aRail, aMember, farther), "member", 430), "rail", 300)
	assert.Equal(t, []string{"rail 300 clear", "member 400 doubtful", "front member 700"}, told(t, job))
	result, _ := Judge(job, Builtin())
	assert.True(t, result.Hole.Held)
}

func TestAHoleThatTheTapesExplainHoldsNothingBack(t *testing.T) {
	job := offHole(aRail, aMember)
	result, _ := Judge(job, Builtin())
	assert.True(t, result.Hole.Held)
	result, _ = Judge(drilled(job, at(981), at(0)), Builtin())
	assert.False(t, result.Hole.Held)
	report := checked(t, job)
	assert.True(t, report.Held)
	assert.Len(t, report.Tapes, 2)
}

// Whatever lies under the floor: a tape to take is across another good one wherever there are two, and runs to something that
// has none yet.
func TestTapesToTakeCrossInAnyVan(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 41)) //nolint:gosec // a fixed seed
	kinds := []string{"brake line", "chassis rail", "crossmember", "wiring", "fuel tank"}
	for range 300 {
		var things []vehicles.Obstruction
		for i := range 2 + r.IntN(8) {
			x, y := 200+1600*r.Float64(), -800+1500*r.Float64()
			things = append(things, box(fmt.Sprint("thing ", i), kinds[r.IntN(len(kinds))], x, x+20+300*r.Float64(), y, y+20+300*r.Float64(), 0, 60))
		}
		result, faults := Judge(offHole(things...), Builtin())
		require.Empty(t, faults)
		all := HoleTapes(&result)
		seen := map[int]bool{}
		for _, h := range all {
			assert.False(t, seen[h.To])
			seen[h.To] = true
			if len(all) > 1 {
				assert.True(t, crosses(h, all))
			}
			assert.InDelta(t, 1, math.Hypot(h.Way.X, h.Way.Y), 1e-9)
		}
	}
}

// A key on Place with a drilled hole waits for this: 200 things under the floor, as many as any van has, all within reach.
func BenchmarkHoleTapes(b *testing.B) {
	r := rand.New(rand.NewPCG(7, 42)) //nolint:gosec // a fixed seed
	kinds := []string{"brake line", "chassis rail", "crossmember", "fuel tank"}
	var things []vehicles.Obstruction
	for i := range 200 {
		x, y := 100+2800*r.Float64(), -800+1500*r.Float64()
		things = append(things, box(fmt.Sprint("thing ", i), kinds[i%len(kinds)], x, x+20, y, y+20, 0, 60))
	}
	result, faults := Judge(offHole(things...), Builtin())
	require.Empty(b, faults)
	for b.Loop() {
		HoleTapes(&result)
	}
}

// Of a group the six nearest are tried: the tape that lies across the others is found while it is the sixth, and no more as the seventh.
func TestTheSixNearestOfAGroupAreTried(t *testing.T) {
	for before, want := range map[int][]string{5: {"pipe 200", "ahead 800"}, 6: {"pipe 200"}} {
		things := []vehicles.Obstruction{aPipe, box("ahead", "chassis rail", 1800, 1900, -20, 20, 0, 150)}
		for i := range before { // each hangs lower than those before it, which a tape to it passes below
			near := 300 + 50*float64(i)
			things = append(things, box(fmt.Sprint("rail ", i), "chassis rail", 900, 1100, near, near+30, 0, 20+20*float64(i)))
		}
		assert.Equal(t, want, told(t, offHole(things...)), "%d nearer ones", before)
	}
}
