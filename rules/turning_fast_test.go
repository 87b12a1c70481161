package rules

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// untold is told how far a search is, and does not mind.
func untold(int, int) {}

// smallFloors are furnished floors that the slow search gets over in a moment.
func smallFloors(t *testing.T) (list []Result) {
	floor := vehicles.Floor{From: 40, Length: 1300, Width: 1000, Thickness: 31, Ground: 460}
	for seed := range uint64(3) {
		for _, f := range []furnishing{
			{name: "bare", class: "2 kW"},
			{name: "boxes", fittings: 2, size: 200, class: "2 kW", forms: []string{"box"}},
			{name: "forms", fittings: 4, size: 80, class: "2 kW", forms: []string{"turned", "disc", "pipe"}},
			{name: "shelf", fittings: 1, size: 150, class: "4 kW", roof: 330, forms: []string{"turned"}},
			{name: "low things", fittings: 5, size: 200, low: true, class: "2 kW", forms: []string{"box", "turned"}},
		} {
			if f.floor = floor; f.roof > 0 {
				f.floor.Length, f.floor.Width = 800, 640 // a plateau takes the slow search long
			}
			result, faults := Judge(furnished(f, 5, seed), Builtin())
			require.Empty(t, faults)
			list = append(list, result)
		}
	}
	return list
}

// The slow search has the same areas. The place of each lies on no lesser margin, but for what either may be below the
// greatest at the start: from there each goes its own way. Areas so small that this decides whether they are one are left out.
func TestTurningPlacesAreThoseFoundSlowly(t *testing.T) {
	places := 0
	for i, result := range smallFloors(t) {
		name := fmt.Sprint(result.Job.Ref, " ", i)
		wide := func(list []Suggestion) (wide []Suggestion) {
			for _, s := range list {
				if s.Margin > turningTolerance+1 {
					wide = append(wide, s)
				}
			}
			return wide
		}
		slow, fast := wide(newSlowTurning(&result).Best(2)), wide(RoomForTurning(&result).Best(2, untold))
		require.Len(t, fast, len(slow), name)
		for k, s := range slow {
			places++
			assert.InDelta(t, s.Margin, fast[k].Margin, turningTolerance+suggestTolerance, name)
			margin := roomForHeater(&result, s.Yaw.Value).Margins.At(s.At).Margin
			assert.InDelta(t, s.Margin, margin, 1e-6, "the slow one's own place, %s", name)
		}
	}
	assert.Greater(t, places, 15)
}

// At every place the best yaw and its margin are those of asking each yaw.
func TestTheBestYawOfAPlaceIsThatFoundSlowly(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	for _, result := range smallFloors(t) {
		slow, fast := newAnyYaw(&result), RoomForTurning(&result)
		for range 60 {
			p := anywhere(r, &result)
			margin, _ := slow.best(p)
			_, got := fast.Margins.Way(p)
			if len(result.Job.Fittings) > 0 {
				require.InDelta(t, margin, got, 1e-6)
			}
			at := roomForHeater(&result, fast.bestYaw(p)).Margins.At(p).Margin
			require.InDelta(t, min(margin, RoomForCut(&result).Margins.At(p).Margin), at, 1e-6)
			require.InDelta(t, at, fast.Margins.At(p).Margin, 1e-6)
		}
	}
}

// What is suggested on a crowded floor holds when it is judged, with the margin as it was said.
func TestTurningPlacesOfFurnishedFloorsHoldWhenTheyAreJudged(t *testing.T) {
	places := 0
	for _, f := range furnishings {
		result, faults := Judge(furnished(f, 60, 2), Builtin())
		require.Empty(t, faults)
		for _, s := range RoomForTurning(&result).Best(2, untold) {
			places++
			require.GreaterOrEqual(t, s.Margin, 0., f.name)
			require.InDelta(t, s.Margin, worstPlaced(t, result.Job, s.At, s.Yaw.Value), 1e-6, "%s: %+v", f.name, s)
		}
		for _, s := range RoomForTurning(&result).Near(geometry.Point{X: 1500}) {
			require.GreaterOrEqual(t, worstPlaced(t, result.Job, s.At, s.Yaw.Value), -1e-6, "%s: %+v", f.name, s)
		}
	}
	assert.Greater(t, places, 50)
}

func TestTurningPlacesDoNotDependOnTheWorkers(t *testing.T) {
	for _, f := range furnishings {
		result, faults := Judge(furnished(f, 60, 3), Builtin())
		require.Empty(t, faults)
		one := RoomForTurning(&result).Best(1, untold)
		for _, workers := range []int{2, 5} {
			require.Equal(t, one, RoomForTurning(&result).Best(workers, untold), f.name)
		}
	}
}

func TestTheSearchTellsEveryAreaOnce(t *testing.T) {
	result, faults := Judge(furnished(furnishings[0], 60, 1), Builtin())
	require.Empty(t, faults)
	var told [][2]int
	places := RoomForTurning(&result).Best(1, func(done, of int) { told = append(told, [2]int{done, of}) })
	want := [][2]int{{0, 0}}
	for i := range places {
		want = append(want, [2]int{i + 1, len(places)})
	}
	assert.Equal(t, want, told)
}

// Whether the heater fits with a thing shifted is asked of what is near only: it is the same as asked of everything.
func TestWhetherTheHeaterFitsIsThatOfTheWholeFloor(t *testing.T) {
	r, fits := rand.New(rand.NewPCG(5, 1)), 0
	for range 40 {
		f := furnishings[2+r.IntN(len(furnishings)-2)]
		f.fittings = max(f.fittings, 3)
		f.forms, f.size = []string{"box", "turned", "disc", "pipe"}, max(f.size, 120)
		job := furnished(f, 20, r.Uint64())
		job.Exhaust, job.Intake = &vehicles.Run{Across: 26}, &vehicles.Run{Across: 28}
		at := [2]float64{400 + 2400*r.Float64(), 600*r.Float64() - 300}
		job.Wish = &vehicles.Wish{At: at, Within: vehicles.Some(20 + 200*r.Float64())}
		result, faults := Judge(job, Builtin())
		require.Empty(t, faults)
		v := newVicinity(&result)
		for range 4 {
			s := Shift{Fitting: r.IntN(len(job.Fittings)), Obstruction: -1, By: geometry.Point{X: 400 * r.NormFloat64()}}
			if r.IntN(2) == 0 {
				s = Shift{Fitting: -1, Obstruction: r.IntN(20), By: geometry.Point{Y: 400 * r.NormFloat64()}}
			}
			whole := turningRoom(s.shifted(&result), s.shifted(&result).wholeAt).Margins
			_, want := whole.Holds(v.wish, v.within, shiftMargin, fitsWithin)
			if _, more := whole.Holds(v.wish, v.within, shiftMargin+2*fitsWithin, fitsWithin); more != want {
				continue // by a hair
			}
			require.Equal(t, want, v.fits([]Shift{s}), "%+v", s)
			if want {
				fits++
			}
		}
	}
	assert.Greater(t, fits, 10)
	assert.Less(t, fits, 150)
}

// Stubs ask of their place what their clearance would be judged as: the gap of the tube in space, less what is asked of a
// bare exhaust, of a shielded one, or of the intake; nothing where no book says.
func TestStubsAskForTheGapOfATube(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 1))
	job := furnished(furnishings[0], 30, 1)
	job.Intake = &vehicles.Run{Across: 28}
	for i, book := range []*Book{Builtin(), Builtin(), newBook(nil)} {
		job.Exhaust = &vehicles.Run{Across: 26, Shielded: vehicles.Shields{All: i == 1}}
		exhaust := rulesByID()[[]string{"exhaust.clearance", "exhaust.clearance.shielded", "exhaust.clearance"}[i]]
		result := judgedBy(t, job, book)
		for range 20 {
			yaw, p := 360*r.Float64(), anywhere(r, &result)
			stubs := result.stubsAt(yaw)
			limited := withoutSwages(job) // a pipe may lie under a swage
			require.Len(t, stubs, 2*len(limited), "the exhaust's come first")
			for n, d := range stubs {
				thing := limited[n%len(limited)]
				require.Same(t, &result.Plan.Obstructions[thing], d.thing)
				rule, at, across := exhaust, job.Heater.ExhaustStub, 26.0
				if n >= len(limited) {
					rule, at, across = rulesByID()["intake.clearance"], job.Heater.IntakeStub, 28
				}
				mouth := p.Add(geometry.Point{X: at[0], Y: at[1]}.Turn(yaw))
				tube := []geometry.Point3{mouth.At(0), mouth.At(-job.Heater.StubDrop)}
				asked := book.ofKinds(rule).of(job.Obstructions[thing].Kind).Value.Or(0)
				want := math.Max(d.thing.Prism.GapRun(tube).Gap, 0) - across/2 - asked
				require.InDelta(t, want, d.Margin(p), 1e-6)
			}
		}
	}
}

// withoutSwages are the indices of the obstructions that are no swages.
func withoutSwages(job vehicles.Job) (list []int) {
	for i, o := range job.Obstructions {
		if o.Kind != "swage" {
			list = append(list, i)
		}
	}
	return list
}
