package vehicles

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What sizes are reckoned from, and how each is refused.

const (
	aLayer   = "[[layer]]\nkind = \"ply\"\nthick = 12\n"
	aSurface = "[[surface]]\nname = \"walls\"\narea = 14.2\nlies = \"wall\"\n"
)

var brokenSizes = []brokenPart{
	{"[[layer]]\nthick = 12", 1, `kind is missing`},
	{"[[layer]]\nkind = \"ply\"", 1, `thick is missing`},
	{"[[layer]]\nkind = \"felt\"\nthick = 3", 2, `kind is "felt"`},
	{aLayer + "soft = true", 4, `soft is an unknown key`},
	{"[mount]\non = \"timber\"", 2, `on is "timber"; it must be one of: steel, lining`},
	{"[mount]\nbeads = 6", 2, `beads is an unknown key; did you mean bead?`},
	{"[electrics]\nvolts = \"12\"", 2, `volts is "12"; it must be more than 0`},
	{"[electrics]\nusable = 101", 2, `usable is 101; it must be more than 0 and at most 100 percent`},
	{"[electrics]\namps = 10", 2, `amps is an unknown key`},
	{"[wiring]\ncontrol = 12", 2, `control is 12; it must be a text of one line in quotes`},
	{"[wiring]\ncontroll = \"a\"", 2, `controll is an unknown key; did you mean control?`},
	{"electrics = 12", 1, `electrics is 12; it must be a table`},
	{"[duct]\nbends = [90, 0]", 2, `bends, value 2 is 0; it must be more than 0 and at most 180 degrees`},
	{"[duct]\nfan = 80", 2, `fan is 80; it must be a list of points`},
	{"[duct]\nfan = [0, 150]", 2, `it must be a list of points`},
	{"[duct]\nfan = [[0, 150]]", 2, `the flows rising and the pressures falling, two at least`},
	{"[duct]\nfan = [[0, 100], [50, 120]]", 2, `the pressures falling`},
	{"[duct]\nfan = [[50, 100], [50, 20]]", 2, `the flows rising`},
	{"[duct]\nfan = [[0, 100], [50]]", 2, `a point [m3/h, Pa] of two numbers`},
	{"[body]\ninside = 91", 2, `inside is 91; it must be from -90 to 90 degrees Celsius`},
	{"[body]\nhours = 25", 2, `hours is 25`},
	{aSurface + "[[surface]]\nname = \"walls\"\narea = 1\nlies = \"roof\"", 6, `is used twice`},
	{"[[surface]]\nname = \"walls\"\narea = 0\nlies = \"wall\"", 3, `area is 0`},
	{"[[surface]]\nname = \"walls\"\narea = 1\nlies = \"side\"", 4, `lies is "side"; it must be one of: wall, roof, floor`},
	{aSurface + "layers = [{ of = \"felt\" }]", 5, `says neither how thick it is nor its resistance`},
	{aSurface + "layers = [{ thick = 3 }]", 5, `of is missing`},
	{aSurface + "layers = [\"felt 3\"]", 5, `must be tables`},
	{fuel + "tank = { at = [1, 2], litres = 0 }", 4, `litres is 0`},
	{fuel + "tank = { at = [1, 2], filler = \"roof\" }", 4, `filler is "roof"; it must be one of: inside, outside`},
}

func TestBrokenSizesSayWhatIsWrong(t *testing.T) {
	for _, b := range brokenSizes {
		text := head + b.text
		if b.text == "electrics = 12" {
			text = strings.Replace(head, "format = 1\n", "format = 1\nelectrics = 12\n", 1)
			b.line = 2 - strings.Count(head, "\n")
		}
		_, err := ParseJob([]byte(text), "a.toml")
		require.Error(t, err, b.text)
		all := err.(FileErrors)
		require.Len(t, all, 1, b.text)
		assert.Contains(t, all[0].Text, b.words, b.text)
		assert.Equal(t, strings.Count(head, "\n")+b.line, all[0].Line, b.text)
	}
}

func TestSizesSayWhatTheySay(t *testing.T) {
	text := head + fuel + `tank = { at = [2600, 500], rise = [50, 350], litres = 10, filler = "outside", breather = "inside" }
[[layer]]
kind = "ply"
thick = 12
name = "birch"
[[layer]]
kind = "swage"
thick = 8.5
[mount]
on = "lining"
plate = 2
bead = 5
[electrics]
volts = 24
cable = 4200
glow = 8
running = 0.9
drop = 0.4
fuse = 15
battery = 100
usable = 50
[wiring]
battery = "under the seat"
cable = "along the sill"
earth = "the battery's minus"
control = "by the door"
alarm = "over the bed"
[duct]
length = 2500
rough = 0.9
flow = 80
bends = []
fan = [[0, 150], [120, 0]]
[body]
inside = 20
outside = -10.5
volume = 11
changes = 0
hours = 8
[[surface]]
name = "walls"
area = 14.2
lies = "wall"
layers = [{ of = "steel", thick = 1 }, { of = "wool", thick = 40, lambda = 0.037 }, { of = "air gap", r = 0.18 }]
[[surface]]
name = "windscreen"
area = 1.8
lies = "wall"
`
	job, err := ParseJob([]byte(text), "a.toml")
	require.NoError(t, err)
	assert.Equal(t, &Tank{At: [2]float64{2600, 500}, Rise: Span{50, 350, true}, Litres: Some(10), Filler: TankOutside, Breather: TankInside}, job.Fuel.Supply.Tank)
	assert.Equal(t, List[Layer]{{Kind: Ply, Thick: 12, Name: "birch"}, {Kind: SwageLayer, Thick: 8.5}}, job.Stack)
	assert.Equal(t, Mount{OnLining, Some(2), Some(5)}, job.Mount)
	assert.Equal(t, Electrics{Some(24), Some(4200), Some(8), Some(0.9), Some(0.4), Some(15), Some(100), Some(50)}, job.Electrics)
	assert.Equal(t, Wiring{"under the seat", "along the sill", "the battery's minus", "by the door", "over the bed"}, job.Wiring)
	assert.Equal(t, Ductwork{Some(2500), Some(0.9), Some(80), []float64{}, List[FanPoint]{{0, 150}, {120, 0}}}, job.Ductwork)
	assert.Equal(t, Body{Some(20), Some(-10.5), Some(11), Some(0), Some(8)}, job.Body)
	assert.Equal(t, List[Surface]{
		{"walls", 14.2, WallSurface, []Slab{{"steel", Some(1), Number{}, Number{}}, {"wool", Some(40), Some(0.037), Number{}}, {"air gap", Number{}, Number{}, Some(0.18)}}},
		{"windscreen", 1.8, WallSurface, nil},
	}, job.Surfaces)
	again, err := ParseJob(job.Format(), "b.toml")
	require.NoError(t, err)
	assert.Equal(t, job, again, "written and read")
}

// anySizes draws what sizes are reckoned from.
func anySizes(t *rapid.T, j *Job) {
	for range rapid.IntRange(0, 3).Draw(t, "layers") {
		j.Stack = append(j.Stack, Layer{rapid.SampledFrom(LayerKinds).Draw(t, "layer"), anySize(t), anyLine(t, "name")})
	}
	j.Mount = Mount{rapid.SampledFrom([]string{"", OnSteel, OnLining}).Draw(t, "on"), maybe(t, anySize), maybe(t, anySize)}
	for _, f := range j.Electrics.Figures() {
		*f.At = maybe(t, func(t *rapid.T) float64 { return rapid.Float64Range(0.1, 100).Draw(t, f.Key) })
	}
	for _, text := range j.Wiring.texts() {
		*text.at = anyLine(t, text.key)
	}
	for _, f := range j.Body.Figures() {
		*f.At = maybe(t, func(t *rapid.T) float64 { return rapid.Float64Range(0.1, 24).Draw(t, f.Key) })
	}
	for _, f := range j.Ductwork.Figures() {
		*f.At = maybe(t, anySize)
	}
	if rapid.Bool().Draw(t, "bends") {
		j.Ductwork.Bends = rapid.SliceOfN(rapid.Float64Range(1, 180), 0, 3).Draw(t, "turns")
	}
	if rapid.Bool().Draw(t, "fan") {
		j.Ductwork.Fan = List[FanPoint]{{0, anySize(t)}, {anySize(t), 0}}
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "surfaces") {
		s := Surface{Name: string(rune('a' + i)), Area: anySize(t), Lies: rapid.SampledFrom(SurfacesLie).Draw(t, "lies")}
		for range rapid.IntRange(0, 2).Draw(t, "slabs") {
			s.Layers = append(s.Layers, Slab{"of" + anyLine(t, "of"), Some(anySize(t)), maybe(t, anySize), maybe(t, anySize)})
		}
		j.Surfaces = append(j.Surfaces, s)
	}
}
