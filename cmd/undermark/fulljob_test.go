package main

import (
	"fmt"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/rules"
)

// fullJob is a job with n crossmembers in a grid, and a heater.
func fullJob(n int) string {
	var b strings.Builder
	b.WriteString("format = 1\n[job]\nref = \"full\"\n[floor]\nfrom = 40\nlength = 3200\nwidth = 1780\nthickness = 31\nground = 460\n[heater]\nclass = \"2 kW\"\n[cut]\nat = [1210, 240]\nacross = 127\n")
	for i := range n {
		x, y := 50+i%100*31, -850+i/100*17
		fmt.Fprintf(&b, "[[obstruction]]\nname = \"n%d\"\nkind = \"crossmember\"\nx = [%d, %d]\ny = [%d, %d]\ndrop = [0, 95]\n", i, x, x+4, y, y+4)
	}
	return b.String()
}

// What takes minutes and gigabytes among thousands of things is not begun: a line says how many there are, and what to do.
func TestNoLayoutIsSoughtAmongTooManyThings(t *testing.T) {
	for _, n := range []int{rules.MostToLayOut + 1, 9900} {
		job := fullJob(n)
		for _, args := range [][]string{{"layout", "-"}, {"layout", "--json", "-"}, {"suggest", "--yaw", "-"}, {"suggest", "--yaw", "--near", "1000,0", "-"}} {
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			start := time.Now()
			code, out, complaint := call(job, args...)
			runtime.ReadMemStats(&after)
			assert.Equal(t, 1, code, args)
			assert.Empty(t, out)
			assert.Regexp(t, fmt.Sprintf(`^-:\d+: %d obstructions, .* more than the 1000 .*: leave out .*\n$`, n), complaint)
			assert.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(1<<30), "%v", args)
			assert.Less(t, time.Since(start), 30*time.Second, "%v", args)
		}
	}
}
