package rules

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// crowded is a job with n obstructions strewn over the floor, a cut, a heater and fittings, and runs if wanted.
func crowded(n int, runs bool) vehicles.Job {
	at := func(v float64) survey.Reading { return survey.FromNumber(v, false) }
	r := rand.New(rand.NewPCG(1, uint64(n)))
	heater, _ := vehicles.HeaterClass("2 kW")
	job := vehicles.Job{
		Ref:    "TL-07",
		Floor:  vehicles.Floor{From: 40, Length: 3200, Width: 1780, Thickness: 31, Ground: 460},
		Datum:  vehicles.Datum{HookBelow: vehicles.Some(150), HookAbove: vehicles.Some(60)},
		Heater: &heater,
		Cut:    &vehicles.Cut{At: [2]float64{1210, 240}, Across: 127},
	}
	for i := range n {
		x, y := 100+3000*r.Float64(), -850+1600*r.Float64()
		o := vehicles.Obstruction{Name: fmt.Sprint("thing ", i), Kind: vehicles.Kinds[i%len(vehicles.Kinds)], Measured: true}
		o.Drop = vehicles.Span{From: 60 * r.Float64(), To: 100 + 100*r.Float64(), Set: true}
		o.X = vehicles.Pair{at(x), at(x + 20 + 100*r.Float64())}
		o.Y = vehicles.Pair{at(y), at(y + 20 + 100*r.Float64())}
		if i%5 == 0 {
			o.Turn = 30
		}
		job.Obstructions = append(job.Obstructions, o)
	}
	if runs {
		job.Exhaust = &vehicles.Run{
			Across: 26, Bend: vehicles.Some(60), Path: []vehicles.RunPoint{{X: 1245, Y: 265, Drop: 110}, {X: 900, Y: 620, Drop: 160}, {X: 300, Y: 640, Drop: 185}},
			Hanging: vehicles.Hanging{Muffler: &vehicles.Muffler{Leg: 3, Start: 150, Length: 180, Across: 68}, Clips: []float64{250, 600, 1000}},
		}
		job.Intake = &vehicles.Run{
			Across: 28, Bend: vehicles.Some(60),
			Path: []vehicles.RunPoint{{X: 1175, Y: 265, Drop: 110}, {X: 1900, Y: 500, Drop: 110}, {X: 1900, Y: 700, Drop: 110}},
		}
	}
	return job
}

// A fitter who holds an arrow key down moves the cut 30 times a second: a judging that takes longer than a frame of
// 120 a second (8 ms) is felt.
func BenchmarkJudge(b *testing.B) {
	for _, runs := range []bool{false, true} {
		for _, n := range []int{60, 500} {
			job := crowded(n, runs)
			b.Run(fmt.Sprintf("%d/runs=%v", n, runs), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, faults := Judge(job, Builtin()); len(faults) > 0 {
						b.Fatal(faults)
					}
				}
			})
		}
	}
}

// What room made beforehand and ranks that are sorted spare: each left out by itself, beside both. The factors stand at
// mostFindings and sortWorst.
func BenchmarkFindings(b *testing.B) {
	room := func(j *judge) int { return j.mostFindings() }
	for _, c := range []struct {
		name string
		room func(*judge) int
		sort func([]Finding)
	}{
		{"as they are", room, sortWorst},
		{"no room made", func(*judge) int { return 0 }, sortWorst},
		{"stable sort", room, func(list []Finding) { slices.SortStableFunc(list, worse) }},
	} {
		for _, runs := range []bool{false, true} {
			job := crowded(500, runs)
			b.Run(fmt.Sprintf("%s/runs=%v", c.name, runs), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					plan, faults := Reduce(job, Builtin())
					if len(faults) > 0 {
						b.Fatal(faults)
					}
					j := newJudge(&job, &plan, Builtin())
					j.findings = make([]Finding, 0, c.room(&j))
					for _, r := range allRules {
						if r.check != nil {
							r.check(&j, r)
						}
					}
					c.sort(j.findings)
				}
			})
		}
	}
}
