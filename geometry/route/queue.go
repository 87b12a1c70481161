package route

// queue holds the legs not yet looked at, the most promising first; of two alike the one put in first. Of the many that follow a label
// few are ever looked at: each label's are a heap of their own, and only the first of each is in the heap that is asked. Binary heaps of
// our own: the library's calls through an interface took a third of a search's time.
type queue struct {
	steps  []step
	legs   []entry // of all labels, one label's after the other's
	labels []span  // where each label's are, a heap
	firsts []entry // the first of each label's, a heap
	ended  int     // where the last label's end
}

// span are the places from one to before another.
type span struct{ from, to int }

// entry is a leg by its index, with what it is ordered by.
type entry struct {
	least       float64
	step, label int32
}

func (e entry) before(o entry) bool {
	return e.least < o.least || e.least == o.least && e.step < o.step
}

// reserve makes room for so many legs.
func (q *queue) reserve(legs int) {
	q.steps, q.legs = make([]step, 0, legs), make([]entry, 0, legs)
}

// push puts in a leg of the label that is being carried on.
func (q *queue) push(s step, least float64) {
	q.legs = append(q.legs, entry{least, int32(len(q.steps)), int32(len(q.labels))})
	q.steps = append(q.steps, s)
}

// end ends a label: all of its legs are in.
func (q *queue) end() {
	own := span{q.ended, len(q.legs)}
	if q.ended = own.to; own.from == own.to {
		return
	}
	legs := q.legs[own.from:own.to]
	for i := len(legs)/2 - 1; i >= 0; i-- {
		down(legs, i)
	}
	q.labels = append(q.labels, own)
	q.firsts = append(q.firsts, legs[0])
	up(q.firsts, len(q.firsts)-1)
}

// pop takes the first; ok is false when there is none.
func (q *queue) pop() (s step, least float64, ok bool) {
	if len(q.firsts) == 0 {
		return step{}, 0, false
	}
	first := q.firsts[0]
	own := &q.labels[first.label]
	if legs := shortened(q.legs[own.from:own.to]); len(legs) > 0 {
		own.to--
		q.firsts[0] = legs[0]
		down(q.firsts, 0)
	} else {
		q.firsts = shortened(q.firsts)
	}
	return q.steps[first.step], first.least, true
}

// shortened is a heap without its first.
func shortened(heap []entry) []entry {
	last := len(heap) - 1
	heap[0] = heap[last]
	heap = heap[:last]
	if last > 0 {
		down(heap, 0)
	}
	return heap
}

// down moves an entry down to its place in a heap, up moves it up.
func down(heap []entry, i int) {
	for {
		next := 2*i + 1
		if next >= len(heap) {
			return
		}
		if next+1 < len(heap) && heap[next+1].before(heap[next]) {
			next++
		}
		if !heap[next].before(heap[i]) {
			return
		}
		heap[i], heap[next] = heap[next], heap[i]
		i = next
	}
}

func up(heap []entry, i int) {
	for i > 0 {
		above := (i - 1) / 2
		if !heap[i].before(heap[above]) {
			return
		}
		heap[i], heap[above] = heap[above], heap[i]
		i = above
	}
}
