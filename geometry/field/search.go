package field

// search goes through cells of the floor, the most promising first, and quarters each, until none that waits can hold what
// is sought.
type search struct {
	lister
	waiting queue[cell]
}

// seeker is who seeks something in cells: it says by what key a cell waits, and until when.
type seeker interface {
	// offer looks at a cell, whose list may hold more than matters, and has it wait when it is worth another look.
	offer(c cell)
	// bound is the key from which on no cell that waits is worth another look; it sinks with what is found.
	bound() float64
}

func searchOf(m *Margins) search { return search{lister: lister{m: m}} }

// quarter offers cells, then the quarters of those that wait.
func (s *search) quarter(by seeker, cells ...cell) {
	for _, c := range cells {
		by.offer(c)
	}
	for !s.waiting.empty() && s.waiting.least() < by.bound() {
		c := s.waiting.pop()
		for _, q := range c.quarters() {
			by.offer(q)
		}
	}
}
