package looks

import (
	"testing"

	"github.com/lucasb-eyer/go-colorful"
	"github.com/stretchr/testify/assert"
)

// sight is how an eye sees: what it makes of linear red, green and blue.
type sight struct {
	name string
	of   [3][3]float64
}

// Machado, Oliveira, Fernandes: A physiologically-based model for simulation of color vision deficiency, 2009, severity 1.0; the figures
// from memory, and as public programs have them.
var sights = []sight{
	{"normal", [3][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}},
	{"protanopia", [3][3]float64{{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}},
	{"deuteranopia", [3][3]float64{{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}},
	{"tritanopia", [3][3]float64{{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}},
}

// seen is a colour, 0xRRGGBB, as an eye sees it.
func seen(c int, s sight) colorful.Color {
	r, g, b := colorful.Color{R: float64(c>>16&255) / 255, G: float64(c>>8&255) / 255, B: float64(c&255) / 255}.LinearRgb()
	mix := func(row [3]float64) float64 { return min(max(row[0]*r+row[1]*g+row[2]*b, 0), 1) }
	return colorful.LinearRgb(mix(s.of[0]), mix(s.of[1]), mix(s.of[2]))
}

// What has no colour looks the same to every eye, and what a lacking receptor would tell apart comes closer.
func TestGreyIsGreyToEveryEye(t *testing.T) {
	for _, s := range sights {
		for _, c := range []int{0, 0x808080, 0xffffff} {
			assert.Less(t, seen(c, s).DistanceCIEDE2000(seen(c, sights[0])), 1e-3, "%s: %06x", s.name, c)
		}
	}
	for i, p := range [][2]int{{0xa04040, 0x5f6b40}, {0xa04040, 0x706440}, {0x4060c0, 0x407060}} {
		assert.Less(t, seen(p[0], sights[i+1]).DistanceCIEDE2000(seen(p[1], sights[i+1])), seen(p[0], sights[0]).DistanceCIEDE2000(seen(p[1], sights[0])))
	}
}
