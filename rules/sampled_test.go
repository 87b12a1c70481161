package rules

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// What is sampled of a run beside its own distances: that it falls as asked, that its gas comes out away from the openings, and that two
// runs keep apart. As in found_proof_test.go nothing here is worked out by this program's code.

// withOpenings is a random floor with two openings of any kinds in the van's sides, each 880 mm high and 100 mm wide; they have a source
// of their own, so that the floors of a seed stay what they are.
func withOpenings(r *rand.Rand, job vehicles.Job) vehicles.Job {
	for _, name := range []string{"opening 1", "opening 2"} {
		kind := vehicles.OpeningKinds[r.IntN(len(vehicles.OpeningKinds))]
		job.Openings = append(job.Openings, opening(name, kind, math.Round(100+2800*r.Float64()), []float64{-890, 890}[r.IntN(2)]))
	}
	return job
}

// sampledCorners are a run's corners from its stub's mouth on, of a fuel line those of its path, x, y and drop.
func sampledCorners(job *vehicles.Job, run *vehicles.Run, kind vehicles.RunKind) (corners [][3]float64) {
	if kind != vehicles.FuelRun { // that ends at its stub's mouth, and says so
		mouth, _ := job.Stub(kind)
		corners = append(corners, [3]float64{mouth.X, mouth.Y, -mouth.Z})
	}
	for _, p := range run.Path {
		corners = append(corners, [3]float64{p.X, p.Y, p.Drop})
	}
	return corners
}

// sampledFall holds the legs of an exhaust before its muffler's own, without one all, to what the book asks them to fall, mm per m of
// their length in plan.
func sampledFall(t *testing.T, floor int, r *Result, run *vehicles.Run, corners [][3]float64) {
	least, set := r.Book.Lookup("exhaust.fall", "")
	require.True(t, set && least.Value.Set)
	legs := len(corners) - 1
	if run.Muffler != nil {
		legs = run.Muffler.Leg - 1
	}
	for i := range legs {
		a, b := corners[i], corners[i+1]
		plan := math.Hypot(a[0]-b[0], a[1]-b[1])
		require.GreaterOrEqual(t, b[2]-a[2], plan*least.Value.Value/1000-1e-6, "floor %d: leg %d of %v", floor, i+1, corners)
	}
}

// sampledGas holds outlet, muffler and drain holes of an exhaust to their distances from the openings, and in full what the outlet blows
// at and what driving wind carries its gas to.
func sampledGas(t *testing.T, floor int, r *Result, run *vehicles.Run, corners, line [][3]float64) {
	asked := func(id, kind string) float64 {
		l, ok := r.Book.Lookup(id, kind)
		require.True(t, ok && l.Value.Set, id)
		return l.Value.Value
	}
	outlet, before := corners[len(corners)-1], corners[len(corners)-2]
	on := minus(outlet, before)
	ahead, rear := stretch(outlet, plus(outlet, times(on, 1000/norm(on)))), stretch(outlet, plus(outlet, [3]float64{-1000, 0, 0}))
	for i := range r.Plan.Openings {
		prism, o := &r.Plan.Openings[i].Placed.Prism, &r.Job.Openings[i]
		require.GreaterOrEqual(t, away(prism, outlet), asked("exhaust.outlet", o.Kind)-1e-6, "floor %d: outlet from %s", floor, o.Kind)
		gas := nearestOf(prism, drainsAt(line, run.Drains))
		if run.Muffler != nil {
			gas = min(gas, nearestOf(prism, mufflerAxis(run.Muffler, corners))-run.Muffler.Across/2)
		}
		require.GreaterOrEqual(t, gas, asked("exhaust.drain-gas", "")-1e-6, "floor %d: muffler and drains from %s", floor, o.Kind)
		if r.Job.RunChecks == vehicles.InFull {
			require.GreaterOrEqual(t, nearestOf(prism, rear), asked("exhaust.upwind", "")-1e-6, "floor %d: gas on the way past %s", floor, o.Kind)
		}
		if r.Job.RunChecks == vehicles.InFull && o.Is(vehicles.HurtByHeat) {
			require.GreaterOrEqual(t, nearestOf(prism, ahead), asked("exhaust.blast", "")-1e-6, "floor %d: it blows at %s", floor, o.Kind)
		}
	}
	for i := range r.Plan.Obstructions {
		if o := &r.Job.Obstructions[i]; r.Job.RunChecks == vehicles.InFull && o.Is(vehicles.HurtByHeat) {
			require.GreaterOrEqual(t, nearestOf(&r.Plan.Obstructions[i].Prism, ahead), asked("exhaust.blast", "")-1e-6, "floor %d: it blows at %s", floor, o.Kind)
		}
	}
}

// drives holds a place of a run, in full, to what is asked of it from what goes up and down as the van drives.
func drives(t *testing.T, floor int, kind vehicles.RunKind, r *Result, i int, at [3]float64, radius float64) {
	o := &r.Job.Obstructions[i]
	if r.Job.RunChecks != vehicles.InFull || !o.Is(vehicles.Travels) {
		return
	}
	l, ok := r.Book.Lookup("runs.travel", kind.String())
	require.True(t, ok)
	moved := r.Plan.Obstructions[i].Prism
	moved.Low, moved.High = moved.Low-100, moved.High+100 // what is taken while nobody has said
	require.GreaterOrEqual(t, away(&moved, at)-radius, l.Value.Value-1e-6, "floor %d: %s as it travels", floor, o.Kind)
}

// stretch are places 2 mm apart on a straight line.
func stretch(a, b [3]float64) (places [][3]float64) {
	n := max(1, int(math.Ceil(norm(minus(b, a))/2)))
	for i := range n + 1 {
		places = append(places, plus(a, times(minus(b, a), float64(i)/float64(n))))
	}
	return places
}

// mufflerAxis are places along a muffler.
func mufflerAxis(h *vehicles.Muffler, corners [][3]float64) [][3]float64 {
	a, b := corners[h.Leg-1], corners[h.Leg]
	way := times(minus(b, a), 1/norm(minus(b, a)))
	return stretch(plus(a, times(way, h.Start)), plus(a, times(way, h.Start+h.Length)))
}

// drainsAt are the places of a line that lie so far along it.
func drainsAt(line [][3]float64, along []float64) (places [][3]float64) {
	for i, far := range alongs(line) {
		for _, at := range along {
			if i > 0 && math.Abs(far-at) <= norm(minus(line[i], line[i-1])) {
				places = append(places, line[i])
			}
		}
	}
	return places
}

// alongs are how far along a line each of its places is, mm.
func alongs(line [][3]float64) []float64 {
	far := make([]float64, len(line))
	for i := 1; i < len(line); i++ {
		far[i] = far[i-1] + norm(minus(line[i], line[i-1]))
	}
	return far
}

// nearestOf is the least distance of places from a prism.
func nearestOf(prism *geometry.Prism, places [][3]float64) float64 {
	least := math.Inf(1)
	for _, at := range places {
		least = min(least, away(prism, at))
	}
	return least
}

// nearestPair is the least distance between places of two lines, of which those count that may both be asked.
func nearestPair(p, q [][3]float64, both func(i, k int) bool) float64 {
	least := math.Inf(1)
	for i := range p {
		for k := range q {
			if d := minus(p[i], q[k]); both(i, k) {
				least = min(least, dot(d, d))
			}
		}
	}
	return math.Sqrt(least)
}

// stubsLeftOut is along how much of two runs from their stubs nothing is asked of how near they are to each other, mm: the heater puts them
// there.
const stubsLeftOut = 150

// sampledTogether holds the runs of a job to what is asked between them: the intake's mouth away from outlet and muffler, its line and the
// fuel line away from the exhaust's, and in full its mouth from the way of the gas.
func sampledTogether(t *testing.T, floor int, r *Result) {
	asked := func(id string) float64 {
		l, ok := r.Book.Lookup(id, "")
		require.True(t, ok && l.Value.Set, id)
		return l.Value.Value
	}
	lineOf := func(kind vehicles.RunKind) (corners, line [][3]float64, stubs []float64, radius float64) {
		run := r.Job.Run(kind)
		corners = sampledCorners(&r.Job, run, kind)
		line, _ = rounded(t, corners, run.Bend.Value)
		stubs = alongs(line)
		for i, whole := 0, stubs[len(stubs)-1]; kind == vehicles.FuelRun && i < len(stubs); i++ {
			stubs[i] = whole - stubs[i]
		}
		return corners, line, stubs, run.Across / 2
	}
	if r.Job.Exhaust == nil {
		return
	}
	corners, pipe, pipeStubs, pipeRadius := lineOf(vehicles.ExhaustRun)
	outlet := pipe[len(pipe)-1]
	if r.Job.Intake != nil {
		_, hose, stubs, radius := lineOf(vehicles.IntakeRun)
		mouth := hose[len(hose)-1:]
		all := func(int, int) bool { return true }
		apart := norm(minus(mouth[0], outlet))
		if h := r.Job.Exhaust.Muffler; h != nil {
			apart = min(apart, nearestPair(mouth, mufflerAxis(h, corners), all)-h.Across/2)
		}
		require.GreaterOrEqual(t, apart, asked("intake.apart")-1e-6, "floor %d: mouth from the exhaust", floor)
		behind := nearestPair(pipe, hose, func(i, k int) bool { return pipeStubs[i] >= stubsLeftOut && stubs[k] >= stubsLeftOut })
		require.GreaterOrEqual(t, behind-pipeRadius-radius, asked("intake.exhaust")-1e-6, "floor %d: intake from the exhaust", floor)
		if r.Job.RunChecks == vehicles.InFull {
			wind := nearestPair(mouth, stretch(outlet, plus(outlet, [3]float64{-1000, 0, 0})), all)
			require.GreaterOrEqual(t, wind, asked("intake.upwind")-1e-6, "floor %d: mouth from the gas on the way", floor)
		}
	}
	if r.Job.Fuel != nil {
		_, fuel, stubs, radius := lineOf(vehicles.FuelRun)
		behind := nearestPair(pipe, fuel, func(i, k int) bool { return pipeStubs[i] >= stubsLeftOut || stubs[k] >= stubsLeftOut })
		require.GreaterOrEqual(t, behind-pipeRadius-radius, asked("exhaust.fuel")-1e-6, "floor %d: exhaust from the fuel line", floor)
	}
}
