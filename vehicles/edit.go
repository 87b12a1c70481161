package vehicles

import (
	"maps"
	"slices"
)

func (j Job) WithCut(c Cut) Job {
	j.Cut = &c
	return j
}

func (j Job) WithHeater(h Heater) Job {
	j.Heater = &h
	return j
}

func (j Job) WithExhaust(r Run) Job {
	j.Exhaust = &r
	return j
}

func (j Job) WithIntake(r Run) Job {
	j.Intake = &r
	return j
}

func (j Job) WithFuel(f Fuel) Job {
	j.Fuel = &f
	return j
}

// WithRule gives a rule this job's own value; WithoutRule takes it back.
func (j Job) WithRule(id string, v float64) Job {
	j.Rules = put(maps.Clone(j.Rules), id, v)
	return j
}

func (j Job) WithoutRule(id string) Job {
	j.Rules = maps.Clone(j.Rules)
	if delete(j.Rules, id); len(j.Rules) == 0 {
		j.Rules = nil
	}
	return j
}

// WithDrilled notes where the pilot hole was measured from below; nil takes it back. The job must have a cut.
func (j Job) WithDrilled(p *Pair) Job {
	if j.Cut == nil {
		return j
	}
	c := *j.Cut
	c.Drilled = p
	return j.WithCut(c)
}

// Points of a run.

func (r Run) WithPoint(i int, p RunPoint) Run {
	r.Path = replaced(r.Path, i, p)
	return r
}

func (r Run) InsertPoint(i int, p RunPoint) Run {
	r.Path = inserted(r.Path, i, p)
	return r
}

func (r Run) WithoutPoint(i int) Run {
	r.Path = without(r.Path, i)
	return r
}

// WithMuffler puts a muffler on; nil takes it off.
func (r Run) WithMuffler(m *Muffler) Run {
	r.Muffler = m
	return r
}

func (r Run) WithClips(clips []float64) Run {
	r.Clips = slices.Clone(clips)
	return r
}

func (f Fuel) WithPoint(i int, p RunPoint) Fuel {
	f.Path = replaced(f.Path, i, p)
	return f
}

func (f Fuel) InsertPoint(i int, p RunPoint) Fuel {
	f.Path = inserted(f.Path, i, p)
	return f
}

func (f Fuel) WithoutPoint(i int) Fuel {
	f.Path = without(f.Path, i)
	return f
}

// Points of a line.

func (p Place) WithPoint(i int, point Pair) Place {
	p.Path = replaced(p.Path, i, point)
	return p
}

func (p Place) InsertPoint(i int, point Pair) Place {
	p.Path = inserted(p.Path, i, point)
	return p
}

func (p Place) WithoutPoint(i int) Place {
	p.Path = without(p.Path, i)
	return p
}
