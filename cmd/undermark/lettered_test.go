//go:build !windows

package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

const latin = "LC_ALL=de_DE.ISO-8859-1"

// Where the locale says that the terminal knows no UTF-8, the program asks before it draws. In lines it writes and hears the terminal's own letters, and
// the file is UTF-8 as ever. Bytes of ISO/IEC 8859-1, from memory: ± is 0xb1, ü is 0xfc.
func TestATerminalWithoutUTF8IsSpokenToInItsOwnLetters(t *testing.T) {
	notRaced(t)
	t.Parallel()
	h, file := readHome(t), filepath.Join(t.TempDir(), "van.toml")
	require.NoError(t, os.WriteFile(file, vehicles.Demo().Format(), 0o600))
	s := h.begin(t, &terminal{envs: []string{latin}}, 80, 24, file)
	s.said(t, 0, "the same.\n")
	assert.Contains(t, strings.Join(strings.Fields(s.output()), " "), latin+": this terminal may not know UTF-8")
	s.press(t, "Undermark, in lines.", "\r")
	s.press(t, "Screen 8 of 10: Job", "8")
	s.press(t, "TL-07", "\r")
	s.press(t, "vehicle", "\r")
	s.press(t, "M\xfcll", "\x15", "M\xfcll")
	s.press(t, "fitter", "\r")
	s.keys(t, "\x1b")
	time.Sleep(5 * still)
	s.press(t, "Screen 7 of 10: Checks", "7")
	s.press(t, " \xb1 ", "\x0c")
	s.press(t, "Saved", "\x13")
	assert.Zero(t, s.quit(t))
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	job, err := vehicles.ParseJob(text, file)
	require.NoError(t, err)
	assert.Equal(t, "Müll", job.Vehicle)
	assert.False(t, strings.ContainsFunc(s.output(), func(r rune) bool { return r >= utf8.RuneSelf && r != utf8.RuneError }), "nothing of it is UTF-8")
}

// So it is with what a command answers on a terminal; into a file it stays UTF-8.
func TestAnswersOnATerminalAreInItsOwnLetters(t *testing.T) {
	notRaced(t)
	t.Parallel()
	h := newHome(t)
	dir := t.TempDir()
	file, to := filepath.Join(dir, "van.toml"), filepath.Join(dir, "answer")
	require.NoError(t, os.WriteFile(file, vehicles.Demo().Format(), 0o600))
	for locale, want := range map[string]string{latin: "\xb1 3", "LC_ALL=ja_JP.eucJP": "+- 3", "LC_ALL=C": "± 3"} {
		s := h.begin(t, &terminal{envs: []string{locale}}, 160, 50, "check", file)
		s.ended(t)
		assert.Contains(t, s.output(), want, locale)
		s = h.begin(t, &terminal{envs: []string{locale}}, 160, 50, "check", file, "-o", to)
		s.ended(t)
		text, err := os.ReadFile(to)
		require.NoError(t, err)
		assert.Contains(t, string(text), "± 3", locale)
	}
}
