package work

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/vehicles"
)

// told is the list as another program reads it.
type told struct {
	Steps []struct {
		Step, Name, Part, Do, Of, Measured, Unit, Expected, Source, Amiss, Lacks, Known, Foul, Due, Note string
		At                                                                                               *string
		Value, Least, Most                                                                               *float64
		After, Photos                                                                                    []string
		Early                                                                                            bool
	}
	Done      int
	Elsewhere []struct {
		Step, Note string
		At         *string
		Value      *float64
	}
}

func toldOf(t require.TestingT, job vehicles.Job) (List, told) {
	l := Of(judged(t, job))
	data, err := l.JSON(&job)
	require.NoError(t, err)
	var out told
	require.NoError(t, json.Unmarshal(data, &out))
	return l, out
}

// Other programs read each step and each record as they are: what is done has its time, what is not has null, a value of 0 is there, and what is early or
// amiss is called so. Nothing of it is lost, and nothing is told twice.
func TestOtherProgramsReadWhatIsRecorded(t *testing.T) {
	job := demo.WithDone(vehicles.Done{Step: "sawn", At: "2026-11-27T09:00:00", Note: "by hand", Photos: vehicles.List[string]{"hole.jpg"}}).
		WithDone(vehicles.Done{Step: "co-inside", At: "2026-11-27", Value: vehicles.Some(0)}).
		WithDone(vehicles.Done{Step: "fall", Value: vehicles.Some(12)}).
		WithDone(vehicles.Done{Step: "retorque", Due: "2026-12-11"}).
		WithDone(vehicles.Done{Step: "seat-wait", At: "2026-11-26", Value: vehicles.Some(12), Note: "one seat"})
	l, out := toldOf(t, job)
	require.Len(t, out.Steps, len(l))
	assert.Equal(t, 2, out.Done, "what is noted is not done")
	at := func(id string) int { return l.Index(id) }
	sawn, gas, fall, again, depth := out.Steps[at("sawn")], out.Steps[at("co-inside")], out.Steps[at("fall")], out.Steps[at("retorque")], out.Steps[at("depth")]
	assert.Equal(t, "2026-11-27T09:00:00", *sawn.At)
	assert.True(t, sawn.Early, "nobody has looked at the pilot hole")
	assert.Equal(t, []string{"pilot-looked"}, sawn.After)
	assert.Equal(t, [2]any{"by hand", []string{"hole.jpg"}}, [2]any{sawn.Note, sawn.Photos})
	assert.Nil(t, sawn.Value)
	assert.InDelta(t, 0, *gas.Value, 0)
	assert.InDelta(t, 0, *gas.Most, 0)
	assert.Nil(t, gas.Least)
	assert.Empty(t, gas.Amiss)
	assert.Nil(t, fall.At, "a value alone is no tick")
	assert.Equal(t, "12 mm/m: 20 mm/m at least is expected", fall.Amiss)
	assert.False(t, fall.Early, "what is not done is not early")
	assert.Equal(t, "2026-12-11", again.Due)
	assert.Nil(t, again.At)
	assert.InDelta(t, 8, *depth.Least, 1e-9)
	assert.InDelta(t, 34, *depth.Most, 1e-9)
	assert.Equal(t, "8 to 34 mm", depth.Expected)
	require.Len(t, out.Elsewhere, 1)
	assert.Equal(t, [2]string{"seat-wait", "one seat"}, [2]string{out.Elsewhere[0].Step, out.Elsewhere[0].Note})
	assert.Equal(t, "2026-11-26", *out.Elsewhere[0].At)
	assert.InDelta(t, 12, *out.Elsewhere[0].Value, 0)
	_, out = toldOf(t, demo.WithDone(vehicles.Done{Step: "glow-voltage", At: "2026-11-27"}))
	assert.Equal(t, "voltage while it glows not noted", out.Steps[at("glow-voltage")].Lacks)
}

// Paper and programs say the same of each step, whatever is recorded: done, value, day, note, and what is wrong with it.
func TestPaperAndProgramsSayTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := rapid.SampledFrom([]vehicles.Job{demo, seats, timber, under("fuel tank"), throughTheFloor()}).Draw(t, "job")
		for range rapid.IntRange(0, 10).Draw(t, "records") {
			k := rapid.SampledFrom(vehicles.StepKinds).Draw(t, "step")
			d := vehicles.Done{Step: k.ID, Note: rapid.SampledFrom([]string{"", "seen"}).Draw(t, "note")}
			if rapid.Bool().Draw(t, "ticked") {
				d.At = "2026-11-27T10:15:00"
			}
			if k.Measures() && rapid.Bool().Draw(t, "measured") {
				d.Value = vehicles.Some(float64(rapid.IntRange(-50, 1000).Draw(t, "value")) / 10)
			}
			job = job.WithDone(d)
		}
		l, out := toldOf(t, job)
		done := 0
		for i, row := range l.Rows() {
			s := out.Steps[i]
			value := ""
			if s.Value != nil {
				value = vehicles.Some(*s.Value).Text()
			}
			if row.Name != s.Name || row.Ticked != (s.At != nil) || row.Value != value || row.Note != s.Note || row.Due != s.Due || row.Unit != s.Unit {
				t.Fatalf("%s: on paper %+v, told %+v", s.Step, row, s)
			}
			if row.Ticked {
				done++
			}
			if barred := s.Foul != "" && s.At == nil && s.Known == ""; barred != (row.Barred != "") || !strings.HasSuffix(row.Barred, s.Foul) && barred {
				t.Fatalf("%s: foul is %q, paper bars it by %q", s.Step, s.Foul, row.Barred)
			}
			switch {
			case s.Amiss != "" && row.Wrong != s.Amiss:
				t.Fatalf("%s: amiss is %q, on paper %q", s.Step, s.Amiss, row.Wrong)
			case s.Amiss == "" && !s.Early && l[i].Foul == "" && row.Wrong != s.Lacks:
				t.Fatalf("%s: nothing is wrong but %q, on paper %q", s.Step, s.Lacks, row.Wrong)
			case s.Amiss == "" && s.Early && row.Wrong == "":
				t.Fatalf("%s was done too early, and paper does not say so", s.Step)
			case !row.Ticked && s.Amiss == "" && row.Wrong != "":
				t.Fatalf("%s is not done, and wrong on paper: %q", s.Step, row.Wrong)
			case row.Barred != "" && (row.Ticked || l[i].Foul == ""):
				t.Fatalf("%s is barred on paper: %q", s.Step, row.Barred)
			}
		}
		if done != out.Done || len(out.Steps) != len(l) || len(out.Elsewhere) != len(l.Unplaced(&job)) {
			t.Fatalf("%d done, told are %d; %d records of no step, on paper %d", done, out.Done, len(out.Elsewhere), len(l.Unplaced(&job)))
		}
	})
}
