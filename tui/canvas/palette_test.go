package canvas

import (
	"testing"

	"github.com/lucasb-eyer/go-colorful"
	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry/scene"
)

// meanings are what colours say; what carries, moves or frames the picture is grey, of more than one lightness.
var meanings = map[string][]hue{
	"foul":             {bad, tints[scene.Conflict]},
	"doubtful":         {warn},
	"room to spare":    {good, grounds[scene.LittleRoom], grounds[scene.FairRoom], grounds[scene.MuchRoom]},
	"picked out":       {accent, picked},
	"lines and tanks":  {cyan, tints[scene.Lines]},
	"van's exhaust":    {brown, tints[scene.Hot]},
	"heater's exhaust": {flame, tints[scene.Exhaust], tints[scene.Muffler]},
	"heater's air in":  {indigo, tints[scene.Intake]},
	"heater's fuel":    {pink, tints[scene.Fuel]},
	"openings":         {violet},
	"matching points":  {lilac},
	"the cut":          {white},
}

// leastApart is how far apart two colours are that nobody takes for each other, by CIEDE2000 over 100: five times what is
// just seen side by side, 0.023 (Mahy, Van Eycken, Oosterlinck 1994).
const leastApart = 5 * 0.023

func TestNoColourHasTwoMeanings(t *testing.T) {
	shade := func(c int) colorful.Color {
		return colorful.Color{R: float64(c>>16&255) / 255, G: float64(c>>8&255) / 255, B: float64(c&255) / 255}
	}
	for one, hues := range meanings {
		for other, others := range meanings {
			for _, h := range hues {
				for _, o := range others {
					if one < other {
						assert.Greater(t, shade(h.dark).DistanceCIEDE2000(shade(o.dark)), leastApart, "dark: %s %06x, %s %06x", one, h.dark, other, o.dark)
						assert.Greater(t, shade(h.light).DistanceCIEDE2000(shade(o.light)), leastApart, "light: %s %06x, %s %06x", one, h.light, other, o.light)
					}
				}
			}
		}
	}
}

// With sixteen colours, too, what is foul, doubtful, good, picked out or the heater's exhaust has a colour of its own.
func TestTheVerdictsHaveColoursOfTheirOwnAmongSixteen(t *testing.T) {
	mine := map[string]hue{"foul": bad, "doubtful": warn, "good": good, "picked out": accent, "heater's exhaust": flame}
	for name, h := range mine {
		for i, o := range hues {
			if o != h && o != bad && o != warn && o != good && o != accent && o != flame {
				assert.NotEqual(t, h.dark16, o.dark16, "%s and role %d", name, i)
				assert.NotEqual(t, h.light16, o.light16, "%s and role %d", name, i)
			}
		}
		for other, o := range mine {
			if other != name {
				assert.NotEqual(t, h.dark16, o.dark16, "%s and %s", name, other)
				assert.NotEqual(t, h.light16, o.light16, "%s and %s", name, other)
			}
		}
	}
}
