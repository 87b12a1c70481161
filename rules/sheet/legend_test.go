package sheet

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/template"
	"bench.example/undermark/vehicles"
)

// legends are those of a job's paper, each with the picture that it is of.
func legends(s *source) map[string]Legend {
	return map[string]Legend{"on top": each[Legend](s.above())[0], "underneath": each[Legend](s.below())[0]}
}

// Whoever reads a picture finds what its patterns and signs mean: each role that is drawn and means something by itself stands in the legend once with a
// sample before its words, no other does, and foul, doubtful, hidden and unmeasured are told.
func TestALegendTellsWhatIsDrawn(t *testing.T) {
	for _, job := range []vehicles.Job{vehicles.Demo(), vehicles.Demo().WithRun(vehicles.ExhaustRun, nil), {Ref: "TL-80", Floor: vehicles.Demo().Floor}} {
		for name, legend := range legends(paperOf(t, job)) {
			f := newFlow(template.Papers["a4"])
			f.wide = legendWide
			legend.lay(f)
			require.Len(t, f.pages, 1)
			p := printedOf(f.pages[0])
			told := map[string]int{}
			for _, text := range p.texts {
				told[text.Words]++
			}
			drawn := map[scene.Role]bool{}
			for _, it := range legend.Scene.Items {
				drawn[it.Role] = true
			}
			samples := 0
			for role := range scene.Role(scene.Roles) {
				means := role.Pen().Means
				if means == "" {
					continue
				}
				want := 0
				if drawn[role] {
					want = 1
					samples++
				}
				assert.Equal(t, want, told[printable(means)], "%s: %s", name, means)
			}
			for _, state := range []string{"! foul", "? doubtful, or not measured", "dashed: behind the floor", "dotted: " + rules.NotMeasuredHere} {
				assert.Equal(t, 1, told[state], name)
			}
			assert.Len(t, p.texts, samples+4, name)
		}
	}
}

// A sample stands right before its words and on their line, in the legend's column, however narrow that is; and no words lie over others or over a sample.
func TestSamplesStandBeforeTheirWords(t *testing.T) {
	legend := legends(paperOf(t, vehicles.Demo()))["underneath"]
	for _, wide := range []float64{30, legendWide, 90, 178} {
		f := newFlow(template.Papers["a4"])
		f.wide = wide
		from := f.y
		legend.lay(f)
		words := map[string]int{}
		p := printedOf(f.pages[0])
		for i, text := range p.texts {
			words[text.Words] = i
			box := p.boxes[i]
			assert.GreaterOrEqual(t, box.Left, float64(aside)-1e-6)
			assert.True(t, box.Top >= from-1 && box.Top+box.Height <= f.y+1, "what follows is below it")
			for k := range i {
				assert.LessOrEqual(t, over(box, p.boxes[k]), 0.0, "%q lies over %q", text.Words, p.texts[k].Words)
			}
		}
		samples := 0
		for n, mark := range f.pages[0].marks {
			var one, next printed
			if mark(&one); !one.inside {
				continue
			}
			require.Len(t, one.pictures, 1)
			samples++
			f.pages[0].marks[n+1](&next)
			require.Len(t, next.texts, 1)
			box, of := one.pictures[0], next.boxes[0]
			assert.InDelta(t, box.Left+box.Width+1.5, of.Left, 1e-6, "%g wide: %s", wide, next.texts[0].Words)
			assert.True(t, of.Top < box.Top+box.Height && of.Top+of.Height > box.Top, "%s is on the sample's line", next.texts[0].Words)
			for _, other := range p.boxes {
				assert.LessOrEqual(t, over(box, other), 0.0)
			}
		}
		assert.Len(t, legend.roles(), samples)
	}
}

// Pictures of a floor name no thing that the floor hides, and the marks of holes stand by their codes near the cut.
func TestPicturesFromAboveNameWhatIsThere(t *testing.T) {
	s := paperOf(t, vehicles.Demo())
	pictures := each[Picture](s.above())
	require.Len(t, pictures, 2)
	for _, it := range pictures[1].Scene.Items {
		if pictures[1].Scene.Projection.Hidden(&it) {
			assert.Empty(t, it.Label+it.Code)
		}
	}
	for _, picture := range pictures {
		for _, it := range picture.Scene.Items {
			assert.False(t, it.Role == scene.Hole && it.Label != "", "%s is named at its mark", it.Label)
		}
	}
	arcs := 0
	for _, it := range pictures[1].Scene.Items {
		if it.Role == scene.Mark && it.Primitive == scene.Stroke {
			arcs++
			least := math.Inf(1)
			for i := range it.Path {
				for at := 0.0; at <= 1; at += 0.01 {
					least = min(least, it.Path[i].At(at).Plan().Sub(s.Plan.Cut.At).Norm())
				}
			}
			assert.Less(t, least, 5.0, "an arc passes the middle of the cut, as the title has it")
		}
	}
	assert.Equal(t, 2, arcs, "one from each pin")
	near := pictures[0]
	require.NotNil(t, near.Around)
	labels := map[string]bool{}
	for _, it := range near.Scene.Items {
		labels[it.Label] = true
	}
	for _, code := range []string{"P1", "P2", "P3", "P4", "B1", "B2", "B3", "B4"} {
		found := false
		for label := range labels {
			found = found || len(label) >= 2 && label[:2] == code
		}
		assert.True(t, found, "%s: %v", code, labels)
	}
	assert.Equal(t, "Near the cut: plate's corners P, bolts B", near.Title)
	for _, m := range rules.Marks(*s.Result).Marks {
		if m.Above != nil && m.Plan.Sub(s.Plan.Cut.At).Norm() < nearHalf {
			assert.True(t, near.Around.Half.X >= m.Plan.Sub(s.Plan.Cut.At).Norm() && near.Around.Middle == s.Plan.Cut.At, "%s is in the picture", m.Words)
		}
	}
}

// Holes near the cut go by their letters from below, too: there is no room for more.
func TestHolesNearTheCutHaveTheirLettersBelow(t *testing.T) {
	seen := 0
	for _, picture := range each[Picture](paperOf(t, vehicles.Demo()).below()) {
		if !strings.HasPrefix(picture.Title, "Near the cut") {
			continue
		}
		for _, it := range picture.Scene.Items {
			if it.Role == scene.Hole && it.Label != "" {
				assert.LessOrEqual(t, len(it.Label), len("B10"), it.Label)
				seen++
			}
		}
	}
	assert.Positive(t, seen)
}

// From the side a run is seen whole, with 60 mm of the van round it and the floor over it.
func TestARunFromTheSideHasSomeOfTheVanRoundIt(t *testing.T) {
	s := paperOf(t, vehicles.Demo())
	laid := s.Plan.Exhaust
	low, high := laid.Path[0], laid.Path[0]
	for _, p := range laid.Path {
		low = geometry.Point3{X: min(low.X, p.X), Y: min(low.Y, p.Y), Z: min(low.Z, p.Z)}
		high = geometry.Point3{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	tall := (s.Job.Floor.Thickness - low.Z) / 2
	for view, wide := range map[scene.View]float64{scene.FromRight: high.X - low.X, scene.FromBehind: high.Y - low.Y} {
		around := s.beside(view, vehicles.ExhaustRun, laid, 80).(Picture).Around
		assert.InDelta(t, wide/2+60, around.Half.X, 1e-6)
		assert.InDelta(t, tall+60, around.Half.Y, 1e-6)
		assert.InDelta(t, s.Job.Floor.Thickness-tall, around.Middle.Y, 1e-6)
	}
}

// The title of a picture near the cut has the letters of what is marked there, and of nothing else.
func TestTheTitleNearTheCutHasItsLetters(t *testing.T) {
	below := vehicles.Demo() // its fuel line begins under the floor
	fuel := *below.Fuel
	begin := fuel.Path[0]
	begin.Drop = -100
	fuel.Path = append(vehicles.List[vehicles.RunPoint]{begin}, fuel.Path...)
	fuel.Pump = nil
	demo := below.WithRun(vehicles.FuelRun, &fuel)
	bare := *demo.Heater
	bare.Bolts = nil
	unbolted := demo.WithHeater(bare)
	for want, s := range map[string]*source{
		"Near the cut: plate's corners P, bolts B, fuel hole F": paperOf(t, demo),
		"Near the cut: plate's corners P, fuel hole F":          paperOf(t, unbolted),
		"Near the cut: plate's corners P, bolts B":              paperOf(t, below),
	} {
		assert.Equal(t, want, s.nearTitle("Near the cut", true))
	}
	assert.Equal(t, "Near the cut: bolts B, fuel hole F", paperOf(t, demo).nearTitle("Near the cut", false))
}

// A bolt that is farther off than the picture near the cut shows widens it, one that is on another end of the van does not.
func TestThePictureNearTheCutReachesItsHoles(t *testing.T) {
	for _, c := range []struct{ bolt, half float64 }{{100, nearHalf}, {200, 220}, {300, 320}, {349, 369}, {351, nearHalf}, {900, nearHalf}} {
		job := vehicles.Demo()
		heater := *job.Heater
		heater.Bolts = [][2]float64{{c.bolt, 0}}
		around := paperOf(t, job.WithHeater(heater)).nearCut()
		assert.InDelta(t, c.half, around.Half.X, 1e-6, "a bolt %g mm off", c.bolt)
		assert.InDelta(t, c.half, around.Half.Y, 1e-6)
	}
}
