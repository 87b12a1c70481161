package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// offBy is the sample job with its pilot hole so far ahead of its mark, and where that is.
func offBy(mm float64) (vehicles.Job, geometry.Point) {
	job := vehicles.Demo()
	at := geometry.Point{X: job.Cut.At[0] + mm, Y: job.Cut.At[1]}
	return job.WithDrilled(&vehicles.Pair{survey.FromNumber(rules.ReadBelow(&job, at).Bumper, false), survey.FromNumber(at.Y, false)}), at
}

// Whoever marks from paper, or from the list, has the hole's own readings beside those of the centre that was meant, by names that tell which is which.
func TestTheHoleAsDrilledIsOnPaper(t *testing.T) {
	notRaced(t)
	for _, mm := range []float64{2, 7} {
		job, at := offBy(mm)
		below := rules.ReadBelow(&job, at)
		file := jobOf(t, job)
		row := "pilot hole as drilled" + survey.Figure(below.Bumper) + survey.Figure(below.Left) + survey.Figure(below.Right)
		page := pagesOf(t, printed(t, file))[0]
		assert.Contains(t, page, tight(row))
		assert.Contains(t, page, tight("cut centre as meant"))
		assert.Contains(t, page, tight("All else here is set off the hole."))
		code, out, complaint := call("", "marks", file)
		require.Zero(t, code, complaint)
		assert.Contains(t, out, "pilot hole as drilled\t"+survey.Figure(below.Bumper))
		assert.Contains(t, out, "cut centre as meant")
		_, out, _ = call("", "marks", "--json", file)
		assert.NotContains(t, out, "as drilled")
		assert.Contains(t, out, `"name":"cut centre"`)
	}
}

// A centre that was moved from its hole says on the first page, in the list and among the sizes what that takes.
func TestAMovedCentreIsOnPaper(t *testing.T) {
	notRaced(t)
	for mm, want := range map[float64]string{7: "guide board", 30: "new pilot"} {
		job, at := offBy(0)
		file := jobOf(t, job.LeavingPilot([2]float64{at.X + mm, at.Y}))
		said := "Centre " + survey.Figure(mm) + " mm beside the old pilot hole: " + want + "."
		pages := pagesOf(t, printed(t, file))
		assert.Contains(t, pages[0], tight(said))
		assert.Contains(t, pages[0], tight("old pilot hole"))
		assert.Contains(t, strings.Join(pages, ""), tight("centre beside the old pilot "+survey.Figure(mm)+" mm"+strings.ToUpper(want[:1])+want[1:]+"."))
		_, out, _ := call("", "marks", file)
		assert.Contains(t, out, said)
		_, out, _ = call("", "sizing", "saw", file)
		assert.Contains(t, out, want)
	}
}

// The list says how far off a mark may be, from above and from below, along the van and across it: by the tape's own errors, as programs have them.
func TestTheListSaysHowFarOffAMarkMayBe(t *testing.T) {
	_, out, _ := call("", "marks", demoFile(t))
	assert.Regexp(t, `From above ± [\d.]+ along the van, ± [\d.]+ across it, ± [\d.]+ from a pin \(95 %\)\.`, out)
	assert.Regexp(t, `From below ± [\d.]+ along the van, ± [\d.]+ across it \(95 %\)\.`, out)
	assert.Regexp(t, `Frombelow±[\d.]+alongthevan,±[\d.]+acrossit\(95%\)\.`, pagesOf(t, printed(t, demoFile(t)))[0])
}
