package survey

import (
	"slices"

	"bench.example/undermark/geometry"
)

// LeftOut is what the fit of the other ties in use says of one.
type LeftOut struct {
	Name      string
	Predicted geometry.Point // where the others say it is above
	Off       geometry.Point // what it says itself less that, mm
	RMS       float64        // of the fit of the others, mm
}

// LeaveOneOut returns, for each tie in use, what the fit of the others says of it. With fewer than three in use the
// others fix nothing, and there is none.
func LeaveOneOut(ties []Tie) []LeftOut {
	used := inUse(ties)
	if len(used) < 3 {
		return nil
	}
	out := make([]LeftOut, len(used))
	for i, t := range used {
		others := slices.Delete(slices.Clone(used), i, i+1)
		m, _, _ := rigid(others, false)
		p := m.apply(t.Below)
		out[i] = LeftOut{Name: t.Name, Predicted: p, Off: t.Above.Sub(p), RMS: m.rms(others)}
	}
	return out
}

// suspect names the tie without which the RMS of four or more comes below a third, and least; "" for none.
func suspect(used []Tie, rms float64) string {
	if len(used) < 4 || rms <= suspectOver {
		return ""
	}
	name, least := "", rms*muchBetter
	for _, without := range LeaveOneOut(used) {
		if without.RMS < least {
			name, least = without.Name, without.RMS
		}
	}
	return name
}

// Baseline is how far two ties are apart on each side, mm: a check that needs no fit.
type Baseline struct {
	A, B         string
	Below, Above float64
	Difference   float64 // Above less Below
}

// Baselines returns every pair of ties in use, in their order.
func Baselines(ties []Tie) []Baseline {
	used := inUse(ties)
	var pairs []Baseline
	for i, a := range used {
		for _, b := range used[i+1:] {
			below, above := b.Below.Sub(a.Below).Norm(), b.Above.Sub(a.Above).Norm()
			pairs = append(pairs, Baseline{A: a.Name, B: b.Name, Below: below, Above: above, Difference: above - below})
		}
	}
	return pairs
}
