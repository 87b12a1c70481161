package aloud

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// Runs says how every run lies that is laid.
func Runs(s desk.State) (lines []string) {
	for _, of := range vehicles.RunKinds {
		lines = append(lines, Run(of, s)...)
	}
	return lines
}

// Run says how a run lies leg by leg: how long, which way, how it falls, where it ends, and what hangs on it; nothing without it.
func Run(of vehicles.RunKind, s desk.State) []string {
	laid, run := s.Result.Plan.Run(of), s.Result.Job.Run(of)
	if laid == nil || run == nil || len(laid.Path) < 2 || len(s.Faults) > 0 {
		return nil
	}
	u := s.Settings.Units
	lines := []string{fmt.Sprintf("%s, %s across, %d legs, begins at %s.", of, desk.Length(run.Across, u), len(laid.Path)-1, Place(laid.Path[0], s))}
	for i := 1; i < len(laid.Path); i++ {
		lines = append(lines, Joined(leg(i, laid.Path[i-1], laid.Path[i], s), legVerdict(of, i-1, s)))
	}
	for _, thing := range run.Hanging.OnLegs().Things() {
		if from, to, ok := thing.Along(laid); ok {
			lines = append(lines, hung(&thing, from, to, u))
		}
	}
	return lines
}

// hung says where along its run a thing is, and how large.
func hung(thing *vehicles.Hung, from, to float64, u survey.Units) string {
	if thing.Length() == 0 {
		return words.Sentence(thing.Name() + " at " + desk.Length(from, u) + " along the run")
	}
	text := fmt.Sprintf("%s on leg %d, from %s to %s along the run", thing.Name(), thing.Leg(), desk.Length(from, u), desk.Length(to, u))
	for _, d := range thing.Details() {
		if d.Size != nil && d.Unit == "mm" && d.Paper != "" {
			text += ", " + fmt.Sprintf(d.Told, desk.Length(*d.Size, u))
		}
	}
	return words.Sentence(text)
}

// Place says where a point in space is.
func Place(p geometry.Point3, s desk.State) string {
	return Spot(p.Plan(), s) + ", " + desk.Height(-p.Z, s.Settings.Units)
}

// leg is a leg, counted from 1, in one line.
func leg(i int, from, to geometry.Point3, s desk.State) string {
	by := to.Sub(from)
	way := Towards(by.Plan(), s)
	if by.Plan().Norm() < straightDown {
		way = "straight"
	}
	return fmt.Sprintf("Leg %d: %s %s, %s, to %s", i, desk.Length(by.Norm(), s.Settings.Units), way, fall(by, s), Place(to, s))
}

// straightDown is how little aside, mm, a leg goes that is called upright: less than a tape shows.
const straightDown = 0.5

// fall is how much a leg falls or rises, and how steep where it is not upright.
func fall(by geometry.Point3, s desk.State) string {
	u, level := s.Settings.Units, by.Plan().Norm()
	text := "falls "
	switch {
	case desk.Length(math.Abs(by.Z), u) == desk.Length(0, u):
		return "level"
	case by.Z > 0:
		text = "rises "
	}
	text += desk.Length(math.Abs(by.Z), u)
	if level < straightDown {
		return text
	}
	return text + ", " + words.Slope(1000*math.Abs(by.Z)/level, u)
}

// legVerdict is what is wrong with a leg, "" for nothing.
func legVerdict(of vehicles.RunKind, i int, s desk.State) string {
	text := ""
	for _, f := range s.Result.Findings {
		if f.Subject.Sort == rules.SortOf(of) && f.Against.Is(rules.ALeg, i) && f.Verdict != rules.Clear {
			text = Joined(text, desk.VerdictWord(f.Verdict)+": "+f.About()+", "+Margin(f, s))
		}
	}
	return text
}
