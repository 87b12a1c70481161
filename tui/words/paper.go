package words

import (
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/cutlist"
	"bench.example/undermark/rules/sheet"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// OnPaper are the words of a printed sheet: lengths in mm and sides as the job file has them, whoever reads it.
func OnPaper() sheet.Words {
	const mm = desk.Millimetres
	return sheet.Words{
		Standing:    Standing,
		Measure:     func(m scene.Measure) string { return Measure(m, mm) },
		Found:       func(f rules.Finding) string { return Value(f, mm) },
		PlusMinus:   func(f rules.Finding) string { return PlusMinus(f, mm) },
		Asked:       Asked,
		Margin:      func(f rules.Finding) string { return Margin(f, mm) },
		Short:       func(f rules.Finding, v float64) string { return InColumn(v, f.Rule.Unit, mm) },
		Check:       func(c rules.Check) string { return CheckText(c, desk.Settings{}) },
		PilotOff:    func(p rules.Pilot) string { return PilotOff(p, desk.Settings{}) },
		Beside:      func(cut *vehicles.Cut) string { return BesidePilot(cut, desk.Settings{}) },
		BelowSpread: BelowSpread,
		OldPilot:    func(r *rules.Result) string { return OldPilot(r, desk.Settings{}) },
		InTheWay:    func(r *rules.Result, m rules.MarkSheet) []string { return BlockedTapes(r, m, desk.Settings{}) },
		Moved:       func(moved []rules.Moved) []string { return MovedMarks(moved, desk.Settings{}) },
		Bits:        func(p cutlist.Piece) string { return Bits(p, mm) },
		WhyClear:    func(f rules.Finding) string { return WhyClear(f, mm) },
		Spread95:    func(sigma float64) string { return desk.PlusMinus95(sigma, mm) },
		Fall:        Fall,
		Missing:     NotKnown,
		Otherwise:   BuiltOtherwise,

		Deviation:   func(d rules.Deviation) [5]string { return Deviation(d, mm) },
		Unexplained: Unexplained,
	}
}
