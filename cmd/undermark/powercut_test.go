//go:build linux

package main

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// tracer is the program that writes down what another asks of its system.
func tracer(t *testing.T, log string) []string {
	notRaced(t)
	strace, err := exec.LookPath("strace")
	if err != nil {
		t.Skip("strace writes down what the program asks of its disk; it is not here")
	}
	if out, err := exec.Command(strace, "-o", os.DevNull, "true").CombinedOutput(); err != nil {
		t.Skipf("nothing may be traced here: %s", out)
	}
	return []string{strace, "-f", "--seccomp-bpf", "-ttt", "-y", "-xx", "-s", "1048576", "-o", log, "-e", "trace=" + traceCalls}
}

// promise is what must hold from a moment on, wherever the power is cut.
type promise struct {
	from     float64 // seconds since 1970
	least    int     // the version that is found again: this or a later one
	answered bool    // all is saved: no journal is there again
}

// day is a piece of work whose disk is watched.
type day struct {
	home
	*terminal
	file     string
	versions []string // the place of the cut in each version of the job, in order
	ticked   []string // what the file of the ticked marks held, in order
	promised []promise
}

// A power cut at any moment leaves the job file as it was or as it became, and work that has been on the screen for a moment
// in it or in the journal. What the disk was not asked to keep it may forget, tear or keep in another order.
func TestAPowerCutLosesNothing(t *testing.T) {
	t.Parallel()
	log := filepath.Join(t.TempDir(), "calls")
	d := &day{home: newHome(t), terminal: &terminal{through: tracer(t, log)}}
	d.file = filepath.Join(d.dir, "van.toml")
	text, err := os.ReadFile(filepath.Join(cases, "01-wide-floor.toml"))
	require.NoError(t, err)
	text = append([]byte("# by hand\n"), text...)
	require.NoError(t, os.WriteFile(d.file, text, 0o644))
	d.versions = []string{placeOf(t, text)}
	disk := diskOf(t, d.dir)

	d.begin(t, d.terminal, 120, 40, d.file)
	d.wait(t, "Read this before working on a van")
	d.readOn(t)
	d.wait(t, "[1 Underneath]")
	d.keys(t, "4")
	for range 2 {
		d.edit(t)
		d.edit(t)
		d.save(t)
	}
	d.edit(t)
	d.save(t)
	d.keys(t, "6")
	d.wait(t, "is there any")
	d.keys(t, "l", "\r") // left open
	d.readOn(t)
	for range 3 {
		d.tick(t)
	}
	assert.Zero(t, d.quit(t))
	calls, err := os.ReadFile(log)
	require.NoError(t, err)
	d.cutEverywhere(t, disk, text, traced(t, calls))
}

func placeOf(t *testing.T, text []byte) string {
	job, err := vehicles.ParseJob(text, "job")
	require.NoError(t, err)
	return fmt.Sprint(job.Cut.At)
}

// holds promises, from now on, what the fitter has been shown.
func (d *day) holds(answered bool) {
	d.promised = append(d.promised, promise{float64(time.Now().UnixMicro()) / 1e6, len(d.versions) - 1, answered})
}

// edit moves the cut and waits until the work is in the journal.
func (d *day) edit(t *testing.T) {
	d.holds(false)
	d.keys(t, "\x1b[C")
	require.True(t, d.comes(patience, func() bool {
		for _, journal := range d.journals(t) {
			text, err := os.ReadFile(journal)
			if place := placeOf(t, text); err == nil && !slices.Contains(d.versions, place) {
				d.versions = append(d.versions, place)
				return true
			}
		}
		return false
	}), "the edit is in the journal")
	time.Sleep(atWork)
	d.holds(false)
}

// atWork is how long a write may take that has begun: the fitter may count on nothing earlier.
const atWork = 300 * time.Millisecond

// save saves and waits until nothing is left in the journal.
func (d *day) save(t *testing.T) {
	d.keys(t, "\x13")
	require.True(t, d.comes(patience, func() bool {
		text, err := os.ReadFile(d.file)
		return err == nil && placeOf(t, text) == d.versions[len(d.versions)-1] && len(d.journals(t)) == 0
	}), "saved")
	time.Sleep(atWork)
	d.holds(true)
}

// tick ticks the next mark, and waits until that is on the disk.
func (d *day) tick(t *testing.T) {
	time.Sleep(bounce)
	d.keys(t, "\r")
	require.True(t, d.comes(patience, func() bool {
		files, _ := filepath.Glob(filepath.Join(d.dir, "state", "undermark", "ticks", "*.toml")) // the pattern is well formed
		for _, file := range files {
			if text, err := os.ReadFile(file); err == nil && !slices.Contains(d.ticked, string(text)) {
				d.ticked = append(d.ticked, string(text))
				return true
			}
		}
		return false
	}), d.picture())
}

// cutEverywhere cuts the power after each call, in every way, and looks what is there then.
func (d *day) cutEverywhere(t *testing.T, disk *forgetful, original []byte, calls []sysCall) {
	tried := map[string]bool{}
	for i, c := range calls {
		disk.does(t, c)
		until := c.when
		if i+1 < len(calls) {
			until = calls[i+1].when
		}
		holds := promise{}
		for _, p := range d.promised {
			if p.from < until {
				holds = p
			}
		}
		for files := range disk.cuts(uint64(i)) {
			if state := stateOf(files, holds); !tried[state] {
				tried[state] = true
				d.whole(t, files, original, holds)
			}
		}
	}
	require.Greater(t, len(tried), 50, "states of the disk")
	require.Greater(t, len(d.ticked), 2)
	t.Logf("%d calls, %d states of the disk", len(calls), len(tried))
}

// stateOf tells states of a disk from each other.
func stateOf(files map[string][]byte, p promise) string {
	sum := sha256.New()
	fmt.Fprintln(sum, p.least, p.answered)
	for _, path := range slices.Sorted(maps.Keys(files)) {
		fmt.Fprintf(sum, "%q %q\n", path, files[path])
	}
	return string(sum.Sum(nil))
}

// whole looks at what a power cut left.
func (d *day) whole(t *testing.T, files map[string][]byte, original []byte, p promise) {
	job := files[d.file]
	require.NotNil(t, job, "the job file is there")
	newest := slices.Index(d.versions, placeOf(t, job))
	require.GreaterOrEqual(t, newest, 0, "the job file is one that was saved")
	if !bytes.Equal(job, original) {
		require.Equal(t, string(original), string(files[d.file+".before"]), "what the file held before is beside it")
	}
	for path, text := range files {
		folder := filepath.Base(filepath.Dir(path))
		if filepath.Ext(path) != ".toml" || filepath.Base(path)[0] == '.' {
			continue
		}
		if folder == "ticks" {
			require.Contains(t, d.ticked, string(text), "the ticks are as they were or as they became")
		}
		if folder != "journal" {
			continue
		}
		kept := slices.Index(d.versions, placeOf(t, text))
		require.GreaterOrEqual(t, kept, 0, "the journal holds work that was done")
		require.Contains(t, string(text), "# begun from sha256 ")
		require.False(t, p.answered, "a journal is there again after all was saved")
		newest = max(newest, kept)
	}
	require.GreaterOrEqual(t, newest, p.least, "work that was safe is found again")
}
