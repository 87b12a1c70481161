package rules

import "bench.example/undermark/vehicles"

// The rules of what must come down past a run, or go up under it.
var (
	exhaustUnder = &Rule{
		ID: "exhaust.under", Unit: MM, Sense: Least, Weight: Damages,
		Word:   "exhaust below",
		Title:  "Exhaust not in the way of what comes down",
		Ask:    "The spare wheel comes down and the jack goes up: a pipe below either is crushed, or keeps the wheel where it is.",
		Advice: "lead the exhaust round the spare wheel or the jacking point, or above its underside.",
		short:  tooClose,
		check:  below(TheExhaust),
		way:    notBelow,
	}
	intakeUnder = &Rule{
		ID: "intake.under", Unit: MM, Sense: Least, Weight: Damages,
		Word:   "intake below",
		Title:  "Intake not in the way of what comes down",
		Ask:    "The spare wheel comes down and the jack goes up: a hose below either is crushed.",
		Advice: "lead the intake round the spare wheel or the jacking point, or above its underside.",
		short:  tooClose,
		check:  below(TheIntake),
		way:    notBelow,
	}
)

// below judges what of a run, its muffler too, lies lower than the underside of each thing that comes down: in plan, from the
// thing's footprint. A run of which nothing lies there is in nobody's way.
func below(of Sort) func(*judge, *Rule) {
	return func(j *judge, r *Rule) {
		if j.run(of) == nil {
			return
		}
		m := j.measuring(of)
		for i := range j.plan.Obstructions {
			if !j.is(i, vehicles.ComesDown) {
				continue
			}
			thing, s := &j.plan.Obstructions[i], m.dip(i)
			if !s.there {
				continue
			}
			f := j.open(j.book.of(r), the(of), j.obstruction(i))
			f.Value = s.Gap
			f.flat(s.A, s.B)
			mark := putting{mark: j.runMark(s.A.At(0))}
			j.close(f, j.spread(f, mark, thing, false, s.B, s.N.At(0)))
		}
	}
}

// notBelow keeps the way of a run out of what is straight below each thing that comes down.
func notBelow(c *course, r *Rule) {
	limit := c.book.of(r)
	for i := range c.plan.Obstructions {
		if c.is(i, vehicles.ComesDown) {
			thing := &c.plan.Obstructions[i]
			below := thing.Prism
			below.Low, below.High = -c.job.Floor.Ground, below.Low
			if below.High > below.Low {
				c.keepFrom(below, limit, c.widest(thing))
			}
		}
	}
}
