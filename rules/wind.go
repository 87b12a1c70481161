package rules

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// The rules of where the gas goes from the outlet: straight on, and to the rear as the van drives. A job says whether it asks them.
var (
	exhaustBlast = &Rule{
		ID: "exhaust.blast", Unit: MM, Sense: Least, Weight: Damages,
		Word:   "outlet blows at",
		Title:  "Nothing before the outlet that heat spoils",
		Ask:    "Hot gas goes straight on from the mouth for about a metre: it ages a tyre, softens plastic, and burns who stands at a door.",
		Advice: "turn the outlet, or end it farther on, so that it does not blow at it.",
		short:  tooClose,
		check:  blast,
	}
	exhaustUpwind = &Rule{
		ID: "exhaust.upwind", Unit: MM, Sense: Least, Weight: Kills,
		Word:   "gas on the way",
		Title:  "Openings away from where driving wind carries the gas",
		Ask:    "As the van drives, the gas streams to the rear along it: an opening behind the outlet takes it in.",
		Advice: "end the exhaust behind the opening, or farther to the side of it.",
		short:  tooClose,
		check:  upwindOfOpenings,
		ends:   true,
	}
	exhaustFiller = &Rule{
		ID: "exhaust.filler", Unit: MM, Sense: Least, Weight: Kills,
		Word:   "outlet below",
		Title:  "Outlet not below a fuel filler",
		Ask:    "Fuel spilt at the filler runs straight down: it must not meet the hot mouth.",
		Advice: "end the exhaust farther from the filler, or on the other side of the van.",
		short:  tooClose,
		check:  belowFiller,
		ends:   true,
	}
	intakeUpwind = &Rule{
		ID: "intake.upwind", Unit: MM, Sense: Least, Weight: Kills,
		Word:   "gas to the intake on the way",
		Title:  "Intake mouth away from where driving wind carries the gas",
		Ask:    "As the van drives, the gas streams to the rear: an intake behind the outlet breathes it.",
		Advice: "end the intake ahead of the outlet, or farther to the side of it.",
		short:  tooClose,
		check:  upwindOfIntake,
		ends:   true,
	}
)

// followed is how far the gas is followed from the outlet, mm: straight on, and to the rear. common practice, no source
const followed = 1000

// inFull tells whether the job's runs are held to what the driven van, clips and service ask too.
func (j *judge) inFull() bool { return j.job.RunChecks == vehicles.InFull }

// OfEnd tells whether a finding is of where a run ends, or of what goes straight on from there, and of no other place of it.
func (f *Finding) OfEnd() bool { return f.Rule.ends || f.Rule == exhaustBlast }

// outlet is where the exhaust ends; ok is false without one, or in a job that does not ask where its gas goes.
func (j *judge) outlet() (at geometry.Point3, ok bool) {
	laid := j.plan.Exhaust
	if laid == nil || !j.inFull() {
		return at, false
	}
	return laid.Path[len(laid.Path)-1], true
}

// blown is the way of the gas straight on from the outlet.
func (j *judge) blown() (way []geometry.Point3, ok bool) {
	at, ok := j.outlet()
	path := j.plan.Exhaust
	if !ok || len(path.Path) < 2 {
		return nil, false
	}
	along := at.Sub(path.Path[len(path.Path)-2])
	if along == (geometry.Point3{}) {
		return nil, false
	}
	return []geometry.Point3{at, at.Add(along.Scale(followed / along.Norm()))}, true
}

// blast judges how near the gas's way passes what heat spoils, and where people step.
func blast(j *judge, r *Rule) {
	way, ok := j.blown()
	if !ok {
		return
	}
	for i := range j.plan.Obstructions {
		if j.is(i, vehicles.HurtByHeat) {
			j.inStream(r, way, j.obstruction(i), &j.plan.Obstructions[i])
		}
	}
	for i := range j.plan.Openings {
		if j.job.Openings[i].Is(vehicles.HurtByHeat) {
			j.inStream(r, way, j.opening(i), &j.plan.Openings[i].Placed)
		}
	}
}

// inStream judges a thing's distance from the middle of the gas's way; there is no finding of one farther from it than that is long.
func (j *judge) inStream(r *Rule, way []geometry.Point3, against Thing, thing *vehicles.Placed) {
	if s := surfaceOf(thing.Prism.GapRun(way), 0); s.value <= followed {
		j.measured(j.open(j.book.of(r), the(TheExhaust), against), s, thing)
	}
}

// streamed is the way of the gas to the rear from an outlet as the van drives.
func streamed(outlet geometry.Point3) []geometry.Point3 {
	return []geometry.Point3{outlet, outlet.Sub(geometry.Point3{X: followed})}
}

func upwindOfOpenings(j *judge, r *Rule) {
	outlet, ok := j.outlet()
	if !ok {
		return
	}
	for i := range j.plan.Openings {
		j.inStream(r, streamed(outlet), j.opening(i), &j.plan.Openings[i].Placed)
	}
}

func upwindOfIntake(j *judge, r *Rule) {
	outlet, ok := j.outlet()
	if !ok || j.plan.Intake == nil {
		return
	}
	path := j.plan.Intake.Path
	between := geometry.BetweenPaths(path[len(path)-1:], streamed(outlet))
	j.put(j.open(j.book.of(r), the(TheIntake), the(TheExhaust)), surfaceOf(between, 0))
}

// belowFiller judges in plan how far the outlet is from every fuel filler that it lies lower than.
func belowFiller(j *judge, r *Rule) {
	outlet, ok := j.outlet()
	if !ok {
		return
	}
	for i := range j.plan.Openings {
		thing := &j.plan.Openings[i].Placed
		if !j.job.Openings[i].Is(vehicles.SpillsFuel) || outlet.Z > thing.Prism.Low {
			continue
		}
		s := thing.Prism.Footprint.GapCircle(outlet.Plan(), 0)
		f := j.open(j.book.of(r), the(TheExhaust), j.opening(i))
		f.Value = s.Gap
		f.flat(s.A, s.B)
		j.close(f, j.spread(f, putting{mark: j.runMark(outlet)}, thing, false, s.B, s.N.At(0)))
	}
}
