package words

import (
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// Measure writes the figure of a picture; what is to spare says so, or what is short.
func Measure(m scene.Measure, u survey.Units) string {
	switch {
	case m.Spare && m.Value < 0:
		return Measure(scene.Measure{Value: -m.Value, Unit: m.Unit, Bare: m.Bare}, u) + " short"
	case m.Spare:
		return Measure(scene.Measure{Value: m.Value, Unit: m.Unit, Bare: m.Bare}, u) + " to spare"
	case !m.Bare:
		return desk.Quantity(m.Value, rules.Unit(m.Unit), u)
	case m.Unit == scene.MM:
		return survey.Format(m.Value, u)
	}
	return survey.Figure(m.Value)
}
