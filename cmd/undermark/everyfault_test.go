//go:build linux && amd64

package main

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"

	"bench.example/undermark/vehicles"
)

// refusals are what a disk answers, and what is said of it.
var refusals = []struct {
	errno unix.Errno
	says  string
}{
	{unix.ENOSPC, "no space is left there"}, {unix.EROFS, "the disk can only be read"}, {unix.EDQUOT, "quota exceeded"}, {unix.EIO, "input/output error"},
}

// refused is one call that a disk refuses, alone; 0 is none.
type refused struct {
	call int
	with int // of the refusals
}

// chosen are calls of n to refuse, with each refusal: all with FAULTS=all, else so many drawn by FAULTS_SEED.
func chosen(t *testing.T, n, few int) (all []refused) {
	for call := 1; call <= n; call++ {
		for with := range refusals {
			all = append(all, refused{call, with})
		}
	}
	if os.Getenv("FAULTS") == "all" {
		return all
	}
	draw := rand.New(rand.NewPCG(uint64(fromEnv(t, "FAULTS_SEED", 1)), 4))
	draw.Shuffle(len(all), func(i, k int) { all[i], all[k] = all[k], all[i] })
	return all[:min(few, len(all))]
}

// oneOfEach is one call of each file that is written, refused in each way in turn: that which gives it its name, or that which fills the copy of what it held.
func oneOfEach(root string, calls []fileCall) (all []refused) {
	seen := map[string]bool{}
	for i, c := range calls {
		what := c.about(root)
		if c.name == "rename" || c.name == "write" && strings.HasSuffix(c.path, ".before") {
			if !seen[what] {
				all = append(all, refused{i + 1, len(all) % len(refusals)})
			}
			seen[what] = true
		}
	}
	return all
}

// drawnName is the part of a name that is drawn anew each time.
var drawnName = regexp.MustCompile(`\d{4,}$|[0-9a-f]{20}`)

// about is a call as a table has it: below the fitter's folder, without what is drawn.
func (c fileCall) about(root string) string {
	return c.name + " " + drawnName.ReplaceAllString(strings.TrimPrefix(c.path, root+"/"), "*")
}

// workday is a piece of work on a disk that refuses one call.
type workday struct {
	home
	*terminal
	file, log string
	says      string // what is said of the refusal
	told      bool   // it was said
}

// dayOn begins it, in a folder of its own that is like another; 0 calls are refused: it is only looked how many there are.
func dayOn(t *testing.T, like home, r refused) *workday {
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(dir, os.DirFS(like.dir)))
	for _, made := range []string{"config", "state/undermark/journal", "state/undermark/ticks"} {
		require.NoError(t, os.RemoveAll(filepath.Join(dir, made)))
	}
	d := &workday{home: home{dir}, file: filepath.Join(dir, "van.toml"), log: filepath.Join(t.TempDir(), "calls"), says: refusals[r.with].says}
	text, err := os.ReadFile(filepath.Join(cases, "01-wide-floor.toml"))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(d.file, append([]byte("# by hand\n"), text...), 0o644))
	d.terminal = &terminal{through: tampered(t, dir, d.log, r.call, fmt.Sprint(int(refusals[r.with].errno)))}
	d.begin(t, d.terminal, 120, 40, d.file)
	return d
}

// shows is the picture as running text.
func (d *workday) shows() string {
	return strings.Join(strings.Fields(strings.ReplaceAll(d.picture(), "│", " ")), " ")
}

// until waits for what is wanted, or for the complaint, and tells whether it was that. What is asked then is answered: go on.
func (d *workday) until(t *testing.T, what string, wanted func() bool) (complained bool) {
	t.Helper()
	complaint := func() bool { return !d.told && strings.Contains(d.shows(), d.says) }
	if !d.comes(patience, func() bool { complained = complaint(); return complained || wanted() }) {
		require.Fail(t, "never came: "+what, d.picture())
	}
	d.told = d.told || complained
	if complained {
		d.quiet(still)
		for _, answer := range []string{"2 Go on", "1 Go on"} {
			if strings.Contains(d.shows(), answer) {
				d.keys(t, answer[:1])
				d.quiet(still)
			}
		}
	}
	return complained
}

// does presses keys until what they are for is there; once more where the disk refused: it refuses but once.
func (d *workday) does(t *testing.T, what string, wanted func() bool, keys ...string) {
	t.Helper()
	d.keys(t, keys...)
	if d.until(t, what, wanted) && !wanted() {
		time.Sleep(takenIn)
		d.keys(t, keys[len(keys)-1])
		d.until(t, what+", again", wanted)
	}
}

func (d *workday) cutIn(t *testing.T, path string) float64 {
	text, err := os.ReadFile(path)
	if err != nil {
		return -1
	}
	return cutAt(t, text)[0]
}

func present(path string) bool { _, err := os.Stat(path); return err == nil }

// works goes through all that writes: an edit, a save over a file with comments, a setting, a mark that is ticked, a paper, another edit, and a save elsewhere, on a disk that
// refuses nothing.
func (d *workday) works(t *testing.T) {
	const step = 10 // mm
	begun := d.cutIn(t, d.file)
	d.until(t, "the first screen", func() bool { return strings.Contains(d.picture(), "[1 Underneath]") })
	d.until(t, "it is quiet", func() bool { d.quiet(2 * still); return true })
	journal := func(steps float64) func() bool {
		return func() bool {
			return slices.ContainsFunc(d.journals(t), func(j string) bool { return d.cutIn(t, j) == begun+steps*step }) || strings.Contains(d.shows(), "in this window only")
		}
	}
	d.keys(t, "4")
	d.until(t, "Place", func() bool { return strings.Contains(d.picture(), "[4 Place]") })
	d.keys(t, "\x1b[C")
	d.until(t, "the journal", journal(1))
	d.does(t, "saved", func() bool { return d.cutIn(t, d.file) == begun+step && !d.dirty() }, "\x13")
	d.does(t, "the settings", func() bool { return present(filepath.Join(d.dir, "config", "undermark", "settings.toml")) }, "b")
	d.readsOfDrilling(t)
	d.does(t, "ticked", func() bool {
		all, _ := filepath.Glob(filepath.Join(d.dir, "state/undermark/ticks/*.toml")) // the pattern is well formed
		return len(all) == 1
	}, "\r")
	d.does(t, "printed", func() bool { return present(strings.TrimSuffix(d.file, ".toml") + "-template.pdf") }, "8", "t")
	d.keys(t, "4", "\x1b[C")
	d.until(t, "the journal again", journal(2))

	elsewhere := filepath.Join(t.TempDir(), "v.toml")
	d.keys(t, "8", "w")
	d.until(t, "its name is asked", func() bool { return strings.Contains(d.picture(), "in which file?") })
	d.keys(t, "\x15", elsewhere, "\r")
	d.until(t, "saved elsewhere", func() bool { return present(elsewhere) && !d.dirty() })
	d.quiet(5 * still)
	d.until(t, "what else there is to say", func() bool { return true })
	assert.Zero(t, d.quit(t))
	d.whole(t, elsewhere, begun+2*step)
	d.whole(t, d.file, begun+step)
}

// readsOfDrilling goes to the first mark: what was not looked for is left open, the cautions are read.
func (d *workday) readsOfDrilling(t *testing.T) {
	const title = "Read this before drilling"
	for _, step := range [][2]string{{"6", "leave open"}, {"l", "read the cautions and start"}, {"\r", title}} {
		d.keys(t, step[0])
		d.until(t, step[1], func() bool { return strings.Contains(d.picture(), step[1]) })
	}
	for strings.Contains(d.picture(), title) {
		d.keys(t, "\r")
		d.quiet(2 * still)
	}
	time.Sleep(takenIn)
}

// whole holds that a file is a whole job with the cut at that place.
func (d *workday) whole(t *testing.T, path string, at float64) {
	document, err := vehicles.Load(path)
	require.NoError(t, err)
	assert.Equal(t, at, document.Job.Cut.At[0], path)
}

// unsaid is why nobody need hear that a call was refused, "" where somebody must.
func unsaid(c fileCall) string {
	switch {
	case c.name == "fsync":
		return "not every file system can be asked to hold the names of a folder, and a file is whole either way" // of files it is told
	case c.name == "unlink" && strings.Contains(c.path, "/journal/"):
		return "a journal that stays has what is saved: it is written over, or not offered"
	case strings.HasSuffix(c.path, ".lock") && strings.Contains(c.path, "/journal/"):
		return "another journal is taken; a lock file that stays holds nobody off"
	}
	return ""
}

// Each call by which the program changes a file is refused, alone: the fitter reads why, all is done once the disk lets it, and the whole job is saved elsewhere. FAULTS=all goes through every
// call with every refusal; else one of each file is, and a few are drawn by FAULTS_SEED.
func TestEachCallThatADiskRefuses(t *testing.T) {
	mayBeTampered(t)
	t.Parallel()
	like := readHome(t)
	d := dayOn(t, like, refused{})
	d.works(t)
	calls := fileCalls(t, d.log)
	require.Greater(t, len(calls), 30)
	round := oneOfEach(d.dir, calls)
	require.GreaterOrEqual(t, len(round), 6, "journal, what the file held, job, settings, ticks, paper")
	for _, r := range chosen(t, len(calls), 2) {
		if !slices.Contains(round, r) {
			round = append(round, r)
		}
	}
	var lock sync.Mutex
	table := map[string][]string{}
	t.Run("each", func(t *testing.T) {
		for _, r := range round {
			t.Run(fmt.Sprintf("%d %v", r.call, refusals[r.with].errno), func(t *testing.T) {
				t.Parallel()
				d := dayOn(t, like, r)
				d.works(t)
				made := fileCalls(t, d.log)
				require.GreaterOrEqual(t, len(made), r.call)
				call := made[r.call-1]
				lock.Lock()
				defer lock.Unlock()
				table[call.about(d.dir)] = append(table[call.about(d.dir)], fmt.Sprint(refusals[r.with].errno.Error(), map[bool]string{true: ": told", false: ": not told"}[d.told]))
				if !d.told && unsaid(call) == "" {
					assert.Fail(t, "nobody was told", "%v", call)
				}
			})
		}
	})
	for _, call := range slices.Sorted(func(yield func(string) bool) {
		for c := range table {
			if !yield(c) {
				return
			}
		}
	}) {
		t.Logf("%-60s %s", call, strings.Join(table[call], "; "))
	}
}

// One lock file that the disk refuses is no reason to keep no journal: the next is taken, and nothing is said.
func TestAJournalThatTheDiskRefusesIsPassedOver(t *testing.T) {
	mayBeTampered(t)
	t.Parallel()
	like := readHome(t)
	d := dayOn(t, like, refused{})
	d.wait(t, "[1 Underneath]")
	require.Zero(t, d.quit(t))
	at := slices.IndexFunc(fileCalls(t, d.log), func(c fileCall) bool { return c.name == "open" && strings.HasSuffix(c.path, "-1.toml.lock") })
	require.GreaterOrEqual(t, at, 0)
	d = dayOn(t, like, refused{call: at + 1, with: 1})
	d.wait(t, "[1 Underneath]")
	d.quiet(2 * still)
	assert.NotContains(t, d.shows(), "kept safe")
	d.keys(t, editKeys...)
	require.True(t, d.comes(patience, func() bool { return len(d.journals(t)) == 1 }), d.picture())
	assert.Contains(t, d.journals(t)[0], "-2.toml")
}

// So for the commands that write a file: the answer is one line, exit code 1, what was there stays, and no other file is left beside it.
func TestEachCallOfACommandThatADiskRefuses(t *testing.T) {
	mayBeTampered(t)
	t.Parallel()
	h := newHome(t)
	for _, command := range [][]string{
		{"new", "OUT.toml"}, {"new", "--van", "long-van", "OUT.toml"}, {"new", "--from", "van.toml", "OUT.toml"}, {"sheet", "van.toml", "-o", "OUT.pdf"}, {"template", "van.toml", "-o", "OUT.pdf"},
		{"plan", "van.toml", "-o", "OUT.svg"}, {"check", "van.toml", "-o", "OUT.txt"}, {"cutlist", "--json", "van.toml", "-o", "OUT.json"},
	} {
		name := strings.Join(command, " ")
		_, _, calls := h.refuses(t, command, refused{})
		require.GreaterOrEqual(t, len(calls), 4, name)
		for _, r := range chosen(t, len(calls), 3) {
			code, complaint, made := h.refuses(t, command, r)
			call := made[r.call-1]
			if code != exitFailed {
				assert.NotEmpty(t, unsaid(call), "%s: %v", name, call)
				continue
			}
			assert.Equal(t, 1, strings.Count(complaint, "\n"), "%s: %v: %s", name, call, complaint)
			assert.Contains(t, complaint, refusals[r.with].says, "%s: %v", name, call)
		}
	}
}

// refuses runs a command in a folder of its own, and holds what it leaves there.
func (h home) refuses(t *testing.T, command []string, r refused) (code int, complaint string, calls []fileCall) {
	dir, log := t.TempDir(), filepath.Join(t.TempDir(), "calls")
	require.NoError(t, os.WriteFile(filepath.Join(dir, "van.toml"), vehicles.Demo().Format(), 0o600))
	line := append(tampered(t, dir, log, r.call, fmt.Sprint(int(refusals[r.with].errno))), program)
	for _, word := range command {
		if strings.HasPrefix(word, "OUT") {
			word = filepath.Join(dir, word)
		}
		line = append(line, word)
	}
	c := exec.Command(line[0], line[1:]...)
	var said bytes.Buffer
	c.Dir, c.Env, c.Stderr = dir, h.env(), &said
	_ = c.Run() // the code says it
	code, calls = c.ProcessState.ExitCode(), fileCalls(t, log)
	left, err := os.ReadDir(dir)
	require.NoError(t, err)
	require.Len(t, left, map[bool]int{true: 1, false: 2}[code == exitFailed], "%v leaves %v", command, left)
	return code, said.String(), calls
}
