//go:build !unix

package answers

import (
	"os"
	"time"
)

// More returns nil: it can't be told here whether more can be read, and the library reads keys its own way.
func More(*os.File) func(within time.Duration) bool { return nil }
