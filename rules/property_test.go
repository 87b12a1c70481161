package rules

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// things draws obstructions of all shapes, strewn over the floor by plain readings.
func things(t *rapid.T) []vehicles.Obstruction {
	length := func(name string, low, high int) float64 { return float64(rapid.IntRange(low, high).Draw(t, name)) }
	list := make([]vehicles.Obstruction, rapid.IntRange(1, 6).Draw(t, "things"))
	for i := range list {
		x, y, top := length("x", 100, 2500), length("y", -800, 700), length("top", 0, 120)
		o := box(fmt.Sprint("thing ", i), vehicles.Kinds[i], x, x+length("long", 5, 400), y, y+length("wide", 5, 400), top, top+length("deep", 1, 200))
		switch rapid.IntRange(0, 3).Draw(t, "shape") {
		case 1:
			o.Turn = length("turn", 1, 89) // no edge parallel to a leg, where any point is the nearest
		case 2:
			o.Place = vehicles.Place{Shape: vehicles.Disc, Centre: vehicles.Pair{at(x), at(y)}, Across: vehicles.Some(length("across", 5, 300))}
		case 3:
			o.Place = vehicles.Place{Shape: vehicles.Piped, Across: vehicles.Some(length("across", 2, 40)), Path: []vehicles.Pair{
				{at(x), at(y)}, {at(x + 300), at(y + length("aside", -300, 300))}, {at(x + 500), at(y)},
			}}
		}
		list[i] = o
	}
	return list
}

// strewn is the tidy job with its obstructions drawn afresh.
func strewn(t *rapid.T) vehicles.Job {
	job := tidy()
	job.Obstructions = things(t)
	return job
}

// changed is a job with every plain reading and every place put through x and y.
func changed(job vehicles.Job, x, y func(float64) float64, turn float64) vehicles.Job {
	along := func(p vehicles.Pair, f, g func(float64) float64) vehicles.Pair {
		return vehicles.Pair{survey.FromNumber(f(p[0].Length), false), survey.FromNumber(g(p[1].Length), false)}
	}
	place := func(p vehicles.Place) vehicles.Place {
		p.X, p.Y, p.Centre, p.Turn = along(p.X, x, x), along(p.Y, y, y), along(p.Centre, x, y), turn*p.Turn
		path := make([]vehicles.Pair, len(p.Path))
		for i := range path {
			path[i] = along(p.Path[i], x, y)
		}
		p.Path = path
		return p
	}
	points := func(list []vehicles.RunPoint) []vehicles.RunPoint {
		out := make([]vehicles.RunPoint, len(list))
		for i, p := range list {
			out[i] = vehicles.RunPoint{X: x(p.X), Y: y(p.Y), Drop: p.Drop}
		}
		return out
	}
	for i := range job.Obstructions {
		job.Obstructions[i].Place = place(job.Obstructions[i].Place)
	}
	for i := range job.Openings {
		job.Openings[i].Place = place(job.Openings[i].Place)
	}
	for i := range job.Fittings {
		job.Fittings[i].Place = place(job.Fittings[i].Place)
	}
	job.Ties = nil
	job.Floor.From = x(job.Floor.From)
	job.Cut.At = [2]float64{x(job.Cut.At[0]), y(job.Cut.At[1])}
	job.Exhaust.Path, job.Intake.Path, job.Fuel.Path = points(job.Exhaust.Path), points(job.Intake.Path), points(job.Fuel.Path)
	h := *job.Heater
	h.Yaw, h.BodyAt[1] = turn*h.Yaw, turn*h.BodyAt[1]
	h.ExhaustStub[1], h.IntakeStub[1], h.FuelStub[1] = turn*h.ExhaustStub[1], turn*h.IntakeStub[1], turn*h.FuelStub[1]
	job.Heater = &h
	return job
}

func valuesOf(t require.TestingT, job vehicles.Job) map[string]Finding {
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	values := map[string]Finding{}
	for _, f := range result.Findings {
		values[fmt.Sprint(f.Rule.ID, f.Subject, f.Against)] = f
	}
	return values
}

func same(x float64) float64 { return x }

func TestMovingOrMirroringVanAndJobChangesNoClearance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shift := float64(rapid.IntRange(-30, 3000).Draw(t, "shift"))
		yaw := float64(rapid.IntRange(-180, 180).Draw(t, "yaw"))
		list := things(t)
		job := func() vehicles.Job {
			j := tidy()
			j.Heater.Yaw, j.Obstructions = yaw, append([]vehicles.Obstruction(nil), list...)
			return j
		}
		base := valuesOf(t, changed(job(), same, same, 1))
		moved := valuesOf(t, changed(job(), func(x float64) float64 { return x + shift }, same, 1))
		mirrored := valuesOf(t, changed(job(), same, func(y float64) float64 { return -y }, -1))
		require.Len(t, moved, len(base))
		require.Len(t, mirrored, len(base))
		for key, f := range base {
			assert.InDelta(t, f.Value, mirrored[key].Value, 1e-6, key)
			assert.InDelta(t, f.Sigma, mirrored[key].Sigma, 0.05, key) // parallel edges: any of their nearest points
			if f.ID() != "exhaust.edge" {                              // the bumper line stays where it is
				assert.InDelta(t, f.Value, moved[key].Value, 1e-6, key)
			}
		}
	})
}

func TestAddingAnObstructionRaisesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := strewn(t)
		before, _ := Judge(job, Builtin())
		values := valuesOf(t, job)
		more := things(t)
		for i := range more {
			more[i].Name = fmt.Sprint("one more ", i)
		}
		job.Obstructions = append(append([]vehicles.Obstruction(nil), job.Obstructions...), more...)
		after, _ := Judge(job, Builtin())
		assert.GreaterOrEqual(t, after.Verdict, before.Verdict)
		now := valuesOf(t, job)
		for key, f := range values {
			assert.LessOrEqual(t, now[key].Value, f.Value, key)
			assert.GreaterOrEqual(t, now[key].Verdict, f.Verdict, key)
		}
	})
}

func TestFindingsComeWorstFirst(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		result, faults := Judge(strewn(t), Builtin())
		require.Empty(t, faults)
		for i := 1; i < len(result.Findings); i++ {
			assert.LessOrEqual(t, worse(result.Findings[i-1], result.Findings[i]), 0)
		}
		assert.Equal(t, result.Findings[0].Verdict, result.Verdict)
	})
}
