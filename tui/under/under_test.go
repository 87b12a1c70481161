package under

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// empty is a van with a floor and a bumper's hook, and nothing entered.
func empty() vehicles.Job {
	job := vehicles.NewJob("TL-09")
	job.Datum.HookBelow = vehicles.Some(150)
	return job
}

func texts(p vehicles.Pair) [2]string { return [2]string{p[0].Text, p[1].Text} }

func TestARectangleFromNothing(t *testing.T) {
	r := screentest.New(t, New(), empty(), 100, 27)
	keys := r.Type("nc652<enter>+84<enter>-850<enter>850<enter>0<enter>95")
	require.Len(t, r.State.Job.Obstructions, 1)
	o := r.State.Job.Obstructions[0]
	assert.Equal(t, "crossmember", o.Name)
	assert.Equal(t, "crossmember", o.Kind)
	assert.Equal(t, [2]string{"652", "+84"}, texts(o.X))
	assert.Equal(t, [2]string{"-850", "850"}, texts(o.Y))
	assert.Equal(t, vehicles.Span{From: 0, To: 95, Set: true}, o.Drop)
	assert.True(t, o.Measured)
	assert.Equal(t, 23, keys, "two keys beside the readings and an Enter behind each")
	assert.Equal(t, 0, r.State.Selected)
	assert.Empty(t, r.State.Job.Unfinished.Obstructions)
}

func TestAPipeFromNothing(t *testing.T) {
	r := screentest.New(t, New(), empty(), 60, 17)
	keys := r.Type("nb300<enter>r410<enter>1500<enter>r410<enter>2400<enter>r300<enter><enter>8<enter>20<enter>30")
	require.Len(t, r.State.Job.Obstructions, 1)
	o := r.State.Job.Obstructions[0]
	require.Len(t, o.Path, 3)
	assert.Equal(t, vehicles.Piped, o.Shape)
	assert.Equal(t, [2]string{"300", "R 410"}, texts(o.Path[0]))
	assert.Equal(t, [2]string{"2400", "R 300"}, texts(o.Path[2]))
	assert.Equal(t, vehicles.Some(8), o.Across)
	assert.Equal(t, 39, keys, "one Enter without a reading ends the points")
}

func TestARoundFromNothing(t *testing.T) {
	r := screentest.New(t, New(), empty(), 160, 47)
	keys := r.Type("ns420<enter>0<enter>690<enter>100<enter>300")
	require.Len(t, r.State.Job.Obstructions, 1)
	o := r.State.Job.Obstructions[0]
	assert.Equal(t, vehicles.Disc, o.Shape)
	assert.Equal(t, [2]string{"420", "0"}, texts(o.Centre))
	assert.Equal(t, vehicles.Some(690), o.Across)
	assert.Equal(t, 19, keys)
}

func TestAnOpeningFromNothing(t *testing.T) {
	r := screentest.New(t, New(), empty(), 100, 27)
	r.Type("od1900<enter>-890<enter>3000<enter>-890<enter><enter><enter>-1500<enter>-22")
	require.Len(t, r.State.Job.Openings, 1)
	o := r.State.Job.Openings[0]
	assert.Equal(t, "door", o.Name)
	assert.False(t, o.Across.Set, "an opening has no width")
	assert.Equal(t, vehicles.Span{From: -1500, To: -22, Set: true}, o.Drop)
}

func TestEnterBehindTheLastFieldBeginsTheNext(t *testing.T) {
	r := screentest.New(t, New(), empty(), 100, 27)
	r.Type("nc652<enter>+84<enter>-850<enter>850<enter>0<enter>95<enter>") // taped at the bottom, as mostly
	r.Type("c+200<enter>+84<enter>-850<enter>850<enter><enter><enter>")
	require.Len(t, r.State.Job.Obstructions, 2)
	assert.Equal(t, "crossmember 2", r.State.Job.Obstructions[1].Name)
	assert.Equal(t, "+200", r.State.Job.Obstructions[1].X[0].Text)
	assert.False(t, r.State.Job.Obstructions[1].Drop.Set, "blank is not measured")
	assert.True(t, r.Screen.Typing())
	assert.Contains(t, r.View(100, 27), "Obstruction 3")
}

// Where the tape slopes, too, Enter behind the last reading goes on to the next thing, whose kind is a letter; the drop at which it was taped is that
// of the bottom unless somebody goes there.
func TestTheNextKindIsALetterBehindTheLastReading(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 60, 17)
	require.True(t, r.State.Job.Datum.HookBelow.Set)
	r.Type("nc1652<enter>+84<enter>-850<enter>850<enter>0<enter>95<enter>")
	r.Type("f500<enter>L410<enter>2500<enter>L410<enter><enter>10<enter>20<enter>30<enter>")
	things := r.State.Job.Obstructions
	require.Len(t, things, 5)
	for i, kind := range []string{"crossmember", "fuel line"} {
		assert.Equal(t, kind, things[3+i].Kind)
		assert.False(t, things[3+i].TapedAt.Set, "taped at the bottom")
	}
	assert.Empty(t, r.State.Job.Refused())
}

// A letter with which no reading begins does nothing in a field for one, and that is said; a needed field that was left out is named.
func TestALetterForAReadingIsNotTaken(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("nc652<enter>736<enter>100<enter><enter>110<enter>195<enter>")
	assert.Equal(t, "other side is needed first. Esc leaves it for later.", r.Said)
	r.Type("b")
	assert.Contains(t, r.Said, `"b" begins no reading: other side takes figures`)
	assert.Empty(t, r.State.Job.Refused())
	r.Type("r300<enter>")
	require.Len(t, r.State.Job.Obstructions, 4)
	assert.Equal(t, "R 300", r.State.Job.Obstructions[3].Y[1].Text)
}

// The letter of a kind goes on by itself, so that Enter right behind it leaves no reading blank.
func TestEnterBehindALetterLeavesNothingBlank(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("nc<enter>")
	assert.Equal(t, "The letter chose crossmember and went on. Enter again leaves near edge blank.", r.Said)
	assert.Contains(t, r.View(100, 27), "▸ near edge")
	r.Type("652<enter>")
	assert.Contains(t, r.View(100, 27), "▸ far edge")
	r.Type("<up><wipe><enter>")
	assert.Contains(t, r.View(100, 27), "▸ far edge")
}

func TestAPointInFrontRunsOn(t *testing.T) {
	r := screentest.New(t, New(), empty(), 60, 17)
	r.Type("nc65.2cm<enter>.84<enter>l40<enter>.1700")
	o := r.State.Job.Obstructions[0]
	assert.Equal(t, [2]string{"65.2cm", "+84"}, texts(o.X))
	assert.Equal(t, [2]string{"L 40", "+1700"}, texts(o.Y))
}

func TestAFormIsOpenedFromElsewhere(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Send(desk.Open{Obstruction: 1, Opening: -1, Field: "drop"})
	assert.Equal(t, 1, r.State.Selected)
	r.Type("<wipe>21")
	assert.Equal(t, 21.0, r.State.Job.Obstructions[1].Drop.From)
	r.Type("<esc>a") // the kinds looked for
	r.Send(desk.Open{Obstruction: -1, Opening: 0, Field: "measured"})
	r.Type("n")
	assert.True(t, r.State.Job.Openings[0].Unconfirmed)
	before := r.View(100, 27)
	r.Send(desk.Open{Obstruction: 7, Opening: -1, Field: "drop"})
	r.Send(desk.Open{Obstruction: -1, Opening: -1, Field: "drop"})
	assert.Equal(t, before, r.View(100, 27), "there is none")
}

func TestTypingInAFieldIsOneUndoStep(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("<enter><up><up><down>") // to the name, the form
	assert.Empty(t, r.Steps())
	r.Type("<down><wipe>660<enter><wipe>+90")
	assert.Equal(t, []string{"obstruction 1 near edge", "obstruction 1 far edge"}, r.Steps())
	assert.Equal(t, [2]string{"660", "+90"}, texts(r.State.Job.Obstructions[0].X))
	r.Undo()
	r.Undo()
	assert.Equal(t, screentest.Van(t), r.State.Job)
	assert.Contains(t, r.View(100, 27), "+84", "the field shows what the job holds again")
}

func TestAWrongTextStaysAndIsSaid(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("<enter><end>x")
	view := r.View(100, 27)
	assert.Contains(t, view, "652x")
	assert.Contains(t, view, "! ")
	assert.Equal(t, "652", r.State.Job.Obstructions[0].X[0].Text, "the job keeps what it had")
	r.Type("<enter>")
	assert.Contains(t, r.View(100, 27), "652x", "and the field keeps reminding")
	r.Type("<esc>")
	assert.Equal(t, "one reading was refused and is not in the job: near edge of rear crossmember, 652x", r.Said)
	assert.Contains(t, r.View(100, 27), "! refused: near edge")
	r.Type("<enter><end><back>")
	assert.NotContains(t, r.View(100, 27), "refused")
	assert.Empty(t, r.State.Job.Refused())
}

func TestTheFootFirstSaysHowToLeaveAField(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	for _, keys := range []string{"<enter>", "<down>"} {
		r.Type(keys)
		help := r.Screen.Keys(r.State)[0].Help()
		assert.Equal(t, "Esc leaves the field", help.Key+" "+help.Desc)
	}
}

func TestTheListShowsTheNewRow(t *testing.T) {
	job := screentest.Van(t)
	for i := range 40 {
		o := job.Obstructions[2]
		o.Name = fmt.Sprint("wheel ", i)
		job.Obstructions = job.Obstructions.Insert(len(job.Obstructions), o)
	}
	r := screentest.New(t, New(), job, 100, 27)
	for _, keys := range []string{"n", "c", "652"} {
		r.Type(keys)
		row := "▸   new obstruction"
		if keys != "n" {
			row = "▸ C crossmember"
		}
		assert.Contains(t, r.View(100, 27), row, keys)
		assert.Contains(t, r.View(100, 27), "wheel 39")
	}
	r.Type("<esc>o")
	assert.Contains(t, r.View(100, 27), "▸   new opening")
	for y, line := range strings.Split(r.View(100, 27), "\n") {
		if strings.HasPrefix(line, "    sliding door") {
			r.Tap(8, y)
		}
	}
	assert.Contains(t, r.View(100, 27), "▸   sliding door")
}

func TestKindsAreCountedAsTheRulesDo(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	n := len(r.State.Result.NotLookedFor)
	assert.Contains(t, r.View(100, 27), fmt.Sprintf("kinds not looked for: %d ", n))
}

func TestEdgesThatOnlyMoveTogether(t *testing.T) {
	r := screentest.New(t, New(), empty(), 100, 27)
	r.Type("nc600<enter>700<enter>-850<enter>850<esc>")
	r.Type("<enter><wipe>900")
	assert.Equal(t, [2]string{"600", "700"}, texts(r.State.Job.Obstructions[0].X), "900 is behind 700: not taken alone")
	r.Type("<enter><wipe>1000")
	assert.Equal(t, [2]string{"900", "1000"}, texts(r.State.Job.Obstructions[0].X))
}

func TestLettersInAFieldAreNoCommands(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	before := r.State.Job
	r.Type("<enter><up><up><end>") // the name
	for _, letter := range "ndxmap[]vfgl?bu123+-" {
		r.Type(string(letter))
	}
	require.Len(t, r.State.Job.Obstructions, 3)
	assert.Equal(t, "rear crossmemberndxmap[]vfgl?bu123+-", r.State.Job.Obstructions[0].Name)
	assert.Equal(t, before.Obstructions[1:], r.State.Job.Obstructions[1:])
	assert.Equal(t, []string{"obstruction 1 name"}, r.Steps())
}

func TestPastedLinesFillFields(t *testing.T) {
	r := screentest.New(t, New(), empty(), 100, 27)
	r.Type("nc")
	r.Paste("652\r\n+84\n-850\n850\n0\n95\n")
	require.Len(t, r.State.Job.Obstructions, 1)
	assert.Equal(t, 95.0, r.State.Job.Obstructions[0].Drop.To)
	assert.Equal(t, "6 lines taken", r.Said)
	assert.Contains(t, r.View(100, 27), "▸ bottom", "the last of them has the keys")
	r.Type("97")
	assert.Equal(t, 97.0, r.State.Job.Obstructions[0].Drop.To, "selected, as when it is entered")
	r.Undo()
	assert.Equal(t, 95.0, r.State.Job.Obstructions[0].Drop.To)
	r.Undo()
	assert.Empty(t, r.State.Job.Obstructions, "the paste is one step")
}

func TestAWholeThingIsPasted(t *testing.T) {
	r := screentest.New(t, New(), empty(), 100, 27)
	r.Type("n")
	r.Paste("brake line\n300\nR 410\n1500\nR 410\n2400\nR 300\n\n8\n20\n30")
	require.Len(t, r.State.Job.Obstructions, 1, r.Said)
	o := r.State.Job.Obstructions[0]
	assert.Len(t, o.Path, 3, "a blank line ends the points")
	assert.Equal(t, 8.0, o.Across.Value)
	assert.Equal(t, vehicles.Span{From: 20, To: 30, Set: true}, o.Drop)
	r.Undo()
	assert.Equal(t, string(empty().Format()), string(r.State.Job.Format()))
}

// A refused reading leaves the value it was to replace: what had been typed of it before the paste is no reading either.
func TestAPasteBehindTypedDigits(t *testing.T) {
	r := tank(t)
	r.Type("<enter>" + toBottom + "2")
	assert.Equal(t, 2.0, r.State.Job.Obstructions[0].Drop.To)
	r.Paste("50")
	assert.Equal(t, 150.0, r.State.Job.Obstructions[0].Drop.To, "what it was when the field was entered")
	require.Len(t, r.State.Job.Refused(), 1)
	assert.Equal(t, "250", r.State.Job.Refused()[0].Text)
	r.Type("<back><back>0")
	assert.Equal(t, 20.0, r.State.Job.Obstructions[0].Drop.To, "one goes on typing behind it")
	assert.Empty(t, r.State.Job.Refused())
}

func TestPastedTextChoosesNoKind(t *testing.T) {
	r := screentest.New(t, New(), empty(), 100, 27)
	r.Type("a")
	r.Paste("f")
	assert.Empty(t, r.State.Job.Looked)
}

func TestUnfinishedIsSavedAndUndone(t *testing.T) {
	r := screentest.New(t, New(), empty(), 100, 27)
	r.Type("nc652<enter>+84<esc>")
	assert.Empty(t, r.State.Job.Obstructions, "what is not whole is not judged")
	again, err := vehicles.ParseJob(r.State.Job.Format(), "again.toml")
	require.NoError(t, err)
	later := screentest.New(t, New(), again, 100, 27)
	assert.Contains(t, later.View(100, 27), "needs one side")
	later.Type("<enter>-850<enter>850")
	require.Len(t, later.State.Job.Obstructions, 1)
	assert.Equal(t, [2]string{"652", "+84"}, texts(later.State.Job.Obstructions[0].X))
	for len(r.Steps()) > 0 {
		r.Undo()
	}
	assert.Empty(t, records(r.State))
}

func TestChangingTheFormKeepsTheLastGood(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 40)
	r.Type("<enter><up>o")
	assert.Equal(t, vehicles.Box, r.State.Job.Obstructions[0].Shape, "the round has no centre yet")
	r.Type("700<enter>10<enter>80")
	o := r.State.Job.Obstructions[0]
	assert.Equal(t, vehicles.Disc, o.Shape)
	assert.Equal(t, vehicles.Some(80), o.Across)
	assert.Equal(t, vehicles.Span{From: 0, To: 95, Set: true}, o.Drop)
}

func TestTakingAPointOut(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 40)
	r.Type("<down><enter><down><down><wipe>")
	require.Len(t, r.State.Job.Obstructions[1].Path, 3)
	r.Type("<enter><wipe>")
	path := r.State.Job.Obstructions[1].Path
	require.Len(t, path, 2)
	assert.Equal(t, [2]string{"2400", "R 300"}, texts(path[1]))
}

func TestDuplicateDeleteReorderConfirm(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("<down><down>m")
	assert.True(t, r.State.Job.Obstructions[2].Measured)
	assert.Contains(t, r.Said, "measured on this van")
	r.Type("d")
	require.Len(t, r.State.Job.Obstructions, 4)
	assert.Equal(t, "spare wheel 2", r.State.Job.Obstructions[3].Name)
	assert.False(t, r.State.Job.Obstructions[3].Measured, "nobody measured the copy")
	r.Type("[[[")
	assert.Equal(t, "spare wheel 2", r.State.Job.Obstructions[0].Name)
	r.Type("x")
	require.Len(t, r.State.Job.Obstructions, 3)
	assert.Equal(t, "deleted spare wheel 2: Ctrl-Z brings it back", r.Said)
}

func TestWhatOthersRunOnFromIsKept(t *testing.T) {
	r := screentest.New(t, New(), empty(), 100, 27)
	r.Type("nc652<enter>+84<enter>-850<enter>850<enter><enter><enter><enter>")
	r.Type("c+200<enter>+84<enter>-850<enter>850<esc><up>")
	require.Len(t, r.State.Job.Obstructions, 2)
	r.Type("x")
	require.Len(t, r.State.Job.Obstructions, 2)
	assert.Contains(t, r.Said, "not done")
}

func TestLookedNoneHere(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 60, 17)
	r.Type("aw")
	assert.True(t, r.State.Job.Looked["wiring"])
	assert.True(t, r.Screen.Typing(), "letters belong to the kinds")
	r.Type("c")
	assert.False(t, r.State.Job.Looked["crossmember"])
	assert.Contains(t, r.Said, "entered already")
	r.Type("b<esc>n<esc>")
	assert.False(t, r.State.Job.Looked["brake line"])
}

func TestTheThreeListsOfKinds(t *testing.T) {
	job := vehicles.Demo()
	job.Looked, job.LookedRuns, job.LookedOpenings = nil, nil, nil
	r := screentest.New(t, New(), job, 100, 27)
	total := func() string { return strings.Split(r.View(100, 27), "\n")[0] }
	count := func(l vehicles.LookList) int { return len(left(l, r.State)) }
	assert.Contains(t, total(), fmt.Sprintf("kinds not looked for: %d (a)", count(vehicles.AtCut)+count(vehicles.AtRuns)+count(vehicles.AtOutlet)))
	r.Type("a")
	assert.Contains(t, total(), fmt.Sprintf("at the cut %d   at the runs %d   openings %d", count(vehicles.AtCut), count(vehicles.AtRuns), count(vehicles.AtOutlet)))
	r.Type("<tab>")
	assert.Contains(t, r.View(100, 27), "Looked for within 300 mm of the runs")
	r.Type("z")
	assert.Equal(t, map[string]bool{"swage": true}, r.State.Job.LookedRuns)
	assert.Equal(t, "swage: looked for within 300 mm of the runs, none here", r.Said)
	assert.Empty(t, r.State.Job.Looked)
	r.Type("<right>")
	assert.Contains(t, r.View(100, 27), "Looked for within 2000 mm of where gas comes out")
	r.Type("t")
	assert.Equal(t, map[string]bool{"tank breather": true}, r.State.Job.LookedOpenings)
	assert.Contains(t, r.View(100, 27), "Where does the breather hose of each tank end?")
	r.Type("t")
	assert.Empty(t, r.State.Job.LookedOpenings)
	r.Type("<left><left><left><down><down>")
	assert.Contains(t, r.View(100, 27), "Looked for within 2000 mm", "round the end")
	r.Type("<right><esc>")
	assert.False(t, r.Screen.Typing())
	r.Undo() // what was looked for and taken back is no step
	assert.Empty(t, r.State.Job.LookedRuns)
}

func TestAListIsTapped(t *testing.T) {
	job := vehicles.Demo()
	job.LookedRuns, job.LookedOpenings = nil, nil
	r := screentest.New(t, New(), job, 60, 17)
	r.Type("a")
	at := func(y int, word string) int {
		return len([]rune(strings.Split(strings.Split(r.View(60, 17), "\n")[y], word)[0]))
	}
	r.Tap(at(0, "openings"), 0)
	assert.Contains(t, r.View(60, 17), "of where gas comes out")
	for y, row := range strings.Split(r.View(60, 17), "\n") {
		if strings.Contains(row, "roof vent") {
			r.Tap(at(y, "roof vent"), y)
		}
	}
	assert.True(t, r.State.Job.LookedOpenings["roof vent"])
	r.Tap(at(0, "at the runs"), 0)
	assert.Contains(t, r.View(60, 17), "of the runs")
	r.Tap(2, 16) // the line that says how to look
	assert.Empty(t, r.State.Job.LookedRuns)
}

func TestWithoutRunsThereIsNothingToLookRound(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("a<tab><enter>")
	r.Type("h")
	assert.Contains(t, r.Said, "there is no run yet")
	assert.Empty(t, r.State.Job.LookedRuns)
	r.Type("<tab>t")
	assert.Contains(t, r.Said, "there is no exhaust yet")
	assert.Empty(t, r.State.Job.LookedOpenings)
}

func TestTheKindThatIsPickedSaysHowToLook(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 60, 17)
	r.Type("avv")
	assert.Contains(t, r.View(60, 17), "Orange cables? Do not drill; trained people only.")
}

func TestOverlapsAreSaid(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("d")
	assert.Contains(t, r.View(100, 27), "lie 84")
}

func TestTapsAndThePlan(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	rows := strings.Split(r.View(100, 27), "\n")
	for y, row := range rows {
		if strings.Contains(row[:40], "spare wheel") {
			r.Tap(8, y)
			break
		}
	}
	assert.Equal(t, 2, r.State.Selected)
	for y, row := range strings.Split(r.View(100, 27), "\n") {
		if strings.Contains(row, "diameter") {
			r.Tap(20, y)
		}
	}
	assert.True(t, r.Screen.Typing())
	r.Type("<wipe>700")
	assert.Equal(t, vehicles.Some(700), r.State.Job.Obstructions[2].Across)
	r.Tap(4, 1)
	assert.False(t, r.Screen.Typing(), "a tap elsewhere leaves the field")
	assert.Equal(t, 0, r.State.Selected)
}

func TestGoldens(t *testing.T) {
	for _, size := range [][2]int{{60, 17}, {100, 27}, {160, 47}} {
		w, h := size[0], size[1]
		for name, keys := range map[string]string{
			"list": "", "rectangle": "<enter>", "kind": "n", "unfinished": "nc1000<enter>.60",
			"looked": "a", "fault": "<down><enter><end>x",
		} {
			t.Run(fmt.Sprintf("%s-%dx%d", name, w, h), func(t *testing.T) {
				r := screentest.New(t, New(), screentest.Van(t), w, h)
				r.Type(keys)
				r.Golden(fmt.Sprintf("%s-%dx%d", name, w, h), w, h)
			})
		}
		for name, keys := range map[string]string{"runs": "a<tab>vv", "openings": "a<tab><tab>tt"} {
			t.Run(fmt.Sprintf("%s-%dx%d", name, w, h), func(t *testing.T) {
				r := screentest.New(t, New(), vehicles.Demo(), w, h)
				r.Type(keys)
				r.Golden(fmt.Sprintf("%s-%dx%d", name, w, h), w, h)
			})
		}
	}
}

func TestWildHands(t *testing.T) { screentest.Wild(t, New, screentest.Van(t)) }

// The plan follows what is picked in the list: nobody should have to look for it.
func TestThePlanFollowsWhatIsPicked(t *testing.T) {
	for _, size := range [][2]int{{60, 17}, {100, 27}} {
		r := screentest.New(t, New(), vehicles.Demo(), size[0], size[1])
		r.State.Camera = desk.Camera{Middle: geometry.Point{X: 400}, Scale: 1}
		moved := 0
		for range r.State.Job.Obstructions {
			before := r.State.Camera
			r.Type("<down>")
			if r.State.Camera != before {
				moved++
				f := r.State.Plan.Obstructions[r.State.Selected].Prism.Footprint
				low, high := f.Bounds()
				assert.Equal(t, low.Add(high).Scale(0.5), r.State.Camera.View.Projection().Unproject(r.State.Camera.Middle).Plan())
			}
		}
		assert.Positive(t, moved)
	}
}

// What a field of letters does not take is said, and Enter does not go past a kind that nobody has chosen.
func TestAKindIsChosenBeforeAllElse(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("n1")
	assert.Equal(t, `"1" chooses nothing here: kind takes one of the letters shown.`, r.Said)
	r.Type("<enter>")
	assert.Contains(t, r.Said, "kind comes first")
	assert.Contains(t, r.View(100, 27), "▸ kind")
	r.Type("c")
	assert.NotContains(t, r.View(100, 27), "▸ kind")
}

// From the last field Enter goes back to one that was refused, be it one that may be left out, and not on to a new thing.
func TestEnterGoesBackToWhatWasRefused(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	things := len(r.State.Job.Obstructions)
	r.Type("nc652<enter>736<enter>100<enter>300<enter>110<enter>1x5<enter>")
	assert.Contains(t, r.Said, "bottom was refused", "the last one, too")
	assert.Contains(t, r.View(100, 27), "▸ bottom")
	r.Type("195<enter>")
	assert.Len(t, r.State.Job.Obstructions, things+1)
	assert.Contains(t, r.View(100, 27), "new obstruction", "and then on")
}
