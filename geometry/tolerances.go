package geometry

// Every tolerance of this package, each with where it comes from. Coordinates reach to 20 m, where neighbouring 64-bit
// numbers are 2^-38 mm = 3.6e-12 mm apart: what is worked out from them can't be nearer than some of that.

// noise is what rounding may make of a length that is worked out from coordinates, mm: a thousand times the spacing of
// 64-bit numbers at 20 m. The tolerances that only let rounding pass are this.
const noise = 4e-9

const (
	// flat is the length below which a vector has no direction of its own.
	flat = noise
	// abreast is how far behind the farthest point in a direction another one still counts as just as far.
	abreast = noise
	// legSlack is by how much the tangents at a leg's two ends may be longer than the leg.
	legSlack = noise
)

// sunk is how deep inside another leg's stadium a point of a line's outline may seem to lie, mm: some thirty spacings
// at 20 m. It is less than noise, as a point that lies deeper is no way out, and the gap would be wrong by its depth.
const sunk = 1e-10

// straight is the turn in radians below which a corner has no arc: a bend of 20 m leaves its corner by R turn^2 / 8 =
// 2.5e-13 mm there, and the direction in which it bends would be made of rounding.
const straight = 1e-8

// parallel is the square of the sine of the angle between two segments below which their ends are looked at too, though
// their lines seem to come nearest between them: of segments that lie beside each other rounding makes up to 1e-31, and a place
// anywhere along them. Whatever is well above that does.
const parallel = 1e-4

// accuracy is how far, in mm, the least distance found on an arc may lie above the true one: what the package promises.
const accuracy = 1e-9

// fine is the same of the distance at the parameter that bracket returns: a tenth, so that several together keep the
// promise.
const fine = accuracy / 10

// chordsWithin is how far the chords that stand for a tube's arcs seen from below may be off them, mm: a tenth of what a clearance is told
// to.
const chordsWithin = 0.01

// dipNear is how close to the nearest place of an arc the search for it beside another arc comes, mm: no distance changes by more.
const dipNear = 1e-6

// dipWithin is how close to the nearest place of a leg the search for it comes, mm: no distance changes by more.
const dipWithin = accuracy
