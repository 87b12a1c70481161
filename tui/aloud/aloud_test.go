package aloud

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

func TestSignsAreWords(t *testing.T) {
	for text, want := range map[string]string{
		"\x1b[1m† cut: brake pipe\x1b[0m   ": "can kill: cut: brake pipe",
		"† can kill; mm unless said":         "can kill; mm unless said",
		"▶ [x] made":                         "[x] made",
		"found    ≥ 60  ± 3 (95 %)":          "found; at least 60 ± 3 (95 %)",
		"30° ⌀127 2× 9u²":                    "30° diameter 127 2× 9u²",
		"1458, L 310 │ 1452, R 300":          "1458, L 310; 1452, R 300",
		"a\x1b]0;owned\ab ⣿ ☃":               "a?]0;owned?b ? ☃",
		"Obstructions: 27   kinds: 2":        "Obstructions: 27; kinds: 2",
		"x:   y":                             "x: y",
	} {
		assert.Equal(t, want, Line(text), text)
	}
	assert.Empty(t, Rows("────────", "", "   ", "│"), "a drawing alone says nothing")
	assert.Equal(t, "a b; c.", Joined("a b.", "", "c")+".")
}

func TestLinesAreBrokenAtWords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOf(rapid.SampledFrom([]rune("ab -1 ┃é世\x1b\n"))).Draw(t, "text")
		w := rapid.IntRange(LeastWidth, 90).Draw(t, "w")
		for _, row := range Broken([]string{text}, w) {
			require.LessOrEqual(t, ansi.StringWidth(row), w)
			require.Equal(t, strings.TrimSpace(row), row)
		}
	})
}

// A voice adds what is typed to its line, writes what is edited otherwise on a new one, and ends it before it says a line.
func TestAVoiceWritesOnlyForward(t *testing.T) {
	var out bytes.Buffer
	v := NewVoice(&out, true, func() int { return 20 })
	for _, text := range []string{"6", "65", "652", "65", ""} {
		v.Type(text)
	}
	v.Say("", "a line that is longer than twenty")
	v.Say("", "   ")
	v.Type("12345678901234567890123")
	v.Shut()
	v.Shut()
	assert.Equal(t, "652\r\n65\r\nnothing\r\na line that is\r\nlonger than twenty\r\n12345678901234567890\r\n123\r\n", out.String())
	assert.NotContains(t, out.String(), "\b")
}

// The way is that of the words in all eight directions, and the hand that of somebody on their back, head to the bumper: the
// view from below says which.
func TestTowards(t *testing.T) {
	require.True(t, scene.Below.Projection().Lying)
	for deg, want := range map[float64]string{
		0: "towards the nose", 45: "towards the nose and left (left hand)", 90: "to the left (left hand)",
		135: "towards the bumper and left (left hand)", 180: "towards the bumper", 225: "towards the bumper and right (right hand)",
		270: "to the right (right hand)", 315: "towards the nose and right (right hand)", 20: "towards the nose", 25: "towards the nose and left (left hand)",
	} {
		by := geometry.Point{X: math.Cos(deg * math.Pi / 180), Y: math.Sin(deg * math.Pi / 180)}.Scale(100)
		assert.Equal(t, want, Towards(by, desk.State{}), "%v", deg)
	}
	assert.Empty(t, Towards(geometry.Point{}, desk.State{}))
	s := desk.State{Settings: desk.Settings{Nearside: desk.NearsideLeft}}
	assert.Equal(t, "to the nearside (left hand)", Towards(geometry.Point{Y: 5}, s))
}

// Each view's arrows point where a step of an arrow goes.
func TestTheArrowsAreSaidAsTheyMove(t *testing.T) {
	words := map[string]string{"nose": "nose", "bumper": "bumper", "left": "left", "right": "right"}
	for _, view := range []scene.View{scene.Below, scene.Above} {
		p := view.Projection()
		said := Arrows(desk.State{Camera: desk.Camera{View: view}})
		for arrow, step := range map[string][2]float64{"Right": {1, 0}, "Left": {-1, 0}, "Up": {0, 1}, "Down": {0, -1}} {
			by := p.Step(geometry.Point3{}, step[0], step[1])
			way := map[[2]float64]string{{1, 0}: "nose", {-1, 0}: "bumper", {0, 1}: "left", {0, -1}: "right"}[[2]float64{by.X + 0, by.Y + 0}]
			assert.Contains(t, said, arrow+" to the "+words[way])
		}
	}
}

// What lies near comes nearest first, as far from the rim as the finding found, and none within reach is left out.
func TestWhatLiesNearTheCut(t *testing.T) {
	s := screentest.Judged(desk.State{Selected: -1}, vehicles.Demo())
	lines := Near(s)
	text := strings.Join(lines, "\n")
	for i, o := range s.Job.Obstructions {
		gap := s.Plan.Obstructions[i].Prism.Footprint.GapCircle(s.Plan.Cut.At, s.Job.Cut.Across/2).Gap
		if gap > vehicles.LookRound {
			continue
		}
		want := o.Name
		if !strings.HasPrefix(o.Name, o.Kind) {
			want += " (" + o.Kind + ")"
		}
		far := ": " + desk.Length(gap, desk.Millimetres) + " from the cut's rim"
		if gap <= 0 {
			far = ": in the cut, " + desk.Length(-gap, desk.Millimetres) + " inside its rim"
		}
		assert.Contains(t, text, want+far)
	}
	last := math.Inf(-1)
	for _, b := range besides(s) {
		assert.GreaterOrEqual(t, b.separation.Gap, last)
		last = b.separation.Gap
		if f := ofCut(b, s); f != nil {
			assert.InDelta(t, f.Value, b.separation.Gap, 1e-9, "the finding is of the same distance")
		}
	}
	assert.Equal(t, 1, strings.Count(text, "crosses the circle"), "one pipe runs through it")
	assert.Contains(t, text, "brake pipe across (brake line): in the cut, 24.6 mm inside its rim; towards the bumper; crosses the circle from "+
		"the side towards the bumper and left (left hand) to the side towards the bumper and right (right hand); 12 mm below floor to "+
		"20 mm below floor; foul, 84.6 mm short ± 3 (95 %), can kill")
	assert.Contains(t, strings.Join(NearOnTop(s), "\n"), "bed frame: over the cut")
	for _, line := range append(NearOnTop(s), Zeros(s)...) {
		assert.NotContains(t, line, "hand)", "nobody lies under the floor on top of it")
	}
}

func TestWithoutACutOrWithAFaultNothingIsNear(t *testing.T) {
	s := screentest.Judged(desk.State{Selected: -1}, vehicles.NewJob("TL-07"))
	assert.Empty(t, Near(s))
	assert.Empty(t, Runs(s))
	assert.Empty(t, Areas(nil, s))
	s = screentest.Judged(desk.State{Selected: -1}, vehicles.Demo())
	s.Faults = []vehicles.Fault{{Key: "floor.from", Text: "wrong"}}
	assert.Empty(t, Near(s))
	assert.Empty(t, Run(vehicles.ExhaustRun, s))
}

// The rim is met where sampling finds it: a slow walk along the leg counts the same passages.
func TestRimPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		point := func(name string) geometry.Point {
			return geometry.Point{X: rapid.Float64Range(-200, 200).Draw(t, name+"x"), Y: rapid.Float64Range(-200, 200).Draw(t, name+"y")}
		}
		from, to, middle, radius := point("from"), point("to"), point("middle"), rapid.Float64Range(20, 100).Draw(t, "radius")
		points := rimPoints(from, to, middle, radius)
		for _, p := range points {
			require.InDelta(t, radius, p.Sub(middle).Norm(), 1e-6)
		}
		const steps = 20000
		passages := 0
		inside := func(i int) bool {
			return from.Add(to.Sub(from).Scale(float64(i)/steps)).Sub(middle).Norm() < radius
		}
		for i := 1; i <= steps; i++ {
			if inside(i) != inside(i-1) {
				passages++
			}
		}
		require.True(t, passages == len(points) || len(points) == passages+2, "%d, walked %d", len(points), passages) // grazed between two steps
	})
}

// Leg by leg the lengths and falls are those of the path, and what a rule says of a leg stands with it.
func TestARunLegByLeg(t *testing.T) {
	s := screentest.Judged(desk.State{Selected: -1}, screentest.Full(t))
	for _, of := range []vehicles.RunKind{vehicles.ExhaustRun, vehicles.IntakeRun, vehicles.FuelRun} {
		laid := [...]*vehicles.LaidRun{s.Plan.Exhaust, s.Plan.Intake, s.Plan.Fuel}[of]
		lines := Run(of, s)
		require.NotEmpty(t, lines, of.String())
		for i := 1; i < len(laid.Path); i++ {
			by := laid.Path[i].Sub(laid.Path[i-1])
			line := lines[i]
			assert.True(t, strings.HasPrefix(line, fmt.Sprintf("Leg %d: %s ", i, desk.Length(by.Norm(), desk.Millimetres))), line)
			assert.Equal(t, by.Z < -0.05, strings.Contains(line, "falls "), line)
			assert.Equal(t, by.Z > 0.05, strings.Contains(line, "rises "), line)
			for _, f := range s.Result.Findings {
				if f.Subject.Sort == rules.SortOf(of) && f.Against.Is(rules.ALeg, i-1) && f.Verdict != rules.Clear {
					assert.Contains(t, line, f.About())
				}
			}
		}
	}
}
