package ontop

import (
	"fmt"
	"math"
	"strings"
	"sync"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
)

// topic is what is explained for a field: a drawing, a question in plain words, and what the numbers come to.
type topic struct {
	drawing string
	ask     string
	comes   func(s desk.State) string // may be nil
}

// topics are by card and field; "" for the card as a whole.
var topics = sync.OnceValue(func() map[card]map[string]topic {
	return map[card]map[string]topic{
		floorCard: {
			"":      {floorSide, "Everything is judged against the floor, so it is measured first.", nil},
			"from":  {floorSide, "From the DATUM, where the tape has its zero, to the floor's rear edge: how far?", nil},
			"width": {floorSide, "How wide is the floor? It counts as lying evenly about the centreline.", nil},
			"thickness": {floorSide, "From the top of the lining to the underside of the lowest rib, where it is " +
				"thickest: drill nothing before you know it.", nil},
			"ground": {floorSide, "From the floor's underside down to the ground, the van loaded as it drives.", nil},
			"deck": {"", "What carries the heater's plate: steel or timber? A rim near the hot stub suits steel only. Timber is cut back " +
				"round it and takes " + rules.SteelPlates + ".", nil},
			"outline.left":  {"", "From the centreline to the van's skin on the left, sill and all, as high as the exhaust's outlet: it must end at the skin, not under the floor.", nil},
			"outline.right": {"", "From the centreline to the van's skin on the right, as high as the exhaust's outlet.", nil},
			"outline.rear":  {"", "Where the van ends behind, at the outlet's height, from where x starts: behind that with a minus.", nil},
			"layers":        {"", "What lies on the deck? Wood (plywood, foam, lining too) chars by a hot stub and is cut back round the hole; none: only metal there.", nil},
		},
		hooksCard: {
			"": {slopeBelow, "Where does the tape hang when you measure, and does it slope?", costBelow},
			"name": {floorSide, "Where does x start? At the rear bumper's edge, or at any straight edge across the van that is seen from both sides: " +
				"a door step, a crossmember's bolts. A tape of 3 m past axle and tank is worse than one of 0.8 m from there.", costDatum},
			"left": {edges, "From the centreline to the edge that L readings start at. " +
				"Measure across from edge to edge and halve it.", nil},
			"right":     {edges, "From the centreline to the edge that R readings start at.", nil},
			"side_held": {sideBelow, "Is the side tape held level, or does it slope up from the sill?", costSide},
			"side_below": {sideBelow, "Is the side tape held level, or does it slope up from the sill? " +
				"Sloping: how far below the floor's underside is its zero?", costSide},
			"hook_above": {slopeAbove, "How far below the finished floor is the tape's zero, measured from above?", costAbove},
			"shift_above": {zeros, "Do the two zeros stand straight above each other? Then 0. " +
				"Otherwise: how far forward of the lower one is the upper one?", costShift},
			"above_left": {edges, "From the centreline to the edge that L readings start at, on top. " +
				"It may be another edge than below.", nil},
			"above_right": {edges, "From the centreline to the edge that R readings start at, on top.", nil},
			"side_above": {sideAbove, "Is the side tape held level on top, or does it rise from its edge? " +
				"Sloping: how far below the finished floor is its zero?", nil},
			"pins": {pins, "Two pins on the DATUM, this far left and right of the centreline: " +
				"arcs from both cross where a mark goes.", nil},
			"pins_on": {pins, "Does the DATUM take pins? If not, clamp a straight batten along it and mark it there: " +
				"sight along it, and measure from it to the DATUM at both ends.", nil},
			"edges_below": {edges, "Which edges do L and R readings start at? In words that whoever comes next finds them by: lip of the sill, outer face.", nil},
			"edges_above": {edges, "And on top? Inner face of the lining, wheel box, door post.", nil},
		},
		bowCard: {
			"": {bowed, "Hold a straight bar across the NAME. At a few places across: how far forward of the datum line is the " +
				"edge the tape hooks on? Behind the line: minus.", costBow},
		},
		heaterCard: {
			"":      {"", "Before it goes in:", fitting},
			"class": {"", "Before it goes in:", fitting},
		},
		errorsCard: {
			"": {frames, "How far may below and above differ at the cut? Until two matching points tie them " +
				"together, nobody knows better than you.", costFrames},
			"read":   {"", "How well do you read the tape, lying on your back in bad light?", costRead},
			"mark":   {"", "How well does a mark end up where the tape says?", nil},
			"height": {"", "How well do you know any height: drops, rises, hooks? 2 with a rule and a straightedge, 5 by eye.", costRead},
			"turn":   {"", "How well do you know how far a thing is turned?", nil},
		},
	}
})

// asks is the question, with the datum's own name.
func (t topic) asks(s desk.State) string {
	return strings.NewReplacer("DATUM", s.Job.Datum.Line(), "NAME", s.Job.Datum.Called()).Replace(t.ask)
}

// topicOf is what is explained now, ok false for what explains itself.
func topicOf(e entryscreen.Entry, s desk.State) (t topic, ok bool) {
	here, _ := e.Here(s)
	h, isCard := here.(record)
	if !isCard {
		return t, false
	}
	all := topics()[h.card]
	sizing := h.card == heaterCard && e.Typing() // its sizes are seen on the plan
	if t, ok = all[e.Editor.On()]; !ok && !sizing {
		t, ok = all[""]
	}
	return t, ok
}

// beside paints what is explained into w columns; rows is how many it needs, 0 for nothing to explain.
func beside(e entryscreen.Entry, s desk.State, w, _ int) (text string, rows int) {
	t, ok := topicOf(e, s)
	if !ok {
		return "", 0
	}
	look := s.Settings.Styles()
	var out []string
	if t.drawing != "" {
		left, right := desk.Left(s.Settings), desk.Right(s.Settings)
		drawing := strings.NewReplacer("LEFT", fmt.Sprintf("%-8s", left), "RIGHT", fmt.Sprintf("%8s", right)).Replace(desk.DatumIn(t.drawing, &s.Job.Datum))
		out = strings.Split(strings.Trim(drawing, "\n"), "\n")
	}
	for _, line := range desk.Wrap(t.asks(s), w-1) {
		out = append(out, look.Strong.Render(line))
	}
	if t.comes != nil {
		for _, line := range strings.Split(t.comes(s), "\n") {
			out = append(out, desk.Wrap(line, w-1)...)
		}
	}
	for i := range out {
		out[i] = " " + out[i]
	}
	return strings.Join(out, "\n"), len(out)
}

// fitting are the cautions of putting the heater in.
func fitting(s desk.State) string {
	var lines []string
	for _, c := range rules.CautionsFor(rules.FittingHeater, &s.Result) {
		lines = append(lines, c.Say)
	}
	return strings.Join(lines, "\n")
}

// Typical readings to show by what a slope costs, mm.
const (
	typicalX    = 650
	typicalSide = 240
	typicalHook = 100 // a hook's drop where none is given
)

// costDatum says what naming another line does to what is there.
func costDatum(s desk.State) string {
	if fresh(s.Job) && len(s.Job.Fittings) == 0 && s.Job.Cut == nil {
		return "Choose it before you measure: every x counts from it, the floor's rear edge too. What lies behind it has a minus."
	}
	text := "No reading changes with the name: whatever was taped from another line has to be taped again, the floor's rear edge too. " +
		"What lies behind it has a minus."
	if s.Job.Exhaust != nil && s.Job.Datum.Named() && !s.Job.Floor.Outline.Rear.Set {
		text += " Where the van's skin ends at the rear nobody knows from here: the exhaust's end is held against its sides alone."
	}
	return text
}

// costBelow says what the slope from the datum line does to a reading.
func costBelow(s desk.State) string {
	length, p := typicalX+0.0, 0.0
	for _, o := range s.Job.Obstructions {
		if r := o.X[0]; r.Text != "" && r.Start == survey.Datum && o.Drop.Set {
			length, p = r.Length, o.TapedAt.Or(o.Drop.To)
			break
		}
	}
	return cost(s, length, s.Job.Datum.HookBelow.Or(typicalHook), p, s.Job.Datum.HookBelow.Set)
}

// costSide says the same of a reading from a side edge.
func costSide(s desk.State) string {
	side := s.Job.Datum.SideBelow
	return cost(s, typicalSide, side.Or(typicalHook), 0, side.Set)
}

// cost says what a slope takes from a reading to a point at drop p, its zero at drop hook: as it is, or as it would be.
func cost(s desk.State, length, hook, p float64, set bool) string {
	u := s.Settings.Units
	plan, sigma, _, err := s.Job.SurveyTape().Reduce(length, survey.Slope{Hook: hook, Set: true}, p, true)
	if err != nil {
		return err.Error()
	}
	at := fmt.Sprintf("to a point %s", desk.Height(p, u))
	if !set {
		return fmt.Sprintf("Level costs nothing. Sloping from a zero %s, a reading of %s %s would come to %s in plan: "+
			"%s too long.", desk.Height(hook, u), survey.Format(length, u), at, desk.Length(plan, u), desk.Length(math.Abs(length-plan), u))
	}
	return fmt.Sprintf("A reading of %s %s comes to %s in plan %s: the slope takes %s.",
		survey.Format(length, u), at, desk.Length(plan, u), desk.PlusMinus95(sigma, u), desk.Length(math.Abs(length-plan), u))
}

// costAbove says what the slope on top does to a reading.
func costAbove(s desk.State) string {
	hook := s.Job.Datum.HookAbove
	plan, _, err := s.Job.SurveyTape().ReduceAbove(typicalX, hook.Or(typicalHook))
	if err != nil {
		return err.Error()
	}
	u := s.Settings.Units
	if !hook.Set {
		return fmt.Sprintf("Level with the floor costs nothing. A zero %s lower, and a reading of %s would come to %s in plan.",
			desk.Length(typicalHook, u), survey.Format(typicalX, u), desk.Length(plan, u))
	}
	return fmt.Sprintf("A reading of %s comes to %s in plan: the slope takes %s.",
		survey.Format(typicalX, u), desk.Length(plan, u), desk.Length(typicalX-plan, u))
}

// costShift says why it is asked.
func costShift(s desk.State) string {
	if !s.Job.Datum.HookBelow.Set {
		return ""
	}
	u := s.Settings.Units
	text := fmt.Sprintf("The two hooks differ by %s in height. ", desk.Length(apart(s.Job), u))
	if apart(s.Job) <= muchApart {
		return text + "That may well be one edge of the " + s.Job.Datum.Called() + "."
	}
	return text + "Hardly the same edge: hold a plumb line, and write 0 if it touches both."
}

// costFrames says what holds now.
func costFrames(s desk.State) string {
	if n := len(s.Result.Plan.Fit.Residuals); n >= 2 {
		return fmt.Sprintf("%d matching points tie them now, so this counts no more.", n)
	}
	return fmt.Sprintf("± %s now; it enters every clearance between what is marked above and what was measured below.",
		desk.Length(s.Job.Frames(), s.Settings.Units))
}

// costRead says what a reading's error comes to.
func costRead(s desk.State) string {
	tape, u := s.Job.SurveyTape(), s.Settings.Units
	level := tape.Terms(typicalX, true).U()
	_, sloped, _, err := tape.Reduce(typicalX, survey.Slope{Hook: typicalHook, Set: true}, 0, true)
	if err != nil {
		return err.Error()
	}
	return fmt.Sprintf("A level reading of %s is then good to %s, one that sloped by %s to %s.",
		survey.Format(typicalX, u), desk.PlusMinus95(level, u), desk.Length(typicalHook, u), desk.Within95(sloped, u))
}
