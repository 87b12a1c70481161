//go:build !windows

package main

import (
	"bytes"
	"encoding/base64"
	"image"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"github.com/charmbracelet/x/ansi/kitty"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/looks"
	"bench.example/undermark/vehicles"
)

// What a terminal is asked, and how a picture is deleted, as the protocol has it.
const (
	sizeQuery    = "\x1b[16t"
	pictureQuery = "\x1b_Gi=30061,s=1,v=1,a=q,t=d,f=24;AAAA\x1b\\"
	pictureGone  = "\x1b_Ga=d,d=I,i=30061,q=2"
	anyGraphics  = "\x1b_G"
)

// What stands beside a picture in its pane, and above and below it, cells.
const beside, above = 6, 4

// sight is a picture that was sent, and the cells that it is to fill.
type sight struct {
	image.Image
	cols, rows int
}

var piece = regexp.MustCompile("\x1b_G([^;\x1b]*)(?:;([^\x1b]*))?\x1b\\\\")

// sightsIn are the pictures in what a program wrote, in turn.
func sightsIn(t *testing.T, output string) (all []sight) {
	var text string
	var options map[string]string
	for _, m := range piece.FindAllStringSubmatch(output, -1) {
		said := map[string]string{}
		for option := range strings.SplitSeq(m[1], ",") {
			name, value, _ := strings.Cut(option, "=")
			said[name] = value
		}
		if said["a"] != "" {
			options, text = said, ""
		}
		text += m[2]
		if options["a"] != "T" || said["m"] != "0" {
			continue
		}
		data, err := base64.StdEncoding.DecodeString(text)
		require.NoError(t, err)
		number := func(name string) int {
			n, err := strconv.Atoi(options[name])
			require.NoError(t, err, "%s of %v", name, options)
			return n
		}
		require.Equal(t, "1", options["U"])
		d := kitty.Decoder{Decompress: true, Format: number("f"), Width: number("s"), Height: number("v")}
		p, err := d.Decode(bytes.NewReader(data))
		require.NoError(t, err)
		all = append(all, sight{p, number("c"), number("r")})
	}
	return all
}

// pictures waits until a program has sent so many pictures, and returns them.
func (s *terminal) pictures(t *testing.T, n int) (all []sight) {
	t.Helper()
	require.True(t, s.comes(patience, func() bool {
		output := s.output()
		if strings.Count(output, "m=0;") >= n { // their ends may still be on the way
			all = sightsIn(t, output)
		}
		return len(all) >= n
	}), "%d pictures", n)
	return all
}

// placeholders are the cells of the screen that show parts of the picture: their box, and whether they fill it.
func (s *terminal) placeholders() (box image.Rectangle, whole bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	n := 0
	for y := range s.screen.Height() {
		for x := range s.screen.Width() {
			if c := s.screen.CellAt(x, y); c != nil && strings.HasPrefix(c.Content, "\U0010eeee") {
				box = box.Union(image.Rect(x, y, x+1, y+1))
				n++
			}
		}
	}
	return box, n == box.Dx()*box.Dy()
}

// The whole way: the program asks, the terminal answers, and what it is sent is the scene, in the cells that hold placeholders; what it
// answers is typed nowhere.
func TestATerminalThatShowsPicturesIsShownOne(t *testing.T) {
	t.Parallel()
	h := readHome(t)
	s := h.begin(t, &terminal{shows: true}, 100, 30)
	s.wait(t, "SEEN FROM")
	first := s.pictures(t, 1)[0]
	require.True(t, s.comes(patience, func() bool {
		box, whole := s.placeholders()
		return whole && box.Dx() == first.cols && box.Dy() == first.rows
	}))

	job := vehicles.Demo()
	result, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	plan := drawing.Draw(result, drawing.Options{Selected: 0, NoTies: true}) // the list is at its first row
	look := canvas.Look{Left: "left", Right: "right", Faces: true}
	drawn := canvas.Paint(plan, first.cols+beside, first.rows+above, look)
	require.Equal(t, [2]int{first.cols, first.rows}, [2]int{drawn.Cols, drawn.Rows})
	want := drawn.Picture(plan, look, looks.Dark.Table())(image.Pt(first.cols*12, first.rows*24))
	same(t, want, first)

	assert.NotContains(t, s.picture(), "30061")
	assert.NotContains(t, s.picture(), "OK")
	assert.Equal(t, 1, strings.Count(s.output(), pictureQuery))
	s.keys(t, "4")
	s.wait(t, "[4 Place]")
	s.pictures(t, 2)
	assert.Equal(t, 0, s.quit(t))
	deleted, left := strings.LastIndex(s.output(), pictureGone), strings.LastIndex(s.output(), "\x1b[?1049l")
	assert.Less(t, strings.LastIndex(s.output(), "m=0;"), deleted, "nothing is left behind")
	assert.Less(t, deleted, left)
}

// same tells that two pictures are pixel for pixel the same.
func same(t *testing.T, want, got image.Image) {
	t.Helper()
	require.Equal(t, want.Bounds(), got.Bounds())
	for y := range want.Bounds().Dy() {
		for x := range want.Bounds().Dx() {
			r, g, b, _ := want.At(x, y).RGBA()
			u, v, w, _ := got.At(x, y).RGBA()
			require.Equal(t, [3]uint32{r >> 8, g >> 8, b >> 8}, [3]uint32{u >> 8, v >> 8, w >> 8}, "pixel %d, %d", x, y)
		}
	}
}

// A terminal that does not answer is sent nothing after the question, and shows what one does that was never asked.
func TestAMuteTerminalIsSentNoPicture(t *testing.T) {
	t.Parallel()
	h := readHome(t)
	walk := []string{"4", "v", "+", "f", "5", "1"}
	mute, plain := h.begin(t, &terminal{mute: true}, 100, 30), h.begin(t, &terminal{mute: true, envs: []string{"TERM=linux"}}, 100, 30)
	for _, s := range []*terminal{mute, plain} {
		s.wait(t, "SEEN FROM")
		for i, key := range walk {
			was := s.output()
			s.keys(t, key)
			require.True(t, s.comes(patience, func() bool { return len(s.output()) > len(was) }), "key %d", i)
		}
		s.wait(t, "[1 Underneath]")
	}
	require.True(t, mute.comes(patience, func() bool { return mute.picture() == plain.picture() }), "the same screen")
	assert.Equal(t, 1, strings.Count(mute.output(), anyGraphics))
	assert.Equal(t, 1, strings.Count(mute.output(), sizeQuery+pictureQuery))
	assert.NotContains(t, plain.output(), anyGraphics)
	mute.quit(t)
	plain.quit(t)
	assert.Equal(t, 1, strings.Count(mute.output(), anyGraphics), "nor at the end")
}

// Who says that there are no colours, or can't draw, is not asked; nor is who has the program in lines.
func TestWhoCanShowNothingIsNotAsked(t *testing.T) {
	t.Parallel()
	h := readHome(t)
	for _, env := range []string{"NO_COLOR=1", "TERM=linux", "TERM="} {
		s := h.begin(t, &terminal{envs: []string{env}}, 100, 30)
		s.wait(t, "SEEN FROM")
		s.quit(t)
		assert.NotContains(t, s.output(), anyGraphics, env)
		assert.NotContains(t, s.output(), sizeQuery, env)
	}
	dumb := h.begin(t, &terminal{dumb: true}, 100, 30)
	dumb.wait(t, "this terminal can't draw")
	dumb.keys(t, "n\r")
	dumb.wait(t, "SEEN FROM")
	dumb.quit(t)
	assert.NotContains(t, dumb.output(), anyGraphics)
	lines := h.start(t, 100, 30, "--plain")
	lines.wait(t, "Underneath")
	lines.keys(t, "\x03")
	lines.ended(t)
	assert.NotContains(t, lines.output(), anyGraphics)
}

// A terminal that answers late, in halves and amid keys: no key is lost and none is made up.
func TestALateAnswerTypesNothing(t *testing.T) {
	t.Parallel()
	h := readHome(t)
	s := h.start(t, 100, 30)
	s.wait(t, "SEEN FROM")
	s.keys(t, "n", "x", "\r", "3", "4", "\x1b_Gi=30061;", "OK\x1b", "\\", "7", "\x1b[6;2", "4;12t", "8")
	s.wait(t, "3478")
	s.pictures(t, 1)
	assert.NotContains(t, s.picture(), "30061")
	s.signal(t, syscall.SIGTERM)
	s.ended(t)
}

// A suspended program takes its picture with it, and brings it back.
func TestASuspendedProgramTakesItsPictureAway(t *testing.T) {
	t.Parallel()
	h := readHome(t)
	s := h.begin(t, &terminal{shows: true}, 100, 30)
	s.wait(t, "SEEN FROM")
	first := s.pictures(t, 1)[0]
	for round := 1; round <= 2; round++ {
		gone := strings.Count(s.output(), pictureGone)
		s.signal(t, syscall.SIGTSTP)
		s.stopped(t)
		require.True(t, s.comes(patience, func() bool { return strings.Count(s.output(), pictureGone) > gone }))
		s.signal(t, syscall.SIGCONT)
		same(t, first, s.pictures(t, 1+round)[round])
	}
	assert.Equal(t, 1, strings.Count(s.output(), pictureQuery), "it is known what the terminal can")
	s.quit(t)
}

// Who wants cells has them, in this run and the next; then pictures are offered again.
func TestCellsCanBeWanted(t *testing.T) {
	t.Parallel()
	h := readHome(t)
	s := h.begin(t, &terminal{shows: true}, 100, 30)
	s.pictures(t, 1)
	s.keys(t, "8")
	s.wait(t, "[8 Job]")
	s.keys(t, "\x1b[B", "\x1b[B", "\r")
	s.wait(t, "plan drawn in")
	s.keys(t, "\x1b[B", "\x1b[B", "\x1b[B", "\x1b[B", "c", "\x1b")
	file := filepath.Join(h.dir, "config", "undermark", "settings.toml")
	require.True(t, s.comes(patience, func() bool { data, _ := os.ReadFile(file); return strings.Contains(string(data), `plan = "cells"`) }))
	s.keys(t, "1")
	s.wait(t, "BUMPER"[:1])
	require.True(t, s.comes(patience, func() bool { box, _ := s.placeholders(); return box.Empty() }))
	s.quit(t)

	again := h.begin(t, &terminal{shows: true}, 100, 30)
	again.wait(t, "SEEN FROM")
	again.keys(t, "4", "1")
	again.wait(t, "[1 Underneath]")
	assert.Empty(t, sightsIn(t, again.output()))
	again.quit(t)
}
