package sizing

import (
	"testing"

	"bench.example/undermark/vehicles"
)

// The screen reckons everything anew several times a key: a person would feel it from a few milliseconds on.
func BenchmarkOf(b *testing.B) {
	r := judged(b, func(j *vehicles.Job) { *j = vehicles.Demo() })
	b.ReportAllocs()
	for b.Loop() {
		Of(r)
	}
}
