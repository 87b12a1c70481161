package drawing

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/field"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

func pt(x, y float64) geometry.Point { return geometry.Point{X: x, Y: y} }

// van is a judged job: the underside of testdata/van.toml.
func van(t testing.TB, change func(*vehicles.Job)) rules.Result {
	data, err := os.ReadFile("testdata/van.toml")
	require.NoError(t, err)
	job, err := vehicles.ParseJob(data, "van.toml")
	require.NoError(t, err)
	if change != nil {
		change(&job)
	}
	result, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	return result
}

func find(s scene.Scene, role scene.Role, label string) []scene.Item {
	var found []scene.Item
	for _, it := range s.Items {
		if it.Role == role && (label == "" || it.Label == label) {
			found = append(found, it)
		}
	}
	return found
}

func TestLegendNamesWhatIsThereOnce(t *testing.T) {
	var names []string
	for _, k := range Legend(van(t, nil).Job) {
		names = append(names, k.Name)
	}
	assert.Equal(t, []string{
		"crossmember", "chassis rail", "brake line", "fuel tank", "wiring", "vehicle exhaust", "spare wheel", "driveshaft",
		"jacking point", "plastic part", "hand-brake cable",
	}, names)
}

func TestObstructionsAreDrawnWhereTheyWerePlaced(t *testing.T) {
	result := van(t, nil)
	s := Draw(result, Options{Selected: 3})
	drawn := map[int]scene.Item{}
	thickness := 1e9
	for _, it := range s.Items {
		if it.Code != "" {
			assert.LessOrEqual(t, field.Thickness(&it.Solid.Prism.Footprint), thickness, "a thin thing must lie on a thick one")
			thickness = field.Thickness(&it.Solid.Prism.Footprint)
			drawn[it.Ref] = it
		}
	}
	require.Len(t, drawn, len(result.Job.Obstructions))
	for i, o := range result.Job.Obstructions {
		it := drawn[i]
		assert.Equal(t, o.Name, it.Label)
		assert.Equal(t, result.Plan.Obstructions[i].Prism, it.Solid.Prism)
		assert.Equal(t, vehicles.KindOf(o.Kind).Role, it.Role)
		assert.Equal(t, i == 3, it.Selected)
		assert.Equal(t, o.Name == "wiring loom", it.Unsure, "the loom was not measured, and has no drop: %s", o.Name)
	}
}

// A thing's state is the worst that any finding says of it: looked up here from the findings by its name.
func TestStatesAreTheWorstOfTheFindings(t *testing.T) {
	result := van(t, nil)
	s := Draw(result, Options{Selected: -1})
	worst := map[string]scene.State{}
	for _, f := range result.Findings {
		if f.ID() != "body.space" && f.ID() != "plate.fitting" {
			worst[f.Against.Name] = max(worst[f.Against.Name], [...]scene.State{scene.Clear, scene.Doubtful, scene.Foul}[f.Verdict-rules.Clear])
		}
	}
	states := map[scene.State]int{}
	for _, it := range s.Items {
		if it.Code != "" {
			assert.Equal(t, worst[it.Label], it.State, it.Label)
			states[it.State]++
		}
	}
	assert.Greater(t, len(states), 1, "the van shows more than one state")
	for _, door := range find(s, scene.Opening, "") {
		assert.Equal(t, worst[door.Label], door.State, door.Label)
	}
}

func TestTheFloorHidesWhatIsBehindIt(t *testing.T) {
	for view, above := range map[scene.View]bool{scene.Below: false, scene.Above: true} {
		s := Draw(van(t, nil), Options{View: view, Selected: -1})
		for _, it := range s.Items {
			switch {
			case it.Code != "":
				assert.Equal(t, above, s.Projection.Hidden(&it), it.Label)
			case it.Role == scene.Fitting, it.Role == scene.Plate:
				assert.Equal(t, !above, s.Projection.Hidden(&it), it.Label)
			}
		}
	}
}

// Whatever it is seen from, the same things are drawn: only the projection is another.
func TestEveryViewDrawsTheSameItems(t *testing.T) {
	result := van(t, nil)
	below, above := Draw(result, Options{Shown: Worst(result.Findings, anything, 3)}), Draw(result, Options{Shown: Worst(result.Findings, anything, 3), View: scene.Above})
	assert.Equal(t, below.Items, above.Items)
	assert.Equal(t, scene.Above.Projection(), above.Projection)
}

func TestTheHeaterIsTurnedByItsYaw(t *testing.T) {
	result := van(t, nil)
	s := Draw(result, Options{})
	for _, role := range []scene.Role{scene.Plate, scene.Body, scene.Space} {
		assert.Equal(t, 10.0, find(s, role, "")[0].Solid.Prism.Footprint.Turn)
	}
	arrow := find(s, scene.Body, "warm air")[0].Path
	way := arrow[0].B.Sub(arrow[0].A).Plan()
	assert.InDelta(t, 0, way.Turn(-10).Y, 1e-9, "the warm air blows along +u")
	assert.Positive(t, way.Turn(-10).X)
}

func TestRunsStartAtTheirStubs(t *testing.T) {
	result := van(t, nil)
	s := Draw(result, Options{})
	// model.md, heater frame: x = cx + u cos(yaw) - v sin(yaw), y = cy + u sin(yaw) + v cos(yaw); yaw 10, stub 35, 25.
	const cos, sin = 0.984807753, 0.173648178
	exhaust := find(s, scene.Exhaust, "heater's exhaust")[0].Solid
	assert.InDelta(t, 1210+35*cos-25*sin, exhaust.Axis[0].A.X, 1e-6)
	assert.InDelta(t, 240+35*sin+25*cos, exhaust.Axis[0].A.Y, 1e-6)
	assert.Equal(t, 13.0, exhaust.Radius)
	outlet := find(s, scene.Outlet, "")[0].At
	assert.Equal(t, pt(-20, 760), outlet.Plan())
	assert.Equal(t, pt(1500, 440), find(s, scene.Mouth, "")[0].At.Plan())
}

func TestTheMufflerLiesOnItsLeg(t *testing.T) {
	s := Draw(van(t, nil), Options{})
	m := find(s, scene.Muffler, "")[0].Solid
	leg, start := pt(300, 690).Sub(pt(1120, 660)), pt(1120, 660)
	along := leg.Scale(1 / leg.Norm())
	off := m.Axis[0].At(0.5).Plan().Sub(start)
	assert.InDelta(t, 0, off.X*along.Y-off.Y*along.X, 1e-9)
	assert.InDelta(t, 250+90, off.Dot(along), 1, "the leg falls by 15 mm in 820: its plan length is 0.2 per mille less")
	assert.Equal(t, 34.0, m.Radius)
}

func TestADrilledPilotShowsWhereTheHoleWasMeant(t *testing.T) {
	before := Draw(van(t, nil), Options{})
	assert.Empty(t, find(before, scene.Pilot, ""))
	after := van(t, func(j *vehicles.Job) {
		cut := *j.Cut
		cut.Drilled = &vehicles.Pair{survey.FromNumber(1240, false), survey.FromNumber(230, false)}
		j.Cut = &cut
	})
	s := Draw(after, Options{})
	assert.Equal(t, after.Plan.Cut.At, find(s, scene.Cut, "cut")[0].Solid.Prism.Footprint.Middle)
	assert.Equal(t, after.Plan.Cut.At, find(s, scene.Pilot, "")[0].At.Plan())
	meant := find(s, scene.Wish, "meant")[0]
	assert.Equal(t, pt(1210, 240), meant.Solid.Prism.Footprint.Middle)
	assert.NotEqual(t, after.Plan.Cut.At, meant.Solid.Prism.Footprint.Middle)
}

func TestDimensionsAreOfTheFindingsShownOneForEachThing(t *testing.T) {
	result := van(t, nil)
	drawn := func(o Options) (items []scene.Item) {
		s := Draw(result, o)
		return append(find(s, scene.Dimension, ""), find(s, scene.Conflict, "")...)
	}
	assert.Empty(t, drawn(Options{}))
	shown := Worst(result.Findings, anything, 40)
	first := map[string]*rules.Finding{}
	for _, f := range shown {
		if f.Against.Sort != rules.Nothing {
			require.NotContains(t, first, about(f), "one for each thing")
		}
		first[about(f)] = f
	}
	require.Greater(t, len(result.Findings), 2*len(first), "several findings are of one thing")
	conflicts := 0
	for _, it := range drawn(Options{Shown: shown}) {
		f := first[it.Label]
		if it.Measure == nil {
			continue // nobody has said what is asked
		}
		require.NotNil(t, f, it.Label)
		assert.Equal(t, scene.Measure{Value: f.Margin.Value, Unit: string(f.Rule.Unit), Bare: f.Rule.Unit == scene.MM, Spare: true}, *it.Measure, "the figure of the list")
		assert.False(t, it.Selected)
		if f.Verdict == rules.Foul && f.Rule.AtCut {
			assert.Equal(t, scene.Conflict, it.Role)
			assert.Equal(t, f.At[1], it.At, "on what is in the way")
			conflicts++
		} else if f.Places > 1 {
			assert.Equal(t, scene.Straight(f.At[0], f.At[1]), it.Path)
		}
		delete(first, it.Label)
	}
	assert.Positive(t, conflicts)
	for name, f := range first {
		assert.False(t, f.Verdict == rules.Foul || near(f), "%s has no figure", name)
	}

	focused := drawn(Options{Focus: shown[0], Shown: shown[:1]})
	require.Len(t, focused, 1, "the finding in focus is drawn once")
	assert.True(t, focused[0].Selected)
}

// What is told apart by its label only has one.
// Of what is as bad with a thing the cut is shown, not its bolt hole; what is worse is, whichever it is, and once for each thing.
func TestTheCutIsShownBeforeItsBoltHoles(t *testing.T) {
	of := func(sort rules.Sort, against int32, verdict rules.Verdict) rules.Finding {
		return rules.Finding{Limit: &rules.Limit{Rule: &rules.Rule{}}, Subject: rules.Thing{Sort: sort}, Against: rules.Thing{Sort: rules.AnObstruction, Index: against}, Places: 2, Verdict: verdict}
	}
	for _, c := range []struct {
		findings []rules.Finding
		want     []rules.Sort
	}{
		{[]rules.Finding{of(rules.ABolt, 1, rules.Foul), of(rules.TheCut, 1, rules.Foul)}, []rules.Sort{rules.TheCut}},
		{[]rules.Finding{of(rules.TheCut, 1, rules.Foul), of(rules.ABolt, 1, rules.Foul)}, []rules.Sort{rules.TheCut}},
		{[]rules.Finding{of(rules.ABolt, 1, rules.Foul), of(rules.TheCut, 1, rules.Doubtful)}, []rules.Sort{rules.ABolt}},
		{[]rules.Finding{of(rules.ABolt, 1, rules.Foul), of(rules.TheCut, 2, rules.Foul)}, []rules.Sort{rules.ABolt, rules.TheCut}},
		{[]rules.Finding{of(rules.ABolt, 1, rules.Foul), of(rules.TheExhaust, 1, rules.Foul)}, []rules.Sort{rules.ABolt}},
	} {
		var shown []rules.Sort
		for _, f := range Worst(c.findings, anything, 3) {
			shown = append(shown, f.Subject.Sort)
		}
		assert.Equal(t, c.want, shown)
	}
}

func TestWhatOnlyALabelTellsApartHasOne(t *testing.T) {
	seen, result := map[scene.Role]bool{}, van(t, nil)
	for _, it := range Draw(result, Options{Shown: Worst(result.Findings, anything, 3)}).Items {
		if it.Role.Pen().Told == scene.ByLabel {
			seen[it.Role] = true
			assert.True(t, it.Label != "" || it.Measure != nil, "role %d", it.Role)
		}
	}
	assert.Len(t, seen, 5, "fitting, muffler, dimension, bumper, nose")
}

func TestMarksAndWishes(t *testing.T) {
	marks := []rules.Mark{{Name: "plate 1", Plan: pt(1300, 300)}, {Name: "clip 1", Plan: pt(900, 600)}}
	s := Draw(van(t, nil), Options{Marks: marks, Ticked: map[string]bool{"clip 1": true}, Wishes: []geometry.Point{pt(2000, 0)}})
	drawn := find(s, scene.Mark, "")
	require.Len(t, drawn, 2)
	assert.Equal(t, [2]scene.State{scene.Plain, scene.Clear}, [2]scene.State{drawn[0].State, drawn[1].State})
	assert.Equal(t, 63.5, find(s, scene.Wish, "")[0].Solid.Prism.Footprint.Radius)
}

func TestAJobWithNothingButAFloor(t *testing.T) {
	result := van(t, func(j *vehicles.Job) {
		*j = vehicles.Job{Ref: "TL-0", Floor: j.Floor}
	})
	s := Draw(result, Options{Selected: -1, Shown: Worst(result.Findings, anything, 5)})
	for _, it := range s.Items {
		assert.Contains(t, []scene.Role{scene.Floor, scene.Bumper, scene.Nose}, it.Role)
	}
	require.Len(t, find(s, scene.Floor, ""), 1)
	assert.Equal(t, pt(-105, -930), s.Min, "the bumper bar, and a little round it")
	assert.Equal(t, pt(3460, 930), s.Max, "the nose")
}

func TestEverythingDrawnIsInSight(t *testing.T) {
	s := Draw(van(t, nil), Options{})
	for _, it := range s.Items {
		if it.Role == scene.Space {
			continue
		}
		f, ok := s.Projection.Seen(&it, 0.001)
		require.True(t, ok)
		low, high := f.Bounds()
		assert.True(t, low.X >= s.Min.X && low.Y >= s.Min.Y && high.X <= s.Max.X && high.Y <= s.Max.Y, "%d %s", it.Role, it.Label)
	}
}

func BenchmarkDraw(b *testing.B) {
	result := van(b, nil)
	for b.Loop() {
		Draw(result, Options{Shown: Worst(result.Findings, anything, 3)})
	}
}

// What runs inside the floor is seen from above and from below, with the letters of its kind; what stands on the floor from above
// alone, and without.
func TestWhatRunsInsideTheFloorIsSeenFromBothSides(t *testing.T) {
	result := van(t, func(job *vehicles.Job) {
		f := job.Fittings[0]
		f.Name, f.Kind, f.Rise = "loom", "wiring", vehicles.Span{From: -12, To: -2, Set: true}
		job.Fittings = append(job.Fittings, f)
	})
	for _, view := range []scene.View{scene.Below, scene.Above} {
		s := Draw(result, Options{View: view})
		loom, box := find(s, scene.Fitting, "loom")[0], find(s, scene.Fitting, result.Job.Fittings[0].Name)[0]
		assert.False(t, s.Projection.Hidden(&loom), "%v", view)
		assert.Equal(t, "W", loom.Code)
		assert.Equal(t, view == scene.Below, s.Projection.Hidden(&box), "%v", view)
		assert.Empty(t, box.Code)
	}
	var names []string
	bare := result.Job
	bare.Obstructions = nil
	for _, k := range Legend(bare) {
		names = append(names, k.Name)
	}
	assert.Equal(t, []string{"wiring"}, names)
}

func anything(*rules.Finding) bool { return true }
