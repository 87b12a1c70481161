package vehicles

// Figure is a number of a table that may be left out: its key, where it is, and what it must be. A table that is mostly such numbers
// says them once, for whoever reads it, writes it or has it typed.
type Figure struct {
	Key string
	At  *Number
	Limits
}

// figuresOf reads the numbers of a table that are there.
func (t *table) figuresOf(list []Figure) {
	for _, f := range list {
		*f.At = t.number(f.Key, optional, f.Limits)
	}
}

// figuresOf writes the numbers that are set.
func (w *writer) figuresOf(list []Figure) {
	for _, f := range list {
		w.maybe(f.Key, *f.At)
	}
}
