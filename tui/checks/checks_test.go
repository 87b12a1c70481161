package checks

import (
	"strconv"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

type page = screen

func TestPictures(t *testing.T) {
	s := screentest.State(t)
	screentest.Golden(t, "list", New(), s, planOf(New()))
	down, _, _ := screentest.After(New(), s, screentest.Keys("down down down down")...)
	screentest.Golden(t, "down", down, s, planOf(down))
	only, _, _ := screentest.After(New(), s, screentest.Keys("w w")...)
	screentest.Golden(t, "foul", only, s, planOf(only))
	large, after, _ := screentest.After(New(), s, append([]tea.Msg{tea.WindowSizeMsg{Width: 100, Height: 27}}, screentest.Keys("enter")...)...)
	screentest.Golden(t, "large", large, after, planOf(large))
	s.Settings.Units = desk.Inches
	screentest.Golden(t, "inches", New(), s, planOf(New()))
	s.Settings.Units = desk.Millimetres
	s.Faults = []vehicles.Fault{{Key: "obstruction[0].x", Text: "the tape reads 10 mm, but its ends are 55 mm apart in height"}}
	screentest.Golden(t, "fault", New(), s, planOf(New()))
	screentest.Golden(t, "empty", New(), screentest.Judged(desk.State{}, vehicles.Job{Ref: "TL-08", Floor: s.Job.Floor}), planOf(New()))
}

func planOf(p desk.Screen) func(w, h int) screentest.Area {
	return func(w, h int) screentest.Area {
		listW, planW, planH := p.(page).sizes(w, h)
		if p.(page).large {
			return screentest.Area{W: planW, H: planH}
		}
		return screentest.Area{X: listW + min(planW, 1), W: planW, H: planH}
	}
}

// Every finding can be reached, and what is said of it is what rules found.
func TestEveryFindingIsShown(t *testing.T) {
	s := screentest.State(t)
	p, _, _ := screentest.After(New(), s, tea.WindowSizeMsg{Width: 160, Height: 47})
	for _, f := range rules.ForPeople(s.Result.Findings) {
		view := screentest.Filled(t, p, s, 160, 47)
		assert.Contains(t, view, f.Limit.Heading())
		assert.Contains(t, view, strings.ToUpper(f.Verdict.String())+" "+words.Margin(*f, desk.Millimetres))
		assert.Contains(t, view, "Says: "+f.Limit.Book)
		if f.Verdict != rules.Clear {
			assert.Contains(t, view, "Do: ")
		}
		if f.Verdict == rules.Doubtful {
			assert.Contains(t, view, "Why: ")
		}
		p, _, _ = screentest.After(p, s, screentest.Keys("down")...)
	}
	assert.Equal(t, len(s.Result.Findings)-1, p.(page).at, "there is nothing below the last")
	p, _, _ = screentest.After(p, s, screentest.Keys("home")...)
	assert.Zero(t, p.(page).at)
	p, _, _ = screentest.After(p, s, screentest.Keys("end pgup pgup pgup pgup pgup up")...)
	assert.Zero(t, p.(page).at)
}

func TestTheFilter(t *testing.T) {
	s := screentest.State(t)
	counts := map[rules.Verdict]int{}
	for _, f := range s.Result.Findings {
		counts[f.Verdict]++
	}
	p := New()
	for _, want := range []int{
		len(s.Result.Findings), counts[rules.Foul] + counts[rules.Doubtful], counts[rules.Foul], len(s.Result.Findings),
	} {
		assert.Len(t, p.(page).listed(s), want)
		p, _, _ = screentest.After(p, s, screentest.Keys("w")...)
	}
	s.Result.Findings = nil
	for range filters {
		assert.NotContains(t, screentest.Filled(t, p, s, 60, 17), "▶")
		p, _, _ = screentest.After(p, s, screentest.Keys("enter p w")...)
		assert.False(t, p.(page).large, "there is nothing to show")
	}
}

func TestWhatIsMissingStaysInSight(t *testing.T) {
	s := screentest.State(t)
	require.NotEmpty(t, s.Result.Unchecked)
	for _, size := range screentest.Sizes {
		p := New()
		for range 3 {
			view := screentest.Filled(t, p, s, size.W, size.H)
			assert.Contains(t, view, "Not checked, not entered: fuel, pump, matching points")
			assert.Contains(t, view, "Not checked, nobody has said: muffler drain, ")
			assert.Contains(t, view, "Not looked for, 28 at the cut, 30 at the runs, 13")
			p, _, _ = screentest.After(p, s, screentest.Keys("w down")...)
		}
	}
}

func TestShowingAFinding(t *testing.T) {
	s := screentest.State(t)
	p, _, _ := screentest.After(New(), s, tea.WindowSizeMsg{Width: 60, Height: 17})
	p, s, _ = screentest.After(p, s, screentest.Keys("down")...)
	f := s.Result.Findings[1]
	require.NotZero(t, f.Places)
	p, s, changes := screentest.After(p, s, screentest.Keys("enter")...)
	require.NotNil(t, changes[0].Camera)
	assert.Contains(t, screentest.Filled(t, p, s, 60, 17), "SEEN FROM BELOW")
	_, s, _ = screentest.After(p, s, screentest.Keys("v")...)
	assert.Contains(t, screentest.Filled(t, p, s, 60, 17), "SEEN FROM ABOVE", "the plan's keys hold on the large plan")
	for _, leave := range []string{"esc", "enter"} {
		back, _, _ := screentest.After(p, s, screentest.Keys(leave)...)
		assert.False(t, back.(page).large)
	}
	_, _, changes = screentest.After(p, s, screentest.Keys("p")...)
	assert.Equal(t, "Runs", changes[0].Goto, "it is of the exhaust")
	require.NotNil(t, changes[0].Focus)
	assert.Equal(t, f, *changes[0].Focus)
}

func TestAFindingIsShownWhereItsThingIsMoved(t *testing.T) {
	s := screentest.State(t)
	went := map[string]string{}
	for _, f := range s.Result.Findings {
		went[f.ID()] = desk.Show(&f).Goto
	}
	for id, want := range map[string]string{
		"cut.clearance": "Place", "body.space": "Place", "stub.in-cut": "Place", "exhaust.clearance": "Runs", "exhaust.outlet": "Runs", "intake.apart": "Runs",
	} {
		assert.Equal(t, want, went[id], id)
	}
}

func TestTapsInTheList(t *testing.T) {
	s := screentest.State(t)
	p, _, _ := screentest.After(New(), s, tea.WindowSizeMsg{Width: 100, Height: 27})
	tap := func(x, y int) tea.Msg {
		return tea.MouseMsg{X: x, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft}
	}
	picked, _, _ := screentest.After(p, s, tap(5, 4))
	assert.Equal(t, 2, picked.(page).at, "the head has two rows")
	picked, _, _ = screentest.After(p, s, tap(5, 1), tap(5, 26))
	assert.Equal(t, 0, picked.(page).at)
	picked, _, _ = screentest.After(p, s, tap(90, 10))
	assert.True(t, picked.(page).large)
	picked, _, _ = screentest.After(p, s, tap(5, 5), tap(5, 5))
	assert.True(t, picked.(page).large, "the picked one is shown")
	assert.Equal(t, 3, picked.(page).at)
	tall, few, _ := screentest.After(New(), s, tea.WindowSizeMsg{Width: 100, Height: 60})
	picked, _, _ = screentest.After(tall, few, screentest.Keys("end")...)
	picked, _, _ = screentest.After(picked, few, tap(5, 45))
	assert.False(t, picked.(page).large, "nothing stands below the last")
	wheel := tea.MouseMsg{X: 5, Y: 5, Action: tea.MouseActionPress, Button: tea.MouseButtonWheelDown}
	picked, _, _ = screentest.After(p, s, wheel, wheel)
	assert.Equal(t, 2, picked.(page).at)
}

func TestWhatToDoAboutAFinding(t *testing.T) {
	limit, ok := rules.Builtin().Lookup("cut.clearance", "")
	require.True(t, ok)
	f := rules.Finding{Limit: &limit, Sigma: 1}
	assert.Equal(t, "look the value up in the heater's instructions and enter it in the job's rules.", advice(f, desk.State{}))
	f.Required = vehicles.Some(60)
	assert.Equal(t, "measure again, or move the cut away from it, in Place.", advice(f, desk.State{}))
	f.Unconfirmed, f.Against.Sort = true, rules.AnOpening
	assert.Equal(t, "confirm it (m in Underneath), or measure it again.", advice(f, desk.State{}))
	assert.Equal(t, "Underneath", desk.Show(&rules.Finding{Limit: &limit, Unconfirmed: true, Against: rules.Thing{Sort: rules.AnObstruction}}).Goto)
	f.Unconfirmed, f.Against, f.Verdict = false, rules.Thing{}, rules.Foul
	assert.Equal(t, "move the cut away from it, in Place.", advice(f, desk.State{}))
}

func TestWhatMakesItUnsure(t *testing.T) {
	assert.Equal(t, "the heights", unsure(rules.Spread{Survey: 1, Mark: 2, Height: 3}))
	assert.Empty(t, unsure(rules.Spread{}))
}

func TestWandering(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		screentest.Wander(t, New(), "w", "n", "e", "p", "enter", "esc", "up", "down", "pgup", "pgdown", "home", "end", "v", "+", "-", "f", "g", "l")
	})
}

// advised is the trial job with what to measure next.
func advised(t *testing.T) desk.State {
	s := screentest.State(t)
	s.Next = desk.Next{Advice: rules.Next(s.Result, rules.Builtin()), Known: true}
	require.NotEmpty(t, s.Next.Advice)
	return s
}

func TestPicturesOfWhatToMeasureNext(t *testing.T) {
	s := advised(t)
	listed, _, _ := screentest.After(New(), s, screentest.Keys("n")...)
	screentest.Golden(t, "next", listed, s, planOf(listed))
	from, _, _ := screentest.After(New(), s, screentest.Keys("down down down down e")...)
	screentest.Golden(t, "from", from, s, planOf(from))
}

func TestWhatToMeasureNext(t *testing.T) {
	s := advised(t)
	p, _, _ := screentest.After(New(), s, append([]tea.Msg{tea.WindowSizeMsg{Width: 100, Height: 27}}, screentest.Keys("n")...)...)
	for i, a := range s.Next.Advice {
		view := screentest.Filled(t, p, s, 100, 27)
		assert.Contains(t, view, "▶"+a.What[:20])
		_, _, changes := screentest.After(p, s, screentest.Keys("enter")...)
		switch {
		case a.Obstruction >= 0:
			assert.Equal(t, "Underneath", changes[0].Goto)
			assert.Equal(t, desk.Open{Obstruction: a.Obstruction, Opening: -1, Field: a.Field}, *changes[0].Open)
		case a.Field == rules.FieldTie:
			assert.Equal(t, "Match", changes[0].Goto)
		case a.Field == rules.FieldDrilled:
			assert.Equal(t, "Place", changes[0].Goto)
			assert.Contains(t, view, "look again from below before you drill")
		}
		assert.Equal(t, i, p.(page).picking(s))
		p, _, _ = screentest.After(p, s, screentest.Keys("down")...)
	}
	old := s
	old.Next.Known = false
	_, _, changes := screentest.After(p, old, screentest.Keys("enter")...)
	assert.Empty(t, changes[0].Goto, "it may be of another thing by now")
	assert.Contains(t, changes[0].Say, "worked out afresh")
	none := s
	none.Next = desk.Next{Known: true}
	assert.Contains(t, screentest.Filled(t, p, none, 60, 17), "no reading would decide what is doubtful")
	for _, leave := range []string{"n", "esc"} {
		back, _, _ := screentest.After(p, s, screentest.Keys(leave)...)
		assert.Contains(t, screentest.Filled(t, back, s, 100, 27), "Checks: all")
	}
	tap := func(y int) tea.Msg {
		return tea.MouseMsg{X: 5, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft}
	}
	p, _, _ = screentest.After(p, s, screentest.Keys("home")...)
	_, _, changes = screentest.After(p, s, tap(2))
	assert.NotEmpty(t, changes[0].Goto, "a tap on the picked row goes there")
	_, _, changes = screentest.After(p, s, tap(1), tap(40))
	assert.Empty(t, changes[0].Goto+changes[1].Goto)
}

// The parts of a finding's bars are those of its variance: they come to 100 %, which rounding may miss by half a percent
// for each.
func TestTheBarsAreAllOfIt(t *testing.T) {
	s := screentest.State(t)
	for _, f := range s.Result.Findings {
		for _, h := range []int{4, 20} {
			rows := budget(f, s, 60, h)
			assert.LessOrEqual(t, len(rows), h, f.ID())
			if f.Sigma == 0 {
				assert.Len(t, rows, 1)
				continue
			}
			sum, last := 0., 101.
			for _, row := range rows[1:] {
				assert.Equal(t, 60, ansi.StringWidth(row))
				part := partOf(t, ansi.Strip(row))
				if !strings.Contains(row, "all others") {
					assert.LessOrEqual(t, part, last, "the largest first")
				}
				sum, last = sum+part, part
			}
			assert.InDelta(t, 100, sum, float64(len(rows))/2, f.ID())
		}
	}
}

func partOf(t *testing.T, row string) float64 {
	before, _, ok := strings.Cut(row, " %")
	require.True(t, ok, row)
	part, err := strconv.ParseFloat(before[strings.LastIndex(before, " ")+1:], 64)
	require.NoError(t, err, row)
	return part
}

func TestBars(t *testing.T) {
	assert.Equal(t, "██████████", bar(1, 10))
	assert.Equal(t, "█████", bar(0.5, 10))
	assert.Equal(t, "█▎", bar(0.125, 10), "an eighth of ten cells is one and two eighths")
	assert.Equal(t, "▏", bar(1e-9, 10), "what is there shows")
}

// Where rows are few, what was not checked has one, which ends in how many more there are and never amid a name.
func TestWhatWasNotCheckedEndsInHowMany(t *testing.T) {
	u := undone{"Not checked, nobody has said", []string{"muffler drain", "deck: steel or timber", "who", "when"}}
	for w, want := range map[int]string{
		100: "Not checked, nobody has said: muffler drain, deck: steel or timber, who, when",
		70:  "Not checked, nobody has said: muffler drain, 3 more",
		60:  "Not checked, nobody has said: muffler drain, 3 more",
		40:  "Not checked, nobody has said",
	} {
		assert.Equal(t, want, u.inRow(w), w)
	}
	s := screentest.State(t)
	require.Greater(t, len(notChecked(s)), 1)
	for _, row := range open(s, 60, 17) {
		assert.NotContains(t, row, "…")
	}
}
