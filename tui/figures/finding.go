package figures

import (
	"strconv"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// NoValue stands where nobody has given a rule its value.
const NoValue = "no value set"

// words are what the findings of each rule are called in a list.
var words = map[string]string{
	"cut.clearance": "cut", "cut.on-floor": "cut", "plate.on-floor": "plate", "plate.fitting": "plate",
	"body.space": "free space", "stub.in-cut": "stub in the cut", "stack.turret": "collar through the floor", "ties.fit": "matching points", "chain.closure": "chain and its overall reading",
	"exhaust.clearance": "exhaust", "exhaust.fall": "exhaust fall", "exhaust.drains": "exhaust low points",
	"exhaust.muffler-level": "muffler level", "exhaust.length": "exhaust length", "exhaust.bends": "exhaust bends",
	"exhaust.bend-room": "exhaust short legs", "exhaust.clip-span": "exhaust clips", "exhaust.outlet": "outlet",
	"exhaust.floor": "exhaust", "exhaust.edge": "outlet inside the outline", "exhaust.ground": "exhaust", "exhaust.fuel": "exhaust",
	"intake.clearance": "intake", "intake.length": "intake length", "intake.bends": "intake bends",
	"intake.bend-room": "intake short legs", "intake.floor": "intake", "intake.ground": "intake",
	"intake.apart": "intake mouth", "intake.facing": "intake mouth's direction",
	"fuel.clearance": "fuel line", "fuel.pump-tilt": "pump tilt", "fuel.suction": "tank to pump", "fuel.delivery": "pump to heater",
}

// About says in a few words what a finding is of: "cut: brake pipe, right", "exhaust fall: leg 2".
func About(f rules.Finding) string {
	word, known := words[f.ID]
	if !known {
		word = f.Subject.String()
	}
	other := f.Against.String()
	if f.ID == "stub.in-cut" {
		other = f.Subject.String()
	}
	if other == "" || strings.Contains(word, other) {
		return word
	}
	return word + ": " + other
}

// Value is what was found, with its unit.
func Value(f rules.Finding, u survey.Units) string { return number(f.Value, f.Unit, u) }

// Required is what the rule asks for, with its unit.
func Required(f rules.Finding, u survey.Units) string {
	if !f.Required.Set {
		return NoValue
	}
	return number(f.Required.Value, f.Unit, u)
}

// Sense is "at least" or "at most".
func Sense(f rules.Finding) string { return "at " + f.Sense.String() }

// Margin says how much there is to spare or to miss, with its unit: "38 mm to spare", "12 mm short".
func Margin(f rules.Finding, u survey.Units) string {
	switch {
	case !f.Margin.Set:
		return NoValue
	case f.Margin.Value < 0:
		return number(-f.Margin.Value, f.Unit, u) + " short"
	}
	return number(f.Margin.Value, f.Unit, u) + " to spare"
}

// Signed is the margin as a bare signed number in the finding's unit, for a column under its own head.
func Signed(f rules.Finding, u survey.Units) string {
	if !f.Margin.Set {
		return "?"
	}
	if f.Unit == "mm" {
		return survey.Format(f.Margin.Value, u)
	}
	return plain(f.Margin.Value)
}

// PlusMinus is the half width within which 95 % lie, in the finding's unit: "± 3.5".
func PlusMinus(f rules.Finding, u survey.Units) string {
	if f.Unit == "mm" {
		return desk.PlusMinus95(f.Sigma, u)
	}
	return "± " + plain(1.96*f.Sigma)
}

// AtCut says whether a finding is of the hole itself and what is bolted to it, and not of the runs.
func AtCut(f rules.Finding) bool {
	group, _, _ := strings.Cut(f.ID, ".")
	switch group {
	case "cut", "plate", "body", "stub", "stack", "ties":
		return true
	}
	return false
}

// SplitAtCut parts findings into those at the cut and the others, each in the order they had.
func SplitAtCut(findings []rules.Finding) (at, others []rules.Finding) {
	for _, f := range findings {
		if AtCut(f) {
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
		return desk.VerdictWord(rules.Clear) + " of what was entered"
	}
	return strings.Join(parts, ", ")
}

func number(v float64, unit string, u survey.Units) string {
	switch unit {
	case "mm":
		return desk.Length(v, u)
	case "deg":
		return plain(v) + "°"
	case "", "count":
		return plain(v)
	}
	return plain(v) + " " + unit
}

// plain writes a number that is no length to a tenth.
func plain(v float64) string { return survey.Format(v, survey.Millimetres) }
