package desk

import (
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// Datum is what the line that x starts at is called, in w columns at most.
func Datum(d *vehicles.Datum, w int) string { return FirstWords(d.Called(), w) }

// FirstWords is a name in w columns at most: as many of its first words as fit, then "…".
func FirstWords(name string, w int) string {
	if Width(name) <= w {
		return name
	}
	short := ""
	for _, word := range strings.Fields(name) {
		longer := strings.TrimSpace(short + " " + word)
		if Width(longer)+1 > w {
			break
		}
		short = longer
	}
	if short == "" {
		return Cut(name, w)
	}
	return Cut(short, w-1) + "…"
}

// DatumIn is a drawing in which BUMPER LINE and BUMPER stand where the datum's name goes, as wide as they are.
func DatumIn(drawing string, d *vehicles.Datum) string {
	for _, word := range []string{"BUMPER LINE", "BUMPER"} {
		name := Datum(d, len(word))
		if !d.Named() {
			name = strings.ToLower(word)
		}
		drawing = strings.ReplaceAll(drawing, word, FitRow(name, len(word)))
	}
	return drawing
}

// AtX says where x lies: "x 1210", "x -420, behind".
func AtX(x float64, u survey.Units) string {
	text := "x " + survey.Format(x, u)
	if strings.HasPrefix(survey.Format(x, u), "-") {
		text += ", behind"
	}
	return text
}
