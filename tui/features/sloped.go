package features

import (
	"fmt"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
)

// What a sloping tape takes from a reading is said from leastSlope on, and of its own accord from muchSlope on: no fitter reads a
// tape that far off. mm.
const (
	leastSlope = 0.05
	muchSlope  = 10
)

// Corrected says how much a sloping tape takes from the reading of a field, "" where that is not much.
func (h Record) Corrected(s desk.State, key string) string {
	n := h.noted(s)
	took := n.took[key]
	if took < muchSlope {
		return ""
	}
	r, u := h.texts(s.Job)[key], s.Settings.Units
	return fmt.Sprintf("Sloping tape: %s counts %s less. Was it held level? On top, where the tape hooks, says so.", r, desk.Length(took, u))
}

// Sloped says how many readings of the obstructions a sloping tape corrects, and which the most.
func Sloped(s desk.State) string {
	count, most, of := 0, 0.0, ""
	for row := range s.Job.Obstructions {
		h := Record{List: Obstructions, Row: row}
		n := h.noted(s)
		for _, took := range n.took {
			if count++; took > most {
				name, _ := h.Name(s.Job)
				most, of = took, name
			}
		}
	}
	if count == 0 {
		return "corrects no reading yet"
	}
	readings := "readings"
	if count == 1 {
		readings = "reading"
	}
	return fmt.Sprintf("corrects %d %s, most %s: %s", count, readings, of, survey.Format(most, s.Settings.Units))
}
