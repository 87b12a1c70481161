package vehicles

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
)

// singles are edits of one value each, with where that is told to be: what a file says in one place only.
var singles = map[string]func(j Job, v float64) Job{
	"floor: ground":     func(j Job, v float64) Job { j.Floor.Ground += v; return j },
	"floor: thickness":  func(j Job, v float64) Job { j.Floor.Thickness += v; return j },
	"datum: hook_below": func(j Job, v float64) Job { j.Datum.HookBelow = Some(1000 + v); return j },
	"job: fitter":       func(j Job, v float64) Job { j.Fitter = fmt.Sprint("fitter ", v); return j },
	"cut: across":       func(j Job, v float64) Job { c := *j.Cut; c.Across += v; return j.WithCut(c) },
	"heater: yaw":       func(j Job, v float64) Job { h := *j.Heater; h.Yaw += v; h.Given |= HasYaw; return j.WithHeater(h) },
	"exhaust: across":   func(j Job, v float64) Job { r := *j.Exhaust; r.Across += v; return j.WithRun(ExhaustRun, &r) },
	"exhaust: path": func(j Job, v float64) Job {
		r := *j.Exhaust
		p := r.Path[1]
		p.Drop += v
		r.Path = r.Path.With(1, p)
		return j.WithRun(ExhaustRun, &r)
	},
	"exhaust: muffler: start": func(j Job, v float64) Job {
		r := *j.Exhaust
		r.Hanging.Thing(AMuffler, 0).Put(r.Muffler.Leg, r.Muffler.Start+v)
		return j.WithRun(ExhaustRun, &r)
	},
	"rules: cut.reach": func(j Job, v float64) Job { return j.WithRule("cut.reach", 100+v) },
}

// One value that is edited is one difference, told where it stands, and the job before is as it was; two edits are two.
func TestOneEditIsOneDifference(t *testing.T) {
	whole := Demo()
	whole.Exhaust.Muffler = &Muffler{Leg: 1, Start: 20, Length: 60, Across: 40}
	places := sortedKeys(singles)
	rapid.Check(t, func(t *rapid.T) {
		text := string(whole.Format())
		v := float64(rapid.IntRange(1, 40).Draw(t, "by"))
		where := rapid.SampledFrom(places).Draw(t, "where")
		once := singles[where](whole, v)
		require.Equal(t, text, string(whole.Format()), where)
		told := Differences(whole, once)
		require.Len(t, told, 1, where)
		require.Equal(t, where, told[0].Where)
		require.NotEqual(t, told[0].One, told[0].Other)
		also := rapid.SampledFrom(places).Draw(t, "also")
		twice := singles[also](once, v)
		if also == where {
			require.Len(t, Differences(whole, twice), 1)
			return
		}
		require.Len(t, Differences(whole, twice), 2, "%s and %s", where, also)
	})
}

// One value of one thing of a list is told with that thing's name, however many there are beside it; one more thing is one difference.
func TestADifferenceNamesItsThing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := NewJob("TL-53")
		for i := range rapid.IntRange(1, 6).Draw(t, "things") {
			job.Obstructions = append(job.Obstructions, Obstruction{
				Name: fmt.Sprint("thing ", i), Kind: "other", Measured: true,
				Place: Place{X: Pair{taped(100), taped(150)}, Y: Pair{taped(10), taped(40)}}, Drop: Span{0, 50, true},
			})
		}
		i := rapid.IntRange(0, len(job.Obstructions)-1).Draw(t, "which")
		o := job.Obstructions[i]
		other := job
		o.Drop.To += float64(rapid.IntRange(1, 50).Draw(t, "deeper"))
		other.Obstructions = job.Obstructions.With(i, o)
		require.Equal(t, [][3]string{{
			fmt.Sprintf("obstruction %q: drop", o.Name), "[0, 50]", fmt.Sprintf("[0, %s]", survey.Exact(o.Drop.To)),
		}}, told(Differences(job, other)))
		other.Obstructions = job.Obstructions.Without(i)
		require.Equal(t, [][3]string{{fmt.Sprintf("obstruction %q", o.Name), "there", ""}}, told(Differences(job, other)))
	})
}

func taped(mm float64) survey.Reading { return survey.FromNumber(mm, true) }

// Refused texts come up and go as in a queue, of which the newest hundred count: against one that is kept as a plain list.
func TestRefusedTextsAsAQueue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job, queue := NewJob("TL-54"), []string{}
		for n := range rapid.IntRange(1, 12).Draw(t, "rounds") {
			var more []Refusal
			for k := range rapid.IntRange(0, 40).Draw(t, "typed") {
				more = append(more, Refusal{Of: "floor", Name: "floor", Field: "width", Label: "width", Text: fmt.Sprint(n, " ", k)})
			}
			job = job.WithRefused(append(job.Refused(), more...))
			for _, r := range more {
				queue = append(queue, r.Text)
			}
			gone := rapid.IntRange(0, len(job.Refused())).Draw(t, "put right")
			job = job.WithRefused(job.Refused()[gone:])
			counted := max(0, len(queue)-MostRefused)
			queue = append(queue[:counted:counted], queue[counted+gone:]...)

			require.Equal(t, len(queue), job.RefusedCount())
			var texts []string
			for _, r := range job.Refused() {
				texts = append(texts, r.Text)
			}
			require.Equal(t, strings.Join(queue[max(0, len(queue)-MostRefused):], ","), strings.Join(texts, ","))
			require.Equal(t, len(queue) == 0, job.WithHeld("below", "").WithHeld("side", "").withoutGuesses().Settled())
		}
	})
}

// withoutGuesses is the job with all of its floor's sizes measured.
func (j Job) withoutGuesses() Job {
	j.Guesses = nil
	return j
}
