package tui

import (
	"fmt"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// A fitter holds an arrow and watches the cut move: a key's whole way, judging and painting included, must be over
// well within the 8 ms of a picture at 120 a second.
func BenchmarkMovingTheCut(b *testing.B) {
	for _, n := range []int{15, 60} {
		b.Run(fmt.Sprintf("%d obstructions", n), func(b *testing.B) {
			r := working(b, jobOfCases(b, "24-everything.toml"))
			job := withObstructions(r.desk.State.Job, n).WithDrilled(nil) // a cut that is still being moved
			r.desk.Begin(job, true)
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

// withObstructions strews small obstructions over a job's floor, clear of each other, until there are n.
func withObstructions(job vehicles.Job, n int) vehicles.Job {
	const rows, apart, size = 16, 80, 40
	at := func(mm float64) survey.Reading {
		return survey.Reading{Text: survey.Exact(mm), Number: true, Length: mm}
	}
	for i := len(job.Obstructions); i < n; i++ {
		x, y := 300+float64(i/rows)*apart, (float64(i%rows)-rows/2)*apart
		job.Obstructions = job.Obstructions.Insert(i, vehicles.Obstruction{
			Name: fmt.Sprintf("bracket %d", i), Kind: vehicles.Kinds[i%len(vehicles.Kinds)], Measured: true,
			Place: vehicles.Place{X: vehicles.Pair{at(x), at(x + size)}, Y: vehicles.Pair{at(y), at(y + size)}},
			Drop:  vehicles.Span{From: 0, To: 30 + float64(i%7)*10, Set: true},
		})
	}
	return job
}

// A key's way through the root alone, no screen behind it: what every key pays. A frame is 8 ms at 120 pictures a second.
func BenchmarkAKeyThroughTheRoot(b *testing.B) {
	r := working(b, jobOfCases(b, "24-everything.toml"))
	r.screens, r.at = []desk.Screen{plain{title: "Underneath"}}, 0
	r.Update(tea.WindowSizeMsg{Width: 160, Height: 50})
	for b.Loop() {
		r.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("e")})
		_ = r.View()
	}
}

// Every message paints the screen anew, mouse moves among them; a plan that is as it was is not.
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

// A fitter types a reading: each digit is judged and painted, with what it comes to beside it. One that is taken moves its thing in the picture; while
// it is refused, as most are until their last digit, that stays as it is. Above 8 ms a tape called out fast would be ahead of the screen.
func BenchmarkTypingAReading(b *testing.B) {
	for name, keys := range map[string]string{"refused": "enter", "taken": "end enter down 35"} { // 350 is one, too
		for _, n := range []int{60, 500} {
			b.Run(fmt.Sprintf("%s, %d obstructions", name, n), func(b *testing.B) { typing(b, n, keys) })
		}
	}
}

// typing types a digit and takes it back, again and again, where some keys lead to in the list of n obstructions.
func typing(b *testing.B, n int, keys string) {
	r := working(b, jobOfCases(b, "24-everything.toml"))
	r.desk.Begin(withObstructions(r.desk.State.Job, n), true)
	r.Update(tea.WindowSizeMsg{Width: 160, Height: 50})
	r.goTo(r.titled("Underneath"))
	for _, msg := range screentest.Keys(keys) {
		r.Update(msg)
	}
	typed := screentest.Keys("0 back")
	i, before := 0, r.desk.Number()
	for b.Loop() {
		r.Update(typed[i%2])
		_ = r.View()
		i++
	}
	if r.desk.Number() == before {
		b.Fatal("nothing was typed into the job")
	}
}

// A fitter walks through the list: nothing is judged, all is painted, and what one row and one thing of the picture show has changed.
func BenchmarkWalkingTheList(b *testing.B) {
	for _, n := range []int{60, 500} {
		b.Run(fmt.Sprintf("%d obstructions", n), func(b *testing.B) {
			r := working(b, jobOfCases(b, "24-everything.toml"))
			r.desk.Begin(withObstructions(r.desk.State.Job, n), true)
			r.Update(tea.WindowSizeMsg{Width: 160, Height: 50})
			r.goTo(r.titled("Underneath"))
			keys := []tea.KeyMsg{{Type: tea.KeyDown}, {Type: tea.KeyUp}}
			i := 0
			for b.Loop() {
				r.Update(keys[i%2])
				_ = r.View()
				i++
			}
		})
	}
}
