package route

// Every tolerance of this package, each with where it comes from. Distances are good to 1e-9 mm, and what is worked out from
// coordinates of 20 m to 4e-9 mm (package geometry).

// touching is how far inside what is asked a centreline still counts as keeping it, mm: a tangent touches what it is a tangent of. A
// thousand times what distances are good to.
const touching = 1e-6

// aslant is how far, in radians, rounding may turn a direction that is held against another: 4e-9 mm at the end of a leg of 4 mm.
// Nobody bends a pipe by it, and on a disc of 1 m it moves a tangent's end by touching.
const aslant = 1e-9

// surelyBack is the sine from which on a way surely turns back: what turned lets pass for rounding, ten times, so that nothing is
// thrown out beforehand that it would take.
const surelyBack = 10 * aslant

// noArc is the turn in radians below which a way passes a disc in one place: on one of 8 m the arc leaves its chord by 1e-9 mm, what
// distances are good to.
const noArc = 1e-6
