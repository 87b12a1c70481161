package field

// queue gives back first what was put in with the least key.
type queue[T any] struct {
	entries []entry[T]
}

type entry[T any] struct {
	key  float64
	item T
}

func (q *queue[T]) push(key float64, item T) {
	q.entries = append(q.entries, entry[T]{})
	i := len(q.entries) - 1
	for i > 0 && q.entries[(i-1)/2].key > key {
		q.entries[i] = q.entries[(i-1)/2]
		i = (i - 1) / 2
	}
	q.entries[i] = entry[T]{key, item}
}

func (q *queue[T]) empty() bool { return len(q.entries) == 0 }

// least returns the least key.
func (q *queue[T]) least() float64 { return q.entries[0].key }

func (q *queue[T]) pop() T {
	first, last := q.entries[0].item, q.entries[len(q.entries)-1]
	q.entries = q.entries[:len(q.entries)-1]
	n := len(q.entries)
	if n == 0 {
		return first
	}
	i := 0
	for child := 1; child < n; child = 2*i + 1 {
		if child+1 < n && q.entries[child+1].key < q.entries[child].key {
			child++
		}
		if q.entries[child].key >= last.key {
			break
		}
		q.entries[i] = q.entries[child]
		i = child
	}
	q.entries[i] = last
	return first
}
