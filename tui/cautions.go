package tui

import (
	"bench.example/undermark/tui/desk"
)

// cautions are what the work can do to people and to the van. They are the trade's common practice (no source);
// the heater's own instructions come first.
var cautions = []struct{ about, say string }{
	{"Before all else", "The heater's own instructions and the local code come first, this program after them. Where the law " +
		"asks for licensed practice (gas, fuel, electrics, road approval), the work is for someone who has it."},
	{"Carbon monoxide", "The exhaust of a combustion heater kills without a smell. No joint inside the van, the outlet clear of every " +
		"opening, and a carbon monoxide alarm in the room where people sleep."},
	{"Holding the van up", "Work under it only on stands on firm level ground, wheels chocked. Never stand it on a jacking point " +
		"that is in the way of the cut or of a run."},
	{"Seats and belts", "Isolate the battery as the van's maker says, and wait as long as the maker says, before touching any wiring " +
		"of a seat or a belt: there are charges in it."},
	{"Drilling", "Nobody under the van while anybody drills. Fit a stop on the bit, so that it goes no deeper than the floor. Know what " +
		"lies above and below the bit: tank, fuel and brake lines, wiring, air lines, seat-belt mounts, double skins."},
	{"Before the saw", "Drill the pilot hole, take the bit out, and look again from below. Measure where the hole came out, enter " +
		"it, and read the checks afresh. Only then the saw."},
	{"Tank and brake lines", "A line that is touched is a line to be replaced before the van moves. With petrol or its vapour about, no drilling, " +
		"no grinding, no lamp that is not made for it."},
	{"Eyes, ears and swarf", "Goggles, also for whoever looks up from below, and ear defenders. Hot swarf burns and rusts: catch it, sweep it up, " +
		"never by hand, and treat the cut edge against rust before the heater goes in."},
	{"What the program knows", "It judges only what was measured and entered. \"Clear\" never means that nothing else is there."},
}

// cautionsVersion changes with the meaning of the text, so that it is shown again.
const cautionsVersion = "1"

// newCautions shows the cautions to be read.
func newCautions() *reader {
	return &reader{title: "Read this before working on a van", must: true, text: func(styles desk.Styles, w int) []string {
		var rows []string
		for _, c := range cautions {
			rows = append(rows, styles.Strong.Render(c.about))
			for _, row := range desk.Wrap(c.say, w-2) {
				rows = append(rows, "  "+row)
			}
			rows = append(rows, "")
		}
		return rows[:len(rows)-1]
	}}
}
