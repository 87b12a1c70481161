package under

import (
	"fmt"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// opened is the full job with one of the lists of what is looked for.
func opened(t *testing.T, list vehicles.LookList, job vehicles.Job) *screentest.Driver {
	r := screentest.New(t, New(), job, 100, 47)
	r.Type("a" + strings.Repeat("<tab>", int(list)))
	return r
}

// unlooked is the full job before anybody looked for anything.
func unlooked(t *testing.T) vehicles.Job {
	job := screentest.Full(t)
	job.Looked, job.LookedRuns, job.LookedOpenings = nil, nil, nil
	return job
}

// A letter that one kind has takes it at once, one that several have goes round them, and Enter takes the one it is at; each kind
// of each list is reached so.
func TestEveryKindIsReachedByItsLetter(t *testing.T) {
	for _, list := range vehicles.LookLists {
		shared := map[rune]int{}
		for _, kind := range list.Kinds() {
			shared[list.KindOf(kind).Letter]++
		}
		turn := map[rune]int{}
		for i, kind := range list.Kinds() {
			letter := list.KindOf(kind).Letter
			turn[letter]++
			r := opened(t, list, unlooked(t))
			if i == 0 && shared[letter] > 1 {
				r.Type("<end>") // one begins behind it: its letter goes on from where one is
			}
			r.Type(strings.Repeat(string(letter), turn[letter]))
			if shared[letter] > 1 {
				assert.False(t, r.State.Job.LookedFor(list)[kind], "the letter alone does not say which")
				r.Type("<home>" + strings.Repeat("<down>", i) + "<enter>")
			}
			if r.State.Job.Entered(list, kind) > 0 {
				assert.Contains(t, r.Said, "entered already", kind)
				assert.False(t, r.State.Job.LookedFor(list)[kind])
				continue
			}
			assert.True(t, r.State.Job.LookedFor(list)[kind], "%v %s: %s", list, kind, r.Said)
			r.Type("<home>" + strings.Repeat("<down>", i) + "<enter>")
			assert.False(t, r.State.Job.LookedFor(list)[kind], "again takes it back")
		}
	}
}

// Enter goes on to the next kind that nobody entered or looked for, and a bouncing key takes none of those.
func TestEnterGoesThroughTheKinds(t *testing.T) {
	r := opened(t, vehicles.AtCut, unlooked(t))
	open := r.State.Result.OpenIn(vehicles.AtCut)
	require.NotEmpty(t, open)
	r.Type("<enter>") // of the first there is one
	assert.Contains(t, r.Said, "entered already, so there is one here; next: "+open[0])
	for i, kind := range open {
		_, _, changes := screentest.After(r.Screen, r.State, tea.KeyMsg{Type: tea.KeyEnter})
		assert.True(t, changes[0].Once)
		r.Type("<enter>")
		assert.True(t, r.State.Job.Looked[kind], kind)
		assert.Len(t, r.State.Result.OpenIn(vehicles.AtCut), len(open)-1-i)
	}
}

// Looking for all that is left takes the number on the tab down to nothing, one by one, and the rules ask for nothing more there.
func TestLookingForAllLeavesNothingOpen(t *testing.T) {
	for _, list := range vehicles.LookLists {
		r := opened(t, list, unlooked(t))
		open := len(left(list, r.State))
		require.NotZero(t, open)
		for i, k := range kinds(list, r.State) {
			if k.entered > 0 {
				continue
			}
			r.Type("<home>" + strings.Repeat("<down>", i) + "<space>")
			if k.asked {
				open--
			}
			require.Len(t, left(list, r.State), open, k.kind)
			require.Contains(t, strings.SplitN(r.View(100, 47), "\n", 2)[0], fmt.Sprintf("%s %d ", tabs[list], open))
		}
		assert.Zero(t, open)
		assert.Empty(t, rules.OpenIn(list, &r.State.Job, &r.State.Plan))
		for len(r.Steps()) > 0 {
			r.Undo()
		}
		assert.Equal(t, string(unlooked(t).Format()), string(r.State.Job.Format()))
	}
}

// The three lists are of three places: what is looked for at one says nothing of the others.
func TestTheListsDoNotSpeakForEachOther(t *testing.T) {
	for _, list := range vehicles.LookLists {
		r := opened(t, list, unlooked(t))
		var before [len(vehicles.LookLists)][]string
		for _, other := range vehicles.LookLists {
			before[other] = left(other, r.State)
		}
		for i := range list.Kinds() {
			r.Type("<home>" + strings.Repeat("<down>", i) + "<enter>")
		}
		for _, other := range vehicles.LookLists {
			if other != list {
				assert.Equal(t, before[other], left(other, r.State), "%v after %v", other, list)
			}
		}
	}
}

// Each list keeps the row one was at.
func TestEachListKeepsItsRow(t *testing.T) {
	r := opened(t, vehicles.AtCut, unlooked(t))
	r.Type("<down><down><tab><down><tab><end><tab>")
	l := r.Screen.(Screen).looking
	assert.Equal(t, [3]int{2, 1, len(vehicles.AtOutlet.Kinds()) - 1}, l.kinds)
	assert.Equal(t, vehicles.AtCut, l.list)
	r.Type("<shift+tab>")
	assert.Equal(t, vehicles.AtOutlet, r.Screen.(Screen).looking.list)
}

// Who has looked where the cut was has not looked where it is now; the file keeps that he has.
func TestALookGoesOldWhenTheCutMoves(t *testing.T) {
	r := opened(t, vehicles.AtCut, unlooked(t))
	r.Type("e")
	require.True(t, r.State.Job.Looked["vehicle exhaust"])
	require.NotContains(t, left(vehicles.AtCut, r.State), "vehicle exhaust")
	cut := *r.State.Job.Cut
	cut.Drilled, cut.Direct = nil, nil
	cut.At[0] += 400
	moved := opened(t, vehicles.AtCut, r.State.Job.WithCut(cut))
	assert.Contains(t, left(vehicles.AtCut, moved.State), "vehicle exhaust")
	moved.Type("e")
	assert.NotContains(t, left(vehicles.AtCut, moved.State), "vehicle exhaust", "looked again, here")
}
