package screentest

import (
	"fmt"
	"image"
	"io"
	"os"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/answers"
	"bench.example/undermark/tui/pixels"
)

// Pictures returns a terminal that has said that it shows pictures, in cells of so many pixels. What it is sent goes nowhere.
func Pictures(t testing.TB, cell image.Point) *pixels.Terminal {
	from, to, err := os.Pipe()
	require.NoError(t, err)
	go func() { _, _ = io.Copy(io.Discard, from) }()
	t.Cleanup(func() { _ = to.Close() })
	return Answering(t, to, cell)
}

// Answering returns a terminal that has said so, and writes on a file.
func Answering(t testing.TB, to *os.File, cell image.Point) *pixels.Terminal {
	terminal := pixels.On(to)
	terminal.Ask(func() {})
	_, err := terminal.WriteString(ansi.SetModeAltScreenSaveCursor)
	require.NoError(t, err)
	said := fmt.Sprintf("\x1b[6;%d;%dt\x1b_Gi=%d;OK\x1b\\\x1b[1;1R", cell.Y, cell.X, pixels.ID)
	left, err := io.ReadAll(&answers.Reader{From: strings.NewReader(said), For: []answers.Awaiter{terminal}})
	require.NoError(t, err)
	require.Empty(t, left, "answers are no keys")
	require.True(t, terminal.Shows())
	return terminal
}
