package main

import (
	"bytes"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

// seen runs what is said, each followed by a tick, and returns what was written.
func seen(dumb bool, said ...string) string {
	var out bytes.Buffer
	ticks := make(chan time.Time)
	p := newProgress(lastLine{&out, dumb}, ticks)
	for _, text := range said {
		if text != "" {
			p.say("%s", text)
		}
		ticks <- time.Time{}
		ticks <- time.Time{} // the one before has been shown
	}
	p.stop()
	return out.String()
}

func TestProgressIsOneLineThatIsClearedInTheEnd(t *testing.T) {
	assert.Equal(t, "\rarea 9 of 10\rarea 10 of 10\r             \b\b\b\b\b\b\b\b\b\b\b\b\b", seen(false, "area 9 of 10", "area 10 of 10"))
	assert.Equal(t, "\rlonger\rless  \b\b\r    \b\b\b\b", seen(false, "longer", "less"))
}

func TestADumbTerminalIsToldOnce(t *testing.T) {
	assert.Equal(t, "looking\n", seen(true, "looking", "area 1 of 2", "area 2 of 2"))
}

func TestNothingIsSaidBeforeTheFirstTick(t *testing.T) {
	assert.Empty(t, seen(false))
	var out bytes.Buffer
	p := newProgress(lastLine{&out, false}, nil)
	p.say("at once")
	p.stop()
	assert.Empty(t, out.String())
}

func TestOnlyATerminalIsTold(t *testing.T) {
	var out bytes.Buffer
	p, stop := startProgress(streams{watched: &out}, false)
	p.say("nobody hears it")
	stop()
	assert.Nil(t, p)
	assert.Empty(t, out.String())
}
