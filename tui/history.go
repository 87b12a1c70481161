package tui

import "bench.example/undermark/vehicles"

// history is every job there was, for undo and redo. A job is a plain value that shares what an edit left
// alone, so the list has no end.
type history struct {
	past, future []version
	now          version
	saved        uint64 // the version that lies on the disk
	last         uint64 // the last number given
}

// version is one job with a number of its own.
type version struct {
	job    vehicles.Job
	number uint64
	step   string // edits with the same step are one version; "" never is
}

// begin returns the history of a job that has just been opened.
func begin(job vehicles.Job, saved bool) history {
	h := history{now: version{job: job, number: 1}, last: 1}
	if saved {
		h.saved = 1
	}
	return h
}

// add puts an edited job on top. It runs on with the version before when both are of the same step.
func (h *history) add(job vehicles.Job, step string) {
	h.last++
	next := version{job, h.last, step}
	if step == "" || step != h.now.step {
		h.past = append(h.past, h.now)
	}
	h.now, h.future = next, nil
}

// seal keeps the next edit from running on with the step before.
func (h *history) seal() { h.now.step = "" }

// undo goes back one version and says whether there was one.
func (h *history) undo() bool { return h.shift(&h.past, &h.future) }

// redo goes forward one version and says whether there was one.
func (h *history) redo() bool { return h.shift(&h.future, &h.past) }

func (h *history) shift(from, to *[]version) bool {
	n := len(*from)
	if n == 0 {
		return false
	}
	h.seal()
	*to = append(*to, h.now)
	h.now, *from = (*from)[n-1], (*from)[:n-1]
	h.seal()
	return true
}

// dirty says whether the job differs from what lies on the disk.
func (h *history) dirty() bool { return h.now.number != h.saved }
