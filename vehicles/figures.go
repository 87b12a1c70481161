package vehicles

import "errors"

// Figure is a number of a table that may be left out: its key, where it is, and what it must be. A table that is mostly such numbers
// says them once, for whoever reads it, writes it or has it typed.
type Figure struct {
	Key string
	At  *Number
	l   limits
}

// Takes says why the figure can't be v; nil where it can.
func (f Figure) Takes(v float64) error {
	if f.l.hold(v) {
		return nil
	}
	return errors.New("must be " + f.l.says)
}

// figuresOf reads the numbers of a table that are there.
func (t *table) figuresOf(list []Figure) {
	for _, f := range list {
		*f.At = t.number(f.Key, optional, f.l)
	}
}

// figuresOf writes the numbers that are set.
func (w *writer) figuresOf(list []Figure) {
	for _, f := range list {
		w.maybe(f.Key, *f.At)
	}
}

var (
	aTemperature = limits{-90, 90, false, "from -90 to 90 degrees Celsius"}
	aShare       = limits{0, 100, true, "more than 0 and at most 100 percent"}
	aDay         = limits{0, 24, true, "more than 0 and at most 24 hours"}
	aRate        = limits{0, 1e6, false, "0 or more"}
)
