//go:build !windows

package main

import (
	"fmt"
	"os"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fill has the terminal take no more from whoever writes on it: it holds as much as it can that nobody has read.
func (s *terminal) fill(t *testing.T) {
	t.Helper()
	f, err := syscall.Open(fmt.Sprintf("/proc/%d/fd/1", s.cmd.Process.Pid), syscall.O_WRONLY|syscall.O_NONBLOCK|syscall.O_NOCTTY, 0)
	if err != nil {
		t.Skip("here nobody tells which terminal a program writes on")
	}
	defer func() { _ = syscall.Close(f) }()
	nothing := make([]byte, 1<<12) // NUL, which shows nothing
	for full := 0; full < 5; time.Sleep(still) {
		for full++; ; full = 0 {
			if _, err := syscall.Write(f, nothing); err != nil {
				require.ErrorIs(t, err, syscall.EAGAIN)
				break
			}
		}
	}
}

// Whoever is told to end ends, also where the terminal that it would tidy is read by nobody; the work is kept as ever. On screens that is work
// of which nothing was seen any more.
func TestAnOrderToEndIsHeardWhereNobodyReads(t *testing.T) {
	notRaced(t)
	t.Parallel()
	for name, args := range map[string][]string{"on screens": nil, "in lines": {"--plain"}} {
		for _, sig := range []syscall.Signal{syscall.SIGHUP, syscall.SIGTERM, syscall.SIGINT} {
			t.Run(name+" "+sig.String(), func(t *testing.T) {
				t.Parallel()
				var shut atomic.Bool
				h, file := readHome(t), wideFloor(t)
				text, err := os.ReadFile(file)
				require.NoError(t, err)
				s := h.begin(t, &terminal{reads: func() int {
					for shut.Load() {
						time.Sleep(time.Millisecond)
					}
					return 1 << 16
				}}, 160, 50, append(args, file)...)
				s.wait(t, "Underneath")
				kept := func() bool { return len(h.journals(t)) == 1 }
				if args != nil { // lines are taken in their order: no key is heard before all is said of the last
					s.keys(t, editKeys...)
					require.True(t, s.comes(patience, kept))
				}
				shut.Store(true)
				s.fill(t)
				if args == nil {
					s.keys(t, editKeys...)
				} else {
					s.keys(t, "5678")
				}
				require.True(t, s.comes(patience, kept))
				s.signal(t, sig)
				over := make(chan error, 1)
				go func() { over <- s.cmd.Wait() }()
				select {
				case err := <-over:
					assert.NoError(t, err)
				case <-time.After(patience):
					shut.Store(false)
					require.Fail(t, "it waits for a terminal that nobody reads")
				}
				shut.Store(false)
				require.Len(t, h.journals(t), 1)
				work, err := os.ReadFile(h.journals(t)[0])
				require.NoError(t, err)
				assert.InDelta(t, killStep, moved(t, work, cutAt(t, text)), 0.01)
			})
		}
	}
}
