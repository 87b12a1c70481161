package vehicles

import (
	"maps"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What was looked for round what has moved since, against a slow model that keeps a picture of everything for every look.

// picture is where a cut and the runs were, the runs strewn with points a millimetre apart.
type picture struct {
	cut  [2]float64
	runs [len(RunKinds)][]RunPoint
}

func pictureOf(job Job, plan *Plan) (p picture) {
	p.cut = job.Cut.At
	for _, k := range RunKinds {
		if plan.Run(k) == nil {
			continue
		}
		path := plan.Run(k).Path
		for i := 1; i < len(path); i++ {
			steps := math.Ceil(path[i].Sub(path[i-1]).Norm()) + 1
			for s := 0.; s <= steps; s++ {
				at := path[i-1].Add(path[i].Sub(path[i-1]).Scale(s / steps))
				p.runs[k] = append(p.runs[k], RunPoint{at.X, at.Y, -at.Z})
			}
		}
	}
	return p
}

// farthest is how far a run has come from where it was: of its points the farthest from the nearest of those.
func farthest(now, was []RunPoint) (most float64) {
	if slices.Equal(now, was) {
		return 0
	}
	for i := 0; i < len(now); i += 3 { // 3 mm on a leg are not felt here
		least := math.Inf(1)
		for _, q := range was {
			least = min(least, now[i].apart(q))
		}
		most = max(most, least)
	}
	return most
}

// stale tells whether a look no longer counts, and whether that is too close to call for points 3 mm apart.
func stale(l LookList, then, now picture) (moved, close bool) {
	call := func(far, within float64) {
		moved = moved || far > within
		close = close || math.Abs(far-within) < lookStep/2+3
	}
	if l == AtCut {
		far := math.Hypot(then.cut[0]-now.cut[0], then.cut[1]-now.cut[1])
		return far > 50, false
	}
	for _, k := range RunKinds {
		switch {
		case now.runs[k] == nil, l == AtOutlet && k != ExhaustRun:
		case l == AtOutlet:
			call(farthest(now.runs[k], then.runs[k]), 200)
		default:
			call(farthest(now.runs[k], then.runs[k]), 50)
		}
	}
	return moved, close
}

func TestLookingAgainstAModelThatKeepsPictures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := laid()
		job.Ref, job.Fuel.Pump = "TL-43", nil
		looks := map[LookList]map[string]picture{AtCut: {}, AtRuns: {}, AtOutlet: {}}
		for range rapid.IntRange(2, 7).Draw(t, "steps") {
			plan, faults := Reduce(job)
			require.Empty(t, faults)
			before, was := string(job.Format()), job
			now := pictureOf(job, &plan)
			switch rapid.IntRange(0, 3).Draw(t, "step") {
			case 0, 1:
				l := rapid.SampledFrom(LookLists[:]).Draw(t, "list")
				kind := rapid.SampledFrom(l.Kinds()[:3]).Draw(t, "kind")
				found := rapid.IntRange(0, 4).Draw(t, "absent") > 0
				job = job.WithLookedAt(l, &plan, kind, found)
				if delete(looks[l], kind); found {
					looks[l][kind] = now
				}
			case 2:
				job = job.WithCut(Cut{At: [2]float64{
					job.Cut.At[0] + float64(rapid.IntRange(-80, 80).Draw(t, "forward")), job.Cut.At[1] + float64(rapid.IntRange(-80, 80).Draw(t, "left")),
				}, Across: 127})
			default:
				k := rapid.SampledFrom(RunKinds[:]).Draw(t, "run")
				run := *job.Run(k)
				i := rapid.IntRange(0, len(run.Path)-1).Draw(t, "point")
				p := run.Path[i]
				p.X += float64(rapid.IntRange(-150, 150).Draw(t, "x"))
				p.Drop += float64(rapid.IntRange(0, 120).Draw(t, "drop"))
				run.Path = run.Path.With(i, p)
				job = job.WithRun(k, &run)
			}
			require.Equal(t, before, string(was.Format()), "the old job stays")
		}
		plan, _ := Reduce(job)
		now := pictureOf(job, &plan)
		read, faults := parse(job.Format(), "a.toml")
		require.Empty(t, faults)
		for l, kinds := range looks {
			require.Equal(t, slices.Sorted(maps.Keys(kinds)), slices.Sorted(maps.Keys(job.LookedFor(l))))
			got := job.LookedBefore(l, &plan)
			require.Equal(t, got, read.LookedBefore(l, &plan), "kept in the file")
			for kind, then := range kinds {
				if moved, close := stale(l, then, now); !close {
					require.Equal(t, moved, slices.Contains(got, kind), "%v: %s", l, kind)
				}
			}
		}
	})
}

// How many things of a kind are entered, and what there is to look round, list by list.
func TestWhatThereIsToLookRound(t *testing.T) {
	job := laid()
	job.Obstructions = List[Obstruction]{{Kind: "axle"}, {Kind: "wiring"}, {Kind: "axle"}, {Kind: "other"}}
	job.Openings = List[Opening]{{Kind: "door"}, {Kind: "door"}, {Kind: "roof vent"}}
	for _, c := range []struct {
		list LookList
		kind string
		n    int
	}{
		{AtCut, "axle", 2}, {AtRuns, "axle", 2}, {AtOutlet, "axle", 0}, {AtCut, "door", 0}, {AtRuns, "wiring", 1},
		{AtOutlet, "door", 2}, {AtOutlet, "roof vent", 1}, {AtCut, "other", 1}, {AtCut, "gas pipe", 0},
	} {
		require.Equal(t, c.n, job.Entered(c.list, c.kind), "%v %s", c.list, c.kind)
	}
	for runs := range 8 {
		j := job
		for k, there := range map[RunKind]bool{ExhaustRun: runs&1 != 0, IntakeRun: runs&2 != 0, FuelRun: runs&4 != 0} {
			if !there {
				j = j.WithRun(k, nil)
			}
		}
		require.Equal(t, [3]bool{true, runs != 0, runs&1 != 0}, [3]bool{j.HasToLookRound(AtCut), j.HasToLookRound(AtRuns), j.HasToLookRound(AtOutlet)})
	}
	for _, l := range LookLists {
		for _, kind := range l.Kinds() {
			require.Equal(t, kind, l.KindOf(kind).Name)
		}
	}
}
