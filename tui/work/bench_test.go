package work

import (
	"testing"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// A key that goes down the steps and the picture after it: from 20 ms on a person would feel it. As built each picture judges the job.
func BenchmarkKey(b *testing.B) {
	cut := *vehicles.Demo().Cut
	cut.At[0] += 60
	for name, c := range map[string]struct {
		job  vehicles.Job
		keys string
	}{
		"step": {vehicles.Demo(), "<down><up>"}, "built": {vehicles.Demo().WithBuilt(vehicles.Built{Cut: &cut}), "<end><up>"},
	} {
		b.Run(name, func(b *testing.B) {
			r := screentest.New(b, New(), c.job, 160, 47)
			r.Type("<end><up>")
			for b.Loop() {
				r.Type(c.keys)
				r.Screen.View(r.State, 160, 47)
			}
		})
	}
}
