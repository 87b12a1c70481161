package vehicles

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What the numbers of a job file must be.
const (
	signed   = "-20000 to 20000"
	reading  = "reading -20000 to 20000" // which may be a text too
	from0    = "0 to 20000"
	over0    = "above 0 to 20000"
	whole    = "-36000 to 36000"
	halfTurn = "-180 to 180"
	flow     = "above 0 to 1000000"
)

// numbers are all numbers of a job file: a file with one %s where the number goes, and what it must be.
var numbers = []struct{ text, must string }{
	{strings.Replace(head, "from = 40", "from = %s", 1), signed},
	{strings.Replace(head, "length = 3200", "length = %s", 1), over0},
	{strings.Replace(head, "width = 1780", "width = %s", 1), over0},
	{strings.Replace(head, "thickness = 31", "thickness = %s", 1), over0},
	{strings.Replace(head, "ground = 460", "ground = %s", 1), over0},
	{head + "[datum]\nhook_below = %s", signed},
	{head + "[datum]\nhook_above = %s", signed},
	{head + "[datum]\nshift_above = %s", signed},
	{head + "[datum]\nleft = %s", over0},
	{head + "[datum]\nright = %s", over0},
	{head + "[datum]\nabove_left = %s", over0},
	{head + "[datum]\nabove_right = %s", over0},
	{head + "[datum]\nside_below = %s", signed},
	{head + "[datum]\nside_above = %s", signed},
	{head + "[datum]\nframes = %s", from0},
	{head + "[datum]\npins = %s", over0},
	{head + "[[datum.bow]]\ny = %s\noffset = 1", signed},
	{head + "[[datum.bow]]\ny = 1\noffset = %s", signed},
	{head + "[tape]\nread = %s", from0},
	{head + "[tape]\nmark = %s", from0},
	{head + "[tape]\nheight = %s", from0},
	{head + "[tape]\nturn = %s", from0},
	{head + crossmember + placed + "drop = [-20000, %s]", signed},
	{head + crossmember + placed + "drop = [%s, 20000]", signed},
	{head + crossmember + placed + "turn = %s", whole},
	{head + crossmember + placed + "taped_at = %s", signed},
	{head + crossmember + placed + "travel = %s", from0},
	{head + crossmember + "x = [-20000, 20000]\ny = [%s, 20000]", reading},
	{head + pipe + "path = [[1, 2], [3, %s]]\nacross = 8", reading},
	{head + pipe + "path = [[1, 2], [3, 4]]\nacross = %s", over0},
	{head + pipe + "centre = [%s, 2]\nacross = 8", reading},
	{head + pipe + "centre = [1, 2]\nacross = %s", over0},
	{head + door + placed + "drop = [-20000, %s]", signed},
	{head + box + placed + "rise = [-20000, %s]", signed},
	{head + "[[wheel]]\nat = [%s, 780]", signed},
	{head + "[[wheel]]\nat = [900, 780]\nacross = %s", over0},
	{head + "[[wheel]]\nat = [900, 780]\nwidth = %s", over0},
	{head + "[heater]\nyaw = %s", whole},
	{head + "[heater]\nbody = [1, %s, 3]", over0},
	{head + "[heater]\nbody_at = [%s, 0]", signed},
	{head + "[heater]\nplate = [100, %s]", over0},
	{head + "[heater]\nturret = %s", over0},
	{head + "[heater]\nstub_drop = %s", from0},
	{head + "[heater]\nexhaust_stub = [1, %s]", signed},
	{head + "[heater]\nintake_stub = [%s, 1]", signed},
	{head + "[heater]\nfuel_stub = [%s, 1]", signed},
	{head + "[heater]\nspace = { front = %s }", from0},
	{head + "[heater]\nspace = { rear = %s }", from0},
	{head + "[heater]\nspace = { sides = %s }", from0},
	{head + "[heater]\nspace = { top = %s }", from0},
	{head + "[heater]\nduct_across = %s", over0},
	{head + "[heater]\nreturn_area = %s", flow},
	{head + "[cut]\nat = [1, %s]\nacross = 127", signed},
	{head + "[cut]\nat = [1, 2]\nacross = %s", over0},
	{head + "[wish]\nat = [%s, 2]", signed},
	{head + "[wish]\nat = [1, 2]\nwithin = %s", over0},
	{head + "[exhaust]\nacross = %s\npath = [[1, 2, 3]]", over0},
	{head + "[exhaust]\nacross = 26\nbend = %s\npath = [[1, 2, 3]]", from0},
	{head + "[exhaust]\nacross = 26\npath = [[1, 2, %s]]", signed},
	{head + "[exhaust]\nacross = 26\npath = [[1, 2, 3]]\nclips = [1, %s]", from0},
	{head + "[intake]\nacross = %s\npath = [[1, 2, 3]]", over0},
	{head + exhaust + "muffler = { leg = 1, start = %s, length = 180, across = 68 }", from0},
	{head + exhaust + "muffler = { leg = 1, start = 1, length = %s, across = 68 }", over0},
	{head + exhaust + "muffler = { leg = 1, start = 1, length = 180, across = %s }", over0},
	{head + fuel + "bore = %s", over0},
	{head + fuel + "tank = { at = [%s, 1] }", signed},
	{head + fuel + "tank = { at = [1, 1], rise = [-20000, %s] }", signed},
	{head + fuel + "tank = { at = [1, 1], drop = [-20000, %s] }", signed},
	{head + fuel + "filter = { leg = 1, start = %s }", from0},
	{head + fuel + "pump = { leg = 1, start = %s, tilt = 45 }", from0},
	{head + fuel + "pump = { leg = 1, start = 1, tilt = %s }", halfTurn},
	{head + fuel + "pump = { leg = 1, start = 1, tilt = 45, ml_per_1000 = %s }", flow},
	{head + fuel + "pump = { leg = 1, start = 1, tilt = 45, hz = %s }", flow},
	{head + "[[done]]\nstep = \"fall\"\nvalue = %s", "-1000000000 to 1000000000"},
	{head + "[[done]]\nstep = \"glow-voltage\"\nvalue = %s", "0 to 1000000000"},
	{head + "[built.cut]\nat = [1, %s]\nacross = 127", signed},
	{head + "[[layer]]\nkind = \"ply\"\nthick = %s", over0},
	{head + "[mount]\nplate = %s", over0},
	{head + "[mount]\nbead = %s", over0},
	{head + "[electrics]\nvolts = %s", flow},
	{head + "[electrics]\ncable = %s", over0},
	{head + "[electrics]\nglow = %s", flow},
	{head + "[electrics]\nrunning = %s", flow},
	{head + "[electrics]\ndrop = %s", flow},
	{head + "[electrics]\nfuse = %s", flow},
	{head + "[electrics]\nbattery = %s", flow},
	{head + "[electrics]\nusable = %s", "above 0 to 100"},
	{head + "[duct]\nlength = %s", over0},
	{head + "[duct]\nrough = %s", from0},
	{head + "[duct]\nflow = %s", flow},
	{head + "[duct]\nbends = [90, %s]", "above 0 to 180"},
	{head + "[duct]\nfan = [[0, 1000000], [1000000, %s]]", "0 to 1000000"},
	{head + "[body]\ninside = %s", "-90 to 90"},
	{head + "[body]\noutside = %s", "-90 to 90"},
	{head + "[body]\nvolume = %s", flow},
	{head + "[body]\nchanges = %s", "0 to 1000000"},
	{head + "[body]\nhours = %s", "above 0 to 24"},
	{head + "[[surface]]\nname = \"w\"\nlies = \"wall\"\narea = %s", flow},
	{head + aSurface + "layers = [{ of = \"ply\", thick = %s }]", over0},
	{head + aSurface + "layers = [{ of = \"ply\", thick = 1, lambda = %s }]", flow},
	{head + aSurface + "layers = [{ of = \"ply\", r = %s }]", flow},
	{head + fuel + "tank = { at = [1, 1], litres = %s }", flow},
	{head + "[rules]\n\"exhaust.fall\" = %s", "-1000000000 to 1000000000"},
}

// Every number of a job file is taken up to its limits, both included or the lower one not, and not beyond.
func TestEveryNumberHasItsLimits(t *testing.T) {
	for _, n := range numbers {
		words := strings.Fields(strings.TrimPrefix(strings.TrimPrefix(n.must, "above "), "reading "))
		var low, high float64
		_, err := fmt.Sscan(words[0]+" "+words[2], &low, &high)
		require.NoError(t, err)
		open := strings.HasPrefix(n.must, "above ")
		for value, ok := range map[float64]bool{
			low: !open, math.Nextafter(low, high): true, math.Nextafter(low, -high-1): false,
			high: true, math.Nextafter(high, low): true, math.Nextafter(high, 2*high): false,
			(low + high) / 2: true,
		} {
			_, faults := parse([]byte(strings.Replace(n.text, "%s", fmt.Sprintf("%.17g", value), 1)), "a.toml")
			assert.Equal(t, ok, len(faults) == 0, "%v in %s: %v", value, strings.TrimPrefix(n.text, head), faults)
		}
		for _, none := range []string{"nan", "inf", "-inf", "\"1\"", "true", "{}", "[[1]]", "2026-11-25"} {
			_, faults := parse([]byte(strings.Replace(n.text, "%s", none, 1)), "a.toml")
			said := n.must == reading && none == "\"1\""
			assert.Equal(t, said, len(faults) == 0, "%s in %s", none, strings.TrimPrefix(n.text, head))
		}
	}
}

// A negative zero is a plain one, wherever it comes from: it would be written back with its sign.
func TestANegativeZeroIsAPlainOne(t *testing.T) {
	text := strings.Replace(head, "from = 40", "from = -0.0", 1) + crossmember + "x = [-0.0, 5]\ny = [1, 2]\nturn = -0.0"
	job, faults := parse([]byte(text), "a.toml")
	require.Empty(t, faults)
	assert.False(t, math.Signbit(job.Floor.From))
	assert.False(t, math.Signbit(job.Obstructions[0].X[0].Length))
	assert.NotContains(t, string(job.Format()), " -0")
	assert.NotContains(t, string(job.Format()), "[-0")
}

// The whole numbers: which leg, and the number of the format.
func TestWholeNumbersHaveTheirLimits(t *testing.T) {
	for _, c := range []struct {
		text string
		most int
	}{
		{exhaust + "muffler = { leg = %v, start = 1, length = 1, across = 68 }", 3},
		{fuel + "filter = { leg = %v, start = 1 }", 2},
		{fuel + "pump = { leg = %v, start = 1, tilt = 45 }", 2},
	} {
		for _, leg := range []float64{-1, 0, 1, 2, 3, 4, 1.5} {
			_, faults := parse([]byte(head+fmt.Sprintf(c.text, leg)), "a.toml")
			assert.Equal(t, leg >= 1 && leg <= float64(c.most) && leg == math.Trunc(leg), len(faults) == 0, "%v of %d", leg, c.most)
		}
	}
}
