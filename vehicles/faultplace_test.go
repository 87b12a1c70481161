package vehicles

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A reading's error names its place in words and its key, also where there are two readings of one name.
func TestAReadingsErrorNamesItsPlaceAndItsKey(t *testing.T) {
	const hooked = head + "[datum]\nhook_below = 150\nhook_above = 100\n"
	const tie = "[[tie]]\nname = \"seat bolt\"\n"
	for text, says := range map[string]string{
		tie + "below = [12, 1]\nabove = [1452, 1]\n":                                                                        `tie "seat bolt": below, x: 12: the tape reads 12 mm`,
		tie + "below = [1452, 1]\nabove = [12, 1]\n":                                                                        `tie "seat bolt": above, x: 12: the tape reads 12 mm`,
		tie + "below = [1452, \"+1\"]\nabove = [1452, 1]\n":                                                                 `tie "seat bolt": below, y: +1: it runs on`,
		"[cut]\nat = [1, 1]\nacross = 127\ndrilled = [12, 1]\n":                                                             `cut: drilled, x: 12: the tape reads 12 mm`,
		"[[obstruction]]\nname = \"spare\"\nkind = \"spare wheel\"\ncentre = [12, 1]\nacross = 600\ndrop = [0, 10]\n":       `obstruction "spare": centre, x: 12: the`,
		"[[obstruction]]\nname = \"pipe\"\nkind = \"brake line\"\npath = [[900, 1], [12, 1]]\nacross = 8\ndrop = [0, 10]\n": `obstruction "pipe": path, point 2, x: 12: the`,
		tie + "below = [1452, \"L 3x\"]\nabove = [1452, 1]\n":                                                               `tie "seat bolt": below, y: "L 3x"`,
	} {
		_, err := ParseJob([]byte(hooked+text), "job.toml")
		assert.ErrorContains(t, err, says)
	}
}
