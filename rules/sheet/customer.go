package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/vehicles"
)

// ForCustomer returns the page that goes with the van: what was fitted where, in plain words, what to mind and how it is looked after.
// It is of what was built: where that came out otherwise than planned, the job is judged and told as it is in the van.
func ForCustomer(r *rules.Result, say Words) Sheet {
	if built, ok := asBuilt(r); ok {
		r = &built
	}
	s := source{r, say}
	head := headOf(r, say)
	head.Of, head.Standing = "Your heater", ""
	return Sheet{Head: head, Sections: []Section{
		{Heading: "Your heater: what is where", Parts: []Part{s.whose(), s.settled(), Named(s.fitted()), s.whereItIs()}},
		{Heading: "Mind this", Parts: []Part{s.minded()}},
		{Heading: "Looking after it", Parts: []Part{s.lookedAfter(), Kept{Beside{Left: Lines{"handed over by", "looked at on"}, Right: Lines{"to, on", "serviced on"}}}}},
	}}
}

func (s *source) whose() Facts {
	return Facts{{"van", s.Job.Vehicle}, {"fitted by", s.Job.Fitter}}
}

// settled says whether the fitter still has something to settle.
func (s *source) settled() Part {
	if s.Job.Cut == nil {
		return Text{Words: "When this was printed no heater had a place in the van.", Bold: true}
	}
	counts := map[rules.Verdict]int{}
	for i := range s.Findings {
		counts[s.Findings[i].Verdict]++
	}
	if s.Verdict == rules.Clear {
		return Text{Words: "Every distance that was entered and checked keeps what is asked of it. What nobody measured was not checked."}
	}
	return Text{Bold: true, Words: fmt.Sprintf("Not settled when this was printed: %s. Don't run the heater until the fitter has seen to it and given you a new page.",
		open(counts[rules.Foul], counts[rules.Doubtful]))}
}

func open(wrong, unsure int) string {
	count := func(n int, one, many string) string {
		switch n {
		case 0:
			return ""
		case 1:
			return "1 " + one
		}
		return fmt.Sprint(n, " ", many)
	}
	if wrong+unsure == 0 {
		return "there is too little to say"
	}
	return survey.Joined(" and ", count(wrong, "thing is where it must not be", "things are where they must not be"), count(unsure, "thing is in doubt", "things are in doubt"))
}

// fitted are the parts of the heater the job has, and where each is.
func (s *source) fitted() (all [][2]string) {
	add := func(name, words string) { all = append(all, [2]string{name, words}) }
	if h := s.Job.Heater; h != nil && s.Job.Cut != nil {
		words := s.at(s.Plan.Cut.At) + ". It blows its warm air " + toward(h.Yaw) + ". Keep the space before that and round the heater free."
		if h.Air != "" {
			words += " It takes the air that it warms from " + airFrom[h.Air] + "."
		}
		add("The heater", words)
	}
	if c := s.Job.Cut; c != nil {
		add("The hole", "One round hole of "+survey.InMM(c.Across)+" goes through the floor under it. It must stay sealed: no draught, no smell and no water may come in.")
	}
	if r := s.Plan.Exhaust; r != nil {
		words := "Its pipe runs under the floor and ends " + s.edge(end(r)) + ", " + s.at(end(r).Plan()) + ". Keep that end free."
		if r.Muffler != nil {
			words += " The thick part of the pipe is its muffler; water may drip from it."
		}
		add("The exhaust", words)
	}
	if r := s.Plan.Intake; r != nil {
		add("Air for the flame", "It is drawn in under the floor, "+s.at(end(r).Plan())+". Keep that end free, too.")
	}
	if f := s.Job.Fuel; f != nil {
		words := "It burns " + s.fuel(f) + "."
		if s.Plan.Fuel != nil && s.Plan.Fuel.Pump.Set {
			at := s.Plan.Fuel.Station(s.Plan.Fuel.Pump.Value)
			words += " Its pump is under the floor, " + s.at(geometry.Point{X: at.X, Y: at.Y}) + "; it ticks while the heater runs."
		}
		add("The fuel", words)
	}
	if s.Job.Heater != nil && s.Job.Cut != nil {
		add("Switch, fuse, alarm", s.switched())
	}
	if len(all) == 0 {
		add("Nothing yet", "No heater has been given a place.")
	}
	return all
}

// switched says where whoever uses the heater finds its switch, its fuse and the alarm, as far as that was said.
func (s *source) switched() string {
	w := &s.Job.Wiring
	at := func(what, where string) string {
		if where = work.Said(where); where == "" {
			return what + "."
		}
		return what + ": " + where + "."
	}
	return strings.Join([]string{
		at("It is switched on and off at its control", w.Control), at("Its fuse is at the battery", w.Battery), at("The carbon monoxide alarm hangs where its instructions say", w.Alarm),
	}, " ")
}

// airFrom says where the air comes from that is warmed.
var airFrom = map[string]string{
	vehicles.LivingSpace: "the space that you live in", vehicles.Locker: "the locker that it stands in", vehicles.Outside: "outside",
}

func end(r *vehicles.LaidRun) geometry.Point3 { return r.Path[len(r.Path)-1] }

// fuel says what the heater burns and where that is taken from, as far as the job says it.
func (s *source) fuel(f *vehicles.Run) string {
	kind := f.Supply.Kind
	if kind == "" {
		kind = "the fuel that its instructions name"
	}
	switch {
	case f.Supply.From != "": // its tank, if it has one in the file, is then that
		return kind + ", from the van's own " + f.Supply.From
	case f.Supply.Tank != nil:
		return kind + ", from a tank of its own"
	}
	return kind
}

// at is a place in plain words, from the line that x starts at and from the van's middle, to the centimetre.
func (s *source) at(p geometry.Point) string {
	const metre, centimetre = 1000, 10
	metres := func(mm float64) string { // rounded in mm: 1255 is halfway, 1.255 is a hair less
		return survey.Fixed(math.Round(math.Abs(mm)/centimetre)*centimetre/metre, 2)
	}
	along := metres(p.X) + " m forward of the " + s.Job.Datum.Edge()
	if p.X < 0 {
		along = strings.Replace(along, "forward of", "behind", 1)
	}
	side := "left"
	if p.Y < 0 {
		side = "right"
	}
	if math.Abs(p.Y) < centimetre/2 {
		return along + ", in the van's middle"
	}
	return along + ", " + metres(p.Y) + " m " + side + " of the van's middle"
}

// edge says at which edge of the van a place is nearest.
func (s *source) edge(p geometry.Point3) string {
	where, least := "at the van's left", s.Job.OutlineLeft()-p.Y
	if right := s.Job.OutlineRight() + p.Y; right < least {
		where, least = "at the van's right", right
	}
	if rear, ok := s.Job.OutlineRear(); ok && p.X-rear < least {
		return "at the van's rear"
	}
	return where
}

// toward is a direction in plain words, degrees from the van's front to its left.
func toward(yaw float64) string { return rules.Toward(yaw, "left", "right") }

// whereItIs is the floor from above with nothing but what a customer looks for.
func (s *source) whereItIs() Part {
	of := onTop(drawing.Draw(*s.Result, drawing.Options{View: scene.Above, Selected: -1}))
	names := map[scene.Role]string{
		scene.Outlet: "exhaust ends", scene.Mouth: "air in", scene.Body: "warm air", scene.Nose: "front", scene.Muffler: "muffler",
	}
	var kept []scene.Item
	for _, it := range of.Items {
		switch name, known := names[it.Role]; {
		case known && (it.Role != scene.Body || it.Primitive == scene.Stroke):
			it.Label = name
		case it.Role != scene.Fitting && it.Role != scene.Opening:
			it.Label = ""
		}
		if it.OfObstruction() || it.Label == "" && !slices.Contains(drawnPlain, it.Role) {
			continue
		}
		it.State, it.Unsure = scene.Plain, false
		kept = append(kept, it)
	}
	of.Items = kept
	return s.picture("", of, 66)
}

// drawnPlain is what a customer sees without a name.
var drawnPlain = []scene.Role{scene.Floor, scene.Cut, scene.Exhaust, scene.Intake, scene.Fuel, scene.Plate, scene.Body, scene.Bumper}

// minded are the cautions that whoever uses the heater must know.
func (s *source) minded() List {
	var all List
	for _, c := range rules.Cautions() {
		if c.User != "" && c.AppliesTo(s.Result) {
			all = append(all, c.User)
		}
	}
	return all
}

// lookedAfter is what keeps the heater safe, and the days that were agreed for the first look and the first service. No time stands here that has
// no source.
func (s *source) lookedAfter() Named {
	agreed := func(step, otherwise string) string {
		if due := s.Job.DoneOf(step).Due; due != "" {
			return "on " + due + ", as agreed"
		}
		return otherwise
	}
	return append(Named{
		{"First", strings.ToUpper(work.Retorque[:1]) + work.Retorque[1:] + " " + agreed("retorque", "on the day that you agree with the fitter") + "."},
		{"Service", "What is done, by whom and how often: as the heater's own instructions say. The first is " + agreed("service-agreed", "on the day that you agree with the fitter") + "."},
		{"Alarm", "Test it as its own instructions say, and change it by the day that stands on it."},
	}, service...)
}

// service is what holds whoever the heater belongs to.
var service = Named{
	{"Now and then", "Look at both ends under the van: free of mud, snow and nests. Look at pipe and clips after a bump or a wade: nothing loose, nothing holed. " +
		"If anything is, don't run the heater and have it seen to."},
	{"Tell the fitter", "when it smokes, smells inside, or does not start as it did."},
}
