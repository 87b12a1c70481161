package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
)

// While arrows move the cut the names of what does not move stay where they stood: without that many of them would jump with each step. Those that
// belong to the cut and its runs go along, and what is in the way is named as ever.
func TestNamesStayWhileTheCutMoves(t *testing.T) {
	jumps := func(calm bool) (jumped, stayed int) {
		s := demo(t)
		p, last := New().Sized(107, 47), map[string][2]int{}
		for step := range 30 {
			job := s.Job
			cut := *job.Cut
			cut.At[0] += 10 * float64(1-2*(step/15))
			result, faults := rules.Rejudge(&s.Result, job.WithCut(cut), rules.Builtin())
			require.Empty(t, faults)
			s.Job, s.Plan, s.Result = result.Job, result.Plan, result
			o := Options{Shown: drawing.Worst(s.Result.Findings, func(f *rules.Finding) bool { return f.WithCut() }, 3)}
			plan := p.draw(s, o)
			c := p.painter.Paint(plan, 107, 47, canvas.Look{Camera: desk.Camera{Whole: true}, Faces: true, Calm: calm, Left: "left", Right: "right"})
			at := map[string][2]int{}
			for _, text := range c.Texts {
				switch text.Ink.Role {
				case scene.Rail, scene.Steel, scene.Hot, scene.Movable, scene.Opening, scene.Bumper:
					at[text.Name] = [2]int{text.Col, text.Row}
				}
			}
			for name, was := range last {
				if is, there := at[name]; there && is == was {
					stayed++
				} else {
					jumped++
				}
			}
			last = at
		}
		return jumped, stayed
	}
	restless, _ := jumps(false)
	jumped, stayed := jumps(true)
	t.Log(restless, jumped, stayed)
	assert.Greater(t, stayed, 20*jumped)
	assert.Less(t, 2*jumped, restless)
}

// A picture in which nothing is seen to change is the same when it is painted again.
func TestACalmPictureIsTheSameAgain(t *testing.T) {
	s := demo(t)
	p := New().Sized(107, 47)
	o := Options{Calm: true, Room: true, Shown: drawing.Worst(s.Result.Findings, func(f *rules.Finding) bool { return f.WithCut() }, 3)}
	first := p.View(s, 107, 47, o)
	for again := range 3 {
		o.Signs = unlike(again)
		assert.Equal(t, first, p.View(s, 107, 47, o))
	}
}

// unlike are signs far out of a picture: with others it is not as it was, and painted again, though nothing is seen to change.
func unlike(i int) []geometry.Point3 { return []geometry.Point3{{X: 1e6 + float64(i)}} }
