package field

import (
	"fmt"
	"testing"

	"bench.example/undermark/geometry"
)

// A whole map is made when a job is opened or the floor changes: within a frame (16 ms) nobody sees it happen.
func BenchmarkMap(b *testing.B) {
	for _, n := range []int{50, 200, 500} {
		m := NewMargins(crowded(seeded(b, 1), n, alike))
		for _, step := range []float64{5, 1} {
			for workers := 1; workers <= 2; workers++ {
				b.Run(fmt.Sprintf("%d/%gmm/%d", n, step, workers), func(b *testing.B) {
					for b.Loop() {
						m.Map(step, workers)
					}
				})
			}
		}
	}
}

// The best places are asked for by name; an answer within a frame seems to be there already.
func BenchmarkRoomiest(b *testing.B) {
	for _, n := range []int{50, 200, 500} {
		m := NewMargins(crowded(seeded(b, 1), n, alike))
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				m.Roomiest(0.01)
			}
		})
	}
}

func BenchmarkAreas(b *testing.B) {
	for _, n := range []int{50, 200, 500} {
		m := NewMargins(crowded(seeded(b, 1), n, alike))
		p := m.Map(5, 2)
		b.Run(fmt.Sprintf("%d", n), func(b *testing.B) {
			for b.Loop() {
				p.Areas()
			}
		})
		b.Run(fmt.Sprintf("%d/with map", n), func(b *testing.B) {
			for b.Loop() {
				m.Map(5, 2).Areas()
			}
		})
	}
}

// Nearest and Slide answer a key press.
func BenchmarkMoving(b *testing.B) {
	r := seeded(b, 1)
	for _, n := range []int{50, 200, 500} {
		m := NewMargins(crowded(r, n, alike))
		places := make([]geometry.Point, 64)
		for i := range places {
			places[i] = pt(40+r.Float64()*3200, r.Float64()*1780-890)
		}
		b.Run(fmt.Sprintf("nearest/%d", n), func(b *testing.B) {
			i := 0
			for b.Loop() {
				m.Nearest(places[i%64])
				i++
			}
		})
		best := m.Roomiest(1).At
		b.Run(fmt.Sprintf("slide/%d", n), func(b *testing.B) {
			for b.Loop() {
				m.Slide(best, pt(300, 200))
			}
		})
	}
}
