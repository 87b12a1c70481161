package runs

import (
	"testing"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// A frame is 16 ms: an arrow held down lags behind the thumb where two moves and a picture take longer.
func BenchmarkAPointIsMoved(b *testing.B) {
	d := screentest.New(b, New(), vehicles.Demo(), 160, 47)
	for b.Loop() {
		d.Type("<left><right>")
		d.Screen.View(d.State, 160, 47)
	}
}
