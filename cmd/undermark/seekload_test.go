//go:build !windows

package main

import (
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
)

// searchAtMost is what a search at its limit may take of a core: ten times what it takes, so that only what grows faster than it was measured is found.
const searchAtMost = 60 * time.Second

// Among the most things that it takes a search ends soon, though posts all over the floor leave it no way.
func TestASearchAtItsLimitEnds(t *testing.T) {
	if testing.Short() {
		t.Skip("of a whole run only: seconds of a core each")
	}
	for command, most := range map[string]int{"route exhaust --edge rear -": rules.MostToSeek, "route both -": rules.MostToPair} {
		rows := most / 42
		job := jobOfPosts(most, func(i int) (x, y int) { return 50 + i%42*75, -850 + i/42*1700/rows })
		begun := coresOfTests(t)
		code, out, complaint := call(job, strings.Fields(command)...)
		took := coresOfTests(t) - begun
		t.Logf("%s, %d posts: %v of a core", command, most, took.Round(time.Millisecond))
		assert.Equal(t, exitFoul, code, complaint)
		assert.NotEmpty(t, out)
		assert.Less(t, took, searchAtMost, command)
	}
}

// coresOfTests is how much time of the machine's cores these tests have taken.
func coresOfTests(t *testing.T) time.Duration {
	var used syscall.Rusage
	require.NoError(t, syscall.Getrusage(syscall.RUSAGE_SELF, &used))
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}
