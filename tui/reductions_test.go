package tui

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// atOdds is the sample van with four matching points, of which the last was read on the wrong side below.
func atOdds(t testing.TB) vehicles.Job {
	job := vehicles.Demo()
	for _, said := range [][5]string{{"drain, left", "1408", "L 328", "1402", "L 324.5"}, {"bolt, right", "2305", "R 487", "2301", "R 482"}} {
		var read [4]survey.Reading
		for i, text := range said[1:] {
			reading, err := survey.Parse(text, survey.Axis(i%2))
			require.NoError(t, err)
			read[i] = reading
		}
		tie := vehicles.Tie{Name: said[0], Use: true, Below: vehicles.Pair{read[0], read[1]}, Above: vehicles.Pair{read[2], read[3]}}
		job.Ties = job.Ties.Insert(len(job.Ties), tie)
	}
	return job.WithTieSideSwapped(len(job.Ties)-1, true)
}

// reductions is how often a job, or its matching points alone, are reduced while something is done.
func reductions(do func()) int64 {
	before := vehicles.Reductions.Load()
	do()
	return vehicles.Reductions.Load() - before
}

// A picture, the keys that hold and the lines of a screen are made of the job as it was reduced when it changed, also where
// matching points disagree: which of them is on the wrong side is worked out once a change.
func TestAPictureReducesNothing(t *testing.T) {
	job := atOdds(t)
	plan, faults := rules.Reduce(job, rules.Builtin())
	require.Empty(t, faults)
	_, ok := rules.TieOnWrongSide(job, plan)
	require.True(t, ok, "one of them is on the wrong side")
	for _, screen := range Screens() {
		r := screentest.New(t, screen, job, 160, 47)
		r.View(160, 47)
		assert.Zero(t, reductions(func() {
			r.View(160, 47)
			r.Screen.Keys(r.State)
			r.Screen.Plain(r.State)
		}), screen.Title())
		if screen.Title() != "Match" {
			continue
		}
		r.Begin(job.WithTieSideSwapped(0, false), true)
		sides := 2 * int64(len(job.Ties))
		assert.Equal(t, sides, reductions(func() { r.View(160, 47); r.Screen.Keys(r.State) }), "each of both sides is tried, once")
	}
}

// While a matching point is being typed its picture reduces what the job has not yet, the one pair that is whole; once it is taken,
// nothing.
func TestAPictureOfWhatIsTypedReducesThatAlone(t *testing.T) {
	r := onScreen(t, "Match", vehicles.Demo(), 160, 47)
	r.Type("nbolt<enter>1402<enter>L 300")
	assert.Contains(t, r.View(160, 47), "= 588 mm left")
	assert.EqualValues(t, 1, reductions(func() { r.View(160, 47); r.Screen.Keys(r.State) }))
	r.Type("<enter>1400<enter>L 302<esc>")
	require.Len(t, r.State.Job.Ties, len(vehicles.Demo().Ties)+1)
	r.View(160, 47) // whether one is on the wrong side is worked out once
	assert.Zero(t, reductions(func() { r.View(160, 47); r.Screen.Keys(r.State) }))
}

// A key in any field of any form, whatever it is and whatever becomes of its text, reduces the job twice at most: once as it would be with
// the text, once as it is taken. A job that was built otherwise is one more each time. The picture after it reduces nothing; on Match, the
// point in hand alone, below and above.
func TestAKeyInAnyFormReducesTwice(t *testing.T) {
	ofWholeRun(t)
	for _, form := range forms {
		for i, f := range form.fields {
			for _, built := range []bool{false, true} {
				if built && i > 0 {
					continue // one field of a form tells what a job as built costs
				}
				job, most := screentest.Full(t), int64(4)
				require.NotNil(t, job.Built)
				if !built {
					job.Built, most = nil, 2
				}
				r := inFieldOf(t, job, form.screen, form.row, i)
				r.View(60, 17)
				for _, key := range []string{"4", firstOf(f.typed), "<wipe>"} {
					assert.LessOrEqual(t, reductions(func() { r.Type(key) }), most, "%s, field %d: %s", form.name, i, key)
					assert.Zero(t, reductions(func() { r.View(60, 17); r.Screen.Keys(r.State) }), "%s, field %d: the picture after %s", form.name, i, key)
				}
			}
		}
	}
}

// firstOf is the first key of a text; any where there is none.
func firstOf(text string) string {
	for _, letter := range text {
		return string(letter)
	}
	return "1"
}

// An arrow that moves the cut, turns the heater or moves what is in hand on Runs reduces the job once, as it is moved, and once more as it
// was built; a key that moves nothing reduces nothing.
func TestAnArrowReducesOnce(t *testing.T) {
	for _, c := range []struct {
		screen, keys string
		moves        int // how many of each change the job
		each         []string
	}{
		{"Place", "", 3, []string{"<left>", "<up>", "<right>", "t", "l", "f"}},
		{"Runs", "<down><down>", 4, []string{"<left>", "<right>", "[", "]", "<down>", "<up>", "l", "f"}},
		{"Marks", "", 0, []string{"<down>", "<space>", "<space>"}},
		{"Work", "", 2, []string{"<down>", "<space>", "<space>"}},
	} {
		for _, built := range []bool{false, true} {
			job, once := screentest.Full(t), int64(2)
			if !built {
				job.Built, once = nil, 1
			}
			job = job.WithDrilled(nil)
			r := onScreen(t, c.screen, job, 160, 100)
			r.Type(c.keys)
			r.View(60, 17)
			moved := 0
			for _, key := range c.each {
				before := string(r.State.Job.Format())
				n := reductions(func() { r.Type(key); r.View(60, 17) })
				if before == string(r.State.Job.Format()) {
					assert.Zero(t, n, "%s: %s", c.screen, key)
					continue
				}
				assert.Equal(t, once, n, "%s: %s", c.screen, key)
				moved++
			}
			assert.Equal(t, c.moves, moved, c.screen)
		}
	}
}
