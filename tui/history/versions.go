package history

import (
	"reflect"
	"slices"

	"bench.example/undermark/vehicles"
)

// versions are the jobs there were, for undo and redo. A job is a plain value that shares what an edit left alone, so that one takes
// about 2 kB in the sample van.
type versions struct {
	past, future []version
	now          version
	saved        uint64 // the version that lies on the disk
	last         uint64 // the last number given
	moved        string // what the edit that undo or redo went over last is called
}

// version is one job with a number of its own.
type version struct {
	job    vehicles.Job
	number uint64
	step   string // what was edited: edits with the same step are one version; "" never is
	called string // what undo and redo call the edit that made it, "" for what it changed
	sealed bool   // no edit runs on with it
}

// begin returns the versions of a job that has just been opened.
func begin(job vehicles.Job, saved bool) versions {
	v := versions{now: version{job: job, number: 1}, last: 1}
	if saved {
		v.saved = 1
	}
	return v
}

// add puts an edited job on top. It runs on with the version before when both are of the same step. An edit that comes to nothing
// is none: one that changes nothing, and a step that ends where it began.
func (v *versions) add(next version) {
	runsOn := v.runsOn(next.step)
	switch n := len(v.past); {
	case reflect.DeepEqual(next.job, v.now.job):
		return
	case runsOn && n > 0 && reflect.DeepEqual(next.job, v.past[n-1].job):
		v.now, v.past = v.past[n-1], v.past[:n-1]
		v.Seal()
	default:
		if v.last++; !runsOn {
			v.past = append(v.past, v.now)
			v.forget()
		}
		next.number = v.last
		v.now = next
	}
	v.future = nil
}

// runsOn tells whether an edit goes on with the step before.
func (v *versions) runsOn(step string) bool { return step != "" && step == v.now.step && !v.now.sealed }

// MostSteps is how far undo reaches back at the least: some days of work, and 20 MB.
const MostSteps = 10_000

// forget drops the oldest versions once there are a quarter more than MostSteps: many at a time, as the rest is copied.
func (v *versions) forget() {
	if len(v.past) >= MostSteps*5/4 {
		v.past = append(make([]version, 0, MostSteps*5/4), v.past[len(v.past)-MostSteps:]...)
	}
}

// Seal keeps the next edit from running on with the step before.
func (v *versions) Seal() { v.now.sealed = true }

// undo goes back one version and says whether there was one.
func (v *versions) undo() bool {
	v.moved = v.now.called
	return v.shift(&v.past, &v.future)
}

// redo goes forward one version and says whether there was one.
func (v *versions) redo() bool {
	moved := v.shift(&v.future, &v.past)
	v.moved = v.now.called
	return moved
}

// Moved is what the edit that undo or redo went over last is called, "" for what it changed.
func (v *versions) Moved() string { return v.moved }

func (v *versions) shift(from, to *[]version) bool {
	n := len(*from)
	if n == 0 {
		return false
	}
	v.Seal()
	*to = append(*to, v.now)
	v.now, *from = (*from)[n-1], (*from)[:n-1]
	v.Seal()
	return true
}

// Number is that of the version on the desk. No other version ever has it.
func (v *versions) Number() uint64 { return v.now.number }

// Steps are the names of the steps that can be undone, the oldest first.
func (v *versions) Steps() []string {
	var names []string
	for _, made := range append(slices.Clone(v.past), v.now)[1:] {
		names = append(names, made.step)
	}
	return names
}

// Latest is the name of the step that undo would take back, and whether there is one.
func (v *versions) Latest() (string, bool) { return v.now.step, len(v.past) > 0 }

// dirty says whether the job differs from what lies on the disk.
func (v *versions) dirty() bool { return v.now.number != v.saved }
