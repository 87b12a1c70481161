//go:build !windows

package main

import (
	"encoding/xml"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pictures is the folder of the pictures that README shows.
var pictures = filepath.Join("..", "..", "testdata", "screens")

// The pictures in README are what the program shows of the sample with its cut moved to a clear place. PICTURES=1 takes them anew.
func TestPicturesAreWhatTheProgramShows(t *testing.T) {
	t.Parallel()
	notRaced(t)
	const right = "\x1b[C"
	s := readHome(t).start(t, 100, 30)
	s.wait(t, "[1 Underneath]")
	s.keys(t, "4", "s", right, right, right)
	s.wait(t, "5 doubtful")
	for i, name := range []string{"underneath", "on-top", "match", "place", "runs", "marks", "checks", "job", "work", "sizing"} {
		digit := strconv.Itoa((i + 1) % 10)
		s.keys(t, digit)
		s.wait(t, "["+digit+" ")
		s.settle(t)
		compare(t, name, s)
	}
	s.keys(t, "4")
	s.wait(t, "[4 ")
	s.keys(t, "g")
	s.settle(t)
	compare(t, "place-near", s)
}

// compare holds a picture in the folder against what a terminal shows, or takes it.
func compare(t *testing.T, name string, s *terminal) {
	t.Helper()
	s.mu.Lock()
	got := svgOf(s.screen)
	s.mu.Unlock()
	requireXML(t, got)
	file := filepath.Join(pictures, name+".svg")
	if os.Getenv("PICTURES") != "" {
		require.NoError(t, os.MkdirAll(pictures, 0o755))
		require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.True(t, string(want) == got, "%s is out of date: PICTURES=1 go test ./cmd/undermark -run Pictures takes it anew", file)
}

// settle waits until nothing has been written for a while: what to measure next comes after a moment.
func (s *terminal) settle(t *testing.T) {
	t.Helper()
	const still = 700 * time.Millisecond
	since, last := time.Now(), len(s.output())
	require.True(t, s.comes(patience, func() bool {
		if now := len(s.output()); now != last {
			since, last = time.Now(), now
		}
		return time.Since(since) > still
	}), "the screen never rests")
}

func requireXML(t *testing.T, text string) {
	t.Helper()
	for d := xml.NewDecoder(strings.NewReader(text)); ; {
		_, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		require.NoError(t, err)
	}
}
