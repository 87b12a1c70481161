package marks

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/digits"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// marked is the screen with the questions before the first mark answered.
func marked(t require.TestingT, s desk.State) desk.Screen {
	screen, after, changes := screentest.After(New(), s, screentest.Keys("l m")...)
	require.Equal(t, desk.BeforeDrilling, changes[1].Ask)
	require.Equal(t, marking, screen.(screenType).stage(after))
	return screen
}

// screenType names the type where a variable has its name.
type screenType = screen

func TestPictures(t *testing.T) {
	s := screentest.State(t)
	screentest.Golden(t, "ask", New(), s, screentest.NoPlan)
	warned, _, _ := screentest.After(New(), s, screentest.Keys("l")...)
	screentest.Golden(t, "warn", warned, s, screentest.NoPlan)
	page := marked(t, s)
	screentest.Golden(t, "mark", page, s, screentest.NoPlan)
	pinned, _, _ := screentest.After(page, s, screentest.Keys("p")...)
	screentest.Golden(t, "pins", pinned, s, screentest.NoPlan)
	made, ticked, _ := screentest.After(page, s, screentest.Keys("enter")...)
	screentest.Golden(t, "second", made, ticked, screentest.NoPlan)
	listed, _, _ := screentest.After(made, ticked, screentest.Keys("tab")...)
	screentest.Golden(t, "table", listed, ticked, screentest.NoPlan)
	s.Settings.Units, s.Settings.Nearside = desk.Inches, desk.NearsideLeft
	screentest.Golden(t, "inches", page, s, screentest.NoPlan)
}

func TestNothingToMark(t *testing.T) {
	s := screentest.State(t)
	s.Job.Cut = nil
	s = screentest.Judged(s, s.Job)
	assert.Contains(t, screentest.Filled(t, New(), s, 60, 17), "No cut is placed")
	_, _, changes := screentest.After(New(), s, screentest.Keys("enter")...)
	assert.Equal(t, "Place", changes[0].Goto)
}

func TestAFaultyJobShowsNoNumbers(t *testing.T) {
	s := screentest.State(t)
	page := marked(t, s)
	s.Faults = []vehicles.Fault{{Key: "obstruction[0].x", Text: "the tape reads 10 mm, but its ends are 55 mm apart in height"}}
	view := screentest.Filled(t, page, s, 60, 17)
	assert.Contains(t, view, "obstruction[0].x")
	assert.NotContains(t, view, "█")
	_, _, changes := screentest.After(page, s, screentest.Keys("enter space")...)
	assert.Empty(t, changes[0].Tick+changes[1].Tick)
}

func TestEveryKindIsAskedFor(t *testing.T) {
	s := screentest.State(t)
	open := s.Result.NotLookedFor
	require.NotEmpty(t, open)
	screen := New()
	for n := range open {
		assert.Contains(t, screentest.Filled(t, screen, s, 60, 17), open[n])
		var changes []desk.Change
		screen, s, changes = screentest.After(screen, s, screentest.Keys("n")...)
		require.NotNil(t, changes[0].Job)
		assert.True(t, s.Job.Looked[open[n]])
		assert.Empty(t, changes[0].Step, "each answer can be taken back alone")
	}
	assert.Empty(t, s.Result.NotLookedFor)
	assert.Equal(t, warning, screen.(screenType).stage(s))
}

func TestWhatIsThereIsEntered(t *testing.T) {
	s := screentest.State(t)
	_, _, changes := screentest.After(New(), s, screentest.Keys("e")...)
	assert.Equal(t, "Underneath", changes[0].Goto)
	assert.Contains(t, changes[0].Say, s.Result.NotLookedFor[0])
	assert.Nil(t, changes[0].Job)
}

func TestWhatWasLeftOpenStaysInSight(t *testing.T) {
	s := screentest.State(t)
	at, _ := words.SplitAtCut(s.Result.Findings)
	for _, size := range screentest.Sizes {
		view := screentest.Filled(t, marked(t, s), s, size.W, size.H)
		assert.Contains(t, view, "28 kinds not looked for")
		assert.Contains(t, view, "Not tied: drill the pilot only")
		assert.Contains(t, view, "At the cut "+words.Tally(at))
	}
}

// The questions are of one place: they come again when the cut has moved, or when the verdict has got worse.
func TestTheQuestionsComeAgain(t *testing.T) {
	s := screentest.State(t)
	page := marked(t, s)
	moved := *s.Job.Cut
	moved.At[0] -= 10
	assert.Equal(t, asking, page.(screenType).stage(screentest.Judged(s, s.Job.WithCut(moved))))

	clear := s
	clear.Result.Verdict = rules.Clear
	clear.Result.NotLookedFor = nil
	page, _, changes := screentest.After(New(), clear, screentest.Keys("enter")...)
	assert.Equal(t, desk.BeforeDrilling, changes[0].Ask, "the cautions come also when all is clear")
	assert.Equal(t, marking, page.(screenType).stage(clear))
	clear.Result.Verdict = rules.Foul
	assert.Equal(t, warning, page.(screenType).stage(clear))
}

func TestMarkingWhatIsNotClearTakesItsOwnKey(t *testing.T) {
	s := screentest.State(t)
	screen, _, changes := screentest.After(New(), s, screentest.Keys("l enter space n down")...)
	assert.Equal(t, warning, screen.(screenType).stage(s))
	assert.Equal(t, "Runs", changes[1].Goto, "doubts at the cut are not the worst")
	require.NotNil(t, changes[1].Focus)
	assert.Equal(t, rules.Foul, changes[1].Focus.Verdict)
	for _, c := range changes {
		assert.Empty(t, c.Tick)
		assert.Nil(t, c.Job)
	}
}

func TestTicking(t *testing.T) {
	s := screentest.State(t)
	names := []string{}
	for _, it := range items(s) {
		names = append(names, it.id())
	}
	page, s, _ := screentest.After(marked(t, s), s, screentest.Keys("enter")...)
	assert.Equal(t, map[string]bool{"cut centre": true}, s.Ticked)
	back, _, _ := screentest.After(page, s, screentest.Keys("up")...)
	assert.Contains(t, screentest.Filled(t, back, s, 60, 17), "[x] made")
	assert.Equal(t, 1, page.(screenType).at, "on to the next")
	page, s, _ = screentest.After(page, s, screentest.Keys("space space")...)
	assert.False(t, s.Ticked[names[1]], "a second press takes the tick back")
	_, _, changes := screentest.After(page, s, screentest.Keys("up enter")...)
	assert.Empty(t, changes[1].Tick, "what is made stays made")
	for range len(names) - 1 {
		page, s, _ = screentest.After(page, s, screentest.Keys("enter")...)
	}
	for _, name := range names {
		assert.True(t, s.Ticked[name], name)
	}
	page, _, _ = screentest.After(page, s, screentest.Keys("down down")...)
	assert.Equal(t, len(names)-1, page.(screenType).at, "there is nothing behind the last")
	page, _, _ = screentest.After(page, s, screentest.Keys(strings.Repeat("up ", 2*len(names)))...)
	assert.Equal(t, 0, page.(screenType).at)
}

// hung is the sample van without what its exhaust is foul of, so that clips and muffler can be marked.
func hung(t testing.TB) desk.State {
	s := screentest.State(t)
	for exhaustFoul(s) {
		i := slices.IndexFunc(s.Result.Findings, func(f rules.Finding) bool {
			return f.Verdict == rules.Foul && f.Subject.Sort == rules.TheExhaust && f.Against.Sort == rules.AnObstruction
		})
		require.GreaterOrEqual(t, i, 0)
		job := s.Job
		job.Obstructions = job.Obstructions.Without(int(s.Result.Findings[i].Against.Index))
		s = screentest.Judged(s, job)
	}
	return s
}

// While the exhaust is foul its clips and muffler are not to be marked: it will hang elsewhere. Everything else is.
func TestMarksOfAFoulExhaustWait(t *testing.T) {
	s := screentest.State(t)
	require.True(t, exhaustFoul(s))
	for _, it := range items(s) {
		assert.True(t, it.check != nil || it.mark.Above != nil, it.id())
	}
	assert.Len(t, items(s), len(s.Marks.Marks)+len(s.Marks.Checks)-5, "three clips, and the muffler's ends")
	assert.Contains(t, waiting(s), "5 more")
	d := screentest.New(t, New(), s.Job, 100, 27)
	d.Type("lm<tab>")
	assert.Contains(t, d.View(100, 27), "5 more, of clips and muffler, once the exhaust is not foul")
	after := hung(t)
	assert.Len(t, items(after), len(after.Marks.Marks)+len(after.Marks.Checks))
	assert.Empty(t, waiting(after))
}

func TestClipsAreMarkedFromBelow(t *testing.T) {
	s := hung(t)
	page := marked(t, s)
	for i, it := range items(s) {
		if it.mark == nil || it.mark.Above != nil {
			continue
		}
		p := page.(screenType)
		p.at = i
		_, _, changes := screentest.After(p, s, screentest.Keys("v p")...)
		assert.Contains(t, changes[0].Say, "from below only")
		assert.Contains(t, changes[1].Say, "from below")
		assert.Contains(t, screentest.Filled(t, p, s, 60, 17), "FROM BELOW")
		return
	}
	t.Fatal("the trial job has no mark from below")
}

// The figures on the screen are those of the mark sheet, written as every length is.
func TestFiguresAreThoseOfTheMarkSheet(t *testing.T) {
	base := screentest.State(t)
	rapid.Check(t, func(t *rapid.T) {
		s := base
		cut := *s.Job.Cut
		cut.At = [2]float64{rapid.Float64Range(200, 3000).Draw(t, "x"), rapid.Float64Range(-800, 800).Draw(t, "y")}
		s = screentest.Judged(s, s.Job.WithCut(cut))
		s.Settings.Units = rapid.SampledFrom([]survey.Units{desk.Millimetres, desk.Inches}).Draw(t, "units")
		size := rapid.SampledFrom(screentest.Sizes).Draw(t, "size")
		page := marked(t, s).(screenType)
		page.at = rapid.IntRange(0, len(items(s))-1).Draw(t, "mark")
		page.below = rapid.Bool().Draw(t, "below")
		view := screentest.Filled(t, page, s, size.W, size.H)

		if c := items(s)[page.at].check; c != nil {
			requireFigure(t, view, survey.Format(c.Length, s.Settings.Units))
			return
		}
		m := *items(s)[page.at].mark
		bumper, left, right := m.Below.Bumper, m.Below.Left, m.Below.Right
		if m.Above != nil && !page.below {
			bumper, left, right = m.Above.Bumper, m.Above.Left, m.Above.Right
		}
		side, word := left, "from the left edge"
		if right < left {
			side, word = right, "from the right edge"
		}
		requireFigure(t, view, survey.Format(bumper, s.Settings.Units))
		requireFigure(t, view, survey.Format(side, s.Settings.Units))
		require.Contains(t, view, word)
	})
}

// requireFigure wants a number in block figures of some size in a picture.
// Millimetres are big in whole ones, with all their figures beside.
func requireFigure(t require.TestingT, view, text string) {
	require.Contains(t, view, text)
	if mm, err := strconv.ParseFloat(text, 64); err == nil {
		text = fmt.Sprintf("%.0f", math.Round(mm))
	}
	rows := strings.Split(view, "\n")
	for size := 1; size <= 6; size++ {
		big, ok := digits.Big(text, size)
		require.True(t, ok)
		for y := 0; y+len(big) <= len(rows); y++ {
			if stands(rows[y:y+len(big)], big) {
				return
			}
		}
	}
	require.Fail(t, fmt.Sprintf("%s is not in the picture", text), view)
}

// stands says whether rows hold a block one below the other, with nothing but blanks behind it.
func stands(rows, block []string) bool {
	from := strings.Index(rows[0], strings.TrimRight(block[0], " "))
	if from < 0 {
		return false
	}
	from = ansi.StringWidth(rows[0][:from])
	for y := range block {
		if strings.TrimRight(ansi.Cut(rows[y], from, ansi.StringWidth(rows[y])), " ") != strings.TrimRight(block[y], " ") {
			return false
		}
	}
	return true
}

// The two arcs of the pins meet where the mark is: by Pythagoras from the pins' places as the sheet gives them.
func TestPinReadingsAreArcsToTheMark(t *testing.T) {
	s := screentest.State(t)
	m := s.Marks.Marks[0]
	for side, shown := range map[float64]reading{1: screenType{}.pinReadings(m, s)[0], -1: screenType{}.pinReadings(m, s)[1]} {
		pin := geometry.Point3{X: 0, Y: side * s.Job.Pins(), Z: -60}
		mark := geometry.Point3{X: m.Above.X, Y: m.Above.Y}
		assert.InDelta(t, mark.Sub(pin).Norm(), shown.mm, 1e-6)
	}
}

func TestOtherMessagesAreNotKeys(t *testing.T) {
	s := screentest.State(t)
	page := marked(t, s)
	for _, msg := range []tea.Msg{tea.FocusMsg{}, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("p"), Paste: true}} {
		next, change, cmd := page.Update(msg, s)
		assert.Equal(t, page, next)
		assert.Equal(t, desk.Change{}, change)
		assert.Nil(t, cmd)
	}
}

func TestWandering(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		screentest.Wander(t, New(), "n", "e", "l", "m", "enter", "space", "up", "down", "v", "p", "tab", "esc")
	})
}

// The diagonals of the plate of the trial job's heater (190 by 150): Pythagoras, 242.07.
func TestDiagonalsAreTickedLikeMarks(t *testing.T) {
	s := screentest.State(t)
	page := marked(t, s)
	listed, _, _ := screentest.After(page, s, screentest.Keys("tab")...)
	view := screentest.Filled(t, listed, s, 100, 27)
	assert.Regexp(t, `\[ \] diagonal: plate 1 to plate 3 +242.1`, view)
	assert.Regexp(t, `\[ \] pins apart: left pin to right pin +[0-9.]+`, view)
	at := -1
	for i, it := range items(s) {
		if it.check != nil && at < 0 {
			at = i
			assert.NotNil(t, items(s)[i-1].mark.Above, "taped while on top")
		}
	}
	require.Positive(t, at)
	p := page.(screenType)
	p.at = at
	view = screentest.Filled(t, p, s, 60, 17)
	assert.Contains(t, view, "check: plate 1 to plate 3")
	assert.Contains(t, view, "Both diagonals must be")
	requireFigure(t, view, "242.1")
	next, ticked, changes := screentest.After(p, s, screentest.Keys("v p enter")...)
	assert.Contains(t, changes[0].Say+changes[1].Say, "from mark to mark")
	assert.True(t, ticked.Ticked["from plate 1 to plate 3"])
	assert.Equal(t, at+1, next.(screenType).at)
	next, _, _ = screentest.After(next, ticked, screentest.Keys("up")...)
	assert.Contains(t, screentest.Filled(t, next, ticked, 60, 17), "[x] it says so")
	screentest.Golden(t, "check", p, s, screentest.NoPlan)
}

// Where all that is not clear is so because a thing was not measured on this van, nobody is told to move the cut.
func TestWhatIsOnlyUnconfirmedIsConfirmed(t *testing.T) {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1400, 250}
	job.Exhaust, job.Intake, job.Fuel = nil, nil, nil
	s := screentest.Judged(screentest.State(t), job.WithCut(cut))
	require.NotEqual(t, rules.Clear, s.Result.Verdict)
	assert.Equal(t, "reductant tank", named(words.OnlyUnconfirmed(&s.Result)))
	text := strings.Join(strings.Fields(ansi.Strip(strings.Join(startFoot(warning, s, 60), " "))), " ")
	assert.Contains(t, text, "nobody confirmed on this van: reductant tank")
	assert.Contains(t, text, "(m in Underneath)")
	assert.NotContains(t, text, "Move the cut")
	_, _, changes := screentest.After(New(), s, screentest.Keys("l enter")...)
	assert.Equal(t, "Underneath", changes[1].Goto, "where it is confirmed")
	foul := screentest.State(t).Result
	assert.Empty(t, words.OnlyUnconfirmed(&foul), "a foul cut is to be moved")
}

func level(mm float64) survey.Reading { return survey.FromNumber(mm, false) }

// A shelf between the bumper and the mark is named where its tape is read, with a way round it; from below nothing stands on the floor.
func TestWhatStandsOnTheFloorIsSaidWhereTheTapeIsRead(t *testing.T) {
	s := screentest.State(t)
	s.Job.Fittings = vehicles.List[vehicles.Fitting]{{Name: "shelf", Rise: vehicles.Span{To: 400, Set: true}}}
	at := s.Job.Cut.At
	s.Job.Fittings[0].Place = vehicles.Place{
		X: vehicles.Pair{level(at[0] - 600), level(at[0] - 300)}, Y: vehicles.Pair{level(at[1] - 30), level(at[1] + 20)},
	}
	s = screentest.Judged(s, s.Job)
	page := marked(t, s)
	view := strings.Join(strings.Fields(strings.ReplaceAll(screentest.Filled(t, page, s, 60, 27), "|", " ")), " ")
	assert.Contains(t, view, "shelf is in the way of the tape from the bumper edge, once fitted: tape 40 mm further left, where it says")
	assert.Contains(t, strings.Join(page.Plain(s).Here, " "), "shelf is in the way")
	below, _, _ := screentest.After(page, s, screentest.Keys("v")...)
	assert.NotContains(t, screentest.Filled(t, below, s, 100, 27), "shelf is in")
}

// What Enter shows before the first mark is the worst there is, the first of those that are listed: a doubt at the cut is not worse than
// what is foul elsewhere.
func TestTheWorstIsWhatIsShownBeforeTheFirstMark(t *testing.T) {
	for _, at := range [][2]float64{{2250, 237}, {1255, 195}, {1400, 250}} {
		job := vehicles.Demo()
		cut := *job.Cut
		cut.At = at
		s := screentest.Judged(screentest.State(t), job.WithCut(cut))
		_, _, changes := screentest.After(New(), s, screentest.Keys("l enter")...)
		shown := changes[1].Focus
		require.NotNil(t, shown)
		for i := range s.Result.Findings {
			assert.GreaterOrEqual(t, shown.Verdict, s.Result.Findings[i].Verdict, "%v", at)
		}
		warned, _, _ := screentest.After(New(), s, screentest.Keys("l")...)
		rows := strings.Split(screentest.Filled(t, warned, s, 160, 47), "\n")
		first := slices.IndexFunc(rows, func(row string) bool { return strings.HasPrefix(row, "foul ") || strings.HasPrefix(row, "doubtful ") })
		require.Positive(t, first)
		assert.Contains(t, rows[first], words.Named(*shown))
	}
}

// The template is had where it is used: while marking, on one mark and in the list of all.
func TestTheTemplateIsPrintedWhileMarking(t *testing.T) {
	s := screentest.State(t)
	m := marked(t, s)
	for _, keys := range []string{"t", "\tt"} {
		var change desk.Change
		for _, r := range keys {
			press := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}
			if r == '\t' {
				press = tea.KeyMsg{Type: tea.KeyTab}
			}
			m, change, _ = m.Update(press, s)
		}
		assert.Equal(t, desk.PrintTemplate, change.Ask)
	}
}

// seen is a screen's view in one line of single blanks.
func seen(view string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(view, "|", " ")), " ")
}

// What stands in the way of the farther side's tape, of a pin's and of a length to check is said where each is read, with another to tape.
func TestEachTapeInTheWayIsSaidWithAnother(t *testing.T) {
	s := screentest.State(t)
	at := s.Job.Cut.At
	shelf := func(x, y [2]float64) desk.State {
		s.Job.Fittings = vehicles.List[vehicles.Fitting]{{Name: "shelf", Rise: vehicles.Span{To: 400, Set: true}, Place: vehicles.Place{
			X: vehicles.Pair{level(x[0]), level(x[1])}, Y: vehicles.Pair{level(y[0]), level(y[1])},
		}}}
		return screentest.Judged(s, s.Job)
	}
	farther := shelf([2]float64{at[0] - 60, at[0] + 60}, [2]float64{at[1] - 500, at[1] - 300})
	view := seen(screentest.Filled(t, marked(t, farther), farther, 60, 40))
	assert.Contains(t, view, "shelf is in the way of the tape from the right edge, once fitted: tape from the left edge, 645 mm.")

	pin := shelf([2]float64{100, 200}, [2]float64{500, 700})
	page, _, _ := screentest.After(marked(t, pin), pin, screentest.Keys("p")...)
	view = seen(screentest.Filled(t, page, pin, 60, 40))
	assert.Contains(t, view, "shelf is in the way of the tape from the left pin, once fitted: tape from the bumper edge and from the left edge.")
	assert.Regexp(t, `from the left pin [\d.]+ mm ± [\d.]+ \(95 %\)`, view, "how sure it is stands beside each pin's tape")
	assert.Contains(t, strings.Join(page.Plain(pin).Here, " "), "from the left pin, once fitted")

	across := shelf([2]float64{1500, 1700}, [2]float64{-700, 700})
	check := marked(t, across)
	for range 20 {
		if strings.Contains(screentest.Filled(t, check, across, 60, 40), "floor, front right") && strings.Contains(screentest.Filled(t, check, across, 60, 40), "check: left pin") {
			break
		}
		check, _, _ = screentest.After(check, across, screentest.Keys("down")...)
	}
	assert.Contains(t, seen(screentest.Filled(t, check, across, 60, 40)), "shelf is in the way of the tape, once fitted: tape from both pins to the centreline 1450 mm ahead of the bumper, either says")
}

// After the pilot was measured the marks that moved stay named, with by how much, and the stubs stand there with their readings.
func TestWhatMovedStaysNamed(t *testing.T) {
	s := screentest.State(t)
	cut := *s.Job.Cut
	cut.Drilled = &vehicles.Pair{level(cut.At[0] + 4), level(cut.At[1] - 3)}
	s = screentest.Judged(s, s.Job.WithCut(cut))
	m := marked(t, s)
	all, _, _ := screentest.After(m, s, screentest.Keys("tab")...)
	view := seen(screentest.Filled(t, all, s, 120, 40))
	by := words.Moved(s.Marks.Pilot.Off, s.Settings)
	assert.Contains(t, view, "Moved since the pilot was measured, "+by+": plate 1 front left, plate 2 rear left")
	assert.Contains(t, view, "exhaust stub")
	hole := s.Marks.Holes[0].Above
	assert.Regexp(t, `pilot hole as drilled +above +`+strings.Join([]string{survey.Figure(hole.Bumper), survey.Figure(hole.Left), survey.Figure(hole.Right)}, " +"), screentest.Filled(t, all, s, 120, 40))
	assert.Contains(t, view, "cut centre as meant")
	assert.Contains(t, strings.Join(m.Plain(s).All(), " "), "pilot hole as drilled, above, nothing to tick")
	one, _, _ := screentest.After(m, s, screentest.Keys("down")...)
	assert.Contains(t, seen(screentest.Filled(t, one, s, 60, 40)), "Moved "+by+" since the pilot was measured.")
	assert.Contains(t, strings.Join(m.Plain(s).All(), " "), "Moved since the pilot was measured, "+by)
}

// All that is not clear is seen before the first mark in the smallest window, too: by keys, by the wheel.
func TestAllThatIsNotClearIsSeenBeforeTheFirstMark(t *testing.T) {
	const w, h = 60, 16 // of 60 by 20
	s := screentest.State(t)
	p, _, _ := New().Update(tea.WindowSizeMsg{Width: w, Height: h}, s)
	p, s, _ = screentest.After(p, s, screentest.Keys("l")...)
	seen := map[string]bool{}
	look := func() {
		view := ansi.Strip(p.View(s, w, h))
		for _, f := range notClear(s) {
			if strings.Contains(view, f.About()+", ") {
				seen[f.About()] = true
			}
		}
		require.Contains(t, view, "mark all the same", "the answers stay")
	}
	look()
	require.Less(t, len(seen), len(notClear(s)))
	for range notClear(s) {
		p, s, _ = screentest.After(p, s, screentest.Keys("down")...)
		look()
	}
	assert.Len(t, seen, len(notClear(s)))
	end := p.View(s, w, h)
	p, s, _ = screentest.After(p, s, screentest.Keys("pgup pgup pgup")...)
	assert.NotEqual(t, end, p.View(s, w, h))
	for range notClear(s) {
		p, _, _ = p.Update(tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonWheelDown}, s)
	}
	assert.Equal(t, end, p.View(s, w, h))
}
