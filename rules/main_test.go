package rules

import (
	"os"
	"runtime/debug"
	"testing"
)

// Runs are tried by the hundred thousand here: a collector that comes less often takes a quarter off what the searches cost, for some 200 MB. GOGC,
// where it is set, holds.
func TestMain(m *testing.M) {
	if os.Getenv("GOGC") == "" {
		const percent = 400
		debug.SetGCPercent(percent)
	}
	os.Exit(m.Run())
}
