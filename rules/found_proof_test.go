package rules

import (
	"context"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// Every run that is found on random floors is judged again twice: by what judges all jobs, and by places sampled along it, the bends
// rounded and the distances worked out here and by none of this program's code.

// randomFloor is a floor of 3200 by 1780 mm with a cut, a heater and a few things of all sorts, and an exhaust or an intake to find.
func randomFloor(r *rand.Rand, kind vehicles.RunKind) vehicles.Job {
	between := func(a, b float64) float64 { return math.Round(a + (b-a)*r.Float64()) }
	heater, _ := vehicles.HeaterClass("2 kW")
	heater.Yaw = between(-180, 180)
	job := vehicles.Job{
		Ref:    "TL-07",
		Floor:  vehicles.Floor{From: 40, Length: 3200, Width: 1780, Thickness: 31, Ground: 460},
		Heater: &heater,
		Cut:    &vehicles.Cut{At: [2]float64{between(500, 2700), between(-600, 600)}, Across: 127},
	}
	kinds := []string{"crossmember", "chassis rail", "brake line", "fuel line", "wiring", "driveshaft", "suspension", "vehicle exhaust", "axle"}
	for range 3 + r.IntN(6) {
		name := string(rune('a' + len(job.Obstructions)))
		x, y, top := between(100, 3000), between(-800, 700), between(0, 120)
		o := box(name, kinds[r.IntN(len(kinds))], x, x+between(30, 500), y, y+between(30, 500), top, top+between(10, 150))
		if r.IntN(2) == 0 {
			o.Place = vehicles.Place{Shape: vehicles.Piped, Across: vehicles.Some(between(5, 60)), Path: []vehicles.Pair{{at(x), at(y)}, {at(x + between(-400, 400)), at(y + between(-400, 400))}}}
		}
		job.Obstructions = append(job.Obstructions, o)
	}
	run := vehicles.UsualRun(kind)
	if kind == vehicles.ExhaustRun && r.IntN(3) > 0 {
		h := vehicles.UsualMuffler
		h.Drain = vehicles.DrainDown
		run.Muffler = &h
	}
	run.Path = []vehicles.RunPoint{{X: job.Cut.At[0], Y: job.Cut.At[1], Drop: 300}}
	return job.WithRun(kind, &run)
}

// randomFloors is how many floors are looked at.
func randomFloors() int {
	if testing.Short() {
		return 100
	}
	return 1000
}

// floorsFor is how many floors a test of found runs looks at, least at the least: a part of randomFloors, as many searches take long. For a
// long round FLOORS says how many each of them looks at:
//
//	FLOORS=1000 go test ./rules -run 'BySampling|OfALattice|SlowSearchFinds|MovedALittleIsFound' -v -timeout 0
func floorsFor(t *testing.T, part, least int) int {
	if said := os.Getenv("FLOORS"); said != "" {
		n, err := strconv.Atoi(said)
		require.NoError(t, err, "FLOORS is how many floors")
		require.GreaterOrEqual(t, n, least, "FLOORS")
		return n
	}
	return max(least, randomFloors()/part)
}

func TestFoundRunsAreClearBySamplingOnRandomFloors(t *testing.T) {
	t.Parallel()
	const seed = 73
	t.Logf("seed %d", seed)
	r, sides := rand.New(rand.NewPCG(seed, seed)), rand.New(rand.NewPCG(seed, 0))
	found, floors := 0, floorsFor(t, 1, 2)
	for n := range floors {
		kind := vehicles.RunKind(r.IntN(2))
		job := withOpenings(sides, randomFloor(r, kind))
		bare := job
		bare.Exhaust, bare.Intake = nil, nil
		result, faults := Judge(bare, Builtin())
		require.Empty(t, faults, n)
		result.Job = job
		s := newSeeker(context.Background(), &result, kind, Target{Edge: AnyEdge}, nil)
		best, kept := s.seek()
		if !kept {
			continue
		}
		route := s.told(best)
		require.True(t, route.Found(), n)
		found++
		after := job.WithRun(kind, route.Run)
		judged, faults := Judge(after, Builtin())
		require.Empty(t, faults, n)
		for i := range judged.Findings {
			if f := &judged.Findings[i]; f.Subject.Sort == sortOfRun[kind] {
				require.LessOrEqual(t, f.Verdict, route.Verdict, "floor %d: %s: %s", n, f.About(), f.Why)
			}
		}
		sampled(t, n, kind, &judged, &route)
	}
	t.Logf("%d runs found on %d floors", found, floors)
	assert.Greater(t, found, floors/3)
}

// sampled holds a run to the distances, the ground, the fall, the length and the bends that the book asks, and its gas to the openings.
func sampled(t *testing.T, floor int, kind vehicles.RunKind, r *Result, found *Route) {
	word := map[vehicles.RunKind]string{vehicles.ExhaustRun: "exhaust", vehicles.IntakeRun: "intake", vehicles.FuelRun: "fuel"}[kind]
	asked := func(id, of string) (float64, bool) {
		l, ok := r.Book.Lookup(word+"."+id, of)
		return l.Value.Value, ok && l.Value.Set
	}
	corners := sampledCorners(&r.Job, found.Run, kind)
	for i := 1; i < len(corners); i++ {
		require.Positive(t, norm(minus(corners[i], corners[i-1])), "floor %d: a corner twice, %v", floor, corners)
	}
	line, turned := rounded(t, corners, found.Run.Bend.Value)
	length, rising := 0.0, false
	for i := 1; i < len(line); i++ {
		length += norm(minus(line[i], line[i-1]))
		switch {
		case kind == vehicles.IntakeRun && len(found.Run.Drains) > 0: // it may rise from there
			continue
		case kind != vehicles.FuelRun:
			require.GreaterOrEqual(t, line[i][2], line[i-1][2]-1e-6, "floor %d: it falls", floor)
			continue
		}
		if rising = rising || line[i][2] < line[i-1][2]-1e-6; rising {
			require.LessOrEqual(t, line[i][2], line[i-1][2]+1e-6, "floor %d: once it rises it does to the heater", floor)
		}
	}
	require.InDelta(t, found.Length, length, 0.01, "floor %d", floor)
	if most, set := asked("length", ""); set {
		require.LessOrEqual(t, length, most+0.01, "floor %d", floor)
	}
	if most, set := asked("bends", ""); set {
		require.LessOrEqual(t, turned, most+1e-6, "floor %d", floor)
	}
	if kind == vehicles.ExhaustRun {
		sampledFall(t, floor, r, found.Run, corners)
		sampledGas(t, floor, r, found.Run, corners, line)
	}
	clear := func(places [][3]float64, radius float64) {
		for _, at := range places {
			if least, set := asked("ground", ""); set {
				require.GreaterOrEqual(t, r.Job.Floor.Ground-at[2]-radius, least-1e-6, "floor %d: ground", floor)
			}
			for i := range r.Plan.Obstructions {
				drives(t, floor, kind, r, i, at, radius)
				if kind == vehicles.FuelRun && r.Job.Obstructions[i].Name == r.Job.Fuel.Supply.From {
					continue // it begins there
				}
				kind := r.Job.Obstructions[i].Kind
				if r.Job.Obstructions[i].Holds == vehicles.Diesel && word == "exhaust" { // that burns less easily than what is not known
					kind += ofDiesel
				}
				if least, set := asked("clearance", kind); set {
					least -= toldShort(found, r.Job.Obstructions[i].Name)
					require.GreaterOrEqual(t, away(&r.Plan.Obstructions[i].Prism, at)-radius, least-1e-6, "floor %d: %s", floor, r.Job.Obstructions[i].Kind)
				}
			}
		}
	}
	clear(line, found.Run.Across/2)
	if h := found.Run.Muffler; h != nil {
		clear(mufflerAxis(h, corners), h.Across/2)
	}
}

// toldShort is by how much a run keeps less of a thing than is asked and says so itself, mm: a nearest miss that is too close to call breaks
// nothing. What was sought and found keeps all of it, and says nothing of the kind.
func toldShort(found *Route, name string) float64 {
	for i := range found.Misses {
		if f := &found.Misses[i]; f.Rule.ByKind == AnObstruction && f.Verdict == Doubtful && f.Margin.Set && f.Against.String() == name {
			return max(0, -f.Margin.Value)
		}
	}
	return 0
}

func minus(a, b [3]float64) [3]float64 { return [3]float64{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
func plus(a, b [3]float64) [3]float64  { return [3]float64{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }
func times(a [3]float64, by float64) [3]float64 {
	return [3]float64{a[0] * by, a[1] * by, a[2] * by}
}
func dot(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
func norm(a [3]float64) float64   { return math.Sqrt(dot(a, a)) }

// rounded are places about 2 mm apart along a line through corners, each rounded by a fillet of a radius, and how far the line turns in
// all, degrees: the fillet touches both legs, its middle on the line that halves the corner.
func rounded(t *testing.T, corners [][3]float64, radius float64) (line [][3]float64, turned float64) {
	straight := func(a, b [3]float64) {
		n := max(1, int(norm(minus(b, a))/2))
		for i := range n {
			line = append(line, plus(a, times(minus(b, a), float64(i)/float64(n))))
		}
	}
	if radius == 0 {
		for i := 1; i < len(corners); i++ {
			straight(corners[i-1], corners[i])
		}
		return append(line, corners[len(corners)-1]), 0
	}
	from, left := corners[0], norm(minus(corners[1], corners[0]))
	for i := 1; i < len(corners)-1; i++ {
		b := corners[i]
		back, on := minus(corners[i-1], b), minus(corners[i+1], b)
		u, v := times(back, 1/norm(back)), times(on, 1/norm(on))
		half := math.Acos(max(-1, min(1, dot(u, v)))) / 2
		turned += 180 - 2*half*180/math.Pi
		takes := radius / math.Tan(half)
		if takes < 1e-6 {
			continue // straight on
		}
		require.LessOrEqual(t, takes, left+1e-6, "no room for the bend")
		require.LessOrEqual(t, takes, norm(on)+1e-6, "no room for the bend")
		left = norm(on) - takes
		begin, end := plus(b, times(u, takes)), plus(b, times(v, takes))
		straight(from, begin)
		bisector := plus(u, v)
		middle := plus(b, times(bisector, radius/math.Sin(half)/norm(bisector)))
		p, q := minus(begin, middle), minus(end, middle)
		angle := math.Pi - 2*half
		n := max(8, int(angle*radius/0.2))
		for k := range n {
			share := float64(k) / float64(n)
			line = append(line, plus(middle, plus(times(p, math.Sin((1-share)*angle)/math.Sin(angle)), times(q, math.Sin(share*angle)/math.Sin(angle)))))
		}
		from = end
	}
	last := corners[len(corners)-1]
	straight(from, last)
	return append(line, last), turned
}

// away is the distance of a place from a prism, by its definition.
func away(p *geometry.Prism, at [3]float64) float64 {
	f := &p.Footprint
	plan := math.Inf(1)
	if f.Shape == geometry.Rectangle {
		plan = math.Hypot(max(math.Abs(at[0]-f.Middle.X)-f.Half.X, 0), max(math.Abs(at[1]-f.Middle.Y)-f.Half.Y, 0))
	}
	for i := 1; i < len(f.Path); i++ {
		a, b := f.Path[i-1], f.Path[i]
		dx, dy := b.X-a.X, b.Y-a.Y
		share := min(max(((at[0]-a.X)*dx+(at[1]-a.Y)*dy)/(dx*dx+dy*dy), 0), 1)
		plan = min(plan, math.Hypot(at[0]-a.X-share*dx, at[1]-a.Y-share*dy)-f.Radius)
	}
	return math.Hypot(max(plan, 0), max(-at[2]-p.High, p.Low+at[2], 0))
}
