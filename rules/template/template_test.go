package template

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

func templates(t *testing.T, job vehicles.Job) [2]Template {
	result, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	both, err := Of(&result)
	require.NoError(t, err)
	return both
}

// raster is a page as poppler paints it: a byte a dot, 0 for black.
type raster struct {
	wide, high int
	dots       []byte
	perMM      float64
}

// painted is the only page of a template, painted by poppler.
func painted(t *testing.T, page Page) raster {
	if _, err := exec.LookPath("pdftoppm"); err != nil {
		t.Skip("pdftoppm is not installed")
	}
	const perInch = 600
	file := vector.NewPDF("template")
	file.Page(page.Paper.Wide, page.Paper.High)
	page.Draw(file, Words{Job: "T", Standing: "clear"})
	data, err := file.Bytes()
	require.NoError(t, err)
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "t.pdf"), data, 0o600))
	told, err := exec.Command("pdftoppm", "-r", fmt.Sprint(perInch), "-gray", "-singlefile", filepath.Join(dir, "t.pdf"), filepath.Join(dir, "t")).CombinedOutput()
	require.NoError(t, err, string(told))
	pgm, err := os.ReadFile(filepath.Join(dir, "t.pgm"))
	require.NoError(t, err)
	r := raster{perMM: perInch / 25.4}
	var most int
	_, err = fmt.Fscanf(bytes.NewReader(pgm), "P5\n%d %d\n%d\n", &r.wide, &r.high, &most)
	require.NoError(t, err)
	r.dots = pgm[len(pgm)-r.wide*r.high:]
	return r
}

// line is where the middle of the line is that a ray from a place meets between two distances, mm.
func (r *raster) line(t *testing.T, from, way geometry.Point, near, far float64) float64 {
	at, met := r.met(from, way, near, far)
	require.True(t, met, "no line from %v towards %v, %g to %g mm", from, way, near, far)
	return at
}

// What is asked of the paper, mm: as a saw and a drill can tell.
const asTrue = 0.2

// The sample's template as poppler (a general PDF renderer) paints it: bars of 100 mm, a cut of 127 all round, plate, bolts and stubs where
// the job has them. Every other figure is by hand from the job file.
func TestTheTemplateIsTrueToSize(t *testing.T) {
	job := vehicles.Demo()
	h := job.Heater
	for face, tpl := range templates(t, job) {
		pages := tpl.Pages(Papers["a4"])
		require.Len(t, pages, 1)
		r := painted(t, pages[0])
		assert.InDelta(t, 210, float64(r.wide)/r.perMM, 0.1)

		right := geometry.Point{X: 1}
		foot := geometry.Point{X: leftOf - 5, Y: 297 - below/2 + 2} // beside the ticks, under the bar
		assert.InDelta(t, 100, r.line(t, foot, right, 50, 120)-r.line(t, foot, right, 0, 50), asTrue, "the lying bar")
		side := geometry.Point{X: leftOf/2 + 2, Y: above - 5}
		down := geometry.Point{Y: 1}
		assert.InDelta(t, 100, r.line(t, side, down, 50, 120)-r.line(t, side, down, 0, 50), asTrue, "the upright bar")

		middle := geometry.Point{X: leftOf, Y: above}.Sub(pages[0].from)
		for turn := 5.0; turn < 360; turn += 20 { // not along the lines through its middle
			assert.InDelta(t, 127.0/2, r.line(t, middle, right.Turn(turn), 60, 67), asTrue, "the cut at %g°", turn)
		}
		mirror := 1.0 // above, seen with the van's front at the top, its left is at the left: against Y
		if Face(face) == Above {
			mirror = -1
		}
		onPaper := func(u, v float64) geometry.Point { // of the heater's own frame
			p := geometry.Point{X: u, Y: v}.Turn(h.Yaw)
			return middle.Add(geometry.Point{X: mirror * p.Y, Y: -p.X})
		}
		for _, b := range h.Bolts {
			at := onPaper(b[0], b[1])
			for turn := 45.0; turn < 360; turn += 90 { // between the arms of its cross
				assert.InDelta(t, h.Bolt/2, r.line(t, at, right.Turn(turn), h.Bolt/2-1, h.Bolt/2+1), asTrue, "bolt %v", b)
			}
		}
		edge := onPaper(h.Plate[0]/2, 20).Sub(onPaper(0, 20))
		assert.InDelta(t, h.Plate[0]/2, r.line(t, onPaper(0, 20), edge.Scale(1/edge.Norm()), h.Plate[0]/2-3, h.Plate[0]/2+3), asTrue, "the plate's front edge")
		stub, across := onPaper(h.ExhaustStub[0], h.ExhaustStub[1]), job.Exhaust.Across
		var got []float64
		for turn := 100.0; turn < 400; turn += 7 { // it is dashed: some rays meet a gap
			if d, ok := r.met(stub, right.Turn(turn), across/2-1.5, across/2+1.5); ok {
				got = append(got, d)
			}
		}
		require.NotEmpty(t, got)
		for _, d := range got {
			assert.InDelta(t, across/2, d, asTrue, "the exhaust's stub")
		}
	}
}

func (r *raster) met(from, way geometry.Point, near, far float64) (float64, bool) {
	var sum, n float64
	for d := near; d < far; d += 0.25 / r.perMM {
		at := from.Add(way.Scale(d))
		if r.dots[int(at.Y*r.perMM)*r.wide+int(at.X*r.perMM)] < 128 {
			sum, n = sum+d, n+1
		}
	}
	return sum / max(n, 1), n > 0
}

// The face for below is the mirror of the one for above.
func TestBelowIsTheMirrorOfAbove(t *testing.T) {
	both := templates(t, vehicles.Demo())
	require.Equal(t, len(both[0].circles), len(both[1].circles))
	for i, c := range both[0].circles {
		assert.Equal(t, geometry.Point{X: -c.at.X, Y: c.at.Y}, both[1].circles[i].at)
		assert.Equal(t, c.across, both[1].circles[i].across)
	}
}

// Corners by the van, the sample's warm air to the rear: what is the heater's front left is the van's rear right.
func TestCornersAreNamedAsTheVanHasThem(t *testing.T) {
	assert.Equal(t, []string{"rear right", "front right", "front left", "rear left"}, templates(t, vehicles.Demo())[Above].corners)
	for name, at := range map[string]geometry.Point{
		"front": {X: 100, Y: 5}, "left": {Y: 80}, "right": {X: -10, Y: -80}, "rear": {X: -90}, "front left": {X: 60, Y: 30},
	} {
		assert.Equal(t, name, cornerName(at))
	}
}

// Every place of a template is on some page, each two pages beside each other share a lap, and a join mark of both is at one place of
// the template.
func TestPagesCoverAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tpl := &Template{
			low: geometry.Point{X: -rapid.Float64Range(30, 700).Draw(t, "left"), Y: -rapid.Float64Range(30, 700).Draw(t, "up")},
			far: geometry.Point{X: rapid.Float64Range(30, 700).Draw(t, "right"), Y: rapid.Float64Range(30, 700).Draw(t, "down")},
		}
		paper := Papers[rapid.SampledFrom([]string{"a4", "letter"}).Draw(t, "paper")]
		wide, high := paper.Wide-leftOf-rightOf, paper.High-above-below
		pages := tpl.Pages(paper)
		x, y := rapid.Float64Range(tpl.low.X, tpl.far.X).Draw(t, "x"), rapid.Float64Range(tpl.low.Y, tpl.far.Y).Draw(t, "y")
		shown := func(p Page, x, y float64) bool {
			const hair = 1e-9
			return x >= p.from.X-hair && x <= p.from.X+wide+hair && y >= p.from.Y-hair && y <= p.from.Y+high+hair
		}
		seen := 0
		for _, p := range pages {
			if shown(p, x, y) {
				seen++
			}
		}
		if seen == 0 {
			t.Fatalf("%g, %g is on no page", x, y)
		}
		for _, j := range pages[0].joins() {
			on := 0
			for _, p := range pages {
				if shown(p, j.at.X, j.at.Y) {
					on++
				}
			}
			if on < 2 {
				t.Fatalf("%s is on %d pages", j.name, on)
			}
		}
		if len(pages) > 1 && math.Abs(pages[len(pages)-1].joins()[0].at.X-pages[0].joins()[0].at.X) > 1e-9 {
			t.Fatal("a join lies elsewhere on another page")
		}
	})
}

// However the heater is turned, and however large it is: no lap of two pages comes near the pilot, and all is on some page.
func TestNoSeamComesNearThePilot(t *testing.T) {
	demo := vehicles.Demo()
	rapid.Check(t, func(rt *rapid.T) {
		h := *demo.Heater
		h.Yaw = rapid.Float64Range(-180, 180).Draw(rt, "yaw")
		h.Plate = [2]float64{rapid.Float64Range(120, 700).Draw(rt, "long"), rapid.Float64Range(120, 600).Draw(rt, "wide")}
		paper := Papers[rapid.SampledFrom([]string{"a4", "letter"}).Draw(rt, "paper")]
		for _, tpl := range templates(t, demo.WithHeater(h)) {
			pages := tpl.Pages(paper)
			wide, high := paper.Wide-leftOf-rightOf, paper.High-above-below
			on := 0
			for _, p := range pages {
				low, far := p.from, p.from.Add(geometry.Point{X: wide, Y: high})
				if low.X <= 0 && low.Y <= 0 && far.X >= 0 && far.Y >= 0 {
					on++
				}
				for _, q := range pages {
					if p.Col+1 == q.Col && p.Row == q.Row {
						if q.from.X < seamOff-1e-6 && far.X > -seamOff+1e-6 {
							rt.Fatalf("a seam from %g to %g beside the pilot", q.from.X, far.X)
						}
					}
					if p.Row+1 == q.Row && p.Col == q.Col {
						if q.from.Y < seamOff-1e-6 && far.Y > -seamOff+1e-6 {
							rt.Fatalf("a seam from %g to %g across the pilot", q.from.Y, far.Y)
						}
					}
				}
			}
			if on != 1 {
				rt.Fatalf("the pilot is on %d pages", on)
			}
			last := pages[len(pages)-1].from.Add(geometry.Point{X: wide, Y: high})
			if first := pages[0].from; first.X > tpl.low.X+1e-6 || first.Y > tpl.low.Y+1e-6 || last.X < tpl.far.X-1e-6 || last.Y < tpl.far.Y-1e-6 {
				rt.Fatalf("%v to %v does not hold %v to %v", first, last, tpl.low, tpl.far)
			}
		}
	})
}

func TestAJobWithoutACutHasNoTemplate(t *testing.T) {
	job := vehicles.Demo()
	job.Cut, job.Exhaust, job.Intake, job.Fuel = nil, nil, nil, nil
	result, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	_, err := Of(&result)
	assert.ErrorIs(t, err, ErrNoCut)
}
