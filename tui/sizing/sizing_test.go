package sizing

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// onTopic is the sample van before the screen, at the first result of a topic.
func onTopic(t testing.TB, topic sizing.Topic, w, h int) *screentest.Driver {
	r := screentest.New(t, New(), vehicles.Demo(), w, h)
	goTo(r, topic, "")
	return r
}

// goTo goes to a result, the first of its topic for "".
func goTo(r *screentest.Driver, topic sizing.Topic, id string) {
	r.Type("<home>")
	for _, record := range records(r.State) {
		if one, is := record.(result); is && one.topic == topic && (id == "" || one.row.ID.String() == id) {
			return
		}
		r.Type("<down>")
	}
	require.Fail(r.T, "no such result", "%s %s", topic, id)
}

// The cable's length is typed where its area is asked for, and the area follows.
func TestTheCablesLengthIsTypedAtItsArea(t *testing.T) {
	job := vehicles.Demo()
	job.Electrics = vehicles.Electrics{}
	r := screentest.New(t, New(), job, 100, 27)
	goTo(r, sizing.Electrics, "area")
	assert.Contains(t, r.View(100, 27), "Nobody has said: the cable's")
	r.Type("<enter>4.2m")
	assert.Contains(t, r.View(100, 27), "▸ cable, one way")
	assert.Equal(t, vehicles.Some(4200), r.State.Job.Electrics.Cable)
	r.Type("<esc>")
	assert.NotContains(t, r.View(100, 27), "Nobody has said: the cable's")
	assert.Contains(t, r.View(100, 27), "cable's area: 4 mm²")
	r.Type("<enter>4x")
	assert.Equal(t, vehicles.Some(4200), r.State.Job.Electrics.Cable, "what can't be read is not taken")
	assert.Len(t, r.State.Job.Refused(), 1)
}

func TestEveryFieldOfACardIsThere(t *testing.T) {
	full := screentest.Judged(screentest.State(t), vehicles.Demo())
	for topic, c := range cards {
		var keys []string
		for _, slot := range c.slots(full) {
			keys = append(keys, slot.Key)
		}
		for id, key := range c.at {
			assert.Contains(t, keys, key, "%s %s", topic, id)
		}
	}
	for _, record := range records(screentest.State(t)) {
		of, _ := opens(record, screentest.State(t))
		assert.NotEmpty(t, of.ID())
	}
}

func TestGoldens(t *testing.T) {
	for _, size := range screentest.Sizes {
		for _, topic := range sizing.Topics() {
			t.Run(fmt.Sprintf("%s-%s", topic, size.Name), func(t *testing.T) {
				r := onTopic(t, topic, size.W, size.H)
				r.Golden(fmt.Sprintf("%s-%s", topic, size.Name), size.W, size.H)
			})
		}
		r := onTopic(t, sizing.Electrics, size.W, size.H)
		r.Type("<enter>")
		r.Golden("typing-"+size.Name, size.W, size.H)
	}
}

func TestWildHands(t *testing.T) { screentest.Wild(t, New, screentest.Van(t)) }

// What a key on the screen takes beside judging: the list, the form and what is said beside them.
func BenchmarkView(b *testing.B) {
	r := onTopic(b, sizing.Heat, 160, 47)
	for b.Loop() {
		r.Screen.View(r.State, 160, 47)
	}
}

// Lengths are in the units of the screen; what is no length stays as it is.
func TestLengthsAreInTheUnitsOfTheScreen(t *testing.T) {
	r := onTopic(t, sizing.Floor, 100, 27)
	assert.Contains(t, r.View(100, 27), "36 mm")
	r.State.Settings.Units = desk.Inches
	assert.Contains(t, r.View(100, 27), `1 7/16"`)
	assert.NotContains(t, r.View(100, 27), "36 mm")
	assert.Contains(t, r.View(100, 27), "30.5 ml")
}
