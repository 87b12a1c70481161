package vehicles

import (
	"math"

	"bench.example/undermark/geometry"
)

// underStub is how far beside its stub, mm, the end of a run may lie in plan and still be under it: less than a tape is read to.
const underStub = 1

// Followed is a run whose end at the heater went along with its stub.
type Followed struct {
	Run    RunKind
	Shifts []Rehung // what hangs on it and could not stay where it hung
}

// Following returns the job with the ends of its runs at the heater where the stubs are now, for those that were under their stubs
// in the job before; of the rest of a run nothing is moved. A run that went another way from its stub is left so. It is for an edit
// of the cut or of the heater: the stubs of a hole that was drilled beside its mark are where the hole is, and no path follows it.
func (j Job) Following(before Job) (next Job, all []Followed) {
	for _, k := range RunKinds {
		run := j.Run(k)
		if run == nil || len(run.Path) == 0 || before.Run(k) == nil {
			continue
		}
		was, had := before.Stub(k)
		is, has := j.Stub(k)
		i := 0
		if k == FuelRun {
			i = len(run.Path) - 1
		}
		end := run.Path[i]
		if !had || !has || was == is || math.Hypot(end.X-was.X, end.Y-was.Y) > underStub {
			continue
		}
		end.X, end.Y = hundredth(is.X), hundredth(is.Y)
		if k == FuelRun && math.Abs(end.Drop+was.Z) <= underStub {
			end.Drop = hundredth(-is.Z)
		}
		if moved, shifts, ok := j.WithPath(k, run.Path.With(i, end)); ok {
			j, all = moved, append(all, Followed{k, shifts})
		}
	}
	return j, all
}

// hundredth is a length to 0.01 mm, finer than any tape.
func hundredth(v float64) float64 { return math.Round(v*100) / 100 }

// Stub is the mouth of the heater's stub of a run, where the hole is; there is none without heater and cut, nor while the readings
// of a drilled hole can't be reduced.
func (j *Job) Stub(k RunKind) (mouth geometry.Point3, there bool) {
	hole, ok := j.hole()
	if j.Heater == nil || j.Cut == nil || !ok {
		return mouth, false
	}
	return j.stubMouth(k, hole), true
}
