//go:build !windows

package main

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// anyNamed are keys as a terminal sends them: arrows, Enter, Esc, Tab and back, deleting, Home, End, pages, undo, redo, wiping, saving.
var anyNamed = []string{
	"\x1b[A", "\x1b[B", "\x1b[C", "\x1b[D", "\r", "\r", "\x1b", "\t", "\x1b[Z", "\x7f", "\x1b[3~", "\x1b[H", "\x1b[F", "\x1b[5~", "\x1b[6~",
	"\x1a", "\x19", "\x15", "\x17", "\x0b", "\x13",
}

// anyModified are arrows, Home and Enter with Shift, Alt or Ctrl held (xterm's control sequences), and a key of functions.
var anyModified = []string{"\x1b[1;2A", "\x1b[1;2C", "\x1b[1;3B", "\x1b[1;5A", "\x1b[1;5C", "\x1b[1;5D", "\x1b[1;6D", "\x1b[1;5H", "\x1b\r", "\x1b[15~"}

// anything is what a hand may do to a terminal of that size without thinking: a key, a tap, a turn of the wheel, a paste. It never
// types a slash: names of files stay in the folder that the program was started in.
func anything(draw *rand.Rand, cols, rows int) string {
	mouse := func(button int, end string) string {
		return fmt.Sprintf("\x1b[<%d;%d;%d%s", button, 1+draw.IntN(cols), 1+draw.IntN(rows), end)
	}
	const letters = "abcdefghijklmnopqrstuvwxyzABLRJ+,.<>?!-; '\"[]"
	switch draw.IntN(14) {
	case 0, 1, 2, 3:
		return anyNamed[draw.IntN(len(anyNamed))]
	case 10:
		return anyModified[draw.IntN(len(anyModified))]
	case 11: // the left button goes down, is dragged and let go (32 says that it moves); or the middle or the right one is pressed
		if other := draw.IntN(4); other < 2 {
			return mouse(1+other, "M") + mouse(1+other, "m")
		}
		return mouse(0, "M") + mouse(32, "M") + mouse(32, "M") + mouse(0, "m")
	case 4:
		tap := mouse(0, "M")
		return tap + strings.TrimSuffix(tap, "M") + "m"
	case 5:
		return mouse(64+draw.IntN(4), "M")
	case 6, 7, 8:
		return string(letters[draw.IntN(len(letters))])
	case 9:
		if draw.IntN(8) == 0 {
			return pasted("652\r+84\r\a\x1b[31m\u202e-850\r")
		}
	}
	return strconv.Itoa(draw.IntN(10))
}

// hand is somebody at the program in a terminal who presses anything.
type hand struct {
	*terminal
	h     home
	dir   string // where the program was started
	begun []byte // the job it was started on, as its file has it
	view  *beyond
	draw  *rand.Rand
	last  []string // what was pressed last
	told  screentest.Told
}

// begins starts the program on the job in a folder.
func (p *hand) begins(t *testing.T, cols, rows int) {
	p.terminal = p.h.begin(t, &terminal{folder: p.dir}, cols, rows, filepath.Base(p.file(t)))
	p.wait(t, "Under")
	p.quiet(still)
	var err error
	p.begun, err = os.ReadFile(p.file(t))
	require.NoError(t, err)
	p.view = p.anew()
	p.view.from = 0
}

const still = 40 * time.Millisecond // no key takes so long where nothing is searched for

// file is the job that was saved last: an answer may have given it another name.
func (p *hand) file(t *testing.T) (newest string) {
	var latest time.Time
	entries, err := os.ReadDir(p.dir)
	require.NoError(t, err)
	for _, e := range entries {
		info, err := e.Info()
		require.NoError(t, err)
		if strings.Contains(e.Name(), ".before") || strings.HasSuffix(e.Name(), ".pdf") || info.Mode()&os.ModeType != 0 || info.Size() == 0 {
			continue
		}
		if info.ModTime().After(latest) {
			newest, latest = filepath.Join(p.dir, e.Name()), info.ModTime()
		}
	}
	return newest
}

// presses does anything so many times, and looks at the screen every few.
func (p *hand) presses(t *testing.T, n int) {
	for i := range n {
		key := anything(p.draw, p.screen.Width(), p.screen.Height())
		p.last = append(p.last[max(0, len(p.last)-30):], key)
		if _, err := p.tty.WriteString(key); err != nil || p.gone() {
			return
		}
		if key == "\x1b" {
			time.Sleep(still) // what follows at once would belong to it
		}
		if i%5 == 4 {
			p.quiet(still)
			p.unbroken(t)
			if p.over() {
				return // what is said at the end is no picture: the terminal breaks its lines
			}
			p.within(t, p.view, p.about())
		}
	}
}

// unbroken holds that the program has not broken down: what it writes then is shown.
func (p *hand) unbroken(t *testing.T) {
	if _, trace, broken := strings.Cut(p.output(), "goroutine "); broken {
		require.Fail(t, "the program broke down", "%s\n%s\n%s", p.about(), p.output()[max(0, len(p.output())-len(trace)-500):], p.picture())
	}
}

// over tells whether the program was left by a key: it has given the terminal its own screen back, and ends.
func (p *hand) over() bool {
	out := p.output()
	back := strings.LastIndex(out, ansi.ResetModeAltScreenSaveCursor) > strings.LastIndex(out, ansi.SetModeAltScreenSaveCursor)
	return p.gone() || back && p.comes(patience, p.gone)
}

// about says what was pressed last.
func (p *hand) about() string { return fmt.Sprintf("after %q", p.last) }

func (p *hand) gone() bool {
	select {
	case <-p.done:
		return true
	default:
		return false
	}
}

// out leaves whatever is open.
func (p *hand) out(t *testing.T) {
	for range 8 {
		if p.over() {
			return
		}
		p.keys(t, "\x1b")
		p.quiet(still)
	}
}

// dirty tells whether the header says that something is not saved.
func (s *terminal) dirty() bool {
	return strings.Contains(strings.SplitN(s.picture(), "\n", 2)[0], "●")
}

// saves saves what there is; what can't be saved as it is is taken back first. Once pressed it must save: Esc and Ctrl-S that are read as one
// would be another key, so that it comes a moment after.
func (p *hand) saves(t *testing.T) {
	const refused, mostBack = "The job can't be saved as it is", 300
	p.out(t)
	time.Sleep(5 * still)
	for back := 0; back < mostBack; {
		if p.over() {
			return
		}
		p.keys(t, "\x13")
		p.comes(2*time.Second, func() bool { return !p.dirty() || strings.Contains(p.picture(), refused) })
		switch {
		case !p.dirty():
			return
		case strings.Contains(p.picture(), refused):
			back++
			p.keys(t, "1")
			p.quiet(still)
		default:
			require.Fail(t, "it is not saved", "%s\n%s", p.about(), p.picture())
		}
	}
	require.Fail(t, "nothing of it can be saved", "%s\n%s", p.about(), p.picture())
}

var placeShown = regexp.MustCompile(`x (-?[\d.]+), ([\d.]+)\s+mm (left|right)`)

// agrees holds that what the screen says of the saved job is what the file and the command say, and returns whether it says a place.
func (p *hand) agrees(t *testing.T) (placed bool) {
	file := p.file(t)
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	job, err := vehicles.ParseJob(text, file, rules.Builtin())
	require.NoError(t, err, p.about())
	require.Equal(t, string(text), string(job.Format()), "it reads back; %s", p.about())
	p.keys(t, "4")
	p.quiet(2 * still)
	p.keys(t, "\x1b") // a prompt that was left open there
	p.quiet(2 * still)

	check := exec.Command(program, "check", "--json", file)
	check.Env = p.h.env()
	out, _ := check.Output() // its code is that of the verdict
	var said struct{ Findings []struct{ Verdict string } }
	require.NoError(t, json.Unmarshal(out, &said), p.about())
	result, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	require.Len(t, said.Findings, len(result.Findings), p.about())
	for i, f := range said.Findings {
		require.Equal(t, result.Findings[i].Verdict.String(), f.Verdict, p.about())
	}
	placed = p.placedAs(t, job)
	p.told.Judge(job, result)
	p.told.Settings = p.settings(t)
	for _, screen := range "17" {
		p.keys(t, string(screen))
		p.quiet(2 * still)
		wrong := p.told.Disagrees(strings.Split(p.picture(), "\n"))
		require.Empty(t, wrong, "%s\n%s", p.about(), p.picture())
	}
	return placed
}

// settings are those that the screens are shown with.
func (p *hand) settings(t *testing.T) desk.Settings {
	set, err := desk.LoadSettings(filepath.Join(p.h.dir, "config", "undermark", "settings.toml"))
	require.NoError(t, err)
	return set
}

// placedAs holds the place that the screen says, where it does in mm, against the job.
func (p *hand) placedAs(t *testing.T, job vehicles.Job) bool {
	shown := placeShown.FindStringSubmatch(p.picture())
	if shown == nil || job.Cut == nil || job.Cut.Drilled != nil {
		return false
	}
	for i, sign := range []float64{1, map[string]float64{"left": 1, "right": -1}[shown[3]]} {
		got, err := strconv.ParseFloat(shown[i+1], 64)
		require.NoError(t, err)
		require.InDelta(t, job.Cut.At[i], sign*got, 0.051, "%s; %s", shown[0], p.about())
	}
	return true
}

// takesBack undoes all that was done and saves: the file is what it was, and the screen says what is said of that.
func (p *hand) takesBack(t *testing.T) {
	p.out(t)
	for n := 0; !strings.Contains(p.picture(), "nothing to undo"); n++ {
		require.Less(t, n, 400, "undo comes to an end; %s", p.about())
		p.keys(t, strings.Repeat("\x1a", 10))
		p.quiet(still)
	}
	p.saves(t)
	text, err := os.ReadFile(p.file(t))
	require.NoError(t, err)
	require.Equal(t, string(p.begun), string(text), p.about())
	p.agrees(t)
}

// leaves quits and returns the exit code; a job that holds what was refused asks once more.
func (p *hand) leaves(t *testing.T) int {
	p.keys(t, "\x03")
	if p.comes(patience, func() bool {
		return p.gone() || strings.Contains(p.picture(), "Not everything that was typed is in the job")
	}) && !p.gone() {
		p.keys(t, "1")
	}
	return p.ended(t)
}

// anyJobs are the jobs that anything is done to.
func anyJobs(t *testing.T) [][]byte {
	jobs := [][]byte{vehicles.Demo().Format(), vehicles.NewJob("TL-07").Format(), []byte(hostileJob(t))}
	for _, name := range []string{"24-everything.toml", "18-muffler-and-clips.toml", "21-fuel-and-pump.toml"} {
		text, err := os.ReadFile(filepath.Join(cases, name))
		require.NoError(t, err)
		jobs = append(jobs, text)
	}
	for i, text := range jobs {
		job, err := vehicles.ParseJob(text, "job", rules.Builtin())
		require.NoError(t, err)
		jobs[i] = job.Format()
	}
	return jobs
}

// Whatever is pressed, tapped or pasted in a real terminal: the program lives or was left in good order, writes nothing beside the screen, what it
// saves reads back and is what it shows, and undo goes back to where it began. KEYS=10000 go test ./cmd/undermark -run AnyKeys -v -timeout 0 makes a long round; KEYS_SEED draws another.
func TestAnyKeysInATerminal(t *testing.T) {
	t.Parallel()
	notRaced(t)
	const turn = 60 // how many things are done before they are saved
	events, seed := fromEnv(t, "KEYS", 240), fromEnv(t, "KEYS_SEED", 1)
	draw, h, jobs := rand.New(rand.NewPCG(uint64(seed), 1)), readHome(t), anyJobs(t)
	var saved, placed, taken, left int
	var told screentest.Told
	for done, round := 0, 0; done < events; round++ {
		size := [][2]int{{100, 30}, {60, 20}, {160, 50}, {84, 24}}[round%4]
		p := &hand{h: h, dir: t.TempDir(), draw: draw}
		require.NoError(t, os.WriteFile(filepath.Join(p.dir, "van.toml"), jobs[round%len(jobs)], 0o600))
		p.begins(t, size[0], size[1])
		for range 2 {
			p.presses(t, turn)
			done += turn
			p.saves(t)
			if p.over() {
				break
			}
			saved++
			if p.agrees(t) {
				placed++
			}
		}
		told.Headings, told.Things, told.Findings = told.Headings+p.told.Headings, told.Things+p.told.Things, told.Findings+p.told.Findings
		if p.over() {
			require.Zero(t, p.ended(t), "%s\n%s", p.about(), p.picture())
			left++
			continue
		}
		p.takesBack(t)
		taken++
		require.Zero(t, p.leaves(t), p.about())
	}
	t.Logf("%d events, seed %d: saved and compared %d times, with a place %d times, all taken back %d times, left by a key %d times; %d tallies, %d rows of things, %d of findings were the file's",
		events, seed, saved, placed, taken, left, told.Headings, told.Things, told.Findings)
	for _, n := range []int{told.Headings, told.Things, told.Findings} {
		require.Positive(t, n)
	}
	require.Positive(t, taken)
	require.Positive(t, placed)
}
