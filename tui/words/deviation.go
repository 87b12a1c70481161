package words

import (
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// DeviationHeads are over what Deviation says.
var DeviationHeads = [...]string{"made", "planned", "built", "by", desk.PlusMinusHead}

// fartherThanExplained is said of a hole as built that no readings explain.
const fartherThanExplained = "The hole is farther off than marks and tapes explain: read it again, unless it was sawn there on purpose."

// Deviation says what came out otherwise: what of the job, as planned, as built, by how much, and within what 95 % of that lie. What
// nobody has said or read is "".
func Deviation(d rules.Deviation, u survey.Units) (cells [5]string) {
	say := func(v float64) string { return figure(v, d.Unit, u) }
	cells[0] = deviationName(d)
	if d.Planned.Set {
		cells[1] = say(d.Planned.Value)
	}
	if d.Built.Set {
		cells[2] = say(d.Built.Value)
	}
	if by, ok := d.By(); ok {
		if cells[3] = say(by); by > 0 {
			cells[3] = "+" + cells[3]
		}
	}
	if d.Sigma.Set {
		cells[4] = desk.PlusMinus95(d.Sigma.Value, u)
	}
	return cells
}

// What a heater's figures are called wherever they are entered or told.
const (
	CollarsDepth  = work.CollarsDepth
	WarmAirPoints = "warm air points"
)

// deviationName is what came out otherwise: "cut along", "collar's depth", "exhaust point 2 drop".
func deviationName(d rules.Deviation) string {
	switch {
	case d.Table != vehicles.BuiltHeater:
		return strings.TrimSpace(BuiltTable(d.Table) + " " + d.What.String())
	case d.What.Of == rules.MeasuredCollar:
		return CollarsDepth
	case d.What.Of == rules.MeasuredPoints:
		return WarmAirPoints
	}
	return BuiltTable(d.Table)
}

// DeviationLine says a deviation as a line, its verdict first.
func DeviationLine(d rules.Deviation, u survey.Units) string {
	cells := Deviation(d, u)
	line := d.Verdict.String() + ": " + cells[0] + " otherwise"
	for i, word := range [...]string{"planned ", "built ", "by "} {
		if cell := cells[i+1]; cell != "" {
			line += ", " + word + cell
		}
	}
	return strings.TrimSpace(line + " " + cells[4])
}

// Unexplained is what is said where one of them is a hole that no readings explain, else "".
func Unexplained(list []rules.Deviation) string {
	for _, d := range list {
		if d.Unexplained {
			return fartherThanExplained
		}
	}
	return ""
}
