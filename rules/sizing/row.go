package sizing

import (
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// InstructionsFirst is said of a result that has Instructions.
const InstructionsFirst = "the heater's own instructions come first"

// Row is one result.
type Row struct {
	ID      ID
	Label   string
	Surface int             // which of the job's surfaces it is of, 1 the first; 0 for none
	Value   vehicles.Number // not set for what is said in words, and while something is missing
	Unit    Unit
	Text    string   // in words: in place of a value, or beside it
	Why     string   // how it is reckoned
	Source  Sources  // of formula and coefficients
	Taken   []string // what was taken as nobody has said it
	Lacks   []string // what nobody has said, so that there is no result
	Amiss   string   // what must be put right; "" for nothing
	// Instructions tells that the heater's own instructions have the figure: they come first.
	Instructions bool
}

// Sources are where a figure is from, each by itself: what the trade does and nobody has printed is rules.Practice.
type Sources []string

// String is how they are told together.
func (s Sources) String() string { return strings.Join(s, "; ") }

// Unit is what a value is in, as it is written.
type Unit string

// The units.
const (
	MM     Unit = "mm"
	MM2    Unit = "mm²"
	Volt   Unit = "V"
	Ampere Unit = "A"
	Hour   Unit = "h"
	Night  Unit = "nights"
	ML     Unit = "ml"
	Litre  Unit = "l"
	Stroke Unit = "strokes"
	Second Unit = "s"
	Minute Unit = "min"
	Watt   Unit = "W"
	RPM    Unit = "rpm"
	Pascal Unit = "Pa"
	Flow   Unit = "m³/h"
	Speed  Unit = "m/s"
	NoUnit Unit = ""
)

// places is how many decimals a value in a unit is worth.
var places = map[Unit]int{
	MM: 1, MM2: 2, Volt: 2, Ampere: 1, Hour: 1, Night: 1, ML: 1, Litre: 1, Stroke: 0, Second: 0, Minute: 0, Watt: 0, RPM: 0, Pascal: 0, Flow: 0, Speed: 1, NoUnit: 0,
}

// Of is a value in the unit for people, to as many decimals as it is worth: "12.5 V".
func (u Unit) Of(v float64) string {
	if u == NoUnit {
		return survey.FigureTo(v, places[u])
	}
	return survey.FigureTo(v, places[u]) + " " + string(u)
}

// Figure is the value as people write it, without its unit; "" without one.
func (r Row) Figure() string {
	if !r.Value.Set {
		return ""
	}
	return survey.FigureTo(r.Value.Value, places[r.Unit])
}

// Said is the result in few words: its value in its unit, what it is in words, or that something is missing.
func (r Row) Said() string {
	said := ""
	if r.Value.Set {
		said = r.Unit.Of(r.Value.Value)
	}
	switch {
	case said == "" && len(r.Lacks) > 0:
		return vehicles.NotKnown
	case said == "":
		return r.Text
	case r.Text != "":
		return said + ", " + r.Text
	}
	return said
}
