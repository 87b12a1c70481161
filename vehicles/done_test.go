package vehicles

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Whatever is recorded and taken back in whatever order, what is recorded of a step is what was put there last, each step stands once
// and in the order of the work, and no job before that has changed.
func TestARecordIsWhatWasPutThereLast(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		var job Job
		last := map[string]Done{}
		ids := StepIDs()[:6]
		for range rapid.IntRange(1, 20).Draw(rt, "edits") {
			d := Done{Step: rapid.SampledFrom(ids).Draw(rt, "step")}
			if rapid.IntRange(0, 2).Draw(rt, "kept") > 0 {
				d.At, d.Note = "2026-11-27", rapid.StringMatching(`[a-z]{0,3}`).Draw(rt, "note")
			}
			before, text := job, string(job.Format())
			job = job.WithDone(d)
			require.Equal(rt, text, string(before.Format()))
			last[d.Step] = d
		}
		for step, d := range last {
			assert.Equal(rt, d, job.DoneOf(step))
		}
		for i := 1; i < len(job.Done); i++ {
			assert.Less(rt, StepIndex(job.Done[i-1].Step), StepIndex(job.Done[i].Step))
		}
	})
}

// Ticking a step and taking it back gives the same job.
func TestTakingBackGivesTheSameJob(t *testing.T) {
	job := Demo().WithDone(Done{Step: "stands", At: "2026-11-27"})
	again := job.WithDone(Done{Step: "dry-fit", At: "2026-11-27T10:15:00"}).WithDone(Done{Step: "dry-fit"})
	assert.Equal(t, job, again)
	assert.Equal(t, Demo(), job.WithDone(Done{Step: "stands"}))
}

func TestMomentsArePlainToType(t *testing.T) {
	for text, want := range map[string]string{
		"2026-11-27": "2026-11-27", " 2026-11-27 10:15": "2026-11-27T10:15:00", "2026-11-27T10:15": "2026-11-27T10:15:00",
		"2026-11-27 10:15:59": "2026-11-27T10:15:59", "1999-01-01T23:59:59.25": "1999-01-01T23:59:59.25",
	} {
		got, ok := ParseMoment(text)
		assert.True(t, ok, text)
		assert.Equal(t, want, got)
	}
	for _, text := range []string{"", "27.11.2026", "2026-13-01", "10:15", "2026-11-27 25:00", "2026-11-27T10:15:00Z", "2026-11-27 10"} {
		_, ok := ParseMoment(text)
		assert.False(t, ok, text)
	}
	at := time.Date(2026, 11, 27, 10, 15, 30, 99, time.UTC)
	assert.Equal(t, "2026-11-27T10:15:00", Moment(at))
	assert.Equal(t, "2026-11-27 10:15, 12.3 V", Done{Step: "glow-voltage", At: Moment(at), Value: Some(12.3)}.String())
}

func TestHowLongAgoAStepWasDone(t *testing.T) {
	now := time.Date(2026, 11, 27, 10, 15, 30, 0, time.FixedZone("there", 3600))
	ago, ok := Done{At: "2026-11-27T10:03:30"}.Ago(now)
	assert.True(t, ok)
	assert.Equal(t, 12*time.Minute, ago, "by the clock where the van stands")
	for _, at := range []string{"", "2026-11-27", "2026-11-27T10:16:00", "x"} {
		_, ok = Done{At: at}.Ago(now)
		assert.False(t, ok, at)
	}
}

// A step's id is its own for ever: files have it.
func TestEachStepHasAnIDOfItsOwn(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range StepKinds {
		assert.Regexp(t, `^[a-z]+(-[a-z]+)*$`, k.ID)
		assert.False(t, seen[k.ID], k.ID)
		seen[k.ID] = true
	}
}

// What a record's reader is given it takes or names what is wrong; what it takes it writes so that it reads the same.
func FuzzTheRecord(f *testing.F) {
	for _, text := range []string{
		"step = \"stands\"\nat = 2026-11-27T10:15:00", "step = \"fall\"\nvalue = -1.5\nphotos = [\"a.jpg\"]", "step = \"retorque\"\ndue = 2026-12-01\nnote = \"\"\"\na\nb\"\"\"",
		"at = 2026-11-27T10:15:00.000000001", "step = 5", "photos = [\"..\"]", "at = 07:32:00", "value = inf",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		job, err := ParseJob([]byte(head+"[[done]]\n"+text), "a.toml")
		if err != nil {
			assert.NotContains(t, err.(FileErrors)[0].Error(), "\n")
			return
		}
		again, err := ParseJob(job.Format(), "b.toml")
		require.NoError(t, err, string(job.Format()))
		assert.Equal(t, string(job.Format()), string(again.Format()))
	})
}
