package tui

import (
	"fmt"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/vehicles"
)

// A fitter holds an arrow and watches the cut move: a key's whole way, judging and painting included, must be over
// well within the 8 ms of a picture at 120 a second.
func BenchmarkMovingTheCut(b *testing.B) {
	for _, n := range []int{15, 60} {
		b.Run(fmt.Sprintf("%d obstructions", n), func(b *testing.B) {
			r := working(b, jobOfCases(b, "24-everything.toml"))
			job := withObstructions(r.state.Job, n).WithDrilled(nil) // a cut that is still being moved
			r.history = begin(job, true)
			r.judge()
			r.Update(tea.WindowSizeMsg{Width: 160, Height: 50})
			r.goTo(r.titled("Place"))
			keys := []tea.KeyMsg{{Type: tea.KeyRight}, {Type: tea.KeyLeft}}
			i := 0
			for b.Loop() {
				r.Update(keys[i%2])
				_ = r.View()
				i++
			}
		})
	}
}

// withObstructions repeats a job's obstructions, each a little further on, until there are n.
func withObstructions(job vehicles.Job, n int) vehicles.Job {
	have := job.Obstructions
	for i := len(have); i < n; i++ {
		o := have[i%len(have)]
		o.Name = fmt.Sprintf("%s, %d", o.Name, i)
		job = job.InsertObstruction(i, o)
	}
	return job
}

// Every message paints the screen anew, mouse moves among them.
func BenchmarkPainting(b *testing.B) {
	r := working(b, jobOfCases(b, "24-everything.toml"))
	r.Update(tea.WindowSizeMsg{Width: 160, Height: 50})
	for i, s := range r.screens {
		b.Run(s.Title(), func(b *testing.B) {
			r.goTo(i)
			for b.Loop() {
				_ = r.View()
			}
		})
	}
}
