// Package words says in words and numbers with their units what the rules found and what to measure, for screens and the
// command line alike. It measures nothing itself.
package words

import (
	"math"
	"strconv"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// NoValue stands where nobody has given a rule its value.
const NoValue = "no value set"

// Value is what was found, with its unit.
func Value(f rules.Finding, u survey.Units) string {
	if f.Unsaid {
		return vehicles.NotSaid
	}
	if text := stands(f.Value, f.Rule.Unit); text != "" {
		return text
	}
	return desk.Quantity(f.Value, f.Rule.Unit, u)
}

// stands is what is said of a leg that goes straight down or up, or steeper than steep, "" of one that has a slope to speak of: no figure
// in mm per metre says it.
func stands(v float64, unit rules.Unit) string {
	switch {
	case !isSteep(v, unit):
		return ""
	case v >= rules.Upright:
		return "straight down"
	case v <= -rules.Upright:
		return "straight up"
	case v < 0:
		return "rises " + steeper
	}
	return steeper
}

// steep is the slope, mm per metre, from which on a leg has no figure any more, nor has what is to spare or missing: 45 degrees.
const (
	steep   = 1000
	steepIs = "45°"
	steeper = "steeper than " + steepIs
)

// Slope says how much a leg falls or rises, mm per metre of plan: a figure, or that it is steeper than has one.
func Slope(perM float64, u survey.Units) string {
	if isSteep(perM, rules.PerM) {
		return steeper
	}
	return desk.Quantity(perM, rules.PerM, u)
}

func isSteep(v float64, unit rules.Unit) bool { return unit == rules.PerM && math.Abs(v) > steep }

// ample is what is said of the margin of a leg that is steep, "" of any other finding.
func ample(f rules.Finding) string {
	switch {
	case !isSteep(f.Value, f.Rule.Unit):
		return ""
	case f.Margin.Value < 0:
		return "far short"
	}
	return "enough"
}

// Required is what the rule asks for, with its unit.
func Required(f rules.Finding, u survey.Units) string {
	if !f.Required.Set {
		return NoValue
	}
	return desk.Quantity(f.Required.Value, f.Rule.Unit, u)
}

// Sense is "at least" or "at most".
func Sense(f rules.Finding) string { return "at " + f.Rule.Sense.String() }

// Margin says how much there is to spare or to miss, with its unit: "38 mm to spare", "12 mm short".
func Margin(f rules.Finding, u survey.Units) string {
	switch {
	case f.Unsaid:
		return vehicles.NotSaid
	case !f.Margin.Set:
		return NoValue
	case ample(f) != "":
		return ample(f)
	}
	return spare(f.Margin.Value, f.Rule.Unit, u)
}

// Spare says of a margin in mm what is to spare or missing: "38 mm to spare", "12 mm short".
func Spare(mm float64, u survey.Units) string { return spare(mm, rules.MM, u) }

func spare(margin float64, unit rules.Unit, u survey.Units) string {
	switch {
	case unit == rules.Count && margin < 0: // none of them may be
		return survey.Exact(-margin) + " too many"
	case unit == rules.Count && margin == 0:
		return "none"
	case margin < 0:
		return told(-margin, unit, u, desk.Quantity) + " short"
	}
	return desk.Quantity(margin, unit, u) + " to spare"
}

// Signed is the margin as a signed number for a column: "-34.1", "10°".
func Signed(f rules.Finding, u survey.Units) string {
	if !f.Margin.Set {
		return "?"
	}
	if said := ample(f); said != "" {
		return said
	}
	if f.Margin.Value < 0 {
		return told(f.Margin.Value, f.Rule.Unit, u, figure)
	}
	return figure(f.Margin.Value, f.Rule.Unit, u)
}

// told is by how much something is short, as it is written; with more decimals where that would be 0, as nothing is short by 0.
func told(v float64, unit rules.Unit, u survey.Units, write func(float64, rules.Unit, survey.Units) string) string {
	text, nothing := write(v, unit, u), write(0, unit, u)
	if text != nothing {
		return text
	}
	if unit == rules.MM {
		v /= u.Size()
	}
	return survey.Told(v) + strings.TrimPrefix(nothing, survey.Figure(0))
}

// BareIs says above a column what its figures without a unit are; "" where all have theirs.
func BareIs(u survey.Units) string {
	if u == desk.Inches {
		return ""
	}
	return "mm unless said"
}

// InColumn writes a figure for a column that holds figures of all units: mm alone go without theirs.
func InColumn(v float64, unit rules.Unit, u survey.Units) string {
	switch {
	case !isSteep(v, unit):
		return figure(v, unit, u)
	case math.Abs(v) >= rules.Upright:
		return stands(v, unit)
	case v < 0:
		return "> " + steepIs + " up"
	}
	return "> " + steepIs
}

func figure(v float64, unit rules.Unit, u survey.Units) string {
	if unit == rules.MM {
		return survey.Format(v, u)
	}
	return desk.Behind(survey.Figure(v), unit)
}

// PlusMinus is the half width within which 95 % lie: "± 3.5"; "" where nothing measured enters. All that has one is a length.
func PlusMinus(f rules.Finding, u survey.Units) string {
	if f.Sigma == 0 {
		return ""
	}
	return desk.PlusMinus95(f.Sigma, u)
}

// SureMargin is the margin with its ±, where it has one: "38 mm to spare ± 3.5 (95 %)".
func SureMargin(f rules.Finding, u survey.Units) string {
	text := Margin(f, u)
	if f.Sigma != 0 {
		text += " " + desk.Within95(f.Sigma, u)
	}
	return text
}

// fromSizes stands where a length has no ±.
const fromSizes = "from the sizes entered"

// Unmeasured says of a length that nothing measured enters what it rests on; "" of any other finding.
func Unmeasured(f rules.Finding) string {
	if f.Sigma != 0 || f.Unsaid || !f.Margin.Set || f.Rule.Unit != rules.MM {
		return ""
	}
	return fromSizes
}

// ClearWithin says under a list that a margin may be less than its ± and clear all the same.
const ClearWithin = "clear within ±: 95 % sure it isn't short"

// WithinItself tells whether a finding is clear although its margin is less than its ±: that has 95 % of what may be on both sides,
// clear is 95 % sure of the one.
func WithinItself(f rules.Finding) bool {
	return f.Verdict == rules.Clear && f.Margin.Set && f.Margin.Value < desk.TwoSided95*f.Sigma
}

// WhyClear says of such a finding from which margin on it is clear; "" of any other.
func WhyClear(f rules.Finding, u survey.Units) string {
	if !WithinItself(f) {
		return ""
	}
	return "clear from " + desk.Quantity(f.ClearFrom(), f.Rule.Unit, u) + " to spare on: 95 % sure that it isn't short; the ± is wider, it goes both ways"
}

// Sentence is a clause with a capital and a full stop.
func Sentence(clause string) string { return Upper(clause) + "." }

// Upper is a clause as it begins a line.
func Upper(clause string) string { return strings.ToUpper(clause[:1]) + clause[1:] }

// Deadly marks in a list what can kill, whatever its verdict; DeadlyIs says so above the list.
const (
	Deadly   = "†"
	DeadlyIs = Deadly + " can kill"
)

// Named is what a finding is of, with the mark of what can kill in front; what can't is as far in.
func Named(f rules.Finding) string {
	if f.Weight == rules.Kills {
		return Deadly + " " + f.About()
	}
	return "  " + f.About()
}

// SplitAtCut parts findings into those at the cut and the others, each in the order they had.
func SplitAtCut(findings []rules.Finding) (at, others []rules.Finding) {
	for _, f := range findings {
		if f.Rule.AtCut {
			at = append(at, f)
		} else {
			others = append(others, f)
		}
	}
	return at, others
}

// Worst is the worst verdict of findings, clear when there are none.
func Worst(findings []rules.Finding) rules.Verdict {
	worst := rules.Clear
	for _, f := range findings {
		worst = max(worst, f.Verdict)
	}
	return worst
}

// Tally counts findings by verdict and says so, worst first: "2 foul, 5 doubtful", or "clear of what was entered".
func Tally(findings []rules.Finding) string {
	counts := map[rules.Verdict]int{}
	for _, f := range findings {
		counts[f.Verdict]++
	}
	var parts []string
	for _, v := range []rules.Verdict{rules.Foul, rules.Doubtful} {
		if counts[v] > 0 {
			parts = append(parts, strconv.Itoa(counts[v])+" "+desk.VerdictWord(v))
		}
	}
	if len(parts) == 0 {
		return rules.ClearOfEntered
	}
	return strings.Join(parts, ", ")
}
