//go:build !windows

package main

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
)

// The windows that a storm goes through.
const mostCols, mostRows = 200, 60

// anySize is a window: the least, the largest, one or two cells, a row or a column, or anything between.
func anySize(draw *rand.Rand) (cols, rows int) {
	cols, rows = 1+draw.IntN(mostCols), 1+draw.IntN(mostRows)
	switch draw.IntN(8) {
	case 0:
		return 1, 1
	case 1:
		return mostCols, mostRows
	case 2:
		return cols, 1
	case 3:
		return 1, rows
	case 4:
		return 1 + draw.IntN(4), 1 + draw.IntN(4)
	}
	return cols, rows
}

// storms turns the window through so many sizes, waiting for none of them, while keys, taps and pastes arrive.
func (p *hand) storms(t *testing.T, sizes int) {
	for range sizes {
		cols, rows := anySize(p.draw)
		p.resize(t, cols, rows)
		for range p.draw.IntN(4) {
			key := anything(p.draw, cols, rows)
			p.last = append(p.last[max(0, len(p.last)-30):], fmt.Sprintf("%dx%d %q", cols, rows, key))
			if _, err := p.tty.WriteString(key); err != nil || p.over() {
				return
			}
		}
		time.Sleep(time.Duration(p.draw.IntN(6)) * time.Millisecond)
	}
}

// anewPainted has the program paint all of its screen anew, as it does when it goes on after a suspension: a terminal that has seen nothing
// before then shows what it shows.
func (p *hand) anewPainted(t *testing.T) *beyond {
	p.signal(t, syscall.SIGTSTP)
	p.stopped(t)
	p.quiet(still)
	view := p.anew()
	p.signal(t, syscall.SIGCONT)
	require.True(t, p.comes(patience, func() bool { return strings.TrimSpace(p.picture()) != "" }), "it paints when it goes on")
	p.quiet(2 * still)
	return view
}

// hush has whatever is said above the foot taken away by a key that means nothing anywhere: it would go by itself a while after it came, in the
// middle of a look maybe.
func (p *hand) hush(t *testing.T) {
	time.Sleep(time.Second) // no key takes it away sooner
	p.keys(t, "\x1b[34~")
	p.quiet(10 * still)
}

// fills holds that a picture was made for the window: where there is room the job's name ends at its right edge, and keys stand in its
// last row.
func fills(t *testing.T, picture string, cols, rows int, about string) {
	if cols < 120 || rows < 20 { // in a narrow one there is room for the titles alone
		return
	}
	lines := strings.Split(picture, "\n")
	require.Len(t, lines, rows, about)
	require.Equal(t, cols, ansi.StringWidth(strings.TrimRight(lines[0], " \r")), "%s\n%s", about, picture)
	require.NotEmpty(t, strings.TrimSpace(lines[rows-1]), about)
}

// Whatever sizes a window goes through while keys arrive, the program lives; once it rests the whole picture stands there, no wider and no
// higher than the window: the same as painted anew. STORMS=200 go test ./cmd/undermark -run SizeStorm -v -timeout 0 makes a long round; STORMS_SEED draws another.
func TestASizeStormEndsInAWholePicture(t *testing.T) {
	t.Parallel()
	notRaced(t)
	const turn = 25 // how many sizes a storm has
	storms, seed := fromEnv(t, "STORMS", 6), fromEnv(t, "STORMS_SEED", 1)
	draw, h, jobs := rand.New(rand.NewPCG(uint64(seed), 2)), readHome(t), anyJobs(t)
	sizes, looked, p := 0, 0, (*hand)(nil)
	for round := range storms {
		if p == nil || p.over() || round%3 == 0 {
			p = &hand{h: h, dir: t.TempDir(), draw: draw}
			require.NoError(t, os.WriteFile(filepath.Join(p.dir, "van.toml"), jobs[round%len(jobs)], 0o600))
			p.begins(t, 100, 30)
		}
		p.storms(t, turn)
		sizes += turn
		cols, rows := 60+draw.IntN(mostCols-59), 20+draw.IntN(mostRows-19)
		if draw.IntN(4) == 0 {
			cols, rows = anySize(draw)
		}
		switch draw.IntN(3) { // on its way there one side is as it will be
		case 0:
			p.resize(t, 60+draw.IntN(mostCols-59), rows)
			p.quiet(2 * still)
		case 1:
			p.resize(t, cols, 20+draw.IntN(mostRows-19))
			p.quiet(2 * still)
		}
		p.resize(t, cols, rows)
		p.quiet(10 * still)
		p.unbroken(t)
		if !p.over() {
			p.hush(t)
		}
		if p.over() {
			require.Zero(t, p.ended(t), "%s\n%s", p.about(), p.picture())
			continue
		}
		about := fmt.Sprintf("at %dx%d %s", cols, rows, p.about())
		stood := p.picture()
		fills(t, stood, cols, rows, about)
		require.NotEmpty(t, strings.TrimSpace(stood), about)
		view := p.anewPainted(t)
		p.comes(patience, func() bool { return p.picture() == stood })
		require.Equal(t, p.picture(), stood, about)
		p.within(t, view, about)
		looked++
	}
	t.Logf("%d storms of %d sizes in all, seed %d: the picture was whole %d times", storms, sizes, seed, looked)
	require.Greater(t, looked, storms/2)
}
