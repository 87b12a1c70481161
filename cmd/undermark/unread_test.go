//go:build !windows

package main

import (
	"os"
	"strings"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

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
				edit, fill := strings.Join(editKeys, ""), strings.Repeat("5678", 250)
				if args != nil {
					s.keys(t, edit) // lines are taken in their order: no key is heard before all is said of the last
					require.True(t, s.comes(patience, func() bool { return len(h.journals(t)) == 1 }))
					edit = ""
				}
				shut.Store(true)
				s.keys(t, fill)
				time.Sleep(20 * still)
				s.keys(t, edit)
				require.True(t, s.comes(9*patience, func() bool { return len(h.journals(t)) == 1 }), "a slow machine comes to it, too")
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
				kept, err := os.ReadFile(h.journals(t)[0])
				require.NoError(t, err)
				assert.InDelta(t, killStep, moved(t, kept, cutAt(t, text)), 0.01)
			})
		}
	}
}
