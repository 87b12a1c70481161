package features

import (
	"fmt"
	"math"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// A chain of readings that run on is held against one overall reading of where it ends. Only a thing that runs on has
// fields for it.

// totalKeys are the keys of the overall readings in x and in y.
var totalKeys = [...]string{"tx", "ty"}

// FieldOf returns the key of the field for a key of the job file.
func FieldOf(key string) string {
	switch key {
	case "drop":
		return "top"
	case "taped_at":
		return "taped"
	case "total.x":
		return totalKeys[survey.X]
	case "total.y":
		return totalKeys[survey.Y]
	}
	var point, axis int
	if _, err := fmt.Sscanf(key, "path[%d][%d]", &point, &axis); err == nil && axis <= 1 {
		return pointKey(point, axis)
	}
	if field, known := places[key]; known {
		return field
	}
	return key
}

// places are the fields of the readings of a place or a tie; of a range, the edge that comes second.
var places = map[string]string{
	"x": "x1", "x[0]": "x0", "x[1]": "x1", "y": "y1", "y[0]": "y0", "y[1]": "y1",
	"centre[0]": "cx", "centre[1]": "cy", "path": "p0x",
	"below[0]": "bx", "below[1]": "by", "above[0]": "ax", "above[1]": "ay",
}

// chained says whether things of the list may have overall readings.
func (l List) chained() bool { return l == Obstructions || l == Fittings }

// lists are the lists as the file calls them.
var lists = map[List]vehicles.Table{
	Obstructions: vehicles.Obstructions, Openings: vehicles.Openings, Fittings: vehicles.Fittings, Ties: "tie",
}

// totals reads the overall readings; one that is blank was not taken.
func (b *builder) totals() (t vehicles.Totals) {
	for axis, key := range totalKeys {
		if b.now[key] != "" {
			t[axis] = b.reading(key, b.old.Total[axis])
		}
	}
	return t
}

// ends are the texts of where the thing ends, in x and in y: what the next thing runs on from.
func (x texts) ends() [2]string {
	switch x.shape() {
	case vehicles.Disc:
		return [2]string{x["cx"], x["cy"]}
	case vehicles.Piped:
		last := max(0, x.points()-1)
		return [2]string{x[pointKey(last, 0)], x[pointKey(last, 1)]}
	}
	return [2]string{x["x1"], x["y1"]}
}

// totals are the fields of the overall readings, for the ends that run on and those that have one.
func (m *maker) totals(pending texts) {
	if !m.list.chained() {
		return
	}
	m.head = "Sum check of the + readings"
	for axis, end := range pending.ends() {
		key := totalKeys[axis]
		if strings.HasPrefix(canonical(key, end), "+") || m.texts[key] != "" {
			m.add(key, "mm", "not taken").Pass = true
		}
	}
	m.head = ""
}

// closure is what came of an overall reading of the thing along an axis; ok is false when the job as it is has none.
func (h Record) closure(s desk.State, axis survey.Axis) (c vehicles.Closure, ok bool) {
	if len(s.Faults) > 0 {
		return c, false
	}
	for _, c := range s.Result.Plan.Closures {
		if c.Table == lists[h.List] && c.Index == h.Row && c.Axis == axis {
			return c, true
		}
	}
	return c, false
}

// totals say how far a chain comes out from its overall reading, and what is made of that.
func (n *noter) totals(row int) {
	u := n.s.Settings.Units
	for axis, key := range totalKeys {
		c, ok := Record{n.list, row, false}.closure(n.s, survey.Axis(axis))
		if !ok {
			continue
		}
		off := fmt.Sprintf("the chain comes out %s from it (%s explained)", desk.Length(math.Abs(c.Misclosure), u), "± "+survey.Format(c.Explained, u))
		if c.Closes {
			n.out[key] = off + ": spread over the chain"
		} else {
			n.out[key] = off + ": too far, measure both again. Doubtful till then"
		}
	}
}

// Misses says by how much a chain that ends with the thing misses its overall reading, "" when it does not.
func (h Record) Misses(s desk.State) string {
	for axis := range totalKeys {
		if c, ok := h.closure(s, survey.Axis(axis)); ok && !c.Closes {
			return "chain misses by " + desk.Length(math.Abs(c.Misclosure), s.Settings.Units)
		}
	}
	return ""
}
