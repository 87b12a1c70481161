package vehicles

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// head is the start of a whole job; what is wrong stands on the lines behind it.
const head = `format = 1
[job]
ref = "TL-07"
[floor]
from = 40
length = 3200
width = 1780
thickness = 31
ground = 460
`

// box, pipe and so on are right, for what is wrong to be put behind.
const (
	crossmember = "[[obstruction]]\nname = \"rear crossmember\"\nkind = \"crossmember\"\n"
	placed      = "x = [652, \"+84\"]\ny = [-850, 850]\n"
	pipe        = "[[obstruction]]\nname = \"brake pipe\"\nkind = \"brake line\"\n"
	door        = "[[opening]]\nname = \"sliding door\"\nkind = \"door\"\n"
	box         = "[[fitting]]\nname = \"battery box\"\n"
	tie         = "[[tie]]\nname = \"seat bolt\"\n"
	exhaust     = "[exhaust]\nacross = 26\npath = [[1245, 265, 110], [900, 620, 160], [300, 640, 185]]\n"
	fuel        = "[fuel]\nacross = 4.5\npath = [[2600, 500, -72], [2500, 200, 40], [1210, 205, 45]]\n"
)

type brokenPart struct {
	text  string
	line  int
	words string
}

// broken are parts of job files with one thing wrong each, on line `line` of the part, and words the error must say.
var broken = []brokenPart{
	// Numbers.
	{pipe + "path = [[1, 2], [3, 4]]\nacross = -8", 5, `obstruction "brake pipe": across is -8; it must be more than 0`},
	{pipe + "path = [[1, 2], [3, 4]]\nacross = 0", 5, `across is 0`},
	{pipe + "path = [[1, 2], [3, 4]]\nacross = nan", 5, `across is nan`},
	{pipe + "path = [[1, 2], [3, 4]]\nacross = -inf", 5, `across is -inf`},
	{pipe + "path = [[1, 2], [3, 4]]\nacross = 20000.5", 5, `across is 20000.5`},
	{pipe + "path = [[1, 2], [3, 4]]\nacross = \"8\"", 5, `across is "8"; it must be more than 0`},
	{pipe + "path = [[1, 2], [3, 4]]\nacross = [8]", 5, `across is [8]`},
	{pipe + "path = [[1, 2], [3, 4]]\nacross = true", 5, `across is true`},
	{crossmember + placed + "turn = inf", 6, `turn is +inf; it must be an angle`},
	{crossmember + placed + "turn = \"5\"", 6, `turn is "5"`},
	{crossmember + placed + "taped_at = 30000", 6, `taped_at is 30000`},
	{crossmember + placed + "travel = -1", 6, `travel is -1; it must be from 0 to 20000 mm`},
	{"[check]\nruns = \"half\"", 2, `check: runs is "half"; it must be one of: full`},
	{"[check]\nrun = \"full\"", 2, `check: run is an unknown key`},
	{crossmember + placed + "taped_at = 2026-11-25", 6, `taped_at is a date`},
	{"[datum]\nleft = -890", 2, `datum: left is -890; it must be more than 0`},
	{"[datum]\nframes = -2", 2, `frames is -2; it must be from 0 to 20000`},
	{"[datum]\nhook_below = 20001", 2, `hook_below is 20001`},
	{"[datum]\npins = 0", 2, `pins is 0`},
	{"[tape]\nread = -1", 2, `tape: read is -1`},
	{"[tape]\nclass = \"IV\"", 2, `class is "IV"; it must be one of: I, II, III`},
	{"[tape]\nclass = 2", 2, `class is 2; it must be one of: I, II, III`},

	// Places.
	{crossmember + "drop = [0, 95]", 1, `obstruction "rear crossmember" has no place`},
	{crossmember + "x = [652, 736]", 1, `y is missing`},
	{crossmember + "y = [652, 736]", 1, `x is missing`},
	{crossmember + "x = [652]\ny = [1, 2]", 4, `x is [652]; it must be two readings`},
	{crossmember + "x = 652\ny = [1, 2]", 4, `x is 652; it must be two readings`},
	{crossmember + "x = [652, 736, 800]\ny = [1, 2]", 4, `x is [652, 736, 800]`},
	{crossmember + "x = [652, \"84+\"]\ny = [1, 2]", 4, `x, value 2: "84+"`},
	{crossmember + "x = [\"L 240\", 736]\ny = [1, 2]", 4, `x, value 1: "L 240": L and R count across`},
	{crossmember + "x = [\"65,2cm\", 736]\ny = [1, 2]", 4, `"65,2cm": a comma`},
	{crossmember + "x = [652, 736]\ny = [\"L240\", \"X 310\"]", 5, `y, value 2: "X 310"`},
	{crossmember + "x = [652, 736]\ny = [\"3/0in\", 5]", 5, `the bottom of the fraction is 0`},
	{crossmember + "x = [652, nan]\ny = [1, 2]", 4, `x, value 2 is nan; it must be a length`},
	{crossmember + "x = [652, 20001]\ny = [1, 2]", 4, `x, value 2 is 20001`},
	{crossmember + "x = [652, \"21m\"]\ny = [1, 2]", 4, `no length may be more than 20000 mm`},
	{crossmember + "x = [652, true]\ny = [1, 2]", 4, `x, value 2 is true; it must be a reading`},
	{crossmember + "x = [\n  652, # nearest\n  \"736\n\"]\ny = [1, 2]", 6, `not TOML: strings cannot contain newlines`},
	{crossmember + "x = [\n  652, # nearest\n  \"7x6\",\n]\ny = [1, 2]", 6, `x, value 2: "7x6"`},
	{crossmember + "x = [736, 652]\ny = [1, 2]", 4, `rear crossmember`},
	{crossmember + "x = [736, 736]\ny = [1, 2]", 4, `rear crossmember`},
	{crossmember + "x = [\"+5\", 736]\ny = [1, 2]", 4, `nothing stands before`},
	{crossmember + "x = [652, 736]\ny = [\"+5\", 736]", 5, `nothing stands before`},
	{crossmember + placed + "path = [[1, 2], [3, 4]]\nacross = 8", 6, `path is one form of place too many`},
	{crossmember + placed + "centre = [1, 2]\nacross = 8", 6, `centre is one form of place too many`},
	{crossmember + placed + "across = 8", 6, `across goes with path or centre`},
	{pipe + "path = [[1, 2], [3, 4]]", 1, `obstruction "brake pipe": across is missing`},
	{pipe + "path = [[1, 2]]\nacross = 8", 4, `path is [[1, 2]]; it must be a list of two points or more`},
	{pipe + "path = []\nacross = 8", 4, `path is []`},
	{pipe + "path = \"there\"\nacross = 8", 4, `path is "there"`},
	{pipe + "path = [[1, 2], [3, 4, 5]]\nacross = 8", 4, `path, point 2 is [3, 4, 5]; it must be a point [x, y]`},
	{pipe + "path = [\n[1, 2],\n[3, \"Q 4\"],\n]\nacross = 8", 6, `path, point 2, y: "Q 4"`},
	{pipe + "path = [1, 2]\nacross = 8", 4, `path is [1, 2]; it must be a list of two points or more`},
	{pipe + "path = [[1, 2], [3, 4]]\nacross = 8\nturn = 5", 6, `turn goes with x and y`},
	{pipe + "centre = [420, 0]", 1, `across is missing`},
	{pipe + "centre = [420]\nacross = 690", 4, `centre is [420]; it must be a point`},
	{pipe + "centre = [420, 0, 5]\nacross = 690", 4, `centre is [420, 0, 5]`},

	// Heights.
	{crossmember + placed + "drop = [95, 0]", 6, `drop is [95, 0], the wrong way round: write the top first`},
	{crossmember + placed + "drop = [95]", 6, `drop is [95]; it must be a list of 2 numbers`},
	{crossmember + placed + "drop = 95", 6, `drop is 95`},
	{crossmember + placed + "drop = [0, \"95mm\"]", 6, `drop, value 2 is "95mm"`},
	{crossmember + placed + "drop = [0, inf]", 6, `drop, value 2 is +inf`},
	{door + "path = [[1900, -890], [3000, -890]]", 1, `opening "sliding door": drop is missing`},
	{box + "x = [1900, 2300]\ny = [300, 840]", 1, `fitting "battery box": rise is missing`},
	{box + "x = [1900, 2300]\ny = [300, 840]\nrise = [400, 0]", 5, `write the foot first`},
	{box + "x = [1900, 2300]\ny = [300, 840]\ndrop = [0, 400]", 5, `drop is an unknown key`},

	// Names, kinds, flags.
	{"[[obstruction]]\nkind = \"crossmember\"\n" + placed, 1, `obstruction 1: name is missing`},
	{"[[obstruction]]\nname = \"\"\nkind = \"crossmember\"\n" + placed, 2, `name is ""`},
	{"[[obstruction]]\nname = 7\nkind = \"crossmember\"\n" + placed, 2, `name is 7; it must be a text`},
	{"[[obstruction]]\nname = \"a\\nb\"\nkind = \"crossmember\"\n" + placed, 2, `name is "a\nb"; it must be a text of one line`},
	{"[[obstruction]]\nname = \"rail\"\n" + placed, 1, `kind is missing: it must be one of: crossmember, chassis rail`},
	{"[[obstruction]]\nname = \"rail\"\nkind = \"crosmember\"\n" + placed, 3, `did you mean "crossmember"?`},
	{"[[obstruction]]\nname = \"rail\"\nkind = \"Brake Line\"\n" + placed, 3, `did you mean "brake line"?`},
	{"[[obstruction]]\nname = \"rail\"\nkind = \"zzzzzzzzzzzz\"\n" + placed, 3, `it must be one of: crossmember`},
	{"[[obstruction]]\nname = \"rail\"\nkind = 3\n" + placed, 3, `kind is 3`},
	{"[[opening]]\nname = \"d\"\nkind = \"doors\"\npath = [[1, 2], [3, 4]]\ndrop = [0, 5]", 3, `did you mean "door"?`},
	{crossmember + placed + crossmember + placed, 7, `obstruction "rear crossmember": name is used twice`},
	{tie + "below = [1, 2]\nabove = [1, 2]\n" + tie + "below = [9, 2]\nabove = [9, 2]\n", 6, `the first is on line 11`},
	{crossmember + placed + "measured = \"no\"", 6, `measured is "no"; it must be true or false`},
	{crossmember + placed + "measured = 0", 6, `measured is 0`},

	// Unknown keys and tables.
	{crossmember + placed + "dorp = [0, 95]", 6, `obstruction "rear crossmember": dorp is an unknown key; did you mean drop?`},
	{crossmember + placed + "Drop = [0, 95]", 6, `did you mean drop?`},
	{crossmember + placed + "colour = \"red\"", 6, `colour is an unknown key; known here: name, kind`},
	{crossmember + "X = [652, 736]\ny = [1, 2]", 4, `X is an unknown key; did you mean x?`},
	{pipe + "paht = [[1, 2], [3, 4]]\nacross = 8", 4, `did you mean path?`},
	{crossmember + placed + "drop.top = 5", 6, `drop is a table`},
	{"[obstructions]\nname = \"x\"", 1, `obstructions is an unknown key; did you mean obstruction?`},
	{"[[obstuction]]\nname = \"x\"", 1, `did you mean obstruction?`},
	{"[obstruction]\nname = \"x\"", 1, `obstruction is a table; it must be tables, each under [[obstruction]]`},
	{"obstruction = [1, 2]", 1, `floor: obstruction is an unknown key`},
	{"[[cut]]\nat = [1, 2]\nacross = 127", 1, `cut is a list of tables; it must be a table`},
	{"[cut.hole]\nacross = 5\n[cut]\nat = [1, 2]\nacross = 127", 1, `cut: hole is an unknown key`},
	{"[exhaust]\nacross = 26\npath = [[1, 2, 3]]\nmufler = { leg = 1 }", 4, `did you mean muffler?`},
	{"[intake]\nacross = 26\npath = [[1, 2, 3]]\nmuffler = { leg = 1 }", 4, `intake: muffler is an unknown key`},

	// Ties, wheels.
	{tie + "below = [1458, \"L 320\"]", 1, `tie "seat bolt": above is missing`},
	{tie + "below = [1458, \"L 320\"]\nabove = [1458]", 4, `above is [1458]`},
	{tie + "below = [1458, \"L 320\"]\nabove = [1458, \"+5\"]", 4, `nothing stands before`},
	{tie + "below = [1458, \"L 320\"]\nabove = [1, 2]\nuse = 1", 5, `use is 1; it must be true or false`},
	{"[[wheel]]\nacross = 690", 1, `wheel 1: at is missing`},
	{"[[wheel]]\nat = [900, 780]\nwidth = -1", 3, `wheel 1: width is -1`},

	// Heater, cut, runs.
	{"[heater]\nclass = \"3 kW\"", 2, `heater: class is "3 kW"; it must be one of: 2 kW, 4 kW`},
	{"[heater]\nclass = 2", 2, `class is 2; it must be one of: 2 kW`},
	{"[heater]\nbody = [320, 125]", 2, `body is [320, 125]; it must be a list of 3 numbers`},
	{"[heater]\nbody = [320, 125, 0]", 2, `body, value 3 is 0`},
	{"[heater]\nspace = { front = -1 }", 2, `heater: space.front is -1`},
	{"[heater]\nduct = \"front\"", 2, `duct is "front"; it must be a list of some of: front, rear`},
	{"[heater]\nduct = [\"front\", \"left\"]", 2, `duct, value 2 is "left"; it must be one of: front, rear`},
	{"[heater]\nair = \"cab\"", 2, `air is "cab"; it must be one of: living space, locker, outside`},
	{"[heater]\nstored = []", 2, `stored is []; name what is kept there, or ["nothing"] alone`},
	{"[heater]\nstored = [\"petrol\", \"nothing\"]", 2, `stored is ["petrol", "nothing"]; name what is kept there`},
	{"[heater]\nstored = [\"petrol\", 7]", 2, `stored, value 2 is 7`},
	{"[heater]\nspace = 50", 2, `space is 50; it must be a table`},
	{"[heater]\nspace = { front = 1, left = 2 }", 2, `space.left is an unknown key`},
	{"[heater]\nspace = { front = 1,\n rear = 2 }", 2, `a table in braces stays on one line`},
	{"[heater]\nspace = { front = 1, }", 2, `a comma stands before the closing brace`},
	{"[cut]\nat = [1210, 240]", 1, `cut: across is missing`},
	{"[cut]\nacross = 127", 1, `cut: at is missing`},
	{"[cut]\nat = [1210, 240]\nacross = 0", 3, `across is 0`},
	{"[cut]\nat = [1210, \"L 652\"]\nacross = 127", 2, `at, value 2 is "L 652"`},
	{"[cut]\nat = [1210, 240]\nacross = 127\npilot = 127", 4, `pilot is 127; it must be less than across, 127`},
	{"[cut]\nat = [1210, 240]\nacross = 127\nrelieved = 126", 4, `relieved is 126; it must be at least across, 127`},
	{"[cut]\nat = [1210, 240]\nacross = 127\ndrilled = [1222, \"+5\"]", 4, `nothing stands before`},
	{"[cut]\nat = [1210, 240]\nacross = 127\ndrilled = 1222", 4, `drilled is 1222; it must be a point`},
	{"[exhaust]\nacross = 26", 1, `exhaust: path is missing`},
	{"[exhaust]\nacross = 26\npath = []", 3, `path has 0 points; it must have at least 1`},
	{"[exhaust]\nacross = 26\npath = [\n [1, 2, 3],\n [1, 2]]", 5, `path, point 2 is [1, 2]; it must be a point [x, y, drop]`},
	{"[exhaust]\nacross = 26\npath = [[1, 2, \"3\"]]", 3, `path, point 1, drop is "3"`},
	{exhaust + "bend = -1", 4, `bend is -1`},
	{exhaust + "clips = [250, -600]", 4, `clips, value 2 is -600`},
	{exhaust + "clips = 250", 4, `clips is 250; it must be a list of numbers`},
	{exhaust + "shielded = \"yes\"", 4, `shielded is "yes"`},
	{exhaust + "muffler = { leg = 4, start = 0, length = 180, across = 68 }", 4, `muffler.leg is 4; it must be a whole number from 1 to 3`},
	{exhaust + "muffler = { leg = 0, start = 0, length = 180, across = 68 }", 4, `muffler.leg is 0`},
	{exhaust + "muffler = { leg = 1.5, start = 0, length = 180, across = 68 }", 4, `muffler.leg is 1.5`},
	{exhaust + "muffler = { leg = 1, start = 0, length = 180 }", 4, `muffler.across is missing`},
	{exhaust + "[exhaust.muffler]\nleg = 1\nstart = -5\nlength = 180\nacross = 68", 6, `muffler.start is -5`},
	{fuel + "kind = \"petroleum\"", 4, `kind is "petroleum"; it must be one of: diesel, petrol`},
	{fuel + "filter = { leg = 3, start = 100 }", 4, `filter.leg is 3; it must be a whole number from 1 to 2`},
	{fuel + "filter = { leg = 1 }", 4, `filter.start is missing`},
	{exhaust + "filter = { leg = 1, start = 0 }", 4, `filter is an unknown key`},
	{fuel + "pump = { leg = 3, start = 100, tilt = 45 }", 4, `pump.leg is 3; it must be a whole number from 1 to 2`},
	{fuel + "pump = { leg = 1, start = 100 }", 4, `pump.tilt is missing`},
	{fuel + "pump = { leg = 1, start = 100, tilt = 45, hz = 0 }", 4, `pump.hz is 0`},
	{fuel + "tank = { rise = [50, 350] }", 4, `tank.at is missing`},
	{fuel + "tank = { at = [1, 2], rise = [350, 50] }", 4, `tank.rise is [350, 50], the wrong way round`},
	{fuel + "tank = { at = [1, 2], rise = [0, 50], drop = [0, 50] }", 4, `tank.drop stands beside rise`},
	{"[fuel]\nkind = \"diesel\"\nacross = 4.5\npath = [[1, 2, 3]]", 4, `path has 1 points; it must have at least 2`},
	{"[fuel]\npath = [[1, 2, 3], [4, 5, 6]]", 1, `fuel: across is missing`},

	{exhaust + "muffler = { leg = 1, start = 19000, length = 180, across = 68 }\n[heater]\n[cut]\nat = [1210, 240]\nacross = 127", 4, `mm long`},
	{exhaust + "clips = [\n250,\n15000]\n[heater]\n[cut]\nat = [1210, 240]\nacross = 127", 6, `clip 2`},
	{fuel + "filter = { leg = 1, start = 15000 }", 4, `mm long`},
	{fuel + "pump = { leg = 1, start = 15000, tilt = 45 }", 4, `mm long`},

	// Readings that can't be: the tape sloped by more than it read, a chain from nowhere, sides swapped.
	{"[datum]\nhook_below = 150\n" + crossmember + "x = [100, 736]\ny = [1, 2]\ndrop = [0, 5]", 6, `measure again, or correct the heights`},
	{tie + "below = [0, 500]\nabove = [0, -500]\n[[tie]]\nname = \"b\"\nbelow = [1000, 300]\nabove = [1000, -300]\n" +
		"[[tie]]\nname = \"c\"\nbelow = [2000, -700]\nabove = [2000, 700]", 3, `swapped`},

	// Looked and rules.
	{"[looked]\n\"brake lines\" = true", 2, `"brake lines" is no kind of obstruction; did you mean "brake line"?`},
	{"[looked_runs]\n\"gas pip\" = true", 2, `looked_runs: "gas pip" is no kind of obstruction; did you mean "gas pipe"?`},
	{"[looked_openings]\ncrossmember = true", 2, `looked_openings: crossmember is no kind of opening`},
	{"[looked]\n\"brake line\" = \"yes\"", 2, `looked: "brake line" is "yes"`},
	{"[rules]\ncut.reach = 80", 2, `rules: cut is a table: a rule's name with points in it goes in quotes`},
	{"[rules]\n\"cut.reach\" = \"80\"", 2, `"cut.reach" is "80"`},
	{"[rules]\n\"cut.reach\" = nan", 2, `"cut.reach" is nan`},

	// No TOML.
	{"[cut\nat = [1, 2]", 1, `not TOML: expected '.' or ']' to end table name`},
	{"[[wheel]\nat = [1, 2]", 1, `not TOML`},
	{"[cut]\nat = [1, 2]\nat = [1, 3]\nacross = 127", 3, `Key 'cut.at' has already been defined; each key`},
	{"[cut]\nat = [1, 2]\nacross = 127\n[cut]\npilot = 6", 4, `Key 'cut' has already been defined`},
	{"[[obstruction]]\nname = rail", 2, `a text goes in quotes`},
	{"[[obstruction]]\nname = \"rail\nkind = \"other\"", 2, `close the quotes on the same line`},
	{"[looked]\nbrake line = true", 2, `a key with blanks goes in quotes`},
	{"[cut]\nat = [1210 240]", 2, `parting commas`},
	{"[cut]\nat = [1210, 240\nacross = 127", 2, `array terminator`},
	{"[cut]\nat = [1210,\n240\n\nacross = 127", 3, `array terminator`},
	{"[cut]\nat = [1210, 240", 2, `got end of file`},
	{"[exhaust]\npath = [\n[1, 2, 3]\n[4, 5, 6]\n]", 3, `parting commas`},
	{"[heater]\nspace = { front = 1\nyaw = 5", 2, `not TOML`},
	{"[heater]\nspace = { front = 1", 2, `not TOML`},
	{"[heater]\nspace = { front = 1 rear = 2 }", 2, `not TOML`},
	{"[extra]\na = \"\"\"\nnever\nclosed\n", 2, `too early`},
	{"[extra]\na = \"\"\"\nb\n\"\"\"\na = 5", 5, `already been defined`},
	{"[extra]\na = 5\na = \"\"\"\nb\n\"\"\"", 3, `already been defined`},
	{"[extra]\na = [\n1,\n2]\na = [\n1,\n2]\n", 5, `already been defined`},
	{"[extra]\na.b = 1\na.b = 2\n", 3, `already been defined`},
	{"[extra]\na = 1\n[extra.a]\n", 3, `already been defined`},
	{"[extra]\na = { b = 1, b = 2 }\n", 2, `already been defined`},
	{"[cut]\nacross = 127 mm", 2, `one key = value on a line`},
	{"[cut]\nacross = 1,5", 2, `a point as decimal mark`},
	{"[cut]\nacross =\nat = [1, 2]", 2, `not TOML: expected value but found '\n'`},
	{"[cut]\nacross", 2, `a line is key = value`},
	{"[cut]\nacross = 0127", 2, `leading zeroes`},
	{"[cut]\nacross = True", 2, `true and false are small`},
	{"[cut]\nacross = 99999999999999999999", 2, `out of range`},
	{"[extra]\na = \"\\q\"", 2, `write \\ for a backslash`},
	{"[extra]\na = \"\\x41\"", 2, `\x is no escape`},
	{"[extra]\na = \"\xff\"", 2, `a byte 0xff that is no UTF-8`},
	{"[extra]\na = \"\x00\"", 2, `not TOML`},
	{"[extra]\na = " + strings.Repeat("[", 200), 2, `more than 100 deep`},
	{"[extra]\nb = \"....\"\na" + strings.Repeat(" . a", 200) + " = 1", 3, `more than 100 deep`},
	{"[extra]\nwhen = 2026-13-01", 2, `a date is 2026-11-25`},
	{"[extra]\na = 1\rb = 2", 2, `not TOML`},
}

func TestBrokenFilesGiveOneRightLine(t *testing.T) {
	for _, b := range slices.Concat(broken, brokenAdditions) {
		t.Run(strings.NewReplacer("\n", " ", "/", " ").Replace(b.text), func(t *testing.T) {
			_, err := ParseJob([]byte(head+b.text), "jobs/tl.toml")
			wants(t, err, strings.Count(head, "\n")+b.line, b.words)
		})
	}
}

// The same faults stand on the same lines when the file has the line ends of another system, a byte order mark and
// a text over several lines full of what looks like tables in front.
func TestLinesCountTheSameInAnyDress(t *testing.T) {
	notes := "[extra]\n\"a.b\" = \"\"\"\n[[obstruction]]\nname = \"x\" # \\\" \\\\\n\"\"\"\n'c d'.e = '''\n[cut]''' # ]\n"
	for _, b := range slices.Concat(broken, brokenAdditions) {
		if strings.Contains(b.text, "\r") || strings.Contains(b.text, "[extra]") || strings.Contains(b.words, "line 11") {
			continue
		}
		if strings.HasPrefix(b.text, "[") { // else its first key would be of [extra]
			_, err := ParseJob([]byte(head+notes+b.text), "jobs/tl.toml")
			wants(t, err, strings.Count(head+notes, "\n")+b.line, b.words)
		}
		dos := "\ufeff" + strings.ReplaceAll(head+b.text, "\n", "\r\n")
		_, err := ParseJob([]byte(dos), "jobs/tl.toml")
		wants(t, err, strings.Count(head, "\n")+b.line, "")
	}
}

// brokenHeads are whole files.
var brokenHeads = []struct {
	text  string
	line  int
	words string
}{
	{"", 1, "the file holds nothing: a job file starts with format = 1"},
	{"# a note\n\n", 1, "holds nothing"},
	{"\n[job]\nref = \"x\"\n", 1, "format is missing"},
	{"\nformat = 2\n[what]\never = 1", 2, "format is 2; this program reads format = 1"},
	{"format = 1.0\n", 1, "format is 1"},
	{"format = \"1\"\n", 1, `format is "1"`},
	{"Format = 1\n", 1, "format is missing"},
	{strings.Replace(head, "ref = \"TL-07\"\n", "", 1), 2, "job: ref is missing: it must be a text"},
	{strings.Replace(head, `"TL-07"`, `" "`, 1), 3, `job: ref is " "`},
	{strings.Replace(head, `"TL-07"`, `7`, 1), 3, `job: ref is 7`},
	{strings.Replace(head, "[job]\nref = \"TL-07\"\n", "", 1), 1, "job is missing: it must be a table"},
	{strings.Replace(head, "[floor]", "[extra]", 1), 1, "floor is missing"},
	{strings.Replace(head, "[floor]", "[flor]", 1), 4, "flor is an unknown key; did you mean floor?"},
	{strings.Replace(head, "[floor]", "[[floor]]", 1), 4, "floor is a list of tables; it must be a table"},
	{strings.Replace(head, "[job]", "[[job]]", 1), 2, "job is a list of tables; it must be a table"},
	{strings.Replace(head, "width = 1780\n", "", 1), 4, "floor: width is missing"},
	{strings.Replace(head, "width", "widht", 1), 7, "floor: widht is an unknown key; did you mean width?"},
	{strings.Replace(head, "1780", "0", 1), 7, "floor: width is 0; it must be more than 0"},
	{strings.Replace(head, "1780", "-1780.5", 1), 7, "floor: width is -1780.5"},
	{strings.Replace(head, "3200", "32000", 1), 6, "floor: length is 32000"},
	{strings.Replace(head, "31", "\"31mm\"", 1), 8, `floor: thickness is "31mm"`},
	{strings.Replace(head, "460", "inf", 1), 9, "floor: ground is +inf"},
	{strings.Replace(head, "40", "nan", 1), 5, "floor: from is nan"},
	{strings.Replace(head, "[floor]", "date = \"2026-11-25\"\n[floor]", 1), 4, `date is "2026-11-25"; it must be a date like 2026-11-25`},
	{strings.Replace(head, "[floor]", "date = 2026-11-25T10:00:00\n[floor]", 1), 4, `date is a date or time`},
	{strings.Replace(head, "[floor]", "date = 2026-02-30\n[floor]", 1), 4, `not TOML`},
	{strings.Replace(head, "[floor]", "fitter = 5\n[floor]", 1), 4, `job: fitter is 5`},
	{strings.Replace(head, "[floor]", "notes = [\"a\"]\n[floor]", 1), 4, `job: notes is ["a"]`},
	{strings.Replace(head, "[floor]", "note = \"a\"\n[floor]", 1), 4, `did you mean notes?`},
	{"\xff\xfef\x00o\x00", 1, "UTF-16"},
	{"obstruction = [1, 2]\n" + head, 1, `obstruction is [1, 2]; it must be tables, each under [[obstruction]]`},
	{"extra = 5\n" + head, 1, `extra is 5; it must be a table`},
	{"looked = \"all\"\n" + head, 1, `looked is "all"`},
	{"{\"format\": 1}", 1, "not TOML"},
	{"a = \"\\", 1, "not TOML"}, // a backslash is the last there is
	{"a = 1\nb = \"x\\\"\\", 2, "not TOML"},
	{"notes = \"\"\"\nnever\nclosed\n", 1, "too early"},
	{"%PDF-1.7", 1, "not TOML"},
	{head + "x = [1, 2]", 10, "floor: x is an unknown key"},
}

func TestBrokenHeadsGiveOneRightLine(t *testing.T) {
	for _, b := range brokenHeads {
		_, err := ParseJob([]byte(b.text), "jobs/tl.toml")
		wants(t, err, b.line, b.words)
	}
}

// wants is one line of error with its file, its line and its words.
func wants(t *testing.T, err error, line int, words string) {
	t.Helper()
	var faults FileErrors
	require.True(t, errors.As(err, &faults), "%v", err)
	assert.Len(t, faults, 1, "%v", err)
	assert.Equal(t, 0, strings.Count(faults[0].Error(), "\n"))
	assert.True(t, strings.HasPrefix(faults[0].Error(), fmt.Sprintf("jobs/tl.toml:%d: ", line)), "line %d: %v", line, err)
	assert.Contains(t, faults[0].Error(), words)
}

func TestAllFaultsOfAFileAreNamedAtOnceInOrder(t *testing.T) {
	_, err := ParseJob([]byte(head+crossmember+"x = [652]\ny = [1, \"Q\"]\ndorp = 1\n[cut]\nat = [1, nan]\nacross = -1\n"), "a.toml")
	var faults FileErrors
	require.ErrorAs(t, err, &faults)
	assert.False(t, faults.WholeJob())
	var at []int
	for _, f := range faults {
		at = append(at, f.Line)
	}
	assert.Equal(t, []int{13, 14, 15, 17, 18}, at, "%v", err)
}

func TestAFileTooLargeIsRefusedUnread(t *testing.T) {
	_, err := ParseJob(make([]byte, LargestFile+1), "a.toml")
	require.EqualError(t, err, "a.toml: holds more than 4 MiB, too much for a job file: is it the right file?")
}

func TestAFileNameWithALineEndStaysOnOneLine(t *testing.T) {
	_, err := ParseJob(nil, "a\nb.toml")
	assert.Equal(t, 0, strings.Count(err.Error(), "\n"))
}
