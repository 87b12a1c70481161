//go:build unix

package answers

import (
	"errors"
	"os"
	"time"

	"golang.org/x/sys/unix"
)

// More returns what tells whether more can be read from a terminal within a time; nil where that can't be told.
func More(f *os.File) func(within time.Duration) bool {
	return func(within time.Duration) bool {
		fds := []unix.PollFd{{Fd: int32(f.Fd()), Events: unix.POLLIN}}
		for {
			n, err := unix.Poll(fds, int(within.Milliseconds()))
			if !errors.Is(err, unix.EINTR) {
				return n > 0
			}
		}
	}
}
