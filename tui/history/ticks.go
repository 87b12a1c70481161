package history

import (
	"maps"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// Ticks are the marks that have been made and the lengths that came out right: by name, what the tape said there. They are about a
// van and not about its job file. A map is never changed once it is made.
type Ticks map[string]string

// ticked are the marks that count as made: those at which the tape must still say what it said when they were made.
// A mark whose place has moved since is to be made again; when an undo moves it back, it counts again. What the pilot hole moved by less than
// anybody marks to, and no farther than all at the cut can spare, stays made.
func (t Ticks) ticked(sheet rules.MarkSheet, result *rules.Result) map[string]bool {
	made := map[string]bool{}
	if len(t) == 0 {
		return made
	}
	for name, says := range sayings(sheet) {
		if said, there := t[name]; there && said == says {
			made[name] = true
		}
	}
	for _, m := range sheet.Moved {
		if said, there := t[m.Name]; there && said == readings(m.Was) && m.By.Norm() <= min(markedTo(m.Was), rules.MayStay(result)) {
			made[m.Name] = true
		}
	}
	return made
}

// markedTo is how far from its place a mark may lie as it was made, with 95 %, mm; 0 where it is not known.
func markedTo(m rules.Mark) float64 {
	if m.Above == nil {
		return 0
	}
	return desk.TwoSided95 * min(m.Above.Sigma[0], m.Above.Sigma[1])
}

// stayed are the marks that stay made though their place has moved a little with the change.
func (d *Desk) stayed(was map[string]bool, before rules.MarkSheet) (moved []Moved) {
	old := map[string]string{}
	for _, m := range before.Marks {
		old[m.Name] = readings(m)
	}
	for _, m := range d.State.Marks.Moved {
		if was[m.Name] && d.State.Ticked[m.Name] && old[m.Name] == readings(m.Was) {
			moved = append(moved, Moved{m.Words, m.By})
		}
	}
	return moved
}

// Moved is a mark that was made and has to be made again, and how far it lies from where it was, as seen from above.
type Moved struct {
	Words string
	By    geometry.Point
}

// unmade are the marks that were made and have to be made again.
func (d *Desk) unmade(was map[string]bool, before rules.MarkSheet) (moved []Moved) {
	old := map[string]geometry.Point{}
	for _, m := range before.Marks {
		old[m.Name] = m.Plan
	}
	for _, m := range d.State.Marks.Marks {
		if was[m.Name] && !d.State.Ticked[m.Name] {
			moved = append(moved, Moved{m.Words, m.Plan.Sub(old[m.Name])})
		}
	}
	return moved
}

// sayings are what the tape must say at each mark and for each length to check, by name.
func sayings(sheet rules.MarkSheet) map[string]string {
	says := map[string]string{}
	for _, m := range sheet.Marks {
		says[m.Name] = readings(m)
	}
	for _, c := range sheet.Checks {
		says[words.CheckID(c)] = tenths(c.Length)
	}
	return says
}

// readings is what the tape must say at a mark, to 0.1 mm.
func readings(m rules.Mark) string {
	said := "below" + figures(m.Below.Bumper, m.Below.Left, m.Below.Right)
	if a := m.Above; a != nil {
		said += ", above" + figures(a.Bumper, a.Left, a.Right, a.PinLeft, a.PinRight)
	}
	return said
}

func figures(all ...float64) (said string) {
	for _, mm := range all {
		said += " " + tenths(mm)
	}
	return said
}

// tenths has the tenth where it is 0, too: the ticks of an earlier day are kept so, and are held to it.
func tenths(mm float64) string { return survey.Fixed(mm, 1) }

// tick ticks or unticks a mark.
func (d *Desk) tick(name string) {
	made := maps.Clone(d.Made)
	if made == nil {
		made = Ticks{}
	}
	if d.State.Ticked[name] {
		delete(made, name)
	} else if says, known := sayings(d.State.Marks)[name]; known {
		made[name] = says
	}
	d.Made, d.State.Ticked = made, made.ticked(d.State.Marks, &d.State.Result)
}
