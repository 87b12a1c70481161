package vehicles

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
)

// What the format's additions say, and how each is refused: direct tapes, the outline, the deck, what is drilled and relieved.

const (
	drilledCut = "[cut]\nat = [1210, 240]\nacross = 127\n" // three lines
	sawnCut    = "[built.cut]\nat = [1210, 240]\nacross = 127\n"
	directTank = drilledCut + "[[cut.direct]]\nto = \"tank\"\n"
)

var brokenAdditions = []brokenPart{
	// Direct tapes.
	{drilledCut + "[[cut.direct]]\ngap = 500", 4, `to is missing`},
	{directTank, 4, `gap is missing`},
	{directTank + "gap = -1", 6, `gap is -1; it must be a reading of 0 or more, without L, R and +`},
	{directTank + "gap = \"L 240\"", 6, `gap is "L 240"; it must be a reading of 0 or more, without L, R and +`},
	{directTank + "gap = \"R240mm\"", 6, `gap is "R240mm"`},
	{directTank + "gap = \"+84\"", 6, `gap is "+84"`},
	{directTank + "gap = \"-5 mm\"", 6, `gap is "-5 mm"`},
	{directTank + "gap = \"50x\"", 6, `gap: "50x"`},
	{directTank + "gap = 20001", 6, `gap is 20001`},
	{directTank + "gap = nan", 6, `gap is nan`},
	{directTank + "gap = true", 6, `gap is true; it must be a reading`},
	{directTank + "gap = [500]", 6, `gap is [500]`},
	{directTank + "gap = 500\nform = 1", 7, `form is an unknown key`},
	{drilledCut + "direct = 500", 4, `direct is 500; it must be tables`},
	{drilledCut + "[cut.direct]\nto = \"tank\"\ngap = 500", 4, `direct is a table; it must be tables`},

	// What is recorded of the work.
	{"[[done]]\nat = 2026-11-27", 1, `done 1: step is missing`},
	{"[[done]]\nstep = \"pilot-loked\"", 2, `step is "pilot-loked", which is not known; did you mean "pilot-looked"?`},
	{"[[done]]\nstep = 7", 2, `step is 7`},
	{"[[done]]\nstep = \"stands\"\n[[done]]\nstep = \"stands\"", 4, `done "stands": step is recorded twice: put both into one; the first is on line 11`},
	{"[[done]]\nstep = \"stands\"\nat = \"2026-11-27\"", 3, `done "stands": at is "2026-11-27"; it must be a date and time like 2026-11-27T10:15:00`},
	{"[[done]]\nstep = \"stands\"\nat = 2026-11-27T10:15:00Z", 3, `at is a date or time; it must be a date and time like 2026-11-27T10:15:00, without quotes and without a zone`},
	{"[[done]]\nstep = \"stands\"\nat = 10:15:00", 3, `at is a date or time`},
	{"[[done]]\nstep = \"stands\"\nvalue = 3", 3, `value is 3; nothing is measured in this step: put it into note`},
	{"[[done]]\nstep = \"co-inside\"\nvalue = -1", 3, `value is -1; it must be 0 or more, in ppm`},
	{"[[done]]\nstep = \"co-inside\"\nvalue = \"0\"", 3, `value is "0"; it must be a number`},
	{"[[done]]\nstep = \"co-inside\"\nvalue = nan", 3, `value is nan`},
	{"[[done]]\nstep = \"retorque\"\ndue = 2026-12-11T10:00:00", 3, `due is a date or time; it must be a date like`},
	{"[[done]]\nstep = \"stands\"\nnote = 5", 3, `note is 5; it must be a text`},
	{"[[done]]\nstep = \"stands\"\nphotos = \"a.jpg\"", 3, `photos is "a.jpg"; it must be a list of file names`},
	{"[[done]]\nstep = \"stands\"\nphotos = [\"a.jpg\", \"../b.jpg\"]", 3, `photos, value 2 is "../b.jpg"; it must be a file's name alone, without / \ : and commas`},
	{"[[done]]\nstep = \"stands\"\nphotos = [\"c\\\\d.jpg\"]", 3, `a file's name alone`},
	{"[[done]]\nstep = \"stands\"\nphotos = [\"..\"]", 3, `photos, value 1 is ".."; it must be the name of a file`},
	{"[[done]]\nstep = \"stands\"\nphotos = [7]", 3, `photos, value 1 is 7; it must be the name of a file`},
	{"[[done]]\nstep = \"stands\"\nphoto = [\"a.jpg\"]", 3, `photo is an unknown key; did you mean photos?`},
	{"done = 5", 1, `done`},
	{"[done]\nstep = \"stands\"", 1, `done is a table; it must be tables, each under [[done]]`},

	// What was made otherwise.
	{"[built]\ncut = 5", 2, `built: cut is 5; it must be a table`},
	{"[built.cutt]\nat = [1, 2]", 1, `built: cutt is an unknown key; did you mean cut?`},
	{"[built.cut]\nat = [1, 2]", 1, `built: cut.across is missing`},
	{"[built.exhaust]\nacross = 26\npath = [[1, 2]]", 3, `built: exhaust.path, point 1`},
	{"[cut]\nat = [1, 2]\nacross = 127\nsawn = { x = 1222 }", 4, `cut: sawn is an unknown key`},
	{sawnCut + "sawn = 5", 4, `built: cut.sawn is 5; it must be a table`},
	{sawnCut + "sawn = {}", 4, `built: cut.sawn is empty: give it x, y or both, as sawn = { x = 1222, y = "L 652" }`},
	{sawnCut + "sawn = { x = \"L 652\" }", 4, `built: cut.sawn.x: "L 652"`},
	{sawnCut + "sawn = { z = 5 }", 4, `built: cut.sawn.z is an unknown key`},
	{sawnCut + "sawn = { x = \"+84\" }", 4, `as built: cut: sawn.x: +84: it runs on, but nothing stands before it`},
	{"[exhaust]\nacross = 26\npath = [[1, 2, 3]]\ntaped = [\"1, 2, 3\"]", 4, `exhaust: taped is an unknown key`},
	{"[built.exhaust]\nacross = 26\npath = [[1, 2, 3]]\ntaped = [\"1, 2, 3\", \"\"]", 4, `exhaust.taped is`},
	{"[built.exhaust]\nacross = 26\npath = [[1, 2, 3]]\ntaped = [5]", 4, `exhaust.taped, value 1 is 5; it must be a text of one line in quotes`},
	{"[built.wish]\nat = [1, 2]", 1, `built: wish is an unknown key`},
	{"[built.exhaust]\nacross = 26\npath = [[1, 2, 3]]\nshielded = [\"no such thing\"]", 4, `as built: exhaust: shielded, value 1 is "no such thing", and no obstruction has that name`},

	// Cut and floor.
	{drilledCut + "relieved = 0", 4, `relieved is 0; it must be more than 0`},
	{drilledCut + "relieved = \"180\"", 4, `relieved is "180"`},
	{drilledCut + "pilot = 127.5", 4, `pilot is 127.5; it must be less than across, 127`},

	// What is drilled for the heater.
	{"[heater]\nbolts = 80", 2, `bolts is 80; it must be a list of points [[u, v], ...] in mm`},
	{"[heater]\nbolts = [80, 60]", 2, `bolts is [80, 60]; it must be a list of points [[u, v], ...] in mm`},
	{"[heater]\nbolts = [[80, 60], [-80]]", 2, `[-80]; it must be a point [u, v] of two numbers of mm`},
	{"[heater]\nbolts = [\n[80, 60],\n[-80, \"60\"]]", 4, `"60"`},
	{"[heater]\nbolts = [[80, 20001]]", 2, `20001`},
	{"[heater]\nbolt = 0", 2, `bolt is 0`},
	{"[heater]\npacked = 1", 2, `packed is 1; it must be true or false`},
	{"[heater]\nspace = { rear = \"50\" }", 2, `space.rear is "50"`},
	{"[heater]\nspace = { sides = nan }", 2, `space.sides is nan`},
	{"[heater]\nspace = { top = -0.5 }", 2, `space.top is -0.5`},
	{"[heater]\nduct_across = 0", 2, `duct_across is 0`},
	{"[heater]\nreturn_area = 0", 2, `return_area is 0`},

	// What hangs on runs, and what stands before them.
	{exhaust + "drains = [-1]", 4, `drains`},
	{exhaust + "drains = \"end\"", 4, `drains is "end"`},
	{exhaust + "muffler = { leg = 1, start = 0, length = 1, across = 68, drain = \"up\" }", 4, `muffler.drain is "up"; it must be one of: down, aside`},
	{exhaust + "shielded = [\"brake pipe\", 7]", 4, `shielded, value 2 is 7; it must be the name of an obstruction`},
	{fuel + "drains = [5]", 4, `drains is an unknown key`},
	{fuel + "bend = 60", 4, `bend is an unknown key`},
	{fuel + "muffler = { leg = 1 }", 4, `muffler is an unknown key`},
	{fuel + "hole = 0", 4, `hole is 0`},
	{fuel + "from = 7", 4, `from is 7`},
	{exhaust + "pump = { leg = 1, start = 0, tilt = 1 }", 4, `pump is an unknown key`},
	{"[wish]\nwithin = 20", 1, `wish: at is missing`},
	{"[wish]\nat = [1, 2]\nwithin = 0", 3, `within is 0`},

	// Overall readings.
	{crossmember + placed + "total = {}", 6, `total is empty: give it x, y or both`},
	{crossmember + placed + "total = 1540", 6, `total is 1540; it must be a table`},
	{crossmember + placed + "total = { z = 5 }", 6, `total.z is an unknown key`},
	{crossmember + placed + "total = { x = \"L 5\" }", 6, `L and R count across`},
	{crossmember + placed + "total = { y = 5 }", 6, `where a chain of + readings ends`},
	{crossmember + placed + "total = { x = \"+5\" }", 6, `total is one reading from the bumper`},
	{crossmember + placed + "holds = \"water\"", 6, `holds is "water"; it must be one of: diesel, petrol`},
}

// acceptedAdditions are right, each alone behind the head of a file.
var acceptedAdditions = []struct {
	name, text string
	want       func(*Job)
}{
	{"direct tapes in every dress", directTank + "gap = 512\n[[cut.direct]]\nto = \"rail\"\ngap = \"20 1/4in\"\n[[cut.direct]]\nto = \"pipe\"\ngap = 0\n", func(j *Job) {
		j.Cut = &Cut{At: [2]float64{1210, 240}, Across: 127, Direct: List[DirectTape]{
			{"tank", bareX(512)}, {"rail", mustSay("20 1/4in", survey.X)}, {"pipe", bareX(0)},
		}}
	}},
	{"a heater that is bolted", "[heater]\nbolts = [[80, 60], [-80.5, 60]]\npacked = true\n", func(j *Job) {
		h, _ := HeaterClass(DefaultHeaterClass)
		h.Bolts, h.Packed, h.Given = [][2]float64{{80, 60}, {-80.5, 60}}, true, HasBolts|HasPacked
		j.Heater = &h
	}},
	{"no bolts, as somebody said", "[heater]\nclass = \"5 kW\"\nbolts = []\nbolt = 9\npacked = false\n", func(j *Job) {
		h, _ := HeaterClass("5 kW")
		h.Bolt, h.Given = 9, HasClass|HasBolts|HasBolt|HasPacked
		j.Heater = &h
	}},
	{"shields by name, drains", exhaust + "shielded = [\"brake pipe\", \"tank\"]\ndrains = [900, 0]\n", func(j *Job) {
		j.Exhaust = &Run{
			Across: 26, Path: []RunPoint{{1245, 265, 110}, {900, 620, 160}, {300, 640, 185}},
			Hanging: Hanging{Drains: []float64{900, 0}}, Shielded: Shields{Names: []string{"brake pipe", "tank"}},
		}
	}},
	{"where the fuel line begins and passes the floor", fuel + "from = \"tank\"\nhole = 14\nclips = [100]\n", func(j *Job) {
		j.Fuel = &Run{
			Across: 4.5, Path: []RunPoint{{2600, 500, -72}, {2500, 200, 40}, {1210, 205, 45}},
			Supply: Supply{From: "tank", Hole: Some(14)}, Hanging: Hanging{Clips: []float64{100}},
		}
	}},
	{"a petrol tank and an overall reading", "[[obstruction]]\nname = \"tank\"\nkind = \"fuel tank\"\nx = [652, \"+84\"]\ny = [-850, 850]\nholds = \"petrol\"\ntotal = { x = 737 }\n", func(j *Job) {
		j.Obstructions = List[Obstruction]{{
			Name: "tank", Kind: "fuel tank", Measured: true, Holds: Petrol, Total: Totals{bareX(737), survey.Reading{}},
			Place: Place{X: Pair{bareX(652), mustSay("+84", survey.X)}, Y: Pair{bareX(-850), bareX(850)}},
		}}
	}},
	{"another van's door, and a loom in the floor", door + "path = [[1900, -890], [3000, -890]]\ndrop = [-900, 0]\nmeasured = false\n" +
		box + "kind = \"wiring\"\ncentre = [700, \"L 240\"]\nacross = 20\nrise = [-12, 0]\nmeasured = false\n", func(j *Job) {
		j.Openings = List[Opening]{{
			Name: "sliding door", Kind: "door", Drop: Span{-900, 0, true}, Unconfirmed: true,
			Place: Place{Shape: Piped, Path: List[Pair]{{bareX(1900), bareX(-890)}, {bareX(3000), bareX(-890)}}},
		}}
		j.Fittings = List[Fitting]{{
			Name: "battery box", Kind: "wiring", Rise: Span{-12, 0, true}, Unconfirmed: true,
			Place: Place{Shape: Disc, Centre: Pair{bareX(700), mustSay("L 240", survey.Y)}, Across: Some(20)},
		}}
	}},
	{"a wish that says no distance", "[wish]\nat = [1500, -20.5]\n", func(j *Job) { j.Wish = &Wish{At: [2]float64{1500, -20.5}} }},
}

func TestEveryAdditionSaysWhatItSays(t *testing.T) {
	for _, a := range acceptedAdditions {
		want := Job{Ref: "TL-07", Floor: Floor{From: 40, Length: 3200, Width: 1780, Thickness: 31, Ground: 460}}
		a.want(&want)
		job, faults := parse([]byte(head+a.text), "a.toml")
		require.Empty(t, faults, a.name)
		assert.Equal(t, want, job, a.name)
		again, faults := parse(job.Format(), "b.toml")
		require.Empty(t, faults, a.name)
		assert.Equal(t, want, again, "%s: written and read", a.name)
	}
}

// The floor's own additions stand in its table, which is in the head of every file.
func TestTheFloorsOutlineAndDeck(t *testing.T) {
	floor := func(more string) string { return strings.Replace(head, "ground = 460\n", "ground = 460\n"+more, 1) }
	require.NotEqual(t, head, floor("x"))
	line := strings.Count(floor(""), "\n") + 1
	for text, want := range map[string]func(*Floor){
		"":                               func(*Floor) {},
		"deck = \"timber\"":              func(f *Floor) { f.Deck = Timber },
		"deck = \"steel\"":               func(f *Floor) { f.Deck = Steel },
		"outline = { left = 940 }":       func(f *Floor) { f.Outline.Left = Some(940) },
		"outline = { rear = -120.5 }":    func(f *Floor) { f.Outline.Rear = Some(-120.5) },
		"outline = { right = 1, rear=0}": func(f *Floor) { f.Outline = Outline{Right: Some(1), Rear: Some(0)} },
		"[floor.outline]\nleft = 900\nright = 901\nrear = 2\n": func(f *Floor) { f.Outline = Outline{Some(900), Some(901), Some(2)} },
	} {
		job, err := ParseJob([]byte(floor(text)), "a.toml")
		require.NoError(t, err, text)
		f := Floor{From: 40, Length: 3200, Width: 1780, Thickness: 31, Ground: 460}
		want(&f)
		assert.Equal(t, f, job.Floor, text)
		again, err := ParseJob(job.Format(), "b.toml")
		require.NoError(t, err, text)
		assert.Equal(t, f, again.Floor, text)
	}
	for text, words := range map[string]string{
		"deck = \"wood\"":               `deck is "wood"; it must be one of: steel, timber`,
		"deck = 1":                      `deck is 1; it must be one of: steel, timber`,
		"outline = 900":                 `outline is 900; it must be a table`,
		"outline = { left = 0 }":        `outline.left is 0; it must be more than 0`,
		"outline = { right = -900 }":    `outline.right is -900`,
		"outline = { rear = inf }":      `outline.rear is +inf`,
		"outline = { front = 5 }":       `outline.front is an unknown key`,
		"outline = { left = \"L 5\" }":  `outline.left is "L 5"`,
		"outline = { rear = -20001.0 }": `outline.rear is -20001`,
	} {
		_, err := ParseJob([]byte(floor(text)), "jobs/tl.toml")
		require.Error(t, err, text)
		assert.Contains(t, err.Error(), words)
		assert.Contains(t, err.Error(), fmt.Sprintf(":%d: ", line), text)
	}
}

// Every set of sides of the space that a file may say: those stand, the others are the class's, and each is written back or not as it
// was said.
func TestEverySideOfTheSpaceIsSaidByItself(t *testing.T) {
	keys := []string{"front", "rear", "sides", "top"}
	for _, class := range HeaterClasses() {
		usual, _ := HeaterClass(class)
		for set := range 16 {
			var said []string
			want := [4]float64{usual.Space.Front, usual.Space.Rear, usual.Space.Sides, usual.Space.Top}
			for i, key := range keys {
				if set>>i&1 == 1 {
					want[i] = float64(10*i + set)
					said = append(said, fmt.Sprintf("%s = %v", key, want[i]))
				}
			}
			text := fmt.Sprintf("class = %q\n", class)
			if said != nil {
				text += "space = { " + strings.Join(said, ", ") + " }\n"
			}
			for ends := range 4 {
				duct := Ends{ends&1 != 0, ends&2 != 0}
				h := heaterOf(t, text+"duct = "+wordList(duct.Words())+"\n")
				assert.Equal(t, Space{want[0], want[1], want[2], want[3]}, h.Space, text)
				kept := want // a duct takes the place of free air at its end, unless the file says what is kept there
				for i, ducted := range []bool{duct.Front, duct.Rear} {
					if ducted && set>>i&1 == 0 {
						kept[i] = 60
					}
				}
				assert.Equal(t, Space{kept[0], kept[1], kept[2], kept[3]}, h.Kept(), "%s, ducts %v", text, duct.Words())
				assert.InDelta(t, float64(duct.Count())*0.785398163397448*usual.DuctAcross*usual.DuctAcross/100, h.DuctArea(), 1e-9)
			}
		}
	}
}
