package tui

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// doubting is a job with an obstruction near the cut that has no drop: what to measure next is that drop.
func doubting(t *testing.T) vehicles.Job {
	job, err := vehicles.ParseJob([]byte(bareJob+`[datum]
hook_below = 150
[[obstruction]]
name = "far rail"
kind = "chassis rail"
x = [300, 2800]
y = [-700, -600]
drop = [0, 95]
[[obstruction]]
name = "brake pipe, right"
kind = "brake line"
path = [[300, -300], [2400, -300]]
across = 8
[cut]
at = [1210, 240]
across = 127
`), "van.toml")
	require.NoError(t, err)
	return job
}

// advisedDesk is the program with its own screens on that job, the advice worked out.
func advisedDesk(t *testing.T, w, h int) *bench {
	o := options(t)
	o.Screens = Screens()
	_, _, err := vehicles.Document{Path: o.Path}.Save(doubting(t))
	require.NoError(t, err)
	b := started(t, o)
	b.send(tea.WindowSizeMsg{Width: w, Height: h})
	return b
}

const wanted = "measure: brake pipe, right, drop: ends 1 doubt"

func TestWhatToMeasureNextIsOnEveryScreen(t *testing.T) {
	b := advisedDesk(t, 100, 30)
	require.Contains(t, words.Advice(b.desk.State), wanted)
	for i := range b.screens {
		b.goTo(i)
		assert.Contains(t, b.rows()[28], wanted, "above the foot of %s", b.screens[i].Title())
	}
	b.send(tea.WindowSizeMsg{Width: 60, Height: 20})
	assert.Contains(t, b.rows()[18], wanted, "in the lowest window, too")
	b.press("?")
	assert.True(t, b.shows(wanted), "the help has it")
}

func TestATapGoesToTheReading(t *testing.T) {
	b := advisedDesk(t, 100, 30)
	b.goTo(b.titled("Checks"))
	b.tapOn(wanted)
	assert.True(t, b.shows("[1 Underneath]"))
	assert.Equal(t, 1, b.desk.State.Selected)
	assert.True(t, b.shows("▸ top"), "the drop's field has the keys")
	b.press("20", "enter", "30")
	assert.Equal(t, vehicles.Span{From: 20, To: 30, Set: true}, b.desk.State.Job.Obstructions[1].Drop)
	assert.NotContains(t, words.Advice(b.desk.State), "brake pipe, right, drop", "it is asked for no more")
}

// Update must not wait for the advice, and an answer to an older question counts no more.
func TestAnswersToOldQuestionsAreDropped(t *testing.T) {
	b := advisedDesk(t, 100, 30)
	job := b.desk.State.Job
	job.Notes = "changed"
	cmd := b.apply(desk.Change{Job: &job})
	assert.False(t, b.desk.State.Next.Known)
	assert.Contains(t, words.Advice(b.desk.State), wanted, "the last advice stays in sight meanwhile")
	old := b.asked
	assert.Nil(t, b.takeAdvice(), "but is of another job")
	assert.NotNil(t, settled{old}.happened(b.Root))
	again := job
	again.Notes = "and again"
	b.apply(desk.Change{Job: &again})
	assert.Nil(t, settled{old}.happened(b.Root), "the job did not stay as it was")
	advised{old, desk.Next{Known: true, Failed: true}}.happened(b.Root)
	assert.False(t, b.desk.State.Next.Known)
	assert.False(t, b.desk.State.Next.Failed)
	b.do(cmd)
	assert.False(t, b.desk.State.Next.Known)
	b.do(b.advise())
	assert.True(t, b.desk.State.Next.Known)
}

// A question that is older than the last key is not even painted for; the last one is.
func TestOldQuestionsAreLeftOut(t *testing.T) {
	b := advisedDesk(t, 100, 30)
	b.apply(desk.Change{Job: &b.desk.State.Job})
	assert.Nil(t, b.heeded(b.Root, settled{b.asked - 1}))
	assert.Equal(t, settled{b.asked}, b.heeded(b.Root, settled{b.asked}))
	assert.Equal(t, advised{b.asked - 1, desk.Next{}}, b.heeded(b.Root, advised{b.asked - 1, desk.Next{}}))
}

// The size that is asked for once more is told only where it is another; one that nobody asked for always, as the picture may be broken.
func TestASizeThatIsKnownIsNotPaintedFor(t *testing.T) {
	b := advisedDesk(t, 100, 30)
	b.sizing = false // what was asked at the start
	same, other := tea.WindowSizeMsg{Width: 100, Height: 30}, tea.WindowSizeMsg{Width: 99, Height: 30}
	assert.Equal(t, same, b.heeded(b.Root, same), "nobody asked")
	listening{}.happened(b.Root)
	assert.Nil(t, b.heeded(b.Root, same))
	assert.Equal(t, same, b.heeded(b.Root, same), "it was answered already")
	listening{}.happened(b.Root)
	assert.Equal(t, other, b.heeded(b.Root, other))
}

func TestAFaultInTheAdviceEndsNothing(t *testing.T) {
	found := next(rules.Result{}, nil, func(rules.Result, *rules.Book) []rules.Advice { panic("no") })
	assert.Equal(t, desk.Next{Known: true, Failed: true}, found)
	b := advisedDesk(t, 100, 30)
	b.send(advised{b.asked, found})
	assert.True(t, b.shows("could not be worked out"))
}

func TestWithoutACutTheLineSaysSo(t *testing.T) {
	b := advisedDesk(t, 100, 30)
	job := b.desk.State.Job
	job.Cut = nil
	b.do(b.apply(desk.Change{Job: &job}))
	assert.Contains(t, b.rows()[28], "first give the cut a place")
}

// Whatever reading would decide most: what rests on a floor that nobody has measured is decided by no other.
func TestAGuessedFloorIsMeasuredFirst(t *testing.T) {
	b := advisedDesk(t, 100, 30)
	job := b.desk.State.Job.WithFloorGuessed().WithoutGuess("floor.width")
	b.do(b.apply(desk.Change{Job: &job}))
	require.NotEmpty(t, b.desk.State.Next.Advice)
	const floor = "measure: first the floor (2): 4 sizes of it are guesses"
	assert.Contains(t, b.rows()[28], floor)
	b.tapOn(floor)
	assert.True(t, b.shows("[2 On top]"))
}

func TestAFaultyJobHasNoAdvice(t *testing.T) {
	b := advisedDesk(t, 100, 30)
	job := b.desk.State.Job
	o := job.Obstructions[0]
	o.X[0].Length, o.X[1].Length = 10, 20 // nearer than the hook's height
	job.Obstructions = job.Obstructions.With(0, o)
	b.do(b.put(job)) // as a file has it
	require.NotEmpty(t, b.desk.State.Faults)
	assert.Empty(t, words.Advice(b.desk.State))
	b.press("ctrl+z")
	assert.Contains(t, words.Advice(b.desk.State), wanted)
}
