package aloud

import (
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// Zeros says where the tape has its zero below, for readings along the van and from each side edge.
func Zeros(s desk.State) []string {
	d := &s.Job.Datum
	return []string{
		"Readings along the van start at the " + d.Edge() + ", " + zero(d.HookBelow, s) + ".",
		"Side readings start at the edges, " + zero(d.SideBelow, s) + ".",
	}
}

// zero says how high the tape's zero is.
func zero(drop vehicles.Number, s desk.State) string {
	if !drop.Set {
		return "held level"
	}
	return "zero " + desk.Height(drop.Value, s.Settings.Units)
}
