package words

import (
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// NoFuelFor says that there is no fuel line, and what it lacks.
func NoFuelFor(lacks string) string { return "no fuel line: " + lacks }

// NoFuelLine says why a layout has no fuel line, by its nearest miss where it is known where one begins: "no fuel line keeps every rule:
// chassis rail, left, 7.3 mm short"; "" of one that has.
func NoFuelLine(l *rules.Layout, u survey.Units) string {
	if l.Result.Job.Fuel != nil {
		return ""
	}
	miss := l.FuelMiss
	switch lacks := rules.FuelLacks(&l.Result.Job); {
	case lacks != "":
		return NoFuelFor(lacks)
	case miss == nil && l.AsItIs:
		return NoFuelFor("none is laid")
	case miss == nil: // with one it would be worse
		return NoFuelFor("none goes well with its other runs")
	case miss.Run == nil:
		return NoWay(vehicles.FuelRun)
	}
	worst := miss.Missed()[0]
	_, other, is := worst.Apart()
	if !is {
		other = worst.About()
	}
	return "no fuel line keeps every rule: " + other + ", " + Margin(worst, u)
}
