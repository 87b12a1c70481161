package vehicles

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

// A fitter's day with one job, in any order: each step is a new job, and none of those before it changes. Wherever the day
// ends, the file holds all of it, and taking every step back is the job of the morning.

// steps are what may be done to a job.
var steps = []struct {
	name string
	do   func(t *rapid.T, job Job, plan *Plan) Job
}{
	{"an obstruction entered", func(t *rapid.T, job Job, _ *Plan) Job {
		job.Obstructions = job.Obstructions.Insert(len(job.Obstructions), Obstruction{
			Name: freeName(job), Kind: rapid.SampledFrom(Kinds).Draw(t, "kind"), Measured: rapid.Bool().Draw(t, "measured"),
			Place: Place{Shape: Disc, Centre: Pair{bareX(drawn(t, "x", 100, 2900)), mustSay(fmt.Sprintf("L %v", drawn(t, "y", 0, 800)), survey.Y)}, Across: Some(60)},
		})
		return job
	}},
	{"an obstruction taken out", func(t *rapid.T, job Job, _ *Plan) Job {
		if len(job.Obstructions) == 0 {
			return job
		}
		i := rapid.IntRange(0, len(job.Obstructions)-1).Draw(t, "which")
		job = job.Forgetting(job.Obstructions[i].Name)
		job.Obstructions = job.Obstructions.Without(i)
		return job
	}},
	{"an obstruction renamed", func(t *rapid.T, job Job, _ *Plan) Job {
		if len(job.Obstructions) == 0 {
			return job
		}
		i := rapid.IntRange(0, len(job.Obstructions)-1).Draw(t, "which")
		o, now := job.Obstructions[i], freeName(job)
		job = job.Renaming(o.Name, now)
		o.Name = now
		job.Obstructions = job.Obstructions.With(i, o)
		return job
	}},
	{"a tape from the hole", func(t *rapid.T, job Job, _ *Plan) Job {
		if len(job.Obstructions) == 0 || job.Cut.Drilled == nil {
			return job
		}
		cut := *job.Cut
		to := rapid.SampledFrom([]Obstruction(job.Obstructions)).Draw(t, "to").Name
		cut.Direct = cut.Direct.Insert(len(cut.Direct), DirectTape{to, bareX(drawn(t, "gap", 0, 900))})
		return job.WithCut(cut)
	}},
	{"the pilot drilled", func(t *rapid.T, job Job, _ *Plan) Job {
		hole := Pair{bareX(drawn(t, "x", 990, 1010)), bareX(drawn(t, "y", 190, 210))}
		return job.WithDrilled(&hole)
	}},
	{"a kind looked for", func(t *rapid.T, job Job, plan *Plan) Job {
		l := rapid.SampledFrom(LookLists[:]).Draw(t, "list")
		return job.WithLookedAt(l, plan, rapid.SampledFrom(l.Kinds()).Draw(t, "kind"), rapid.Bool().Draw(t, "absent"))
	}},
	{"the exhaust's path edited", func(t *rapid.T, job Job, _ *Plan) Job {
		path := job.Exhaust.Path
		i := rapid.IntRange(0, len(path)-1).Draw(t, "point")
		if path = edited(t, path, i); len(path) == 0 {
			return job
		}
		next, _, ok := job.WithPath(ExhaustRun, path)
		require.True(t, ok)
		return next
	}},
	{"the heater turned", func(t *rapid.T, job Job, _ *Plan) Job {
		h := *job.Heater
		h.Yaw, h.Given = drawn(t, "yaw", -180, 180), h.Given|HasYaw
		return job.WithHeater(h)
	}},
	{"others' values kept", func(t *rapid.T, job Job, _ *Plan) Job {
		return job.Keeping("theirs", map[string]any{"n": int64(drawn(t, "n", 0, 9))})
	}},
}

func drawn(t *rapid.T, name string, low, high int) float64 {
	return float64(rapid.IntRange(low, high).Draw(t, name))
}

// freeName is a name that no obstruction has.
func freeName(j Job) string {
	for n := 1; ; n++ {
		name, free := fmt.Sprintf("thing %d", n), true
		for _, o := range j.Obstructions {
			free = free && o.Name != name
		}
		if free {
			return name
		}
	}
}

func TestAFittersDayInAnyOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := laid()
		job.Ref = "TL-45"
		job.Exhaust.Clips = []float64{120, 700}
		days, files := []Job{job}, []string{string(job.Format())}
		for range rapid.IntRange(1, 12).Draw(t, "steps") {
			plan, _ := Reduce(job)
			step := rapid.SampledFrom(steps).Draw(t, "step")
			job = step.do(t, job, &plan)
			days, files = append(days, job), append(files, string(job.Format()))
			for i := range days {
				require.Equal(t, files[i], string(days[i].Format()), "after %s, step %d", step.name, i)
			}
		}
		read, err := ParseJob(job.Format(), "a.toml")
		if _, faults := Reduce(job); len(faults) == 0 {
			require.NoError(t, err)
			require.Equal(t, files[len(files)-1], string(read.Format()))
			mine, _ := Reduce(job)
			theirs, _ := Reduce(read)
			require.Equal(t, mine, theirs, "the file's plan is the job's")
		}
	})
}

// Turning the van end for end about its datum: what was so far before it is so far behind it. Places change their sign along
// the van and nothing else does, and no uncertainty.
func TestAVanEndForEnd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := bare()
		job.Tape = Tape{Class: "II", Read: Some(drawn(t, "read", 1, 3)), Height: Some(drawn(t, "height", 1, 4))}
		job.Datum.HookBelow = Some(drawn(t, "hook", 0, 150))
		other := job
		for i := range rapid.IntRange(1, 5).Draw(t, "things") {
			near := drawn(t, "near", 300, 2000)
			far := near + drawn(t, "long", 20, 400)
			o := Obstruction{Name: fmt.Sprint(i), Measured: true, TapedAt: Some(drawn(t, "taped at", 0, 100)), Place: Place{
				X: Pair{bareX(near), bareX(far)}, Y: Pair{bareX(-drawn(t, "right", 100, 800)), bareX(drawn(t, "left", 0, 800))},
			}}
			turned := o
			turned.X = Pair{bareX(-far), bareX(-near)}
			job.Obstructions, other.Obstructions = append(job.Obstructions, o), append(other.Obstructions, turned)
		}
		plan, faults := Reduce(job)
		require.Empty(t, faults)
		turned, faults := Reduce(other)
		require.Empty(t, faults)
		for i := range plan.Obstructions {
			p, q := &plan.Obstructions[i], &turned.Obstructions[i]
			a, b := corners(*p), corners(*q)
			require.InDeltaSlice(t, []float64{-a[1], -a[0], a[2], a[3]}, slice(b), 1e-9)
			require.InDelta(t, p.Edges[0].U, q.Edges[1].U, 1e-12)
			require.InDelta(t, p.Edges[1].U, q.Edges[0].U, 1e-12)
			require.InDelta(t, -p.Edges[0].Tilt, q.Edges[1].Tilt, 1e-12, "a lower zero moves it the other way")
			require.InDelta(t, -p.Edges[1].Tilt, q.Edges[0].Tilt, 1e-12)
			require.Equal(t, p.Edges[2:], q.Edges[2:])
			for _, c := range p.Prism.Footprint.Corners() {
				x, y := p.EdgeAt(c)
				there, beside := q.EdgeAt(geometry.Point{X: -c.X, Y: c.Y})
				require.InDelta(t, x.U, there.U, 1e-12)
				require.Equal(t, y, beside)
			}
		}
	})
}
