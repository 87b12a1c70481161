package vehicles

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
)

func bareX(v float64) survey.Reading { return survey.FromNumber(v, true) }

// accepted are parts of job files with every key of their table, and with as few as may be, and what they say.
var accepted = []struct {
	name, text string
	want       func(*Job)
}{
	{"nothing but a floor", "", func(*Job) {}},
	{"a datum with everything", `[datum]
hook_below = 150
hook_above = 60
shift_above = -20
left = 880
right = 870.5
above_left = 860
above_right = 850
side_below = 12
side_above = -3
frames = 0
pins = 700
pins_on = "batten"
edges_below = "lip of the sill"
edges_above = "inner face of the lining"
`, func(j *Job) {
		j.Datum = Datum{
			HookBelow: Some(150), HookAbove: Some(60), ShiftAbove: Some(-20), Left: Some(880), Right: Some(870.5), AboveLeft: Some(860),
			AboveRight: Some(850), SideBelow: Some(12), SideAbove: Some(-3), Frames: Some(0), Pins: Some(700),
			PinsOn: Batten, EdgesBelow: "lip of the sill", EdgesAbove: "inner face of the lining",
		}
	}},
	{"a tape with everything", "[tape]\nclass = \"III\"\nread = 0\nmark = 2\nheight = 3.5\nturn = 0.5\n", func(j *Job) {
		j.Tape = Tape{Class: "III", Read: Some(0), Mark: Some(2), Height: Some(3.5), Turn: Some(0.5)}
	}},
	{"a rectangle with everything", crossmember + placed + "turn = -5\ndrop = [-2, 95]\ntaped_at = 40\nmeasured = false\n" +
		"travel = 80\ntotal = { x = \"73.6cm\", y = 850 }\n", func(j *Job) {
		j.Obstructions = List[Obstruction]{{
			Name: "rear crossmember", Kind: "crossmember", Drop: Span{-2, 95, true}, TapedAt: Some(40),
			Place:  Place{X: Pair{bareX(652), mustSay("+84", survey.X)}, Y: Pair{bareX(-850), bareX(850)}, Turn: -5},
			Travel: Some(80), Total: Totals{mustSay("73.6cm", survey.X), bareX(850)},
		}}
	}},
	{"a pipe, as short as may be", pipe + "path = [[1, \"L 2\"], [\"+3\", \"R 4mm\"]]\nacross = 8\nturn = 0\n", func(j *Job) {
		j.Obstructions = List[Obstruction]{{Name: "brake pipe", Kind: "brake line", Measured: true, Place: Place{Shape: Piped, Across: Some(8), Path: []Pair{
			{bareX(1), mustSay("L 2", survey.Y)}, {mustSay("+3", survey.X), mustSay("R 4mm", survey.Y)},
		}}}}
	}},
	{"a round, overall in y alone", "[[obstruction]]\nname = \"wheel\"\nkind = \"spare wheel\"\ncentre = [\"16 1/2in\", \"-5\"]\nacross = 690.25\n" +
		"total = { y = \"L 895\" }\n", func(j *Job) {
		j.Obstructions = List[Obstruction]{{
			Name: "wheel", Kind: "spare wheel", Measured: true,
			Place: Place{Shape: Disc, Centre: Pair{mustSay("16 1/2in", survey.X), mustSay("-5", survey.Y)}, Across: Some(690.25)},
			Total: Totals{survey.Y: mustSay("L 895", survey.Y)},
		}}
	}},
	{"openings: a line needs no width", door + "path = [[1900, -890], [3000, -890]]\ndrop = [-1500, -22]\n" +
		"[[opening]]\nname = \"vent\"\nkind = \"vent\"\ncentre = [5, 6]\nacross = 90\ndrop = [0, 0]\nmeasured = false\n", func(j *Job) {
		j.Openings = List[Opening]{
			{Name: "sliding door", Kind: "door", Drop: Span{-1500, -22, true}, Place: Place{Shape: Piped, Path: []Pair{
				{bareX(1900), bareX(-890)}, {bareX(3000), bareX(-890)},
			}}},
			{Name: "vent", Kind: "vent", Drop: Span{0, 0, true}, Unconfirmed: true, Place: Place{Shape: Disc, Centre: Pair{bareX(5), bareX(6)}, Across: Some(90)}},
		}
	}},
	{"a fitting", box + placed + "kind = \"wiring\"\nrise = [-12, 400]\nturn = 10\nmeasured = false\ntotal = { x = 736 }\n", func(j *Job) {
		j.Fittings = List[Fitting]{{
			Name: "battery box", Kind: "wiring", Rise: Span{-12, 400, true}, Total: Totals{bareX(736)}, Unconfirmed: true,
			Place: Place{X: Pair{bareX(652), mustSay("+84", survey.X)}, Y: Pair{bareX(-850), bareX(850)}, Turn: 10},
		}}
	}},
	{"ties", tie + "below = [1458, \"L 320\"]\nabove = [\"1.452m\", \"L 316\"]\n" + "[[tie]]\nname = \"b\"\nbelow = [1, 2]\nabove = [3, 4]\nuse = false\n", func(j *Job) {
		j.Ties = List[Tie]{
			{"seat bolt", Pair{bareX(1458), mustSay("L 320", survey.Y)}, Pair{mustSay("1.452m", survey.X), mustSay("L 316", survey.Y)}, true},
			{"b", Pair{bareX(1), bareX(2)}, Pair{bareX(3), bareX(4)}, false},
		}
	}},
	{"wheels", "[[wheel]]\nat = [900, 780]\n[[wheel]]\nat = [900, -780]\nacross = 690\nwidth = 215\n", func(j *Job) {
		j.Wheels = List[Wheel]{{At: [2]float64{900, 780}}, {[2]float64{900, -780}, 690, 215}}
	}},
	{"a cut with its pilot drilled", "[cut]\nat = [1210, 240.5]\nacross = 127\npilot = 8\ndrilled = [1222, \"L 652\"]\nrelieved = 180\n", func(j *Job) {
		j.Cut = &Cut{At: [2]float64{1210, 240.5}, Across: 127, Pilot: Some(8), Drilled: &Pair{bareX(1222), mustSay("L 652", survey.Y)}, Relieved: Some(180)}
	}},
	{"a wish", "[wish]\nat = [1500, 0]\nwithin = 250\n", func(j *Job) { j.Wish = &Wish{At: [2]float64{1500, 0}, Within: Some(250)} }},
	{"an exhaust with everything", exhaust + "bend = 60\nmuffler = { leg = 3, start = 0, length = 180, across = 68, drain = \"aside\" }\nclips = []\nshielded = true\n", func(j *Job) {
		j.Exhaust = &Run{
			Across: 26, Bend: Some(60), Path: []RunPoint{{1245, 265, 110}, {900, 620, 160}, {300, 640, 185}},
			Hanging: Hanging{Muffler: &Muffler{3, 0, 180, 68, DrainAside}, Clips: []float64{}}, Shielded: Shields{All: true},
		}
	}},
	{"an intake of one point", "[intake]\nacross = 25\npath = [[1, -2, 3.5]]\n", func(j *Job) {
		j.Intake = &Run{Across: 25, Path: []RunPoint{{1, -2, 3.5}}}
	}},
	{"a fuel line with everything", fuel + "kind = \"petrol\"\nbore = 2\ntank = { at = [2600, 500], drop = [20, 300] }\n" +
		"filter = { leg = 1, start = 200 }\npump = { leg = 2, start = 10, tilt = -15, ml_per_1000 = 22, hz = 1.5 }\n", func(j *Job) {
		j.Fuel = &Run{
			Across: 4.5, Path: []RunPoint{{2600, 500, -72}, {2500, 200, 40}, {1210, 205, 45}},
			Supply:  Supply{Kind: "petrol", Bore: Some(2), Tank: &Tank{At: [2]float64{2600, 500}, Drop: Span{20, 300, true}}},
			Hanging: Hanging{Filter: &Filter{1, 200}, Pump: &Pump{2, 10, -15, Some(22), Some(1.5)}},
		}
	}},
	{"looked round the runs and for openings", "[looked_runs]\n\"gas pipe\" = true\nother = false\n[looked_openings]\n\"roof vent\" = true\n", func(j *Job) {
		j.LookedRuns = map[string]bool{"gas pipe": true, "other": false}
		j.LookedOpenings = map[string]bool{"roof vent": true}
	}},
	{"a heater whose air is said", "[heater]\nspace = { front = 70 }\nduct = [\"rear\", \"front\"]\nreturn_area = 50\nair = \"locker\"\nstored = [\"nothing\"]\n", func(j *Job) {
		h, _ := HeaterClass("2 kW")
		h.Space.Front, h.Duct, h.ReturnArea, h.Air = 70, Ends{true, true}, Some(50), Locker
		h.Given = HasFrontSpace | HasDuct | HasReturnArea | HasAir | HasStored
		j.Heater = &h
	}},
	{"runs checked in full", "[check]\nruns = \"full\"\n", func(j *Job) { j.RunChecks = InFull }},
	{"steps that are done, and noted", "[[done]]\nstep = \"glow-voltage\"\nat = 2026-11-27T10:15:30\nvalue = 12.3\ndue = 2026-12-11\nnote = \"a\\nb\"\nphotos = [\"plug 1.jpg\"]\n" +
		"[[done]]\nstep = \"stands\"\nat = 2026-11-26\n[[done]]\nstep = \"fall\"\nvalue = -1.5\n", func(j *Job) {
		j.Done = List[Done]{
			{Step: "glow-voltage", At: "2026-11-27T10:15:30", Value: Some(12.3), Due: "2026-12-11", Note: "a\nb", Photos: List[string]{"plug 1.jpg"}},
			{Step: "stands", At: "2026-11-26"}, {Step: "fall", Value: Some(-1.5)},
		}
	}},
	{"built otherwise", "[built.heater]\nyaw = 5\n[built.cut]\nat = [1222, 236]\nacross = 127\nsawn = { x = 1225.5, y = \"L 652\" }\n[built.exhaust]\nacross = 26\npath = [[1, 2, 3]]\nclips = []\n" +
		"[built.fuel]\nacross = 5\npath = [[1, 2, 3], [4, 5, 6]]\ntaped = [\"\", \"4, L 300, 6\"]\n", func(j *Job) {
		h, _ := HeaterClass("2 kW")
		h.Yaw, h.Given = 5, HasYaw
		j.Built = &Built{
			Heater: &h, Cut: &Cut{At: [2]float64{1222, 236}, Across: 127, Sawn: Pair{survey.FromNumber(1225.5, false), mustSay("L 652", survey.Y)}}, Fuel: &Run{Across: 5, Path: []RunPoint{{1, 2, 3}, {4, 5, 6}}, Taped: []string{"", "4, L 300, 6"}},
			Exhaust: &Run{Across: 26, Path: []RunPoint{{1, 2, 3}}, Hanging: Hanging{Clips: []float64{}}},
		}
	}},
	{"looked, rules and what is kept", "[looked]\n\"air line\" = true\nwiring = false\n[rules]\n\"cut.reach\" = 80\n\"exhaust.fall\" = -5.5\n[extra]\n\"a b\" = [1]\n", func(j *Job) {
		j.Looked = map[string]bool{"air line": true, "wiring": false}
		j.Rules = map[string]float64{"cut.reach": 80, "exhaust.fall": -5.5}
		j.Extra = map[string]any{"a b": []any{int64(1)}}
	}},
}

func TestEveryKeySaysWhatItSays(t *testing.T) {
	for _, a := range accepted {
		t.Run(a.name, func(t *testing.T) {
			want := Job{Ref: "TL-07", Floor: Floor{From: 40, Length: 3200, Width: 1780, Thickness: 31, Ground: 460}}
			a.want(&want)
			for _, dress := range []func(string) string{
				func(s string) string { return s },
				func(s string) string { return "\ufeff" + strings.ReplaceAll(s, "\n", "\r\n") },
				func(s string) string { return strings.ReplaceAll(s, "\n", " # \"[[noted]]\n") },
			} {
				job, faults := parse([]byte(dress(head+a.text)), "a.toml")
				require.Empty(t, faults)
				assert.Equal(t, want, job)
			}
			again, faults := parse(want.Format(), "b.toml")
			require.Empty(t, faults, string(want.Format()))
			assert.Equal(t, string(want.Format()), string(again.Format()))
		})
	}
}

// All of them in one file, in any order of the tables, are still one job.
func TestTablesComeInAnyOrder(t *testing.T) {
	want := Job{Ref: "TL-07", Floor: Floor{From: 40, Length: 3200, Width: 1780, Thickness: 31, Ground: 460}}
	text := ""
	seen := map[string]bool{}
	for i := len(accepted) - 1; i >= 0; i-- {
		if a := accepted[i]; !strings.Contains(a.text, "[[obstruction]]") || !seen["obstruction"] {
			seen["obstruction"] = seen["obstruction"] || strings.Contains(a.text, "[[obstruction]]")
			text += a.text
			a.want(&want)
		}
	}
	job, faults := parse([]byte(head+text), "a.toml")
	require.Empty(t, faults)
	assert.Equal(t, want, job)
}
