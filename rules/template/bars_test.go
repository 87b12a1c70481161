package template

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// drawn tells whether a page has a straight line from one place of the template to another, either way round.
func (s *sheet) drawn(from, to geometry.Point) bool {
	for _, line := range s.lines {
		if len(line) == 2 && (line[0].Sub(from).Norm()+line[1].Sub(to).Norm() < 1e-6 || line[1].Sub(from).Norm()+line[0].Sub(to).Norm() < 1e-6) {
			return true
		}
	}
	return false
}

// Whoever holds a rule to the page has a bar of 100 mm each way, with a short line across either end, on each page of either paper.
func TestBothBarsAreAHundredLong(t *testing.T) {
	for _, tpl := range templates(t, vehicles.Demo()) {
		for name, paper := range Papers {
			for _, s := range sheets(&tpl, paper) {
				on := func(x, y float64) geometry.Point { return geometry.Point{X: x, Y: y}.Sub(s.off) }
				low, left := paper.High-12, 12.0 // halfway between what is drawn and the page's edge
				assert.True(t, s.drawn(on(24, low), on(124, low)), "%s: across", name)
				assert.True(t, s.drawn(on(left, 36), on(left, 136)), "%s: down", name)
				for _, at := range []float64{24, 124} {
					assert.True(t, s.drawn(on(at, low-3), on(at, low+3)), "%s: across, its end at %g", name, at)
				}
				for _, at := range []float64{36, 136} {
					assert.True(t, s.drawn(on(left-3, at), on(left+3, at)), "%s: down, its end at %g", name, at)
				}
				lengths := 0
				for _, text := range s.all {
					assert.GreaterOrEqual(t, text.Size, 2.4, "%s: %q is read on a floor", name, text.Words)
					if text.Words != "100 mm" {
						continue
					}
					lengths++
					beside := on(74, low)
					if text.Turned {
						beside = on(left, 86)
					}
					assert.Less(t, text.at.Sub(beside).Norm(), 5.0, "%s: a bar's length stands at its middle", name)
				}
				assert.Equal(t, 2, lengths)
			}
		}
	}
}

// Which way the van lies is on each page: its front at the top, its left at the left above and at the right below; the lines that run as it does go through the
// middle of all, and are drawn as ISO 128-2 has long-dashed dotted lines: dashes of 24, gaps of 3 and dots of half a line's width, of 0.25 mm here.
func TestWhichWayTheVanLiesIsOnEachPage(t *testing.T) {
	const width = 0.25
	for face, tpl := range templates(t, vehicles.Demo()) {
		for _, s := range sheets(&tpl, Papers["a4"]) {
			front, left, right := s.texts["van's front"], s.texts["van's left"], s.texts["van's right"]
			require.True(t, said(s, "van's front") && said(s, "van's left") && said(s, "van's right"))
			assert.Less(t, front.Y, left.Y)
			assert.InDelta(t, tpl.low.Y+6, front.Y, 1e-9, "at the top")
			assert.True(t, s.drawn(geometry.Point{Y: tpl.low.Y + 10}, geometry.Point{Y: tpl.low.Y + 1}), "its arrow, beside which that stands")
			assert.Equal(t, Face(face) == Above, left.X < 0)
			assert.Equal(t, Face(face) == Below, right.X < 0)
			chains := 0
			for i, line := range s.lines {
				if assert.NotEmpty(t, line); len(s.dashes[i]) != 4 {
					continue
				}
				chains++
				assert.InDeltaSlice(t, []float64{24 * width, 3 * width, width / 2, 3 * width}, s.dashes[i], 1e-9)
				assert.True(t, line[0].X == 0 && line[1].X == 0 || line[0].Y == 0 && line[1].Y == 0, "through the middle: %v", line)
			}
			assert.Equal(t, 2, chains)
		}
	}
}

// What is drilled or sawn has a cross in its middle, a little longer than a small hole is wide, and no longer than a centre punch needs.
func TestHolesHaveTheirMiddles(t *testing.T) {
	for _, tpl := range templates(t, vehicles.Demo()) {
		s := sheets(&tpl, Papers["a4"])[0]
		crosses := 0
		for _, c := range tpl.circles {
			half := map[string]float64{"cut": 8, "pilot": vehicles.Demo().Cut.PilotAcross()/2 + 3}[c.name]
			switch {
			case c.sort == stub:
				continue
			case half == 0:
				half = vehicles.Demo().Heater.Bolt/2 + 3
			}
			crosses++
			for _, arm := range []geometry.Point{{X: half}, {Y: half}} {
				assert.True(t, s.drawn(c.at.Sub(arm), c.at.Add(arm)), "%s: %v", c.name, arm)
			}
		}
		assert.Equal(t, 6, crosses)
	}
}

// The name of each join stands right by its cross, on every page; a template that fits a page has no joins, and no word of them.
func TestJoinsAreNamedAtTheirCrosses(t *testing.T) {
	large := func(plate float64) vehicles.Job {
		job := vehicles.Demo()
		h := *job.Heater
		h.Plate = [2]float64{plate, plate}
		return job.WithHeater(h)
	}
	for _, tpl := range templates(t, large(500)) {
		pages := tpl.Pages(Papers["a4"])
		require.Greater(t, len(pages), 1)
		for i, s := range sheets(&tpl, Papers["a4"]) {
			joins := pages[i].joins()
			require.NotEmpty(t, joins)
			for _, j := range joins {
				words, there := s.texts[j.name]
				require.True(t, there, j.name)
				assert.Less(t, words.Sub(j.at).Norm(), 4.0, "%s stands by its cross", j.name)
				assert.True(t, s.drawn(j.at.Sub(geometry.Point{X: 6}), j.at.Add(geometry.Point{X: 6})), j.name)
				assert.True(t, s.drawn(j.at.Sub(geometry.Point{Y: 6}), j.at.Add(geometry.Point{Y: 6})), j.name)
			}
			assert.True(t, said(s, fmt.Sprintf("Page %d of %d: lay join on join", i+1, len(pages))), "page %d", i+1)
		}
	}
	for _, tpl := range templates(t, large(120)) {
		all := sheets(&tpl, Papers["a4"])
		require.Len(t, all, 1)
		assert.False(t, said(all[0], "join"))
		assert.False(t, said(all[0], "Page 1"))
	}
}

// said tells whether some text of a page has words.
func said(s sheet, words string) bool {
	for text := range s.texts {
		if strings.Contains(text, words) {
			return true
		}
	}
	return false
}
