package route

// queue holds the legs not yet looked at, the most promising first; of two alike the one put in first.
type queue struct {
	steps []step
	count int
}

// Len, Less, Swap, Push and Pop are as container/heap asks.
func (q *queue) Len() int { return len(q.steps) }

// Less puts the shorter first.
func (q *queue) Less(i, j int) bool {
	a, b := &q.steps[i], &q.steps[j]
	return a.least < b.least || a.least == b.least && a.order < b.order
}

// Swap swaps two.
func (q *queue) Swap(i, j int) { q.steps[i], q.steps[j] = q.steps[j], q.steps[i] }

// Push adds a step.
func (q *queue) Push(x any) {
	s := x.(step)
	s.order = q.count
	q.count++
	q.steps = append(q.steps, s)
}

// Pop takes the last.
func (q *queue) Pop() any {
	last := q.steps[len(q.steps)-1]
	q.steps = q.steps[:len(q.steps)-1]
	return last
}
