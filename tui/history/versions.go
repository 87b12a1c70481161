package history

import (
	"slices"

	"bench.example/undermark/vehicles"
)

// versions are every job there was, for undo and redo. A job is a plain value that shares what an edit left
// alone, so the list has no end.
type versions struct {
	past, future []version
	now          version
	saved        uint64 // the version that lies on the disk
	last         uint64 // the last number given
}

// version is one job with a number of its own.
type version struct {
	job    vehicles.Job
	number uint64
	step   string // what was edited: edits with the same step are one version; "" never is
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

// add puts an edited job on top. It runs on with the version before when both are of the same step.
func (v *versions) add(job vehicles.Job, step string) {
	v.last++
	next := version{job: job, number: v.last, step: step}
	if step == "" || step != v.now.step || v.now.sealed {
		v.past = append(v.past, v.now)
	}
	v.now, v.future = next, nil
}

// Seal keeps the next edit from running on with the step before.
func (v *versions) Seal() { v.now.sealed = true }

// undo goes back one version and says whether there was one.
func (v *versions) undo() bool { return v.shift(&v.past, &v.future) }

// redo goes forward one version and says whether there was one.
func (v *versions) redo() bool { return v.shift(&v.future, &v.past) }

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

// dirty says whether the job differs from what lies on the disk.
func (v *versions) dirty() bool { return v.now.number != v.saved }
