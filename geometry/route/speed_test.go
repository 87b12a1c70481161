package route_test

import (
	"context"
	"fmt"
	"testing"

	"bench.example/undermark/geometry/route"
)

// A way is sought while the fitter waits, or in the background while points are moved.
func BenchmarkFind(b *testing.B) {
	for _, c := range crowdedFloors {
		for _, flat := range []bool{true, false} {
			q := c.query(flat)
			name := map[bool]string{true: "plan", false: "space"}[flat]
			b.Run(fmt.Sprintf("%d/%s", c.n, name), func(b *testing.B) {
				var ways []route.Way
				for b.Loop() {
					ways = route.Find(context.Background(), &q, 1, nil)
				}
				if len(ways) > 0 {
					b.ReportMetric(ways[0].Length, "mm")
				}
			})
		}
	}
}

// A run in space is a way straightened: judged here by exact distances alone.
func BenchmarkRun(b *testing.B) {
	for _, c := range crowdedFloors {
		q := c.query(false)
		b.Run(fmt.Sprint(c.n), func(b *testing.B) {
			var worth route.Worth
			for b.Loop() {
				s := route.Straightener{Bend: q.Bend, Worth: worthOf(&q), Steps: []float64{32, 2}}
				ways := route.Find(context.Background(), &q, 1, nil)
				_, worth = s.Straighten(context.Background(), ways[0].Corners)
			}
			b.ReportMetric(worth.Length, "mm")
			b.ReportMetric(worth.Short, "short")
		})
	}
}
