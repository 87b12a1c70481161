//go:build !windows

package tui

import (
	"fmt"
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// wordy is a full job whose texts are as long as they may be.
func wordy(t *testing.T) []byte {
	job := screentest.Full(t)
	long := func(name string) string {
		return name + strings.Repeat(" long", vehicles.LongestText/5)[:vehicles.LongestText-len(name)]
	}
	job.Ref, job.Vehicle, job.Fitter, job.Notes = long("ref"), long("vehicle"), long("fitter"), long("notes")
	for i, o := range job.Obstructions {
		job = job.Renaming(o.Name, long(o.Name))
		o.Name = long(o.Name)
		job.Obstructions = job.Obstructions.With(i, o)
	}
	for i, o := range job.Openings {
		o.Name = long(o.Name)
		job.Openings = job.Openings.With(i, o)
	}
	return job.WithDone(vehicles.Done{Step: "battery-off", Note: long("note")}).Format()
}

// Beside texts of the greatest length a key on any screen is answered, with its picture, while nobody notices; a field takes no more of them than it shows, and says so.
func TestAKeyBesideTheLongestTexts(t *testing.T) {
	o := options(t)
	o.Screens = Screens()
	require.NoError(t, os.WriteFile(o.Path, wordy(t), 0o600))
	b := started(t, o)
	require.Len(t, []rune(b.desk.State.Job.Notes), vehicles.LongestText)
	for _, size := range []tea.WindowSizeMsg{{Width: 60, Height: 20}, {Width: 160, Height: 50}} {
		b.send(size)
		b.View()
		for i := range b.screens {
			for _, key := range []string{fmt.Sprint((i + 1) % 10), "down", "enter", "x", "esc"} {
				before := ofCores(t)
				b.press(key)
				b.View()
				took := ofCores(t) - before
				assert.Less(t, took, mostOfAKey/3, "%s, %s, %d columns", b.screens[i].Title(), key, size.Width)
				if took > mostOfAKey/30 {
					t.Logf("%s, %s, %d columns: %v", b.screens[i].Title(), key, size.Width, took)
				}
			}
			for b.overlay() != nil {
				b.press("esc")
			}
			for len(b.desk.Steps()) > 0 {
				b.press("ctrl+z")
			}
		}
	}
}
