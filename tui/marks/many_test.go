package marks

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
)

// bolted is the sample van with a heater of so many bolts.
func bolted(t *testing.T, bolts int) desk.State {
	s := screentest.State(t)
	h := *s.Job.Heater
	h.Bolt = 8
	for i := range bolts {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(bolts))
		h.Bolts = append(h.Bolts, [2]float64{90 * cos, 90 * sin})
	}
	job := s.Job
	job.Heater = &h
	return screentest.Judged(s, job)
}

// With many marks each can be reached, ticked and seen in the lists, by its words.
func TestManyMarks(t *testing.T) {
	for _, size := range screentest.Sizes {
		s := bolted(t, 24)
		require.Greater(t, len(s.Marks.Marks), 28)
		p, _, _ := screentest.After(marked(t, s), s, tea.WindowSizeMsg{Width: size.W, Height: size.H})
		for i := range 29 { // the cut, the plate's corners and the bolts
			words := s.Marks.Marks[i].Words
			if bolt := i - 5; bolt >= 0 && bolt < 24 {
				require.Equal(t, fmt.Sprintf("bolt hole %d", bolt+1), words)
				require.Equal(t, fmt.Sprintf("bolt %d", bolt+1), s.Marks.Marks[i].Name, "what programs call it")
			}
			assert.Contains(t, screentest.Filled(t, p, s, size.W, size.H), " "+words+" ")
			table, _, _ := screentest.After(p, s, screentest.Keys("tab")...)
			assert.Contains(t, screentest.Filled(t, table, s, size.W, size.H), "▶ [ ] "+words)
			p, s, _ = screentest.After(p, s, screentest.Keys("enter")...)
			assert.True(t, s.Ticked[s.Marks.Marks[i].Name])
		}
	}
}

// However narrow the table, each reading and each length stands in it whole.
func TestTheTableHasAllFiguresWhereItIsNarrow(t *testing.T) {
	s := screentest.State(t)
	m, _, _ := screentest.After(marked(t, s), s, tea.KeyMsg{Type: tea.KeyTab})
	view := screentest.Filled(t, m, s, 60, 47)
	for _, mark := range s.Marks.Marks {
		if mark.Above != nil {
			assert.Regexp(t, regexp.QuoteMeta(mark.Words)+` +`+regexp.QuoteMeta(survey.Figure(mark.Above.Bumper))+` +`+regexp.QuoteMeta(survey.Figure(mark.Above.Left))+
				` +`+regexp.QuoteMeta(survey.Figure(mark.Above.Right)), view)
		}
	}
	for _, c := range s.Marks.Checks {
		assert.Contains(t, view, survey.Figure(c.Length))
	}
}

// However long a mark's words are, the head says which of how many it is, and in the narrowest window, too.
func TestTheHeadSaysWhichOfHowMany(t *testing.T) {
	for _, s := range []desk.State{screentest.State(t), hung(t)} {
		p := marked(t, s).(screenType)
		all := items(s)
		for _, ticked := range []bool{false, true} {
			for p.at = range all {
				if s.Ticked = map[string]bool{all[p.at].id(): ticked}; all[p.at].check == nil {
					s.Ticked = map[string]bool{all[p.at].mark.Name: ticked}
				}
				head, _, _ := strings.Cut(screentest.Filled(t, p, s, 60, 17), "\n")
				assert.Contains(t, head, fmt.Sprintf("  %d of %d", p.at+1, len(all)))
				assert.Contains(t, head, map[bool]string{true: "[x]", false: "[ ]"}[ticked])
			}
		}
	}
}
