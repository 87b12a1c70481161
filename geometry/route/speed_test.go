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
