package place

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// What a move of the cut changes: found out by moving it.
func TestTheListLeadsWithWhatTheMoveChanges(t *testing.T) {
	for _, job := range []vehicles.Job{screentest.State(t).Job, vehicles.Demo()} {
		d := screentest.New(t, New(), job.WithDrilled(nil), 60, 16)
		list := worst(d.State)
		moved, rest := list.Moved, list.Rest
		require.NotEmpty(t, moved)
		require.NotEmpty(t, rest)
		values := func() map[string]float64 {
			of := map[string]float64{}
			for i := range d.State.Result.Findings {
				f := &d.State.Result.Findings[i]
				of[f.ID()+f.About()] = f.Value
			}
			return of
		}
		before := values()
		d.Type("<right><up>")
		after := values()
		for _, f := range rest {
			assert.InDelta(t, before[f.ID()+f.About()], after[f.ID()+f.About()], 1e-9, "%s %s", f.ID(), f.About())
		}
		same := 0
		for _, f := range moved {
			if before[f.ID()+f.About()] == after[f.ID()+f.About()] {
				same++
			}
		}
		assert.Less(t, same, len(moved)/2, "what may change mostly does")
	}
}

// unconfirmed is the sample with nothing under the floor confirmed on this van.
func unconfirmed() vehicles.Job {
	job := vehicles.Demo()
	things := make(vehicles.List[vehicles.Obstruction], len(job.Obstructions))
	for i, o := range job.Obstructions {
		o.Measured = false
		things[i] = o
	}
	job.Obstructions = things
	return job
}

// A doubt about something a metre off that nobody confirmed does not stand before what a move can mend, as no move ends it: all of them
// have one line below the list, in lines too, and a tap on it goes where they are confirmed.
func TestFarDoubtsThatOnlyConfirmingEndsHaveOneLine(t *testing.T) {
	for name, job := range map[string]vehicles.Job{"the sample": vehicles.Demo(), "nothing confirmed": unconfirmed()} {
		d := screentest.New(t, New(), job, 60, 15)
		list := worst(d.State)
		require.NotEmpty(t, list.Far, name)
		for _, f := range list.Far {
			assert.True(t, f.Unconfirmed, f.About())
			assert.Greater(t, f.Margin.Value, float64(vehicles.LookRound), f.About())
		}
		for _, f := range list.Moved {
			assert.False(t, f.Unconfirmed && f.Margin.Value > vehicles.LookRound, f.About())
		}
		line := fmt.Sprintf("%d far off, doubtful until confirmed (m in Underneath)", len(list.Far))
		for _, size := range [][2]int{{60, 15}, {100, 26}, {160, 46}} {
			w, h := size[0], size[1]
			d := screentest.New(t, New(), job, w, h)
			x, top, panelW, panelH := moving.Body{W: w, H: h}.PanelIn()
			said, row := "", -1
			for y, text := range strings.Split(d.View(w, h), "\n")[top : top+panelH] {
				text = strings.TrimSpace(string([]rune(text)[x:min(x+panelW, len([]rune(text)))]))
				if strings.Contains(text, "far off") {
					row = top + y
				}
				said += text + " "
			}
			assert.Contains(t, said, line, "%s %v", name, size)
			change := screentest.Tapped(d, x+1, row)
			assert.Equal(t, "Underneath", change.Goto, "%s %v", name, size)
			assert.Same(t, list.Far[0].Rule, change.Focus.Rule)
		}
		all := strings.Join(New().Plain(d.State).All(), "\n")
		assert.Contains(t, all, line+": ", name)
		for _, f := range list.Far {
			if f.Verdict == rules.Doubtful {
				assert.Contains(t, all, aloud.Finding(*f, d.State))
			}
		}
	}
}

// Where the list has few rows the far doubts share the last one with what is seen.
func TestFarDoubtsInAListOfFewRows(t *testing.T) {
	list := worst(screentest.New(t, New(), unconfirmed(), 60, 15).State)
	s := screentest.Judged(screentest.State(t), unconfirmed())
	for h := 2; h <= 12; h++ {
		text := strings.Join(list.Rows(s, moving.Scroll{}, 60, h), "\n")
		assert.Regexp(t, fmt.Sprintf(`\b%d (far off|unconfirmed)`, len(list.Far)), text, h)
		assert.LessOrEqual(t, strings.Count(text, "\n")+1, h)
	}
}
