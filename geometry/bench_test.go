package geometry_test

import (
	"fmt"
	"math"
	"testing"

	"bench.example/undermark/geometry"
)

// Every arrow key that moves the cut asks every obstruction for its gap; a suggestion asks thousands of times. Above
// some microseconds for one place a person would feel the search.
func BenchmarkGapOnly(b *testing.B) {
	r := seeded(b, 6)
	for _, n := range []int{50, 200, 500} {
		var all []geometry.Footprint
		for range n {
			all = append(all, randomFootprint(r, 300).Moved(0, randomPoint(r, 3000)))
		}
		p := randomPoint(r, 3000)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				least := math.Inf(1)
				for i := range all {
					least = min(least, all[i].GapOnly(p))
				}
			}
		})
	}
}

// A run of ten legs past sixty obstructions is measured anew at each key press.
func BenchmarkRun(b *testing.B) {
	r := seeded(b, 7)
	var all []geometry.Prism
	for range 60 {
		low := r.Float64() * -200
		f := randomFootprint(r, 300).Moved(0, randomPoint(r, 3000))
		all = append(all, geometry.Prism{Footprint: f, Low: low, High: low + 100})
	}
	var path []pt3
	for i := range 11 {
		path = append(path, pt3{float64(i) * 200, float64(i%3) * 150, -110 - float64(i)*8})
	}
	run := geometry.Rounded(path, 60)
	b.Run("GapRun", func(b *testing.B) {
		for b.Loop() {
			for i := range all {
				all[i].GapRun(path)
			}
		}
	})
	b.Run("GapRounded", func(b *testing.B) {
		for b.Loop() {
			for i := range all {
				gapRounded(all[i], run, 0, run.Length())
			}
		}
	})
}
