package plan

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// What a pane kept never shows when something else is so now: its picture is that of a fresh pane.
func TestTheKeptShadeIsThatOfAFreshPane(t *testing.T) {
	s, kept := demo(t), New().Sized(100, 27)
	look := func(what string) {
		fresh := New().Sized(100, 27)
		require.Equal(t, fresh.View(s, 100, 27, Options{Room: true}), kept.View(s, 100, 27, Options{Room: true}), what)
	}
	judge := func(job vehicles.Job) {
		result, faults := rules.Judge(job, rules.Builtin())
		require.Empty(t, faults)
		s.Job, s.Result = job, result
	}
	look("at first")
	before := kept.rooms.shade
	cut := *s.Job.Cut
	cut.At = [2]float64{1500, -200}
	judge(s.Job.WithCut(cut))
	look("cut moved")
	assert.Same(t, before, kept.rooms.shade, "the room does not depend on where the cut is")
	fewer := s.Job
	fewer.Obstructions = fewer.Obstructions.Without(3)
	judge(fewer)
	look("a thing taken away")
	assert.NotSame(t, before, kept.rooms.shade)
	before = kept.rooms.shade
	moved := s.Job
	thing := moved.Obstructions[0]
	for k := range thing.X {
		mm := s.Result.Plan.Obstructions[0].Prism.Footprint.Middle.X + 100*float64(k+1)
		thing.X[k] = survey.Reading{Text: survey.Exact(mm), Number: true, Length: mm}
	}
	moved.Obstructions = moved.Obstructions.With(0, thing)
	judge(moved)
	look("a thing moved")
	assert.NotSame(t, before, kept.rooms.shade)
	job := s.Job
	job.Rules = map[string]float64{"cut.on-floor": 200}
	judge(job)
	look("a rule changed")
	cut.Across = 90
	judge(s.Job.WithCut(cut))
	look("a smaller cut")
	s.Camera.View = scene.Above
	look("from above")
	s.Camera = desk.Camera{View: scene.Below, Middle: pt(1200, 200), Scale: 1}
	look("near")
	s.Camera.Scale = 0.25
	look("as near as can be")
}

// Every letter on the picture is that of an area, and stands where it is best; on a large picture the best areas have theirs.
func TestTheAreasHaveTheirLetters(t *testing.T) {
	for _, view := range []scene.View{scene.Below, scene.Above} {
		s, p := demo(t), New().Sized(160, 47)
		p.legend.open = true
		s.Camera.View, s.Settings.Colour = view, desk.NoColour
		rows := strings.Split(ansi.Strip(p.View(s, 160, 47, Options{Room: true})), "\n")
		areas, _ := p.Areas(s)
		require.Greater(t, len(areas), 3)
		shown := 0
		for _, a := range areas {
			col, row, _ := p.lay(s, Options{}).Cell(a.Best.At)
			if ansi.Cut(rows[row], col-1, col+2) == "("+a.Name+")" {
				shown++
			}
		}
		assert.GreaterOrEqual(t, shown, len(areas)/2)
		assert.Equal(t, shown, len(regexp.MustCompile(`\([A-Z]+\)`).FindAllString(strings.Join(rows, ""), -1)))
	}
}

// Moving the cut paints the same shade again: a frame of 120 a second is 8 ms. A fresh shade comes with a change of the
// things or of the camera, fresh areas with a change of the things.
func BenchmarkShaded(b *testing.B) {
	s := demo(b)
	const w, h = 160, 47
	b.Run("kept", func(b *testing.B) {
		p := New().Sized(w, h)
		for i := 0; b.Loop(); i++ {
			p.View(s, w, h, Options{Room: true, Signs: unlike(i)})
		}
	})
	b.Run("without", func(b *testing.B) {
		p := New().Sized(w, h)
		for i := 0; b.Loop(); i++ {
			p.View(s, w, h, Options{Signs: unlike(i)})
		}
	})
	b.Run("camera", func(b *testing.B) {
		p := New().Sized(w, h)
		for b.Loop() {
			p.rooms.shade = nil
			p.View(s, w, h, Options{Room: true})
		}
	})
	b.Run("things", func(b *testing.B) {
		for b.Loop() {
			p := New().Sized(w, h)
			p.View(s, w, h, Options{Room: true})
		}
	})
}

// demo is the demo's van on the desk.
func demo(t testing.TB) desk.State {
	result, faults := rules.Judge(vehicles.Demo(), rules.Builtin())
	require.Empty(t, faults)
	return desk.State{Job: result.Job, Result: result, Selected: -1, Settings: desk.Settings{Colour: desk.TrueColour}}
}

// What has a letter on the plan is what suggest lists, in its order, narrow passages included: here one of 7 mm.
func TestTheOpenAreasAreThoseSuggested(t *testing.T) {
	s := state(t)
	s.Job.Obstructions = nil
	for i, y := range [][2]string{{"-890", "-62"}, {"72", "890"}} {
		wall := vehicles.Obstruction{Name: strconv.Itoa(i), Kind: "other", Measured: true, Drop: vehicles.Span{To: 90, Set: true}}
		wall.X[0], _ = survey.Parse("1200", survey.X)
		wall.X[1], _ = survey.Parse("1900", survey.X)
		wall.Y[0], _ = survey.Parse(y[0], survey.Y)
		wall.Y[1], _ = survey.Parse(y[1], survey.Y)
		s.Job.Obstructions = append(s.Job.Obstructions, wall)
	}
	s.Job.Rules = map[string]float64{"cut.clearance": 0}
	result, faults := rules.Judge(s.Job, rules.Builtin())
	require.Empty(t, faults)
	s.Result = result
	areas, room := New().Areas(s)
	var best []geometry.Point
	for _, a := range areas {
		best = append(best, a.Best.At)
	}
	var suggested []geometry.Point
	for _, p := range room.Best(1) {
		suggested = append(suggested, p.At)
	}
	assert.Equal(t, suggested, best)
	assert.NotEmpty(t, best)
}

// One letter has one meaning in a view: no two kinds have the same, nor a sign's or an end's, and an area's stands in brackets.
func TestLettersMeanOneThingInAView(t *testing.T) {
	means := map[string]string{}
	for _, e := range append(append([]entry{}, verdicts...), patterns()...) {
		if e.code != "" {
			means[e.code] = e.means
		}
	}
	for _, name := range vehicles.Kinds {
		code := vehicles.KindOf(name).Code
		assert.NotEmpty(t, code, name)
		assert.Empty(t, means[code], "%s: %s", name, code)
		assert.NotContains(t, code, "(", name)
		means[code] = name
	}
	s := demo(t)
	areas, _ := New().Sized(160, 47).Areas(s)
	require.Greater(t, len(areas), 3)
	names := map[string]bool{}
	for _, a := range areas {
		assert.False(t, names[a.Name], a.Name)
		names[a.Name] = true
	}
}
