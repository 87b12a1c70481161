package template

import (
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// at is where on a page's paper a place of the template lies, mm.
func (p *Page) at(q geometry.Point) geometry.Point {
	return q.Sub(p.from).Add(geometry.Point{X: leftOf, Y: above})
}

// tipped asserts that an arrow ends at a place: its head's two lines, 25 degrees aside of its shaft, where they are 3 mm behind it.
func tipped(t *testing.T, r raster, tip, way geometry.Point, what string) {
	back, across := tip.Sub(way.Scale(3)), geometry.Point{X: -way.Y, Y: way.X}
	half := 3 * math.Tan(25*math.Pi/180)
	for _, side := range []geometry.Point{across, across.Scale(-1)} {
		assert.InDelta(t, half, r.line(t, back, side, 0.7, 2.2), asTrue, what)
	}
}

// On either face of the sample: the arrow to the van's front, that of the warm air, which blows to the rear, the pilot, and the stubs of
// intake and fuel line, by hand from the job file and the usual heater of its class.
func TestArrowsPilotAndStubsAreTrue(t *testing.T) {
	job := vehicles.Demo()
	h := job.Heater
	for face, tpl := range templates(t, job) {
		page := tpl.Pages(Papers["a4"])[0]
		r := painted(t, page)
		tipped(t, r, page.at(geometry.Point{Y: tpl.low.Y + 1}), geometry.Point{Y: -1}, "the van's front")
		tipped(t, r, page.at(geometry.Point{Y: h.Plate[0]/2 - 2}), geometry.Point{Y: 1}, "the warm air, to the rear")
		middle := page.at(geometry.Point{})
		for turn := 45.0; turn < 360; turn += 90 {
			assert.InDelta(t, job.Cut.PilotAcross()/2, r.line(t, middle, geometry.Point{X: 1}.Turn(turn), 2, 4), asTrue, "the pilot")
		}
		mirror := -1.0
		if Face(face) == Below {
			mirror = 1
		}
		for of, stub := range map[float64][2]float64{job.Intake.Across: h.IntakeStub, job.Fuel.Across: h.FuelStub} {
			p := geometry.Point{X: stub[0], Y: stub[1]}.Turn(h.Yaw)
			at, met := middle.Add(geometry.Point{X: mirror * p.Y, Y: -p.X}), 0
			for turn := 5.0; turn < 360; turn += 7 { // dashed: some rays meet a gap
				if d, ok := r.met(at, geometry.Point{X: 1}.Turn(turn), of/2-0.6, of/2+0.6); ok {
					assert.InDelta(t, of/2, d, asTrue, "a stub of %g", of)
					met++
				}
			}
			assert.Greater(t, met, 15)
		}
	}
}

// What comes on several pages: every join's cross lies at one place of the template on each page that has it, and every page says how it is
// printed and which side is up.
func TestJoinsOfPagesAreTrue(t *testing.T) {
	job := vehicles.Demo()
	h := *job.Heater
	h.Plate = [2]float64{420, 380}
	job = job.WithHeater(h)
	tpl := templates(t, job)[Above]
	pages := tpl.Pages(Papers["a4"])
	require.Len(t, pages, 9, "with six a seam would cross the pilot")
	seen := map[string]int{}
	for i := range pages {
		r := painted(t, pages[i])
		for _, j := range pages[i].joins() {
			at := pages[i].at(j.at)
			const arm = 6
			if at.X < leftOf+arm || at.X > 210-rightOf-arm || at.Y < above+arm || at.Y > 297-below-arm {
				continue // not on this page
			}
			seen[j.name]++
			assert.InDelta(t, 3, r.line(t, at.Add(geometry.Point{X: -3, Y: 2}), geometry.Point{X: 1}, 2.5, 3.5), asTrue, "%s, across", j.name)
			assert.InDelta(t, 3, r.line(t, at.Add(geometry.Point{X: -2, Y: -3}), geometry.Point{Y: 1}, 2.5, 3.5), asTrue, "%s, down", j.name)
		}
	}
	assert.Len(t, seen, 2*(3*2+2*3), "two for each two pages beside each other")
	for name, times := range seen {
		assert.Equal(t, 2, times, name)
	}
}

// What every page says, as poppler reads it.
func TestEveryPageSaysHowItIsUsed(t *testing.T) {
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("pdftotext is not installed")
	}
	job := vehicles.Demo()
	h := *job.Heater
	h.Plate = [2]float64{420, 380}
	result, faults := rules.Judge(job.WithHeater(h), rules.Builtin())
	require.Empty(t, faults)
	data, err := PDF(&result, Papers["a4"], "foul")
	require.NoError(t, err)
	file := filepath.Join(t.TempDir(), "t.pdf")
	require.NoError(t, os.WriteFile(file, data, 0o600))
	told, err := exec.Command("pdftotext", file, "-").CombinedOutput()
	require.NoError(t, err, string(told))
	pages := strings.Split(strings.TrimSuffix(string(told), "\f"), "\f")
	require.Len(t, pages, 18)
	for i, page := range pages {
		assert.Contains(t, page, "Print at 100 %, not fitted to the page: both bars are 100 mm.")
		assert.Contains(t, page, "The place is foul.")
		said := strings.Join(strings.Fields(page), " ")
		assert.Contains(t, said, "TL-07, 2026-11-25, long-wheelbase panel van, Ostermere county travelling tool library Page ")
		assert.Contains(t, page, "lay join on join")
		face := "THIS FACE UP"
		if i >= len(pages)/2 {
			face = "UNDER THE VAN"
		}
		assert.Contains(t, page, face)
	}
}

// Whoever prints a template is asked not to scale it.
func TestATemplateAsksForItsTrueSize(t *testing.T) {
	result, faults := rules.Judge(vehicles.Demo(), rules.Builtin())
	require.Empty(t, faults)
	data, err := PDF(&result, Papers["a4"], "clear")
	require.NoError(t, err)
	assert.Contains(t, string(data), "/PrintScaling /None")
}

// A centre that was moved from its pilot hole: the old one is drawn where it is, and a new one only where one is drilled.
func TestTheOldPilotOnTheTemplate(t *testing.T) {
	for by, anew := range map[float64]bool{8: false, 30: true, 500: true} {
		job := vehicles.Demo()
		at := geometry.Point{X: job.Cut.At[0], Y: job.Cut.At[1]}
		job = job.WithDrilled(&vehicles.Pair{survey.FromNumber(rules.ReadBelow(&job, at).Bumper, false), survey.FromNumber(at.Y, false)})
		both := templates(t, job.LeavingPilot([2]float64{at.X + by, at.Y}))
		for face := range both {
			drawn := map[string]geometry.Point{}
			for _, c := range both[face].circles {
				drawn[c.name] = c.at
			}
			_, there := drawn["pilot"]
			assert.Equal(t, anew, there, by)
			old, there := drawn["old pilot"]
			assert.Equal(t, by < 400, there, "farther off paper is less true than a tape: %v", by)
			if there {
				assert.InDelta(t, by, math.Abs(old.Y), 0.1, "behind the centre")
				assert.InDelta(t, 0, old.X, 0.1)
			}
		}
	}
}
