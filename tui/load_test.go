//go:build !windows

package tui

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// mostOfAKey is the processor's time that a key and the picture after it may take in the fullest job: some times what they take, so that only
// what grows with the square of the things is found, on a slow computer too.
const mostOfAKey = 3 * time.Second

// fullJobs are the shapes of a job with nearly all that it may hold: beside and over one another, matching points, points of one run, bolts; and one path of a thousand points that covers the floor.
func fullJobs(n int) map[string]string {
	const head = "format = 1\n[job]\nref = \"full\"\n[floor]\nfrom = 40\nlength = 3200\nwidth = 1780\nthickness = 31\nground = 460\n"
	var grid, over, ties, run, bolts, zigzag strings.Builder
	for _, b := range []*strings.Builder{&grid, &over, &ties, &zigzag} {
		b.WriteString(head + "[heater]\nclass = \"2 kW\"\n[cut]\nat = [1210, 240]\nacross = 127\n")
	}
	zigzag.WriteString("[[obstruction]]\nname = \"pipe\"\nkind = \"brake line\"\nacross = 8\ndrop = [0, 20]\npath = [")
	run.WriteString(head + "[exhaust]\nacross = 26\npath = [")
	bolts.WriteString(head + "[cut]\nat = [1210, 240]\nacross = 127\n[heater]\nclass = \"2 kW\"\nbolts = [")
	for i := range n {
		x, y := 50+i%100*31, -850+i/100*17
		fmt.Fprintf(&grid, "[[obstruction]]\nname = \"n%d\"\nkind = \"crossmember\"\nx = [%d, %d]\ny = [%d, %d]\ndrop = [0, 95]\n", i, x, x+4, y, y+4)
		fmt.Fprintf(&run, "[%d, %d, 50],", x, y)
		if i < 1000 {
			fmt.Fprintf(&zigzag, "[%d, %d],", 50+i*3, 800-1600*(i%2))
		}
		fmt.Fprintf(&bolts, "[%d, %d],", i%100, 60+i/100)
	}
	for i := range n / 3 { // its two points count, too
		fmt.Fprintf(&over, "[[obstruction]]\nname = \"p%d\"\nkind = \"brake line\"\nacross = 8\npath = [[%d, -800], [%d, 800]]\ndrop = [0, 20]\n", i, 1000+i%50, 1001+i%50)
	}
	for i := range vehicles.MostTies {
		x, y := 50+i%10*310, -850+i/10*170
		fmt.Fprintf(&ties, "[[tie]]\nname = \"t%d\"\nbelow = [%d, %d]\nabove = [%d, %d]\n", i, x, y, x+i%3, y)
	}
	return map[string]string{"grid": grid.String(), "one over the other": over.String(), "matching points": ties.String(), "run": run.String() + "]\n", "bolts": bolts.String() + "]\n", "one path all over": zigzag.String() + "]\n"}
}

// Whatever it is that a job has so much of, a key on any screen and the picture after it are done while one waits.
func TestAKeyInAFullJobIsAnsweredOnEveryScreen(t *testing.T) {
	if testing.Short() {
		t.Skip("of a whole run only: goes through every screen with the largest jobs")
	}
	for shape, text := range fullJobs(vehicles.MostEntries - 10) {
		o := options(t)
		o.Screens = Screens()
		require.NoError(t, os.WriteFile(o.Path, []byte(text), 0o600))
		b := started(t, o)
		require.Empty(t, b.desk.State.Faults, shape)
		for _, size := range []tea.WindowSizeMsg{{Width: 100, Height: 30}, {Width: 160, Height: 50}} {
			b.send(size)
			b.View()
			for i := range b.screens {
				keys := []string{fmt.Sprint((i + 1) % 10), "down", "right"}
				if strings.Count(text, "[[obstruction]]") > rules.MostToLayOut {
					keys = append(keys, map[string][]string{"Place": {"c"}, "Runs": {"j", "J", "/"}}[b.screens[i].Title()]...) // what is sought is not begun
				}
				for _, key := range keys {
					before := ofCores(t)
					b.press(key)
					b.View()
					took := ofCores(t) - before
					assert.Less(t, took, mostOfAKey, "%s, %s, %s, %d columns", shape, b.screens[i].Title(), key, size.Width)
					if took > mostOfAKey/10 {
						t.Logf("%s, %s, %s, %d columns: %v", shape, b.screens[i].Title(), key, size.Width, took)
					}
				}
			}
		}
	}
}
