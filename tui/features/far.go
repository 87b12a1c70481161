package features

import (
	"math"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// longTape is the reading along the van, mm, from which a tape past axle and tank is how errors are made. common practice, no source.
const longTape = 2000

// nearer offers what is better than such a tape.
var nearer = ". Over " + survey.FigureTo(longTape/1000., 0) + " m: a nearer line is better, any straight edge across the van seen from both sides (On top, x starts at)"

// isLong tells whether a reading along the van is of a tape that long.
func isLong(r survey.Reading) bool { return r.Start == survey.Datum && math.Abs(r.Length) > longTape }

// hasLong tells whether a thing has such a reading.
func (t *Feature) hasLong() bool {
	for _, p := range t.Path {
		if isLong(p[0]) {
			return true
		}
	}
	return isLong(t.X[0]) || isLong(t.X[1]) || isLong(t.Centre[0]) || isLong(t.Below[0]) || isLong(t.Above[0])
}

// offersNearer tells whether a nearer datum line is to be offered with the thing's readings: with the first that has a long
// one, while the datum has no name.
func (h Record) offersNearer(j vehicles.Job) bool {
	if j.Datum.Named() {
		return false
	}
	for l := range List(len(tables)) {
		for row := range l.Len(j) {
			if l == h.List && row == h.Row {
				return true
			}
			if t := l.At(j, row); t.hasLong() {
				return false
			}
		}
		if l == h.List {
			return true // not in the list yet
		}
	}
	return true
}
