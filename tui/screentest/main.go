package screentest

import (
	"os"
	"runtime/debug"
	"testing"
)

// Main runs the tests of a package that make and throw away screens by the hundred thousand: a collector that comes less often takes a quarter off
// what they cost, for some 200 MB. GOGC, where it is set, holds.
func Main(m *testing.M) (code int) {
	if os.Getenv("GOGC") == "" {
		const percent = 400
		debug.SetGCPercent(percent)
	}
	return m.Run()
}
