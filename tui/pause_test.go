package tui

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// unkeptAtMost is how old work may become that is in memory alone, on a machine that takes no time: half of the second that a kill may cost is left to those
// that do, and their disks.
const unkeptAtMost = time.Second / 2

// loose is a program whose commands run beside it, as they do in a terminal; its clock is the bubble's.
type loose struct {
	*Root
	done chan tea.Msg
}

func (l *loose) send(msg tea.Msg) {
	_, cmd := l.Update(msg)
	l.run(cmd)
}

func (l *loose) run(cmd tea.Cmd) {
	if cmd != nil {
		go func() { l.done <- cmd() }()
	}
}

// until takes what commands come back with, up to a moment.
func (l *loose) until(moment time.Time) {
	for {
		select {
		case msg := <-l.done:
			if all, several := msg.(tea.BatchMsg); several {
				for _, cmd := range all {
					l.run(cmd)
				}
			} else if msg != nil {
				l.send(msg)
			}
		case <-time.After(time.Until(moment)):
			return
		}
	}
}

// kept is how many of the edits, each a letter in the notes, are on the disk.
func (l *loose) kept(t *testing.T) int {
	text, err := os.ReadFile(l.journal.path)
	if os.IsNotExist(err) {
		return 0
	}
	require.NoError(t, err)
	job, err := vehicles.ParseJob(text, l.journal.path)
	require.NoError(t, err)
	return strings.Count(job.Notes, "m")
}

// However edits follow one another, in a row that does not end or hours apart, at no moment is work nowhere but in memory that is older than that. The clock is a
// model's: it moves on once everything waits, so that a slow machine changes nothing of what comes out.
func TestAtNoMomentIsUnkeptWorkOld(t *testing.T) {
	for name, apart := range map[string]time.Duration{"held": time.Second / 30, "tapped": time.Second / 2, "now and then": time.Minute} {
		t.Run(name, func(t *testing.T) { synctest.Test(t, func(t *testing.T) { unkept(t, apart) }) })
	}
}

func unkept(t *testing.T, apart time.Duration) {
	o := options(t)
	require.NoError(t, os.MkdirAll(filepath.Dir(o.Path), 0o700))
	require.NoError(t, os.WriteFile(o.Path, vehicles.NewJob("TL-07").Format(), 0o600))
	root, err := New(o)
	require.NoError(t, err)
	l := &loose{Root: root, done: make(chan tea.Msg)}
	l.run(root.Init())
	l.until(time.Now().Add(time.Minute))
	require.NotNil(t, l.journal)
	defer func() { l.journal.close() }()
	l.send(tea.WindowSizeMsg{Width: 100, Height: 30})
	draw := rand.New(rand.NewPCG(1, 0))
	var edits []time.Time
	const look = 50 * time.Millisecond
	for len(edits) < 60 {
		l.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("m")})
		edits = append(edits, time.Now())
		next := time.Now().Add(1 + time.Duration(draw.Int64N(int64(2*apart))))
		for time.Now().Before(next) {
			l.until(time.Now().Add(min(look, time.Until(next))))
			if n := l.kept(t); n < len(edits) {
				require.LessOrEqual(t, time.Since(edits[n]), unkeptAtMost, "edit %d of %d is not kept", n+1, len(edits))
			}
			if time.Since(edits[len(edits)-1]) > 2*unkeptAtMost {
				l.until(next)
			}
		}
	}
	require.Len(t, edits, strings.Count(l.desk.State.Job.Notes, "m"))
	l.until(time.Now().Add(time.Minute))
}
