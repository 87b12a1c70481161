package field

// Every tolerance of this package, mm, each with where it comes from. Margins are distances: exact to 1e-9 mm, and they
// change by no more than the place moves.

// slack is what rounding may do to the comparison of two margins, or of a place with a node of the grid.
const slack = 1e-9

const (
	// finest is how near what is found comes to what there is: the margin of an area's best place to the greatest, the
	// distance of the nearest open place to the least. A hundredth of what a tape is read to.
	finest = 0.01
	// shortest is how long a closed stretch is at least that stops whoever goes along: half of what a line is drawn by.
	// Shorter ones are no steel: they come of readings that miss each other.
	shortest = 5 * finest
	// smallest is the radius of a cell that is not looked into any further for an open place: a tenth of finest.
	smallest = finest / 10
)

// skin is how far from what closes the way a place is kept, so that rounding does not close it too: a thousand times slack.
const skin = 1000 * slack

const (
	// probe is how far to either side the margin is asked for its direction: far above its rounding, whose share is slack
	// over probe, a millionth, and far below any radius.
	probe = 1e-3
	// brink is by how much more than their bound two margins at the ends of a diagonal must add up for a cell to count as
	// open or closed: more than the rounding of margins to 32 bits, 6e-8 of up to 10 m.
	brink = 1e-3
)

// What only decides how long it takes: no answer changes with these.
const (
	leaf   = 8  // nodes across a patch that is filled, not quartered
	tiles  = 96 // a map starts with at most about so many squares, so that two workers share them evenly
	few    = 8  // the length of a list up to which a ceiling is worth its while
	bundle = 32 // nodes across a square whose nodes share a list
	wider  = 4  // how many times as far across the next larger one is
)
