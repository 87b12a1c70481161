package features

import (
	"fmt"

	"bench.example/undermark/vehicles"
)

// firstReadings are where the readings of a place of each shape begin.
var firstReadings = [...]string{vehicles.Box: "x0", vehicles.Piped: pointKey(0, 0), vehicles.Disc: "cx"}

// First is the field that the form of a thing opens at, "" for the first of all: a thing that is there at its first reading, as a
// letter that goes astray in its kind would make another thing of it; one that was begun at what it lacks.
func (h Record) First(j vehicles.Job) string {
	switch {
	case h.Fresh:
		return ""
	case !h.Real(j):
		return h.FirstMissing(j)
	case h.List == Ties:
		return tieReadings[0]
	}
	return firstReadings[h.List.At(j, h.Row).Shape]
}

// Turned says that a thing which had a kind has another one between two jobs, and how that is taken back; "" where it has not.
// Of a fitting, which may have none, each change is said.
func (h Record) Turned(was, is vehicles.Job) string {
	if h.Fresh || h.Gone(was) || h.Gone(is) || h.Real(was) != h.Real(is) {
		return ""
	}
	name, before := h.called(was)
	_, now := h.called(is)
	if before == now || before == "" && h.List != Fittings {
		return ""
	}
	if before == "" {
		before = onlyStands
	}
	if now == "" {
		now = onlyStands
	}
	return fmt.Sprintf("%s: its kind is now %s, and was %s. Ctrl-Z takes it back.", name, now, before)
}
