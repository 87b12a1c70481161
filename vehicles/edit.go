package vehicles

import (
	"fmt"
	"maps"
	"strings"
)

// Every edit returns a new job and leaves the old one as it was; lists are edited by List.

func (j Job) WithCut(c Cut) Job {
	j.Cut = &c
	return j
}

func (j Job) WithHeater(h Heater) Job {
	j.Heater = &h
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

// WithDrilled notes where the pilot hole was measured from below; nil takes it back, with the direct tapes from it. The job must
// have a cut.
func (j Job) WithDrilled(p *Pair) Job {
	if j.Cut == nil {
		return j
	}
	c := *j.Cut
	if c.Drilled = p; p == nil {
		c.Direct = nil
	}
	return j.WithCut(c)
}

// LeavingPilot returns the job with its cut's centre somewhere else than the pilot hole that was measured: that hole is an old one from now
// on, and what is recorded of drilling it and looking at it is noted, but done no more.
func (j Job) LeavingPilot(at [2]float64) Job {
	if j.Cut == nil || j.Cut.Drilled == nil {
		return j
	}
	c := *j.Cut
	c.At, c.Old = at, c.Drilled
	j = j.WithCut(c).WithDrilled(nil)
	for _, step := range []string{PilotDrilled, PilotLooked} {
		if d := j.DoneOf(step); d.At != "" {
			d.Note = strings.TrimPrefix(d.Note+"\nThe old pilot hole: "+d.When()+".", "\n")
			d.At = ""
			j = j.WithDone(d)
		}
	}
	return j
}

// UniqueName returns base, or base with the lowest number from 2 behind it, so that no obstruction, opening, fitting
// or tie has that name yet.
func (j Job) UniqueName(base string) string {
	taken := map[string]bool{}
	for _, o := range j.Obstructions {
		taken[o.Name] = true
	}
	for _, o := range j.Openings {
		taken[o.Name] = true
	}
	for _, f := range j.Fittings {
		taken[f.Name] = true
	}
	for _, t := range j.Ties {
		taken[t.Name] = true
	}
	name := base
	const numbered = 10 // characters that a number takes
	if long := []rune(base); taken[name] && len(long) > LongestText-numbered {
		base = string(long[:LongestText-numbered])
	}
	for n := 2; taken[name]; n++ {
		name = fmt.Sprintf("%s %d", base, n)
	}
	return name
}
