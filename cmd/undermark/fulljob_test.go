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
	return jobOfPosts(n, func(i int) (x, y int) { return 50 + i%100*31, -850 + i/100*17 })
}

// jobOfPosts is a job with a heater, a cut, and n posts below the floor.
func jobOfPosts(n int, at func(i int) (x, y int)) string {
	var b strings.Builder
	b.WriteString("format = 1\n[job]\nref = \"full\"\n[floor]\nfrom = 40\nlength = 3200\nwidth = 1780\nthickness = 31\nground = 460\n[heater]\nclass = \"2 kW\"\n[cut]\nat = [1210, 240]\nacross = 127\n")
	for i := range n {
		x, y := at(i)
		fmt.Fprintf(&b, "[[obstruction]]\nname = \"n%d\"\nkind = \"crossmember\"\nx = [%d, %d]\ny = [%d, %d]\ndrop = [0, 95]\n", i, x, x+4, y, y+4)
	}
	return b.String()
}

// What takes minutes and gigabytes among thousands of things is not begun: a line says how many there are, and what to do.
func TestNothingIsSoughtAmongTooManyThings(t *testing.T) {
	notRaced(t)
	notSought(t, rules.MostToLayOut, "layout -", "layout --json -", "suggest --yaw -", "suggest --yaw --near 1000,0 -")
	notSought(t, rules.MostToSeek, "route exhaust --edge left -", "route exhaust --edge rear --json -", "route intake --edge under -", "route fuel --to 2000,300,100 -")
	notSought(t, rules.MostToPair, "route both -", "route both --json -")
}

// notSought holds that commands seek nothing among more things than the most.
func notSought(t *testing.T, most int, commands ...string) {
	for _, n := range []int{most + 1, 9900} {
		job := fullJob(n)
		for _, command := range commands {
			args := strings.Fields(command)
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			start := time.Now()
			code, out, complaint := call(job, args...)
			runtime.ReadMemStats(&after)
			assert.Equal(t, 1, code, args)
			assert.Empty(t, out)
			assert.Regexp(t, fmt.Sprintf(`^-:\d+: %d obstructions, .* more than the %d .*: leave out .*\n$`, n, most), complaint)
			assert.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(1<<30), "%v", args)
			assert.Less(t, time.Since(start), 30*time.Second, "%v", args)
		}
	}
}
