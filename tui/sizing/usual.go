package sizing

import (
	"fmt"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// span is between what and what a figure of a van's supply usually lies.
type span struct{ low, high float64 }

// usualSupply is that by key, in the units of the fields: what lies outside is asked about and kept. common practice, no source
var usualSupply = map[string]span{
	"cable": {300, 12000}, "glow": {3, 40}, "running": {0.2, 10}, "volts": {10, 32}, "drop": {0.1, 2}, "fuse": {3, 50}, "battery": {20, 1000},
	"usable": {20, 100},
}

// doubted is a question about a figure of the supply that lies outside what is usual, "" for one that does not.
func doubted(f form.Field, at vehicles.Number) string {
	usual, known := usualSupply[f.Key]
	if !known || !at.Set || at.Value >= usual.low && at.Value <= usual.high {
		return ""
	}
	return fmt.Sprintf("%s %s %s: usual is %s to %s %s. Is it right? Kept as typed.", strings.ToUpper(f.Label[:1])+f.Label[1:],
		survey.Exact(at.Value), f.Unit, survey.Exact(usual.low), survey.Exact(usual.high), f.Unit)
}

// Corrected asks about a figure that is left and lies far from what is usual: a figure that slipped is seen while the hand is still there.
func (c card) Corrected(s desk.State, key string) string {
	for _, slot := range cards[c.topic].slots(s) {
		if _, known := usualSupply[key]; known && slot.Key == key {
			return doubted(slot.Field, *onElectrics.of(&s.Job, key).At)
		}
	}
	return ""
}
