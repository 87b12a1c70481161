package template

import (
	"image/color"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// sheet keeps what a page is told to draw, at its places on the template.
type sheet struct {
	off    geometry.Point // of the template's middle on the paper
	rings  []ring
	lines  [][]geometry.Point
	dashes [][]float64 // of each line
	texts  map[string]geometry.Point
	all    []written
}

// written is a text at its place, which may be on a page twice.
type written struct {
	at geometry.Point
	vector.Text
}

// ring is a round line.
type ring struct {
	at     geometry.Point
	across float64
}

func (s *sheet) Face([]geometry.Point, color.NRGBA) {}
func (s *sheet) Windowed(_ vector.Box, draw func()) { draw() }
func (s *sheet) Write(at geometry.Point, t vector.Text) {
	s.texts[t.Words] = at.Sub(s.off)
	s.all = append(s.all, written{at.Sub(s.off), t})
}
func (s *sheet) Line(points []geometry.Point, with vector.Stroke) {
	var on []geometry.Point
	for _, p := range points {
		on = append(on, p.Sub(s.off))
	}
	s.lines, s.dashes = append(s.lines, on), append(s.dashes, with.Dashes)
	if len(points) < 9 || points[0].Sub(points[len(points)-1]).Norm() > 1e-6 {
		return // not round
	}
	low, high := points[0], points[0]
	for _, p := range points {
		low, high = geometry.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}, geometry.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	s.rings = append(s.rings, ring{low.Add(high).Scale(0.5).Sub(s.off), (high.X - low.X + high.Y - low.Y) / 2})
}

// sheets are what the pages of a template draw: all of it is on each page, which shows its part.
func sheets(t *Template, paper Paper) (all []sheet) {
	for _, p := range t.Pages(paper) {
		s := sheet{off: p.at(geometry.Point{}), texts: map[string]geometry.Point{}}
		p.Draw(&s, Words{Job: "TL-07", Standing: "clear"})
		all = append(all, s)
	}
	return all
}

// at finds a ring of a width at a place, to what a circle of chords is off.
func (s *sheet) at(p geometry.Point, across float64) bool {
	const chords = 0.03
	for _, r := range s.rings {
		if r.at.Sub(p).Norm() < chords && math.Abs(r.across-across) < 2*chords {
			return true
		}
	}
	return false
}

// everySample are the sample jobs that have a cut, and the demo.
func everySample(t *testing.T, look func(name string, r *rules.Result)) {
	files, err := filepath.Glob("../../testdata/cases/*.toml")
	require.NoError(t, err)
	looked := 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		job, err := vehicles.ParseJob(text, file)
		if err != nil || job.Cut == nil {
			continue
		}
		r, faults := rules.Judge(job, rules.Builtin())
		require.Empty(t, faults)
		look(filepath.Base(file), &r)
		looked++
	}
	assert.Greater(t, looked, 25)
	r, faults := rules.Judge(vehicles.Demo(), rules.Builtin())
	require.Empty(t, faults)
	look("the sample", &r)
}

// onPaper is where a step from the cut's middle lies on either face: the front is up, the van's left is left above and right below.
func onPaper(face int, off geometry.Point) geometry.Point {
	if Face(face) == Below {
		return geometry.Point{X: off.Y, Y: -off.X}
	}
	return geometry.Point{X: -off.Y, Y: -off.X}
}

// What the tapes mark is what the template has: each bolt hole, each fuel hole that is near and each corner of the plate lies as far from the cut's middle, and
// that way, as its mark on Marks does, under its own name; each page has the same.
func TestHolesOfTheTemplateAreThoseOfTheMarks(t *testing.T) {
	holes, corners := 0, 0
	everySample(t, func(name string, r *rules.Result) {
		both, err := Of(r)
		require.NoError(t, err)
		for face := range both {
			for _, paper := range Papers {
				for _, s := range sheets(&both[face], paper) {
					assert.True(t, s.at(geometry.Point{}, r.Job.Cut.Across), "%s: the cut", name)
					assert.Contains(t, s.texts, "cut, "+survey.InMM(r.Job.Cut.Across))
					for _, m := range rules.Marks(*r).Marks {
						off := m.Plan.Sub(r.Plan.Cut.At)
						at := onPaper(face, off)
						switch {
						case strings.HasPrefix(m.Name, "bolt"):
							holes++
							assert.True(t, s.at(at, r.Job.Heater.Bolt), "%s: %s at %v", name, m.Words, at)
							assert.Contains(t, s.texts, m.Words+", "+survey.InMM(r.Job.Heater.Bolt), name)
						case strings.HasPrefix(m.Name, "fuel hole"):
							holes++
							assert.Equal(t, off.Norm() <= 400, s.at(at, r.Job.Fuel.Supply.HoleAcross()), "%s: %s at %v", name, m.Words, at)
						case strings.HasPrefix(m.Name, "plate"):
							corners++
							named := false
							for _, corner := range both[face].plate {
								named = named || corner.Sub(at).Norm() < 1e-6
							}
							assert.True(t, named, "%s: %s at %v", name, m.Words, at)
						}
					}
				}
			}
		}
	})
	assert.Greater(t, holes, 40)
	assert.Greater(t, corners, 200)
}

// The name of a hole stands by it: a few mm from its rim, and nearer to it than to any other hole that is drilled. That of a pipe more than 20 mm wide stands in it.
func TestNamesStandByTheirHoles(t *testing.T) {
	inside := 0
	everySample(t, func(name string, r *rules.Result) {
		both, err := Of(r)
		require.NoError(t, err)
		for i := range both {
			s := sheets(&both[i], Papers["a4"])[0]
			for _, c := range both[i].circles {
				if c.sort == stub {
					if words, there := s.texts[c.name+", "+survey.InMM(c.across)]; there && c.across > 20 {
						assert.Less(t, words.Sub(c.at).Norm(), 2.0, "%s: %s is named in its middle", name, c.name)
						inside++
					}
					continue
				}
				if c.sort != drilled || c.at == (geometry.Point{}) {
					continue
				}
				words, there := s.texts[c.name+", "+survey.InMM(c.across)]
				require.True(t, there, "%s: %s", name, c.name)
				assert.Less(t, words.Sub(c.at).Norm()-c.across/2, 6.0, "%s: %s", name, c.name)
				for _, other := range both[i].circles {
					if other.sort == drilled && other.name != c.name && other.at != (geometry.Point{}) {
						assert.LessOrEqual(t, words.Sub(c.at).Norm()-c.across/2, words.Sub(other.at).Norm()-other.across/2+1e-9, "%s: %s stands by %s", name, c.name, other.name)
					}
				}
			}
		}
	})
	assert.Greater(t, inside, 20)
}

// The name of the cut, and of a pipe too narrow to hold its own, stands under its circle: clear of the line and close to it, a pipe's by its middle.
func TestNamesStandUnderTheirCircles(t *testing.T) {
	job := vehicles.Demo()
	intake := *job.Intake
	intake.Across = 18
	for _, tpl := range templates(t, job.WithRun(vehicles.IntakeRun, &intake)) {
		s, under := sheets(&tpl, Papers["a4"])[0], 0
		for _, c := range tpl.circles {
			if c.sort == drilled || c.sort == stub && c.across > 20 {
				continue
			}
			words := c.name + ", " + survey.InMM(c.across)
			for _, text := range s.all {
				if text.Words != words {
					continue
				}
				under++
				off, rim := text.at.Sub(c.at), c.across/2
				assert.Greater(t, off.Y-text.Size, rim, "%s: its letters are under the line", c.name)
				assert.Less(t, off.Y-text.Size, rim+3, "%s: close to it", c.name)
				if assert.Less(t, math.Abs(off.X), 3.0, c.name); c.sort == stub {
					assert.Equal(t, vector.ByMiddle, text.Align)
					assert.InDelta(t, 0, off.X, 1e-9, c.name)
				}
			}
		}
		assert.Equal(t, 3, under, "the cut's, the intake's and the fuel line's")
	}
}

// What is cut and drilled has whole lines, pipes that stand there dashed ones: as ISO 128-2 has them, dashes of 12 and gaps of 3 widths of 0.25 mm. All are round to 0.01 mm.
func TestWhatIsCutIsToldFromWhatStandsThere(t *testing.T) {
	const width = 0.25
	for _, tpl := range templates(t, vehicles.Demo()) {
		s := sheets(&tpl, Papers["a4"])[0]
		for _, c := range tpl.circles {
			found := 0
			for i, line := range s.lines {
				if len(line) < 9 || math.Abs(line[0].Sub(c.at).Norm()-c.across/2) > 1e-6 || math.Abs(line[3].Sub(c.at).Norm()-c.across/2) > 1e-6 {
					continue
				}
				found++
				if c.sort == stub {
					require.Len(t, s.dashes[i], 2, c.name)
					assert.InDeltaSlice(t, []float64{12 * width, 3 * width}, s.dashes[i], 1e-9, c.name)
				} else {
					assert.Empty(t, s.dashes[i], c.name)
				}
				for k := range line[1:] {
					assert.InDelta(t, c.across/2, line[k].Add(line[k+1]).Scale(0.5).Sub(c.at).Norm(), 0.01, c.name)
				}
			}
			assert.Equal(t, 1, found, c.name)
		}
	}
}

// Papers by what is published: ISO 216 has A4 as the half, four times over, of a square metre whose sides are as 1 to the root of 2, in whole mm; ANSI/ASME Y14.1
// has size A as 8.5 by 11 inches.
func TestPapersAreAsPublished(t *testing.T) {
	a0 := 1000 * math.Pow(2, 0.25)
	assert.Equal(t, Paper{math.Floor(a0 / math.Sqrt2 / 4), math.Floor(a0 / 4)}, Papers["a4"])
	assert.InDelta(t, 8.5*25.4, Papers["letter"].Wide, 1e-9)
	assert.InDelta(t, 11*25.4, Papers["letter"].High, 1e-9)
	assert.Len(t, Papers, 2)
}

// The name of a corner of the plate stands in that corner: on the plate, and nearer to it than to any other, however the plate lies.
func TestCornersAreNamedInsideThePlate(t *testing.T) {
	for _, yaw := range []float64{0, 90, 180, -90, 30, 45, 120, -75} {
		h := *vehicles.Demo().Heater
		h.Yaw = yaw
		for face, tpl := range templates(t, vehicles.Demo().WithHeater(h)) {
			s := sheets(&tpl, Papers["a4"])[0]
			half := geometry.Point{X: h.Plate[0] / 2, Y: h.Plate[1] / 2}
			plate := geometry.NewRectangle(half.Scale(-1), half, 0).Moved(yaw, geometry.Point{})
			for i, corner := range tpl.plate {
				words, there := s.texts[tpl.corners[i]]
				require.True(t, there, tpl.corners[i])
				onVan := geometry.Point{X: -words.Y, Y: -words.X}
				if Face(face) == Below {
					onVan.Y = words.X
				}
				assert.True(t, plate.Contains(onVan), "yaw %g: %s at %v", yaw, tpl.corners[i], words)
				assert.Less(t, words.Sub(corner).Norm(), 15.0, "yaw %g: %s", yaw, tpl.corners[i])
			}
		}
	}
}

// However the heater lies, whatever is drilled or stands through the floor is drawn on both faces, mirrored and else the same, and all of it within the
// template's box with room for names.
func TestAnyHeaterIsMirroredBelow(t *testing.T) {
	demo := vehicles.Demo()
	rapid.Check(t, func(rt *rapid.T) {
		h, cut := *demo.Heater, *demo.Cut
		h.Yaw = rapid.Float64Range(-180, 360).Draw(rt, "yaw")
		cut.Across = rapid.Float64Range(40, 200).Draw(rt, "across")
		h.Bolts = nil
		for range rapid.IntRange(0, 6).Draw(rt, "bolts") {
			h.Bolts = append(h.Bolts, [2]float64{rapid.Float64Range(-300, 300).Draw(rt, "u"), rapid.Float64Range(-300, 300).Draw(rt, "v")})
		}
		job := demo.WithCut(cut).WithHeater(h)
		r, faults := rules.Judge(job, rules.Builtin())
		if len(faults) > 0 {
			rt.Skip(faults[0].Text)
		}
		both, err := Of(&r)
		require.NoError(rt, err)
		up, down := both[Above], both[Below]
		if len(up.circles) != len(down.circles) || len(up.circles) != 1+1+len(h.Bolts)+3 {
			rt.Fatalf("%d circles above and %d below: cut, pilot, %d bolts and three stubs", len(up.circles), len(down.circles), len(h.Bolts))
		}
		for i, c := range up.circles {
			other := down.circles[i]
			if mirrored := (geometry.Point{X: -c.at.X, Y: c.at.Y}); other.at.Sub(mirrored).Norm() > 1e-9 || other.name != c.name || other.across != c.across {
				rt.Fatalf("%v above, %v below", c, other)
			}
			if half := c.across/2 + room; c.at.X-half < up.low.X-1e-9 || c.at.X+half > up.far.X+1e-9 || c.at.Y-half < up.low.Y-1e-9 || c.at.Y+half > up.far.Y+1e-9 {
				rt.Fatalf("%v is not within %v to %v", c, up.low, up.far)
			}
		}
		if math.Abs(up.low.X+down.far.X) > 1e-9 || math.Abs(up.far.X+down.low.X) > 1e-9 || up.low.Y != down.low.Y {
			rt.Fatalf("boxes %v to %v and %v to %v", up.low, up.far, down.low, down.far)
		}
		if way := up.warm; math.Abs(way.Norm()-1) > 1e-9 || math.Abs(-way.Y-math.Cos(h.Yaw*math.Pi/180)) > 1e-9 || math.Abs(-way.X-math.Sin(h.Yaw*math.Pi/180)) > 1e-9 {
			rt.Fatalf("warm air goes %v at %g degrees", way, h.Yaw)
		}
	})
}
