package tui

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// entered is a field of a form: what is typed, what the file then says under a key, and what it says when the field is blank.
type entered struct {
	typed, key, says string
	blank            string // "": the key is not there; needed: the job keeps what it had; none: the field can't be blank
	bad              string // a text that is refused; "" for none
}

const (
	needed = "needed"
	none   = "none"
)

// mm is a length that may be left out, must is one that may not, one is a choice by its letter, word is a text.
func mm(typed, key, says string) entered { return entered{typed, key, says, "", "12 furl"} }
func must(typed, key, says string) entered {
	return entered{typed, key, says, needed, "12 furl"}
}
func size(typed, key, says, blank string) entered {
	return entered{typed, key, says, blank, "12 furl"}
}
func one(letter, key, says string) entered { return entered{letter, key, says, none, ""} }
func word(typed, key string) entered       { return entered{typed, key, typed, "", ""} }
func still() entered                       { return entered{} } // a field that other tests are of

// forms are the program's forms, each with its fields in the order of the form: the screen, and how far down its list it is.
var forms = []struct {
	name, screen string
	row          int
	fields       []entered
}{
	{"floor", "On top", 0, []entered{
		must("45", "floor.from", "45"), must("3.25m", "floor.length", "3250"), must("178.5cm", "floor.width", "1785"),
		must("33", "floor.thickness", "33"), must("455", "floor.ground", "455"), one("s", "floor.deck", "steel"),
	}},
	{"hooks", "On top", 1, []entered{
		still(), must("148", "datum.hook_below", "148"), mm("891", "datum.left", "891"), mm("88.9cm", "datum.right", "889"),
		still(), must("42", "datum.side_below", "42"), mm("58", "datum.hook_above", "58"), mm("-3", "datum.shift_above", "-3"),
		mm("886", "datum.above_left", "886"), mm("887", "datum.above_right", "887"), mm("44", "datum.side_above", "44"),
		mm("650", "datum.pins", "650"), one("b", "datum.pins_on", "batten"), word("step of the side door", "datum.name"),
		word("lip of the sill", "datum.edges_below"), word("lining", "datum.edges_above"),
	}},
	{"errors", "On top", 3, []entered{
		mm("4", "datum.frames", "4"), mm("1.75", "tape.read", "1.75"), mm("2", "tape.mark", "2"), mm("2.5", "tape.height", "2.5"),
		mm("1.5", "tape.turn", "1.5"),
	}},
	{"heater", "On top", 4, []entered{
		one("4", "heater.class", "4 kW"), size("-45", "heater.yaw", "-45", "0"),
		size("305", "heater.body", "[305 120 128]", "[320 120 128]"), size("121", "heater.body", "[310 121 128]", "[310 125 128]"),
		size("130", "heater.body", "[310 120 130]", "[310 120 125]"),
		mm("5", "heater.body_at", "[5 0]"), mm("-4", "heater.body_at", "[0 -4]"),
		size("115", "heater.space", "map[front:115 top:70]", "map[top:70]"), still(), still(), still(),
		mm("195", "heater.plate", "[195 150]"), mm("155", "heater.plate", "[190 155]"), mm("42", "heater.turret", "42"),
		mm("50", "heater.stub_drop", "50"), still(), still(), mm("-34", "heater.intake_stub", "[-34 25]"), still(),
		mm("2", "heater.fuel_stub", "[2 -35]"), still(),
		one("b", "heater.duct", "[front rear]"), mm("75", "heater.duct_across", "75"), mm("120", "heater.return_area", "120"),
		one("o", "heater.air", "outside"), one("n", "heater.stored", "[nothing]"),
		{"70 50, -70 50", "heater.bolts", "[[70 50] [-70 50]]", "", "70 50, 3"}, mm("8", "heater.bolt", "8"), one("n", "heater.packed", "false"),
	}},
	{"fitting", "On top", 5, []entered{
		word("battery", "fitting.battery.name"), one("w", "fitting.battery box.kind", "wiring"), still(),
		must("1890", "fitting.battery box.x", "[1890 +400]"), still(), must("l580", "fitting.battery box.y", "[L 580 840]"),
		must("850", "fitting.battery box.y", "[300 850]"), mm("5", "fitting.battery box.turn", "5"),
		must("-2", "fitting.battery box.rise", "[-2 400]"), must("390", "fitting.battery box.rise", "[0 390]"),
		one("n", "fitting.battery box.measured", "false"), mm("2302", "fitting.battery box.total.x", "2302"),
	}},
	{"line of wiring", "On top", 6, []entered{
		still(), still(), still(), must("1495", "fitting.loom under the mat.path", "[[1495 -500] [2600 -500]]"),
		must("-505", "fitting.loom under the mat.path", "[[1500 -505] [2600 -500]]"), still(), still(), still(), still(),
		must("14", "fitting.loom under the mat.across", "14"), must("-6", "fitting.loom under the mat.rise", "[-6 3]"),
		must("4", "fitting.loom under the mat.rise", "[-5 4]"), one("y", "fitting.loom under the mat.measured", ""),
	}},
	{"crossmember", "Underneath", 0, []entered{
		one("i", "obstruction.rear crossmember.kind", "floor rib"), word("rear member", "obstruction.rear member.name"), still(),
		must("65.4cm", "obstruction.rear crossmember.x", "[65.4cm +84]"), must(".86", "obstruction.rear crossmember.x", "[652 +86]"),
		must("l1740", "obstruction.rear crossmember.y", "[L 1740 850]"), must("r1730", "obstruction.rear crossmember.y", "[-850 R 1730]"),
		mm("-3", "obstruction.rear crossmember.turn", "-3"), must("2", "obstruction.rear crossmember.drop", "[2 95]"),
		must("96", "obstruction.rear crossmember.drop", "[0 96]"), mm("91", "obstruction.rear crossmember.taped_at", "91"),
		one("n", "obstruction.rear crossmember.measured", "false"), mm("738", "obstruction.rear crossmember.total.x", "738"),
	}},
	{"pipe", "Underneath", 2, []entered{
		still(), still(), still(), must("305", "obstruction.brake pipe, right.path", "[[305 R 410] [1500 R 410] [2400 R 300]]"),
		must("r412", "obstruction.brake pipe, right.path", "[[300 R 412] [1500 R 410] [2400 R 300]]"), still(), still(), still(), still(),
		still(), still(), must("9", "obstruction.brake pipe, right.across", "9"),
		must("21", "obstruction.brake pipe, right.drop", "[21 30]"), must("31", "obstruction.brake pipe, right.drop", "[20 31]"),
		mm("25", "obstruction.brake pipe, right.taped_at", "25"),
	}},
	{"tank", "Underneath", 3, []entered{
		still(), still(), still(), still(), still(), still(), still(), still(), still(), still(), still(), one("n", "obstruction.tank.holds", ""),
	}},
	{"round", "Underneath", 4, []entered{
		still(), still(), still(), must("421", "obstruction.spare wheel.centre", "[421 0]"), must("-5", "obstruction.spare wheel.centre", "[420 -5]"),
		must("700", "obstruction.spare wheel.across", "700"), must("101", "obstruction.spare wheel.drop", "[101 300]"),
	}},
	{"opening", "Underneath", 7, []entered{
		one("f", "opening.floor vent.kind", "fuel filler"), word("vent", "opening.vent.name"), still(), must("2910", "opening.floor vent.centre", "[2910 500]"),
		must("510", "opening.floor vent.centre", "[2900 510]"), must("82", "opening.floor vent.across", "82"),
		must("-30", "opening.floor vent.drop", "[-30 0]"), must("1", "opening.floor vent.drop", "[-31 1]"), one("y", "opening.floor vent.measured", ""),
	}},
	{"matching point", "Match", 0, []entered{
		word("bolt", "tie.bolt.name"), must("1503", "tie.seat bolt, left.below", "[1503 L 300]"), must("l301", "tie.seat bolt, left.below", "[1502 L 301]"),
		must("1501", "tie.seat bolt, left.above", "[1501 L 295]"), must("l296", "tie.seat bolt, left.above", "[1500 L 296]"), one("n", "tie.seat bolt, left.use", "false"),
	}},
	{"job", "Job", 0, []entered{
		{"TL-32", "job.ref", "TL-32", needed, ""}, word("short van", "job.vehicle"), word("second bench", "job.fitter"),
		{"2026-11-26", "job.date", "2026-11-26 00:00:00 +0000 date-local", "", "the 26th"}, {"first line↵second", "job.notes", "first line\nsecond", "", ""},
		one("f", "check.runs", "full"),
	}},
	{"tape", "Job", 1, []entered{
		one("1", "tape.class", "I"), mm("1.5", "tape.read", "1.5"), mm("1", "tape.mark", "1"), mm("2", "tape.height", "2"), mm("1", "tape.turn", "1"),
	}},
	{"fuel", "Job", 3, []entered{one("n", "fuel.kind", ""), one("n", "fuel.from", "")}},
	{"wheels", "Job", 4, []entered{still(), still(), still(), still(), still()}},
	{"floor's layers", "Sizing", 2, []entered{
		one("s", "mount.on", "steel"), must("ply 13, birch", "layer.birch.thick", "13"), must("sh18", "layer.1.thick", "18"), still(),
		mm("2.5", "mount.plate", "2.5"), mm("4", "mount.bead", "4"),
	}},
	{"tank and pump", "Sizing", 9, []entered{
		mm("65", "fuel.tank.litres", "65"), one("i", "fuel.tank.filler", "inside"), one("n", "fuel.tank.breather", ""), mm("2.5", "fuel.bore", "2.5"),
		mm("23", "fuel.pump.ml_per_1000", "23"), mm("2", "fuel.pump.hz", "2"),
	}},
	{"electrics", "Sizing", 17, []entered{
		mm("4.3m", "electrics.cable", "4300"), mm("6", "electrics.glow", "6"), mm("0.7", "electrics.running", "0.7"), mm("12", "electrics.volts", "12"),
		mm("0,5", "electrics.drop", "0.5"), mm("15", "electrics.fuse", "15"), mm("90", "electrics.battery", "90"), mm("50", "electrics.usable", "50"),
		word("under the left seat", "wiring.battery"), word("along the sill", "wiring.cable"), word("the battery", "wiring.earth"), word("by the door", "wiring.control"),
		word("over the bed", "wiring.alarm"),
	}},
	{"surface", "Sizing", 24, []entered{
		word("sides", "surface.sides.name"), must("15", "surface.walls.area", "15"), one("r", "surface.walls.lies", "roof"),
		{"plywood 5", "surface.walls.layers", "[map[of:plywood thick:5]]", "", "12 furl"},
	}},
	{"heat", "Sizing", 26, []entered{
		mm("18", "body.inside", "18"), mm("-5", "body.outside", "-5"), mm("9", "body.volume", "9"), mm("2", "body.changes", "2"), mm("8", "body.hours", "8"),
	}},
	{"duct", "Sizing", 33, []entered{
		mm("2.4m", "duct.length", "2400"), {"90 30", "duct.bends", "[90 30]", "", "12 furl"}, mm("55", "duct.flow", "55"),
		{"0 140, 80 0", "duct.fan", "[[0 140] [80 0]]", "", "12 furl"}, mm("1", "duct.rough", "1"),
	}},
	{"rule", "Job", 12, []entered{{"8cm", "rules.cut.clearance.brake line", "80", "", "12 furl"}}},
}

// inField is the full job with the keys in a field of a form, and the row of the screen that shows it.
func inField(t testing.TB, screen string, row, field int) *screentest.Driver {
	return inFieldOf(t, screentest.Full(t), screen, row, field)
}

// inFieldOf is the same of a job that has as many things as the full one.
func inFieldOf(t testing.TB, job vehicles.Job, screen string, row, field int) *screentest.Driver {
	r := onScreen(t, screen, job, 160, 100)
	r.Type(strings.Repeat("<down>", row) + "<enter>" + strings.Repeat("<up>", 20) + strings.Repeat("<down>", field))
	require.True(t, r.Screen.Typing())
	return r
}

// shownIn is the row of the form that has the keys.
func shownIn(r *screentest.Driver) string {
	rows := strings.Split(r.View(160, 100), "\n")
	row, beside := "", ""
	for _, text := range rows {
		left, right, _ := strings.Cut(text, "│")
		if strings.HasPrefix(left, "▸ ") {
			row = left
		}
		if right = strings.TrimSpace(right); strings.HasPrefix(right, "▸ ") {
			beside = right
		}
	}
	return cmp.Or(beside, row)
}

// each goes to every field of every form that the table has.
func each(t *testing.T, do func(t *testing.T, r *screentest.Driver, f entered)) {
	for _, form := range forms {
		for i, f := range form.fields {
			if f.typed == "" {
				continue
			}
			t.Run(fmt.Sprintf("%s %d %s", form.name, i, f.key), func(t *testing.T) {
				do(t, inField(t, form.screen, form.row, i), f)
			})
		}
	}
}

// saysUnder is what the file says under a key; a table in braces is one value.
func saysUnder(t testing.TB, j vehicles.Job, key string) string {
	all := wholly(t, j)
	if text, there := all[key]; there {
		return text
	}
	var parts []string
	for k, text := range all {
		if rest, inner := strings.CutPrefix(k, key+"."); inner {
			parts = append(parts, rest+":"+text)
		}
	}
	if len(parts) == 0 {
		return ""
	}
	slices.Sort(parts)
	return "map[" + strings.Join(parts, " ") + "]"
}

// thingOf is what a key of a thing of a list begins with: "obstruction.tank".
func thingOf(key string) string {
	parts := strings.Split(key, ".")
	if len(parts) < 3 || parts[0] == "rules" {
		return ""
	}
	return parts[0] + "." + parts[1]
}

// What is typed into a field is what the file says under its key, and nothing else of the job changes: only what is measured
// counts as measured on this van. The form shows it, and one step of undo brings the file back to the byte.
func TestEveryFieldIsWhatTheFileSays(t *testing.T) {
	ofWholeRun(t)
	each(t, func(t *testing.T, r *screentest.Driver, f entered) {
		job := screentest.Full(t)
		if f.blank != none {
			r.Type("<wipe>")
		}
		r.Type(f.typed)
		assert.Equal(t, f.says, saysUnder(t, r.State.Job, f.key), r.Said)
		if name := strings.HasSuffix(f.key, ".name") && thingOf(f.key) != ""; !name {
			may := []string{f.key, "cut.direct"}
			if thing := thingOf(f.key); thing != "" && f.bad != "" {
				may = append(may, thing+".measured")
			}
			only(t, job, r.State.Job, f.key, may...)
		}
		assert.Empty(t, r.State.Job.Refused())
		again := screentest.New(t, r.Screen, r.State.Job, 160, 100)
		assert.NotEmpty(t, shownIn(r))
		assert.Equal(t, shownIn(r), shownIn(again), "it shows what a file with it shows")
		assert.Len(t, r.Steps(), 1, "a field is one step")
		undone(t, r, job)
	})
}

// A field that is emptied is not set in the file, and reads as not set. One that is needed says so, and the job keeps what it had.
func TestEveryFieldThatIsEmptied(t *testing.T) {
	ofWholeRun(t)
	each(t, func(t *testing.T, r *screentest.Driver, f entered) {
		job := screentest.Full(t)
		if f.blank == none || strings.HasSuffix(f.key, ".name") && thingOf(f.key) != "" {
			return
		}
		r.Type("<wipe>")
		if f.blank == needed {
			only(t, job, r.State.Job, "an empty field", "extra.refused")
			view := r.View(160, 100)
			assert.True(t, strings.Contains(view, "needed") || strings.Contains(view, "wanted"), "it says what is needed")
		} else {
			assert.Equal(t, f.blank, saysUnder(t, r.State.Job, f.key))
			only(t, job, r.State.Job, "an empty field", f.key)
		}
		undone(t, r, job)
	})
}

// A text that can't be read stays in the field and is said; the job keeps what it had. It outlives the form and the file, and a
// good one takes its place.
func TestEveryFieldKeepsWhatItRefuses(t *testing.T) {
	ofWholeRun(t)
	each(t, func(t *testing.T, r *screentest.Driver, f entered) {
		if f.bad == "" {
			return
		}
		job := screentest.Full(t)
		was := saysUnder(t, job, f.key)
		r.Paste(f.bad)
		assert.Equal(t, was, saysUnder(t, r.State.Job, f.key))
		only(t, job, r.State.Job, f.bad, "extra.refused")
		assert.Contains(t, shownIn(r), f.bad)
		assert.Contains(t, r.View(160, 100), "! ", "and why")
		r.Type("<esc>")
		assert.Contains(t, r.Said, "was refused and is not in the job: ")
		assert.Contains(t, r.Said, f.bad)
		kept, err := vehicles.ParseJob(r.State.Job.Format(), "kept.toml")
		require.NoError(t, err)
		require.Len(t, kept.Refused(), 1)
		assert.Equal(t, f.bad, kept.Refused()[0].Text)
		undone(t, r, job)
	})
}

// A field that is looked at and left says the same afterwards, whichever way it is left.
func TestLookingIntoFieldsChangesNothing(t *testing.T) {
	ofWholeRun(t)
	job := screentest.Full(t)
	for _, form := range forms {
		for i := range form.fields {
			for _, leave := range []string{"<esc>", "<enter>", "<end><home><up>"} {
				r := inField(t, form.screen, form.row, i)
				r.Type(leave)
				require.Equal(t, string(job.Format()), string(r.State.Job.Format()), "%s %d %s", form.name, i, leave)
				assert.Empty(t, r.Steps())
			}
		}
	}
}
