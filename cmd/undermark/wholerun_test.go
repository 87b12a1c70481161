package main

import "testing"

// ofWholeRun leaves a test out of a short run: it looks at what commands print one at a time, and the race detector, which makes it take
// six times as long, would find nothing in it. The whole run has it.
func ofWholeRun(t *testing.T) {
	t.Helper()
	if testing.Short() {
		t.Skip("of a whole run only")
	}
}
