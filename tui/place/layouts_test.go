package place

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/field"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/plan"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// looking opens the layouts and returns the commands that seek them and look how far they are.
func looking(t *testing.T, s desk.State) (p desk.Screen, seek, watch tea.Cmd) {
	p, change, cmd := New().Update(screentest.Keys("c")[0], s)
	require.Empty(t, change)
	require.NotNil(t, cmd)
	both := cmd().(tea.BatchMsg)
	require.Len(t, both, 2)
	return p, both[0], both[1]
}

// proposing opens the layouts and waits for them.
func proposing(t *testing.T, s desk.State) desk.Screen {
	p, seek, _ := looking(t, s)
	assert.Contains(t, screentest.Filled(t, p, s, 100, 27), "Looking for whole layouts...")
	p, _, _ = p.Update(seek(), s)
	return p
}

// From a cut that is foul to a whole layout that breaks nothing, by keys, in one undo step.
func TestFromAFoulCutToAWholeLayoutInAFewKeys(t *testing.T) {
	d := screentest.New(t, New(), vehicles.Demo(), 100, 27)
	require.Equal(t, rules.Foul, d.State.Result.Verdict)
	before := d.State.Job
	keys := d.Type("c")
	d.Send(d.Work())
	keys += d.Type("<enter>")
	assert.Less(t, keys, 15)
	t.Log(keys, d.Said)
	assert.NotEqual(t, rules.Foul, d.State.Result.Verdict)
	for _, want := range []string{"Laid out: cut at ", "exhaust ", "intake ", "fuel line ", "takes all of it back."} {
		assert.Contains(t, d.Said, want)
	}
	assert.False(t, d.Screen.Typing())
	d.Undo()
	assert.Equal(t, before, d.State.Job, "one step takes all of it back")
	assert.Equal(t, "layout 1", d.Moved(), "and is called what it was taken as")
}

// What is said of a layout that was taken is as long as there is room for: a row on the smallest screen, where its place stands in the panel and its
// runs on *Runs*, and why a fuel line is wanting in another.
func TestWhatIsSaidOfATakenLayoutFits(t *testing.T) {
	s := demo(t)
	l := proposing(t, s).(page).proposed()[0]
	lacks, sought := l, l
	lacks.Result.Job = l.Result.Job.WithRun(vehicles.FuelRun, nil)
	lacks.Result.Job.Obstructions = slices.DeleteFunc(slices.Clone(l.Result.Job.Obstructions), func(o vehicles.Obstruction) bool { return o.Is(vehicles.VanTank) })
	lacks.Result.Plan.Fuel = nil
	sought.Result.Job = l.Result.Job.WithRun(vehicles.FuelRun, nil)
	sought.Result.Plan.Fuel = nil
	miss := l.Result.Findings[0]
	miss.Margin, miss.Verdict = vehicles.Some(-7.3), rules.Foul
	sought.FuelMiss = &rules.Route{Run: &vehicles.Run{}, Verdict: rules.Foul, Misses: []rules.Finding{miss}}
	for what, c := range map[string]struct {
		of   rules.Layout
		rows int
		says string
	}{"all of it": {l, 1, "Laid out: cut, exhaust, intake, fuel line."}, "no tank": {lacks, 2, "no fuel tank is entered"}, "a near miss": {sought, 2, "7.3 mm short"}} {
		m := screen{w: 60, h: 17}
		said := m.saysLaidOut(&c.of, s)
		assert.LessOrEqual(t, len(desk.Wrap(said, 60)), c.rows, "%s: %s", what, said)
		assert.Contains(t, said, c.says)
		assert.Contains(t, said, "Ctrl-Z undoes it.", what)
		assert.NotContains(t, said, "  ")
		m.w, m.h = 100, 27
		said = m.saysLaidOut(&c.of, s)
		assert.LessOrEqual(t, len(desk.Wrap(said, 100)), 3, "%s: %s", what, said)
		assert.Regexp(t, "exhaust .* long.*takes all of it back", said, what)
		m.w = aloud.Unbroken
		assert.Regexp(t, "exhaust .* long.*takes all of it back", m.saysLaidOut(&c.of, s), what)
	}
}

func TestArrowsGoThroughTheLayoutsAndThePlanShowsEach(t *testing.T) {
	s := demo(t)
	p := proposing(t, s)
	best := p.(page).proposed()
	require.Len(t, best, 3)
	for _, size := range screentest.Sizes {
		seen := map[string]bool{}
		for i := range best {
			picture := screentest.Filled(t, p, s, size.W, size.H)
			assert.Contains(t, picture, "> ")
			assert.Contains(t, strings.Join(strings.Fields(picture), " "), "layouts of what was entered, "+string(rune('1'+i))+" of 3")
			area := planArea(size.W, size.H)
			seen[cropped(picture, area.W, area.H)] = true
			p, _, _ = p.Update(screentest.Keys("down")[0], s)
		}
		if size.W < abreastFrom {
			assert.Len(t, seen, 3, "each picture is another, %s", size.Name)
		}
	}
	p, _, _ = p.Update(screentest.Keys("up")[0], s)
	_, after, _ := screentest.After(p, s, screentest.Keys("enter")...)
	assert.Equal(t, best[2].Result.Job, after.Job)
}

func TestEscStopsTheSearch(t *testing.T) {
	s := demo(t)
	p, seek, watch := looking(t, s)
	p, change, _ := p.Update(tea.KeyMsg{Type: tea.KeyEsc}, s)
	assert.Contains(t, change.Say, "Nothing was changed")
	assert.False(t, p.Typing())
	assert.Nil(t, seek(), "what was stopped answers nothing")
	_, _, again := p.Update(watch(), s)
	assert.Nil(t, again)
}

// Enter before there is anything to take does no harm: the search goes on, and that is said in a line.
func TestEnterBeforeALayoutIsFoundLetsTheSearchGoOn(t *testing.T) {
	s := demo(t)
	p, seek, _ := looking(t, s)
	for range 2 {
		var change desk.Change
		p, change, _ = p.Update(tea.KeyMsg{Type: tea.KeyEnter}, s)
		assert.Nil(t, change.Job)
		assert.Regexp(t, "still looked for.*Esc stops it", change.Say)
		assert.LessOrEqual(t, len(change.Say), 60, "in a line")
		assert.True(t, p.Typing())
	}
	answer := seek()
	require.NotNil(t, answer, "it was not stopped")
	p, _, _ = p.Update(answer, s)
	assert.NotEmpty(t, p.(page).proposed())
}

// Nor does a stray tap on the plan.
func TestATapLetsTheSearchGoOn(t *testing.T) {
	s := demo(t)
	p, seek, _ := looking(t, s)
	p, _, _ = p.Update(tea.WindowSizeMsg{Width: 100, Height: 27}, s)
	p, change, _ := p.Update(tea.MouseMsg{X: 30, Y: 12, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress}, s)
	assert.Regexp(t, "still looked for.*Esc stops it", change.Say)
	assert.True(t, p.Typing())
	assert.NotNil(t, seek(), "it was not stopped")
}

func TestTheSearchSaysHowFarItIs(t *testing.T) {
	s := demo(t)
	p, seek, watch := looking(t, s)
	look := watch()
	p, _, again := p.Update(look, s)
	require.NotNil(t, again, "it is looked at again")
	answer := seek()
	p, _, _ = p.Update(again(), s)
	assert.Regexp(t, `Looking for whole layouts\.\.\. runs from place \d+ of \d+`, strings.Join(strings.Fields(screentest.Filled(t, p, s, 60, 17)), " "))
	p, _, _ = p.Update(answer, s)
	_, _, again = p.Update(look, s)
	assert.Nil(t, again, "there is nothing more to look at")
}

// An answer to a job that has changed since is heard by nobody, and what is shown of it is left.
func TestLayoutsOfAnotherJobAreLeft(t *testing.T) {
	s := demo(t)
	fewer := s.Job
	fewer.Obstructions = fewer.Obstructions.Without(0)
	other := screentest.Judged(s, fewer)
	p, seek, _ := looking(t, s)
	answer := seek()
	late, _, _ := p.Update(answer, other)
	assert.False(t, late.Typing(), "what comes late is of another job")
	shown := proposing(t, s)
	assert.NotContains(t, screentest.Filled(t, shown, other, 100, 27), "layouts")
	p, seek, _ = looking(t, s)
	_, _, _ = p.Update(tea.KeyMsg{Type: tea.KeyF1}, other)
	assert.Nil(t, seek(), "it is stopped")
}

func TestADrilledCutIsNotMovedByALayout(t *testing.T) {
	_, s, _ := screentest.After(New(), screentest.State(t), screentest.Keys("m 1222 enter L652 enter")...)
	require.NotNil(t, s.Job.Cut.Drilled)
	p := proposing(t, s)
	require.NotEmpty(t, p.(page).proposed())
	assert.Contains(t, screentest.Filled(t, p, s, 100, 27), "The hole stays.")
	_, after, _ := screentest.After(p, s, screentest.Keys("enter")...)
	assert.Equal(t, s.Job.Cut, after.Job.Cut)
	assert.Equal(t, s.Job.Heater, after.Job.Heater)
	assert.NotEqual(t, s.Job.Exhaust, after.Job.Exhaust)
}

// Where the hole stays and its own layout breaks nothing there is none beside it: that is said.
func TestFewerThanThreeLayoutsAreSaidToBeAll(t *testing.T) {
	s := demo(t)
	_, s, _ = screentest.After(proposing(t, s), s, screentest.Keys("enter")...)
	_, s, _ = screentest.After(New(), s, screentest.Keys("m 1430 enter 194 enter")...)
	require.NotNil(t, s.Job.Cut.Drilled)
	p := proposing(t, s)
	require.Len(t, p.(page).proposed(), 1)
	assert.Contains(t, strings.Join(p.Plain(s).All(), "\n"), words.NoMoreLayouts)
	assert.Contains(t, screentest.Filled(t, p, s, 100, 27), "No other was found")
}

func TestWithoutAHeaterThereAreNoLayouts(t *testing.T) {
	s := demo(t)
	job := s.Job
	job.Heater, job.Exhaust, job.Intake, job.Fuel = nil, nil, nil, nil
	_, _, changes := screentest.After(New(), screentest.Judged(s, job), screentest.Keys("c")...)
	assert.Contains(t, changes[0].Say, "No heater")
}

// Letters on the plan, in the list in words and of the layouts are the same, the area of the best layout first.
func TestAreasAreRankedByTheirLayouts(t *testing.T) {
	s := demo(t)
	p := proposing(t, s).(page)
	areas, room := p.pane.Areas(s)
	var letters []string
	for _, l := range p.proposed() {
		if !slices.Contains(letters, l.Area) { // two may be in one area
			letters = append(letters, l.Area)
			assert.Equal(t, areas[len(letters)-1].Name, l.Area)
		}
		assert.GreaterOrEqual(t, room.Margins.At(l.At).Margin, 0.)
	}
	roomiest := room.Areas(1)
	require.Len(t, areas, len(roomiest))
	order := func(list []field.Area) (at []geometry.Point) {
		for i, a := range list {
			assert.Equal(t, roomiest[i].Name, a.Name)
			at = append(at, a.Best.At)
		}
		return at
	}
	assert.NotEqual(t, order(roomiest), order(areas), "what can be laid out goes before room")
	assert.ElementsMatch(t, order(roomiest), order(areas), "none is lost")
	left, _, _ := screentest.After(p, s, screentest.Keys("esc")...)
	_, after, changes := screentest.After(left, s, screentest.Keys("n")...)
	assert.Contains(t, changes[0].Say, "Area A, 1 of ")
	assert.InDelta(t, areas[0].Best.At.X, after.Job.Cut.At[0], 0.02)
}

func TestLayoutsInLines(t *testing.T) {
	s := demo(t)
	p := proposing(t, s)
	plain := p.Plain(s)
	assert.Contains(t, plain.Here[0], "1 of 3")
	all := strings.Join(plain.All(), "\n")
	for i := range p.(page).proposed() {
		assert.Contains(t, all, layoutLine(&p.(page).proposed()[i], s))
	}
	assert.NotContains(t, all, words.NoMoreLayouts)
}

func TestLayoutsInPictures(t *testing.T) {
	s := demo(t)
	p := proposing(t, s)
	screentest.Golden(t, "layouts", p, s, func(w, h int) screentest.Area {
		if w >= abreastFrom {
			return screentest.Area{W: w, H: h - len(p.(page).under(s, w).rows)}
		}
		return planArea(w, h)
	})
}

// Each layout's picture has the letter of its area, the one that its line and its title say, beside each other and one at a time.
func TestLayoutsHaveTheirAreasLetterInThePicture(t *testing.T) {
	s := demo(t)
	s.Settings.Colour = desk.NoColour
	p := proposing(t, s)
	best := p.(page).proposed()
	require.Len(t, best, 3)
	rows := strings.Split(ansi.Strip(screentest.Filled(t, p, s, 160, 47)), "\n")
	wide := (160 - 2) / 3
	for i := range best {
		var picture []string
		for _, row := range rows[:47-len(p.(page).under(s, 160).rows)] {
			picture = append(picture, ansi.Cut(row, i*(wide+1), i*(wide+1)+wide))
		}
		one := strings.Join(picture, "\n")
		assert.Contains(t, one, "area "+best[i].Area)
		assert.Contains(t, one, "("+best[i].Area+")")
	}
	for _, size := range screentest.Sizes[:2] {
		for i := range best {
			assert.Contains(t, ansi.Strip(screentest.Filled(t, p, s, size.W, size.H)), "("+best[i].Area+")", "%s, %d", size.Name, i)
			p, _, _ = p.Update(screentest.Keys("down")[0], s)
		}
	}
}

// Beside each other and one at a time, the pictures are of what is laid: few rows of one show nothing, and under those beside each other no row is
// left to nobody.
func TestLayoutsFillTheirPictures(t *testing.T) {
	s := demo(t)
	p := proposing(t, s)
	for _, size := range screentest.Sizes {
		rows := strings.Split(ansi.Strip(screentest.Filled(t, p, s, size.W, size.H)), "\n")
		area, pictures := planArea(size.W, size.H), 1
		if size.W >= abreastFrom {
			assert.NotEmpty(t, strings.TrimSpace(rows[len(rows)-1]))
			area, pictures = screentest.Area{W: (size.W - 2) / 3, H: slices.IndexFunc(rows, func(row string) bool { return strings.HasPrefix(row, "Whole layouts") })}, 3
		}
		for i := range pictures {
			empty := 0
			for _, row := range rows[:area.H] {
				const ruler = 6
				if from := i * (area.W + 1); strings.TrimSpace(ansi.Cut(row, from+ruler, from+area.W)) == "" {
					empty++
				}
			}
			assert.LessOrEqual(t, empty, area.H/8, "%s, picture %d", size.Name, i+1)
		}
	}
}

// cropped is the top left of a picture.
func cropped(picture string, w, h int) string {
	rows := strings.Split(picture, "\n")[:h]
	for i := range rows {
		rows[i] = string([]rune(rows[i])[:w])
	}
	return strings.Join(rows, "\n")
}

// On a small screen a layout is seen from near: all that is laid is in the picture, and larger than the whole floor would have it.
func TestALayoutFillsASmallPicture(t *testing.T) {
	s := demo(t)
	for _, l := range proposing(t, s).(page).proposed() {
		seen := laid(&l, s)
		pane := plan.New().Sized(moving.Sizes(60, 17))
		seen.Camera = near(&l, seen, 60, 9)
		for _, p := range l.Result.Plan.Exhaust.Path {
			_, _, in := pane.Cell(p, seen, plan.Options{})
			assert.True(t, in)
		}
		all := canvas.Fit(scene.Below, []geometry.Point3{{X: s.Job.Floor.From, Y: s.Job.Floor.Width / 2}, {X: s.Job.Floor.From + s.Job.Floor.Length, Y: -s.Job.Floor.Width / 2}},
			0, 60, 9, desk.Millimetres)
		assert.Less(t, seen.Camera.Scale, all.Scale)
	}
}

// A job whose own layout breaks nothing sees it among the others, by name; taking it changes nothing.
func TestTheJobsOwnLayoutIsNamedAndStays(t *testing.T) {
	d := screentest.New(t, New(), vehicles.Demo(), 100, 27)
	d.Type("c")
	d.Send(d.Work())
	d.Type("<enter>") // a cut that breaks nothing
	d.Type("c")
	d.Send(d.Work())
	best := d.Screen.(page).proposed()
	own := slices.IndexFunc(best, func(l rules.Layout) bool { return l.AsItIs })
	require.GreaterOrEqual(t, own, 0)
	assert.Contains(t, layoutLine(&best[own], d.State), "as it is: ")
	before := d.State.Job
	for range own {
		d.Type("<down>")
	}
	d.Type("<enter>")
	assert.Contains(t, d.Said, "stays as it is")
	assert.Equal(t, before, d.State.Job)
}

// Among more things than layouts are sought in, the key says so, and nothing is begun.
func TestNoLayoutsAmongTooManyThings(t *testing.T) {
	job := vehicles.Demo()
	for i := range rules.MostToLayOut {
		o := job.Obstructions[0]
		o.Name = fmt.Sprint("another ", i)
		job.Obstructions = append(job.Obstructions, o)
	}
	d := screentest.New(t, New(), job, 100, 27)
	require.Empty(t, d.State.Faults)
	d.Type("c")
	assert.Contains(t, d.Said, "No layouts: ")
	assert.Contains(t, d.Said, "more than the 1000 among which the heater is laid out")
	assert.NotContains(t, screentest.Filled(t, d.Screen, d.State, 100, 27), "Looking for whole layouts...")
}

// A layout without a fuel line says why beside the others and when it is taken: by its nearest miss where it is known where one begins.
func TestALayoutWithoutAFuelLineSaysWhy(t *testing.T) {
	s := demo(t)
	l := proposing(t, s).(page).proposed()[0]
	at := slices.IndexFunc(l.Result.Findings, func(f rules.Finding) bool { return f.About() == "exhaust: brake pipe across" })
	require.GreaterOrEqual(t, at, 0)
	miss := l.Result.Findings[at]
	miss.Margin, miss.Verdict = vehicles.Some(-7.3), rules.Foul
	assert.NotContains(t, layoutLine(&l, s), "no fuel line")
	assert.NotContains(t, screen{}.saysLaidOut(&l, s), "No fuel line")
	l.Result.Job = l.Result.Job.WithRun(vehicles.FuelRun, nil)
	l.FuelMiss = &rules.Route{Run: &vehicles.Run{}, Verdict: rules.Foul, Misses: []rules.Finding{miss}}
	why := "o fuel line keeps every rule: brake pipe across, 7.3 mm short"
	assert.Contains(t, layoutLine(&l, s), "; n"+why)
	assert.Contains(t, headOf(0, &l), ", no fuel line")
	assert.Contains(t, screen{}.saysLaidOut(&l, s), " N"+why+".")
	assert.NotContains(t, screen{}.saysLaidOut(&l, s), "Runs")
	l.FuelMiss = &rules.Route{}
	assert.Contains(t, layoutLine(&l, s), "; no fuel line leads there")
	job := l.Result.Job
	job.Obstructions = slices.DeleteFunc(slices.Clone(job.Obstructions), func(o vehicles.Obstruction) bool { return o.Is(vehicles.VanTank) })
	l.Result.Job, l.FuelMiss = job, nil
	assert.Contains(t, screen{}.saysLaidOut(&l, s), "No fuel line: no fuel tank is entered. Runs asks where one begins.")
}
