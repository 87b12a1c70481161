package tui

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// tapText taps the first place of a screen where a text shows.
func tapText(t testing.TB, r *screentest.Driver, w, h int, text string) {
	for y, row := range strings.Split(r.View(w, h), "\n") {
		if before, _, found := strings.Cut(row, text); found {
			r.Tap(ansi.StringWidth(before)+1, y)
			return
		}
	}
	require.Fail(t, "not on the screen: "+text, r.View(w, h))
}

// A row that is tapped is the row that so many arrows go to: the same picture, the same thing picked out, and a second tap opens
// what Enter opens.
func TestATappedRowIsTheOneTheArrowsGoTo(t *testing.T) {
	job := screentest.Full(t)
	for _, l := range things(job) {
		for i, name := range l.names {
			byKeys, byTap := onScreen(t, l.screen, job, 100, 47), onScreen(t, l.screen, job, 100, 47)
			byKeys.Type(strings.Repeat("<down>", l.first+i))
			if l.list == "tie" { // its name is a heading: the row has its readings
				name = " " + job.Ties[i].Below[1].Text + " │"
			}
			tapText(t, byTap, 100, 47, name)
			if l.first+i == 0 { // the keys were there already
				require.True(t, byTap.Screen.Typing(), name)
				continue
			}
			require.Equal(t, byKeys.View(100, 47), byTap.View(100, 47), "%s: %s", l.screen, name)
			assert.Equal(t, byKeys.State.Selected, byTap.State.Selected)
			byKeys.Type("<enter>")
			tapText(t, byTap, 100, 47, name)
			require.True(t, byTap.Screen.Typing(), name)
			assert.Equal(t, byKeys.View(100, 47), byTap.View(100, 47), name)
			assert.Equal(t, string(job.Format()), string(byTap.State.Job.Format()))
		}
	}
}

// A field that is tapped takes what is typed as the one the arrows go to does.
func TestATappedFieldIsTheOneTheArrowsGoTo(t *testing.T) {
	job := screentest.Full(t)
	for label, downs := range map[string]int{"near edge": 0, "far edge": 1, "one side": 2, "other side": 3, "turned": 4, "top ": 5, "bottom": 6, "taped at drop": 7, "overall": 9} {
		byKeys, byTap := onScreen(t, "Underneath", job, 100, 60), onScreen(t, "Underneath", job, 100, 60)
		byKeys.Type("<enter>" + strings.Repeat("<down>", downs) + "<end>.5")
		tapText(t, byTap, 100, 60, label)
		byTap.Type("<end>.5")
		assert.Equal(t, string(byKeys.State.Job.Format()), string(byTap.State.Job.Format()), label)
		assert.NotEqual(t, string(job.Format()), string(byTap.State.Job.Format()), label)
	}
}

// The fields that Place opens beside its plan, too: of a typed place and of a measured pilot hole. A tap on whole layouts goes through
// them.
func TestWhatPlaceOpensTakesTaps(t *testing.T) {
	job := screentest.State(t).Job
	for _, size := range screentest.Sizes {
		for _, open := range []string{"t", "m"} {
			byKeys, byTap := onScreen(t, "Place", job, size.W, size.H), onScreen(t, "Place", job, size.W, size.H)
			byKeys.Type(open + "<down>1")
			byTap.Type(open)
			tapText(t, byTap, size.W, size.H, "across")
			byTap.Type("1")
			assert.Equal(t, byKeys.View(size.W, size.H), byTap.View(size.W, size.H), "%s, %s", open, size.Name)
		}
	}
}

// Each kind of each list of what is looked for, by its row's tap and by the arrows.
func TestATappedKindIsTheOneTheArrowsGoTo(t *testing.T) {
	ofWholeRun(t)
	job := screentest.Full(t)
	for list, tabs := range []string{"a", "a<tab>", "a<tab><tab>"} {
		for i, kind := range vehicles.LookLists[list].Kinds() {
			byKeys, byTap := onScreen(t, "Underneath", job, 100, 47), onScreen(t, "Underneath", job, 100, 47)
			byKeys.Type(tabs + strings.Repeat("<down>", i) + "<space>")
			byTap.Type(tabs)
			tapText(t, byTap, 100, 47, " "+kind+" ")
			require.Equal(t, byKeys.View(100, 47), byTap.View(100, 47), kind)
			assert.Equal(t, byKeys.Said, byTap.Said, kind)
			require.Equal(t, string(byKeys.State.Job.Format()), string(byTap.State.Job.Format()), kind)
			only(t, job, byTap.State.Job, kind, [...]string{"looked", "looked_runs", "looked_openings"}[list], "extra.looked round",
				"extra.looked round runs", "extra.looked round outlet")
		}
	}
}

// What the cards of Job offer to do is asked for by Enter and by a second tap alike.
func TestATapOnSomethingToDoAsksForIt(t *testing.T) {
	job := screentest.Full(t)
	for text, downs := range map[string]int{
		"Save as another": 6, "Cautions": 7, "First run": 8, "Job sheet": 9, "Template at": 10, "Page for the customer": 11,
	} {
		byKeys, byTap := onScreen(t, "Job", job, 100, 47), onScreen(t, "Job", job, 100, 47)
		byKeys.Type(strings.Repeat("<down>", downs) + "<enter>")
		tapText(t, byTap, 100, 47, text)
		assert.Zero(t, byTap.Asked, "the first tap only goes there")
		tapText(t, byTap, 100, 47, text)
		assert.NotZero(t, byTap.Asked, text)
		assert.Equal(t, byKeys.Asked, byTap.Asked, text)
	}
}
