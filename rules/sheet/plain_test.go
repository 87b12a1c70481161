package sheet

import (
	"fmt"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/cutlist"
	"bench.example/undermark/vehicles"
)

// plainWords say all in words that a test knows again, about as long as those of the screens.
func plainWords() Words {
	return Words{
		Standing:    func(r *rules.Result) string { return r.Verdict.String() },
		Measure:     func(m scene.Measure) string { return survey.InMM(m.Value) },
		Found:       func(f rules.Finding) string { return survey.Figure(f.Value) },
		PlusMinus:   func(f rules.Finding) string { return "± " + survey.Figure(f.Sigma) },
		Asked:       func(f rules.Finding) string { return "asked " + survey.Figure(f.Required.Value) },
		Margin:      func(f rules.Finding) string { return survey.Figure(f.Margin.Value) + " short" },
		Short:       func(_ rules.Finding, v float64) string { return survey.Figure(v) },
		Check:       func(c rules.Check) string { return fmt.Sprintf("%s: %s to %s", c.Name, c.From, c.To) },
		PilotOff:    func(rules.Pilot) string { return "The hole is off its mark" },
		Beside:      func(*vehicles.Cut) string { return "The centre is beside the hole" },
		BelowSpread: func([2]float64) string { return "So far off may a mark be." },
		OldPilot:    func(*rules.Result) string { return "" },
		InTheWay:    func(*rules.Result, rules.MarkSheet) []string { return nil },
		Moved: func(moved []rules.Moved) (said []string) {
			for range moved {
				said = append(said, "by a little")
			}
			return said
		},
		Bits:        func(cutlist.Piece) string { return "137.9, bend 88.7° at radius 60 (92.9), 290.7" },
		WhyClear:    func(rules.Finding) string { return "" },
		Spread95:    func(sigma float64) string { return "± " + survey.Figure(sigma) },
		Fall:        func(geometry.Point3) string { return "↓34" },
		Missing:     func(r *rules.Result) []Missing { return []Missing{{"Not known", r.Unanswered}} },
		Otherwise:   func(*vehicles.Job) []string { return nil },
		Deviation:   func(d rules.Deviation) [5]string { return [5]string{d.What.String(), "1", "2", "1", ""} },
		Unexplained: func([]rules.Deviation) string { return "" },
	}
}

// printed is what one page shows: the texts of its parts, and its pictures, each with the texts on it.
type printed struct {
	board
	pictures []vector.Box
	inside   bool
}

func (p *printed) Windowed(box vector.Box, draw func()) {
	p.inside = true
	p.pictures = append(p.pictures, box)
	draw()
}

// printedOf draws a page. A picture is one mark of it: whatever that writes is the picture's own.
func printedOf(page *Page) printed {
	var all printed
	for _, mark := range page.marks {
		var one printed
		mark(&one)
		all.lines = append(all.lines, one.lines...)
		all.pictures = append(all.pictures, one.pictures...)
		if !one.inside {
			all.texts, all.boxes = append(all.texts, one.texts...), append(all.boxes, one.boxes...)
		}
	}
	return all
}

// over tells by how much two boxes lie over each other, mm: the less of both ways; 0 or less for not at all.
func over(a, b vector.Box) float64 {
	return min(
		min(a.Left+a.Width, b.Left+b.Width)-max(a.Left, b.Left),
		min(a.Top+a.Height, b.Top+b.Height)-max(a.Top, b.Top),
	)
}
