package pixels

import (
	"image"
	"io"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// screen is a terminal whose screen is up, and what it is sent.
func screen(t *testing.T) (*Terminal, func(n int) string) {
	r, w, err := os.Pipe()
	require.NoError(t, err)
	t.Cleanup(func() { _ = w.Close(); _ = r.Close() })
	terminal := On(w)
	_, err = terminal.Write([]byte(comes))
	require.NoError(t, err)
	next := func(n int) string {
		data := make([]byte, n)
		_, err := io.ReadFull(r, data)
		require.NoError(t, err)
		return string(data)
	}
	require.Equal(t, comes, next(len(comes)), "nobody asked")
	return terminal, next
}

// sentFor is what is sent for a chequer of so many cells.
func sentFor(cols, rows int) string {
	size := sizeOf(cols, rows, usualCell)
	return string(encoded(rgb(chequer(size.X, size.Y)), size, cols, rows))
}

func paint(size image.Point) *image.RGBA { return chequer(size.X, size.Y) }

// Pictures and cells are written one after the other, and of many pictures the last one is sent.
func TestTheLastPictureIsSent(t *testing.T) {
	terminal, next := screen(t)
	assert.False(t, terminal.Shows())
	begun, done := make(chan bool, 1), make(chan bool)
	terminal.Show(Picture{Cols: 2, Rows: 1, Paint: func(size image.Point) *image.RGBA { begun <- true; <-done; return paint(size) }})
	<-begun
	for range 20 {
		terminal.Show(Picture{Cols: 1, Rows: 1, Paint: func(image.Point) *image.RGBA { t.Error("this one is left out"); return chequer(1, 1) }})
	}
	terminal.Show(Picture{Cols: 7, Rows: 5, Paint: paint})
	_, err := terminal.WriteString("cells")
	require.NoError(t, err)
	assert.Equal(t, "cells", next(5))
	close(done)
	first, second := sentFor(2, 1), sentFor(7, 5)
	assert.Equal(t, first+second, next(len(first)+len(second)))
	assert.Contains(t, second, "c=7,r=5")
}

// A picture that the terminal has is not sent again, and one with other pixels or in other cells is.
func TestWhatIsThereIsNotSentAgain(t *testing.T) {
	terminal, next := screen(t)
	for range 3 {
		terminal.Show(Picture{Cols: 2, Rows: 1, Paint: paint})
	}
	first := sentFor(2, 1)
	assert.Equal(t, first, next(len(first)))
	begun := make(chan bool, 1)
	terminal.Show(Picture{Cols: 2, Rows: 1, Paint: func(size image.Point) *image.RGBA { begun <- true; return paint(size) }})
	<-begun
	terminal.Show(Picture{Cols: 1, Rows: 2, Paint: paint})
	second := sentFor(1, 2)
	assert.Equal(t, second, next(len(second)), "nothing of the one that was the same")
}

// When the program's screen goes its picture is deleted first, and nothing is sent until it comes back: then it is sent again.
func TestNoPictureIsLeftBehind(t *testing.T) {
	terminal, next := screen(t)
	write := func(text string) {
		_, err := terminal.WriteString(text)
		require.NoError(t, err)
	}
	write(goes)
	assert.Equal(t, goes, next(len(goes)), "there was none")
	write(comes)
	next(len(comes))
	terminal.Show(Picture{Cols: 2, Rows: 1, Paint: paint})
	picture := sentFor(2, 1)
	require.Equal(t, picture, next(len(picture)))
	for range 2 {
		write("a" + goes)
		assert.Equal(t, forget+"a"+goes, next(len(forget)+1+len(goes)))
		begun := make(chan bool, 1)
		terminal.Show(Picture{Cols: 2, Rows: 1, Paint: func(size image.Point) *image.RGBA { begun <- true; return paint(size) }})
		<-begun
		write("shell")
		assert.Equal(t, "shell", next(5))
		write(comes)
		assert.Equal(t, comes+picture, next(len(comes)+len(picture)))
	}
	assert.Regexp(t, `^\x1b_G(a=d,d=I,i=30061,q=2);?\x1b\\$`, forget)
}

// The question is put once, when the screen comes, and before it is cleared.
func TestTheTerminalIsAskedOnce(t *testing.T) {
	terminal, sent := asked(t)
	for _, text := range []string{"\x1b[2J", goes, comes, "frame"} {
		_, err := terminal.WriteString(text)
		require.NoError(t, err)
	}
	assert.Equal(t, "\x1b[2J"+goes+comes+"frame", sent())
	assert.Equal(t, 1, strings.Count(query, "a=q"))
	assert.False(t, (*Terminal)(nil).Shows())
}
