package vehicles

// figureOf is a number of a table that may be left out: its key, what it must be, and where it is. A table that is mostly such numbers
// says them once, for whoever reads it and whoever writes it.
type figureOf struct {
	key string
	l   limits
	at  *Number
}

// figuresOf reads the numbers of a table that are there.
func (t *table) figuresOf(list []figureOf) {
	for _, f := range list {
		*f.at = t.number(f.key, optional, f.l)
	}
}

// figuresOf writes the numbers that are set.
func (w *writer) figuresOf(list []figureOf) {
	for _, f := range list {
		w.maybe(f.key, *f.at)
	}
}

var (
	aTemperature = limits{-90, 90, false, "from -90 to 90 degrees Celsius"}
	aShare       = limits{0, 100, true, "more than 0 and at most 100 percent"}
	aDay         = limits{0, 24, true, "more than 0 and at most 24 hours"}
	aRate        = limits{0, 1e6, false, "0 or more"}
)
