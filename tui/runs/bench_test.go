package runs

import (
	"testing"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// From half a second on a fitter waits for the point to move; a frame is 16 ms.
func BenchmarkAPointIsMoved(b *testing.B) {
	d := screentest.New(b, New(), vehicles.Demo(), 160, 47)
	for b.Loop() {
		d.Type("<left><right>")
		d.Screen.View(d.State, 160, 47)
	}
}
