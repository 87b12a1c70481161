package sheet

import (
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/cutlist"
	"bench.example/undermark/rules/parts"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/vehicles"
)

// unreadable is what no paper should have: figures with what reckoning left behind, a verb of a format that nothing filled, what is no number, and a zero with a sign.
var unreadable = regexp.MustCompile(`[0-9]\.[0-9]{5}|%!|NaN|Inf|\bnil\b|<nil>|(^| )-0( |$|,|\.($| ))`)

// inSixteenths is a job whose figures were all typed in inches: to a sixteenth, of which hardly one is a whole number of tenths of a millimetre.
func inSixteenths(t *rapid.T) vehicles.Job {
	job := anyJob(t)
	inches := func(what string, low, high float64) float64 {
		return float64(rapid.IntRange(int(low/survey.Inch*16), int(high/survey.Inch*16)).Draw(t, what)) * survey.Inch / 16
	}
	job.Floor.Thickness, job.Floor.Ground = inches("thick", 10, 60), inches("ground", 300, 600)
	job.Electrics.Cable, job.Ductwork.Length = vehicles.Some(inches("cable", 500, 9000)), vehicles.Some(inches("duct", 300, 4000))
	job.Stack = vehicles.List[vehicles.Layer]{{Kind: vehicles.Ply, Thick: inches("ply", 3, 20)}, {Kind: vehicles.SheetMetal, Thick: 1}, {Kind: vehicles.SwageLayer, Thick: inches("swage", 3, 25)}}
	if job.Cut != nil {
		cut := *job.Cut
		cut.At = [2]float64{inches("x", 1300, 1500), inches("y", 100, 300)}
		cut.Across = inches("across", 100, 160)
		job = job.WithCut(cut)
	}
	if job.Heater != nil {
		heater := *job.Heater
		heater.Duct, heater.DuctAcross, heater.Turret = vehicles.Ends{Front: true}, inches("duct across", 40, 90), vehicles.Some(inches("collar", 20, 80))
		job = job.WithHeater(heater)
	}
	for _, k := range vehicles.RunKinds {
		if run := job.Run(k); run != nil {
			moved := *run
			moved.Path = append(vehicles.List[vehicles.RunPoint]{}, run.Path...)
			end := &moved.Path[k.FarEnd(len(moved.Path))]
			end.X, end.Y = end.X+inches("on", 0, 40), end.Y+inches("aside", 0, 40)
			for i := range moved.Path {
				moved.Path[i].Drop += inches("lower", 0, 8)
			}
			job = job.WithRun(k, &moved)
		}
	}
	return job
}

// Whatever was typed, in inches, too, people read figures to as many decimals as they are worth: on paper, in the list of parts and in the steps of the work.
func TestFiguresAreReadableWhateverWasTyped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := inSixteenths(t)
		job.Notes, job.Vehicle = "", "a van" // what others write is theirs
		r, faults := rules.Judge(job, rules.Builtin())
		if len(faults) > 0 {
			t.Skip(faults[0].Text)
		}
		s := &source{&r, plainWords()}
		look := func(where string, texts ...string) {
			for _, text := range texts {
				if found := unreadable.FindString(text); found != "" {
					t.Fatalf("%s: %q in %q", where, found, text)
				}
			}
		}
		for _, section := range []func(*source) Section{(*source).checks, (*source).cuts, (*source).toOrder, (*source).sized, (*source).steps, (*source).signOff} {
			made := section(s)
			for _, part := range made.Parts {
				for _, p := range within(part) {
					readable(look, made.Heading, p)
				}
			}
		}
		for _, fact := range s.facts() {
			look("facts", fact[1])
		}
		readable(look, "marks", Parts{s.marks(rules.Marks(r))})
		for _, of := range vehicles.RunKinds {
			if laid := r.Plan.Run(of); laid != nil {
				readable(look, of.String(), s.points(laid))
				readable(look, of.String(), s.hanging(r.Job.Run(of), laid))
			}
		}
		for _, row := range work.Of(&r).Rows() {
			look("work", row.Do, row.Wanted, row.Briefly, row.Barred, row.Wrong)
		}
		list := parts.Of(&r, cutlist.Usual())
		var csv strings.Builder
		if err := list.CSV(&csv, "TL-07", true); err != nil {
			t.Fatal(err)
		}
		look("parts for spreadsheets", strings.Split(csv.String(), "\n")...)
	})
}

// readable looks at all that a part says.
func readable(look func(string, ...string), where string, p Part) {
	switch p := p.(type) {
	case Table:
		for _, row := range p.Rows {
			look(where, append(row.Cells, row.Under)...)
		}
	case Text:
		look(where, p.Words)
	case List:
		look(where, p...)
	case Named:
		for _, one := range p {
			look(where, one[0], one[1])
		}
	case Ticks:
		for _, tick := range p {
			look(where, tick.Name, tick.Words)
		}
	case Parts:
		for _, one := range p {
			for _, part := range within(one) {
				if _, more := part.(Parts); !more {
					readable(look, where, part)
				}
			}
		}
	}
}
