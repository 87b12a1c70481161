package desk

// Plain is what a screen says where nothing is drawn: to a screen reader, a braille line, a terminal that can't draw, a pipe.
// A line is one thing with all that is said of it. Lines are plain text and are not broken: who writes them makes them
// harmless, spells their signs and breaks them to the terminal's width.
type Plain struct {
	// Here are what the keys act on, with its value and its place among the others, and what must be known at once. After a
	// key those lines are said that were not there before it.
	Here []string
	// Field is the field that has the keys, "" for none: while it stays the same, Here is not said again.
	Field string
	// Text is what stands in that field. It is said as it is typed, or where it is Picked with a key, as a line of Here.
	Text   string
	Picked bool
	// Taped is the length that is being typed, nil for none.
	Taped *Taped
	// Came is what became of a field that was left, in whose text was stood when it was last heard of; "" for nothing that
	// was not said. nil: never anything.
	Came func(field, was string) string
	// All is everything the screen shows.
	All func() []string
	// Behind is what a screen shows only once somebody has answered what stands before it: it is written behind All where
	// nobody can be asked. nil: nothing.
	Behind func() []string
}

// Taped is a length as it is being typed, to be shown in big figures.
type Taped struct {
	Text  string // as it stands in the field
	Unit  string // of a plain number
	Head  string // what a plain number is measured from; "" where Label says so
	Label string // what of it
}
