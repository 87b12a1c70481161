package work

import (
	"fmt"
	"math"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/vehicles"
)

// What of this job a step is done to, and what its value should come to.

func pilotOf(r *rules.Result) string {
	text := survey.InMM(r.Job.Cut.PilotAcross()) + " across, through up to " + survey.InMM(r.Job.Floor.Thickness) + " of floor"
	if by, beside, there := rules.OldPilot(r); there && beside > rules.NearTheHole {
		text += "; a new one, " + survey.InMM(by) + " beside the old hole"
	}
	return text
}

// lookedOf is where the pilot hole is read from below as it was planned, and how far off that no clearance at the cut is less than surely enough.
func lookedOf(r *rules.Result) string {
	at := rules.ReadBelow(&r.Job, r.Plan.Cut.Intended)
	text := fmt.Sprintf("planned to be read at %s, left %s, right %s", survey.Figure(at.Bumper), survey.Figure(at.Left), survey.Figure(at.Right))
	if may := math.Floor(rules.MayComeOut(r)); may > 0 && !r.Plan.Cut.Drilled { // whole mm, none too many
		text += fmt.Sprintf("; off by more than its ±, find what was misread first; up to %s off every clearance at the cut holds", survey.InMM(may))
	}
	return text
}

// cutOf is the hole, and how fast the saw turns for it. That it is oiled and let up on is common practice, no source.
func cutOf(r *rules.Result) string {
	text := survey.InMM(r.Job.Cut.Across) + " across"
	if row, ok := sizing.Find(r, sizing.SawTurns); ok && row.Value.Set {
		text += "; the saw turns " + row.Said() + "; oil it, and let up before it is through"
	}
	if row, ok := sizing.Find(r, sizing.PilotMoved); ok && row.Value.Value >= rules.PilotOnMark {
		text += "; round the pilot hole, as all is judged: to saw round the centre as meant takes more, " + row.Said()
	}
	if row, ok := sizing.Find(r, sizing.OldPilotBeside); ok {
		text += "; " + row.Label + " " + row.Said() + ". " + Said(row.Why)
	}
	return text
}

// boltsIn are the heater's bolts, as long as they are sized.
func boltsIn(r *rules.Result) string {
	n := len(rules.Bolts(&r.Job, &r.Plan))
	if n == 0 {
		return ""
	}
	text := survey.Counted(n, "bolt")
	if row, ok := sizing.Find(r, sizing.Bolt); ok && row.Value.Set {
		text += ", " + row.Said() + " long at least"
	}
	return text
}

// beadsOf is how much sealant both beads take.
func beadsOf(r *rules.Result) string {
	row, ok := sizing.Find(r, sizing.Sealant)
	if !ok || !row.Value.Set {
		return ""
	}
	return row.Said() + " in all"
}

func boltsOf(r *rules.Result) string {
	return fmt.Sprintf("%s, %s across", survey.Counted(len(rules.Bolts(&r.Job, &r.Plan)), "hole"), survey.InMM(r.Job.Heater.Bolt))
}

func fuelHoleOf(r *rules.Result) string {
	return fmt.Sprintf("%s, %s across", survey.Counted(len(rules.FuelHoles(&r.Job, &r.Plan)), "hole"), survey.InMM(r.Job.Fuel.Supply.HoleAcross()))
}

// clipHolesOf is how many holes hold the runs, and where they are read.
func clipHolesOf(r *rules.Result) string {
	clips, pump := rules.ClipHoles(&r.Job, &r.Plan)
	var of []string
	if n := len(clips); n > 0 {
		of = append(of, survey.Counted(n, "hole")+", at the clips' readings with the runs")
	}
	if len(pump) > 0 {
		of = append(of, "one where the pump hangs")
	}
	return strings.Join(of, ", and ")
}

// pumpLeadOf is which way the pump's lead goes: through the hole that is there for the fuel stub, and through none of its own.
func pumpLeadOf(r *rules.Result) string {
	switch {
	case pumpOf(r) != "":
		return pumpOf(r)
	case hasFuelHole(r):
		return "up through the collar where the pump hangs below the floor, along the floor where it stands above; no hole of its own"
	}
	return "with the fuel line through the collar; no hole of its own"
}

func relievedOf(r *rules.Result) string {
	if given := r.Job.Cut.Relieved; given.Set {
		return "to " + survey.InMM(given.Value) + " across"
	}
	if row, ok := sizing.Find(r, sizing.CutBack); ok && row.Value.Set {
		return "to " + survey.InMM(row.Value.Value) + " across"
	}
	return "nobody has said how wide"
}

func exhaustOf(r *rules.Result) string {
	text := clipsOf(r.Job.Exhaust)
	if run := r.Job.Exhaust; run != nil && run.Muffler != nil {
		text += ", a muffler"
	}
	return text
}

func intakeOf(r *rules.Result) string { return clipsOf(r.Job.Intake) }
func fuelOf(r *rules.Result) string   { return clipsOf(r.Job.Fuel) }

// A heater has exhaust, air and fuel whether they are planned or not: what nobody has laid has its steps all the same, and says so.
const (
	notLaid   = "nobody has laid it yet: lay it on Runs"
	notPlaced = "nobody has placed the pump yet: place it on Runs"
)

// unlaid says of a run that nobody has laid it, "" of one that is.
func unlaid(of vehicles.RunKind) func(*rules.Result) string {
	return func(r *rules.Result) string {
		if r.Job.Run(of) == nil {
			return notLaid
		}
		return ""
	}
}

// pumpOf says of the pump that nobody has placed it.
func pumpOf(r *rules.Result) string {
	if r.Job.Fuel != nil && r.Job.Fuel.Pump == nil {
		return notPlaced
	}
	return unlaid(vehicles.FuelRun)(r)
}

// clipsOf says how many clips a run has, or that nobody has said it, or laid the run.
func clipsOf(run *vehicles.Run) string {
	switch {
	case run == nil:
		return notLaid
	case run.Clips == nil:
		return "nobody has said where its clips go"
	case len(run.Clips) == 0:
		return "no clips"
	}
	return survey.Counted(len(run.Clips), "clip")
}

func drainsOf(r *rules.Result) string {
	n := 0
	var of []string
	for _, run := range []*vehicles.Run{r.Job.Exhaust, r.Job.Intake} {
		if run != nil {
			n += len(run.Drains)
		}
	}
	if n > 0 {
		of = append(of, survey.Counted(n, "drain"))
	}
	if r.Job.Exhaust != nil && r.Job.Exhaust.Muffler != nil {
		of = append(of, "the muffler's")
	}
	return strings.Join(of, ", ")
}

func shieldsOf(r *rules.Result) string {
	if s := r.Job.Exhaust.Shielded; !s.All {
		return strings.Join(s.Names, ", ")
	}
	return "whatever is near the exhaust"
}

// inWords expects what no figure can say.
func inWords(words, source string) func(*rules.Result) Expected {
	return func(*rules.Result) Expected { return Expected{Words: words, Source: sizing.Sources{source}} }
}

// foulCut says what is foul at the cut: nobody drills or saws there.
func foulCut(r *rules.Result) string {
	foul := rules.FoulAtCut(r)
	switch len(foul) {
	case 0:
		return ""
	case 1:
		return foul[0].About() + ". See Checks."
	}
	return fmt.Sprintf("%s, and %d more. See Checks.", foul[0].About(), len(foul)-1)
}

// asHeaterSays is expected where the heater's maker says what.
const asHeaterSays = "as the heater's instructions say"

// fuseSize expects the fuse that the glow current takes, as it is sized; the heater's own instructions go before.
func fuseSize(r *rules.Result) Expected {
	row, ok := sizing.Find(r, sizing.Fuse)
	if !ok || !row.Value.Set {
		return Expected{Words: asHeaterSays, Source: sizing.Sources{rules.NeedsFigure}}
	}
	return Expected{Words: row.Said() + " by what is sized" + rules.UnlessHeaterSays, Source: row.Source}
}

// primingStrokes expects what fills the line short of the heater, as it is sized. It is no limit: a pump that is still dry moves less.
func primingStrokes(r *rules.Result) Expected {
	row, ok := sizing.Find(r, sizing.Priming)
	if !ok || !row.Value.Set {
		return Expected{}
	}
	return Expected{Words: "about " + row.Said() + ", more while the pump is still dry", Source: row.Source}
}

// squareErr is how far two diagonals may differ by pencil and tape alone, mm. common practice, no source.
const squareErr = 3

func diagonals(*rules.Result) Expected {
	return Expected{Most: vehicles.Some(squareErr), Source: sizing.Sources{rules.Practice}}
}

// collarNeeded is how deep the collar must be, as it is sized; ok is false where that is not known.
func collarNeeded(r *rules.Result) (row sizing.Row, ok bool) {
	row, ok = sizing.Find(r, sizing.CollarNeeded)
	return row, ok && row.Value.Set
}

// collarDepth expects what the floor takes, and no more than the collar is now.
func collarDepth(r *rules.Result) Expected {
	row, _ := collarNeeded(r)
	return Expected{Least: row.Value, Most: collarFitted(r), Source: row.Source}
}

// collarFitted is how deep the collar is before it is cut: the one that is ordered where the heater's is too short.
func collarFitted(r *rules.Result) vehicles.Number {
	if row, ok := sizing.Find(r, sizing.CollarToOrder); ok && row.Value.Set {
		return row.Value
	}
	if r.Job.Heater == nil {
		return vehicles.Number{}
	}
	return r.Job.Heater.Turret
}

// collarOf is the collar that was ordered, "" for the heater's own.
func collarOf(r *rules.Result) string {
	if row, ok := sizing.Find(r, sizing.CollarToOrder); ok && row.Value.Set {
		return "the one that was ordered, " + row.Said()
	}
	return ""
}

// cableLength expects no more than the cable was sized for; one that is longer loses more.
func cableLength(r *rules.Result) Expected {
	const metre = 1000
	if cable := r.Job.Electrics.Cable; cable.Set {
		return Expected{Most: vehicles.Some(cable.Value / metre), Source: sizing.Sources{"as it is sized, from the job"}}
	}
	return Expected{}
}

// supplyOf is the cable as it is sized, where it begins and which way it goes.
func supplyOf(r *rules.Result) string {
	var all []string
	if row, ok := sizing.Find(r, sizing.CableArea); ok && row.Value.Set {
		all = append(all, row.Said())
	}
	for _, goes := range []string{r.Job.Wiring.Battery, r.Job.Wiring.Cable} {
		if goes != "" {
			all = append(all, Said(goes))
		}
	}
	return strings.Join(all, ", ")
}

// Ducts says at which ends of the heater its warm-air ducts go on, how wide and long they are, and how they bend; "" where there is none.
func Ducts(r *rules.Result) string {
	if !hasDucts(r) {
		return ""
	}
	text := "at the heater's " + strings.Join(r.Job.Heater.Duct.Words(), " and ") + ", " + survey.InMM(r.Job.Heater.DuctAcross) + " across"
	d := &r.Job.Ductwork
	if d.Length.Set {
		text += ", " + survey.InMM(d.Length.Value) + " along the middle"
	}
	switch {
	case d.Bends == nil:
		return text + ", bends not said"
	case len(d.Bends) == 0:
		return text + ", no bends"
	}
	var bends []string
	for _, turn := range d.Bends {
		bends = append(bends, survey.InDegrees(turn))
	}
	return text + ", bends " + strings.Join(bends, ", ")
}

func fuseOf(r *rules.Result) string  { return Said(r.Job.Wiring.Battery) }
func earthOf(r *rules.Result) string { return Said(r.Job.Wiring.Earth) }
func alarmOf(r *rules.Result) string { return Said(r.Job.Wiring.Alarm) }

// controlOf is where the control goes: that is for whoever the van belongs to to say.
func controlOf(r *rules.Result) string {
	if r.Job.Wiring.Control == "" {
		return "nobody has said where the control goes; ask the owner"
	}
	return "the control " + Said(r.Job.Wiring.Control)
}

// Said is what somebody wrote, to stand in a sentence.
func Said(text string) string { return strings.TrimRight(strings.TrimSpace(text), ".") }

// stubsOf are the runs that are joined to a stub; one that nobody has laid says so.
func stubsOf(r *rules.Result) string {
	var of []string
	for _, k := range []vehicles.RunKind{vehicles.ExhaustRun, vehicles.IntakeRun} {
		text := k.String()
		if r.Job.Run(k) == nil {
			text += " (" + notLaid + ")"
		}
		of = append(of, text)
	}
	return strings.Join(of, ", ")
}

func takeOffOf(r *rules.Result) string { return r.Job.Fuel.Supply.From }

// depthErr is how far a floor's depth may be off what the job says before that matters, mm: the collar's own tolerance is wider.
// common practice, no source.
const depthErr = 3

// floorDepth expects the floor as thick as the job says: where its layers are known from its thinnest to its thickest, as a pilot hole may
// come out between two swages.
func floorDepth(r *rules.Result) Expected {
	t := r.Job.Floor.Thickness
	thin := t
	if row, ok := sizing.Find(r, sizing.Thinnest); ok && row.Value.Set {
		thin = min(t, row.Value.Value)
	}
	return Expected{Least: vehicles.Some(thin - depthErr), Most: vehicles.Some(t + depthErr), Of: fmt.Sprintf("the job's floor, ±%d mm", depthErr), Source: sizing.Sources{rules.Practice}}
}

// leastFall expects what the book asks.
func leastFall(r *rules.Result) Expected { return fromBook(r, rules.ExhaustFall, nil) }

// pumpTilt expects what the book asks.
func pumpTilt(r *rules.Result) Expected {
	return fromBook(r, rules.PumpTiltLeast, rules.PumpTiltMost)
}

// fromBook expects what rules ask at least and at most; most may be nil for nothing.
func fromBook(r *rules.Result, least, most *rules.Rule) (e Expected) {
	if l, ok := r.Book.Lookup(least.ID, ""); ok {
		e.Least, e.Source = l.Value, sizing.Sources{l.Source}
	}
	if most == nil {
		return e
	}
	if l, ok := r.Book.Lookup(most.ID, ""); ok {
		e.Most = l.Value
	}
	return e
}

// noGas expects no carbon monoxide at all: any is a leak.
func noGas(*rules.Result) Expected {
	return Expected{Most: vehicles.Some(0), Of: "caution \"First run\"", Source: sizing.Sources{rules.Practice}}
}

// shortestRun is how long a first run takes at least, min: until exhaust, muffler and duct are as hot as they get.
// common practice, no source.
const shortestRun = 20

func runTime(*rules.Result) Expected {
	return Expected{Least: vehicles.Some(shortestRun), Source: sizing.Sources{rules.Practice}}
}
