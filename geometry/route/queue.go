package route

// queue holds the legs not yet looked at, the most promising first; of two alike the one put in first. A binary heap of our own: the
// library's calls through an interface took a third of a search's time.
type queue struct {
	heap  []entry
	steps []step
}

// entry is a leg by its index, with what it is ordered by.
type entry struct {
	least float64
	step  int32
}

func (e entry) before(o entry) bool {
	return e.least < o.least || e.least == o.least && e.step < o.step
}

func (q *queue) push(s step, least float64) {
	q.heap = append(q.heap, entry{least, int32(len(q.steps))})
	q.steps = append(q.steps, s)
	for i := len(q.heap) - 1; i > 0; {
		up := (i - 1) / 2
		if !q.heap[i].before(q.heap[up]) {
			return
		}
		q.heap[i], q.heap[up] = q.heap[up], q.heap[i]
		i = up
	}
}

// pop takes the first; ok is false when there is none.
func (q *queue) pop() (s step, least float64, ok bool) {
	if len(q.heap) == 0 {
		return step{}, 0, false
	}
	first, last := q.heap[0], len(q.heap)-1
	q.heap[0] = q.heap[last]
	q.heap = q.heap[:last]
	for i := 0; ; {
		down := 2*i + 1
		if down >= last {
			break
		}
		if down+1 < last && q.heap[down+1].before(q.heap[down]) {
			down++
		}
		if !q.heap[down].before(q.heap[i]) {
			break
		}
		q.heap[i], q.heap[down] = q.heap[down], q.heap[i]
		i = down
	}
	return q.steps[first.step], first.least, true
}
