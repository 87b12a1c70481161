//go:build !windows

package main

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// pasted is a text as a terminal sends what is pasted (xterm's control sequences, bracketed paste mode). A terminal takes
// the mark of the end out of what it pastes.
func pasted(text string) string {
	return "\x1b[200~" + strings.ReplaceAll(text, "\x1b[201~", "") + "\x1b[201~"
}

func TestAPastedMegabyteIsAnsweredAndTypingGoesOn(t *testing.T) {
	const megabyte = 1 << 20
	random := make([]byte, megabyte)
	for i, source := 0, rand.New(rand.NewPCG(5, 6)); i < len(random); i++ {
		random[i] = byte(source.UintN(256))
	}
	h := readHome(t)
	s := h.start(t, 100, 30)
	s.wait(t, "[1 Underneath]")
	for name, text := range map[string]string{
		"random": string(random), "lines": strings.Repeat("652\r", megabyte/4), "one line": strings.Repeat("7", megabyte),
		"colours": strings.Repeat("\x1b[31m", megabyte/5),
	} {
		s.keys(t, "n", "c") // a new crossmember, its near edge
		s.wait(t, "▸ near edge")
		s.keys(t, pasted(text), "\x1b[D", "8642")
		s.wait(t, "too long: more than 8000 characters; nothing was changed")
		s.wait(t, "8642")
		s.keys(t, "\x1b")
		s.wait(t, "Enter edit")
		s.keys(t, "x")
		s.wait(t, "deleted crossmember")
		assert.NotContains(t, s.picture(), "refused", name)
	}
	for range 20 {
		s.keys(t, "\x1a")
	}
	s.wait(t, "nothing to undo")
	assert.Zero(t, s.quit(t), "all taken back, nothing is unsaved")
}
