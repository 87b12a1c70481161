package words

import (
	"fmt"
	"slices"
	"strings"

	"bench.example/undermark/vehicles"
	"bench.example/undermark/vehicles/harmless"
)

// mostChanges is how many changes are told one by one: more do not fit in a row of the narrowest window.
const mostChanges = 3

// Changed says in a few words what became of a job between two of its versions: "cut moved", "brake pipe: drop, across",
// "looked for air line". "" when both have the same file.
func Changed(before, after vehicles.Job) string {
	c := changes{before: before, after: after}
	for _, d := range vehicles.Differences(before, after) {
		c.add(d)
	}
	said := c.said()
	if n := len(said) - mostChanges; n > 0 {
		said = append(said[:mostChanges], fmt.Sprintf("and %d more", n))
	}
	return strings.Join(said, "; ")
}

// changes collects what differs by what it is of, in the order it was met.
type changes struct {
	before, after vehicles.Job
	of            []string            // "cut", "brake pipe"
	keys          map[string][]string // what of it: "drop"
	whole         []string            // told already: "cut moved"
	began, gone   []thing
	beside        []string // told only where nothing else is
}

// thing is one of a list of the job that has a name.
type thing struct {
	of   vehicles.Subject
	name string
}

func (c *changes) add(d vehicles.Difference) {
	switch d.Of {
	case vehicles.OfObstruction, vehicles.OfOpening, vehicles.OfFitting, vehicles.OfTie, vehicles.OfSurface:
		c.thing(d)
	case vehicles.OfStep:
		c.step(d.Name, d.Key)
	case vehicles.OfLookedAtCut:
		c.looked(d, "")
	case vehicles.OfLookedAtRuns:
		c.looked(d, " at the runs")
	case vehicles.OfLookedAtOutlet:
		c.looked(d, " near the outlet")
	case vehicles.OfBuilt:
		c.put("as built", d.Key)
	case vehicles.OfCut:
		c.cut(d.Key)
	case vehicles.OfHeater:
		c.heater(d.Key)
	case vehicles.OfExhaust:
		c.run(vehicles.ExhaustRun, d.Key)
	case vehicles.OfIntake:
		c.run(vehicles.IntakeRun, d.Key)
	case vehicles.OfFuel:
		c.run(vehicles.FuelRun, d.Key)
	case vehicles.OfOther:
		c.put(d.Name, d.Key)
	default:
		c.kept(d.Of)
	}
}

func (c *changes) thing(d vehicles.Difference) {
	switch {
	case d.Key != "":
		for _, field := range fieldsOf(d) {
			c.put(d.Name, field)
		}
	case d.One == "":
		c.began = append(c.began, thing{d.Of, d.Name})
	default:
		c.gone = append(c.gone, thing{d.Of, d.Name})
	}
}

// Edges are what the screens call the two readings of a place, by the file's key of both.
var Edges = map[string][2]string{"x": {"near edge", "far edge"}, "y": {"one side", "other side"}}

// fieldsOf are the fields of a thing that a difference is in, as the screens call them where the file has one key for two.
func fieldsOf(d vehicles.Difference) (fields []string) {
	names, ofTwo := Edges[d.Key]
	one, other := strings.Split(d.One, ", "), strings.Split(d.Other, ", ")
	if !ofTwo || len(one) != len(names) || len(other) != len(names) {
		return []string{d.Key}
	}
	for i, name := range names {
		if strings.Trim(one[i], "[ ]") != strings.Trim(other[i], "[ ]") {
			fields = append(fields, name)
		}
	}
	return fields
}

func (c *changes) put(of, key string) {
	if c.keys == nil {
		c.keys = map[string][]string{}
	}
	if _, known := c.keys[of]; !known {
		c.of = append(c.of, of)
	}
	if key, _, _ = strings.Cut(strings.ReplaceAll(key, "_", " "), ":"); key != "" && !slices.Contains(c.keys[of], key) {
		c.keys[of] = append(c.keys[of], key)
	}
}

func (c *changes) tell(text string) {
	if !slices.Contains(c.whole, text) {
		c.whole = append(c.whole, text)
	}
}

func (c *changes) cut(key string) {
	switch was, is := c.before.Cut, c.after.Cut; {
	case was == nil:
		c.tell("cut placed")
	case is == nil:
		c.tell("cut taken away")
	case key == "at":
		c.tell("cut moved")
	case key == "drilled" && is.Drilled == nil:
		c.tell("pilot counts as not drilled")
	case key == "drilled":
		c.tell("pilot measured")
	default:
		c.put("cut", key)
	}
}

// step says what became of what is recorded of a step: whether it is done comes before all else.
func (c *changes) step(id, key string) {
	name := vehicles.StepName(id)
	was, is := c.before.DoneOf(id), c.after.DoneOf(id)
	switch {
	case was.At == "" && is.At != "":
		c.tell(name + " done")
	case was.At != "" && is.At == "":
		c.tell(name + " not done")
	case key == "at":
		c.put(name, "time")
	case key == "" && is.Blank():
		c.tell(name + ": nothing noted any more")
	case key == "":
		c.tell(name + ": noted")
	default:
		c.put(name, key)
	}
}

func (c *changes) heater(key string) {
	switch {
	case c.before.Heater == nil:
		c.tell("heater chosen")
	case c.after.Heater == nil:
		c.tell("heater taken away")
	case key == "yaw":
		c.tell("heater turned")
	default:
		c.put("heater", key)
	}
}

func (c *changes) run(of vehicles.RunKind, key string) {
	name := of.String()
	switch was, is := c.before.Run(of), c.after.Run(of); {
	case was == nil || len(was.Path) == 0:
		c.tell(name + " laid")
	case is == nil || len(is.Path) == 0:
		c.tell(name + " taken away")
	case key == "path" && len(was.Path) < len(is.Path):
		c.tell(name + ": point added")
	case key == "path" && len(was.Path) > len(is.Path):
		c.tell(name + ": point deleted")
	case key == "path":
		c.tell(name + " moved")
	default:
		c.put(name, key)
	}
}

func (c *changes) looked(d vehicles.Difference, where string) {
	text := "looked for " + d.Key + where
	if now := d.Other; now == "" || now == "false" {
		text = "not " + text
	}
	c.tell(text)
}

// kept is what the screens keep: of what goes with another edit nothing is said.
func (c *changes) kept(of vehicles.Subject) {
	was, is := &c.before.Unfinished, &c.after.Unfinished
	switch of {
	case vehicles.OfLookedRound:
		c.beside = append(c.beside, "looked again where it is now")
	case vehicles.OfRefused:
		c.beside = refused(c.before, c.after)
	case vehicles.OfBegunObstruction:
		c.beside = []string{unfinished("obstruction", was.Obstructions, is.Obstructions)}
	case vehicles.OfBegunOpening:
		c.beside = []string{unfinished("opening", was.Openings, is.Openings)}
	case vehicles.OfBegunFitting:
		c.beside = []string{unfinished("fitting", was.Fittings, is.Fittings)}
	case vehicles.OfBegunTie:
		c.beside = []string{unfinished("matching point", was.Ties, is.Ties)}
	case vehicles.OfHeld:
		c.beside = append(c.beside, "how the tape is held")
	case vehicles.OfGuesses:
		c.beside = append(c.beside, "the floor as measured")
	default:
		c.beside = append(c.beside, "what others keep in the file")
	}
}

// refused names the field of a text that one of two jobs refuses and the other does not, and counts further ones: those of the later job, and where there
// are none, those that are refused no more. The text itself may be a pasted page.
func refused(before, after vehicles.Job) []string {
	for i, jobs := range [2][2]vehicles.Job{{before, after}, {after, before}} {
		known, became := jobs[0].Refused(), [2]string{" (refused)", " (refused no more)"}[i]
		var fresh []vehicles.Refusal
		for _, r := range jobs[1].Refused() {
			same := func(o vehicles.Refusal) bool { return o.Of == r.Of && o.Field == r.Field && o.Text == r.Text }
			if !slices.ContainsFunc(known, same) {
				fresh = append(fresh, r)
			}
		}
		if len(fresh) > 0 {
			name := fresh[0].Label + " of " + harmless.Text(fresh[0].Name)
			if more := len(fresh) - 1; more > 0 {
				name += fmt.Sprintf(" and %d more", more)
			}
			return []string{name + became}
		}
	}
	return []string{"why a text is refused"} // the text alone stayed
}

// said are the changes in words, those of a whole thing first.
func (c *changes) said() []string {
	if len(c.began) == 1 && len(c.gone) == 1 && c.began[0].of == c.gone[0].of {
		c.tell(c.gone[0].name + " renamed " + c.began[0].name)
	} else {
		for _, t := range c.began {
			c.tell(t.name + " entered")
		}
		for _, t := range c.gone {
			c.tell(t.name + " deleted")
		}
	}
	for _, of := range c.of {
		if keys := c.keys[of]; len(keys) > 0 {
			of += ": " + strings.Join(keys, ", ")
		}
		c.tell(of)
	}
	if len(c.whole) == 0 {
		return slices.Compact(c.beside)
	}
	return c.whole
}
