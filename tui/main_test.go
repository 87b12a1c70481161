package tui

import (
	"os"
	"runtime/debug"
	"testing"
)

// Screens are made and thrown away by the hundred thousand here: a collector that comes less often takes a quarter off what the tests cost, for
// some 200 MB. GOGC, where it is set, holds.
func TestMain(m *testing.M) {
	if os.Getenv("GOGC") == "" {
		const percent = 400
		debug.SetGCPercent(percent)
	}
	os.Exit(m.Run())
}
