package vehicles

import "slices"

// Some of a job says an obstruction's name: direct tapes to it from the pilot hole, the shields of the exhaust, where the fuel
// line begins. What renames or takes out an obstruction changes these with it, or the job could not be judged.

// Renaming returns the job in which all that says an obstruction's name says the new one.
func (j Job) Renaming(was, now string) Job {
	if j.Cut != nil {
		c := *j.Cut
		for i, d := range c.Direct {
			if d.To == was {
				d.To = now
				c.Direct = c.Direct.With(i, d)
			}
		}
		j = j.WithCut(c)
	}
	if j.Exhaust != nil {
		r := *j.Exhaust
		r.Shielded.Names = slices.Clone(r.Shielded.Names)
		for i, name := range r.Shielded.Names {
			if name == was {
				r.Shielded.Names[i] = now
			}
		}
		j = j.WithRun(ExhaustRun, &r)
	}
	return j.supplied(was, now).naming(func(built Job) Job { return built.Renaming(was, now) })
}

// Forgetting returns the job in which nothing says an obstruction's name any more: direct tapes to it are gone, it has no
// shield, and the fuel line begins at no obstruction.
func (j Job) Forgetting(name string) Job {
	if j.Cut != nil {
		c := *j.Cut
		for i := len(c.Direct) - 1; i >= 0; i-- {
			if c.Direct[i].To == name {
				c.Direct = c.Direct.Without(i)
			}
		}
		j = j.WithCut(c)
	}
	if j.Exhaust != nil && slices.Contains(j.Exhaust.Shielded.Names, name) {
		r := *j.Exhaust
		names := List[string](r.Shielded.Names)
		for i := len(names) - 1; i >= 0; i-- {
			if names[i] == name {
				names = names.Without(i)
			}
		}
		r.Shielded.Names = names
		j = j.WithRun(ExhaustRun, &r)
	}
	return j.supplied(name, "").naming(func(built Job) Job { return built.Forgetting(name) })
}

// supplied returns the job with another name where its fuel line begins, if it begins at was.
func (j Job) supplied(was, now string) Job {
	if j.Fuel == nil || was == "" || j.Fuel.Supply.From != was {
		return j
	}
	r := *j.Fuel
	r.Supply.From = now
	return j.WithRun(FuelRun, &r)
}

// Naming says what of the job says an obstruction's name, in a fitter's words; none for most.
func (j *Job) Naming(name string) (said []string) {
	if j.Cut != nil && slices.ContainsFunc(j.Cut.Direct, func(d DirectTape) bool { return d.To == name }) {
		said = append(said, "the tape to it from the pilot hole")
	}
	if j.Exhaust != nil && slices.Contains(j.Exhaust.Shielded.Names, name) {
		said = append(said, "its shield")
	}
	if j.Fuel != nil && j.Fuel.Supply.From == name {
		said = append(said, "that the fuel line begins at it")
	}
	if b := j.Built; b != nil {
		made := Job{Cut: b.Cut, Exhaust: b.Exhaust, Fuel: b.Fuel}
		for _, text := range made.Naming(name) {
			said = append(said, text+" (as built)")
		}
	}
	return said
}
