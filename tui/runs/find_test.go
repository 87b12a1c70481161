package runs

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// roomy is the sample van with its cut where heater and exhaust have room, and nothing left unmeasured.
func roomy() vehicles.Job {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1400, 250}
	job = job.WithCut(cut)
	for i, o := range job.Obstructions {
		o.Measured = true
		job.Obstructions = job.Obstructions.With(i, o)
	}
	return job
}

// stripped is a job without some of its runs.
func stripped(job vehicles.Job, of ...vehicles.RunKind) vehicles.Job {
	for _, k := range of {
		job = job.WithRun(k, nil)
	}
	return job
}

// find presses keys that begin a search and has it end.
func find(d *screentest.Driver, keys string) {
	d.Type(keys)
	require.NotNil(d.T, d.Cmd, "nothing was sought: %s", d.Said)
	d.Send(d.Work())
}

// unclear are the findings of a run that are not clear.
func unclear(of vehicles.RunKind, d *screentest.Driver) (names []string) {
	for _, f := range rules.ForPeople(d.State.Result.Findings) {
		if (screen{of: of}).concerns(f) && f.Verdict != rules.Clear {
			names = append(names, f.About())
		}
	}
	return names
}

// Each run of the sample van is taken away and laid by one key, in one undo step, clear by the judge of all jobs; so are all three from
// nothing, exhaust and intake with one key together.
func TestARunIsLaidByOneKey(t *testing.T) {
	for _, of := range vehicles.RunKinds {
		d := screentest.New(t, New(), stripped(roomy(), of), 60, 17)
		before := string(d.State.Job.Format())
		d.Type(strings.Repeat("<tab>", int(of)))
		assert.Contains(t, d.View(60, 17), "j finds it")
		find(d, "j")
		require.NotNil(t, d.State.Job.Run(of), d.View(60, 17))
		assert.Empty(t, unclear(of, d), of)
		assert.Regexp(t, `^(Laid; to spare: )?`+of.String(), d.Said)
		assert.Contains(t, d.Said, "to spare")
		assert.Contains(t, d.Said, "Ctrl-Z undoes it")
		assert.False(t, d.Screen.Typing())
		assert.Len(t, d.Steps(), 1)
		d.Undo()
		assert.Equal(t, before, string(d.State.Job.Format()))
	}

	d := screentest.New(t, New(), stripped(roomy(), vehicles.RunKinds[:]...), 60, 17)
	find(d, "J") // one key
	for _, of := range vehicles.RunKinds {
		require.NotNil(t, d.State.Job.Run(of))
		assert.Empty(t, unclear(of, d), of)
	}
	assert.NotNil(t, d.State.Job.Exhaust.Muffler)
	assert.NotNil(t, d.State.Job.Fuel.Pump)
	for _, want := range []string{"Laid; to spare", "exhaust ", "; intake ", "; fuel line "} {
		assert.Contains(t, d.Said, want)
	}
	d.Type("e")
	assert.Contains(t, panelOf(d, 60, 17), "fuel line from fuel tank, usual pump")
	assert.Len(t, d.Steps(), 1)
	_, err := vehicles.ParseJob(d.State.Job.Format(), "found.toml")
	require.NoError(t, err)
}

// What is found is whole in the plan, however near that looked before, and what is said of it leaves the pictures their rows.
func TestWhatIsFoundIsWholeInThePlan(t *testing.T) {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1405, 195}
	for _, size := range screentest.Sizes[1:] {
		d := screentest.New(t, New(), stripped(job.WithCut(cut), vehicles.RunKinds[:]...), size.W, size.H)
		d.State.Camera = desk.Camera{Middle: geometry.Point{X: 1405, Y: 195}, Scale: 3}
		find(d, "J")
		require.NotNil(t, d.State.Job.Fuel, d.Said)
		assertWholeIn(t, d, size.W, size.H+1-len(desk.Wrap(d.Said, size.W)))
		assert.Contains(t, d.Said, "Doubtful: reductant tank. ")
		camera := d.State.Camera
		d.Undo()
		find(d, "J")
		assert.Equal(t, camera, d.State.Camera, "it is whole already")
	}
}

// Where the run comes out is chosen by a key or a tap, and it ends there.
func TestWhereARunComesOutIsChosen(t *testing.T) {
	d := screentest.New(t, New(), roomy(), 100, 27)
	end := func() vehicles.RunPoint {
		path := d.State.Job.Exhaust.Path
		return path[len(path)-1]
	}
	was := end()
	find(d, "/l")
	assert.Greater(t, end().Y, 800.0)
	d.Undo()
	find(d, "/n")
	assert.Equal(t, was, end(), "it can end where it does")

	tapFound := screentest.New(t, New(), roomy(), 100, 27)
	tapRow(t, tapFound, "[find]")
	tapRow(t, tapFound, "out on the left")
	require.NotNil(t, tapFound.Cmd)
	tapFound.Send(tapFound.Work())
	assert.Greater(t, tapFound.State.Job.Exhaust.Path[len(tapFound.State.Job.Exhaust.Path)-1].Y, 800.0)
}

// tapRow taps the first place where a text shows.
func tapRow(t *testing.T, d *screentest.Driver, text string) {
	t.Helper()
	for y, row := range strings.Split(d.View(100, 27), "\n") {
		if before, _, found := strings.Cut(row, text); found {
			d.Tap(len([]rune(before))+1, y)
			return
		}
	}
	require.Fail(t, "not on the screen: "+text, d.View(100, 27))
}

// While it looks the panel says so; Esc stops it, and what comes late or of another job changes nothing.
func TestASearchForARunIsStopped(t *testing.T) {
	for name, stop := range map[string]func(d *screentest.Driver){
		"Esc":         func(d *screentest.Driver) { d.Type("<esc>") },
		"another job": func(d *screentest.Driver) { d.Put(stripped(d.State.Job, vehicles.IntakeRun)) },
	} {
		d := screentest.New(t, New(), roomy(), 100, 27)
		d.Type("j")
		assert.Contains(t, d.View(100, 27), "Looking for the exhaust...")
		assert.True(t, d.Screen.Typing())
		late := d.Work()
		begun := d.Cmd
		stop(d)
		before := string(d.State.Job.Format())
		d.Send(late)
		assert.Equal(t, before, string(d.State.Job.Format()), name)
		assert.False(t, d.Screen.Typing(), name)
		assert.NotContains(t, d.View(100, 27), "Looking", name)
		d.Send(begun().(tea.BatchMsg)[0]())
		assert.Equal(t, before, string(d.State.Job.Format()), "stopped: %s", name)
	}
}

// Enter before a run is found does no harm: the search goes on, and that is said in a line.
func TestEnterBeforeARunIsFoundLetsTheSearchGoOn(t *testing.T) {
	for _, keys := range []string{"j", "J"} {
		d := screentest.New(t, New(), roomy(), 100, 27)
		d.Type(keys)
		begun := d.Cmd
		before := string(d.State.Job.Format())
		d.Type("<enter>")
		assert.Regexp(t, "still looked for.*Esc stops it", d.Said, keys)
		assert.LessOrEqual(t, len(d.Said), 60, "in a line")
		assert.True(t, d.Screen.Typing(), keys)
		assert.Contains(t, d.View(100, 27), "Looking for", keys)
		assert.Equal(t, before, string(d.State.Job.Format()), keys)
		assert.NotNil(t, begun().(tea.BatchMsg)[0](), "it was not stopped: %s", keys)
	}
}

// An answer to an older search is not taken for that of a newer one.
func TestAnAnswerToAnOlderSearchIsDropped(t *testing.T) {
	d := screentest.New(t, New(), roomy(), 100, 27)
	d.Type("/l")
	late := d.Work()
	d.Type("<esc>/n")
	answer := d.Work()
	before := string(d.State.Job.Format())
	d.Send(late)
	assert.Equal(t, before, string(d.State.Job.Format()))
	assert.Contains(t, d.View(100, 27), "Looking for the exhaust...")
	d.Send(answer)
	assert.False(t, d.Screen.Typing())
}

// How far it is stands in the panel.
func TestASearchForARunSaysHowFarItIs(t *testing.T) {
	d := screentest.New(t, New(), roomy(), 100, 27)
	d.Type("j")
	cmd := d.Cmd().(tea.BatchMsg)
	answer := cmd[0]()
	d.Send(cmd[1]())
	assert.Regexp(t, `legs tried`, d.View(100, 27))
	require.NotNil(t, d.Cmd, "it is looked at again")
	d.Send(answer)
	assert.NotNil(t, d.State.Job.Exhaust)
}

// Where no run keeps every rule the nearest miss is told with what it breaks, and put in when it is asked for, not before.
func TestTheNearestMissIsToldAndNotPutIn(t *testing.T) {
	d := screentest.New(t, New(), vehicles.Demo(), 100, 27)
	before := string(d.State.Job.Format())
	find(d, "/n")
	assert.Equal(t, before, string(d.State.Job.Format()))
	view := d.View(100, 27)
	assert.Contains(t, view, "No exhaust there keeps every rule.")
	assert.Contains(t, view, "foul: exhaust: brake pipe across")
	d.Golden("miss-100x27", 100, 27)
	d.Type("<esc>")
	assert.Equal(t, before, string(d.State.Job.Format()))
	assert.False(t, d.Screen.Typing())

	find(d, "/n")
	d.Type("<enter>")
	assert.NotEqual(t, before, string(d.State.Job.Format()))
	assert.Len(t, d.Steps(), 1)
	assert.Regexp(t, `of bends, foul: exhaust: .*, [0-9.]+ mm short\.`, d.Said)
	assert.NotContains(t, d.Said, "to spare")
}

// Where there is no room for all that a near miss breaks, how much more there is stands behind what is told, and what to press is there whatever
// happens; where there is room nothing is counted.
func TestWhatANearMissBreaksIsNeverPassedOver(t *testing.T) {
	d := screentest.New(t, New(), vehicles.Demo(), 60, 17)
	find(d, "/n")
	missed := d.Screen.(screen).finder.found.Said[0].Missed()
	require.Len(t, missed, 2)
	view := d.View(60, 17)
	assert.Contains(t, view, "foul: exhaust: brake pipe across, 107.7 mm short; 1 more")
	assert.NotContains(t, view, missed[1].About())
	assert.NotContains(t, d.View(100, 27), " more")
	assert.NotContains(t, strings.Join(d.Screen.Plain(d.State).Here, " "), " more")

	m := d.Screen.(screen)
	of := m.finder.found.Said[0]
	of.Misses = nil
	for range 3 {
		of.Misses = append(of.Misses, missed...)
	}
	m.finder.quest.runs = []vehicles.RunKind{vehicles.ExhaustRun, vehicles.IntakeRun}
	m.finder.found.Said = []rules.Route{of, of}
	counted := regexp.MustCompile(`; (\d+) more`)
	for h := 8; h < 40; h++ {
		text := strings.Join(m.finderPanel(d.State, 60, h), "\n")
		told := strings.Count(text, "foul: ")
		for _, c := range counted.FindAllStringSubmatch(text, -1) {
			more, err := strconv.Atoi(c[1])
			require.NoError(t, err)
			told += more
		}
		assert.Equal(t, 12, told, "in %d rows:\n%s", h, text)
		assert.Contains(t, text, "Enter  put it in all the same")
	}
}

// Of a line from a tank in the van only what is below the floor is sought: whoever reads of a miss learns that the hole stays where it is.
func TestWhatOfALineStaysIsSaid(t *testing.T) {
	job := vehicles.Demo()
	mouth, _ := job.Stub(vehicles.FuelRun)
	rib, at := job.Obstructions[0], func(v float64) survey.Reading { return survey.FromNumber(v, false) }
	rib.Name, rib.Kind, rib.Drop = "rib", "floor rib", vehicles.Span{From: 0, To: 60, Set: true}
	rib.Place = vehicles.Place{X: vehicles.Pair{at(mouth.X + 3), at(mouth.X + 20)}, Y: vehicles.Pair{at(mouth.Y - 200), at(mouth.Y + 200)}}
	job.Obstructions = append(slices.Clone(job.Obstructions), rib) // beside the stub: no line keeps away from it
	line := *job.Fuel
	line.Hanging, line.Supply.From = vehicles.Hanging{}, ""
	line.Path = []vehicles.RunPoint{{X: 1900, Y: 150, Drop: -300}, {X: 1700, Y: 150, Drop: -300}, {X: 1700, Y: 150, Drop: 100}, {X: 1460, Y: 250, Drop: 80}}
	for _, c := range []struct {
		path []vehicles.RunPoint
		says bool
	}{{line.Path, true}, {line.Path[2:], false}} {
		line.Path = c.path
		d := screentest.New(t, New(), job.WithRun(vehicles.FuelRun, &line), 100, 27)
		find(d, "<tab><tab>j")
		m := d.Screen.(screen)
		require.True(t, m.finder.open())
		said := strings.Join(strings.Fields(strings.Join(m.finderPanel(d.State, 100, 20), " ")), " ")
		assert.Equal(t, c.says, strings.Contains(said, "The line's first 3 points, above the floor and through it, stay as they are."), said)
	}
}

// A run that is all clear is not replaced by a doubtful one without asking.
func TestAWorseRunIsNotPutInUnasked(t *testing.T) {
	d := screentest.New(t, New(), roomy(), 100, 27)
	find(d, "j")
	require.Empty(t, unclear(vehicles.ExhaustRun, d))
	d.Type("j")
	m := d.Screen.(screen)
	m.finder.found.Done = true
	run := *d.State.Job.Exhaust
	m.finder.found.Said = []rules.Route{{Run: &run, Verdict: rules.Doubtful, Length: 700}}
	assert.False(t, m.better(d.State))
	m.finder.found.Said[0].Verdict = rules.Clear
	assert.True(t, m.better(d.State))
	m.finder.found.Said[0].Verdict = rules.Foul
	assert.False(t, m.better(d.State))
}

// What can't be sought says why.
func TestWhatCantBeSoughtSaysWhy(t *testing.T) {
	job := stripped(roomy(), vehicles.RunKinds[:]...)
	uncut := job
	uncut.Cut = nil
	d := screentest.New(t, New(), uncut, 60, 17)
	for _, keys := range []string{"j", "J", "/"} {
		d.Type(keys)
		assert.Equal(t, noStub, d.Said)
		assert.Nil(t, d.Cmd)
	}
	tankless := job
	for i, o := range job.Obstructions {
		if o.Kind == "fuel tank" {
			tankless.Obstructions = job.Obstructions.Without(i)
		}
	}
	d = screentest.New(t, New(), tankless, 60, 17)
	d.Type("<tab><tab>j")
	assert.Contains(t, d.Said, "Where does the line begin? No fuel tank is entered.")
}

// The choice and the search at every size.
func TestTheFinderInPictures(t *testing.T) {
	for _, size := range screentest.Sizes {
		d := screentest.New(t, New(), roomy(), size.W, size.H)
		d.Type("/")
		d.Golden("find-"+size.Name, size.W, size.H)
		d.Type("<esc>")
		assert.False(t, d.Screen.Typing())
	}
}

// A search goes on beside the screen: what is judged and painted meanwhile touches nothing of it.
func TestKeysArePressedWhileARunIsSought(t *testing.T) {
	d := screentest.New(t, New(), roomy(), 100, 27)
	d.Type("j")
	begun := d.Cmd
	answer := make(chan tea.Msg)
	go func() { answer <- begun().(tea.BatchMsg)[0]() }()
	for range 5 {
		d.View(100, 27)
		d.Screen.Plain(d.State).All()
	}
	d.Type("<esc>")
	for range 20 {
		d.Type("n<left>c")
		d.View(100, 27)
	}
	before := string(d.State.Job.Format())
	d.Send(<-answer)
	assert.Equal(t, before, string(d.State.Job.Format()))
}

// With all three there and clear one key changes nothing and says so; a fuel line that is missing is laid beside a pair that stays.
func TestOneKeyLeavesWhatKeepsAsMuch(t *testing.T) {
	d := screentest.New(t, New(), stripped(roomy(), vehicles.RunKinds[:]...), 100, 27)
	find(d, "J")
	laid := d.State.Job
	find(d, "J")
	if d.State.Job.Exhaust == laid.Exhaust {
		assert.Contains(t, d.Said, "stay as they are: no pair was found that keeps more than their ")
		assert.Equal(t, laid, d.State.Job)
	} else { // what was moved once more keeps more, or as much the next time
		assert.Contains(t, d.Said, "Laid; to spare")
	}
	assert.Same(t, laid.Fuel, d.State.Job.Fuel, "a line that breaks nothing is not sought")
}

// A pair that leaves room for a fuel line may keep less than the one that is there: it is told, and put in only if one says so. With it the
// line is laid.
func TestAPairThatKeepsLessIsTold(t *testing.T) {
	job := roomy()
	cut := *job.Cut
	cut.At[1] = 245
	d := screentest.New(t, New(), stripped(job.WithCut(cut), vehicles.FuelRun), 100, 27)
	was := d.State.Job
	find(d, "J")
	assert.Equal(t, was, d.State.Job)
	assert.Contains(t, strings.Join(d.Screen.Plain(d.State).Here, " "), "Exhaust and intake that are there keep 18 mm, those that were found 17.1 mm.")
	d.Type("<enter>")
	assert.Contains(t, d.Said, "; fuel line ")
	require.NotNil(t, d.State.Job.Fuel)
	d.Undo()
	assert.Equal(t, was, d.State.Job)
}

// Undo names what was laid together as one thing, as it takes all of it back.
func TestRunsLaidTogetherAreTakenBackAsOne(t *testing.T) {
	all := vehicles.RunKinds[:]
	assert.Equal(t, "the three runs as proposed", asProposed(all))
	assert.Equal(t, "exhaust and intake as proposed", asProposed(all[:2]))
	assert.Equal(t, "fuel line as proposed", asProposed(all[2:]))
	assert.Empty(t, asProposed(nil), "nothing was put in")

	d := screentest.New(t, New(), stripped(roomy(), vehicles.RunKinds[:]...), 100, 27)
	find(d, "J")
	find(d, "J")
	d.Type("<tab><tab>X")
	was := d.State.Job
	find(d, "J")
	require.Same(t, was.Exhaust, d.State.Job.Exhaust, "the pair stays")
	require.NotNil(t, d.State.Job.Fuel)
	d.Undo()
	assert.Equal(t, "fuel line as proposed", d.Desk.Moved())
}

// Among more things than are gone through in a moment the keys say so, and nothing is begun.
func TestNoRunIsSoughtAmongTooManyThings(t *testing.T) {
	for keys, most := range map[string]int{"j": rules.MostToSeek, "/": rules.MostToSeek, "J": rules.MostToPair} {
		job := roomy()
		for i := range most {
			o := job.Obstructions[0]
			o.Name = fmt.Sprint("another ", i)
			job.Obstructions = append(job.Obstructions, o)
		}
		d := screentest.New(t, New(), job, 100, 27)
		require.Empty(t, d.State.Faults)
		d.Type(keys)
		assert.Nil(t, d.Cmd, keys)
		assert.Regexp(t, fmt.Sprintf(`^Nothing is sought: \d+ obstructions, .* more than the %d among which`, most), d.Said, keys)
	}
}
