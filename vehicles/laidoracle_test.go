package vehicles

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

// A run laid by school geometry: a bend of radius r round an angle a takes r tan(a/2) off both of its legs and is r a long.

// schooled is a run's corners with what each bend takes off and is long; the first and the last have none.
type schooled struct {
	path       []geometry.Point3
	takes, arc []float64
}

func school(path []geometry.Point3, bend float64) schooled {
	s := schooled{path, make([]float64, len(path)), make([]float64, len(path))}
	for i := 1; i < len(path)-1; i++ {
		in, out := path[i].Sub(path[i-1]), path[i+1].Sub(path[i])
		angle := math.Acos(max(-1, min(1, in.Dot(out)/in.Norm()/out.Norm())))
		s.takes[i], s.arc[i] = bend*math.Tan(angle/2), bend*angle
	}
	return s
}

func (s schooled) leg(i int) float64 { return s.path[i+1].Sub(s.path[i]).Norm() }

// begin is how far along the run the straight part of a leg, from 0, begins.
func (s schooled) begin(leg int) (along float64) {
	for i := range leg {
		along += s.leg(i) - s.takes[i] - s.takes[i+1] + s.arc[i+1]
	}
	return along
}

// at is how far along the run a place of the straight part of a leg is.
func (s schooled) at(leg int, along float64) float64 { return s.begin(leg) + along - s.takes[leg] }

func (s schooled) length() float64 { return s.begin(len(s.path)-1) - s.arc[len(s.path)-1] }

func TestARunIsAsLongAsSchoolGeometrySays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := wanderer(t)
		plan, faults := Reduce(job)
		require.Empty(t, faults)
		run, bend := plan.Exhaust, job.Exhaust.Bend.Value
		s := school(run.Path, bend)
		for i := range len(s.path) - 1 {
			if s.takes[i]+s.takes[i+1] > s.leg(i) {
				t.Skip("a leg too short for its bends")
			}
		}
		require.InDelta(t, s.length(), run.Line.Length(), 1e-4) // acos of nearly 1 is no better
		for i := range len(s.path) - 1 {
			for _, share := range []float64{0, 0.3, 1} { // the straight part of every leg lies on the leg
				along := s.takes[i] + share*(s.leg(i)-s.takes[i]-s.takes[i+1])
				p := run.onLeg(i+1, along)
				require.Less(t, run.Station(s.at(i, along)).apart(RunPoint{p.X, p.Y, -p.Z}), 1e-3)
			}
		}
		if m := job.Exhaust.Muffler; m != nil {
			leg := m.Leg - 1
			if end := m.Start + m.Length; m.Start >= s.takes[leg] && end <= s.leg(leg)-s.takes[leg+1] {
				require.InDelta(t, s.at(leg, m.Start), run.Muffler.From, 1e-4)
				require.InDelta(t, s.at(leg, end), run.Muffler.To, 1e-4)
			}
			axis := run.Muffler.Axis
			require.InDelta(t, m.Length, axis[1].Sub(axis[0]).Norm(), 1e-9)
			require.InDelta(t, m.Start, axis[0].Sub(run.Path[leg]).Norm(), 1e-9)
		}
		// Nowhere is the rounded line farther from the corners' line than the deepest bend cuts its corner.
		deepest := 0.
		for i := range s.path {
			deepest = max(deepest, math.Hypot(bend, s.takes[i])-bend)
		}
		for k := range 101 {
			p := run.Station(run.Line.Length() * float64(k) / 100)
			require.LessOrEqual(t, geometry.BetweenPaths([]geometry.Point3{at3(p.X, p.Y, -p.Drop)}, run.Path).Gap, deepest+1e-6)
		}
	})
}

// A van in a mirror has its runs in a mirror: the same shifts, the same places along.
func TestReroutingIsTheSameInAMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := wanderer(t)
		i := rapid.IntRange(0, len(job.Exhaust.Path)-1).Draw(t, "point")
		path := edited(t, job.Exhaust.Path, i)
		next, shifts, ok := job.WithPath(ExhaustRun, path)
		require.True(t, ok)
		other := inMirror(job)
		run := Run{Path: path}
		there, thereShifts, ok := other.WithPath(ExhaustRun, mirroredRun(&run).Path)
		require.True(t, ok)
		require.Equal(t, shifts, thereShifts)
		require.Equal(t, next.Exhaust.Hanging, there.Exhaust.Hanging)
		require.Equal(t, mirroredRun(next.Exhaust).Path, there.Exhaust.Path)
	})
}

// inMirror is a job's cut, heater and exhaust with left and right changed over.
func inMirror(job Job) Job {
	heater := *job.Heater
	heater.ExhaustStub[1] *= -1
	cut := *job.Cut
	cut.At[1] *= -1
	return job.WithHeater(heater).WithCut(cut).WithRun(ExhaustRun, mirroredRun(job.Exhaust))
}

func mirroredRun(run *Run) *Run {
	other := *run
	other.Path = nil
	for _, p := range run.Path {
		other.Path = append(other.Path, RunPoint{p.X, -p.Y, p.Drop})
	}
	return &other
}

// edited is a path with a point moved, put in, or taken out.
func edited(t *rapid.T, path List[RunPoint], i int) List[RunPoint] {
	p := path[i]
	p.X, p.Y, p.Drop = p.X+float64(rapid.IntRange(-99, 99).Draw(t, "x")), p.Y+float64(rapid.IntRange(-99, 99).Draw(t, "y")), p.Drop+7
	switch rapid.IntRange(0, 2).Draw(t, "edit") {
	case 0:
		return path.Insert(i, p)
	case 1:
		return path.With(i, p)
	}
	return path.Without(i)
}

// What hung where it could goes where it can: while some leg is long enough for the muffler, an edit makes no fault.
func TestAnEditHangsNothingWhereItCannotHang(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := wanderer(t)
		_, faults := Reduce(job)
		require.Empty(t, faults)
		for range 3 {
			next, _, ok := job.WithPath(ExhaustRun, edited(t, job.Exhaust.Path, rapid.IntRange(0, len(job.Exhaust.Path)-1).Draw(t, "point")))
			require.True(t, ok)
			if len(next.Exhaust.Path) == 0 {
				return // there is nothing to hang on
			}
			plan, faults := Reduce(next)
			longest := 0.
			for i := 1; i < len(plan.Exhaust.Path); i++ {
				longest = max(longest, plan.Exhaust.legLength(i))
			}
			if m := next.Exhaust.Muffler; m != nil && (longest < m.Length || len(plan.Exhaust.Path) < 2) {
				return // it fits nowhere, and says so
			}
			require.Empty(t, faults)
			job = next
		}
	})
}

// Points put in on two legs are the same path whichever came first, and nothing that hangs there has moved by either.
func TestPointsOnTwoLegsMayComeInEitherOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := wanderer(t)
		i, p := pointBetween(t, job)
		k, q := pointBetween(t, job)
		if i >= k {
			t.Skip("on one leg, or the other way round")
		}
		put := func(job Job, at int, p RunPoint) Job {
			next, shifts, ok := job.WithPath(ExhaustRun, job.Exhaust.Path.Insert(at, p))
			require.True(t, ok)
			require.Empty(t, shifts)
			return next
		}
		one, two := put(put(job, i, p), k+1, q), put(put(job, k, q), i, p)
		require.Equal(t, one.Exhaust.Path, two.Exhaust.Path)
		require.Equal(t, one.Exhaust.Clips, two.Exhaust.Clips)
		if m := one.Exhaust.Muffler; m != nil {
			require.Equal(t, m.Leg, two.Exhaust.Muffler.Leg)
			require.InDelta(t, m.Start, two.Exhaust.Muffler.Start, 2*AlongNoise)
		}
	})
}

// Stubs turn with the heater and hang from the hole there is: by complex numbers, for all yaws and both runs.
func TestStubMouthsByComplexNumbers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := laid()
		h := *job.Heater
		h.Yaw = rapid.Float64Range(-180, 180).Draw(t, "yaw")
		h.StubDrop = rapid.Float64Range(0, 90).Draw(t, "drop")
		turn := complex(math.Cos(h.Yaw*math.Pi/180), math.Sin(h.Yaw*math.Pi/180))
		plan, faults := Reduce(job.WithHeater(h))
		require.Empty(t, faults)
		for k, stub := range map[RunKind][2]float64{ExhaustRun: h.ExhaustStub, IntakeRun: h.IntakeStub} {
			at := complex(1000, 200) + turn*complex(stub[0], stub[1])
			got := plan.Run(k).Path[0]
			assert.InDelta(t, real(at), got.X, 1e-9)
			assert.InDelta(t, imag(at), got.Y, 1e-9)
			assert.Equal(t, -h.StubDrop, got.Z)
		}
	})
}
