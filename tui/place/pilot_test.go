package place

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// drilledAt is the trial job with its pilot hole measured from below. Where it was meant the tape reads
// sqrt(1210^2 + 150^2) = 1219.3 from the bumper and 890 - 240 = 650 from the left edge.
func drilledAt(t *testing.T, x, y string) desk.State {
	_, s, _ := screentest.After(New(), screentest.State(t), screentest.Keys("m "+x+" enter "+y+" enter")...)
	require.NotNil(t, s.Job.Cut.Drilled)
	require.Empty(t, s.Faults)
	return s
}

func report(t *testing.T, s desk.State) rules.PilotReport {
	p, ok := rules.PilotCheck(s.Result)
	require.True(t, ok)
	return p
}

// A hole read a centimetre too far: putting that reading right, the tapes explain the rest.
func TestAnExplanationIsPutRightWithOneKey(t *testing.T) {
	s := drilledAt(t, "1229.3", "L650")
	require.False(t, report(t, s).Explained)
	view := screentest.Filled(t, New(), s, 100, 27)
	assert.Contains(t, view, "more than")
	assert.Contains(t, screentest.Filled(t, New(), s, 160, 47), "plate, body, bolts: held back", "what rests on it, in plain words")
	listed, _, _ := screentest.After(New(), s, screentest.Keys("e")...)
	assert.True(t, listed.Typing(), "letters choose")
	assert.Contains(t, screentest.Filled(t, listed, s, 160, 47), "misreading by 10 mm")
	for i, slip := range report(t, s).Slips {
		closed, after, changes := screentest.After(listed, s, screentest.Keys(string(rune('a'+i)))...)
		assert.False(t, closed.Typing())
		require.NotNil(t, changes[0].Job, slip.Text)
		assert.Empty(t, changes[0].Step, "an undo step of its own")
		p, ok := rules.PilotCheck(after.Result)
		assert.True(t, !ok || p.Explained, slip.Text)
	}
	left, after, _ := screentest.After(listed, s, screentest.Keys("z 1 esc")...)
	assert.False(t, left.Typing())
	assert.Equal(t, s.Job, after.Job)
}

// told is all that stands above the clearances, as one line.
func told(s desk.State) string {
	return ansi.Strip(strings.Join(New().(screen).above(s, aloud.Unbroken), " "))
}

func TestAHoleThatTheTapesExplain(t *testing.T) {
	s := drilledAt(t, "1221", "L651")
	view := told(s)
	assert.Contains(t, view, "the tapes explain it, up to 5.1 mm that way.")
	assert.Contains(t, view, "Judged at the hole")
	small := screentest.Filled(t, New(), s, 60, 16)
	assert.Contains(t, small, "pilot at x 1211.8, 239 mm left")
	assert.Contains(t, small, "Off 2 mm (1.8 mm forward, 1 mm right): tapes explain it")
	assert.Regexp(t, `(?m)^(doubtful|clear|foul) .*\n(doubtful|clear|foul) `, small, "and clearances are seen, which a measured hole is for")
	_, _, changes := screentest.After(New(), s, screentest.Keys("e")...)
	assert.Nil(t, changes[0].Job, "there is nothing to explain")
}

// 6 mm off, and led to a better cut: the centre goes where the worst margin is larger, the pilot hole within the cut.
func TestTheBestMoveWithOneKey(t *testing.T) {
	s := drilledAt(t, "1225.3", "L650")
	before := report(t, s)
	require.True(t, better(before))
	_, after, changes := screentest.After(New(), s, screentest.Keys("w")...)
	require.NotNil(t, changes[0].Job)
	assert.Contains(t, changes[0].Say, "of the pilot hole")
	assert.Nil(t, after.Job.Cut.Drilled, "judged where the saw will go")
	require.NotNil(t, after.Job.Cut.Old)
	assert.Equal(t, *s.Job.Cut.Drilled, *after.Job.Cut.Old, "and the hole is not forgotten")
	moved := after.Result.Plan.Cut.At
	assert.InDelta(t, 0, moved.Sub(before.Move.To).Norm(), 0.01)
	assert.LessOrEqual(t, moved.Sub(before.Is).Norm(), before.MayMove+0.01)
	assert.Greater(t, worstAtCut(after.Result), worstAtCut(s.Result), "the worst margin at the cut is better")
	assert.Equal(t, "1225.3", s.Job.Cut.Drilled[0].Text, "the old job stays")
}

// worstAtCut is the least margin of the cut against what is under the floor.
func worstAtCut(r rules.Result) float64 {
	worst := vehicles.Number{}
	for _, f := range r.Findings {
		if f.ID() == "cut.clearance" && f.Margin.Set && (!worst.Set || f.Margin.Value < worst.Value) {
			worst = f.Margin
		}
	}
	return worst.Value
}

// Where even the best place falls short, that is said as what is short.
func TestTheBestMoveMayStillBeShort(t *testing.T) {
	s := drilledAt(t, "1225.3", "L650")
	p := report(t, s)
	p.Held, p.Move.Margin, p.Move.Before = false, -12, -25
	assert.Contains(t, mayMove(p, s), ": 12 mm short, here 25 mm short.")
}

func TestExplanationsInPictures(t *testing.T) {
	s := drilledAt(t, "1229.3", "L650")
	screentest.Golden(t, "off", New(), s, planArea)
	listed, _, _ := screentest.After(New(), s, screentest.Keys("e")...)
	screentest.Golden(t, "explained", listed, s, planArea)
}

// Who measures the pilot hole from the marks goes on with them where the tapes explain it; where they don't there is more to be done here.
// Whoever opens the fields here stays.
func TestFromTheMarksAndBack(t *testing.T) {
	for keys, goes := range map[string]string{"1221 enter L651 enter": "Marks", "1229.3 enter L650 enter": "", "esc m 1221 enter L651 enter": "", "enter enter": ""} {
		msgs := append([]tea.Msg{desk.Open{Obstruction: -1, Opening: -1, Field: "drilled", Back: "Marks"}}, screentest.Keys(keys)...)
		_, _, changes := screentest.After(New(), screentest.State(t), msgs...)
		assert.Equal(t, goes, changes[len(changes)-1].Goto, keys)
	}
}
